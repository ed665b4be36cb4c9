"""A design challenge: what is wanted, ideas, draft, guess, making, trials, chart, end result and look back, by level.

The pages of one set follow the stages of `packgen.trials.stages`, named in small type on each. What a trial should come
out at is never on them: that is the guide's. Card comes with it where each planned value has a net, and for a shadow
clock its dial.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.page.blocks import Art, Block, Boxed, Break, Bullets, DrawBox, Lines, Prose, Row, Stack, heading
from packgen.page.desk import Desk, Laid, Option, Section, Sheet
from packgen.page.dial_page import dial_sheet
from packgen.page.fair_test import fair_frame, fair_note
from packgen.page.look import BOLD, HAIR, MIDDLE, RULE, Ruling, look_for
from packgen.page.marks import Page, Stroke
from packgen.page.pen import Pen
from packgen.page.preparing import care, materials
from packgen.page.sketching import SketchAxes, squared_paper
from packgen.page.stage_line import StageLine
from packgen.page.table import Column, Table
from packgen.page.template_nets import Template, building_blocks, template_nets, template_sheets
from packgen.page.text import fit, wrap
from packgen.page.trial_chart import trial_chart
from packgen.page.trial_table import counted, empty_lines, trial_table, with_repeats
from packgen.planning.challenges import trial_of
from packgen.reading.models import Challenge
from packgen.trials.stages import stages
from packgen.trials.trial import TrialPlan

SHEET = Sheet(
    title="Challenge",
    about="A design challenge: what is wanted, ideas, draft, guess, making, trials, chart, end result, look back.",
    per="challenge",
    options=(
        Option("trials", "", "how often each thing is tried; left out: as the study says, or the level"),
        Option("templates", "yes", "no leaves out the nets on card for the planned values", ("yes", "no")),
        Option("most", "", "at most this many challenges"),
        Option("only", "", "only these challenges, by title"),
    ),
    parts=("design-draft",),
)

_YOUNG = ("first", "younger")
_TALLIED = 60  # more than this nobody counts in strokes
_READ_ALOUD = 45  # words; a longer brief is set small for the youngest, to be read to them
_PEN: Ruling = look_for("parent").ruling


@dataclass(frozen=True, slots=True)
class _Set:
    """What the pages of one set are made from."""

    desk: Desk
    challenge: Challenge
    plan: TrialPlan
    templates: tuple[Template, ...]

    @property
    def values(self) -> dict[str, object]:
        """What the wordings know besides the study: the plan, how often is tried, what is changed and measured."""
        plan = self.plan
        changed = plan.changed.name if plan.changed else self.desk.say("design")
        tally = counted(plan) and (plan.y_axis.blank or plan.y_axis.high <= _TALLIED)
        return {"plan": plan, "repeats": plan.repeats(self.desk.level), "changed": changed, "tally": tally,
                "clock": plan.model is not None and plan.model.key == "shadow-clock", "words": plan.x_axis.words,
                "what": plan.measured.what}  # fmt: skip

    def say(self, key: str) -> str:
        """A wording that may speak of the plan."""
        return self.desk.say(key, **self.values)

    def say_lines(self, key: str) -> tuple[str, ...]:
        """A wording of several lines that may speak of the plan."""
        return self.desk.say_lines(key, **self.values)

    def section(self, key: str, now: Sequence[str], blocks: Sequence[Block]) -> Section:
        """A part of the set with its title and the stages it belongs to."""
        head = self.desk.head(self.desk.say(key), str(self.challenge.title), "dart")
        return Section(head, (self.stages(*now), *blocks))

    def roomy(self, key: str, now: Sequence[str], blocks: Sequence[Block], more: Block) -> Section:
        """The same with one more block, if that takes no more pages."""
        plain, fuller = self.section(key, now, blocks), self.section(key, now, (*blocks, more))
        pages = [len(self.desk.pages(part.head, part.blocks)) for part in (plain, fuller)]
        return fuller if pages[0] == pages[1] else plain

    def stages(self, *now: str) -> StageLine:
        """The line of the level's stages."""
        return StageLine(stages(self.desk.level), now)


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The set as one sheet, its design draft in as many copies as the child's `extra` says, and its parts on card."""
    challenge = desk.item.subject
    assert isinstance(challenge, Challenge)
    plan, faults = trial_of(challenge, desk.family)
    desk.faults += faults
    if plan is None:
        return ()
    wanted = desk.level != "first" and str(desk.option("templates", "yes")).lower() not in ("no", "false")
    templates = template_nets(desk, challenge, plan) if wanted else ()
    made = _Set(desk, challenge, with_repeats(desk, challenge, plan), templates)
    title = f"{SHEET.title}: {challenge.title}"
    sides = "one-sided" if desk.level in _YOUNG else "two-sided-long-edge"
    laid = Laid("challenge", title, _pages(made), sides=sides, week=desk.item.week)
    return (laid, *template_sheets(desk, challenge, templates), *(_dial(made) if wanted else ()))


