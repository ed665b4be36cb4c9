"""A challenge, by level: a thing to design, or a thing to find out.

The pages of a set follow the stages of `packgen.trials.stages`: each page has its stage's name, and a line shows
where it stands. A design goes from the task over ideas and a draft to building, trials and a look back; where something
is to be found out there are no ideas and no draft. What a trial should come out at is never on them: that is the
guide's. Card comes with it where each planned value has a net, and for a shadow clock its dial.
"""

from __future__ import annotations

from packgen.page.blocks import Art, Block, Boxed, Break, DrawBox, Lines, Prose, Row, Stack, heading
from packgen.page.challenge_first import first_sections
from packgen.page.challenge_set import ChallengeSet, asks, building, drafts, goal_line, older_child, read_off, table
from packgen.page.desk import Desk, Laid, Option, Section, Sheet
from packgen.page.dial_page import dial_sheet
from packgen.page.fair_test import fair_frame, fair_note
from packgen.page.look import BOLD, MIDDLE
from packgen.page.marks import Page, Stroke
from packgen.page.pen import Pen
from packgen.page.preparing import materials
from packgen.page.sketching import SketchAxes
from packgen.page.table import Column, Table
from packgen.page.template_nets import own_sheet, template_nets, template_sheets
from packgen.page.text import fit
from packgen.page.trial_chart import trial_chart
from packgen.page.trial_table import counted, with_repeats
from packgen.page.working import working_out
from packgen.planning.challenges import job_of, trial_of
from packgen.reading.models import Challenge
from packgen.trials.comparing import ends_in_words

