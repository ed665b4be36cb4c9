import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from packgen.pictures.colours import apart, main_colours, nearest_colour, palette_of

COLOUR = st.tuples(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))


def test_black_and_white_lie_farthest_apart() -> None:
    # T. Riemersma's metric: the weights of the three bands add up to 2 + r + 4 + 3 - r = 9.
    assert apart((0, 0, 0), (1, 1, 1)) == pytest.approx(3)


@given(COLOUR, COLOUR)
def test_distance_is_the_same_both_ways_and_nothing_to_itself(
    a: tuple[float, float, float], b: tuple[float, float, float]
) -> None:
    assert apart(a, b) == apart(b, a)
    assert apart(a, a) == 0


@given(st.lists(COLOUR, min_size=1, max_size=30), st.integers(1, 8))
def test_main_colours_are_few_and_within_the_given_ones(colours: list[tuple[float, float, float]], count: int) -> None:
    chosen = main_colours(colours, [1.0] * len(colours), count)
    assert 1 <= len(chosen) <= count
    for band in range(3):
        assert min(c[band] for c in colours) - 1e-9 <= min(c[band] for c in chosen)
        assert max(c[band] for c in chosen) <= max(c[band] for c in colours) + 1e-9


def test_a_small_bright_accent_gets_a_colour_of_its_own() -> None:
    picture = Image.new("RGB", (100, 100), (60, 70, 80))
    picture.paste((90, 100, 110), (0, 50, 100, 100))
    picture.paste((230, 40, 30), (40, 40, 50, 50))
    palette = palette_of(picture, 3)
    assert any(red > 0.8 and green < 0.3 for red, green, _ in palette)
    assert nearest_colour((0.9, 0.1, 0.1), list(palette)) == len(palette) - 1
