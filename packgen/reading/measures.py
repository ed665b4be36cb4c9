"""Numbers, lengths, masses, times and any other quantity as people write them: `3 1/4 in`, `1,5 m`, `2 lb 3 oz`.

A decimal comma is understood; a comma before exactly three digits groups thousands, as in `1,200 mm`, unless the
number begins with 0.
"""

from __future__ import annotations

import math
import re

from packgen.faults import nearest
from packgen.reading import messages
from packgen.reading.messages import Misread
from packgen.reading.names import snippet, tidy, unquoted
from packgen.units import BASE, MM_PER_POINT, UNITS, Quantity, Unit, quantity, unit

_MAX_LETTERS = 80
_LARGEST = 1e15
_FRACTIONS = {
    "½": 1 / 2, "⅓": 1 / 3, "⅔": 2 / 3, "¼": 1 / 4, "¾": 3 / 4, "⅕": 1 / 5, "⅖": 2 / 5, "⅗": 3 / 5, "⅘": 4 / 5,
    "⅙": 1 / 6, "⅚": 5 / 6, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8,
}  # fmt: skip
_WANTS = {
    "length": ("a length", "80 mm, 8 cm or 3 1/4 in"),
    "mass": ("a mass", "250 g or 9 oz"),
    "time": ("a time", "30 s, 2 min or 1:30"),
    "angle": ("an angle", "30 deg"),
    "temperature": ("a temperature", "20 °C"),
    "volume": ("a volume", "250 ml or 1 cup"),
    "speed": ("a speed", "5 m/s or 11 mph"),
    "force": ("a force", "2 N"),
    "frequency": ("a number of turns or beats", "60 rpm or 2 Hz"),
    "grammage": ("a paper's weight", "160 g/m²"),
    "count": ("a number without a unit", "6"),
    "percent": ("a percentage", "25 %"),
}
_FRACTION = r"\d+ ?[/⁄] ?\d+"
_GROUPED = (
    r"\d{1,3}(?:[ _]\d{3})+(?:[.,]\d+)?|[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?"
    r"|\d{1,3}(?:\.\d{3})+,\d+|\d{1,3}(?:\.\d{3}){2,}"
)
_DECIMAL = r"\d+(?:_\d+)*(?:[.,]\d+)?(?:[eE][+-]?\d{1,3})?|[.,]\d+"
_NUMBER = re.compile(
    rf"(?P<sign>[+-]?) ?(?:(?P<whole>\d+)(?: ?- ?| )(?P<part>{_FRACTION})|(?P<fraction>{_FRACTION})"
    rf"|(?P<stem>\d*) ?(?P<glyph>[{''.join(_FRACTIONS)}])"
    rf"|(?P<grouped>(?:{_GROUPED})(?![\d/]))|(?P<decimal>{_DECIMAL}))",
    re.ASCII,
)
_CLOCK = re.compile(r"(?:(\d{1,3}):)?(\d{1,3}):([0-5]\d(?:[.,]\d+)?)", re.ASCII)
_ABOUT = re.compile(r"^(?:about|around|circa|ca\.?|c\.|approx\.?|approximately|~|≈)\s*", re.IGNORECASE)
_SIZE_SIDES = (("w", "wide", "width", "across"), ("h", "high", "height", "tall"))


def read_number(said: str) -> float:
    """The number a text is: `010` is ten, `1_000` and `1 000` a thousand, `3 1/4` and `3¼` three and a quarter."""
    text = _normal(said)
    found = _number_at(text, 0)
    if found is None or found[1] != len(text):
        raise Misread(messages.NOT_NUMBER, text=snippet(said))
    if abs(found[0]) > _LARGEST:
        raise Misread(messages.TOO_BIG, text=snippet(said))
    return found[0]


def read_quantity(said: str, dimension: str | None = None) -> Quantity:
    """The quantity a text is. `dimension` is a key of `units.BASE`; None allows any, and then no unit is a count.

    Parts of falling units add up: `5' 3"`, `2 lb 3 oz`, `1 min 30 s`. Where a time is wanted, `1:30` is 1 min 30 s.
    Raises Misread for a unit that is missing, unknown or of another dimension, with what to write instead.
    """
    text = _ABOUT.sub("", _normal(said))
    if dimension == "time" and (clock := _CLOCK.fullmatch(text)):
        hours, minutes, seconds = clock.groups()
        value = int(hours or 0) * 3600 + int(minutes) * 60 + float(seconds.replace(",", "."))
        return Quantity(value, "time", "min")
    parts = _parts(text, said, dimension)
    first, first_unit = parts[0]
    found = quantity(first, first_unit.symbol)
    if dimension == "percent" and found.dimension == "count":
        found = Quantity(found.value, "percent", "%")
    if dimension is not None and found.dimension != dimension:
        raise _wrong_dimension(said, found.dimension, dimension)
    sign = -1 if text.startswith("-") else 1
    value = found.value + sign * sum(number * part.factor for number, part in parts[1:])
    if not math.isfinite(value) or abs(value) > _LARGEST:
        raise Misread(messages.TOO_BIG, text=snippet(said))
    return Quantity(value, found.dimension, found.unit)


