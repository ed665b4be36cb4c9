"""Shapes that only a study has: given values, the one thing to change, amounts, scales, the life at several lengths."""

from __future__ import annotations

import re
from dataclasses import dataclass

from packgen.faults import Said
from packgen.reading import messages
from packgen.reading.dates import read_when
from packgen.reading.fields import Defs, Key, Many, Notes, One, Record, Schema
from packgen.reading.measures import read_number, read_quantity, starts_with_number
from packgen.reading.messages import Misread
from packgen.reading.models import LEVELS, Given
from packgen.reading.names import key_form, snippet
from packgen.reading.values import name, prose
from packgen.reading.yaml_tree import Leaf, Listing, Mapping, Node
from packgen.units import Quantity

MAX_GIVEN = 40
MAX_VALUES = 30
_SCALAR: Schema = {"type": ["string", "number", "boolean"]}


def is_date(text: str) -> bool:
    """True if the text is a date, or has figures as a date that cannot be read has."""
    if re.search(r"\d{2}", text):
        return True
    try:
        read_when(text)
    except Misread:
        return False
    return True


@dataclass(frozen=True, slots=True)
class GivenValues:
    """Names with a quantity, a word, or a list of them: `{wheel radius: 60 mm, canopy: hemisphere}`."""

    def read(self, node: Node, notes: Notes) -> tuple[Given, ...] | None:
        """The given values; None if there are no names."""
        if not isinstance(node, Mapping):
            notes.add(messages.NAMES_WANTED, node.at)
            return None
        if len(node.pairs) > MAX_GIVEN:
            notes.add(messages.TOO_MANY, node.pairs[MAX_GIVEN][0].at, count=len(node.pairs), most=MAX_GIVEN)
        given = []
        for key, value in node.pairs[:MAX_GIVEN]:
            if isinstance(value, Leaf) and value.is_nothing:
                notes.add(messages.NOTHING, key.at, key=key, example=f"{key}: 60 mm")
                continue
            several: Many[Quantity | Said] = Many(self._value(key), MAX_VALUES)
            values = several.read(value, notes)
            if values:
                given.append(Given(key, values, key.at))
        return tuple(given)

    @staticmethod
    def _value(key: str) -> One[Quantity | Said]:
        timed = re.search(r"\b(time|period|duration|seconds|minutes)\b", key_form(key)) is not None

        def parse(said: Said, notes: Notes) -> Quantity | Said:
            if timed and re.fullmatch(r"[\d:., ]+", said) and ":" in said:
                return read_quantity(said, "time")
            if starts_with_number(said) and not re.match(r"[+-]?\d+(?: ?[:/] ?\d+$|-[^\W\d])", said):
                return read_quantity(said)
            return Said(" ".join(said.split()), said.at)

        return One("a quantity or a word", parse, _SCALAR)

    def schema(self, defs: Defs) -> Schema:
        """Any names, with a value or a list of values each."""
        return {"type": "object", "additionalProperties": {"anyOf": [_SCALAR, {"type": "array", "items": _SCALAR}]}}


@dataclass(frozen=True, slots=True)
class Change:
    """The one quantity a fair test changes: its name, or its name with the planned values."""

    def read(self, node: Node, notes: Notes) -> Given | None:
        """The quantity and its planned values, none if only the name is written."""
        if isinstance(node, Leaf):
            text = name().read(node, notes)
            return Given(text, (), text.at) if text else None
        if isinstance(node, Listing):
            notes.add(messages.LIST_FOR_TEXT, node.at, wants="the one thing to change")
            return None
        pairs = node.pairs
        what, values = node.find("what"), node.find("values")
        if isinstance(what, Leaf) and len(pairs) <= 2 and (len(pairs) == 1 or values is not None):
            pairs = ((what.text, values or Leaf(Said("", what.at))),)
        if len(pairs) != 1:
            notes.add(
                messages.CHANGE_ONE, node.at, count=len(pairs), names=", ".join(snippet(k, 30) for k, _ in pairs[:9])
            )
            return None
        key, value = pairs[0]
        if isinstance(value, Leaf) and value.is_nothing:
            return Given(key, (), key.at)
        given = GivenValues().read(Mapping(pairs, node.at), notes)
        return given[0] if given else None

    def schema(self, defs: Defs) -> Schema:
        """A name, or an object of one name."""
        return {"anyOf": [{"type": "string"}, {**GivenValues().schema(defs), "maxProperties": 2}]}


def amount() -> One[tuple[float, Said | None]]:
    """A number, with its unit if it is written beside it."""

    def parse(said: Said, notes: Notes) -> tuple[float, Said | None]:
        found = re.fullmatch(r"([+-]?[\d.,_½¼¾⅓⅔⅛/ -]*[\d½¼¾⅓⅔⅛]) ?([^\W\d].*|%)?", said)
        value = read_number(found[1] if found else said)
        if not 0 < value <= 1e6:
            raise Misread(messages.OUT_OF_RANGE, text=snippet(said), least="more than 0", most="1000000")
        return value, Said(found[2], said.at) if found and found[2] else None

    return One("a number", parse, {"type": ["number", "string"]})


def scale() -> One[Said]:
    words = {"full size": "true", "life size": "true", "1 to 1": "true", "biggest": "auto"}

    def parse(said: Said, notes: Notes) -> Said:
        ratio = re.fullmatch(r"([1-9]\d{0,6}) ?(?::|/|to) ?([1-9]\d{0,6})", said)
        text = f"{ratio[1]}:{ratio[2]}" if ratio else words.get(key_form(said), key_form(said))
        if not ratio and text not in ("auto", "fit", "true"):
            raise Misread(messages.NOT_SCALE, text=snippet(said))
        return Said(text, said.at)

    return One("a scale", parse, {"type": ["string", "boolean"]})


_LIFE: Record[dict[str, Said]] = Record(
    "a life",
    "The life told at several lengths; packs without one of their own use the nearest.",
    tuple(Key(level, prose(), f"The life as told to the {level} pack.", "She lived by the sea.") for level in LEVELS),
    lambda values, notes: {level: values[level] for level in LEVELS if level in values},
)


@dataclass(frozen=True, slots=True)
class Life:
    """The life as (level, text) pairs; a single text serves all levels."""

    def read(self, node: Node, notes: Notes) -> tuple[tuple[str, Said], ...] | None:
        """The pairs in the order of the levels."""
        if isinstance(node, Leaf):
            text = prose().read(node, notes)
            return tuple((level, text) for level in LEVELS) if text else None
        told = _LIFE.read(node, notes)
        return tuple(told.items()) if told else None

    def schema(self, defs: Defs) -> Schema:
        """A text, or texts by level."""
        return {"anyOf": [prose().schema(defs), _LIFE.schema(defs)]}
