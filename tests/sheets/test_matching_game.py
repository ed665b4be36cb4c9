"""The matching game: cards of one size, shared straight cuts, and backs that lie behind their fronts."""

from __future__ import annotations

from itertools import pairwise

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, picture, placed, said, work

from packgen.page.desk import Laid
from packgen.page.marks import Line, Page, Picture, Text
from packgen.reading.models import Work
from packgen.sheets.matching_game import lay_out


def works(count: int, year: str = "") -> list[Work]:
    return [
        work(f"Work number {k}", picture(*((360, 270) if k % 2 else (270, 360))), year=year or str(1850 + k),
             held=f"Hall {k}") for k in range(count)
    ]  # fmt: skip


def game(level: str, count: int = 5, **wishes: object) -> Laid:
    (laid,) = lay_out(art_desk("matching-game", level, works(count), per="study", **wishes))  # type: ignore[arg-type]
    return laid


def grid(page: Page) -> tuple[list[float], list[float]]:
    """Where the upright and the level cuts of a page lie."""
    lines = [p.mark for p in placed(page, "cut") if isinstance(p.mark, Line)]
    across = sorted({round(line.x1, 3) for line in lines if abs(line.x1 - line.x2) < 1e-6})
    down = sorted({round(line.y1, 3) for line in lines if abs(line.y1 - line.y2) < 1e-6})
    return across, down


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("count", [2, 3, 5, 8, 12])
@pytest.mark.parametrize("level", LEVELS)
def test_all_cards_are_of_one_size_and_are_parted_by_straight_cuts(level: str, count: int, paper: str) -> None:
    sizes = set()
    for page in game(level, count, paper=paper).pages[::2]:
        across, down = grid(page)
        sizes |= {round(b - a, 2) for a, b in pairwise(across)}
        heights = [b - a for a, b in pairwise(down)]
        assert max(heights) - min(heights) < 0.01
        assert down[0] > 15 and across[0] > 10 and across[-1] < page.width - 10
    assert max(sizes) - min(sizes) < 0.02


@pytest.mark.parametrize("level", LEVELS)
def test_every_work_has_all_its_cards(level: str) -> None:
    pages = game(level, 7).pages[::2]
    pictures = sum(isinstance(p.mark, Picture) for page in pages for p in placed(page))
    words = " ".join(said(page) for page in pages)
    assert pictures == (14 if level == "first" else 7)
    for k in range(7):
        assert level == "first" or f"number {k}" in words.replace("\n", " ") or f"{k}" in words
        assert level not in ("older", "upper") or str(1850 + k) in words
        assert level != "upper" or f"Hall {k}" in words


def test_a_back_lies_behind_its_front_when_turned_over_the_long_edge() -> None:
    laid = game("older", 5)
    assert laid.sides == "two-sided-long-edge" and len(laid.pages) % 2 == 0
    front, back = laid.pages[:2]
    across, down = grid(front)
    middles = {round(front.width - (a + b) / 2, 2) for a, b in pairwise(across)}
    rows = [(a, b) for a, b in pairwise(down)]
    for p in placed(back, "back"):
        assert isinstance(p.mark, Text)
        x, y = (p.box[0] + p.box[2]) / 2, p.box[1]
        assert min(abs(x - m) for m in middles) < 0.01
        assert any(low < y < high for low, high in rows)


def cell_of(page: Page, x: float, y: float) -> tuple[int, int]:
    """The column and row, from the upper left, of the card a point lies on."""
    across, down = grid(page)
    column = next(k for k, (a, b) in enumerate(pairwise(across)) if a - 0.1 < x < b + 0.1)
    row = next(k for k, (a, b) in enumerate(pairwise(down)) if a < y < b)
    return column, len(down) - 2 - row


def letters_by_cell(front: Page, back: Page) -> dict[tuple[int, int], str]:
    """The letter behind each card of a page, found through the paper."""
    found = {}
    for p in placed(back, "back"):
        assert isinstance(p.mark, Text)
        x = front.width - (p.box[0] + p.box[2]) / 2
        found[cell_of(front, x, p.box[1])] = p.mark.text
    return found


@pytest.mark.parametrize("level", ["older", "upper"])
def test_the_letter_behind_a_card_is_that_of_its_work(level: str) -> None:
    laid = game(level, 7)
    counted: dict[str, int] = {}
    for front, back in zip(laid.pages[::2], laid.pages[1::2], strict=True):
        behind = letters_by_cell(front, back)
        for letter in behind.values():
            counted[letter] = counted.get(letter, 0) + 1
        for p in placed(front):
            if isinstance(p.mark, Text) and p.mark.text.isdigit() and p.mark.text.startswith("185"):
                here = behind[cell_of(front, (p.box[0] + p.box[2]) / 2, p.box[1])]
                assert here == "ABCDEFG"[int(p.mark.text) - 1850]
    assert counted == dict.fromkeys("ABCDEFG", 3 if level == "older" else 4)


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("count", [2, 3, 5, 6, 8, 12])
@pytest.mark.parametrize("level", LEVELS)
def test_cards_that_belong_together_are_never_neighbours(level: str, count: int, paper: str) -> None:
    laid = game(level, count, paper=paper)
    for front, back in zip(laid.pages[::2], laid.pages[1::2], strict=True):
        behind = letters_by_cell(front, back)
        for (column, row), letter in behind.items():
            for beside in ((column + 1, row), (column, row + 1)):
                assert not set(letter.split()) & set(behind.get(beside, "").split())


@pytest.mark.parametrize("level", LEVELS)
def test_five_works_leave_no_card_alone_in_a_row(level: str) -> None:
    for front, back in zip(game(level, 5).pages[::2], game(level, 5).pages[1::2], strict=True):
        rows = [row for _, row in letters_by_cell(front, back)]
        assert rows.count(max(rows)) > 1


def test_a_game_is_dealt_the_same_way_every_time() -> None:
    assert game("older", 5).pages == game("older", 5).pages


def test_a_year_that_two_works_share_carries_both_letters() -> None:
    desk = art_desk("matching-game", "older", works(2, "1861"), per="study")
    (laid,) = lay_out(desk)
    letters = sorted(p.mark.text for p in placed(laid.pages[1], "back") if isinstance(p.mark, Text))
    assert letters == ["A", "A", "A B", "A B", "B", "B"]


def test_a_one_sided_printer_gets_no_backs_unless_asked() -> None:
    plain = game("older", 4, sides="one-sided")
    assert plain.sides == "one-sided" and not any(placed(page, "back") for page in plain.pages)
    assert game("older", 4, sides="one-sided", options=[("backs", "yes")]).sides == "two-sided-long-edge"
    assert game("older", 4, options=[("backs", "no")]).sides == "one-sided"


def test_one_work_is_no_game() -> None:
    assert lay_out(art_desk("matching-game", "younger", works(1), per="study")) == ()


def test_a_kind_of_card_that_most_works_lack_is_left_out() -> None:
    some = [work(f"Work {k}", year="1860" if k == 0 else "") for k in range(4)]
    (laid,) = lay_out(art_desk("matching-game", "older", some, per="study"))
    assert "1860" not in said(laid.pages[0])


def test_the_count_of_works_and_of_cards_can_be_chosen() -> None:
    laid = game("younger", 6, options=[("most", 3), ("sets", 3)])
    assert sum(isinstance(p.mark, Picture) for p in placed(laid.pages[0])) == 3
    assert "1852" in said(laid.pages[0]) and "1853" not in said(laid.pages[0])
