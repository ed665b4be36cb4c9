"""The comparing words of a quantity: "the longer the thread", "the farthest, the nearest, how much farther"."""

from __future__ import annotations

import re

_MORE = {
    "length": "longer", "side": "longer", "height": "higher", "drop": "higher", "width": "wider", "span": "wider",
    "size": "larger", "thickness": "thicker", "depth": "deeper", "weight": "heavier", "mass": "heavier",
    "load": "heavier", "speed": "faster", "warmth": "warmer", "temperature": "warmer", "flow": "stronger",
    "hour": "later", "age": "older",
}  # fmt: skip
_ITSELF = ("side", "drop", "load", "flow", "hour", "swing")
"""Words that stay in the sentence: "the longer the side of the canopy", not "the longer the canopy"."""

_ENDS = {
    "time": ("longest", "shortest", "longer"), "mass": ("heaviest", "lightest", "heavier"),
    "speed": ("fastest", "slowest", "faster"), "temperature": ("warmest", "coolest", "warmer"),
    "length": ("longest", "shortest", "longer"), "volume": ("most", "least", "more"),
}  # fmt: skip
_NAMED = {
    "distance": ("farthest", "nearest", "farther"), "range": ("farthest", "nearest", "farther"),
    "picture": ("tallest", "shortest", "taller"), "height": ("highest", "lowest", "higher"),
    "freeboard": ("highest", "lowest", "higher"), "depth": ("deepest", "shallowest", "deeper"),
    "sag": ("deepest", "shallowest", "deeper"), "width": ("widest", "narrowest", "wider"),
    "hole": ("largest", "smallest", "larger"),
}  # fmt: skip


def the_more(phrase: str) -> str:
    """How a sentence on a quantity begins, from its phrase with the article: "the length of the thread" gives
    "The longer the thread", "the number of blades" "The more blades"; what has no such word is greater."""
    said = phrase.removeprefix("the ").strip()
    if said == "cold outside":
        return "The warmer it is outside"
    if said.startswith("number of "):
        return f"The more {said.removeprefix('number of ')}"
    first, of, rest = said.partition(" of ")
    if of and first in _MORE and first not in _ITSELF and not rest.startswith("what "):
        return f"The {_MORE[first]} {rest}" if rest.startswith(("the ", "one ")) else f"The {_MORE[first]} the {rest}"
    first, *others = said.split()
    if first in _MORE and (first in _ITSELF or (others and others[0] in ("on", "that"))):
        return f"The {_MORE[first]} the {said}"
    last = re.fullmatch(r"(.+) (\w+)", said)
    if last and last[2] in _MORE and not re.search(r" (?:of|from|to) ", said):
        return f"The {_MORE[last[2]]} the {last[1] if last[2] not in _ITSELF else said}"
    return f"The greater the {said}"


def ends_in_words(what: str, dimension: str, counted: bool) -> tuple[str, str, str]:
    """The greatest, the least and the difference of what is measured: "the longest", "the shortest", "how much longer".

    `what` is its name, `counted` is True for what is counted in whole things.
    """
    if counted or (dimension in ("count", "frequency") and re.search(r"\b(turns|pictures|number)\b", what.lower())):
        return "the most", "the least", "how many more"
    named = [words for name, words in _NAMED.items() if re.search(rf"\b{name}\b", what.lower())]
    length = dimension in ("length", "")
    if re.search(r"\bpitch\b", what.lower()):
        named, length = [("highest", "lowest", "higher")], True
    most, least, more = named[0] if named and length else _ENDS.get(dimension, ("largest", "smallest", "larger"))
    return f"the {most}", f"the {least}", f"how much {more}"
