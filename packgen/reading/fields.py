"""The declarative reader: each record's keys are described once, and from that come its reading and its JSON Schema.

A shape reads one node and gives a value, or None after it has noted a fault; it never stops the reading of the rest.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from difflib import get_close_matches
from pathlib import Path
from typing import Any, Generic, Protocol, TypeVar

from packgen.faults import Fault, Place, Said, nearest
from packgen.reading import messages
from packgen.reading.messages import Message, Misread
from packgen.reading.names import key_form, snippet
from packgen.reading.yaml_tree import Leaf, Listing, Mapping, Node

T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)
Schema = dict[str, Any]
Defs = dict[str, Schema]


@dataclass(slots=True)
class Notes:
    """What goes along while one file is read: its folder, and the faults found so far.

    `gaps` is True if lines of the file were left out, so that a key may be missing through no fault of the parent's.
    `spoilt` is True while a record is made of which some value could not be read, for the same reason.
    """

    folder: Path
    gaps: bool = False
    spoilt: bool = False
    known: dict[str, tuple[str, ...]] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)

    def add(self, message: Message, at: Place, **words: object) -> None:
        """Notes a fault or a warning."""
        self.faults.append(message.fault(at, **words))


class Shape(Protocol[T_co]):
    """How a value is read, and how the JSON Schema describes it."""

    def read(self, node: Node, notes: Notes) -> T_co | None: ...

    def schema(self, defs: Defs) -> Schema: ...


@dataclass(frozen=True, slots=True)
class Key:
    """A key of a record: its spelling in the file, how its value is read, and what the schema says about it.

    `to` is the record's field, the key with underscores if empty. A required key that is missing is a fault; with a
    `stand_in` the record is made all the same, so that what is wrong with the rest of it is told in the same round.
    """

    name: str
    shape: Shape[Any]
    about: str
    example: Any = None
    required: bool = False
    to: str = ""
    aliases: tuple[str, ...] = ()
    stand_in: Any = None

    @property
    def target(self) -> str:
        """The field the value goes to."""
        return self.to or self.name.replace(" ", "_")

    @property
    def spellings(self) -> tuple[str, ...]:
        """Every spelling of the key in small letters, its own first."""
        words = (self.name, *self.aliases)
        spelt = [word for name in words for word in (name, *(re.sub("[ _-]", mark, name) for mark in "_ -"))]
        return tuple(dict.fromkeys(spelt))

    @property
    def line(self) -> str:
        """A line as it could stand in the file."""
        return f"{self.name}: {self.example}" if isinstance(self.example, str | int | float) else f"{self.name}: ..."


@dataclass(frozen=True, slots=True)
class Record(Generic[T]):
    """A set of keys that makes one value. `called` is its name in messages, with its article: `a work`.

    `make` gets the values read, by field, and `at`; it may note faults of its own, and gives None if no value can be
    made. `alone` names the key that a bare text stands for.
    """

    called: str
    about: str
    keys: tuple[Key, ...]
    make: Callable[[dict[str, Any], Notes], T | None]
    alone: str = ""

    def read(self, node: Node, notes: Notes) -> T | None:
        """The record, or None if something it needs is missing or wrong."""
        if isinstance(node, Leaf) and self.alone and not node.is_nothing:
            node = Mapping(((Said(self.alone, node.at), node),), node.at)
        if isinstance(node, Leaf):
            words = {"record": _sentence(self.called), "text": snippet(node.text), "example": self.sample()}
            notes.add(messages.TEXT_FOR_KEYS, node.at, **words)
            return None
        if isinstance(node, Listing):
            notes.add(messages.LIST_FOR_KEYS, node.at, record=self.called)
            return None
        before = len(notes.faults)
        values = self._values(node, notes)
        missing = [key for key in self.keys if key.required and key.target not in values]
        if any(key.stand_in is None for key in missing) or not values:
            return None
        values |= {key.target: key.stand_in for key in missing}
        notes.spoilt = notes.gaps or len(notes.faults) > before
        return self.make({**values, "at": node.at}, notes)

    def sample(self) -> str:
        """The required keys on one line, or the first key."""
        keys = [key for key in self.keys if key.required] or [self.keys[0]]
        return ", ".join(key.line for key in keys)

    def find(self, name: str) -> Key | None:
        """The key of that name in any spelling, or None."""
        form = key_form(name)
        return next((k for k in self.keys if form in (key_form(k.name), *map(key_form, k.aliases))), None)

    def _values(self, node: Mapping, notes: Notes) -> dict[str, Any]:
        values: dict[str, Any] = {}
        seen: dict[str, Said] = {}
        pairs, foreign = self._assigned(node, notes)
        for name, key, value in pairs:
            if key.name in seen:
                notes.add(messages.TWICE, name.at, key=name, first=seen[key.name].at.line)
                continue
            seen[key.name] = name
            if not (isinstance(value, Leaf) and value.is_nothing):
                got = key.shape.read(value, notes)
                if got is not None:
                    values[key.target] = got
            elif key.required:
                notes.add(messages.NOTHING, name.at, key=name, example=key.line)
        for key in self.keys:
            if key.required and key.name not in seen and not notes.gaps and not foreign:
                record = _sentence(self.called)
                notes.add(messages.MISSING, node.at, record=record, key=key.name, example=key.line)
        return values

    def _assigned(self, node: Mapping, notes: Notes) -> tuple[list[tuple[Said, Key, Node]], bool]:
        """The pairs with their keys, and whether most belong to another kind of record.

        A misspelt key is a fault, but its value is read all the same.
        """
        pairs = [(name, self.find(name), value) for name, value in node.pairs]
        present = {key.name for _, key, _ in pairs if key}
        assigned = []
        foreign = self._foreign(pairs, notes)
        for name, key, value in pairs:
            if name in foreign:
                continue
            if key is None:
                near = self._unknown(name, value, node, notes)
                key = self.find(near) if near and near not in present else None
            if key:
                present.add(key.name)
                assigned.append((name, key, value))
        return assigned, bool(foreign)

    def _foreign(self, pairs: list[tuple[Said, Key | None, Node]], notes: Notes) -> list[Said]:
        """The keys of a record that seems to be of another kind, told as one fault: the line above it is missing."""
        unknown = [name for name, key, value in pairs if key is None and not nearest(key_form(name), self._forms())]
        if len(unknown) < 3 or 2 * len(unknown) <= len(pairs):
            return []
        if not notes.gaps:
            words = {
                "record": _sentence(self.called),
                "keys": ", ".join(f"`{snippet(name, 20)}`" for name in unknown[:8]),
            }
            notes.add(messages.FOREIGN_KEYS, unknown[0].at, known=", ".join(key.name for key in self.keys), **words)
        return unknown

    def _forms(self) -> dict[str, str]:
        """Every spelling of every key, with the key's own."""
        return {key_form(word): key.name for key in self.keys for word in (*key.aliases, key.name)}

    def _unknown(self, name: Said, value: Node, node: Mapping, notes: Notes) -> str | None:
        """Notes an unknown key, and gives the key it is most like."""
        if node.flow and isinstance(value, Leaf) and value.is_nothing and value.at == name.at:
            notes.add(messages.COMMA_CUT, name.at, key=snippet(name))
            return None
        known = self._forms()
        form = key_form(name)
        # `title` is more like `timeline` than most slips, but a key of an inner record that is spelt right is no slip.
        inner = next((key for key in self.keys if _holds(key.shape, name)), None)
        near = next(iter(get_close_matches(form, known, n=1, cutoff=0.85)), None)
        near = near or (None if inner else nearest(form, known))
        if near:
            hint = f"Write `{known[near]}`."
        elif inner:
            hint = f"`{name}` is a key of `{inner.name}`: write it further right, below `{inner.name}:`."
        else:
            hint = f"Its keys are: {', '.join(key.name for key in self.keys)}."
        if notes.gaps and inner:
            return None
        notes.add(messages.UNKNOWN_KEY, name.at, record=_sentence(self.called), key=snippet(name), hint=hint)
        return known[near] if near else None

    def schema(self, defs: Defs) -> Schema:
        """A reference to the record's schema, which is put among the definitions."""
        name = self.called.split(" ", 1)[1].replace(" ", "-")
        if name not in defs:
            defs[name] = {}
            defs[name] = self.full_schema(defs)
        reference: Schema = {"$ref": f"#/$defs/{name}"}
        if not self.alone:
            return reference
        key = self.find(self.alone)
        return {"anyOf": [reference, key.shape.schema(defs)]} if key else reference

    def full_schema(self, defs: Defs) -> Schema:
        """The schema of the record itself. Only one spelling of each key is offered; the others are let pass."""
        properties: Schema = {}
        patterns: Schema = {}
        required = [key for key in self.keys if key.required]
        for key in self.keys:
            about: Schema = {"description": key.about}
            if key.example is not None:
                about["examples"] = [key.example]
            one = or_nothing(key.shape.schema(defs), key.required)
            properties[key.name] = {**about, **one}
            if len(key.spellings) > 1:
                patterns["^(" + "|".join(key.spellings[1:]) + ")$"] = one
        made: Schema = {"type": "object", "description": self.about, "properties": properties}
        if patterns:
            made["patternProperties"] = patterns
        made["additionalProperties"] = False
        if required:
            made["allOf"] = [{"anyOf": [{"required": [s]} for s in key.spellings]} for key in required]
            if all(len(key.spellings) == 1 for key in required):
                del made["allOf"]
                made["required"] = [key.name for key in required]
        return made


