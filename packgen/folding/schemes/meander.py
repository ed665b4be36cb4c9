from fractions import Fraction

from packgen.folding.program import HALF, QUARTER, Close, Cut, Fold, Program, Scheme, Unfold, equal

_THREE_QUARTERS = Fraction(3, 4)

SCHEME = Scheme(
    title="Winding book",
    about="One sheet printed on one side and cut into one winding strip: 16 small pages; card covers are pasted on.",
    programs=(
        Program(
            columns=equal(4),
            rows=equal(4),
            orientation="portrait",
            faces=1,
            steps=(
                Fold(HALF, "right"),
                Fold(QUARTER, "right"),
                Unfold(),
                Fold(HALF, "top"),
                Fold(QUARTER, "top"),
                Unfold(),
                Cut(Fraction(0), _THREE_QUARTERS, _THREE_QUARTERS, _THREE_QUARTERS),
                Cut(QUARTER, HALF, Fraction(1), HALF),
                Cut(Fraction(0), QUARTER, _THREE_QUARTERS, QUARTER),
                Close(first=(0, 3), second=(1, 3), face="down"),
            ),
            spine="left",
        ),
    ),
)
