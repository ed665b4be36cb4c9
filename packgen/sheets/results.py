"""What a child's trials of a challenge gave: the table filled in, the chart, and a sentence at the child's level.

It is made from the numbers the family wrote down under `results`; without them there is no page. What was expected
is shown here as a band, for the trials are over: to the older and the upper level only.
"""

from __future__ import annotations

from collections.abc import Mapping

from packgen.page.blocks import Art, Block, Boxed, Bullets, DrawBox, Lines, Prose, Stack, heading
from packgen.page.chart import Band, Chart, Series
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.look import MIDDLE, look_for
from packgen.page.marks import Point, Stroke
from packgen.page.pen import Pen
from packgen.page.table import Cell
from packgen.page.text import fit
from packgen.page.trial_chart import strips_axis
from packgen.page.trial_table import Line, counted, trial_table
from packgen.page.values_drawn import shown_values
from packgen.planning.days import long_days
from packgen.planning.results import Outcome, outcome_of
from packgen.reading.models import Challenge
from packgen.trials.fit import Fit
from packgen.trials.results import ResultSummary, RowResult, row_place, turning
from packgen.trials.telling import figure, said
from packgen.trials.ticks import picture_scale

SHEET = Sheet(
    title="Results",
    about="What the trials of a challenge gave, from the family's numbers: table, chart and a sentence; else no page.",
    per="challenge",
    options=(
        Option("most", "", "at most this many challenges"),
        Option("only", "", "only these challenges, by title"),
    ),
)

_MOST_HINTS = 6
_PRINTED_ROW = 0.68  # how high a printed row is beside one to write in
_CURVE = 40  # points a best-fit curve is drawn through


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """A page for the child's numbers, or nothing if none were written down."""
    challenge = desk.item.subject
    assert isinstance(challenge, Challenge)
    outcome = outcome_of(desk.study, desk.family, desk.person, challenge) if desk.person else None
    if outcome is None:
        return ()
    summary = outcome.at(desk.level)
    tried_on = long_days([outcome.done]) if outcome.done else ""
    subject = " · ".join(part for part in (str(challenge.title), tried_on) if part)
    head = desk.head(desk.say("title"), subject, "star", date=not tried_on)
    shown = {"first": _first, "younger": _younger}.get(desk.level, _older)
    roomy, close = ([*shown(desk, outcome, summary, k)] for k in (True, False))
    filled = [*close, DrawBox(desk.say("draw"), least=45.0)]
    tries = [desk.pages(head, blocks, name=str(challenge.title)) for blocks in (roomy, close, filled)]
    pages = min(tries, key=len)
    if len(pages) > 1 and len(tries[2]) == len(pages):  # what is left of a second page is for a drawing
        pages = tries[2]
    return (Laid("results", f"{SHEET.title}: {challenge.title}", pages, week=desk.item.week),)


def _known(summary: ResultSummary) -> bool:
    return any(row.answer is not None for row in summary.rows)


def _hints(desk: Desk, summary: ResultSummary) -> list[Block]:
    """Numbers to look at again together, kindly; nothing if there are none."""
    if not summary.hints:
        return []
    shown = Bullets(summary.hints[:_MOST_HINTS], "dot", "small", spread=0.15)
    return [Boxed(shown, "plain", desk.say("look_again"))]


def _brackets(desk: Desk, summary: ResultSummary) -> list[Block]:
    """What brackets in the table mean, if there are any."""
    if not any(t.text and not t.used for row in summary.rows for t in row.tried):
        return []
    return [Prose(desk.say("brackets"), "small", gap=1.5)]


# first: one sentence and bars


