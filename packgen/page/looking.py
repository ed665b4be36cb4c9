"""Looking and talking: a small picture with its label and code, and who is asked what."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from packgen.page.blocks import Art, Block, Bullets, Prose, Row, Stack
from packgen.page.desk import Desk
from packgen.page.look import SOFT
from packgen.page.parents import minutes_of, part_name, work_caption
from packgen.page.pen import Pen
from packgen.page.pictured import PictureBlock
from packgen.page.qr import draw_qr, side_for
from packgen.page.timetable import Step
from packgen.page.week_sheets import numbers_for
from packgen.pictures.load import aspect
from packgen.planning.asking import on_paper, shared_out
from packgen.planning.people import Person, by_level, names_of
from packgen.planning.places import distance_km, rough_distance
from packgen.planning.prompts import choose, how_many
from packgen.planning.weeks import Week
from packgen.reading.models import LEVELS, Work

_THUMB = 52.0
_THUMB_HIGH, _CLOSE_HIGH = 44.0, 30.0
_SHORT = 420  # letters of a telling that still stands beside its picture
_AGAIN = 34.0  # mm, the width of a picture met before
_CODE = 20.0
_NAMES = 30.0  # mm, the most the column of names takes
_STEP = 35.0  # mm, what a step's name takes of the width
_FEW = 4  # rows of questions that are kept with their picture
_MOST = 8  # questions that stand beside a name


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
        blocks.append(_again(desk, work, persons))
    return [Step(part_name(desk, "look"), tuple(blocks), minutes_of(desk, week, ("look",)))]


def _again(desk: Desk, work: Work, persons: Sequence[Person]) -> Block:
    """A work met before: its picture once more, and which sheets have it large."""
    words: list[Block] = [Prose(str(work.title), "strong", tight=True), Prose(desk.say("look_again"), gap=0.2)]
    words += _large(desk, work, persons)
    if not work.image:
        return Stack(tuple(words))
    cells = (thumb(desk, work.image, work.image_said, _AGAIN, _AGAIN * 0.75), (1.0, Stack(tuple(words))))
    return Row(cells, gutter=4.5, gap=2.0)


def _large(desk: Desk, work: Work, persons: Sequence[Person]) -> list[Block]:
    """Which sheets have the picture large; nothing as long as their numbers are not known."""
    numbers = numbers_for(desk, persons, "picture-study", str(work.title))
    return [Prose(desk.say("look_large", numbers=numbers), "small", gap=0.8)] if numbers and work.image else []


def _work(desk: Desk, work: Work, persons: Sequence[Person], high: float) -> list[Block]:
    beside = bool(work.tell) and len(str(work.tell)) <= _SHORT
    rows = [_shown(desk, work, persons, high, tell) for tell in ((True, False) if beside else (False,))]
    shown = min(rows, key=lambda blocks: sum(one.measure(desk.kit, desk.live_width - _STEP).least for one in blocks))
    asked = _questions(desk, work, persons)
    few = bool(asked) and len(asked) <= _FEW and len(str(work.tell or "")) <= _SHORT
    return [*shown, *([Stack(tuple(asked), gap=2.0)] if few else asked)]


def _shown(desk: Desk, work: Work, persons: Sequence[Person], high: float, tell: bool) -> list[Block]:
    """The picture, its label and its code side by side; what to tell beside the picture (`tell`) or under it."""
    cells: list[tuple[float, Block]] = [(1.0, _label(desk, work, persons, tell))]
    if work.image:
        cells.insert(0, thumb(desk, work.image, work.image_said, _THUMB, high))
    if work.link:
        cells.append((-_code_side(str(work.link)), _code(desk, str(work.link))))
    blocks: list[Block] = [Row(tuple(cells), gutter=4.5, gap=2.0, tight=True)]
    if work.tell and not tell:
        blocks.append(Prose(desk.say("afterwards"), "label", gap=1.2, tight=True))
        blocks.append(Prose(str(work.tell), gap=0.2))
    return blocks


def thumb(desk: Desk, path: Path, about: object, width: float, height: float) -> tuple[float, Block]:
    """A small picture as the cell of a row, as wide as the picture is at that size."""
    wide = min(width, height * aspect(path))
    high = wide / aspect(path)
    return -wide, PictureBlock(desk, path, high, high, about=about, grow=0.0)


def _label(desk: Desk, work: Work, persons: Sequence[Person], tell: bool) -> Block:
    """Title, year, medium and size, where it hangs, which sheets have it large; what to tell, if it is short."""
    lines: list[Block] = [Prose(str(work.title), "strong")]
    caption = work_caption(desk, work)
    if caption:
        lines.append(Prose(" · ".join(caption), "small", gap=0.4))
    if work.held:
        lines.append(Prose(_hangs(desk, work), "small", gap=0.8))
    if not work.image:
        lines.append(Prose(desk.say("no_picture"), desk.look.small.grey(SOFT), gap=0.8))
    lines += _large(desk, work, persons)
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


def _code(desk: Desk, link: str) -> Block:
    """The code with what it opens under it."""
    side = _code_side(link)

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        draw_qr(pen, link, x, y + height - side, side)

    return Stack((Art(paint, side), Prose(desk.say("scan"), desk.look.small.grey(SOFT), gap=0.8)))


@dataclass(frozen=True, slots=True)
class _Asked:
    """Who is asked what: questions with their answers, which are empty where every answer is a good one."""

    group: tuple[Person, ...]
    questions: tuple[tuple[str, str], ...]


def _questions(desk: Desk, work: Work, persons: Sequence[Person]) -> list[Block]:
    """The questions by child, the youngest first, each with its answer if the study has it; else what to listen for."""
    asked = _asked(desk, work, persons)
    if not asked:
        return []
    widest = max(desk.faces.width(_names(one), desk.look.label.face, desk.look.label.size) for one in asked)
    column = min(widest + 3.0, _NAMES) if len(asked) > 1 else 0.0
    blocks: list[Block] = []
    for place, one in enumerate(asked):
        last = not any(_lowest(other.group) == _lowest(one.group) for other in asked[place + 1 :])
        blocks += _row(desk, work, one, column, place == 0, last)
    return blocks


def _row(desk: Desk, work: Work, one: _Asked, column: float, first: bool, last: bool) -> list[Block]:
    """One row of questions; with the `last` of a level what to listen for, if not all have an answer."""
    gap = 2.0 if first else 1.2
    lines = [desk.say("answer", ask=ask, answer=answer) if answer else ask for ask, answer in one.questions]
    said: tuple[Block, ...] = ()
    if last and not all(answer for _, answer in one.questions):
        said = (Prose(_listen(desk, work, one.group), desk.look.small.grey(SOFT), gap=0.5),)
    if len(lines) > _MOST:  # too many to stand beside a name on one page
        return [Prose(_names(one), "label", gap=gap, tight=True), _list(lines), *said]
    words = Stack((_list(lines), *said), gap=gap)
    return [Row(((-column, Prose(_names(one), "label")), (1.0, words)), gutter=2.5, gap=gap)] if column else [words]


def _lowest(group: Sequence[Person]) -> str:
    return min((person.level for person in group), key=LEVELS.index)


def _names(one: _Asked) -> str:
    return names_of(one.group)


def _listen(desk: Desk, work: Work, group: Sequence[Person]) -> str:
    """What to listen for where no answer is the only right one: by level, another for each picture."""
    lines = desk.say_lines(f"listen_look_{_lowest(group)}")
    return lines[desk.study.works.index(work) % len(lines)]


def _asked(desk: Desk, work: Work, persons: Sequence[Person]) -> list[_Asked]:
    """The questions by those they are asked of: everybody's own sheet first, the study's others shared out.

    A question that stands on several children's sheets is asked of them together.
    """
    answers = _answers(desk, work)
    look, own = tuple(map(str, work.look)), tuple(map(str, work.look_first))
    ordered = tuple(person for _, group in by_level(persons) for person in group)
    smallest = tuple(person for person in ordered if person.level == "first" and own)
    young = tuple(person for person in ordered if person.young and person not in smallest)
    old = tuple(person for person in ordered if not person.young)
    printed = {person: _printed(work, person) for person in ordered}
    left = [q for q in look if not any(q in printed[person] for person in (*young, *old))]
    for_young, for_old = shared_out(left, bool(young), bool(old))
    for_smallest = () if young or old else tuple(q for q in look if q not in own)
    told: dict[str, list[Person]] = {}
    for group, wanted in ((smallest, for_smallest), (young, for_young), (old, for_old)):
        if not group:
            continue
        theirs = tuple(dict.fromkeys((*(q for person in group for q in printed[person]), *wanted)))
        more = _filled(desk, group, theirs, desk.study.works.index(work))[len(theirs) :]
        for question in (*theirs, *more):
            own_group = [p for p in group if question in printed[p]] if question not in (*wanted, *more) else group
            told.setdefault(question, []).extend(own_group)
    rows: dict[tuple[Person, ...], list[tuple[str, str]]] = {}
    for question, group_of in told.items():
        rows.setdefault(tuple(group_of), []).append((question, _answer(answers.get(question, ""))))
    asked = [_Asked(group, tuple(questions)) for group, questions in rows.items()]
    return sorted(asked, key=lambda one: (LEVELS.index(_lowest(one.group)), -len(one.group)))


def _printed(work: Work, person: Person) -> tuple[str, ...]:
    """The questions on a person's own sheet of a work; those for the youngest are asked aloud in any case."""
    look, own = tuple(map(str, work.look)), tuple(map(str, work.look_first))
    has = any(item.sheet == "picture-study" and item.subject == work for item in person.items) or not person.items
    return on_paper(look, own, person.level) if has or (person.level == "first" and own) else ()


