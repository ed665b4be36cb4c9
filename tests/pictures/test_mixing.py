import colorsys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.pictures.colours import apart
from packgen.pictures.mixing import PAINTS, mix_for, mixed


def hue(parts: dict[str, int]) -> float:
    return colorsys.rgb_to_hsv(*mixed(parts))[0] * 360


def test_two_primaries_give_the_secondary_between_them() -> None:
    # J. Itten's wheel of twelve (from memory): orange, green and violet stand between red, yellow and blue.
    assert 10 < hue({"red": 1, "yellow": 2}) < 45
    assert 80 < hue({"yellow": 2, "blue": 1}) < 170
    assert 240 < hue({"red": 1, "blue": 1}) < 320


def test_complements_together_are_dull() -> None:
    def chroma(parts: dict[str, int]) -> float:
        return max(mixed(parts)) - min(mixed(parts))

    green = {"yellow": 2, "blue": 1}
    assert chroma(green | {"red": 1}) < chroma(green)


@pytest.mark.parametrize("paint", ["yellow", "red", "blue", "black"])
def test_white_makes_a_tint_and_more_of_it_a_paler_one(paint: str) -> None:
    light = [sum(mixed({paint: 1, "white": n})) for n in (0, 1, 3, 8)]
    assert light == sorted(light)


@pytest.mark.parametrize("paint", PAINTS)
def test_a_paint_is_mixed_of_itself(paint: str) -> None:
    mix = mix_for(PAINTS[paint])
    assert mix.parts == ((paint, 1),) and mix.close


@settings(max_examples=15, deadline=None)
@given(st.tuples(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1)))
def test_a_mix_is_of_few_parts_and_says_whether_it_is_close(colour: tuple[float, float, float]) -> None:
    mix = mix_for(colour)
    assert 1 <= len(mix.parts) <= 4 and sum(n for name, n in mix.parts if name != "white") <= 6
    assert mix.colour == pytest.approx(mixed(dict(mix.parts)))
    assert mix.close == (apart(mix.colour, colour) < 0.3)


def test_flesh_sky_and_leaf_come_close() -> None:
    for colour in ((0.87, 0.69, 0.56), (0.62, 0.76, 0.86), (0.35, 0.48, 0.30)):
        assert mix_for(colour).close