def _first(desk: Desk, outcome: Outcome, summary: ResultSummary, roomy: bool) -> list[Block]:
    names = _size_names(desk, summary)
    told = Boxed(Prose(outcome.told("first", {label: desk.say("one", name=n) for label, n in names.items()}), "strong"),
                 "note")  # fmt: skip
    pen_lines = Stack((Prose(desk.say("pen"), "small", tight=True), Lines(2, 2, ruling=look_for("parent").ruling)))
    bars = [_bars(desk, summary, names)] if _known(summary) else []
    return [told, *bars, *([DrawBox(desk.say("draw"), least=45.0)] if roomy or not bars else []), pen_lines]


def _size_names(desk: Desk, summary: ResultSummary) -> dict[str, str]:
    """What the rows are called on the child's other pages, by their labels: small, middle, big."""
    shown = shown_values(summary.plan)
    if len(shown) < len(summary.plan.rows):
        return {}
    return {one.label: desk.wording.say("challenge", "first", f"size_{one.key}", {}) for one in shown if one.key}


def _bars(desk: Desk, summary: ResultSummary, names: Mapping[str, str]) -> Block:
    """A broad bar for each row, as long as its number, under the row's name."""
    rows = [row for row in summary.rows if row.answer is not None]
    most = max(abs(row.answer or 0.0) for row in rows) or 1.0
    label, number = desk.look.strong if names else desk.look.small, desk.look.label
    pitch = max(9.0, min(20.0, 70.0 / len(rows)))

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        texts = [said(summary, row.answer) for row in rows]
        right = max(desk.faces.width(text, number.face, number.size) for text in texts) + 4.0
        for k, (row, text) in enumerate(zip(rows, texts, strict=True)):
            top = y + height - k * (pitch + label.leading)
            called = names.get(row.row.label) or summary.plan.named(row.row)
            name = fit(desk.faces, called, label, width, label.leading, 2.4)
            pen.lines(x, top, name.lines, name.style)
            foot, deep = top - label.leading - pitch + 3.0, pitch - 4.0
            long = max(0.6, (width - right) * abs(row.answer or 0.0) / most)
            pen.box(x, foot, long, deep, Stroke(MIDDLE, 0.2), 0.82, corner=1.5, role="bar")
            pen.text(x + long + 3.0, foot + deep / 2 - number.size * 0.34, text, number)

    return Art(paint, len(rows) * (pitch + label.leading))


# younger: the table, bars or squares, one number to compare


def _younger(desk: Desk, outcome: Outcome, summary: ResultSummary, roomy: bool) -> list[Block]:
    blocks: list[Block] = [_table(desk, outcome, summary), *_brackets(desk, summary)]
    if _known(summary):
        blocks.append(_strips(desk, summary))
    blocks.append(Boxed(Stack((Prose(outcome.told("younger"), "strong"), *_apart(desk, summary))), "note"))
    return [*blocks, *_hints(desk, summary), *_say(desk, 2 if roomy else 1, 4)]


def _strips(desk: Desk, summary: ResultSummary) -> Block:
    filled = tuple((k + 1.0, row.answer) for k, row in enumerate(summary.rows) if row.answer is not None)
    axis = strips_axis(summary.plan)
    if not counted(summary.plan):
        return Chart(axis, summary.y_axis, "bars", filled=filled, least=62.0)
    scale = picture_scale(summary.y_axis)
    key = desk.say("square", each=scale.label)
    return Chart(axis, summary.y_axis, "picture", scale, filled=filled, key=key, least=62.0)


def _apart(desk: Desk, summary: ResultSummary) -> list[Block]:
    """How much more the largest is than the smallest, as a sum."""
    answers = [row.answer for row in summary.rows if row.answer is not None]
    if len(answers) < 2:
        return []
    most, least = (figure(summary, number) for number in (max(answers), min(answers)))
    much = said(summary, float(most) - float(least))
    words = desk.say("apart", most=most, least=least, much=much)
    return [Prose(words, "body", gap=1.0)]


# older and upper: the table, means, the chart with the band that was predicted


