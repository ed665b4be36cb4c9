"""What a home has: things that are used again, things that come in a container, and what may stand in for what.

Common practice throughout, no source. Words are matched in the singular, at the end of an item's name: `blunt scissors`
is a pair of scissors, `cotton thread` is thread.
"""

from __future__ import annotations

from collections.abc import Collection

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
    "cord": "string, doubled and twisted", "dowel": "a pencil, or a skewer with its point cut off",
    "skewer": "a thin straight twig, or paper rolled tight and taped", "straw": "paper rolled round a pencil and taped",
    "masking tape": "strips of paper and glue", "sticky tape": "strips of paper and glue",
    "tape": "strips of paper and glue", "glue stick": "flour paste (a spoon of flour boiled in a cup of water)",
    "glue": "flour paste (a spoon of flour boiled in a cup of water)", "paper fastener": "a knotted thread",
    "split pin": "a knotted thread", "paper clip": "a hairpin, or a loop of wire", "washer": "a coin of the same size",
    "weight": "coins, counted out", "modelling clay": "salt dough (two flour, one salt, one water)",
    "clay": "salt dough (two flour, one salt, one water)", "cork": "a slice of a cleaned kitchen sponge",
    "tissue paper": "large paper napkins, or the paper from a shoe box", "foil": "the lid of a food tray",
    "foil tray": "a cleaned food tray", "craft stick": "a strip of stiff card, folded twice", "elastic": "a hair band",
    "rubber band": "a hair band, or a ring cut from an old glove", "paper cup": "a yoghurt pot",
    "plastic cup": "a yoghurt pot", "cup": "a yoghurt pot", "bottle": "any clean drink or washing-up bottle",
    "bead": "a dried bean, or a knot in the thread", "wire": "a pipe cleaner or an opened paper clip",
    "tracing paper": "baking paper", "graph paper": "squared paper from an exercise book", "cloth": "an old pillowcase",
    "fabric": "an old pillowcase", "stopwatch": "the clock of a phone", "balloon": "a tied paper bag",
    "marble": "a hard round pea, or a ball of foil", "sand": "salt or dry rice", "bubble wrap": "crumpled paper",
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

_KIT = (
    ("pencils", frozenset[str]()),
    ("coloured pencils", frozenset[str]()),
    ("a ruler", frozenset({"challenge", "model", "enlarging-grid", "timeline", "where-in-the-world", "look-closer"})),
    ("scissors with blunt ends", frozenset({"model", "fold-book", "timeline", "matching-game"})),
    ("paints in five colours, a brush and a dish to mix in, or pencils", frozenset({"colour-by-number"})),
    ("an empty ballpoint pen or a butter knife, to score folds", frozenset({"model"})),
)
_STICKS = frozenset({"model", "fold-book", "timeline"})


def kit(kinds: Collection[str], glue: bool, tape: bool) -> tuple[str, ...]:
    """What the table needs for these kinds of sheet; glue and clear tape if anybody sticks with them."""
    found = [name for name, wanted in _KIT if not wanted or wanted & set(kinds)]
    if _STICKS & set(kinds):
        found += ["a glue stick"] * glue + ["clear tape"] * tape
    return tuple(found)


def _found(item: str, names: frozenset[str]) -> bool:
    key = singular(item)
    return any(key == name or key.endswith(f" {name}") for name in names)


def is_kept(item: str) -> bool:
    """True for a thing that is not used up: scissors, a stopwatch, a bucket."""
    return _found(item, _KEPT)


def is_small(item: str) -> bool:
    """True for a thing that a child under three could swallow."""
    return _found(item, _SMALL)


def is_container(unit: str) -> bool:
    """True for a unit that is bought whole, such as a roll or a bottle."""
    return singular(unit) in _CONTAINERS


def stand_in(item: str) -> str:
    """What a home may use instead, or nothing. The longest name in the table that ends the item's own counts."""
    key = singular(item)
    fitting = [name for name in _BY_SINGULAR if key == name or key.endswith(f" {name}")]
    return _BY_SINGULAR[max(fitting, key=len)] if fitting else ""
