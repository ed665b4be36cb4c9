"""The shapes of single values: text, names, numbers, dates, measures, yes and no, paths, links."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from pathlib import Path

from packgen.faults import Said, nearest
from packgen.reading import messages
from packgen.reading.dates import doubt, read_when
from packgen.reading.fields import Notes, One, Schema
from packgen.reading.measures import read_degrees, read_number, read_quantity, read_size, read_type_size, wants
from packgen.reading.messages import Misread
from packgen.reading.models import When
from packgen.reading.names import key_form, snippet, unquoted
from packgen.units import Quantity

MAX_PROSE = 20_000
MAX_NAME = 200
MAX_LINK = 1_000
_SCALAR: Schema = {"type": ["string", "number", "boolean"]}
_NUMBER: Schema = {"type": ["number", "string"]}
_YES = {"yes", "y", "true", "on", "1", "ja", "oui", "si", "sí", "sim", "da", "да"}
_NO = {"no", "n", "false", "off", "0", "nein", "non", "não", "nee", "nej", "ne", "нет"}


def prose(most: int = MAX_PROSE) -> One[Said]:
    """Text of any length up to `most` letters; its line breaks stay."""

    def parse(said: Said, notes: Notes) -> Said:
        _check_length(said, most)
        return said

    return One("a text", parse, _SCALAR)


def name(most: int = MAX_NAME) -> One[Said]:
    """Text on one line, such as a title. Warns about curly quotes around it, which would be printed."""

    def parse(said: Said, notes: Notes) -> Said:
        _check_length(said, most)
        if len(said) > 2 and said[0] in "“„«" and said[-1] in "”“»" and not re.search("[“”„«»]", said[1:-1]):
            notes.add(messages.QUOTES_PRINTED, said.at, quotes=f"{said[0]} {said[-1]}")
        return Said(" ".join(said.split()), said.at)

    return One("a text", parse, _SCALAR)


def identifier() -> One[Said]:
    """A short name that other parts of the file refer to."""

    def parse(said: Said, notes: Notes) -> Said:
        _check_length(said, MAX_NAME)
        return Said(" ".join(unquoted(said).split()), said.at)

    return One("a short name", parse, _SCALAR)


def choice(
    words: Sequence[str], also: Mapping[str, str] | None = None, like: Mapping[str, str] | None = None
) -> One[Said]:
    """One of some words, in any case and spelling of spaces and hyphens.

    `also` gives other words that are accepted for them; `like` gives words that are not, but hint at the right one.
    """
    forms = {key_form(word): word for word in words} | {key_form(k): v for k, v in (also or {}).items()}

    def parse(said: Said, notes: Notes) -> Said:
        form = key_form(said)
        if form not in forms:
            near = nearest(form, forms)
            meant = (like or {}).get(form) or (forms[near] if near else None)
            hint = f" Is `{meant}` meant?" if meant else ""
            raise Misread(messages.NOT_CHOICE, text=snippet(said), words=", ".join(words), hint=hint)
        return Said(forms[form], said.at)

    return One("one of " + ", ".join(words), parse, {"enum": [*words]})


def yes_no() -> One[bool]:
    """Yes or no, in the usual words for them."""

    def parse(said: Said, notes: Notes) -> bool:
        word = unquoted(said).casefold()
        if word not in _YES | _NO:
            raise Misread(messages.NOT_YES_NO, text=snippet(said))
        return word in _YES

    words = ["yes", "no", "on", "off", "ja", "nein", "oui", "non", "si", "sí", "Yes", "No", "YES", "NO"]
    return One("yes or no", parse, {"enum": [True, False, *words, 1, 0]})


def whole(least: int, most: int) -> One[int]:
    """A whole number within limits."""

    def parse(said: Said, notes: Notes) -> int:
        number = read_number(said)
        if number != int(number):
            raise Misread(messages.NOT_WHOLE, text=snippet(said), example=max(least, min(4, most)))
        _check_range(said, number, least, most)
        return int(number)

    return One("a whole number", parse, {"type": ["integer", "string"], "minimum": least, "maximum": most})


def number(least: float, most: float) -> One[float]:
    """A number within limits."""

    def parse(said: Said, notes: Notes) -> float:
        value = read_number(said)
        _check_range(said, value, least, most)
        return value

    return One("a number", parse, {**_NUMBER, "minimum": least, "maximum": most})


def fraction() -> One[float]:
    """A share of a whole, 0 to 1, or as a percentage."""

    def parse(said: Said, notes: Notes) -> float:
        percent = said.rstrip().endswith("%")
        value = read_quantity(said, "percent").value / 100 if percent else read_number(said)
        _check_range(said, value, 0, 1)
        return value

    return One("a number from 0 to 1", parse, _NUMBER)


def date() -> One[When]:
    """A date or a span of time. Warns where the ISO form may have been meant as years."""

    def parse(said: Said, notes: Notes) -> When:
        when = read_when(said)
        warned = doubt(said)
        if warned:
            notes.faults.append(warned)
        return when

    return One("a date", parse, {"type": ["string", "integer"]})


def measure(dimension: str, least: float, most: float, unit: str = "mm") -> One[float]:
    """A quantity of one dimension within limits, in its base unit, which `unit` names for messages."""

    def parse(said: Said, notes: Notes) -> float:
        value = read_quantity(said, dimension).value
        _check_range(said, value, least, most, f" {unit}")
        return value

    return One(wants(dimension)[0], parse, {"type": "string"})


def any_quantity() -> One[Quantity]:
    """A quantity of any dimension, or a bare number."""
    return One("a quantity", lambda said, notes: read_quantity(said), _NUMBER)


def type_size(least: float, most: float) -> One[float]:
    """A size of letters in mm, written in mm or pt."""

    def parse(said: Said, notes: Notes) -> float:
        value = read_type_size(said)
        _check_range(said, value, least, most, " mm")
        return value

    return One("a size of letters", parse, {"type": "string"})


def size() -> One[tuple[float, float]]:
    """A width and a height in mm."""
    return One("a width and a height", lambda said, notes: read_size(said), {"type": "string"})


def degrees(letters: str) -> One[float]:
    """A latitude ("NS") or a longitude ("EW")."""
    return One("degrees", lambda said, notes: read_degrees(said, letters), _NUMBER)


def link() -> One[Said]:
    """A web address: http or https, and nothing else."""

    def parse(said: Said, notes: Notes) -> Said:
        text = unquoted(said)
        if not re.fullmatch(r"(?i)https?://[^\s/?#@<>\"\\]+\.[^\s/?#@<>\"\\]+(?:[/?#][^\s<>\"]*)?", text):
            bare = re.fullmatch(r"(?:www\.)?[\w-]+(?:\.[\w-]+)+(?:[/?#]\S*)?", text)
            example = f"https://{text}" if bare else "https://example.org/page"
            raise Misread(messages.NOT_LINK, text=snippet(said), example=snippet(example))
        _check_length(said, MAX_LINK)
        return Said(text, said.at)

    return One("a web address", parse, {"type": "string", "pattern": "^[Hh][Tt][Tt][Pp][Ss]?://"})


def isbn() -> One[Said]:
    """The number of a book, of 10 or 13 digits. Warns if its check digit does not fit."""

    def parse(said: Said, notes: Notes) -> Said:
        text = " ".join(unquoted(said).split())
        _check_length(said, MAX_NAME)
        if not is_isbn(text):
            notes.add(messages.NOT_ISBN, said.at, text=snippet(said))
        return Said(text, said.at)

    return One("an ISBN", parse, _SCALAR)


def is_isbn(text: str) -> bool:
    """True for an ISBN whose check digit fits: of 13 digits weighted 1, 3, 1, 3 ..., of 10 weighted 10 down to 1.

    ISO 2108, as explained in the ISBN Users' Manual (International ISBN Agency): the sums are multiples of 10 and 11.
    """
    plain = re.sub(r"[\s-]|^(?i:isbn):?", "", text).upper()
    if re.fullmatch(r"97[89]\d{10}", plain):
        return sum(int(digit) * (3 if place % 2 else 1) for place, digit in enumerate(plain)) % 10 == 0
    if re.fullmatch(r"\d{9}[\dX]", plain):
        values = [10 if digit == "X" else int(digit) for digit in plain]
        return sum(value * (10 - place) for place, value in enumerate(values)) % 11 == 0
    return False


def language() -> One[str]:
    """A language tag (BCP 47), such as en or pt-BR."""

    def parse(said: Said, notes: Notes) -> str:
        if not re.fullmatch(r"[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*", said):
            raise Misread(messages.NOT_LANGUAGE, text=snippet(said))
        return str(said)

    return One("a language code", parse, {"type": "string"})


def inside(what: str) -> One[tuple[Path, Said]]:
    """A file in the study's own folder, links on the disk followed: its path, and the text as written."""

    def parse(said: Said, notes: Notes) -> tuple[Path, Said]:
        text = unquoted(said).replace("\\", "/")
        if re.match(r"(?i)[a-z][a-z0-9+.-]+://?", text):
            raise Misread(messages.PATH_WEB, text=snippet(said), name=snippet(text.rsplit("/", 1)[-1] or "picture.png"))
        root = notes.folder.resolve()
        wanted = notes.folder / text
        try:
            path = wanted.resolve()
            exists, is_file = path.exists(), path.is_file()
        except (OSError, RuntimeError, ValueError):
            raise Misread(messages.PATH_MISSING, text=snippet(said), hint=_pictures(notes.folder, text)) from None
        if re.match("[A-Za-z]:/|/|~", text) or not path.is_relative_to(root):
            raise Misread(messages.PATH_OUTSIDE, text=snippet(said), name=snippet(path.name))
        if not exists:
            raise Misread(messages.PATH_MISSING, text=snippet(said), hint=_pictures(notes.folder, text))
        if not is_file:
            raise Misread(messages.PATH_FOLDER, text=snippet(said))
        return path, said

    return One(f"the path of {what}", parse, {"type": "string"})


