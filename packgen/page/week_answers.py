"""The answers to what the children's sheets of a week ask, where they have one: timelines, maps, enlargements."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from packgen.page.blocks import Block
from packgen.page.desk import Desk
from packgen.page.lesson import Lesson
from packgen.page.timetable import Pairs, Step
from packgen.planning.life import YearsQuestion, chosen_events, timeline_questions
from packgen.planning.people import Person, names_of
from packgen.planning.places import MILE_KM, distance_km
from packgen.planning.stretches import busiest, longest_gap

_OUT = 0.05  # what a distance read off rounded degrees may be out
_SAME = 5.0  # km; places nearer to each other are one
_Row = tuple[str, str]


def answer_steps(lesson: Lesson) -> list[Block]:
    """The answers of the week, each sheet's under its own name."""
    return [*_timeline(lesson), *_map(lesson), *_area(lesson)]


def _due(lesson: Lesson, kind: str) -> tuple[Person, ...]:
    """Those who have a sheet of that kind, if it is for this week."""
    if not any(due.kind == kind for due in lesson.week.due):
        return ()
    return tuple(person for person in lesson.persons if kind in person.kinds)


def _step(lesson: Lesson, name: str, rows: Sequence[_Row], note: str, names: Sequence[Person]) -> list[Block]:
    if not rows:
        return []
    desk = lesson.desk
    return [Step(desk.say(name), (Pairs(tuple(rows), between=0.4),), (desk.say(note, names=names_of(names)),))]


# Timelines


def _timeline(lesson: Lesson) -> list[Block]:
    """The answers to the questions printed on timelines, in the week they are worked on."""
    desk = lesson.desk
    having = [person for person in _due(lesson, "timeline") if _asked(desk, person)]
    asked = [q for person in having for q in _asked(desk, person)]
    rows = [(q.answer, desk.say(f"ask_{q.kind}", q=q)) for q in dict.fromkeys(asked)]
    rows += dict.fromkeys(row for person in having for row in _stretches(desk, person))
    return _step(lesson, "answers_name", rows, "answers_note", having)


def _stretches(desk: Desk, person: Person) -> Iterator[_Row]:
    """The busiest ten years and the longest gap on a person's timeline."""
    events = chosen_events(desk.study, most_events(desk, person, _options(person)))
    most, gap = busiest(events), longest_gap(events)
    if most:
        yield f"{most.first}–{most.last}", desk.say("ask_busiest", count=most.count)
    if gap:
        yield f"{gap.first}–{gap.last}", desk.say("ask_longest_gap", years=gap.last - gap.first)


def _options(person: Person) -> dict[str, object]:
    return next((dict(item.options) for item in person.items if item.sheet == "timeline"), {})


def _asked(desk: Desk, person: Person) -> list[YearsQuestion]:
    """The questions printed on a person's timeline; none where it is drawn or glued."""
    options = _options(person)
    if str(options.get("form") or "read") == "read" and not person.young:
        events = chosen_events(desk.study, most_events(desk, person, options))
        return timeline_questions(desk.study, events, person.level)
    return []


def most_events(desk: Desk, person: Person, options: dict[str, object]) -> int | None:
    """How many events a person's timeline has, as its recipe says."""
    said = str(options.get("events", ""))
    if said.isdigit():
        return int(said)
    recipe = next((pack.recipe for pack in desk.packs if pack.folder == person.folder), None)
    return None if said == "all" or recipe is None else recipe.events


# Maps and enlargements


def _map(lesson: Lesson) -> list[Block]:
    """How far the places of the map lie from where the person lived: what may be read off rounded degrees."""
    desk, start = lesson.desk, lesson.desk.study.place
    having = [person for person in _due(lesson, "where-in-the-world") if not person.young]
    if not having or start is None:
        return []
    spots = [(str(work.held_at.name or work.held or work.title), work.held_at)
             for work in desk.study.works if work.held_at]  # fmt: skip
    spots += [(desk.say("map_home"), desk.family.place)] if desk.family.place else []
    rows: list[_Row] = []
    for name, spot in spots:
        away = distance_km(start, spot)
        if away is not None and away > _SAME and name not in [row[1] for row in rows]:
            rows.append((_between(desk, away), name))
    return _step(lesson, "map_name", rows, "map_note", having)


def _between(desk: Desk, km: float) -> str:
    """The distances that count as right, in tens of the family's unit."""
    value, unit = (km / MILE_KM, "miles") if desk.family.units == "customary" else (km, "km")
    step = 10 if value >= 100 else 1
    low, high = (round(value * (1 + out) / step) * step for out in (-_OUT, _OUT))
    return f"{low}–{high} {unit}"


def _area(lesson: Lesson) -> list[Block]:
    """By what the area grows in an enlargement, which the oldest are asked."""
    having = [person for person in _due(lesson, "enlarging-grid") if person.level == "upper"]
    rows = [(lesson.desk.say("area_times"), lesson.desk.say("area_why"))] if having else []
    return _step(lesson, "area_name", rows, "area_note", having)