def read_length(said: str) -> float:
    """A length in mm."""
    return read_quantity(said, "length").value


def read_type_size(said: str) -> float:
    """A size of letters in mm; `13 pt` may be written as well."""
    text = _normal(said)
    found = re.fullmatch(r"(.+?) ?(?:pt|points?)\.?", text, re.IGNORECASE)
    return read_number(found[1]) * MM_PER_POINT if found else read_length(said)


def read_size(said: str) -> tuple[float, float]:
    """A width and a height in mm: `420 x 310 mm`, `42 cm wide × 31 cm high`, `50 cm across` for a round work."""
    text = _ABOUT.sub("", _normal(said))
    if found := re.fullmatch(r"(?:diameter|diam\.?|⌀|ø) ?(.+)|(.+) (?:across|in diameter|diameter|diam\.?)", text):
        across = read_length(found[1] or found[2])
        return across, across
    sides = [side.strip() for side in re.split(r"(?<=[\d\s\"'½¼¾a-zA-Z.])(?:[x×*X]|\bby\b)(?=[\s\d½¼¾a-zA-Z])", text)]
    sides = [side for side in sides if side]
    if len(sides) != 2:
        raise Misread(messages.NOT_SIZE, text=snippet(said))
    named = [_side(side) for side in sides]
    lengths = [name[1] for name in named]
    if not re.search(r"[^\W\d]|[\"'″′]", lengths[1]):
        raise Misread(messages.NOT_SIZE, text=snippet(said))
    if re.fullmatch(r"[\d\s.,/½¼¾⅓⅔⅛⅜⅝⅞-]+", lengths[0]):
        lengths[0] += " " + _unit_text(lengths[1])
    width, height = (read_length(length) for length in lengths)
    if named[0][0] == 1 or named[1][0] == 0:
        width, height = height, width
    if width <= 0 or height <= 0:
        raise Misread(messages.NOT_SIZE, text=snippet(said))
    return width, height


def read_degrees(said: str, letters: str) -> float:
    """A latitude (`letters` is "NS") or longitude ("EW") in degrees, north and east positive: `50.4`, `50° 24' N`."""
    text = _normal(said).upper()
    found = re.fullmatch(
        rf"([{letters}])? ?([+-]?[\d.,]+) ?°?(?: ?([\d.,]+) ?')?(?: ?([\d.,]+) ?\")? ?([{letters}])?", text, re.ASCII
    )
    if not found or (found[1] and found[5]):
        raise Misread(messages.NOT_DEGREES, text=snippet(said))
    degrees, minutes, seconds = (read_number(part) if part else 0.0 for part in found.group(2, 3, 4))
    value = math.copysign(abs(degrees) + minutes / 60 + seconds / 3600, degrees)
    if found[2].startswith("-"):
        value = -abs(value)
    value = -value if (found[1] or found[5]) == letters[1] else value
    most = 90 if letters == "NS" else 180
    if abs(value) > most or minutes >= 60 or seconds >= 60:
        raise Misread(messages.OUT_OF_RANGE, text=snippet(said), least=f"-{most}", most=most)
    return value


def wants(dimension: str | None) -> tuple[str, str]:
    """A dimension in words and an example: ("a length", "80 mm, 8 cm or 3 1/4 in")."""
    if dimension is None:
        return "a quantity", "60 mm, 250 g or 6"
    # A dimension that came into the table of units later still has words.
    return _WANTS.get(dimension) or (f"a value of {dimension}", f"2 {BASE.get(dimension, '')}".strip())


def starts_with_number(text: str) -> bool:
    """True if the text begins as a number does."""
    return _number_at(_ABOUT.sub("", _normal(text)), 0) is not None


def _normal(said: str) -> str:
    """The text with one kind of space, minus, prime and quote, and without quotes around the whole."""
    text = re.sub("[\u00a0\u2007\u2009\u202f]", " ", tidy(said))
    text = re.sub("[’‘′]", "'", re.sub("[”“″]", '"', text)).replace("''", '"')
    inner = unquoted(text)
    if len(inner) == len(text) - 2 and text[0] == text[-1]:
        text = inner
    text = re.sub("[\u2010\u2011\u2212]", "-", text)
    if len(text) > _MAX_LETTERS:
        raise Misread(messages.NOT_NUMBER, text=snippet(text))
    return text


