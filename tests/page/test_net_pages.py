"""Nets on pages: each line where the manifest says, tabs under the lines, letters on top, a page for each sheet."""

from __future__ import annotations

import math
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest
from page_marks import of_role, words_of

from packgen.nets import build, lay_out
from packgen.nets.layout import NetSheets
from packgen.page.desk import Desk
from packgen.page.marks import Group, Line, Mark, Page, Path_
from packgen.page.net_key import net_area
from packgen.page.net_pages import net_facts, net_pages

sys.path.insert(0, str(Path(__file__).parents[1] / "sheets"))
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk

GIVEN = {
    "cube": {"edge": 40.0},
    "cone": {"diameter": 60.0, "height": 70.0},
    "tower": {"sides": 6, "side": 60.0, "height": 160.0, "roof": 90.0},
}


def desk(level: str = "younger", paper: str = "A4") -> Desk:
    return art_desk("model", level, paper=paper)


def net(at: Desk, solid: str) -> NetSheets:
    area = net_area(at)
    return lay_out(build(solid, GIVEN[solid]), area.width, area.height, "true", youngest=at.level == "first")


def moved(page: Page) -> list[Mark]:
    """The marks of the net on a page, inside the group that moves them to their place."""
    return [mark for group in page.marks if isinstance(group, Group) for mark in group.marks]


def ends(mark: Mark) -> list[tuple[float, float]]:
    if isinstance(mark, Line):
        return [(mark.x1, mark.y1), (mark.x2, mark.y2)]
    assert isinstance(mark, Path_)
    return [(float(step[-2]), float(step[-1])) for step in mark.steps if len(step) > 2]


def near(point: Sequence[float], others: Sequence[tuple[float, float]]) -> bool:
    """True if one of the others lies at a point, but for what is rounded away in the manifest."""
    return any(math.dist(point, other) < 1e-3 for other in others)


@pytest.mark.parametrize("solid", sorted(GIVEN))
@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_every_sheet_of_a_net_is_a_page_with_its_name_and_the_child(solid: str, paper: str) -> None:
    at = desk(paper=paper)
    made = net(at, solid)
    pages = net_pages(at, "The lamp house", made)
    assert len(pages) == len(made.sheets) and (solid != "tower" or len(pages) > 1)
    for number, page in enumerate(pages, 1):
        words = " ".join(words_of(page.marks))
        assert "The lamp house" in words and at.person in words and "true size" in words
        assert (f"sheet {number} of {len(pages)}" in words) == (len(pages) > 1)
        assert (page.width, page.height) == at.paper


@pytest.mark.parametrize("level", LEVELS)
def test_lines_lie_where_the_manifest_says(level: str) -> None:
    at = desk(level)
    made = net(at, "cube")
    (page,) = net_pages(at, "Box", made)
    facts = net_facts(at, "Box", "cube", made)
    area = net_area(at)
    drawn = [
        [(x + area.x, y + area.y) for x, y in ends(mark)]
        for mark in of_role(moved(page), "fold-mountain", "fold-valley")
    ]
    for fold in facts["folds"]:
        assert any(all(near(point, line) for point in fold["points_mm"]) for line in drawn)
    cuts = [(x + area.x, y + area.y) for mark in of_role(moved(page), "cut") for x, y in ends(mark)]
    assert all(near(point, cuts) for cut in facts["cuts"] for point in cut["points_mm"])


def test_tabs_are_drawn_under_the_lines_and_letters_over_all() -> None:
    at = desk()
    (page,) = net_pages(at, "Box", net(at, "cube"))
    marks = moved(page)
    roles = [getattr(mark, "role", "") for mark in marks]
    last_tab = max(k for k, role in enumerate(roles) if role == "tab")
    first_line = min(k for k, role in enumerate(roles) if role in ("cut", "fold-mountain"))
    letters = [k for k, mark in enumerate(marks) if isinstance(mark, Group) and of_role(mark.marks, "glue-letter")]
    assert last_tab < first_line and min(letters) > max(k for k, role in enumerate(roles) if role == "cut")


@pytest.mark.parametrize("level", LEVELS)
def test_every_tab_has_its_letter_and_the_edge_it_goes_to_has_the_same(level: str) -> None:
    at = desk(level)
    made = net(at, "cube")
    (page,) = net_pages(at, "Box", made)
    shown = [mark.text for group in moved(page) if isinstance(group, Group)  # type: ignore[attr-defined]
             for mark in of_role(group.marks, "glue-letter")]  # fmt: skip
    tabs = [tab["letter"] for tab in net_facts(at, "Box", "cube", made)["tabs"]]
    assert len(tabs) == len(set(tabs)) == 7  # a cube: 12 edges, of which a net in one piece leaves 5 uncut
    assert sorted(shown) == sorted([*tabs, *tabs])
