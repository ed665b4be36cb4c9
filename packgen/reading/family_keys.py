"""The keys of a family file, each described once: from this table come its reading and its JSON Schema."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from packgen.faults import Place, Said
from packgen.reading import messages
from packgen.reading.dates import read_day, read_when
from packgen.reading.fields import Defs, Key, Many, Notes, One, Record, Schema, making
from packgen.reading.messages import Misread
from packgen.reading.models import LEVELS, SIDES, Child, Family, Goal, Printer, Term
from packgen.reading.names import key_form, slug, snippet
from packgen.reading.results_keys import Results
from packgen.reading.study_keys import PLACE
from packgen.reading.values import (
    choice,
    identifier,
    measure,
    name,
    one_of,
    prose,
    whole,
    yes_no,
)
from packgen.reading.yaml_tree import Leaf, Listing, Mapping, Node

MAX_CHILDREN = 1000
MAX_NAME = 120
PAPERS = ("A4", "Letter")
DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
# The last age each level is made for, as the design has it: first 3-5, younger 6-8, older 9-12, upper from 13.
LAST_AGES = {"first": 5, "younger": 8, "older": 12, "upper": 99}
AGES = {"first": "3 to 5", "younger": "6 to 8", "older": "9 to 12", "upper": "13 and over"}


def pack_for(age: int) -> str:
    """The pack made for an age."""
    return next(level for level, last in LAST_AGES.items() if age <= last)


def _age() -> One[int]:
    """Whole years; a half counts as not yet."""
    inner = whole(0, 99)

    def parse(said: Said, notes: Notes) -> int | None:
        text = re.sub(r"(?i) ?(?:years?(?: old)?|y)$|(?<=\d)(?:[.,]5| ?½| 1/2)", "", said)
        return inner.parse(Said(text, said.at), notes)

    return One("an age in years", parse, inner.described)


@dataclass(frozen=True, slots=True)
class Extra:
    """Copies more of a sheet, or of a part of one: `{design-draft: 3}`."""

    def read(self, node: Node, notes: Notes) -> tuple[tuple[Said, int], ...] | None:
        """The names with their numbers of copies."""
        if not isinstance(node, Mapping):
            notes.add(messages.EXTRA_WANTED, node.at)
            return None
        copies = ((key, whole(1, 50).read(value, notes)) for key, value in node.pairs)
        return tuple((Said(key_form(key).replace(" ", "-"), key.at), number) for key, number in copies if number)

    def schema(self, defs: Defs) -> Schema:
        """Any names, with a number each."""
        return {"type": "object", "additionalProperties": {"type": ["integer", "string"], "minimum": 1, "maximum": 50}}


_SCHEME: Record[Said] = Record(
    "a book",
    "How the child's book is folded.",
    (Key("scheme", identifier(), "A fold scheme of the catalogue.", "stitched", required=True),),
    lambda values, notes: values["scheme"],
    alone="scheme",
)


def _child(values: dict[str, Any], notes: Notes) -> Child:
    name_, age, pack = values["name"], values.get("age"), values.get("pack")
    if not any(letter.isalnum() for letter in name_):
        notes.add(messages.NO_LETTERS, name_.at, name=snippet(name_))
    if pack is None:
        values["pack"] = Said(pack_for(age) if age is not None else "younger", values["at"])
        if age is None and not notes.spoilt:
            notes.add(messages.NO_AGE, name_.at, name=snippet(name_), pack="younger")
    elif age is not None and pack in LEVELS:
        meant = pack_for(age)
        if abs(LEVELS.index(meant) - LEVELS.index(pack)) > 1:
            words = {"name": snippet(name_), "age": age, "pack": pack, "ages": AGES[pack], "better": meant}
            notes.add(messages.AGE_AND_PACK, pack.at, **words)
    return Child(**values)


_PACK = one_of("packs", messages.UNKNOWN_PACK, "a pack")
_SHEET = one_of("sheets", messages.UNKNOWN_SHEET, "a sheet")
CHILD: Record[Child] = Record(
    "a child",
    "A child and what suits it.",
    (
        Key("name", name(MAX_NAME), "The child's name, in any script.", "Juno", required=True),
        Key("age", _age(), "Age in years; chooses the pack if none is named.", 11),
        Key(
            "pack",
            one_of("packs", messages.UNKNOWN_PACK, "a pack"),
            "first, younger, older, upper, or one of yours.",
            "older",
        ),
        Key(
            "leave_out", Many(one_of("sheets", messages.UNKNOWN_SHEET, "a sheet")), "Sheets not to print.", ["telling"]
        ),
        Key("extra", Extra(), "Copies more of a sheet or a part of one.", {"design-draft": 3}),
        Key("left handed", yes_no(), "Yes puts models and copy lines on the other side.", True),
        Key("larger type", yes_no(), "Yes sets everything larger.", True),
        Key("wider spacing", yes_no(), "Yes sets letters, words and lines wider apart.", True),
        Key("tint", yes_no(), "Yes prints a pale ground behind the text.", True),
        Key("glue", yes_no(), "No if this child is to work without glue.", False),
        Key("letters", choice(("print", "cursive"), {"joined": "cursive"}), "Letters to trace.", "print"),
        Key("book", _SCHEME, "The fold scheme of this child's book.", "stitched"),
    ),
    _child,
    alone="name",
)


@dataclass(frozen=True, slots=True)
class Shift:
    """Two lengths, right and up: `[0.5 mm, -1 mm]`."""

    def read(self, node: Node, notes: Notes) -> tuple[float, float] | None:
        """The lengths in mm."""
        texts = [item.text for item in node.items if isinstance(item, Leaf)] if isinstance(node, Listing) else []
        if isinstance(node, Leaf):
            texts = [Said(part.strip(), node.at) for part in re.split(r"[,;]\s+|\s+and\s+", node.text)]
        if len(texts) != 2:
            notes.add(messages.NOT_PAIR, node.at)
            return None
        lengths = [_SHIFT.read(Leaf(text), notes) for text in texts]
        return None if lengths[0] is None or lengths[1] is None else (lengths[0], lengths[1])

    def schema(self, defs: Defs) -> Schema:
        """A list of two lengths, or both in one text."""
        return {"anyOf": [{"type": "array", "items": _NUMERIC, "minItems": 2, "maxItems": 2}, {"type": "string"}]}


_NUMERIC: Schema = {"type": ["string", "number"]}


def _shift_length() -> One[float]:
    inner = measure("length", -10, 10)

    def parse(said: Said, notes: Notes) -> float | None:
        return 0.0 if said in ("0", "0.0") else inner.parse(said, notes)

    return One("a length", parse, _NUMERIC)


_SHIFT = _shift_length()
PRINTER: Record[Printer] = Record(
    "a printer",
    "What the printer can do.",
    (
        Key(
            "sides",
            choice(SIDES, {"1-sided": SIDES[0], "long-edge": SIDES[1], "short-edge": SIDES[2]}),
            "one-sided, or how it turns the paper for the back (keywords of RFC 8011).",
            "two-sided-long-edge",
        ),
        Key("margin", measure("length", 0, 25), "The strip along the edges it cannot print on.", "6 mm"),
        Key("colour", yes_no(), "No for black and white.", False, aliases=("color",)),
        Key("duplex shift", Shift(), "How far a back lands right of and above its front.", ["0.5 mm", "-1 mm"]),
        Key("caliper", measure("length", 0.03, 1), "The thickness of one sheet of your paper.", "0.1 mm"),
    ),
    making(Printer),
    alone="sides",
)


@dataclass(frozen=True, slots=True)
class Spread:
    """Several texts in a list, or in one text with commas or `and` between; `parse` makes values of each part."""

    what: str
    parse: Callable[[Said], tuple[Any, ...]]
    one: Schema

    def read(self, node: Node, notes: Notes) -> tuple[tuple[Any, Place], ...]:
        """All values with their places."""
        values: list[tuple[Any, Place]] = []

        def several(said: Said, notes: Notes) -> bool:
            parts = re.split(r"\s*(?:,|;|&|\band\b)\s*", said)
            values.extend((v, said.at) for part in parts if part for v in self.parse(Said(part, said.at)))
            return True

        Many(One(self.what, several, self.one), 400).read(node, notes)
        return tuple(values)

    def schema(self, defs: Defs) -> Schema:
        """A list of texts, or one."""
        return {"anyOf": [{"type": "array", "items": self.one}, self.one]}


def _weekday(said: Said) -> tuple[int, ...]:
    form = said.casefold().rstrip(".")
    for index, day in enumerate(day.casefold() for day in DAYS):
        if form == day + "s" or (len(form) >= 2 and day.startswith(form)):
            return (index,)
    raise Misread(messages.NOT_DAY, text=snippet(said))


def _days_away(said: Said) -> tuple[date, ...]:
    """One day, or every day of a span of at most a year."""
    when = read_when(said)
    if not when.is_span:
        return (read_day(said),)
    ends = [end and end.day and end.month and 1 <= end.year <= 9999 for end in (when.start, when.end)]
    if not all(ends):
        raise Misread(messages.NOT_FULL_DATE, text=snippet(said))
    first, last = (date(d.year, d.month or 1, d.day or 1) for d in (when.start, when.end) if d)
    if (last - first).days > 366:
        raise Misread(messages.NOT_FULL_DATE, text=snippet(said))
    return tuple(first + timedelta(days=n) for n in range((last - first).days + 1))


def _day() -> One[date]:
    return One("a day", lambda said, notes: read_day(said), {"type": "string"})


def _term(values: dict[str, Any], notes: Notes) -> Term:
    starts: date = values["starts"]
    away: tuple[tuple[date, Place], ...] = values.get("away", ())
    # Weeks away make the term longer, so the last day can only be bounded here.
    weeks = values["weeks"] + len(away)
    ends = starts + timedelta(weeks=weeks) if starts.year < 9990 else date.max
    for day, at in away:
        if not starts <= day <= ends:
            notes.add(messages.AWAY_OUTSIDE, at, day=day, starts=starts, weeks=values["weeks"])
    on = sorted({day for day, _ in values.get("on", ())}) or [starts.weekday()]
    return Term(**{**values, "on": tuple(on), "away": tuple(sorted({day for day, _ in away}))})


_ON = Spread("a day of the week", _weekday, {"type": "string"})
_AWAY = Spread("a day", _days_away, {"type": "string"})
TERM: Record[Term] = Record(
    "a term",
    "When the study runs.",
    (
        Key("starts", _day(), "The first day.", "2027-02-03", required=True),
        Key("weeks", whole(1, 60), "How many weeks it takes.", 9, required=True),
        Key(
            "on",
            Spread("a day of the week", _weekday, {"type": "string"}),
            "The days of the week; that of the first day if left out.",
            "Wednesday",
        ),
        Key(
            "away",
            Spread("a day", _days_away, {"type": "string"}),
            "Days without work, single or from-to.",
            ["2027-03-17"],
        ),
        Key("minutes", whole(1, 240), "Minutes of a sitting.", 10),
    ),
    _term,
)


def _goal(values: dict[str, Any], notes: Notes) -> Goal:
    text: Said = values["text"]
    values.setdefault("id", Said(slug(text, "goal")[:30].strip("-"), text.at))
    return Goal(**values)


GOAL: Record[Goal] = Record(
    "a goal",
    "Something the family wants to reach, in its own words.",
    (
        Key("id", identifier(), "A short name for the record; made from the text if left out.", "make-1"),
        Key("text", prose(500), "The goal.", "Plans and makes a thing to a brief", required=True),
        Key(
            "met_by",
            Many(_SHEET, 100),
            "Sheets that meet it.",
            ["challenge"],
        ),
    ),
    _goal,
    alone="text",
)


def _font() -> One[Path]:
    """A font file of the family's own, below its folder or anywhere on the disk."""

    def parse(said: Said, notes: Notes) -> Path:
        try:
            path = (notes.folder / Path(said).expanduser()).resolve()
            found = path.is_file()
        except (OSError, RuntimeError, ValueError):
            raise Misread(messages.FONT_MISSING, text=snippet(said)) from None
        if path.suffix.lower() not in (".ttf", ".otf"):
            raise Misread(messages.FONT_KIND, text=snippet(said))
        if not found:
            raise Misread(messages.FONT_MISSING, text=snippet(said))
        return path

    return One("the path of a font", parse, {"type": "string"})


