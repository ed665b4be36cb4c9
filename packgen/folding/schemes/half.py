from packgen.folding.program import HALF, Fold, Program, Scheme, equal

SCHEME = Scheme(
    title="Folded card",
    about="One sheet folded once: four pages, each half of the sheet.",
    programs=(
        Program(
            columns=equal(2),
            rows=equal(1),
            orientation="landscape",
            laid="back",
            steps=(Fold(HALF, "left"),),
            spine="left",
        ),
    ),
)
