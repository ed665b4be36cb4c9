"""Nets for the planned values: one of true size for each, on card, with its place in the manifest."""

import math

import pytest
from trial_desks import CANOPY, COINS, trial_desk

from packgen.faults import Severity
from packgen.page.template_nets import building_blocks, template_nets, template_sheets


def length(points: list[list[float]]) -> float:
    (x1, y1), (x2, y2) = points[0], points[-1]
    return math.hypot(x2 - x1, y2 - y1)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_each_planned_value_has_a_net_of_its_true_size(paper: str) -> None:
    desk, challenge, plan = trial_desk("older", paper=paper)
    sheets = template_sheets(desk, challenge, template_nets(desk, challenge, plan))
    assert [sheet.title for sheet in sheets] == [f"A soft landing: {mm} mm" for mm in (90, 120, 150)]
    for sheet, side in zip(sheets, (90.0, 120.0, 150.0), strict=True):
        assert (sheet.stock, sheet.part, sheet.kind) == ("card", "templates", "challenge")
        assert isinstance(sheet.net, dict) and sheet.net["title"] == sheet.title and sheet.net["ratio"] == 1
        slant = math.hypot(side / math.sqrt(2), side / 2)  # the edges of a square pyramid half as high as wide
        folds = [length(fold["points_mm"]) for fold in sheet.net["folds"]]
        assert any(fold == pytest.approx(slant, abs=0.01) for fold in folds)
        assert all(face["page"] <= len(sheet.pages) for face in sheet.net["faces"])


def test_values_that_need_the_same_net_share_it() -> None:
    text = CANOPY.replace("load mass: 20 g, ", "canopy side: 120 mm, ").replace(
        "canopy side: [90 mm, 120 mm, 150 mm]", "load mass: [10 g, 20 g]"
    )
    desk, challenge, plan = trial_desk("older", text)
    (template,) = template_nets(desk, challenge, plan)
    assert template.values == ""
    assert template_sheets(desk, challenge, (template,))[0].title == "A soft landing"


def test_only_the_shapes_that_have_a_net_get_one() -> None:
    text = CANOPY.replace("canopy: square-pyramid", "canopy diameter: 120 mm").replace(
        "canopy side: [90 mm, 120 mm, 150 mm]", "canopy: [flat, cone, square-pyramid]"
    )
    desk, challenge, plan = trial_desk("older", text)
    assert [template.values for template in template_nets(desk, challenge, plan)] == ["cone", "square-pyramid"]
    assert not desk.faults


def test_a_net_too_large_for_card_is_told_and_left_out() -> None:
    desk, challenge, plan = trial_desk("older", CANOPY.replace("150 mm]", "1800 mm]"))
    assert [template.values for template in template_nets(desk, challenge, plan)] == ["90 mm", "120 mm"]
    (fault,) = desk.faults
    assert fault.severity is Severity.WARNING and "1800 mm" in fault.message and fault.place == challenge.at


def test_a_challenge_without_nets_has_none_and_no_building_page() -> None:
    desk, challenge, plan = trial_desk("older", COINS)
    assert template_nets(desk, challenge, plan) == () and building_blocks(desk, ()) == []
