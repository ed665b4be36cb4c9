"""The key to a challenge, for the parent alone: the task, what to expect, what to do when it comes out otherwise."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.bands import BandRow, Bands
from packgen.page.blocks import Block, Boxed, Break, Bullets, Prose, Row, Stack
from packgen.page.challenge_set import designs_own
from packgen.page.desk import Desk
from packgen.page.hazards import challenge_dangers
from packgen.page.look import SOFT
from packgen.page.needed import needed_words
from packgen.page.parents import capital, challenge_care, height_of
from packgen.page.table import Cell, Column, Table
from packgen.page.text import Style
from packgen.page.timetable import IfRoom, Pairs, Sayings, Step
from packgen.planning.challenges import job_of, trial_of
from packgen.planning.people import Person, by_level, names_of
from packgen.planning.results import outcome_of
from packgen.reading.models import Challenge
from packgen.trials.frame import Expected, Figure
from packgen.trials.plan import TrialPlan
from packgen.units import Quantity, quantity

_SAME = 0.4  # the part of a question's words that another has if it asks the same
_MOST_NAMED, _MOST_LETTERS = 5, 48  # so many names, of so many letters together, stand over a table's columns


@dataclass(frozen=True, slots=True)
class _Key:
    """What a key is made from. `makers` are those who have sheets for the challenge."""

    desk: Desk
    challenge: Challenge
    plan: TrialPlan
    makers: tuple[Person, ...]
    style: str = "body"


def key_blocks(desk: Desk, challenge: Challenge, persons: Sequence[Person], room: float) -> list[Block]:
    """The key's steps under a heading of their own; a word only if the challenge has faults.

    Where that keeps it on one page, `room` mm high, it is set in small type throughout. Else what to do is on the first
    page, and what to do when it will not work, with room for what came out, on the second.
    """
    title = _heading(desk, key_title(desk, challenge))
    plan, _ = trial_of(challenge, desk.family)
    if plan is None:
        return [title, Prose(desk.say("no_key"))]
    makers = tuple(person for person in persons if "challenge" in person.kinds or not person.items) or tuple(persons)
    key = _Key(desk, challenge, plan, makers)
    for one in (key, replace(key, style="small")):
        whole = [title, *_to_do(one), *_different(one), *_afterwards(one)]  # with the table of results, never without
        if height_of(desk, whole) <= room:
            return whole
    parts = (_to_do(key), _different(key), _afterwards(key))
    for first, second in (((*parts[0], *parts[1]), parts[2]), (parts[0], (*parts[1], *parts[2]))):
        if height_of(desk, [title, *first]) <= room:
            return [title, *first, Break(), _heading(desk, desk.say("key_on", title=challenge.title)), *second]
    return [title, *parts[0], *parts[1], *parts[2]]


def _to_do(key: _Key) -> list[Block]:
    return [_task(key), _set_up(key), *_care(key), *_expected(key)]


def _afterwards(key: _Key) -> list[Block]:
    return [*_faults(key), *_further(key), *_source(key), *_results(key)]


def key_title(desk: Desk, challenge: Challenge) -> str:
    """What the key to a challenge is called."""
    return desk.say("key_title", title=challenge.title)


def _heading(desk: Desk, words: str) -> Prose:
    """The heading of a key: between the title of a page and the name of a step."""
    return Prose(words, desk.look.title.at(desk.look.title.size * 0.84), tight=True, role="heading")


def _task(key: _Key) -> Block:
    """The brief, and the question each level has on its page."""
    said: dict[str, list[Person]] = {}
    for level, group in by_level(key.makers):
        said.setdefault(key.plan.question(level), []).extend(group)
    brief = Prose(str(key.challenge.brief), key.style, tight=True)
    if len(said) == 1:
        return Step(key.desk.say("task_name"), (brief, Prose(next(iter(said)), "strong", gap=1.0)))
    rows = tuple((names_of(group), question) for question, group in said.items())
    return Step(key.desk.say("task_name"), (brief, Pairs(rows, key.style, gap=1.0)))


def _set_up(key: _Key) -> Block:
    """What is changed, measured and kept, and at its side what to have ready."""
    fair, needed = Pairs(_fair(key), key.style), _needed(key)
    if not needed:
        return Step(key.desk.say("fair_name"), (fair,))
    return Step(key.desk.say("fair_name"), (Row(((1.15, fair), (1.0, Pairs(needed, key.style))), gutter=5.0),))


def _fair(key: _Key) -> tuple[tuple[str, str], ...]:
    desk, plan = key.desk, key.plan
    keep = tuple(map(str, key.challenge.keep_same)) or plan.keep_same
    rows = [
        (desk.say("fair_change"), _changed(key)),
        (desk.say("fair_measure"), plan.measured.title),
        (desk.say("fair_keep"), ", ".join(keep) or desk.say("rest_word")),
    ]
    counts: dict[int, list[Person]] = {}
    for level, group in by_level(key.makers):
        if level != "first":
            counts.setdefault(_tries(key, level), []).extend(group)
    said = [desk.say("tries_each", count=n, names=names_of(group)) for n, group in counts.items()]
    rows += [(desk.say("fair_tries"), ", ".join(said))] if said else []
    designers = [person for level, group in by_level(key.makers) if level != "first" for person in group]
    if designers and designs_own(plan, job_of(key.challenge), [net for net in plan.nets if net]):
        words = desk.wording.say("challenge", "older", "key_own", {"names": names_of(designers)})
        rows.append((desk.wording.say("challenge", "older", "key_own_name", {}), words))
    return tuple(rows)


def _changed(key: _Key) -> str:
    """What is changed, with the values that are planned."""
    plan = key.plan
    if plan.changed is None:
        return key.desk.say("design_word")
    values = ", ".join(row.label for row in plan.rows if row.value is not None)
    return key.desk.say("changed_values", name=plan.changed.name, values=values) if values else plan.changed.name


def _tries(key: _Key, level: str) -> int:
    """How often each row is tried at a level: as on the sheet, where the study's number comes before the recipe's."""
    for person in key.makers:
        for item in person.items if person.level == level else ():
            asked = str(dict(item.options).get("trials", ""))
            if item.subject == key.challenge and key.challenge.trials is None and asked.isdigit():
                return max(1, min(12, int(asked)))
    return key.plan.repeats(level)


def _needed(key: _Key) -> tuple[tuple[str, str], ...]:
    """Materials in two lines, each child's and everybody's."""
    desk = key.desk
    rows = []
    for label, shared in (("need_each", False), ("need_shared", True)):
        items = needed_words(desk, [m for m in key.challenge.materials if m.shared is shared], 1)
        if items:
            rows.append((desk.say(label), ", ".join(items)))
    return tuple(rows)


# What to expect


def _expected(key: _Key) -> list[Block]:
    """What each row should come out at, under which conditions, and what gives the result that is asked for."""
    desk, plan = key.desk, key.plan
    known = any(row.expected for row in plan.rows)
    blocks: list[Block] = []
    if known:
        rows = tuple(_band(desk, row.label, row.expected, row.note) for row in plan.rows)
        label = plan.changed.name if plan.changed else desk.say("expect_value")
        blocks += [Prose(desk.say("holds_for", conditions=_conditions(key)), key.style)] if plan.conditions else []
        blocks += [Bands(rows, plan.y_axis, label, desk.say("expect_said")), *_answer(key)]
    elif plan.model is None:
        blocks.append(Prose(desk.say("no_formula"), key.style))
    else:
        blocks.append(Prose(desk.say("no_result", what=plan.measured.what), key.style))
    worked_out = " ".join(capital(f"{figure.label}: {_figure(figure)}.") for figure in plan.figures)
    said = [worked_out] if worked_out else []
    said += [line for line in plan.advice if not _in_rows(plan, line) and not line.startswith("Taken as usual")]
    blocks += [Bullets(tuple(said), style="small", spread=0.15, gap=1.2)] if said else []
    return [Step(desk.say("expect_name"), tuple(blocks), (desk.say("expect_note"),) if known else ())]


def _conditions(key: _Key) -> str:
    """What the figures hold for; what the study did not say is marked as taken by packgen."""
    taken = {name for name, _ in key.plan.assumed}
    said = []
    for name, value in key.plan.conditions:
        words = f"{name} {value}"
        said.append(key.desk.say("as_usual", words=words) if name in taken else words)
    return ", ".join(said)


def _answer(key: _Key) -> list[Block]:
    """Which value of what is changed gives the result that the challenge asks for."""
    desk, goal, changed = key.desk, key.plan.goal, key.plan.changed
    if goal is None or changed is None:
        return []
    if not goal.answers:
        return [Prose(desk.say("goal_none", wanted=goal.wanted), "strong", gap=1.2)]
    values = desk.say("or_word").join(str(_rounded(answer)) for answer in goal.answers)
    words = desk.say("goal" if goal.exact else "goal_near", wanted=goal.wanted, name=changed.name, values=values)
    return [Prose(words, "strong", gap=1.2)]


def _rounded(answer: Quantity | str) -> Quantity | str:
    """An answer to three places."""
    if isinstance(answer, str):
        return answer
    return quantity(float(f"{answer.to(answer.unit):.3g}"), answer.unit) if answer.unit else answer


def _in_rows(plan: TrialPlan, line: str) -> bool:
    """True for advice that stands in a row of the bands already."""
    return any(row.note and line == f"{row.label}: {row.note}." for row in plan.rows)


def _figure(figure: Figure) -> str:
    """A figure to three places: more would pretend."""
    unit = figure.value.unit
    return str(quantity(float(f"{figure.value.to(unit):.3g}"), unit))


def _band(desk: Desk, label: str, expected: Expected | None, note: str) -> BandRow:
    if expected is None:
        return BandRow(label, note or desk.say("expect_none"))
    return BandRow(label, expected.text, expected.value, expected.low, expected.high)


def _different(key: _Key) -> list[Block]:
    desk, model = key.desk, key.plan.model
    if model is None:
        return []
    cells = tuple(
        (1.0, Stack((Prose(desk.say(name), "label", tight=True), Bullets(why, style="small", spread=0.2, gap=0.6))))
        for name, why in (("higher", model.why_higher), ("lower", model.why_lower))
        if why
    )
    row: list[Block] = [Row(cells, gutter=5.0, gap=1.2)] if cells else []
    return [Step(desk.say("different_name"), (Prose(desk.say("different_say"), key.style), *row), wide=True)]


def _faults(key: _Key) -> list[Block]:
    desk, model = key.desk, key.plan.model
    if model is None or not model.faults_of_build:
        return []
    columns = (
        Column(desk.say("fault_symptom"), 1.0),
        Column(desk.say("fault_cause"), 1.0),
        Column(desk.say("fault_remedy"), 1.15),
    )
    small = desk.look.small
    bold = Style(desk.look.label.face, small.size, small.leading)
    rows = tuple((Cell(f.symptom, bold), f.cause, f.remedy) for f in model.faults_of_build)
    table = Table(columns, rows, least=small.leading + 2.2, style="small", grow=0.0, pad=1.1)
    return [Step(desk.say("faults_name"), (Stack((table,)),), wide=True)]


def _further(key: _Key) -> list[Block]:
    model = key.plan.model
    said = [str(key.challenge.extension)] if key.challenge.extension else []
    said += [model.extension] if model and model.extension and not _alike(model.extension, said) else []
    if not said:
        return []
    words: Block = Prose(said[0], key.style) if len(said) == 1 else Bullets(tuple(said), style=key.style, spread=0.15)
    return [Step(key.desk.say("further_name"), (words,))]


def _alike(words: str, said: Sequence[str]) -> bool:
    """True if so much of what is to be said was said that it would be asked twice."""
    own = set(re.findall(r"\w{4,}", words.lower()))
    return bool(own) and len(own & set(re.findall(r"\w{4,}", " ".join(said).lower()))) / len(own) >= _SAME


def _care(key: _Key) -> list[Block]:
    *said, last = challenge_care(key.desk, key.challenge, key.plan)
    words = (*said, *challenge_dangers(key.desk, key.challenge, key.plan, said), last)
    return [Boxed(Prose(" ".join(words)), "caution", key.desk.say("care_title"), gap=3.0, pad=2.2)]


def _source(key: _Key) -> list[Block]:
    model = key.plan.model
    if model is None:
        return []
    style = key.desk.look.small.grey(SOFT)
    return [Prose(key.desk.say("formula", formula=model.formula, source=model.source.rstrip(".")), style, gap=2.0)]


def _means(key: _Key, person: Person) -> list[str]:
    """A person's mean in each row, where the family has written the numbers down."""
    found = outcome_of(key.desk.study, key.desk.family, person.name, key.challenge)
    if found is None:
        return ["" for _ in key.plan.rows]
    return ["" if row.answer is None else f"{row.answer:.3g}" for row in found.summary.rows]


