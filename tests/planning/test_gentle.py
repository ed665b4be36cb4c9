"""Events for the youngest: few, gentle, of their own story, the first among them, in order of time."""

from __future__ import annotations

from pathlib import Path

import pytest

from packgen.faults import Said
from packgen.planning.gentle import gentle_events, is_sad
from packgen.reading.dates import read_when
from packgen.reading.models import Event, Study


def event(when: str, what: str, short: str = "") -> Event:
    return Event(read_when(Said(when)), Said(what), Said(short) if short else None)


def study(*events: Event, died: str = "", told: str = "") -> Study:
    return Study(
        Said("Ada"), Said("artist"), Said("A painter."), Path(), timeline=events,
        died=read_when(Said(died)) if died else None, life=(("first", Said(told)),) if told else (),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("what", "sad"),
    [("Isaure dies in Saltmere", True), ("The boat is lost", True), ("War comes to the town", True),
     ("Her husband is killed", True), ("She lets a lamp hang on the quay", False), ("A diet of apples", False),
     ("She wins a prize", False), ("The graveyard wall", False)],
)  # fmt: skip
def test_sad_words_are_whole_words(what: str, sad: bool) -> None:
    assert is_sad(event("1834", what)) is sad


def test_the_first_event_and_those_of_the_story_are_chosen() -> None:
    events = [event("1800", "Ada is born"), *(event(str(1801 + k), f"Business {k}") for k in range(9)),
              event("1830", "She paints a lemon"), event("1840", "Ada dies")]  # fmt: skip
    chosen = gentle_events(study(*events, died="1840", told="Ada loved lemons and paint."), 3)
    assert len(chosen) == 3 and str(chosen[0].what) == "Ada is born" and str(chosen[-1].what) == "She paints a lemon"


def test_a_life_of_sad_events_only_still_has_those_before_the_death() -> None:
    events = [event("1800", "Her father dies"), event("1810", "A war begins"), event("1840", "Ada dies")]
    assert [str(e.what) for e in gentle_events(study(*events, died="1840"), 3)] == ["Her father dies", "A war begins"]


def test_without_dates_there_is_nothing() -> None:
    assert gentle_events(study(), 3) == ()
