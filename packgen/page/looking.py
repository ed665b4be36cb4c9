"""Looking and talking: a small picture with its label and code, and who is asked what."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from packgen.page.blocks import Art, Block, Bullets, Prose, Row, Stack
from packgen.page.desk import Desk
from packgen.page.look import SOFT
from packgen.page.parents import minutes_of, part_name, work_caption
from packgen.page.pen import Pen
from packgen.page.pictured import PictureBlock
from packgen.page.qr import draw_qr, side_for
from packgen.page.timetable import Step
from packgen.pictures.load import aspect
from packgen.planning.asking import shared_out
from packgen.planning.people import Person, by_level, names_of
from packgen.planning.places import distance_km, rough_distance
from packgen.planning.prompts import choose, how_many
from packgen.planning.weeks import Week
from packgen.reading.models import LEVELS, Work

_THUMB = 52.0
_THUMB_HIGH, _CLOSE_HIGH = 44.0, 30.0
_SHORT = 420  # letters of a telling that still stands beside its picture
_CODE = 20.0


def look_step(desk: Desk, week: Week, persons: Sequence[Person], close: bool = False) -> list[Block]:
    """The step for all works of a week; those met before are only named. `close` sets the pictures small."""
    if not (week.works or week.again):
        return []
    first = next((w for w in desk.term.weeks if w.works), None)
    how = desk.say("look_how" if week == first else "look_short")
    blocks: list[Block] = [Prose(how, "small", tight=True)] if week.works else []
    for work in week.works:
        blocks += _work(desk, work, persons, _CLOSE_HIGH if close else _THUMB_HIGH)
    for work in week.again:
        blocks.append(Stack((Prose(str(work.title), "strong", tight=True), Prose(desk.say("look_again"), gap=0.2))))
    return [Step(part_name(desk, "look"), tuple(blocks), minutes_of(desk, week, ("look",)))]


def _work(desk: Desk, work: Work, persons: Sequence[Person], high: float) -> list[Block]:
    short = len(str(work.tell or "")) <= _SHORT
    cells: list[tuple[float, Block]] = [(1.0, _label(desk, work, short))]
    if work.image:
        cells.insert(0, thumb(desk, work.image, work.image_said, _THUMB, high))
    if work.link:
        cells.append((-_code_side(str(work.link)), _code(str(work.link))))
    blocks: list[Block] = [Row(tuple(cells), gutter=4.5, gap=2.0, tight=True)]
    blocks += _questions(desk, work, persons)
    if work.tell and not short:
        blocks.append(Prose(desk.say("afterwards"), "label", gap=2.0, tight=True))
        blocks.append(Prose(str(work.tell), gap=0.4))
    return blocks


def thumb(desk: Desk, path: Path, about: object, width: float, height: float) -> tuple[float, Block]:
    """A small picture as the cell of a row, as wide as the picture is at that size."""
    wide = min(width, height * aspect(path))
    high = wide / aspect(path)
    return -wide, PictureBlock(desk, path, high, high, about=about, grow=0.0)


def _label(desk: Desk, work: Work, tell: bool) -> Block:
    """Title, year, medium and size, and where it hangs, as far as they are known; what to tell, if it is short."""
    lines: list[Block] = [Prose(str(work.title), "strong")]
    caption = work_caption(desk, work)
    if caption:
        lines.append(Prose(" · ".join(caption), "small", gap=0.4))
    if work.held:
        lines.append(Prose(_hangs(desk, work), "small", gap=0.8))
    if not work.image:
        lines.append(Prose(desk.say("no_picture"), desk.look.small.grey(SOFT), gap=0.8))
    if work.tell and tell:
        lines.append(Prose(desk.say("afterwards"), "label", gap=2.4))
        lines.append(Prose(str(work.tell), gap=0.2))
    return Stack(tuple(lines))


def _hangs(desk: Desk, work: Work) -> str:
    away = distance_km(desk.family.place, work.held_at)
    if away is None:
        return desk.say("hangs", held=work.held)
    return desk.say("hangs_far", held=work.held, distance=rough_distance(away, desk.family.units))


def _code_side(link: str) -> float:
    return max(_CODE, side_for(link))


def _code(link: str) -> Block:
    side = _code_side(link)

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        draw_qr(pen, link, x, y + height - side, side)

    return Art(paint, side)


def _questions(desk: Desk, work: Work, persons: Sequence[Person]) -> list[Block]:
    """Two columns, the young ones' and the older ones'; one list if there is only one group."""
    youngest_first = [person for _, group in by_level(persons) for person in group]
    young = [person for person in youngest_first if person.young]
    old = [person for person in youngest_first if not person.young]
    for_young, for_old = shared_out([str(q) for q in work.look], bool(young), bool(old))
    turn = desk.study.works.index(work)
    groups = []
    for group, own in ((young, for_young), (old, for_old)):
        if group:
            groups.append((group, _filled(desk, group, own, turn)))
    if not groups:
        return []
    if len(groups) == 1:
        return [Stack((Prose(desk.say("ask_all"), "label", tight=True), _list(groups[0][1])), gap=2.0)]
    titles = (desk.say("ask_young", names=names_of(young)), desk.say("ask_old", names=names_of(old)))
    parts = [(title, asked) for title, (_, asked) in zip(titles, groups, strict=True)]
    if max(len(asked) for _, asked in parts) > 8:  # too many to stand side by side on one page
        return [block for title, asked in parts
                for block in (Prose(title, "label", gap=2.0, tight=True), _list(asked))]  # fmt: skip
    cells = tuple((1.0, Stack((Prose(title, "label", tight=True), _list(asked)))) for title, asked in parts)
    return [Row(cells, gutter=6.0, gap=2.0)]


def _list(asked: Sequence[str]) -> Bullets:
    return Bullets(tuple(asked), spread=0.12, gap=0.6)


def _filled(desk: Desk, group: Sequence[Person], own: Sequence[str], turn: int) -> tuple[str, ...]:
    """A group's own questions, and as many of packgen's as a talk of a few minutes has room for."""
    lowest = min((person.level for person in group), key=LEVELS.index)
    bank = desk.say_lines(f"bank_{lowest}")
    return choose(own, bank, max(len(own), how_many(lowest)), turn)
