"""Who this was: a page that draws, traces, writes or answers, by level, from the life told in the study."""

from __future__ import annotations

from dataclasses import replace

from packgen.page.blocks import Block, Boxed, Break, Bullets, DrawBox, Lines, Prose, Row, Stack, heading
from packgen.page.desk import Desk, Laid, Sheet
from packgen.page.letters import TraceLine
from packgen.page.parents import height_of
from packgen.page.pictured import Beside
from packgen.page.time_axis import year_name
from packgen.planning.plan import life_at
from packgen.reading.models import When

SHEET = Sheet(
    title="Biography",
    about="Who this was: the story told at the child's level, with places to draw, trace, write and answer.",
)

_DRAWN = (70.0, 58.0)  # mm; the youngest's place to draw in is at least so high, lower only where it saves a page


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """One laid sheet of one to a few pages."""
    head = desk.head(desk.say("title"), str(desk.study.in_short), "letter")
    if desk.level == "first":
        blocks = _first(desk, desk.room(head, 0))
    else:
        blocks = _younger(desk) if desk.level == "younger" else _older(desk)
    pages = desk.pages(head, blocks, name=head.title)
    return (Laid("biography", head.title, pages, week=desk.item.week, sides=_sides(desk, len(pages))),)


def _sides(desk: Desk, pages: int) -> str:
    """Writing goes on both sides of the paper; what is drawn on with felt pens stays on one."""
    return "two-sided-long-edge" if desk.level in ("older", "upper") and pages > 1 else "one-sided"


def _portrait(desk: Desk, label: str, least: float) -> Block:
    """The portrait of the study if there is one, beside a box to draw the person; else the box alone."""
    box = DrawBox(label, least=least)
    if not desk.study.portrait:
        return box
    right = bool(desk.child and desk.child.left_handed)
    return Beside(desk, desk.study.portrait, box, about=desk.study.portrait_said, right=right)


def _first(desk: Desk, room: float) -> list[Block]:
    """The story, the person to draw and the name to trace; after a story that leaves no `room` to draw, the name first.

    So the rest of its page is used, and the drawing has the next one.
    """
    life = life_at(desk.study, "first")
    told: list[Block] = [Prose(life, "body")] if life else []
    trace = Stack((Prose(desk.say("trace"), "strong", tight=True), TraceLine(desk, str(desk.study.study).split()[0])))
    drawn, lower = (_portrait(desk, desk.say("draw_person"), least) for least in _DRAWN)
    for box in (drawn, lower):
        if height_of(desk, [*told, box, trace]) <= room:
            return [*told, box, trace]
    if height_of(desk, [*told, trace]) <= room:
        return [*told, trace, Break(), drawn]
    return [*told, drawn, trace]


def _younger(desk: Desk) -> list[Block]:
    life = life_at(desk.study, "younger")
    study = desk.study
    blocks: list[Block] = [Prose(life, "body")] if life else []
    blocks.append(_portrait(desk, desk.say("draw_person"), 62.0))
    name = replace(TraceLine(desk, str(study.study)).traced(desk.kit), under=1)
    blocks.append(Stack((Prose(desk.say("names"), "strong", tight=True), name)))
    known = [
        (key, value) for key, value in (("born", study.born), ("died", study.died), ("place", study.place)) if value
    ]
    if known:
        blocks.append(Boxed(Bullets(tuple(desk.say(key) for key, _ in known)), "plain"))
    asks = ["likes"] + (["hard"] if study.obstacles else [])
    blocks += [Stack((Prose(desk.say(key), "strong", tight=True), Lines(2, 4))) for key in asks]
    blocks.append(DrawBox(desk.say("draw_life"), least=55.0))
    return blocks


def _older(desk: Desk) -> list[Block]:
    study = desk.study
    life = life_at(study, desk.level)
    blocks: list[Block] = []
    if life:
        blocks += [
            heading(desk.say("story"), gap=0.0),
            *(Prose(p, "body", gap=1.8) for p in life.split("\n") if p.strip()),
        ]
    blocks.append(_portrait(desk, desk.say("draw_person"), 58.0))
    blocks += _facts(desk, str(life or ""))
    for question in desk.say_lines("questions"):
        blocks.append(Stack((Prose(question, "strong", tight=True), Lines(3, 6, gap=0.5))))
    blocks.append(Stack((heading(desk.say("own")), Lines(7 if desk.level == "older" else 10, gap=0.5, grow=2.0))))
    if desk.level == "upper":
        blocks.append(Stack((Prose(desk.say("sources"), "strong", tight=True), Lines(2, 4, gap=0.5))))
    return blocks


def _facts(desk: Desk, life: str) -> list[Block]:
    """What is to be found in the story, two to a row, each named on its own line; nothing that is not in it."""
    study = desk.study
    found = [key for key, when in (("born", study.born), ("died", study.died)) if when and _year(when) in life]
    if study.place and str(study.place.name) in life:
        found.append("place")
    if {"born", "died"} <= set(found) and desk.level == "upper" and _to_the_day(study.born, study.died):
        found.append("age")
    if not found:
        return []
    lines = [Lines(1, 1, starter=desk.say(key)) for key in found]
    rows = [Row(tuple((1.0, line) for line in lines[k : k + 2]), gutter=8.0, gap=0.0) for k in range(0, len(lines), 2)]
    return [Stack((heading(desk.say("facts_head")), *rows))]


def _year(when: When) -> str:
    """The year of a date as a story has it."""
    day = when.start or when.end
    return year_name(day.year) if day else "\0"


def _to_the_day(*dates: When | None) -> bool:
    """True if dates are sure to the day, so that an age between them is one number."""
    return all(d and d.start and d.start.day and not (d.is_span or d.spread or d.approximate) for d in dates)
