"""Amounts of material: `1.2 m`, `2 sheets`, `4`; added up by dimension and written out for a shopping list.

A unit that packgen knows (see `packgen.units`) is turned into its dimension's base unit, so 1 m and 20 cm add up. Any
other word (sheet, roll) is a unit of its own. US cups and spoons are the fractions of a gallon in `packgen.units`.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from packgen.units import Quantity, quantity, unit

_MEASURED = frozenset({"length", "mass", "volume"})
_SPOONS = frozenset({"tsp", "tbsp"})
# Steps in which a shop or a ruler deals, the finest first: (unit, up to how many of it, step).
_METRIC = {
    "length": (("mm", 10, 1.0), ("cm", 100, 1.0), ("m", math.inf, 0.1)),
    "mass": (("g", 1000, 1.0), ("kg", math.inf, 0.1)),
    "volume": (("ml", 1000, 5.0), ("l", math.inf, 0.1)),
}
_CUSTOMARY = {
    "length": (("in", 24, 0.25), ("ft", 12, 0.5), ("yd", math.inf, 0.5)),
    "mass": (("oz", 16, 0.25), ("lb", math.inf, 0.25)),
    "volume": (("tsp", 3, 0.25), ("tbsp", 4, 0.5), ("cup", math.inf, 0.25)),
}
_FRACTIONS = {0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}
_TOLERANCE = 1e-9


@dataclass(frozen=True, slots=True)
class Amount:
    """So much of a kind: in mm, g or ml for a dimension packgen knows, else in whole or part `of`s (sheets, rolls, "").

    `written` is the unit it was first written in; it is kept for display while nothing speaks against it.
    """

    value: float
    of: str
    written: str = ""

    @property
    def measured(self) -> bool:
        """True for a length, mass or volume; False for things that are counted."""
        return self.of in _MEASURED


def singular(word: str) -> str:
    """A word without its plural ending, small letters, single spaces: what makes `Paper clips` and `paper clip` one.

    >>> singular("Paper Clips"), singular("boxes"), singular("glass")
    ('paper clip', 'box', 'glass')
    """
    plain = " ".join(word.casefold().split())
    for ending, instead in (("ies", "y"), ("sses", "ss"), ("xes", "x"), ("ches", "ch"), ("shes", "sh")):
        if plain.endswith(ending) and len(plain) > len(ending) + 1:
            return plain[: -len(ending)] + instead
    return plain[:-1] if plain.endswith("s") and not plain.endswith(("ss", "us", "is")) and len(plain) > 2 else plain


def amount(value: float, unit_name: str = "") -> Amount:
    """An amount from a number and a unit as a parent writes it; an unknown unit is a thing that is counted."""
    name = unit_name.strip().rstrip(".")
    try:
        found = unit(name)
    except KeyError:
        return Amount(value, singular(name), name)
    if found.dimension not in _MEASURED:
        return Amount(value, singular(name), name)
    return Amount(quantity(value, name).value, found.dimension, found.symbol)


def added(amounts: Iterable[Amount]) -> tuple[Amount, ...]:
    """One sum for each kind of amount, in the order they first came.

    A sum keeps the written unit if all its parts share it, so that 2 tbsp and 1 tbsp stay tablespoons.
    """
    found: dict[str, list[Amount]] = {}
    for one in amounts:
        found.setdefault(one.of, []).append(one)
    return tuple(_sum(of, parts) for of, parts in found.items())


def _sum(of: str, parts: list[Amount]) -> Amount:
    same = {part.written for part in parts}
    counted = parts[0].written if of not in _MEASURED else ""
    return Amount(math.fsum(part.value for part in parts), of, same.pop() if len(same) == 1 else counted)


def largest(amounts: Iterable[Amount]) -> tuple[Amount, ...]:
    """The largest of each kind of amount: what is needed of a thing that is used again."""
    found: dict[str, Amount] = {}
    for one in amounts:
        if one.of not in found or one.value > found[one.of].value:
            found[one.of] = one
    return tuple(found.values())


def to_buy(total: Amount, spare: float, customary: bool = False) -> Amount:
    """The amount to buy: `spare` (a share, 0.1 for a tenth) more, rounded up to whole things or a handy step."""
    wanted = total.value * (1 + spare)
    if not total.measured:
        return Amount(float(math.ceil(wanted - _TOLERANCE)), total.of, total.written)
    name, step = _scale(Amount(wanted, total.of, total.written), customary)
    steps = math.ceil(Quantity(wanted, total.of).to(name) / step - _TOLERANCE)
    return Amount(quantity(steps * step, name).value, total.of, total.written)


def _scale(one: Amount, customary: bool) -> tuple[str, float]:
    """The unit and step an amount is shown in: as written if that suits the family, else the unit of its size."""
    table = (_CUSTOMARY if customary else _METRIC)[one.of]
    for name, _, step in table:
        if name == one.written:
            return name, step
    if one.written in _SPOONS:
        return one.written, 0.5
    for name, limit, step in table:
        if Quantity(one.value, one.of).to(name) < limit - _TOLERANCE:
            return name, step
    return table[-1][0], table[-1][2]


def shown(one: Amount, customary: bool = False) -> str:
    """The amount in words: `1.4 m`, `2 1/2 ft`, `3 sheets`, `4`.

    >>> shown(amount(120, "cm")), shown(amount(1, "m"), customary=True), shown(amount(3, "sheet")), shown(amount(4))
    ('120 cm', '3 1/2 ft', '3 sheets', '4')
    """
    if not one.measured:
        word = _plural(one) if one.of else ""
        return f"{_number(one.value)} {word}".strip()
    name, step = _scale(one, customary)
    value = Quantity(one.value, one.of).to(name)
    if name in {row[0] for row in _CUSTOMARY[one.of]}:
        # an exact amount that is no whole number of steps is rounded up: too much thread is no harm
        rounded = math.ceil(value / min(step, 0.5) - _TOLERANCE) * min(step, 0.5)
        return f"{_fraction(rounded)} {name}{'s' if name == 'cup' and rounded > 1 else ''}"
    if name == "l":  # alone it is read as a one
        return f"{_number(value)} {'litre' if value <= 1 + _TOLERANCE else 'litres'}"
    return f"{_number(value)} {name}"


def _plural(one: Amount) -> str:
    if abs(one.value - 1) < _TOLERANCE or one.value < 1:
        return one.of
    return one.of + ("es" if one.of.endswith(("x", "ch", "sh", "ss")) else "s")


def _number(value: float) -> str:
    return f"{value:.3g}" if value < 1000 else f"{value:.0f}"


def _fraction(value: float) -> str:
    whole = math.floor(value + _TOLERANCE)
    part = _FRACTIONS.get(round(value - whole, 2), "")
    return " ".join(word for word in (str(whole) if whole or not part else "", part) if word)
