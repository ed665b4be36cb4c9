"""The shadow clock on card: hour lines at published angles, a gnomon that folds to the latitude, the caution."""

import math
from typing import Any

import pytest
from page_marks import box, of_role
from trial_desks import CLOCK, trial_desk

from packgen.page.dial_page import DialSheet, dial_sheet
from packgen.page.marks import Line, Text


def sheet(latitude: float, paper: str = "A4", level: str = "older", **child: Any) -> DialSheet:
    desk, challenge, _ = trial_desk(level, CLOCK, paper=paper, **child)
    return dial_sheet(desk, str(challenge.title), latitude)


def angle(points: list[list[float]]) -> float:
    """The direction of a line clockwise from straight up, in degrees."""
    (x1, y1), (x2, y2) = points
    return math.degrees(math.atan2(x2 - x1, y2 - y1))


def test_hour_lines_have_the_angles_of_a_published_table() -> None:
    # lorem-ipsum.co.uk/sundial.php, latitude 54.8: 12.35, 25.26, 39.25, 54.76, 71.85 degrees at 1 to 5 hours from noon.
    lines = {line["hour"]: angle(line["points_mm"]) for line in sheet(54.8).facts["hour_lines"]}
    for hours, wanted in ((1, 12.35), (2, 25.26), (3, 39.25), (4, 54.76), (5, 71.85)):
        assert lines[12 + hours] == pytest.approx(wanted, abs=0.01)
        assert lines[12 - hours] == pytest.approx(-wanted, abs=0.01)


@pytest.mark.parametrize("latitude", [-41.3, 10.0, 35.0, 50.4, 68.2])
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_gnomon_folds_to_the_latitude_and_fits_its_line(latitude: float, paper: str) -> None:
    made = sheet(latitude, paper)
    halves = [face["points_mm"] for face in made.facts["faces"] if face["name"].startswith("gnomon")]
    (line,) = [m for m in made.page.marks if isinstance(m, Line) and m.role == "gnomon-line"]
    for foot, heel, tip in halves:
        assert math.dist(foot, heel) == pytest.approx(line.y2 - line.y1, abs=0.001)
        at_heel = math.dist(foot, heel) ** 2 + math.dist(heel, tip) ** 2
        assert at_heel == pytest.approx(math.dist(foot, tip) ** 2, rel=1e-4)  # the back stands upright on the base
        slope = math.degrees(math.atan2(math.dist(heel, tip), math.dist(foot, heel)))
        assert slope == pytest.approx(abs(latitude), abs=0.01)
    assert halves[0][0] == halves[1][0] and halves[0][2] == halves[1][2]  # both share the style


@pytest.mark.parametrize("latitude", [-68.2, 5.0, 50.4])
@pytest.mark.parametrize(("level", "paper", "larger"), [("younger", "Letter", True), ("upper", "A4", False)])
def test_everything_lies_on_the_paper_and_no_word_on_a_line(latitude: float, level: str, paper: str, larger: bool
                                                           ) -> None:  # fmt: skip
    page = sheet(latitude, paper, level, larger_type=larger).page
    for mark in page.marks:
        left, low, right, high = box(mark)
        assert left > 7.0 and low > 5.0 and right < page.width - 7.0 and high < page.height - 5.0, mark
    lines = [mark for mark in of_role(page.marks, "hour-line") if isinstance(mark, Line)]
    lowest = min(min(line.y1, line.y2) for line in lines)
    words = [mark for mark in page.marks if isinstance(mark, Text) and "Never look at the sun. Read" in mark.text]
    assert words and box(words[0])[3] < lowest + 5.0
    assert {mark.text for mark in of_role(page.marks, "hour")} == {  # type: ignore[union-attr]
        str(line["hour"]) for line in sheet(latitude, paper, level).facts["hour_lines"]
    }


def test_the_south_points_to_the_south() -> None:
    said = " ".join(mark.text for mark in sheet(-41.3).page.marks if isinstance(mark, Text))
    assert "for 41.3° south" in said and "true south" in said and "north" not in said
    assert said.count("Never look at the sun") == 2


def test_no_dial_at_the_equator() -> None:
    with pytest.raises(ValueError, match="equator"):
        sheet(1.0)