def _pages(made: _Set) -> tuple[Page, ...]:
    """The pages of the set. On leaves of two they come out even: the chart, or more photographs, get a page."""
    desk, name = made.desk, str(made.challenge.title)
    if desk.level in _YOUNG:
        return desk.sections(_first(made) if desk.level == "first" else _younger(made), name=name)
    for parts in (_older(made), _older(made, apart=True), [*_older(made), _more(made)]):
        pages = desk.sections(parts, name=name)
        if len(pages) % 2 == 0:
            break
    return pages


def _dial(made: _Set) -> tuple[Laid, ...]:
    """The dial of a shadow clock, for the latitude the trial was planned with."""
    desk, challenge, plan = made.desk, made.challenge, made.plan
    if plan.model is None or plan.model.key != "shadow-clock" or not plan.values:
        return ()
    latitude, offset = plan.values[0].number("latitude"), plan.values[0].get("longitude offset")
    if desk.family.place is None or desk.family.place.lat is None:
        desk.warn(challenge.at, f'"{challenge.title}" is drawn for the latitude the study gives, {latitude:g}°. '
                  "A shadow clock is right only at its own latitude.",
                  "Write `place: {name: ..., lat: 50.4, lon: -4.9}` in the family file.")  # fmt: skip
    try:
        sheet = dial_sheet(desk, str(challenge.title), latitude, float(offset or 0.0))
    except ValueError as error:
        desk.warn(challenge.at, f'"{challenge.title}" has no dial: {error}.', "Stand a dial upright, facing the pole.")
        return ()
    after = (desk.say("dial_after", title=challenge.title),)
    week = desk.item.week
    return (Laid("challenge", str(challenge.title), (sheet.page,), "card", week=week, part="dial", after=after,
                 net=sheet.facts),)  # fmt: skip


# first: before and after, with the parent's pen


def _first(made: _Set) -> list[Section]:
    """Two pages: the task and what will happen, then the trial and what did.

    With a long brief, or large letters, the cautions go to the second page, or the ring for the winner falls away.
    """
    tries = [_two_pages(made, *how) for how in ((False, True), (True, True), (False, False), (True, False))]
    return min(tries, key=lambda parts: sum(len(made.desk.pages(part.head, part.blocks)) for part in parts))


def _two_pages(made: _Set, later: bool, ring: bool) -> list[Section]:
    """Both parts; `later` puts the cautions into the second, `ring` asks for the winner."""
    desk, say = made.desk, made.say
    brief = str(made.challenge.brief)
    long = len(brief.split()) > _READ_ALOUD
    told: Block = Prose(f"{say('read_aloud')} {brief}", "small") if long else Prose(brief, "body")
    question = Boxed(Prose(made.plan.question("first"), "strong"), "note")
    warned = care(desk, made.challenge, made.plan, 4)
    before: list[Block] = [told, question, DrawBox(say("before"), least=45.0), _pen_lines(made),
                           *([] if later else warned)]  # fmt: skip
    after: list[Block] = [*(warned if later else []), Prose(say("now_try"), "body"),
                          DrawBox(say("after"), least=42.0), _pen_lines(made), *(_which(made) if ring else []),
                          _choices(desk, made.say_lines("did_it"))]  # fmt: skip
    return [
        made.section("title", ("ask", "draft"), before),
        made.section("after_title", ("make", "try", "tell"), after),
    ]


def _pen_lines(made: _Set) -> Block:
    """Two lines for the grown-up to write on what the child says."""
    return Stack((Prose(made.say("pen"), "small", tight=True), Lines(2, 2, ruling=_PEN, gap=0.0)), gap=3.0)


def _which(made: _Set) -> list[Block]:
    """The builds to ring the winner of, if they are few enough to stand side by side."""
    names = [made.plan.named(row) for row in made.plan.rows]
    if not 2 <= len(names) <= 4 or max(map(len, names)) > 16:
        return []
    return [_choices(made.desk, (made.say("which"), *names))]


