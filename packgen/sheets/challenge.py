"""A design challenge: brief, guess, ideas, draft, trials, chart, result and look back, by level.

The pages of one set, in order. What a trial should come out at is never on them: that is the guide's.
"""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.blocks import (
    Art,
    Block,
    Boxed,
    Break,
    Bullets,
    DrawBox,
    Lines,
    Prose,
    Row,
    Stack,
    heading,
)
from packgen.page.chart import Chart
from packgen.page.desk import Desk, Laid, Option, Section, Sheet
from packgen.page.frame import Head
from packgen.page.look import GUIDE, HAIR, RULE, TINT
from packgen.page.pen import Pen
from packgen.page.table import Column, Table
from packgen.page.text import wrap
from packgen.planning.challenges import trial_of
from packgen.reading.models import Challenge, Material
from packgen.trials.plan import TrialPlan
from packgen.trials.ticks import word_axis

SHEET = Sheet(
    title="Challenge",
    about="A design challenge: brief, materials, guess, ideas, draft, trials, chart, end result, look back.",
    per="challenge",
    options=(
        Option("trials", "", "how often each thing is tried; left out: as the study or the recipe says"),
        Option("most", "", "at most this many challenges"),
        Option("only", "", "only these challenges, by title"),
    ),
    parts=("design-draft",),
)

_GRID = 5.0  # squared paper for drafts: 5 mm is the usual school square (DIN 16552, ruling 22)


@dataclass(frozen=True, slots=True)
class _Set:
    """What the pages of one set are made from."""

    desk: Desk
    challenge: Challenge
    plan: TrialPlan

    @property
    def repeats(self) -> int:
        """How often each row is tried."""
        asked = self.desk.option("trials")
        if self.challenge.trials is None and asked is not None:
            return max(1, min(12, self.desk.count("trials", 3)))
        return self.plan.repeats(self.desk.level)


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The set as one laid sheet, its design draft in as many copies as the child's `extra` says."""
    challenge = desk.item.subject
    assert isinstance(challenge, Challenge)
    plan, faults = trial_of(challenge, desk.family)
    desk.faults += faults
    if plan is None:
        return ()
    made = _Set(desk, challenge, plan)
    title = f"{SHEET.title}: {challenge.title}"
    if desk.level == "first":
        parts = [_section(made, "title", _first(made))]
    else:
        parts = [
            _section(made, "title", _brief(made)), _section(made, "ideas_title", _ideas(made)), _draft(made),
            _section(made, "trials_title", _trials(made)), _section(made, "back_title", _back(made)),
        ]  # fmt: skip
    sides = "one-sided" if desk.level in ("first", "younger") else "two-sided-long-edge"
    pages = desk.sections(parts, name=str(challenge.title))
    return (Laid("challenge", title, pages, sides=sides, week=desk.item.week),)


def _section(made: _Set, title: str, blocks: list[Block]) -> Section:
    return Section(_head(made, title), tuple(blocks))


def _head(made: _Set, title: str) -> Head:
    return made.desk.head(made.desk.say(title), str(made.challenge.title), "dart")


# The words of a set


def _question(made: _Set) -> str:
    return made.plan.question(made.desk.level)


def cautions(challenge: Challenge, plan: TrialPlan | None) -> tuple[str, ...]:
    """What to take care of: the model's own cautions and the study's, each once."""
    own = tuple(str(words) for words in challenge.caution if " " in str(words).strip())
    return tuple(dict.fromkeys((*(plan.cautions if plan else ()), *own)))


def _care(made: _Set) -> list[Block]:
    desk = made.desk
    words = list(cautions(made.challenge, made.plan))
    named = {str(w).strip().lower() for w in made.challenge.caution if " " not in str(w).strip()}
    words += [desk.say(f"care_{name}") for name in sorted(named) if desk.has(f"care_{name}")]
    if any(_cuts(m) for m in made.challenge.materials):
        words.append(desk.say("scissors"))
    if not words:
        return []
    shown = tuple(dict.fromkeys(words))[: 3 if desk.level in ("first", "younger") else 6]
    return [Boxed(Bullets((*shown, desk.say("care_adult")), "dot", "small", spread=0.1), "caution", desk.say("care"))]


def _cuts(material: Material) -> bool:
    return any(word in str(material.item).lower() for word in ("scissors", "card", "paper", "knife", "foil", "straw"))


