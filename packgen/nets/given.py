"""What a solid is asked for and what the parent gave: names, units, ranges and alternatives, checked.

`given` maps names to numbers (mm, degrees or a count), words, or packgen.units.Quantity; the last lets a length
without a unit be found out.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from packgen.faults import nearest
from packgen.nets.errors import NetError, raise_all
from packgen.units import Quantity

Value = float | str | Quantity
Given = Mapping[str, Value]

_LEAST, _MOST = 1e-3, 1e9
"""The shortest and longest length (mm) a solid can be given: finer than any paper, and a thousand kilometres."""
_EXAMPLE = {"length": "60 mm", "count": "6", "angle": "30 deg", "word": "a word"}


@dataclass(frozen=True, slots=True)
class Parameter:
    """One thing a solid can be given.

    `dimension` is length, count, angle or word; `low` and `high` are the range allowed, both ends included, but a
    length must always be more than zero. Parameters of the same `group` are alternatives: exactly one is given.
    Without a group it is required unless it has a `default` (None: left out). A count is `whole` unless said otherwise.
    Alternatives that may stand `together` are checked against each other by the solid.
    """

    name: str
    dimension: str
    help: str
    low: float | None = None
    high: float | None = None
    required: bool = True
    default: float | str | None = None
    group: str = ""
    also: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    whole: bool = True
    together: bool = False


def plain_name(name: str) -> str:
    """The name in small letters with single spaces: hyphens and underscores count as spaces."""
    return re.sub(r"[\s_\-]+", " ", name.strip().lower())


@dataclass(frozen=True, slots=True)
class Read:
    """Checked values by name. `number` and `word` raise KeyError for what was not given and has no default."""

    title: str
    values: tuple[tuple[str, float | str], ...]
    parameters: tuple[Parameter, ...] = ()

    def has(self, name: str) -> bool:
        """True if the parent gave it, or it has a default."""
        return any(n == name for n, _ in self.values)

    def number(self, name: str) -> float:
        """The number given under that name: mm, degrees or a count."""
        return float(dict(self.values)[name])

    def count(self, name: str) -> int:
        """The whole number given under that name."""
        return round(float(dict(self.values)[name]))

    def word(self, name: str) -> str:
        """The word given under that name."""
        return str(dict(self.values)[name])

    def sizes(self) -> tuple[tuple[str, float, str], ...]:
        """(name, number, dimension) of everything given as a number, in the order of the parameters."""
        values = dict(self.values)
        return tuple(
            (p.name, float(values[p.name]), p.dimension)
            for p in self.parameters
            if p.name in values and p.dimension != "word"
        )


def read(title: str, parameters: Iterable[Parameter], given: Given) -> Read:
    """The values given, checked against the parameters. Raises NetError with everything that is wrong."""
    wanted = tuple(parameters)
    known = {plain_name(n): p for p in wanted for n in (p.name, *p.also)}
    found: dict[str, float | str] = {}
    wrong: list[NetError] = []
    tried: set[str] = set()
    for said, value in given.items():
        parameter = known.get(plain_name(said))
        if parameter is None:
            near = nearest(plain_name(said), known)
            hint = f"Did you mean '{known[near].name}'? " if near else ""
            tried |= {known[near].name} if near else set()
            wrong.append(NetError(f"The {title} has no '{said}'.", f"{hint}It takes {listed(wanted)}.", said))
            continue
        if parameter.name in found:
            wrong.append(NetError(f"'{parameter.name}' is given twice for the {title}.", "Keep one of them.", said))
            continue
        tried.add(parameter.name)
        try:
            found[parameter.name] = checked(title, parameter, value)
        except NetError as fault:
            wrong.append(NetError(fault.message, fault.instead, said))
    wrong += _group_errors(title, wanted, found, tried)
    for p in wanted:
        if p.name in tried or p.name in found or p.group:
            continue
        if p.default is not None:
            found[p.name] = p.default
        elif p.required:
            wrong.append(
                NetError(f"The {title} needs '{p.name}': {p.help}.", f"Add {p.name}: {_EXAMPLE[p.dimension]}.")
            )
    raise_all(wrong)
    return Read(title, tuple(found.items()), wanted)


def _group_errors(title: str, wanted: tuple[Parameter, ...], found: dict[str, float | str],
                  tried: set[str]) -> Iterator[NetError]:  # fmt: skip
    """What is wrong with alternatives: two that say the same thing, or none. `tried` are all names that were said."""
    groups: dict[str, list[Parameter]] = {}
    for p in wanted:
        if p.group:
            groups.setdefault(p.group, []).append(p)
    for members in groups.values():
        names = [p.name for p in members]
        had = [n for n in names if n in found]
        if len(had) > 1 and not members[0].together:
            yield NetError(
                f"The {title} is given both '{had[0]}' and '{had[1]}', which say the same thing.",
                "Keep one of them.",
                had[1],
            )
        if not tried.intersection(names) and members[0].required:
            yield NetError(
                f"The {title} needs {' or '.join(repr(n) for n in names)}: {members[0].help}.",
                f"Add {names[0]}: {_EXAMPLE[members[0].dimension]}.",
            )


def checked(title: str, p: Parameter, value: Value) -> float | str:
    """The value in mm, degrees, whole number or word, if it is allowed. Raises NetError otherwise."""
    if p.dimension == "word":
        return _checked_word(title, p, value)
    example = f"Write for example {p.name}: {_EXAMPLE[p.dimension]}."
    if isinstance(value, Quantity):
        if value.dimension == "count" and p.dimension == "length":
            shown = f"{value.value:g}"
            raise NetError(
                f"The {p.name} of the {title} has no unit: {shown}.", f"Write {p.name}: {shown} mm, or cm, m, in."
            )
        if value.dimension != p.dimension and not (value.dimension == "count" and p.dimension == "angle"):
            raise NetError(f"The {p.name} of the {title} cannot be {value}.", example)
        value = value.value
    if isinstance(value, str):
        raise NetError(f"The {p.name} of the {title} must be a number, not '{value}'.", example)
    number = float(value)
    _check_number(title, p, number, example)
    return number


def _check_number(title: str, p: Parameter, number: float, example: str) -> None:
    if not math.isfinite(number):
        raise NetError(f"The {p.name} of the {title} is not a number that can be built.", example)
    if p.dimension == "length" and number <= 0 and p.low is None:
        raise NetError(f"The {p.name} of the {title} must be more than zero, not {number:g}.", example)
    if p.dimension == "length" and number and not _LEAST <= abs(number) <= _MOST:
        raise NetError(f"The {p.name} of the {title} is not a length that can be built: {number:g} mm.", example)
    if p.dimension == "count" and abs(number - round(number)) > 1e-9 and p.whole:
        raise NetError(f"The {p.name} of the {title} must be a whole number, not {number:g}.", example)
    unit = {"length": " mm", "angle": " degrees"}.get(p.dimension, "")
    if p.low is not None and number < p.low:
        raise NetError(
            f"The {p.name} of the {title} must be at least {p.low:g}{unit}, not {number:g}.",
            f"Write {p.name}: {p.low:g}{unit} or more.",
        )
    if p.high is not None and number > p.high:
        raise NetError(
            f"The {p.name} of the {title} can be at most {p.high:g}{unit}, not {number:g}.",
            f"Write {p.name}: {p.high:g}{unit} or less.",
        )


def _checked_word(title: str, p: Parameter, value: Value) -> str:
    text = str(value)
    if p.words and plain_name(text) not in p.words:
        near = nearest(plain_name(text), p.words)
        hint = f"Did you mean '{near}'? " if near else ""
        raise NetError(f"'{text}' is no {p.name} of the {title}.", f"{hint}Choose one of: {', '.join(p.words)}.")
    return plain_name(text) if p.words else text


def listed(parameters: Iterable[Parameter]) -> str:
    """The parameters in words: 'sides, base, height or slant'."""
    out: list[str] = []
    seen: dict[str, int] = {}
    for p in parameters:
        if p.group and p.group in seen:
            out[seen[p.group]] += f" or {p.name}"
            continue
        if p.group:
            seen[p.group] = len(out)
        out.append(p.name)
    return ", ".join(out)
