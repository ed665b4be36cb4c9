from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageDraw

from packgen.pictures.grid import ALONG, MOST_SQUARES, NoGrid, drawn_beforehand, enlarging
from packgen.pictures.load import Store

LEVELS = st.sampled_from(sorted(ALONG))


def test_five_by_seven_goes_exactly_to_ten_by_fourteen() -> None:
    # A grid method hand-out (paperzz.com): 5 x 7 goes exactly to 10 x 14; factor 2 makes 1-unit squares 2-unit ones.
    grid = enlarging(5 / 7, "older", (50, 70), (100, 140), (Fraction(2),))
    assert grid.source_size == (50, 70) and grid.target_size == (100, 140)
    assert grid.large == 2 * grid.cell and grid.ratio_words == "2 : 1"


@given(st.floats(0.4, 2.5), LEVELS, st.floats(40, 120), st.floats(40, 120), st.floats(120, 190), st.floats(120, 240))
def test_the_ratio_is_exact_and_both_grids_fit(
    aspect: float, level: str, sw: float, sh: float, tw: float, th: float
) -> None:
    try:
        grid = enlarging(aspect, level, (sw, sh), (tw, th))
    except NoGrid:
        assert level == "upper" or min(sw, sh) < 60
        return
    assert Fraction(grid.large) / Fraction(grid.cell) == grid.ratio
    assert grid.source_size[0] <= sw + 1e-6 and grid.source_size[1] <= sh + 1e-6
    assert grid.target_size[0] <= tw + 1e-6 and grid.target_size[1] <= th + 1e-6
    assert grid.target_size[0] / grid.source_size[0] == pytest.approx(float(grid.ratio))


@given(st.floats(0.4, 2.5), LEVELS)
def test_squares_are_square_on_the_picture(aspect: float, level: str) -> None:
    grid = enlarging(aspect, level, (100, 100), (180, 180))
    left, top, width, height = grid.crop
    assert width * aspect / height == pytest.approx(grid.columns / grid.rows)
    assert left >= 0 and top >= 0 and left + width <= 1 + 1e-9 and top + height <= 1 + 1e-9
    assert width * height > 0.92


@given(st.floats(0.4, 2.5))
def test_the_older_get_more_squares(aspect: float) -> None:
    counts = [max(g.columns, g.rows) for g in (enlarging(aspect, level, (100, 100), (180, 180)) for level in ALONG)]
    assert counts == sorted(counts)
    assert counts[0] <= 4 and 4 <= counts[1] <= 6 and 6 <= counts[2] <= 10 and 6 <= counts[3] <= 14


@given(st.floats(0.3, 3.0), LEVELS, st.floats(60, 170), st.floats(150, 240))
def test_squares_are_whole_mm_on_both_and_not_too_many(aspect: float, level: str, small: float, large: float) -> None:
    grid = enlarging(aspect, level, (small, small), (large, large))
    assert grid.cell == int(grid.cell) and grid.large == int(grid.large)
    assert len(grid.letters) * len(grid.numbers) <= MOST_SQUARES[level]
    assert MOST_SQUARES["older"] == 48 and list(MOST_SQUARES.values()) == sorted(MOST_SQUARES.values())


@given(st.floats(0.4, 2.5), LEVELS)
def test_cells_cover_the_picture_once(aspect: float, level: str) -> None:
    grid = enlarging(aspect, level, (100, 100), (180, 180))
    boxes = [grid.cell_box(c, r) for r in range(len(grid.numbers)) for c in range(len(grid.letters))]
    assert sum(w * h for _, _, w, h in boxes) == pytest.approx(1)
    assert all(w > 0 and h > 0 for _, _, w, h in boxes)
    across, down = grid.lines(grid.large)
    assert across[-1] == pytest.approx(grid.target_size[0]) and down[-1] == pytest.approx(grid.target_size[1])
    assert len(across) == len(grid.letters) + 1 and len(down) == len(grid.numbers) + 1


def test_a_room_too_small_is_told() -> None:
    with pytest.raises(NoGrid) as caught:
        enlarging(1.0, "upper", (20, 20), (40, 40))
    assert caught.value.instead


def test_the_hard_squares_are_drawn_beforehand_and_none_are_neighbours(tmp_path: Path, store: Store) -> None:
    picture = Image.new("RGB", (400, 300), (220, 220, 210))
    pen = ImageDraw.Draw(picture)
    for k in range(20):
        pen.line((5, 5 + k * 4, 95, 90 - k * 4), fill=(10, 10, 10), width=2)
    path = tmp_path / "busy-corner.png"
    picture.save(path)
    grid = enlarging(4 / 3, "younger", (80, 60), (180, 140))
    cells = drawn_beforehand(store, path, grid)
    assert (0, 0) in cells and 2 <= len(cells) <= 5
    assert all(abs(a - c) + abs(b - d) > 1 for a, b in cells for c, d in cells if (a, b) != (c, d))