def material_text(material: Material) -> str:
    """One material in words: `2 sheets card`, `1.2 m thread (to share)`."""
    amount = "" if material.amount is None else f"{material.amount:g}"
    unit = str(material.unit or "")
    if unit and amount and amount != "1" and unit.isalpha() and len(unit) > 2 and not unit.endswith("s"):
        unit += "s"
    return " ".join(part for part in (amount, unit, str(material.item)) if part)


def _materials(made: _Set) -> list[Block]:
    desk = made.desk
    items = tuple(material_text(m) + (f" ({desk.say('shared')})" if m.shared else "") for m in made.challenge.materials)
    return [Stack((heading(desk.say("materials")), Bullets(items, "box", "body", gap=1.5)))] if items else []


# first: before and after, with the parent's pen


def _first(made: _Set) -> list[Block]:
    desk = made.desk
    care = _care(made)
    return [
        Prose(str(made.challenge.brief), "body"),
        Boxed(Prose(_question(made), "strong"), "note"),
        DrawBox(desk.say("before"), least=70.0, note=desk.say("pen")),
        *care,
        Break(),
        Prose(desk.say("now_try"), "body"),
        DrawBox(desk.say("after"), least=80.0, note=desk.say("pen")),
        _faces(desk),
    ]


def _faces(desk: Desk) -> Block:
    """Three answers to ring: yes, a little, no."""
    words = desk.say_lines("did_it")
    style = desk.look.strong

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        pen.text(x, y + height - pen.drop(style), words[0], style)
        cell = width / 3
        for k, word in enumerate(words[1:4]):
            middle = x + (k + 0.5) * cell
            pen.box(middle - cell * 0.42, y, cell * 0.84, height - style.leading - 3.0, None, 0.95, corner=5.0)
            pen.text(middle, y + (height - style.leading - 3.0) / 2 - style.size * 0.33, word, style, align="centre")

    return Art(paint, style.leading + 3.0 + 22.0)


# The brief


def _brief(made: _Set) -> list[Block]:
    desk, challenge = made.desk, made.challenge
    blocks: list[Block] = [Prose(str(challenge.brief), "body"), Boxed(Prose(_question(made), "strong"), "note")]
    if desk.level != "younger":
        blocks.append(_fair(made))
    ready = _materials(made)
    steps: list[Block] = []
    if challenge.steps:
        steps = [Stack((heading(desk.say("steps")), Bullets(tuple(map(str, challenge.steps)), "number", gap=1.5)))]
    if ready and steps and desk.level != "younger":
        blocks.append(Row(((1.0, ready[0]), (1.25, steps[0])), gutter=7.0))
    else:
        blocks += [*ready, *steps]
    blocks += _care(made)
    asks = [Prose(desk.say("predict"), "strong", tight=True)]
    blocks.append(Stack((*asks, Lines(2 if desk.level == "younger" else 3, gap=0.5))))
    return blocks


def _fair(made: _Set) -> Block:
    """The frame of a fair test: change one thing, measure one, keep the rest."""
    desk, plan = made.desk, made.plan
    changed = plan.changed.name if plan.changed else desk.say("design")
    keep = tuple(map(str, made.challenge.keep_same)) or plan.keep_same
    row = (changed, plan.measured.title, "\n".join(keep) or desk.say("rest"))
    columns = (Column(desk.say("change"), 1.0), Column(desk.say("measure"), 1.0), Column(desk.say("keep"), 1.4))
    return Table(columns, (row,), least=desk.look.body.leading * 2)


def _ideas(made: _Set) -> list[Block]:
    desk = made.desk
    labels = desk.say_lines("ideas")
    least = 52.0 if desk.level == "younger" else 48.0
    if desk.level == "younger":
        return [Prose(desk.say("ideas_how"), "body"), *(DrawBox(words, least=least) for words in labels)]
    rows: list[Block] = [Prose(desk.say("ideas_how"), "body")]
    for k in range(0, len(labels), 2):
        pair = labels[k : k + 2]
        rows.append(Row(tuple((1.0, DrawBox(words, least=least)) for words in pair), gutter=6.0))
    if desk.level == "upper":
        rows.append(_weighing(made))
    rows.append(Stack((Prose(desk.say("choose"), "strong", tight=True), Lines(2, 4, gap=0.5))))
    return rows


