from fractions import Fraction

from packgen.folding.program import HALF, QUARTER, Fold, Program, Scheme

SCHEME = Scheme(
    title="Gate-fold card",
    about="One sheet whose two sides fold to the middle like a pair of doors: six faces, the middle one large.",
    programs=(
        Program(
            columns=(QUARTER, HALF, QUARTER),
            rows=(Fraction(1),),
            orientation="landscape",
            laid="back",
            steps=(Fold(QUARTER, "left"), Fold(Fraction(3, 4), "right")),
            spine="none",
            reads="opened out",
        ),
    ),
)