def _number_at(text: str, start: int) -> tuple[float, int] | None:
    """The number that begins at a place of the text, and where it ends."""
    found = _NUMBER.match(text, start)
    if not found:
        return None
    sign = -1.0 if found["sign"] == "-" else 1.0
    if found["glyph"]:
        value = int(found["stem"] or 0) + _FRACTIONS[found["glyph"]]
    elif found["part"] or found["fraction"]:
        above, below = (int(n) for n in re.split("[/⁄]", found["part"] or found["fraction"]))
        if below == 0:
            raise Misread(messages.NOT_NUMBER, text=snippet(text))
        value = int(found["whole"] or 0) + above / below
    elif found["grouped"]:
        digits = re.sub("[ _]", "", found["grouped"])
        last = max(digits.rfind("."), digits.rfind(","))
        decimals = last >= 0 and not re.fullmatch(r"[1-9]\d{0,2}(?:,\d{3})+|\d{1,3}(?:\.\d{3}){2,}", digits)
        whole = re.sub("[.,]", "", digits[:last] if decimals else digits)
        value = float(f"{whole}.{digits[last + 1 :]}" if decimals else whole)
    else:
        value = float(found["decimal"].replace("_", "").replace(",", "."))
    return sign * value, found.end()


def _parts(text: str, said: str, dimension: str | None) -> list[tuple[float, Unit]]:
    """Numbers with their units, each unit smaller than the one before."""
    parts: list[tuple[float, Unit]] = []
    at = 0
    while at < len(text) or not parts:
        number = _number_at(text, at)
        if number is None or (parts and number[0] < 0):
            words, example = wants(dimension)
            raise Misread(messages.NOT_MEASURE, text=snippet(said), wants=words, example=example)
        found, at = _unit_at(text, number[1], said, dimension)
        if parts and (found.dimension != parts[0][1].dimension or found.factor >= parts[-1][1].factor or found.offset):
            words, example = wants(dimension)
            raise Misread(messages.NOT_MEASURE, text=snippet(said), wants=words, example=example)
        parts.append((number[0], found))
        at += len(text[at:]) - len(re.sub(r"^(?: ?(?:,|and|\+))? ?", "", text[at:]))
    return parts


def _unit_at(text: str, start: int, said: str, dimension: str | None) -> tuple[Unit, int]:
    """The longest unit that stands at a place of the text, and where it ends; the end of the text is no unit."""
    rest = text[start:].lstrip()
    start = len(text) - len(rest)
    if not rest:
        if dimension in (None, "count", "percent"):
            return UNITS[""], start
        words, example = wants(dimension)
        raise Misread(messages.NO_UNIT, text=snippet(said), wants=words, example=example)
    for length in range(min(len(rest), 24), 0, -1):
        name, after = rest[:length], rest[length : length + 1]
        if (after.isalpha() and name[-1].isalpha()) or name != name.strip():
            continue
        try:
            found = unit(name)
        except KeyError:
            continue
        return found, start + length + (after == ".")
    word = re.match(r"[^\d\s]+", rest)
    raise _unknown_unit(word.group() if word else rest, said, dimension)


def _unknown_unit(word: str, said: str, dimension: str | None) -> Misread:
    words, example = wants(dimension)
    known = [name for name, u in UNITS.items() if name and (dimension is None or u.dimension == dimension)]
    near = nearest(word, known)
    hint = f"Is `{near}` meant? " if near else ""
    if not word[0].isalpha():
        return Misread(messages.NOT_MEASURE, text=snippet(said), wants=words, example=example)
    return Misread(messages.UNKNOWN_UNIT, unit=snippet(word, 20), hint=f"{hint}Write {words} such as {example}.")


def _wrong_dimension(said: str, found: str, dimension: str) -> Misread:
    words, example = wants(dimension)
    return Misread(messages.WRONG_DIMENSION, text=snippet(said), found=wants(found)[0], wants=words, example=example)


def _side(text: str) -> tuple[int | None, str]:
    """Which side a length is said to be (0 width, 1 height, None unsaid), and the length."""
    for index, names in enumerate(_SIZE_SIDES):
        for name in names:
            if found := re.fullmatch(rf"(?:{name}\.?:? ?)(?=\d)(.+)|(.+?)(?: {name}\.?)", text, re.IGNORECASE):
                return index, (found[1] or found[2]).strip()
    return None, text


def _unit_text(length: str) -> str:
    found = re.search(r"[^\W\d].*$|[\"']$", length)
    return found.group() if found else ""
