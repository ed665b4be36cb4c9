"""How hard a text is to read, by the Flesch-Kincaid grade, and which sentences and words make it hard.

grade = 0.39 words / sentences + 11.8 syllables / words - 15.59 (Kincaid, Fishburne, Rogers and Chissom, 1975; the
figures as in PMC5890371, table 2). A grade is a US school year, so about the age less 5 at the year's start. The
formula is made for English running text of some length; for one sentence it only ranks. Names and words the study
teaches are taken as one syllable: a child who hears the study has them by heart.
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from packgen.faults import Fault, Place, Said, place_of, warning
from packgen.planning.syllables import syllables
from packgen.reading.models import Study

FEWEST_WORDS = 5
LONG_WORD = 3
VERY_LONG_WORD = 4
HARDEST = 3
SPLIT_FROM = 12
_WORD = re.compile(r"\d+(?:[.,:]\d+)*|[^\W\d_]+(?:['’][^\W\d_]+)*")
_SHORTENED = frozenset(
    {"mr", "mrs", "ms", "dr", "st", "prof", "rev", "capt", "c", "ca", "e.g", "i.e", "vol", "fig", "pp", "approx"}
)
_END = re.compile(r"[.!?…]+[\"'”’)\]]*(?=\s|$)|\n\s*\n")


@dataclass(frozen=True, slots=True)
class Count:
    """Words, sentences and syllables of a text."""

    words: int
    sentences: int
    syllables: int

    @property
    def grade(self) -> float:
        """The Flesch-Kincaid grade; 0 for a text without words."""
        return grade_of(self.words, self.sentences, self.syllables) if self.words else 0.0


@dataclass(frozen=True, slots=True)
class HardSentence:
    """A sentence above the ceiling: its text's place, its grade, its number of words, its three hardest words."""

    place: Place
    sentence: str
    grade: float
    length: int
    words: tuple[str, ...]


def grade_of(words: int, sentences: int, syllables_: int) -> float:
    """The Flesch-Kincaid grade from counts. Raises ZeroDivisionError without words or sentences."""
    return 0.39 * words / sentences + 11.8 * syllables_ / words - 15.59


def sentences(text: str) -> tuple[str, ...]:
    """The sentences of a text. A stop after `Mr`, `c.` or a single initial, and one inside a number, ends none.

    >>> sentences("Mr. Quay came at 4.30 p.m. on a Monday. Who saw him?")
    ('Mr. Quay came at 4.30 p.m. on a Monday.', 'Who saw him?')
    """
    found: list[str] = []
    start = 0
    for end in _END.finditer(text):
        if _goes_on(text, end):
            continue
        found.append(" ".join(text[start : end.end()].split()))
        start = end.end()
    found.append(" ".join(text[start:].split()))
    return tuple(sentence for sentence in found if _WORD.search(sentence))


def _goes_on(text: str, end: re.Match[str]) -> bool:
    """True if what follows carries the sentence on: small letters (`'Stop!' she said`), or a shortened word before."""
    after = text[end.end() :].lstrip()
    if not end.group().strip() or not after:
        return False
    if after[0].islower():
        return True
    before = text[: end.start()].split()
    word = before[-1].lstrip("(\"'“‘[") if before else ""
    initial = len(word) == 1 and word.isupper() and word != "I"
    initials = "." in word and word.isupper()
    return end.group() == "." and (initial or initials or word.casefold() in _SHORTENED)


def words(text: str) -> tuple[str, ...]:
    """The words of a text, numbers among them; a hyphen parts two words."""
    return tuple(_WORD.findall(text))


def count(text: str, known: Collection[str] = ()) -> Count:
    """Words, sentences and syllables; `known` words (folded, see `fold`) count one syllable."""
    found = words(text)
    return Count(len(found), len(sentences(text)), sum(_weight(word, known) for word in found))


def fold(word: str) -> str:
    """The form in which words are compared: small letters, no accents, no possessive."""
    plain = "".join(c for c in unicodedata.normalize("NFD", word.casefold()) if not unicodedata.combining(c))
    return re.sub(r"['’]s?$", "", plain)


def _weight(word: str, known: Collection[str]) -> int:
    folded = fold(word)
    return 1 if folded in known or folded.removesuffix("s") in known else syllables(folded)


def known_words(study: Study) -> frozenset[str]:
    """Words that are not hard in this study: its names, its titles' capital words, and the words it teaches."""
    spots = [study.place, *(work.held_at for work in study.works)]
    named: list[str] = [study.study, *(spot.name for spot in spots if spot)]
    titles: list[str] = [
        *(work.title for work in study.works),
        *(work.held for work in study.works if work.held),
        *(model.title for model in study.models),
        *(challenge.title for challenge in study.challenges),
    ]
    if study.book:
        titles += [study.book.title, *(chapter.title for chapter in study.book.chapters)]
        named += [study.book.author or ""]
    taught = [word.word for word in study.words]
    found = {fold(word) for text in (*named, *taught) for word in words(text)}
    return frozenset(found | {fold(word) for text in titles for word in words(text) if word[:1].isupper()})


def hard_sentences(
    texts: Iterable[Said | str], grade: float, known: Collection[str] = (), language: str = "en"
) -> tuple[HardSentence, ...]:
    """The sentences above the grade, in the order of the texts; none for a language the formula is not made for.

    A sentence under five words is let pass unless one of them has four syllables: the formula makes too much of one
    long word in so few.
    """
    if not language.casefold().startswith("en"):
        return ()
    found: list[HardSentence] = []
    for text in texts:
        for sentence in sentences(text):
            counted = count(sentence, known)
            by_weight = sorted(dict.fromkeys(words(sentence)), key=lambda word: (-_weight(word, known), -len(word)))
            longest = _weight(by_weight[0], known)
            if grade_of(counted.words, 1, counted.syllables) <= grade:
                continue
            if counted.words < FEWEST_WORDS and longest < VERY_LONG_WORD:
                continue
            hardest = tuple(word for word in by_weight if _weight(word, known) >= LONG_WORD)[:HARDEST]
            found.append(HardSentence(place_of(text), sentence, counted.grade, counted.words, hardest))
    return tuple(found)


def as_warnings(hard: Iterable[HardSentence], grade: float) -> tuple[Fault, ...]:
    """The hard sentences as warnings: the pages still build."""
    return tuple(
        warning(
            sentence.place,
            f"'{_shortened(sentence.sentence)}' reads at about grade {math.ceil(sentence.grade)}, "
            f"above grade {grade:g}",
            _advice(sentence),
        )
        for sentence in hard
    )


def _advice(sentence: HardSentence) -> str:
    if not sentence.words:
        return f"It has {sentence.length} words: make two sentences of it."
    split = ", or make two sentences of it" if sentence.length >= SPLIT_FROM else ""
    return f"Use easier words for {', '.join(sentence.words)}{split}."


def _shortened(sentence: str) -> str:
    return sentence if len(sentence) <= 70 else sentence[:67].rsplit(" ", 1)[0] + " ..."
