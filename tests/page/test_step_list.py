"""Numbered steps with boxes to tick."""

from __future__ import annotations

import pytest
from page_marks import box, drawn, kit, of_role, overlap, words_of

from packgen.page.marks import Text
from packgen.page.net_steps import Told
from packgen.page.step_list import StepList

STEPS = (
    Told("Cut along the thick lines."),
    Told("Glue tabs A to M, one by one, each behind the edge with the same letter.", tuple("ABCDEFGHIJKLM")),
    Told("Hold until it sticks."),
    Told("Hang it up."),
)


@pytest.mark.parametrize("level", ["first", "younger", "older", "upper"])
def test_each_letter_has_a_box_and_nothing_overlaps(level: str) -> None:
    pen = drawn(kit(level), StepList(STEPS), 120.0)
    ticks, letters = of_role(pen.marks, "tick"), of_role(pen.marks, "tick-letter")
    assert len(ticks) == len(letters) == 13
    boxes = [box(m) for m in pen.marks if isinstance(m, Text)] + [box(m) for m in ticks]
    assert not any(overlap(a, b) for i, a in enumerate(boxes) for b in boxes[:i])
    height = StepList(STEPS).measure(kit(level), 120.0).least
    assert min(b[1] for b in boxes) >= -height - 0.5 and max(b[2] for b in boxes) <= 120.0


def test_steps_are_split_between_steps_and_numbered_on() -> None:
    on = kit("younger")
    steps = StepList(STEPS)
    parts = steps.split(on, 120.0, steps.measure(on, 120.0).least * 0.75)
    assert parts
    head, rest = parts
    assert len(head.steps) + len(rest.steps) == 4 and len(rest.steps) >= 2
    assert f"{len(head.steps) + 1}." in words_of(drawn(on, rest, 120.0).marks)


def test_no_single_step_is_left_alone() -> None:
    on = kit("younger")
    assert StepList(STEPS).split(on, 120.0, on.look.body.leading * 1.2) is None
