from fractions import Fraction

from packgen.folding.program import HALF, Cut, Fold, Program, Scheme, equal


def _flaps(count: int) -> Program:
    """A sheet folded in half whose upper leaf is cut into that many flaps; three pages each: outside, under, box."""
    return Program(
        columns=equal(count),
        rows=equal(2),
        orientation="landscape",
        laid="back",
        steps=(
            *(Cut(Fraction(flap, count), HALF, Fraction(flap, count), Fraction(1)) for flap in range(1, count)),
            Fold(HALF, "top"),
        ),
        spine="top",
        blank=tuple((column, 0, "front") for column in range(count)),
    )


SCHEME = Scheme(
    title="Flap book",
    about="One sheet folded in half; the upper leaf is cut into flaps that lift over boxes: three pages a flap.",
    programs=tuple(_flaps(count) for count in range(2, 7)),
)
