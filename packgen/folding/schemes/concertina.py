from fractions import Fraction
from typing import Literal

from packgen.folding.program import Fold, Glue, Program, Scheme, equal


def _zigzag(panels: int, faces: Literal[1, 2]) -> Program:
    """A sheet of that many panels folded forth and back; a flap behind the next one's first panel joins them."""
    return Program(
        columns=equal(panels),
        rows=equal(1),
        orientation="landscape",
        faces=faces,
        steps=(
            Glue(),
            *(
                Fold(Fraction(fold, panels), "right", "mountain" if fold % 2 else "valley")
                for fold in range(panels - 1, 0, -1)
            ),
        ),
        spine="none",
        reads="side by side",
        assembly="joined",
        glue_flap=10.0,
    )


SCHEME = Scheme(
    title="Concertina",
    about="A long strip folded forth and back, printed on one side or on both; sheets are joined with a glue flap.",
    programs=tuple(_zigzag(panels, faces) for faces in (2, 1) for panels in range(2, 13)),
    usual_panels=4,
)