def or_nothing(schema: Schema, required: bool = False) -> Schema:
    """The schema, or an empty value where the key may also be left out."""
    return schema if required else {"anyOf": [*schema.get("anyOf", [schema]), {"type": "null"}]}


def making(cls: type[T]) -> Callable[[dict[str, Any], Notes], T]:
    """A `make` that hands the values to the class as they are."""
    taken = set(inspect.signature(cls).parameters)

    def make(values: dict[str, Any], notes: Notes) -> T:
        return cls(**{name: value for name, value in values.items() if name in taken})

    return make


@dataclass(frozen=True, slots=True)
class One(Generic[T]):
    """A value written as a single text. `parse` raises Misread for a text it cannot read."""

    wants: str
    parse: Callable[[Said, Notes], T | None]
    described: Schema

    def read(self, node: Node, notes: Notes) -> T | None:
        """The value, or None after noting why there is none."""
        if isinstance(node, Leaf):
            try:
                return self.parse(node.text, notes)
            except Misread as misread:
                notes.faults.append(misread.fault(node.at))
        elif isinstance(node, Listing):
            notes.add(messages.LIST_FOR_TEXT, node.at, wants=self.wants)
        else:
            _accident(node, self.wants, notes)
        return None

    def schema(self, defs: Defs) -> Schema:
        """What the JSON Schema says of the value."""
        return dict(self.described)


