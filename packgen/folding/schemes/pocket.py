from packgen.folding.program import HALF, CutAndStack, Fasten, Fold, Program, Scheme, equal

SCHEME = Scheme(
    title="Pocket book",
    about="Sheets cut in half, laid together, folded and stapled: pages of a quarter sheet, 32 from four sheets.",
    programs=(
        Program(
            columns=equal(2),
            rows=equal(2),
            orientation="portrait",
            laid="back",
            steps=(CutAndStack(HALF, "top"), Fold(HALF, "left"), Fasten()),
            spine="left",
            assembly="nested",
        ),
    ),
)
