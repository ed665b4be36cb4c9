"""The few events of a life that are told to the youngest: those of their own story, and none that is sad."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from packgen.planning.life import chosen_events
from packgen.planning.plan import life_at
from packgen.reading.models import Event, Study

# Words that tell of death, loss and war. Such events are for the parent to tell, not for a child of four to draw.
_SAD = re.compile(
    r"\b(die[sd]?|dying|dead|deaths?|kill\w*|murder\w*|executed?|execution|hanged|drown\w*|lost|loses|wreck\w*|buried|"
    r"burie[sd]|burial|funeral|graves?|war|wars|battles?|shot|prison\w*|jail\w*|ill|illness|sick|sickness|plague|"
    r"widow\w*|orphan\w*|suicide|slaves?|slavery|enslaved|burn(s|ed|t)? down|fire destroys|miscarr\w*|stillborn)\b",
    re.IGNORECASE,
)
_PLAIN = frozenset({"from", "with", "that", "this", "then", "they", "them", "when", "were", "have", "into", "over"})


def is_sad(event: Event) -> bool:
    """True if the words for an event tell of death, loss or war."""
    return bool(_SAD.search(f"{event.short or ''} {event.what}"))


def gentle_events(study: Study, most: int) -> tuple[Event, ...]:
    """At most `most` dated events for the youngest, in order of time.

    Those after the person's death and sad ones are left out. The first stays; of the others those come first that
    share most words with the story told at that age. If all are sad, those before the death are kept.
    """
    died = study.died.start.year if study.died and study.died.start else None
    every = chosen_events(study)
    lived = [e for e in every if died is None or _year(e) < died]
    kept = [e for e in lived if not is_sad(e)] or lived or list(every)
    if len(kept) <= most:
        return tuple(kept)
    told = _words(str(life_at(study, "first") or ""))
    first, *others = kept
    chosen = sorted(_spread(others, told), key=lambda pair: pair[0])[: most - 1]
    picked = [event for _, event in chosen]
    return tuple(event for event in kept if event is first or any(event is p for p in picked))


def _spread(events: Sequence[Event], told: Collection[str]) -> list[tuple[tuple[int, bool, int], Event]]:
    """Each event with its rank: how few words it shares with what is told, if it has no short wording, its turn."""
    ranked = []
    for k, event in enumerate(events):
        shared = len(_words(str(event.short or event.what)) & set(told))
        ranked.append(((-shared, not event.short, int(f"{k + 1:016b}"[::-1], 2)), event))
    return ranked


def _words(text: str) -> set[str]:
    """The words of a text that carry meaning, in small letters and without the s of the plural."""
    words = (word.lower().removesuffix("s") for word in re.findall(r"\w+", text))
    return {word for word in words if len(word) > 3 and word not in _PLAIN}


def _year(event: Event) -> int:
    day = event.when.start or event.when.end
    assert day is not None
    return day.year