def _weighing(made: _Set) -> Block:
    """A table to rate rival designs against criteria of one's own."""
    desk = made.desk
    columns = (Column(desk.say("criterion"), 1.6), *(Column(f"{desk.say('idea')} {k}", 0.8) for k in range(1, 5)))
    return Table(columns, tuple(("", "", "", "", "") for _ in range(4)), least=8.0, most=11.0)


def _draft(made: _Set) -> Section:
    """A page of squared paper for the design, with places for sizes and parts."""
    desk = made.desk
    style = desk.look.label

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        foot = 30.0 if desk.level == "younger" else 36.0
        columns = int(width / _GRID)
        rows = int((height - foot - 6.0) / _GRID)
        left, top = x + (width - columns * _GRID) / 2, y + height
        for k in range(columns + 1):
            ink = GUIDE if k % 2 == 0 else TINT
            pen.line(left + k * _GRID, top, left + k * _GRID, top - rows * _GRID, HAIR, ink, role="square")
        for k in range(rows + 1):
            ink = GUIDE if k % 2 == 0 else TINT
            pen.line(left, top - k * _GRID, left + columns * _GRID, top - k * _GRID, HAIR, ink, role="square")
        at = top - rows * _GRID - 4.0
        asks = desk.say_lines("draft_asks")
        cell = width / len(asks)
        for k, ask in enumerate(asks):
            pen.lines(x + k * cell, at, wrap(desk.faces, ask, style, cell - 6.0), style)
            base = at - style.leading * 2 - 5.0
            while base > y + 1.0:
                pen.line(x + k * cell, base, x + (k + 1) * cell - 6.0, base, HAIR, RULE, role="baseline")
                base -= 8.0

    return Section(_head(made, "draft_title"), paint=paint, copies=desk.copies_of("design-draft"))


# Trials, chart, result


def _trials(made: _Set) -> list[Block]:
    desk, plan = made.desk, made.plan
    blocks: list[Block] = [Prose(desk.say("trials_how", plan=plan, repeats=made.repeats), "body"), _table(made)]
    blocks.append(heading(desk.say("chart_title")))
    blocks.append(_chart(made))
    return blocks


def _table(made: _Set) -> Block:
    """The trial table: a row for each planned value, a column for each trial, and what the level works out."""
    desk, plan = made.desk, made.plan
    unit = plan.measured.unit
    level = desk.level
    count = made.repeats
    changed = plan.changed
    columns = [
        Column(changed.name if changed else desk.say("design"), 1.3, changed.unit if changed else "", names=True)
    ]
    if level != "younger":
        columns.append(Column(desk.say("my_guess"), 1.0, unit))
    name = desk.say("try_word")
    columns += [Column(f"{name} {k}", 0.9, unit) for k in range(1, count + 1)]
    if level == "younger" and count >= 3:
        columns.append(Column(desk.say("middle_one"), 1.0, unit))
    if level in ("older", "upper") and count > 1:
        columns.append(Column(desk.say("mean"), 1.0, unit))
    if level == "upper" and count > 1:
        columns.append(Column(desk.say("range"), 1.0, unit))
    labels = [row.number for row in plan.rows] or [desk.say("build_number", number=k) for k in range(1, 4)]
    rows = tuple((label, *("" for _ in columns[1:])) for label in labels)
    least = 15.0 if level == "younger" else 10.5
    return Table(tuple(columns), rows, least=least, most=least * 1.4, style="body")


def _chart(made: _Set) -> Block:
    """Axes ready to plot on: bars to colour for the younger, points for the rest; the answer is not on them."""
    desk, plan = made.desk, made.plan
    if desk.level == "younger":
        bars = word_axis(plan.x_axis.what, [row.label for row in plan.rows]) if plan.rows else plan.x_axis
        return Chart(bars, plan.y_axis, "bars", key=desk.say("draw_bars"), least=80.0)
    return Chart(plan.x_axis, plan.y_axis, "bars" if plan.x_axis.words else "points", least=90.0)


def _back(made: _Set) -> list[Block]:
    desk = made.desk
    blocks: list[Block] = [DrawBox(desk.say("result_draw"), least=60.0)]
    for ask in desk.say_lines("back_asks", plan=made.plan):
        least = 1 if desk.level == "younger" else 2
        blocks.append(Stack((Prose(ask, "strong", tight=True), Lines(least, 5, gap=0.5))))
    if made.challenge.extension and desk.level in ("older", "upper"):
        blocks.append(Boxed(Prose(str(made.challenge.extension), "body"), "note", desk.say("further")))
    return blocks
