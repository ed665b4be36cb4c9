"""Two hinged mirrors: how many pictures of one thing they show."""

from __future__ import annotations

from packgen.trials.frame import BuildFault, ChallengeModel, Input, Result, Values


def images(angle_deg: float) -> float:
    """How many mirror pictures two mirrors at that angle show of a thing between them: 360 / angle - 1.

    Exact when the angle divides 360; otherwise the nearest whole number is meant.
    """
    return max(1.0, float(int(360 / angle_deg - 1 + 0.5)))


def _images(values: Values) -> float:
    return images(values.number("angle"))


def _seen(values: Values) -> float:
    return _images(values) + 1


MODEL = ChallengeModel(
    title="Hinged mirrors",
    about="Two mirrors joined like a book show a thing between them again and again; the narrower the angle, the more "
    "often.",
    inputs=(
        Input(
            "angle",
            "angle",
            "between the two mirrors",
            8,
            180,
            60.0,
            also=("mirror angle", "opening"),
            tries=(120, 90, 60),
            phrase="the angle between the mirrors",
            ask="At which angle do you see most?",
            picture="angle",
            ask_first="Which one shows most?",
        ),
    ),
    results=(
        Result(
            "pictures in the mirrors",
            "count",
            "",
            _images,
            "the number of pictures in the mirrors",
            0.5,
            ("images", "number of images", "pictures", "reflections"),
            whole=True,
            shape="power",
        ),
        Result(
            "things seen in all",
            "count",
            "",
            _seen,
            "the number of things you see in all",
            0.5,
            ("things seen", "number seen", "all seen"),
            whole=True,
            same_question=True,
            shape="power",
        ),
    ),
    vary="angle",
    formula="pictures in the mirrors = 360° / angle − 1",
    source="National University of Singapore, mathematics project Mirror Systems (10° gives 35, 45° gives 7)",
    spread=0.05,
    keep_same=("the mirrors", "the thing between them", "where you look from"),
    cautions=("Mirror edges are sharp. Tape them all round, or use mirror card.", "Never point a mirror at the sun."),
    faults_of_build=(
        BuildFault("The pictures do not meet", "the mirrors do not stand upright", "stand them on a flat table"),
        BuildFault("A half picture at the back", "the angle does not divide 360", "turn them until the halves join"),
    ),
    why_higher=("The thing itself was counted too.",),
    why_lower=(
        "The hindmost pictures hide behind the thing: move your head.",
        "The angle was read from the wrong side.",
    ),
    extension="Lay the mirrors on a drawing and turn them until five petals make a flower. Which angle is it?",
    tips=("Draw the angles on paper first and stand the mirrors on the lines.",),
    also=("hinged mirrors", "kaleidoscope"),
    finds_out=True,
)
