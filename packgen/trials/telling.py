"""One or two sentences on a child's results, at the child's level."""

from __future__ import annotations

from collections.abc import Mapping

from packgen.trials.fit import Fit
from packgen.trials.frame import plain
from packgen.trials.results import ResultSummary, RowResult, turning
from packgen.units import Quantity

_MOST = {"time": ("longest", "shortest"), "speed": ("highest", "lowest"), "frequency": ("highest", "lowest"),
         "mass": ("greatest", "smallest"), "force": ("greatest", "smallest")}  # fmt: skip


def sentence(summary: ResultSummary, level: str, names: Mapping[str, str] | None = None) -> str:
    """What the results say, in words for a level ("first", "younger", "older", "upper"), or an invitation to try.

    Only results count: whether they agree with what was expected is told to `upper` and to the guide. `names` are what
    rows are called (by their labels) for a child who does not read numbers: "the big one".
    """
    known = [r for r in summary.rows if r.answer is not None]
    if not known:
        return "There are no numbers yet: try it and write them down."
    if len(known) == 1:
        named, answer = _named(summary, known[0], names), said(summary, known[0].answer)
        return f"With {named} the {summary.plan.measured.what} was {answer}."
    if level in ("first", "younger"):
        return _younger(summary, known, level, names)
    text = _older(summary, known)
    return text if level == "older" else " ".join((text, *_upper(summary, known)))


def figure(summary: ResultSummary, number: float | None) -> str:
    """A number of the results without its unit, with as many decimals as the children wrote (three at most)."""
    if number is None:
        return ""
    written = [f"{t.value:.6g}" for r in summary.rows for t in r.tried if t.used and t.value is not None]
    decimals = max((len(text.partition(".")[2]) for text in written if "e" not in text), default=0)
    return plain(number, min(decimals, 3))


def said(summary: ResultSummary, number: float | None) -> str:
    """A number of the results with its unit: "0.94 s", "41°"."""
    if number is None:
        return ""
    unit = summary.plan.measured.unit
    return f"{figure(summary, number)}{unit}" if unit == "°" else f"{figure(summary, number)} {unit}".strip()


def _ends(summary: ResultSummary) -> tuple[str, str]:
    return _MOST.get(summary.plan.measured.dimension, ("largest", "smallest"))


def _too_close(known: list[RowResult]) -> bool:
    """True if the rows differ by no more than the trials within one row do."""
    answers = [r.answer for r in known if r.answer is not None]
    widest = max((r.range or 0.0) for r in known)
    return max(answers) - min(answers) <= widest


def _named(summary: ResultSummary, row: RowResult, names: Mapping[str, str] | None) -> str:
    return (names or {}).get(row.row.label) or summary.plan.named(row.row)


def _younger(summary: ResultSummary, known: list[RowResult], level: str, names: Mapping[str, str] | None) -> str:
    top = max(known, key=lambda r: r.answer or 0.0)
    most = _ends(summary)[0]
    named = _named(summary, top, names)
    if level == "first":
        text = f"{named[:1].upper()}{named[1:]} {'took the longest' if most == 'longest' else 'came out highest'}."
    else:
        text = f"The {most} {summary.plan.measured.what} was {said(summary, top.answer)}, with {named}."
    return text + (" It was a close race!" if _too_close(known) else "")


def _older(summary: ResultSummary, known: list[RowResult]) -> str:
    what, changed = summary.plan.measured.what, summary.plan.changed
    kind = "mean " if all(r.how == "mean" and len(r.tried) > 1 for r in known) else ""
    if changed is None or summary.plan.x_axis.words:
        top, low = max(known, key=lambda r: r.answer or 0.0), min(known, key=lambda r: r.answer or 0.0)
        most, least = _ends(summary)
        text = (f"The {kind}{what} was {most} with {top.row.label} ({said(summary, top.answer)}) and {least} with "
                f"{low.row.label} ({said(summary, low.answer)}).")  # fmt: skip
    else:
        text = _along(summary, known, kind)
    if _too_close(known):
        text += " The trials of one row differ by as much as the rows do, so more trials are needed to be sure."
    return text


def _along(summary: ResultSummary, known: list[RowResult], kind: str) -> str:
    """How the results went from the first planned number to the last, with the turn if there is one in between."""
    what, changed = summary.plan.measured.what, summary.plan.changed
    first, last = min(known, key=_planned), max(known, key=_planned)
    start, end = said(summary, first.answer), said(summary, last.answer)
    phrase = changed.phrase if changed else "the build"
    text = f"When {phrase} went from {first.row.label} to {last.row.label}, the {kind}{what}"
    turned = turning(summary)
    if turned is not None:
        way, back = ("up", "down") if (turned.answer or 0.0) > (first.answer or 0.0) else ("down", "up")
        middle = f"{said(summary, turned.answer)} at {turned.row.label}"
        return f"{text} went {way} from {start} to {middle}, and {back} again to {end}."
    if start == end:
        return f"{text} stayed at {start}."
    return f"{text} went {'up' if (last.answer or 0.0) > (first.answer or 0.0) else 'down'} from {start} to {end}."


def _planned(row: RowResult) -> float:
    return row.row.value.value if isinstance(row.row.value, Quantity) else 0.0


def _upper(summary: ResultSummary, known: list[RowResult]) -> list[str]:
    found: list[str] = []
    ranges = [r.range for r in known if r.range is not None and len(r.tried) > 1]
    if ranges:
        found.append(f"Within a row the trials ranged over up to {said(summary, max(ranges))}.")
    if summary.fit is not None and turning(summary) is None:
        found.append(f"Best fit: {fit_text(summary.fit)} (R² = {summary.fit.r2:.2f}).")
    judged = [r for r in known if r.verdict]
    if judged:
        inside = sum(r.verdict == "inside" for r in judged)
        found.append(f"{inside} of {len(judged)} results lie in the band that was predicted.")
    return found


def fit_text(fit: Fit) -> str:
    """A best fit as an equation: "y = 0.0041 x + 0.42" or "y = 0.63 x^0.50"."""
    if fit.kind == "power":
        return f"y = {fit.b:.3g} x^{fit.a:.2f}"
    sign = "+" if fit.b >= 0 else "−"
    return f"y = {fit.a:.3g} x {sign} {abs(fit.b):.3g}"
