"""One or two sentences on a child's results, at the child's level."""

from __future__ import annotations

from packgen.trials.fit import Fit
from packgen.trials.frame import plain
from packgen.trials.results import ResultSummary, RowResult
from packgen.units import Quantity

_MOST = {"time": ("longest", "shortest"), "speed": ("highest", "lowest"), "frequency": ("highest", "lowest"),
         "mass": ("greatest", "smallest"), "force": ("greatest", "smallest")}  # fmt: skip


def sentence(summary: ResultSummary, level: str) -> str:
    """What the results say, in words for a level ("first", "younger", "older", "upper"), or an invitation to try.

    Only results count: whether they agree with what was expected is told to `upper` and to the guide.
    """
    known = [r for r in summary.rows if r.answer is not None]
    if not known:
        return "There are no numbers yet: try it and write them down."
    if len(known) == 1:
        named, answer = summary.plan.named(known[0].row), _said(summary, known[0].answer)
        return f"With {named} the {summary.plan.measured.what} was {answer}."
    if level in ("first", "younger"):
        return _younger(summary, known, level)
    text = _older(summary, known)
    return text if level == "older" else " ".join((text, *_upper(summary, known)))


def _said(summary: ResultSummary, number: float | None) -> str:
    """A number of the results with its unit, with as many decimals as the children wrote (three at most)."""
    if number is None:
        return ""
    written = [f"{t.value:.6g}" for r in summary.rows for t in r.tried if t.used and t.value is not None]
    decimals = max((len(text.partition(".")[2]) for text in written if "e" not in text), default=0)
    return f"{plain(number, min(decimals, 3))} {summary.plan.measured.unit}".strip()


def _ends(summary: ResultSummary) -> tuple[str, str]:
    return _MOST.get(summary.plan.measured.dimension, ("largest", "smallest"))


def _too_close(known: list[RowResult]) -> bool:
    """True if the rows differ by no more than the trials within one row do."""
    answers = [r.answer for r in known if r.answer is not None]
    widest = max((r.range or 0.0) for r in known)
    return max(answers) - min(answers) <= widest


def _younger(summary: ResultSummary, known: list[RowResult], level: str) -> str:
    top = max(known, key=lambda r: r.answer or 0.0)
    most = _ends(summary)[0]
    named = summary.plan.named(top.row)
    if level == "first":
        text = f"{named[:1].upper()}{named[1:]} {'took the longest' if most == 'longest' else 'came out highest'}."
    else:
        text = f"The {most} {summary.plan.measured.what} was {_said(summary, top.answer)}, with {named}."
    return text + (" It was a close race!" if _too_close(known) else "")


def _older(summary: ResultSummary, known: list[RowResult]) -> str:
    what, changed = summary.plan.measured.what, summary.plan.changed
    kind = "mean " if all(r.how == "mean" and len(r.tried) > 1 for r in known) else ""
    if changed is None or summary.plan.x_axis.words:
        top, low = max(known, key=lambda r: r.answer or 0.0), min(known, key=lambda r: r.answer or 0.0)
        most, least = _ends(summary)
        text = (f"The {kind}{what} was {most} with {top.row.label} ({_said(summary, top.answer)}) and {least} with "
                f"{low.row.label} ({_said(summary, low.answer)}).")  # fmt: skip
    else:
        first, last = min(known, key=_planned), max(known, key=_planned)
        way = "up" if (last.answer or 0.0) > (first.answer or 0.0) else "down"
        text = (f"When {changed.phrase} went from {first.row.label} to {last.row.label}, the {kind}{what} went {way} "
                f"from {_said(summary, first.answer)} to {_said(summary, last.answer)}.")  # fmt: skip
        if _said(summary, first.answer) == _said(summary, last.answer):
            text = (f"When {changed.phrase} went from {first.row.label} to {last.row.label}, the {kind}{what} stayed "
                    f"at {_said(summary, first.answer)}.")  # fmt: skip
    if _too_close(known):
        text += " The trials of one row differ by as much as the rows do, so more trials are needed to be sure."
    return text


def _planned(row: RowResult) -> float:
    return row.row.value.value if isinstance(row.row.value, Quantity) else 0.0


def _upper(summary: ResultSummary, known: list[RowResult]) -> list[str]:
    said = []
    ranges = [r.range for r in known if r.range is not None and len(r.tried) > 1]
    if ranges:
        said.append(f"Within a row the trials ranged over up to {_said(summary, max(ranges))}.")
    if summary.fit is not None:
        said.append(f"Best fit: {fit_text(summary.fit)} (R² = {summary.fit.r2:.2f}).")
    judged = [r for r in known if r.verdict]
    if judged:
        inside = sum(r.verdict == "inside" for r in judged)
        said.append(f"{inside} of {len(judged)} results lie in the band that was predicted.")
    return said


def fit_text(fit: Fit) -> str:
    """A best fit as an equation: "y = 0.0041 x + 0.42" or "y = 0.63 x^0.50"."""
    if fit.kind == "power":
        return f"y = {fit.b:.3g} x^{fit.a:.2f}"
    sign = "+" if fit.b >= 0 else "−"
    return f"y = {fit.a:.3g} x {sign} {abs(fit.b):.3g}"
