from packgen.folding.program import HALF, Fasten, Fold, Program, Scheme, equal

SCHEME = Scheme(
    title="Stitched book",
    about="Sheets folded in half one inside the other and stapled or sewn through the fold; any number of pages.",
    programs=(
        Program(
            columns=equal(2),
            rows=equal(1),
            orientation="landscape",
            laid="back",
            steps=(Fold(HALF, "left"), Fasten()),
            spine="left",
            assembly="nested",
        ),
    ),
)