def _choices(desk: Desk, words: Sequence[str]) -> Block:
    """A question, and answers in boxes to ring."""
    style = desk.look.strong

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        pen.text(x, y + height - pen.drop(style), words[0], style)
        answers = words[1:]
        cell = width / len(answers)
        room = height - style.leading - 2.0
        for k, word in enumerate(answers):
            middle = x + (k + 0.5) * cell
            pen.box(middle - cell * 0.44, y, cell * 0.88, room, None, 0.95, corner=4.0)
            fitted = fit(desk.faces, word, style, cell * 0.8, room, desk.look.floor * 0.7)
            top = y + room / 2 + fitted.height / 2
            pen.lines(middle - cell * 0.4, top, fitted.lines, fitted.style, align="centre", width=cell * 0.8)

    return Art(paint, style.leading + 2.0 + 17.0)


# What all others share


def _draft(made: _Set) -> Section:
    """A page of squared paper for the design, with places for sizes and parts."""
    desk, asks = made.desk, made.say_lines("draft_asks")
    line, style = made.stages("draft"), desk.look.label

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        over = line.measure(desk.kit, width).least
        line.draw(desk.kit, pen, x, y + height, width, over)
        over += desk.look.gap * 0.6
        cell = width / len(asks)
        deep = max(len(wrap(desk.faces, ask, style, cell - 6.0)) for ask in asks) * style.leading
        foot = squared_paper(pen, x, y + height - over, width, height - over - deep - 30.0) - 4.0
        for k, ask in enumerate(asks):
            left = x + k * cell
            pen.lines(left, foot, wrap(desk.faces, ask, style, cell - 6.0), style)
            base = foot - deep - 7.0
            while base > y + 1.0:
                pen.line(left, base, left + cell - 6.0, base, HAIR, RULE, role="baseline")
                base -= 8.0

    head = desk.head(made.say("draft_title"), str(made.challenge.title), "dart")
    return Section(head, paint=paint, copies=desk.copies_of("design-draft"))


def _steps(made: _Set) -> list[Block]:
    steps = tuple(map(str, made.challenge.steps))
    return [Stack((heading(made.say("steps")), Bullets(steps, "number", gap=1.5)))] if steps else []


def _asks(made: _Set, key: str, least: int, most: int) -> list[Block]:
    """Questions with lines to answer on."""
    return [
        Stack((Prose(ask, "strong", tight=True), Lines(least, most, gap=0.5))) for ask in made.say_lines(key)
    ]  # fmt: skip


def _table(made: _Set) -> Block:
    kinds = [column.kind for column in made.plan.columns(made.desk.level)]
    return trial_table(made.desk, made.plan, empty_lines(made.plan, made.desk.level), kinds)


# younger: one job a page


def _younger(made: _Set) -> list[Section]:
    desk, challenge, plan = made.desk, made.challenge, made.plan
    guess = Stack((Prose(made.say("predict"), "strong", tight=True), Lines(2, 3, gap=0.5)))
    ask: list[Block] = [Prose(str(challenge.brief), "body"), Boxed(Prose(plan.question("younger"), "strong"), "note"),
                        *materials(desk, challenge), *_steps(made), *care(desk, challenge, plan, 4), guess,
                        DrawBox(made.say("predict_draw"), least=30.0)]  # fmt: skip
    ways = [DrawBox(words, least=52.0) for words in made.say_lines("ideas")]
    ideas: list[Block] = [Prose(made.say("ideas_how"), "body"), *ways]
    trials = [Prose(made.say("trials_how"), "body"), fair_note(desk, challenge, plan), _table(made),
              heading(made.say("chart_title")), trial_chart(desk, plan)]  # fmt: skip
    first, *others = _asks(made, "back_asks", 1, 5)
    back = [DrawBox(made.say("result_draw"), least=55.0), first, _compare(made), *others]
    building = building_blocks(desk, made.templates)
    made_draw = DrawBox(made.say("made_draw"), least=40.0)
    make = [made.roomy("make_title", ("make",), building, made_draw)] if building else []
    return [
        made.section("title", ("ask",), ask),
        made.section("ideas_title", ("imagine",), ideas),
        _draft(made),
        *make,
        made.section("trials_title", ("try",), trials),
        made.section("back_title", ("tell",), back),
    ]


def _compare(made: _Set) -> Block:
    """The one number to compare: the largest less the smallest, in three boxes."""
    desk, words = made.desk, made.say_lines("compare")
    style, label = desk.look.title, desk.look.small

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        gap = 14.0
        wide = (width - 2 * gap) / 3
        room = height - label.leading
        for k, word in enumerate(words[:3]):
            left = x + k * (wide + gap)
            named = fit(desk.faces, word, label, wide, label.leading, 2.2)
            pen.lines(left, y + height, named.lines, named.style, align="centre", width=wide)
            pen.box(left, y, wide, room, Stroke(BOLD if k == 2 else MIDDLE, 0.2), corner=2.0, role="compare")
        for k, sign in enumerate("−="):
            middle = x + (k + 1) * wide + (k + 0.5) * gap
            pen.text(middle, y + room / 2 - style.size * 0.3, sign, style, align="centre")

    return Art(paint, label.leading + 16.0)


