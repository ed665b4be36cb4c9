"""Dangers that a parent's own list of materials brings along, said where no other caution speaks of them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from packgen.page.desk import Desk
from packgen.reading.models import Challenge, Model
from packgen.trials.plan import TrialPlan


@dataclass(frozen=True, slots=True)
class _Danger:
    """A danger: the words that bring it along, those by which a caution speaks of it, and the key of its wording."""

    brought: str
    spoken: str
    key: str


_DANGERS = (
    _Danger(r"\bwater\b|\bbasins?\b|\bbowls?\b|\btubs?\b", r"alone with water", "danger_water"),
    _Danger(r"\bbags?\b", r"\bbags?\b", "danger_bag"),
    _Danger(r"warm needle|hot needle|\bneedles?\b", r"needle[^.]*burn|burn[^.]*needle", "danger_needle"),
    _Danger(r"\btins?\b|tin can", r"\btins?\b|tin can", "danger_tin"),
    _Danger(r"coat over|cloth over|blanket over", r"over (?:the|your|a) head", "danger_cover"),
    _Danger(r"\bthreads?\b|\bstrings?\b|\bcords?\b|\bropes?\b|\byarn\b", r"\bnecks?\b", "danger_thread"),
    _Danger(r"\bhole\b|\bholes\b", r"\bholes?\b|needle|punch", "danger_hole"),
)


def challenge_dangers(desk: Desk, challenge: Challenge, plan: TrialPlan | None, said: Sequence[str]) -> tuple[str, ...]:
    """What the things, steps and remedies of a challenge bring along and `said` does not speak of."""
    words = [str(challenge.brief), *map(str, challenge.steps)]
    words += [f"{material.item} {material.instead or ''}" for material in challenge.materials]
    if plan and plan.model:
        words += [*plan.model.tips, *(fault.remedy for fault in plan.model.faults_of_build)]
    return _brought(desk, words, said, frozenset({"danger_hole"}))


def model_dangers(desk: Desk, model: Model, said: Sequence[str], holes: bool) -> tuple[str, ...]:
    """What a model's things and steps, and `holes` to be made in it, bring along and `said` does not speak of."""
    words = [str(material.item) for material in model.materials]
    words += ["hole"] if holes else []
    return _brought(desk, words, said)


def _brought(desk: Desk, words: Iterable[str], said: Sequence[str],
             without: frozenset[str] = frozenset()) -> tuple[str, ...]:  # fmt: skip
    brought, spoken = " ".join(words).lower(), " ".join(said).lower()
    return tuple(
        desk.say(danger.key) for danger in _DANGERS
        if danger.key not in without and re.search(danger.brought, brought) and not re.search(danger.spoken, spoken)
    )  # fmt: skip
