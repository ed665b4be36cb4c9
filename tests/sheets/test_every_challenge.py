"""A challenge of every model at every level in the tightest pages: large letters, wide margins, the short paper."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from challenge_files import NAMES, Made, made

from packgen.faults import Severity
from packgen.trials.models import models
from packgen.trials.stages import stages
from packgen.units import BASE, Quantity

LEVELS = ("first", "younger", "older", "upper")
READ = ("first", "younger", "older")  # the upper level's pages are built alike; reading them takes long
_HELD = TemporaryDirectory(prefix="every-challenge-")


def _challenge(key: str) -> str:
    """A challenge of a model with what it cannot do without."""
    model = models()[key]
    spared = {name for group in model.one_of for name in group[1:]}
    given = [
        f"{item.name}: {Quantity(float(item.tries[1]), item.dimension, BASE[item.dimension])}"
        for item in model.inputs
        if item.needed and item.tries and item.name not in {model.vary, "latitude", *spared}
    ]
    return (
        f"\n  - title: {model.title}\n    brief: {model.title}.\n    model: {key}\n    given: {{{', '.join(given)}}}\n"
        "    materials: [card, thread, sticky tape]\n    steps: [Get it ready., Set it up.]"
    )


@cache
def _built(level: str) -> Made:
    folder = Path(_HELD.name) / level
    folder.mkdir()
    more = "printer: {margin: 12 mm}\nunits: customary\n"
    text = "".join(map(_challenge, models()))
    return made(
        folder, text, levels=(level,), paper="Letter", more=more, child=", larger type: yes", sheets="challenge"
    )


@pytest.mark.parametrize("level", LEVELS)
def test_every_model_has_its_pages_at_every_level_without_a_fault(level: str) -> None:
    built = _built(level)
    assert not [fault for fault in built.faults if fault.severity is Severity.FAULT]
    sheets = built.sheets(level)
    assert len(sheets) == len(models())
    if level == "first":
        assert all(last - first < 3 for _, (first, last) in sheets)


@cache
def _text(level: str) -> list[str]:
    return _built(level).text(level)


@pytest.mark.parametrize("level", READ)
def test_every_page_begins_with_a_stage_of_its_challenge_in_order(level: str) -> None:
    pages = _text(level)
    titles = [page.split(NAMES[level])[0].strip() for page in pages]
    known = {stage.title for job in ("design", "find out") for stage in stages(level, job)}
    starts = [title for title in titles if title in known]
    wanted = [
        stage.title
        for model in models().values()
        for stage in stages(level, "find out" if model.finds_out else "design")
    ]
    assert starts == wanted


@pytest.mark.parametrize("level", READ)
def test_only_what_is_to_be_designed_asks_for_ideas(level: str) -> None:
    text = " ".join(_text(level))
    designs = sum(not model.finds_out for model in models().values())
    if level == "younger":
        assert text.count("Another way") == designs
    elif level != "first":
        assert text.count("Idea 4") == designs
