from packgen.folding.program import HALF, QUARTER, Close, Cut, Fold, Program, Scheme, Unfold, equal

SCHEME = Scheme(
    title="One-slit book",
    about="One sheet printed on one side, folded and slit once, pushed together: eight pages and no staple.",
    programs=(
        Program(
            columns=equal(4),
            rows=equal(2),
            orientation="landscape",
            faces=1,
            steps=(
                Fold(HALF, "top", "mountain"),
                Unfold(),
                Fold(HALF, "right", "mountain"),
                Fold(QUARTER, "left", "valley"),
                Unfold(1),
                Cut(HALF, HALF, QUARTER, HALF, "slit"),
                Unfold(),
                Fold(HALF, "top", "mountain"),
                Close(first=(3, 0), second=(3, 1)),
            ),
            spine="left",
        ),
    ),
)