def one_of(key: str, message: messages.Message, what: str) -> One[Said]:
    """One of the names the caller of the reader knows, under `key` in `Notes.known`; any name if it knows none."""

    def parse(said: Said, notes: Notes) -> Said:
        return known_name(said, notes.known.get(key, ()), message)

    return One(what, parse, {"type": "string"})


def known_name(said: Said, known: Collection[str], message: messages.Message) -> Said:
    """The name as it is known, or the text itself if nothing is known. Raises Misread if it is none of them."""
    forms = {key_form(word): word for word in known}
    form = key_form(said)
    if not forms or form in forms:
        return Said(forms.get(form, unquoted(said)), said.at)
    near = nearest(form, forms)
    hint = f" Is `{forms[near]}` meant?" if near else ""
    raise Misread(message, text=snippet(said), words=", ".join(known), hint=hint)


def _check_length(said: Said, most: int) -> None:
    if len(said) > most:
        raise Misread(messages.TOO_LONG, count=len(said), most=most)


def _check_range(said: Said, value: float, least: float, most: float, unit: str = "") -> None:
    if not least <= value <= most:
        raise Misread(messages.OUT_OF_RANGE, text=snippet(said), least=f"{least:g}{unit}", most=f"{most:g}{unit}")


def _pictures(folder: Path, text: str) -> str:
    """A hint at a file whose name is like the one that is missing, in the folder where it should be."""
    wanted = Path(text)
    try:
        beside = sorted(p.name for p in (folder / wanted.parent).iterdir() if p.is_file())
    except (OSError, ValueError):
        return "Put it there, or write its path from that folder, with / between folder and file."
    near = nearest(wanted.name, {p.lower() for p in beside})
    found = next((p for p in beside if p.lower() == near), None)
    return f"Is `{(wanted.parent / found).as_posix()}` meant?" if found else "Put it there, or correct the name."
