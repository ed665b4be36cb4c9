"""What came home: the numbers a family wrote down for a study's challenges, judged against each planned trial."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from packgen.faults import Fault, Place, Said, nearest, warning
from packgen.planning.challenges import trial_of
from packgen.reading.models import Challenge, ChildResults, Family, RowTried, Study
from packgen.reading.names import key_form, snippet
from packgen.trials.results import ResultSummary, RowResult, judge_results, row_of
from packgen.trials.telling import sentence
from packgen.trials.trial import Row, TrialPlan

# What the line of a child's own design is called on the sheets; a family may write either.
OWN = frozenset({"my own", "mine", "own"})


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one child's trials of one challenge gave: the numbers as written, and what they say."""

    child: str
    challenge: Challenge
    written: ChildResults
    summary: ResultSummary
    own: ResultSummary | None = None
    """The one line of the child's own design, which nobody predicted; None if there are no numbers for it."""

    @property
    def done(self) -> date | None:
        """The day it was tried, if that was written down."""
        return self.written.done

    def at(self, level: str) -> ResultSummary:
        """The results as a level works them out: the younger take the middle number, the others the mean."""
        return self.summary.with_middles() if level in ("first", "younger") else self.summary

    def own_at(self, level: str) -> RowResult | None:
        """The line of the child's own design as a level works it out; None if there are no numbers for it."""
        if self.own is None:
            return None
        return (self.own.with_middles() if level in ("first", "younger") else self.own).rows[0]

    def told(self, level: str, names: Mapping[str, str] | None = None) -> str:
        """One or two sentences on the results for a level: `first`, `younger`, `older` or `upper`.

        `names` are what rows are called, by their labels, for a child who does not read numbers.
        """
        return sentence(self.at(level), level, names)


def outcomes(study: Study, family: Family) -> tuple[Outcome, ...]:
    """Every child's outcome for every challenge of the study that has numbers, in the order they were written."""
    return tuple(outcome for outcome, _ in _judged(study, family) if outcome)


def outcome_of(study: Study, family: Family, child: str, challenge: Challenge) -> Outcome | None:
    """A child's outcome for a challenge, or None if no numbers were written down."""
    found = (o for o in outcomes(study, family) if o.challenge.title == challenge.title)
    return next((o for o in found if key_form(o.child) == key_form(child)), None)


def result_faults(study: Study, family: Family) -> tuple[Fault, ...]:
    """What is wrong or odd in the results of a study: unknown rows as faults, numbers that cannot be as warnings.

    A result whose challenge is not in the study belongs to another one; it is told only if it is nearly one of this
    study's titles, or says that it belongs to this study.
    """
    found = [fault for _, faults in _judged(study, family) for fault in faults]
    titles = {key_form(challenge.title): challenge.title for challenge in study.challenges}
    for result in family.results:
        form = key_form(result.challenge)
        if form in titles or not _may_be(result, study):
            continue
        near = nearest(form, titles)
        if near or result.study:
            hint = f"Did you mean `{titles[near]}`?" if near else f"They are: {', '.join(titles.values())}."
            found.append(warning(result.challenge.at, f"{study.study} has no challenge called "
                                 f"`{snippet(result.challenge)}`, so these results are not shown.", hint))  # fmt: skip
    return tuple(found)


def _may_be(result: ChildResults, study: Study) -> bool:
    """True unless the result says that it belongs to another study."""
    return result.study is None or key_form(result.study) == key_form(study.study)


def _judged(study: Study, family: Family) -> Iterator[tuple[Outcome | None, list[Fault]]]:
    """Each result of this study with what is wrong with it; results of a trial that cannot be planned are left out."""
    challenges = {key_form(challenge.title): challenge for challenge in study.challenges}
    for result in family.results:
        challenge = challenges.get(key_form(result.challenge))
        plan = trial_of(challenge, family)[0] if challenge and _may_be(result, study) else None
        if challenge is None or plan is None:
            continue
        own = [row for row in result.trials if key_form(row.label) in OWN and row_of(plan, row.label) is None]
        rows, faults = _by_row(plan, [row for row in result.trials if row not in own[:1]])
        summary = judge_results(plan, [row.tried if row else () for row in rows])
        faults += _odd(summary, rows)
        yield Outcome(str(result.child), challenge, result, summary, _own(plan, own[0]) if own else None), faults


def _own(plan: TrialPlan, row: RowTried) -> ResultSummary:
    """What the line of the child's own design says: it is judged by itself, for nothing was expected of it."""
    return judge_results(replace(plan, rows=(Row(str(row.label), None),)), [row.tried])


def _by_row(plan: TrialPlan, written: Sequence[RowTried]) -> tuple[list[RowTried | None], list[Fault]]:
    """What was written for each row of the plan, and the labels that are none of its rows."""
    rows: list[RowTried | None] = [None] * len(plan.rows)
    faults: list[Fault] = []
    for row in written:
        index = row_of(plan, row.label)
        if index is None:
            known = ", ".join(r.label for r in plan.rows)
            faults.append(Fault(row.at, f"The trial has no row `{snippet(row.label)}`.", f"Its rows are: {known}."))
            continue
        first = rows[index]
        if first is None:
            rows[index] = row
        else:
            faults.append(Fault(row.at, f"`{snippet(row.label)}` is the row of line {first.at.line} again.",
                                "Write all its numbers in one row."))  # fmt: skip
        if plan.trials and len(row.tried) == 2 * plan.trials:
            many = f"`{snippet(row.label)}` has {len(row.tried)} numbers, and {plan.trials} trials were planned."
            faults.append(warning(row.at, many, "If commas stand for decimal points, write a point: 9.8."))
    return rows, faults


def _odd(summary: ResultSummary, rows: Sequence[RowTried | None]) -> list[Fault]:
    """A warning at the place of each number that cannot be or is far from what was expected."""
    found: list[Fault] = []
    for judged, row in zip(summary.rows, rows, strict=True):
        for tried, said in zip(judged.tried, row.tried if row else (), strict=True):
            if tried.hint:
                found.append(warning(_at(said, row), f"{judged.row.label}: {tried.hint}"))
    return found


def _at(said: Said, row: RowTried | None) -> Place:
    return said.at if said.at.line or row is None else row.at