@dataclass(frozen=True, slots=True)
class Many(Generic[T]):
    """A list of values, at most `most`; a single value stands for a list of one."""

    shape: Shape[T]
    most: int = 200

    def read(self, node: Node, notes: Notes) -> tuple[T, ...]:
        """The values that could be read."""
        if isinstance(node, Leaf) and node.plain and re.match(r"-[^\W\d]", node.text):
            first = re.split(r"\s-", node.text)[0].removeprefix("-")
            notes.add(messages.DASH_NO_SPACE, node.at, text=snippet(first))
            return ()
        items = node.items if isinstance(node, Listing) else (node,)
        if len(items) > self.most:
            notes.add(messages.TOO_MANY, items[self.most].at, count=len(items), most=self.most)
            items = items[: self.most]
        values = []
        for item in items:
            if isinstance(item, Leaf) and item.is_nothing:
                notes.add(messages.EMPTY_ITEM, item.at)
            elif (value := self.shape.read(item, notes)) is not None:
                values.append(value)
        return tuple(values)

    def schema(self, defs: Defs) -> Schema:
        """A list of the shape, or one of it."""
        one = self.shape.schema(defs)
        several: Schema = {"type": "array", "items": one, "maxItems": self.most}
        return {"anyOf": [several, *one.get("anyOf", [one])]}


@dataclass(frozen=True, slots=True)
class Pairs(Generic[T]):
    """A list of records that may also be written as pairs, `first: second`, such as `ebb: the tide going out`.

    `is_first` tells whether a key that is none of the record's own can be a first part.
    """

    record: Record[T]
    first: str
    second: str
    is_first: Callable[[str], bool]
    most: int

    def read(self, node: Node, notes: Notes) -> tuple[T, ...]:
        """The records that could be read."""
        if isinstance(node, Mapping) and node.pairs and all(self._is_pair(*pair) for pair in node.pairs):
            node = Listing(tuple(Mapping((pair,), pair[0].at) for pair in node.pairs), node.at)
        if isinstance(node, Listing):
            node = Listing(tuple(self._spelt_out(item) for item in node.items), node.at, node.flow)
        return Many(self.record, self.most).read(node, notes)

    def _is_pair(self, key: Said, value: Node) -> bool:
        return isinstance(value, Leaf) and self.record.find(key) is None and self.is_first(key)

    def _spelt_out(self, node: Node) -> Node:
        if not isinstance(node, Mapping) or len(node.pairs) != 1 or not self._is_pair(*node.pairs[0]):
            return node
        key, value = node.pairs[0]
        return Mapping(((Said(self.first, key.at), Leaf(key)), (Said(self.second, key.at), value)), node.at)

    def schema(self, defs: Defs) -> Schema:
        """A list of the record, or pairs of texts."""
        own = [spelling for key in self.record.keys for spelling in key.spellings]
        pairs: Schema = {
            "type": "object",
            "propertyNames": {"not": {"enum": own}},
            "additionalProperties": {"type": ["string", "number", "boolean"]},
        }
        one = self.record.schema(defs)
        several: Schema = {"type": "array", "items": {"anyOf": [one, pairs]}, "maxItems": self.most}
        return {"anyOf": [several, one, pairs]}


def _accident(node: Mapping, wants: str, notes: Notes) -> None:
    """A colon inside a text made a key of its first words; shows the text in quotes."""
    if len(node.pairs) == 1 and isinstance(node.pairs[0][1], Leaf):
        word, value = node.pairs[0][0], node.pairs[0][1].text
        text = f"{word}: {value}".strip()
        quote = "'" if '"' in text else '"'
        notes.add(
            messages.ACCIDENT, node.at, word=snippet(word), wants=wants, line=snippet(f"{quote}{text}{quote}", 100)
        )
    else:
        notes.add(messages.KEYS_FOR_TEXT, node.at, wants=wants)


def _holds(shape: object, name: str) -> bool:
    """True if a key's own record, or the record of its list, has a key of that name."""
    inner = getattr(shape, "shape", shape)
    return isinstance(inner, Record) and inner.find(name) is not None


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]