def _short_names(makers: Sequence[Person]) -> list[str]:
    """The names over narrow columns: whole, or the letters by which each is known."""
    narrow = len(makers) > _MOST_NAMED or max(len(person.name) for person in makers) * len(makers) > _MOST_LETTERS
    return [person.mark if narrow else person.name for person in makers]


def _results(key: _Key) -> list[Block]:
    """A table for each child's own figures, and room for their builds, where the page has room for it."""
    desk = key.desk
    makers = [person for person in key.makers if person.level != "first"]
    if not makers or len(makers) > 8:
        return []
    unit = key.plan.measured.unit
    first = key.plan.changed.title if key.plan.changed else desk.say("expect_value")
    columns = (Column(first, 1.4, names=True), *(Column(name, 1.0, unit) for name in _short_names(makers)))
    came_out = [_means(key, person) for person in makers]
    rows = tuple((row.number, *(means[k] for means in came_out)) for k, row in enumerate(key.plan.rows))
    table = Table(columns, rows, least=7.5, most=10.0)
    means, middles = ([p for p in makers if (p.level == "younger") is young] for young in (False, True))
    how = desk.say("results_how", means=names_of(means), middles=names_of(middles))
    results = Step(desk.say("results_name"), (table,), (how,))
    builds = Sayings(desk.say("builds_name"), tuple(person.name for person in makers))
    return [results, IfRoom((builds,))]