# older and upper: a sheet for each stage


def _older(made: _Set, apart: bool = False) -> list[Section]:
    """The sections of the older; `apart` gives the chart a page of its own."""
    desk, challenge, plan, upper = made.desk, made.challenge, made.plan, made.desk.level == "upper"
    predict = [fair_frame(desk, challenge, plan), _prediction(made)]
    building = building_blocks(desk, made.templates)
    log = [heading(made.say("log_title")), _log(made, 3 if building else 4)]
    if building:
        middle = [made.section("predict_title", ("predict",), [*predict, DrawBox(made.say("plan_trial"), least=40.0)]),
                  made.section("make_title", ("make",), [*building, *log])]  # fmt: skip
    else:
        middle = [made.section("both_title", ("predict", "make"), [*predict, *log])]
    working: list[Block] = [DrawBox(made.say("working"), least=25.0), Break()] if apart else []
    trials: list[Block] = [Prose(made.say("trials_how"), "body"), _table(made), *working,
                           heading(made.say("chart_title")), trial_chart(desk, plan)]  # fmt: skip
    if upper and not plan.x_axis.words:
        trials.append(Stack(tuple(Prose(words, "body") for words in made.say_lines("best_line"))))
    back = [DrawBox(made.say("result_draw"), least=50.0), *_asks(made, "back_asks", 2, 6)]
    if challenge.extension:
        back.append(Boxed(Prose(str(challenge.extension), "body"), "note", made.say("further")))
    return [
        made.roomy("title", ("ask",), _ask(made), DrawBox(made.say("ask_draw"), least=62.0)),
        made.section("ideas_title", ("imagine",), _ideas(made)),
        _draft(made),
        *middle,
        made.section("trials_title", ("try",), trials),
        made.section("back_title", ("compare", "improve"), back),
    ]


def _ask(made: _Set) -> list[Block]:
    """The brief, what is needed, and the task and its limits in the child's own words."""
    desk, challenge = made.desk, made.challenge
    steps = _steps(made)
    ready = materials(desk, challenge, narrow=bool(steps))
    middle = [Row(((1.0, ready[0]), (1.25, steps[0])), gutter=7.0)] if ready and steps else [*ready, *steps]
    words = [Stack((Prose(ask, "strong", tight=True), Lines(2, 9, gap=0.5))) for ask in made.say_lines("task")]
    return [
        Prose(str(challenge.brief), "body"),
        Boxed(Prose(made.plan.question(desk.level), "strong"), "note"),
        *middle,
        *care(desk, challenge, made.plan, 6),
        Row(tuple((1.0, block) for block in words), gutter=7.0),
    ]


def _ideas(made: _Set) -> list[Block]:
    rows: list[Block] = [Prose(made.say("ideas_how"), "body")]
    labels = made.say_lines("ideas")
    for k in range(0, len(labels), 2):
        rows.append(Row(tuple((1.0, DrawBox(words, least=48.0)) for words in labels[k : k + 2]), gutter=6.0))
    if made.desk.level == "upper":
        idea = made.say("idea")
        columns = (Column(made.say("criterion"), 1.6), *(Column(f"{idea} {k}", 0.8) for k in range(1, 5)))
        rows.append(Table(columns, tuple(("",) * 5 for _ in range(4)), least=8.0, most=11.0))
    rows.append(Stack((Prose(made.say("choose"), "strong", tight=True), Lines(2, 4, gap=0.5))))
    return rows


def _prediction(made: _Set) -> Block:
    """Lines to predict on, beside bare axes to sketch the chart one expects."""
    plan = made.plan
    words = Stack((Prose(made.say("predict"), "strong", tight=True), Lines(3, gap=0.5)))
    across = plan.changed.name if plan.changed else made.say("design")
    return Row(((1.35, words), (1.0, SketchAxes(across, plan.measured.what, most=75.0))), gutter=8.0)


def _log(made: _Set, rows: int) -> Block:
    """A table for what was changed while building, and why."""
    pitch = made.desk.look.ruling.pitch
    heads = made.say_lines("log")
    columns = tuple(Column(head, 1.0, ruled=True) for head in heads)
    return Table(columns, (("",) * len(heads),) * rows, least=2 * pitch, most=6 * pitch)


def _more(made: _Set) -> Section:
    """A last page for photographs and notes, where a leaf would stay empty on its back."""
    blocks: list[Block] = [DrawBox(made.say("more_draw"), least=120.0, dashed=True), Lines(4, 8)]
    return made.section("more_title", (), blocks)
