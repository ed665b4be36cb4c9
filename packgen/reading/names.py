"""Plain words from what a parent wrote: tidied text, keys in one spelling, and names fit for folders and ids."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

_LEFT_OUT = re.compile("[\u00ad\u200b\u2060\ufeff\u200e\u200f\u202a-\u202e\u2066-\u2069]")
_SPACES = re.compile(" {2,}")
_BREAKS = re.compile("\n{3,}")
_BETWEEN_WORDS = re.compile(r"[\s_\-]+")
_QUOTES = "\"'“”„‟‘’‚‛«»‹›`"
_RESERVED = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10)), "parent"}


def tidy(text: str) -> str:
    """The text in composed letters (Unicode NFC), without invisible marks and spare spaces; its line breaks stay."""
    if not text.isascii():
        text = _LEFT_OUT.sub("", unicodedata.normalize("NFC", text))
    text = text.replace("\t", " ")
    if "  " in text:
        text = _SPACES.sub(" ", text)
    if "\n" not in text:
        return text.strip()
    return _BREAKS.sub("\n\n", "\n".join(line.strip(" ") for line in text.split("\n"))).strip()


def unquoted(text: str) -> str:
    """The text without quotes of any kind around it: for dates, measures and names of things, never for prose."""
    text = text.strip()
    while len(text) > 2 and text[0] in _QUOTES and text[-1] in _QUOTES:
        text = text[1:-1].strip()
    return text


@lru_cache(maxsize=1024)
def key_form(key: str) -> str:
    """A key in one spelling: small letters, and a space where a hyphen, an underscore or several spaces stood."""
    return _BETWEEN_WORDS.sub(" ", unquoted(key)).strip().casefold()


def snippet(text: str, most: int = 60) -> str:
    """The text on one line and short enough to stand in a message."""
    line = " ".join(text.split())
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"


def slug(text: str, empty: str = "x") -> str:
    """A name for a folder, a file or an id: small letters of any script and digits, with hyphens between.

    Accents leave Latin letters only, because marks on other scripts change the letter. Names that Windows keeps for
    itself, and `parent`, which holds the parent's own pages, get a `-1`. At most 60 letters; `empty` if none is left.
    """
    kept: list[str] = []
    latin = False
    for letter in unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", text).casefold()):
        mark = unicodedata.category(letter).startswith("M")
        if not mark:
            latin = "a" <= letter <= "z"
        if letter.isalnum() or (mark and not latin):
            kept.append(letter)
        elif not mark and letter not in "'’":
            kept.append("-")
    made = unicodedata.normalize("NFC", "".join(kept))
    made = re.sub("-+", "-", made)[:60].strip("-")
    if not made:
        return empty
    return f"{made}-1" if made in _RESERVED else made
