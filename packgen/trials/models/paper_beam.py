"""A sheet of paper folded into a bridge: how much it carries and how far it sags."""

from __future__ import annotations

import math
from dataclasses import dataclass

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import WORD, BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.units import quantity

# Copy paper (from memory of paper-physics tables; sheets vary): stiffness along and across the grain and the stress it
# bears in compression, in N/mm².
STIFFNESS = {"along": 6000.0, "across": 3000.0}
CRUSHING = 10.0
POISSON = 0.3
FLAT_SAG = 1 / 6
"""A flat sheet counts as failed when it sags by a sixth of its span and slides off (common practice)."""


@dataclass(frozen=True, slots=True)
class Section:
    """A folded sheet seen from its end: second moment of area in mm⁴, distance to the compressed edge in mm.

    `wall` is the width in mm of the widest flat piece in compression and `held` its buckling coefficient: 4 for a strip
    held along both edges, 0.43 with one free edge (thin-plate theory). `radius` is set for a tube instead.
    """

    second_moment: float
    edge: float
    wall: float
    held: float = 4.0
    radius: float = 0.0


def rectangle(width: float, depth: float) -> float:
    """The second moment of area of a solid rectangle, b h³ / 12."""
    return width * depth**3 / 12


def sag_middle(load: float, span: float, stiffness: float, second_moment: float) -> float:
    """How far a beam on two supports sags under a load in its middle: P L³ / (48 E I). N, mm and N/mm² give mm."""
    return load * span**3 / (48 * stiffness * second_moment)


def sag_spread(load_per_length: float, span: float, stiffness: float, second_moment: float) -> float:
    """How far it sags under the same load on every mm: 5 w L⁴ / (384 E I)."""
    return 5 * load_per_length * span**4 / (384 * stiffness * second_moment)


def section(folding: str, width: float, thickness: float, height: float) -> Section:
    """The section of a sheet `width` wide and `thickness` thick folded in that way to that height, all in mm.

    Thin walls: a leaning wall of length l and height h has I = t l h²/12 about its middle. Raises WillNotWork if the
    sheet is not wide enough for folds so high.
    """
    if folding == "flat":
        return Section(rectangle(width, thickness), thickness / 2, width)
    if folding == "tube":
        radius = width / (2 * math.pi)
        return Section(math.pi * radius**3 * thickness, radius, 0.0, radius=radius)
    if folding == "box":
        side = width / 4
        return Section(2 / 3 * side**3 * thickness, side / 2, side)
    wall = {"zigzag": height * math.sqrt(2), "ridge": width / 2, "channel": height}[folding]
    if 2 * wall > width + 1e-9 or height >= wall + 1e-9 or (folding == "channel" and 2 * height >= width):
        raise WillNotWork(f"the sheet is too narrow for folds {height:.3g} mm high", "lower `fold height`", "given")
    if folding == "channel":
        middle = height**2 / width
        walls = 2 * height**3 / 12 + 2 * height * (height / 2 - middle) ** 2 + (width - 2 * height) * middle**2
        return Section(thickness * walls, height - middle, height, 0.43)
    return Section(thickness * width * height**2 / 12, height / 2, wall)


def strongest_load(shape: Section, span: float, thickness: float, stiffness: float) -> float:
    """The load in N in the middle at which a wall of the folded sheet gives way.

    Bending stress is P L c / (4 I). A thin wall buckles at k pi² E / (12 (1 - nu²)) (t/b)² but goes on carrying; its
    mean stress when it fails is about sqrt(buckling x crushing) (von Karman, Sechler and Donnell, 1932). A tube's wall
    buckles at 0.6 E t / r times 0.3 for its dents (common practice).
    """
    if shape.radius:
        stress = min(CRUSHING, 0.3 * 0.6 * stiffness * thickness / shape.radius)
    else:
        plate = math.pi**2 * stiffness / (12 * (1 - POISSON**2))
        buckling = shape.held * plate * (thickness / shape.wall) ** 2
        stress = min(CRUSHING, math.sqrt(buckling * CRUSHING))
    return 4 * stress * shape.second_moment / (shape.edge * span)


def _parts(values: Values) -> tuple[Section, float, float, float]:
    thickness = values.number("thickness")
    shape = section(values.word("folding"), values.number("sheet width"), thickness, values.number("fold height"))
    return shape, values.number("span"), thickness, STIFFNESS[values.word("grain")]


def _carried(values: Values) -> float:
    shape, span, thickness, stiffness = _parts(values)
    by_sag = FLAT_SAG * span * 48 * stiffness * shape.second_moment / span**3
    load = by_sag if values.word("folding") == "flat" else strongest_load(shape, span, thickness, stiffness)
    return min(load, by_sag) / GRAVITY * 1000


def _weights(values: Values) -> float:
    return _carried(values) / values.number("one weight")


def _sag(values: Values) -> float:
    shape, span, _, stiffness = _parts(values)
    if values.number("load mass") > _carried(values):
        raise WillNotWork(
            "the load is more than this beam carries: expect it to give way", "take a lighter `load mass`", "given"
        )
    return sag_middle(values.kilograms("load mass") * GRAVITY, span, stiffness, shape.second_moment)


