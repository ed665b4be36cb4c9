"""In which week each word is learned: with the chapter, picture or making that uses it, the others where there is room.

No level gets many words at once: where a week has its share, a word comes a week or more before it is used. A word that
only the life speaks of comes with the life, in the first week.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence

from packgen.planning.weeks import Making
from packgen.reading.models import LEVELS, Chapter, Study, Word, Work


def words_by_week(study: Study, chapters: Sequence[Sequence[Chapter]], works: Sequence[Sequence[Work]],
                  makings: Sequence[Sequence[Making]]) -> list[tuple[Word, ...]]:  # fmt: skip
    """The words of each week, given the chapters, new works and makings of each; every word once.

    Words that nothing uses are spread over the weeks with a chapter or a work, or over all weeks if none has.
    """
    texts = [_text(study, *week) for week in zip(chapters, works, makings, strict=True)]
    dealt = _Dealt(study, len(texts))
    loose: dict[tuple[str, ...], list[Word]] = {}
    for word in study.words:
        used = _first_use(word, texts, study)
        if used is None:
            loose.setdefault(tuple(map(str, word.levels)), []).append(word)
        else:
            dealt.put(word, dealt.upto(word, used))
    open_weeks = [w for w, week in enumerate(zip(chapters, works, strict=True)) if any(week)] or list(range(len(texts)))
    for group in loose.values():
        dealt.spread(group, open_weeks)
    order = {id(word): place for place, word in enumerate(study.words)}
    return [tuple(sorted(week, key=lambda word: order[id(word)])) for week in dealt.weeks]


class _Dealt:
    """Words put into weeks so far, with how many of them each level has in each."""

    def __init__(self, study: Study, weeks: int) -> None:
        self.weeks: list[list[Word]] = [[] for _ in range(weeks)]
        own = {level: sum(level in _levels(word) for word in study.words) for level in LEVELS}
        # one more than an even share, so that a picture's words may stay together
        self._most = {level: -(-count // weeks) + 1 for level, count in own.items()}

    def put(self, word: Word, week: int) -> None:
        """The word into the week."""
        self.weeks[week].append(word)

    def has(self, week: int, level: str) -> int:
        """How many words of a level the week has."""
        return sum(level in _levels(word) for word in self.weeks[week])

    def upto(self, word: Word, used: int) -> int:
        """The last week up to that of its use that has room for the word; that of its use if none has."""
        roomy = (
            w for w in range(used, -1, -1) if all(self.has(w, level) < self._most[level] for level in _levels(word))
        )
        return next(roomy, used)

    def spread(self, group: Sequence[Word], weeks: Sequence[int]) -> None:
        """Words for the same levels, in order and evenly apart, over the weeks with the fewest words for these."""
        chosen: list[int] = []
        for place in range(len(group)):
            ideal = (2 * place + 1) * len(weeks) // (2 * len(group))
            count = {w: chosen.count(w) + max(self.has(w, level) for level in _levels(group[0])) for w in weeks}
            chosen.append(min(weeks, key=lambda w: (count[w], abs(weeks.index(w) - ideal), w)))
        for word, week in zip(group, sorted(chosen), strict=True):
            self.put(word, week)


def _levels(word: Word) -> Collection[str]:
    return tuple(map(str, word.levels)) or LEVELS


def _first_use(word: Word, texts: Sequence[str], study: Study) -> int | None:
    """The first week, from 0, whose texts have the word; the first if only the life has it; None if nothing has."""
    used = next((w for w, text in enumerate(texts) if _has(text, word)), None)
    if used is None and any(_has(str(told), word) for level, told in study.life if level in _levels(word)):
        return 0
    return used


def _has(text: str, word: Word) -> bool:
    return bool(re.search(rf"\b{re.escape(str(word.word).casefold())}(?:s|es|ed|ing)?\b", text.casefold()))


def _text(study: Study, chapters: Iterable[Chapter], works: Iterable[Work], makings: Iterable[Making]) -> str:
    """Everything that a week says of its chapters, its new works and its makings."""
    said = [str(chapter.title) for chapter in chapters]
    for work in works:
        said += [str(words) for words in (work.title, work.tell or "", *work.look, *work.look_first)]
        said += [str(detail.name) for detail in work.details]
    for making in makings:
        if making.kind == "challenge":
            challenge = study.challenges[making.number]
            said += [str(challenge.title), str(challenge.brief)]
        elif making.kind == "model":
            model = study.models[making.number]
            said += [str(model.title), str(model.about or "")]
    return "\n".join(said)
