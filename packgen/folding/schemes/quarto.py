from packgen.folding.program import HALF, Fasten, Fold, Program, Scheme, Trim, equal

SCHEME = Scheme(
    title="Quarto",
    about="One sheet folded twice, stapled, and cut open at the top: eight pages, each a quarter of the sheet.",
    programs=(
        Program(
            columns=equal(2),
            rows=equal(2),
            orientation="portrait",
            laid="back",
            steps=(Fold(HALF, "top"), Fold(HALF, "left"), Fasten(), Trim(("top",))),
            spine="left",
        ),
    ),
)
