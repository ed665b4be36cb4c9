"""What a home has: things that are used again, things that come in a container, and what may stand in for what.

Common practice throughout, no source. Words are matched in the singular, at the end of an item's name: `blunt scissors`
is a pair of scissors, `cotton thread` is thread.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from packgen.planning.amounts import singular

# Used again from one making to the next, so the most needed at once is enough.
_KEPT = frozenset(
    singular(word)
    for word in (
        "scissors", "pencil", "pen", "ruler", "rule", "tape measure", "measuring tape", "stopwatch", "timer", "clock",
        "phone", "watch", "kitchen scales", "scales", "balance", "thermometer", "compass", "compasses", "protractor",
        "set square", "bone folder", "butter knife", "craft knife", "cutting mat", "hole punch", "stapler", "eraser",
        "paintbrush", "brush", "measuring jug", "jug", "bucket", "bowl", "basin", "tray", "baking tray", "tub", "torch",
        "lamp", "hair dryer", "hairdryer", "fan", "glue gun", "bath", "sink", "table", "chair", "ladder", "towel",
        "magnifying glass", "mirror", "marble", "ball", "coin", "book", "crayon", "marker", "coloured pencil",
    )
)  # fmt: skip
# Bought whole: a spare tenth of a roll is not another roll.
_CONTAINERS = frozenset(
    {"roll", "reel", "ball", "spool", "bottle", "tube", "stick", "pot", "tin", "jar", "box", "bag", "pack", "packet",
     "tub", "can", "bar", "block", "set", "pair"}
)  # fmt: skip
_INSTEAD = {
    "card": "a cereal box, cut flat", "cardboard": "the side of a parcel", "thin card": "a cereal box, cut flat",
    "thread": "dental floss, fine wool or sewing cotton", "string": "wool, or a strip of plaited rag",
    "cord": "string, doubled and twisted", "dowel": "a round pencil, or a skewer with its point cut off",
    "skewer": "a thin straight twig, or paper rolled tight and taped", "straw": "paper rolled round a pencil and taped",
    "masking tape": "any other sticky tape", "sticky tape": "parcel tape, cut narrow", "tape": "any other sticky tape",
    "glue stick": "flour paste (a spoon of flour boiled in a cup of water)",
    "glue": "flour paste (a spoon of flour boiled in a cup of water)", "paper fastener": "a knotted thread",
    "split pin": "a knotted thread", "paper clip": "a hairpin, or a loop of wire", "washer": "a coin of the same size",
    "weight": "coins, counted out and taped together", "modelling clay": "salt dough (two flour, one salt, one water)",
    "clay": "salt dough (two flour, one salt, one water)", "cork": "a piece of packing foam",
    "tissue paper": "large paper napkins, or the paper from a shoe box", "foil": "the wrapper of a chocolate bar",
    "foil tray": "a cleaned food tray", "craft stick": "a strip of stiff card, folded twice", "elastic": "a hair band",
    "rubber band": "a hair band", "paper cup": "a yoghurt pot",
    "plastic cup": "a yoghurt pot", "cup": "a yoghurt pot", "bottle": "any clean drink or washing-up bottle",
    "bead": "a thick knot in the thread", "wire": "a pipe cleaner, or a paper clip opened by a grown-up",
    "tracing paper": "baking paper", "graph paper": "squared paper from an exercise book", "cloth": "an old pillowcase",
    "fabric": "an old pillowcase", "stopwatch": "the clock of a phone",
    "marble": "a large round bead", "sand": "salt or dry rice", "bubble wrap": "crumpled paper",
}  # fmt: skip
_BY_SINGULAR = {singular(name): stand_in for name, stand_in in _INSTEAD.items()}
_SMALL = frozenset(
    singular(word)
    for word in (
        "bead", "button", "coin", "washer", "marble", "paper clip", "paper fastener", "split pin", "drawing pin",
        "pin", "needle", "nail", "nut", "bolt", "screw", "magnet", "button cell", "battery", "balloon", "pea", "bean",
        "cork", "map pin", "ball bearing", "pebble",
    )
)  # fmt: skip

# Sharp or hot: a grown-up keeps them out of reach (common practice).
_GROWN_UP = (
    "drill",
    "craft knife",
    "needle",
    "pricker",
    "glue gun",
    "hot glue",
    "saw",
    "skewer",
    "candle",
    "iron",
    "lighter",
)

_CUTS = frozenset({"model", "fold-book", "timeline", "matching-game", "challenge"})
_MEASURES = frozenset({"challenge", "model", "enlarging-grid", "timeline", "where-in-the-world", "look-closer"})
_COLOURS = frozenset({"biography", "telling", "where-in-the-world", "finish-the-picture", "fold-book"})
_STICKS = frozenset({"model", "fold-book", "timeline"})
_HOLES = "a hole punch or a thick needle"
# What steps and cautions speak of although no list of materials has it: a word in them, and what to have.
_TOLD = (
    ("punch", _HOLES),
    ("needle", _HOLES),
    ("drill", "a hand drill"),
    ("knife", "a craft knife and a board to cut on"),
    ("wooden block", "a wooden block to work on"),
    ("stapler", "a stapler"),
    ("compasses", "a pair of compasses"),
    ("protractor", "a protractor"),
)


@dataclass(frozen=True, slots=True)
class Tool:
    """Something that is always on the table; `count` is how many of it, 0 if one serves all. `many` names several."""

    name: str
    count: int = 0
    many: str = ""

    @property
    def words(self) -> str:
        """How many of what: `3 rulers`, `a ruler`."""
        return f"{self.count} {self.many}" if self.count > 1 else self.name


def kit(
    kinds: Sequence[Collection[str]], glue: Sequence[bool], told: str = "", holes: bool = False
) -> tuple[Tool, ...]:
    """What the table needs: for each child the kinds of sheet it has, and whether it glues; once for all, or for each.

    `told` are the words of all steps and cautions, `holes` is True if a model has holes.
    """

    def having(wanted: frozenset[str]) -> int:
        return sum(1 for own in kinds if wanted & set(own))

    sticking = [glues for own, glues in zip(kinds, glue, strict=True) if _STICKS & set(own)]
    everybody = {kind for own in kinds for kind in own}
    found = [Tool("a pencil", len(kinds), "pencils")] if kinds else []
    found += [Tool("coloured pencils, a set to share")] if _COLOURS & everybody else []
    found += [Tool("a ruler", having(_MEASURES), "rulers")] if having(_MEASURES) else []
    found += (
        [Tool("scissors with blunt ends", having(_CUTS), "pairs of scissors with blunt ends")] if having(_CUTS) else []
    )
    found += [Tool("a glue stick", sum(sticking), "glue sticks")] if any(sticking) else []
    found += [Tool("clear tape")] if not all(sticking) else []
    if "model" in everybody:
        found.append(Tool("an empty ballpoint pen or a butter knife, to score folds"))
    if "colour-by-number" in everybody:
        found.append(Tool("paints in five colours, a brush and a dish to mix in; pencils do, too"))
    words = told.lower()
    named = [thing for word, thing in _TOLD if re.search(rf"\b{word}", words)] + [_HOLES] * holes
    return (*found, *(Tool(thing) for thing in dict.fromkeys(named)))


def _found(item: str, names: frozenset[str]) -> bool:
    key = singular(item)
    return any(key == name or key.endswith(f" {name}") for name in names)


def is_kept(item: str) -> bool:
    """True for a thing that is not used up: scissors, a stopwatch, a bucket."""
    return _found(item, _KEPT)


def for_grown_up(item: str) -> bool:
    """True for a tool that is sharp or hot, and is kept by a grown-up."""
    words = item.lower()
    return any(re.search(rf"\b{name}s?\b", words) for name in _GROWN_UP)


def is_small(item: str) -> bool:
    """True for a thing that a child under three could swallow."""
    return _found(item, _SMALL)


def is_container(unit: str) -> bool:
    """True for a unit that is bought whole, such as a roll or a bottle."""
    return singular(unit) in _CONTAINERS


def is_card(item: str) -> bool:
    """True for card that a template may be printed on."""
    return _found(item, frozenset({"card"}))


def from_the_tap(item: str) -> bool:
    """True for water, which nobody buys."""
    return singular(item) in ("water", "tap water", "cold water", "warm water")


def stand_in(item: str) -> str:
    """What a home may use instead, or nothing. The longest name in the table that ends the item's own counts."""
    if from_the_tap(item):
        return "from the tap"
    key = singular(item)
    fitting = [name for name in _BY_SINGULAR if key == name or key.endswith(f" {name}")]
    return _BY_SINGULAR[max(fitting, key=len)] if fitting else ""