SHEET = Sheet(
    title="Challenge",
    about="A challenge: the task, ideas, draft, guess, making, trials, chart, look back; or a thing to find out.",
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


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The set as one sheet, its design draft in as many copies as the child's `extra` says, and its parts on card."""
    challenge = desk.item.subject
    assert isinstance(challenge, Challenge)
    plan, faults = trial_of(challenge, desk.family)
    desk.faults += faults
    if plan is None:
        return ()
    wanted = str(desk.option("templates", "yes")).lower() not in ("no", "false") and _cuts_out(desk)
    templates = template_nets(desk, challenge, plan) if wanted else ()
    made = ChallengeSet(desk, challenge, with_repeats(desk, challenge, plan), templates, job_of(challenge))
    title = f"{SHEET.title}: {challenge.title}"
    sides = "one-sided" if desk.level in _YOUNG else "two-sided-long-edge"
    laid = Laid("challenge", title, _pages(made), sides=sides, week=desk.item.week)
    own = (own_sheet(desk, challenge, templates),) if made.own and desk.level != "first" else ()
    return (laid, *template_sheets(desk, challenge, templates), *own, *(_dial(made) if wanted else ()))


def _cuts_out(desk: Desk) -> bool:
    """True if the child's pack has the parts on card: not the youngest's, where an older one at the table has them."""
    return desk.level != "first" or older_child(desk) is None


def _pages(made: ChallengeSet) -> tuple[Page, ...]:
    """The pages of the set. On leaves of two they come out even: the chart, or more photographs, get a page."""
    desk, name = made.desk, str(made.challenge.title)
    if desk.level == "first":
        return desk.sections(first_sections(made), name=name)
    if desk.level == "younger":
        return desk.sections(_younger(made), name=name)
    for parts in (_older(made), _older(made, apart=True), [*_older(made), _more(made)]):
        pages = desk.sections(parts, name=name)
        if len(pages) % 2 == 0:
            break
    return pages


def _dial(made: ChallengeSet) -> tuple[Laid, ...]:
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


def _question_box(made: ChallengeSet) -> Block:
    """The question of the trial, and under it the goal if there is one."""
    question = Prose(made.plan.question(made.desk.level), "strong", tight=True)
    return Boxed(Stack((question, *goal_line(made))), "note")


# younger: one job a page


def _younger(made: ChallengeSet) -> list[Section]:
    challenge = made.challenge
    ready = materials(made.desk, challenge)
    brief: list[Block] = [Prose(str(challenge.brief), "body"), _question_box(made)]
    predict = asks(made, "predict", 1)
    asked = [[*brief, *ready, *predict, DrawBox(made.say("predict_draw"), least=least)] for least in (40.0, 26.0)]
    early = None if made.finds_out else next((way for way in asked if made.length(made.section("ask", way)) == 1), None)
    drawn = DrawBox(made.say("predict_draw"), least=40.0)
    parts = [made.section("ask", early or [*brief, *predict, drawn])]
    if not made.finds_out:
        ways = [DrawBox(words, least=52.0) for words in made.say_lines("ideas")]
        parts += [made.section("imagine", [Prose(made.say("ideas_how"), "body"), *ways]), *drafts(made)]
    parts += [_younger_make(made, [] if early else ready), _tries(made)]
    first, *others = asks(made, "back_asks", 1)
    told = [*read_off(made), first, _compare(made), *others]
    ends = [
        made.section("tell", [DrawBox(made.say("result_draw"), least=least), *told]) for least in (42.0, 34.0, 26.0)
    ]
    return [*parts, min([*ends, made.section("tell", told)], key=made.length)]


def _younger_make(made: ChallengeSet, ready: list[Block]) -> Section:
    """What is needed, unless it was told before, and how it is made; the steps stand together on one page."""
    make = [*ready, *building(made, 4)]
    if made.length(made.section("make", make)) > 1:
        make = [*ready, *building(made, 4, apart=True)]
    if make:
        return made.roomy("make", make, DrawBox(made.say("made_draw"), least=26.0, most=180.0))
    return made.section("make", [DrawBox(made.say("made_draw"), least=100.0), *asks(made, "made_asks", 1)])


def _tries(made: ChallengeSet) -> Section:
    """The table and the chart on one page; where that is too much, the chart has one, and the table a place to draw."""
    desk = made.desk
    tried: list[Block] = [
        Prose(made.say("trials_how"), "body"),
        fair_note(desk, made.challenge, made.plan),
        table(made),
    ]
    chart: list[Block] = [heading(made.say("chart_title")), trial_chart(desk, made.plan, made.own)]
    together = made.section("try", [*tried, *chart])
    if made.length(together) == 1:
        return together
    apart = made.section("try", [*tried, DrawBox(made.say("saw_draw"), least=30.0), Break(), *chart])
    return apart if made.length(apart) == made.length(together) else together


def _compare(made: ChallengeSet) -> Block:
    """The one number to compare: the largest less the smallest, in three boxes."""
    desk, measured = made.desk, made.plan.measured
    words = ends_in_words(measured.what, measured.dimension, counted(made.plan))
    style, label = desk.look.title, desk.look.small

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        gap = 14.0
        wide = (width - 2 * gap) / 3
        room = height - label.leading
        for k, word in enumerate(words):
            left = x + k * (wide + gap)
            named = fit(desk.faces, word, label, wide, label.leading, 2.2)
            pen.lines(left, y + height, named.lines, named.style, align="centre", width=wide)
            pen.box(left, y, wide, room, Stroke(BOLD if k == 2 else MIDDLE, 0.2), corner=2.0, role="compare")
        for k, sign in enumerate("−="):
            middle = x + (k + 1) * wide + (k + 0.5) * gap
            pen.text(middle, y + room / 2 - style.size * 0.3, sign, style, align="centre")

    return Art(paint, label.leading + 16.0)


# older and upper: a sheet for each stage


def _older(made: ChallengeSet, apart: bool = False) -> list[Section]:
    """The sections of the older; `apart` gives the chart a page of its own."""
    parts = _question(made) if made.finds_out else _design(made)
    desk, challenge, plan = made.desk, made.challenge, made.plan
    trials: list[Block] = [Prose(made.say("trials_how"), "body"), table(made)]
    if apart:
        trials += [*working_out(made), Break()]
    trials += [heading(made.say("chart_title")), trial_chart(desk, plan, made.own), *read_off(made)]
    if desk.level == "upper" and not plan.x_axis.words:
        trials.append(Stack(tuple(Prose(words, "body") for words in made.say_lines("best_line"))))
    back: list[Block] = [*asks(made, "back_asks", 3)]
    if challenge.extension:
        back.append(Boxed(Prose(str(challenge.extension), "body"), "note", made.say("further")))
    drawn = DrawBox(made.say("result_draw"), least=45.0, most=110.0)
    last = "tell" if made.finds_out else "improve"
    return [*parts, made.section("try", trials), made.section(last, back if made.finds_out else [drawn, *back])]


def _design(made: ChallengeSet) -> list[Section]:
    """From the task to the thing built: task, ideas, draft, prediction, building."""
    desk, challenge, plan = made.desk, made.challenge, made.plan
    predict = [fair_frame(desk, challenge, plan, made.own != ""), _prediction(made)]
    plan_trial = DrawBox(made.say("plan_trial"), least=40.0, most=115.0)
    return [
        made.section("ask", _task(made)),
        made.section("imagine", _ideas(made)),
        *drafts(made),
        made.section("predict", [*predict, plan_trial, *asks(made, "predict_more", 4)]),
        _make(made),
    ]


def _make(made: ChallengeSet) -> Section:
    """How it is built, with a log of as many rows as the first page holds; else the log has a page with a drawing."""
    for rows in (4, 3, 2):
        blocks = [*building(made, 6), Stack((heading(made.say("log_title")), _log(made, rows)))]
        if made.length(made.section("make", blocks)) == 1:
            break
    else:
        blocks = [*building(made, 6), Stack((heading(made.say("log_title")), _log(made, 4)))]
    return made.roomy("make", blocks, DrawBox(made.say("made_draw"), least=80.0))


def _question(made: ChallengeSet) -> list[Section]:
    """What is to be found out, with the prediction, and the setting up of the trial."""
    desk, challenge, plan = made.desk, made.challenge, made.plan
    ask: list[Block] = [
        Prose(str(challenge.brief), "body"),
        _question_box(made),
        fair_frame(desk, challenge, plan),
        _prediction(made),
        *asks(made, "ask_more", 4),
    ]
    drawn = DrawBox(made.say("plan_trial"), least=45.0, most=120.0)
    ready = [*materials(desk, challenge), *building(made, 6)]
    return [made.section("ask", ask), made.section("make", [*ready, drawn, *asks(made, "make_more", 3)])]


def _task(made: ChallengeSet) -> list[Block]:
    """The brief, what there is to build with, and the task and its limits in the child's own words."""
    desk, challenge = made.desk, made.challenge
    words = [Stack((Prose(ask, "strong", tight=True), Lines(4, 12, gap=0.5))) for ask in made.say_lines("task")]
    return [
        Prose(str(challenge.brief), "body"),
        _question_box(made),
        *materials(desk, challenge),
        Row(tuple((1.0, block) for block in words), gutter=7.0),
        *asks(made, "task_more", 4),
    ]


def _ideas(made: ChallengeSet) -> list[Block]:
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


def _prediction(made: ChallengeSet) -> Block:
    """Lines to predict on, beside bare axes to sketch the chart one expects."""
    plan = made.plan
    words = Stack((Prose(made.say("predict"), "strong", tight=True), Lines(3, gap=0.5)))
    across = plan.changed.name if plan.changed else made.say("design")
    return Row(((1.35, words), (1.0, SketchAxes(across, plan.measured.what, most=75.0))), gutter=8.0)


def _log(made: ChallengeSet, rows: int) -> Block:
    """A table for what was changed while building, and why."""
    pitch = made.desk.look.ruling.pitch
    heads = made.say_lines("log")
    columns = tuple(Column(head, 1.0, ruled=True) for head in heads)
    return Table(columns, (("",) * len(heads),) * rows, least=2 * pitch, most=6 * pitch)


def _more(made: ChallengeSet) -> Section:
    """A last page for photographs and notes, where a leaf would stay empty on its back."""
    desk = made.desk
    blocks: list[Block] = [DrawBox(made.say("more_draw"), least=120.0, dashed=True), Lines(4, 8)]
    head = desk.head(made.say("more_title"), str(made.challenge.title), "dart")
    return Section(head, tuple(blocks))