def _family(values: dict[str, Any], notes: Notes) -> Family | None:
    if not values["children"]:
        if not notes.spoilt:
            notes.add(messages.NO_CHILDREN, values["at"])
        return None
    for key in ("paper", "units"):
        if key in values:
            values[key] = str(values[key])
    return Family(**values, folder=notes.folder)


_PAPER = choice(PAPERS, {"us letter": "Letter", "letter size": "Letter", "din a4": "A4", "iso a4": "A4"})
_UNITS = choice(
    ("metric", "customary"), like={"imperial": "customary", "inches": "customary", "us": "customary", "mm": "metric"}
)
FAMILY: Record[Family] = Record(
    "the family",
    "The children, the printer and the term. It is private and stays at home.",
    (
        Key("family", name(MAX_NAME), "The family's name.", "Ferrar", required=True, stand_in=Said("?")),
        Key("paper", _PAPER, "A4 or Letter.", "A4"),
        Key("printer", PRINTER, "What the printer can do."),
        Key("children", Many(CHILD, MAX_CHILDREN), "The children, each with name, age and pack.", required=True),
        Key("term", TERM, "When the study runs."),
        Key("goals", Many(GOAL, 500), "The family's own goals, for the record."),
        Key("units", _UNITS, "metric (mm, g) or customary (inches, ounces).", "metric"),
        Key("place", PLACE, "Where you live, for the shadow clock.", {"name": "Saltmere", "lat": 50.4, "lon": -4.9}),
        Key("fonts", Many(_font(), 20), "Font files of your own, for scripts packgen's fonts lack.", ["fonts/Own.ttf"]),
        Key("results", Results(), "What the trials gave: the results, or the file beside this one that holds them."),
    ),
    _family,
)
