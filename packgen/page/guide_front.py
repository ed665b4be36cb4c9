"""The person at a glance: what to tell each child, and what to look up when it is asked for."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.page.blocks import Block, Break, Bullets, Prose, Row, Stack
from packgen.page.desk import Desk
from packgen.page.looking import thumb
from packgen.page.parents import height_of
from packgen.page.timetable import Pairs, Step
from packgen.planning.life import chosen_events, years_between
from packgen.planning.people import Person, by_level, names_of
from packgen.planning.plan import life_at
from packgen.reading.dates import plain

MOST_DATES = 24
_PORTRAIT = 46.0


def life_blocks(desk: Desk, persons: Sequence[Person], room: float = 1e6) -> list[Block]:
    """What to tell about the person, and what to look up: on one page of that height, or parted between the two."""
    study = desk.study
    facts = Pairs(tuple(_facts(desk)))
    first: Block = Stack((Prose(str(study.in_short), "strong"), *([facts] if facts.rows else [])), gap=2.0)
    if study.portrait:
        first = Row((thumb(desk, study.portrait, study.portrait_said, _PORTRAIT, _PORTRAIT), (1.0, first)), gutter=6.0)
    told: list[Block] = [first]
    for name, text in _told(desk, persons):
        told.append(Step(name, tuple(Prose(part, gap=1.2) for part in text.split("\n") if part.strip())))
    looked_up: list[Block] = []
    for name, items in (("in_the_way", study.obstacles), ("worth_knowing", study.facts)):
        if items:
            looked_up.append(Step(desk.say(name), (Bullets(tuple(map(str, items)), spread=0.15),)))
    looked_up += _dates(desk)
    parted = bool(looked_up) and height_of(desk, [*told, *looked_up]) > room >= height_of(desk, told)
    return [*told, *([Break()] if parted else []), *looked_up]


def _facts(desk: Desk) -> list[tuple[str, str]]:
    study = desk.study
    rows = [(desk.say("born"), plain(study.born))] if study.born else []
    if study.died:
        rows.append((desk.say("died"), plain(study.died) + _age(desk)))
    if study.place:
        rows.append((desk.say("lived"), str(study.place.name)))
    if study.book:
        rows.append((desk.say("book"), desk.say("book_words", title=study.book.title, author=study.book.author)))
    return rows


def _age(desk: Desk) -> str:
    """How old the person became, where both dates are known to the year."""
    study = desk.study
    sure = [w for w in (study.born, study.died) if w and w.start and not (w.is_span or w.spread or w.approximate)]
    if len(sure) < 2 or not (sure[0].start and sure[1].start):
        return ""
    low, high = years_between(sure[0].start, sure[1].start)
    years = str(low) if low == high else f"{low} or {high}"
    return f", {desk.say('age_at_death', years=years)}"


def _told(desk: Desk, persons: Sequence[Person]) -> list[tuple[str, str]]:
    """The wordings of the life that this family needs, each under whom it is for."""
    found: dict[str, list[Person]] = {}
    for level, group in by_level(persons):
        text = life_at(desk.study, level)
        if text:
            found.setdefault(str(text), []).extend(group)
    if not persons:
        return [(desk.say("tell_all"), str(text)) for _, text in desk.study.life]
    if len(found) == 1:
        return [(desk.say("tell_all"), next(iter(found)))]
    return [(desk.say("tell_to", names=names_of(group)), text) for text, group in found.items()]


def _dates(desk: Desk) -> list[Block]:
    """The dates of the life in two columns."""
    events = chosen_events(desk.study, MOST_DATES)
    if not events:
        return []
    rows = tuple((plain(event.when), str(event.short or event.what)) for event in events)
    half = -(-len(rows) // 2)
    if len(rows) < 6:
        return [Step(desk.say("dates_name"), (Pairs(rows, most=0.4),))]
    cells = tuple((1.0, Pairs(part, "small", most=0.42)) for part in (rows[:half], rows[half:]))
    return [Step(desk.say("dates_name"), (Row(cells, gutter=6.0),))]