def _answers(desk: Desk, work: Work) -> dict[str, str]:
    """The study's answers by their questions; a warning where there are more answers than questions."""
    for said, questions, name in (
        (work.answers, work.look, "look"),
        (work.answers_first, work.look_first, "look_first"),
    ):
        if len(said) > len(questions):
            desk.warn(said[len(questions)], f'"{work.title}" has more answers than questions in `{name}`.',
                      "Write one answer for each question, in order, and a dash where there is none.")  # fmt: skip
    answers = dict(zip(map(str, work.look_first), map(str, work.answers_first), strict=False))
    return answers | dict(zip(map(str, work.look), map(str, work.answers), strict=False))


def _answer(said: str) -> str:
    """An answer; a mere dash says that there is none."""
    return "" if said.strip(" -–—.") == "" else said


def _list(asked: Sequence[str]) -> Bullets:
    return Bullets(tuple(asked), spread=0.1, gap=0.4)


def _filled(desk: Desk, group: Sequence[Person], own: Sequence[str], turn: int) -> tuple[str, ...]:
    """A group's own questions, and as many of packgen's as a talk of a few minutes has room for."""
    lowest = _lowest(group)
    bank = desk.say_lines(f"bank_{lowest}")
    if desk.study.book and desk.has(f"bank_book_{lowest}"):
        bank = (*bank, *desk.say_lines(f"bank_book_{lowest}"))
    return choose(own, bank, max(len(own), how_many(lowest)), turn)