def _older(desk: Desk, outcome: Outcome, summary: ResultSummary, roomy: bool) -> list[Block]:
    question = outcome.summary.plan.question(desk.level)
    blocks: list[Block] = [Prose(question, "strong"), _table(desk, outcome, summary), *_brackets(desk, summary)]
    if _known(summary):
        blocks += [heading(desk.say("chart_title")), _chart(desk, summary)]
    blocks.append(Boxed(Prose(outcome.told(desk.level), "body"), "note"))
    return [*blocks, *_hints(desk, summary), *_say(desk, 3 if roomy else 2, 9)]


def _say(desk: Desk, least: int, most: int) -> list[Block]:
    """Lines for what the child says to it."""
    return [Stack((Prose(desk.say("say"), "strong", tight=True), Lines(least, most, gap=0.5)))]


def _chart(desk: Desk, summary: ResultSummary) -> Block:
    """Every trial as a ring, the means, the band that was predicted, and for the upper level the best fit."""
    plan = summary.plan
    places = [row_place(plan, k) for k in range(len(plan.rows))]
    tried = tuple((x, t.value) for x, row in zip(places, summary.rows, strict=True)
                  for t in row.tried if t.used and t.value is not None)  # fmt: skip
    edges = tuple((x, row.row.expected.low, row.row.expected.high) for x, row in zip(places, summary.rows, strict=True)
                  if row.row.expected)  # fmt: skip
    bands = (Band(desk.say("band"), edges),) if edges else ()
    series = [Series(desk.say("each_trial"), tried, "ring")]
    if desk.level == "upper" and summary.fit and turning(summary) is None:
        curve = _curve(summary, summary.fit, min(places), max(places))
        series += [Series(desk.say("best_fit"), curve, "line", True)] if curve else []
    several = any(len(row.tried) > 1 for row in summary.rows)
    words = plan.x_axis.words
    return Chart(
        plan.x_axis, summary.y_axis, "bars" if words else "points", series=tuple(series), bands=bands,
        means=summary.points if several else (), mean_name=desk.say("mean_mark"),
        filled=summary.points if words else (), least=66.0,
    )  # fmt: skip


def _curve(summary: ResultSummary, fitted: Fit, low: float, high: float) -> tuple[Point, ...]:
    """Points of the best fit between the rows, those that lie on the chart."""
    xs = [low + (high - low) * k / _CURVE for k in range(_CURVE + 1)]
    axis = summary.y_axis
    return tuple((x, y) for x in xs for y in (fitted.at(x),) if axis.low <= y <= axis.high)


def _table(desk: Desk, outcome: Outcome, summary: ResultSummary) -> Block:
    """The table as the child filled it in. What was missed is a dash; what is not counted stands in brackets.

    The child's own design has the last line; it is no point on the chart, for it is none of the planned values.
    """
    kinds = [column.kind for column in summary.plan.columns(desk.level) if column.kind != "guess"]
    own = outcome.own_at(desk.level)
    tried = [*summary.rows, *([own] if own else [])]
    count = max(1, *(_tried(row) for row in tried))
    if count < 2:
        kinds = [kind for kind in kinds if kind in ("value", "trial")]
    lines = [_line(summary, row, count) for row in tried]
    return trial_table(desk, summary.plan, lines, kinds, _PRINTED_ROW)


def _tried(row: RowResult) -> int:
    """How many trials of a row there are, without those at its end that were missed."""
    return max((k for k, tried in enumerate(row.tried, 1) if tried.text), default=0)


def _line(summary: ResultSummary, row: RowResult, count: int) -> Line:
    tried = [t.text if t.used or not t.text else f"({t.text})" for t in row.tried[:count]]
    tried = [text or "–" for text in (*tried, *([""] * (count - len(tried))))]
    answer = figure(summary, row.answer)
    mean: str | Cell = Cell(answer, corner="*") if row.how == "median" else answer
    worked = (("middle", answer), ("mean", mean), ("range", figure(summary, row.range)))
    return Line(row.row.number, tuple(tried), worked)