def _figures(values: Values) -> tuple[Figure, ...]:
    shape, _, thickness, _ = _parts(values)
    flat = rectangle(values.number("sheet width"), thickness)
    return (Figure("how many times stiffer than the flat sheet", quantity(shape.second_moment / flat)),)


MODEL = ChallengeModel(
    title="Paper bridge",
    about="One sheet lies across a gap and carries weights in its middle. Folding the same sheet makes it many times "
    "stiffer.",
    inputs=(
        Input(
            "folding",
            WORD,
            "how the sheet is folded",
            words=("flat", "ridge", "zigzag", "channel", "tube", "box"),
            default="zigzag",
            also=("shape", "fold", "folding shape"),
            tries=("flat", "zigzag", "tube"),
            phrase="the folding of the sheet",
            ask="Which folding carries most?",
            ask_first="Which one carries most?",
        ),
        Input(
            "span",
            "length",
            "the gap between the supports",
            40,
            800,
            200.0,
            also=("gap", "gap width", "length"),
            tries=(100, 150, 200),
            phrase="the width of the gap",
            ask="Over which gap does it carry most?",
        ),
        Input(
            "sheet width",
            "length",
            "the side that is folded up, along the supports",
            30,
            800,
            210.0,
            also=("width", "paper width"),
            tries=(100, 150, 210),
            phrase="the width of the sheet",
            ask="Which sheet carries most?",
        ),
        Input(
            "thickness",
            "length",
            "of one sheet (copy paper is 0.1 mm)",
            0.04,
            1.5,
            0.1,
            also=("paper thickness", "caliper"),
            tries=(0.1, 0.2, 0.3),
            phrase="the thickness of the paper",
            ask="Does twice the paper carry twice as much?",
        ),
        Input(
            "fold height",
            "length",
            "how high the folds stand (ridge, zigzag, channel)",
            2,
            150,
            20.0,
            also=("pleat height", "height", "depth", "fold depth"),
            tries=(10, 15, 20),
            phrase="the height of the folds",
            ask="Which folds carry most?",
            picture="up",
        ),
        Input(
            "grain",
            WORD,
            "whether the paper's grain runs along the span or across it",
            words=("along", "across"),
            default="along",
            tries=("along", "across"),
            phrase="the way the grain runs",
            quiet=True,
        ),
        Input(
            "load mass",
            "mass",
            "the load for measuring the sag",
            0.1,
            5000,
            20.0,
            also=("load", "mass"),
            tries=(10, 20, 30),
            phrase="the load",
            ask="Which load bends it most?",
        ),
        Input(
            "one weight",
            "mass",
            "one of the coins or washers used as weights",
            0.2,
            500,
            2.5,
            also=("coin mass", "one coin", "washer mass"),
            tries=(2.5, 5.0),
        ),
    ),
    results=(
        Result(
            "load carried",
            "mass",
            "g",
            _carried,
            "the load it carries",
            2.0,
            ("load", "mass", "weight carried", "mass carried", "greatest load", "strength"),
            without=("load mass", "one weight"),
            shape="power",
        ),
        Result(
            "weights carried",
            "count",
            "",
            _weights,
            "the number of weights it carries",
            2.0,
            (
                "coins",
                "number of coins",
                "coins carried",
                "pennies",
                "number of pennies",
                "washers",
                "number of weights",
                "weights",
            ),
            without=("load mass",),
            whole=True,
            same_question=True,
            shape="power",
        ),
        Result(
            "sag",
            "length",
            "mm",
            _sag,
            "the sag of its middle[ under {load mass}]",
            1.0,
            ("deflection", "bending", "how far it sags"),
            without=("one weight",),
            shape="power",
        ),
    ),
    vary="folding",
    formula="sag = P L³ / (48 E I); it gives way when P L c / (4 I) reaches what its thin walls bear, √(buckling × "
    "crushing); a flat sheet when it sags by a sixth of the gap",
    source="beam formulas: any strength-of-materials text; thin walls: von Kármán, Sechler and Donnell (1932); the "
    "paper's stiffness and strength are from memory, so the figure is a guess within a factor of two",
    spread=0.60,
    keep_same=(
        "the paper",
        "the width of the gap",
        "where the weights go",
        "the width of the sheet",
        "the height of the folds",
    ),
    cautions=(
        "Keep your feet clear. Put a towel under the bridge.",
        "Coins and washers are small parts. Keep them away from children under three.",
    ),
    faults_of_build=(
        BuildFault("It twists and spills", "the folds are not equally high", "fold along a ruler, every fold sharp"),
        BuildFault("The folds spread flat", "nothing holds them together", "tape a strip of paper across underneath"),
        BuildFault("It dents under the weights", "they stand on one spot", "lay a small card under them"),
    ),
    why_higher=(
        "The folds are small and sharp, or glued.",
        "Heavier paper, or the grain runs along the span.",
        "The weights were spread out: spread loads bend a beam less.",
    ),
    why_lower=(
        "A crease or a dent in the middle weakens it most of all.",
        "Damp paper is soft.",
        "The weights slid to one side.",
    ),
    extension="Carry as much with half a sheet. Which folding wastes least?",
    figures=_figures,
    tips=("Classroom results for one sheet run from a hundred to a thousand coins: compare foldings, not families.",),
    also=("paper bridge", "bridge", "beam"),
)
