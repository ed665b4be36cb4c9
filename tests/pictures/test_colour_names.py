"""Names of colours: those of CSS get the plain name that is in their own."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.pictures.colour_names import colour_name

# Named colours with their values, from CSS Color Module Level 4, section 6.1 (w3.org/TR/css-color-4).
NAMED = {
    "red": (255, 0, 0), "yellow": (255, 255, 0), "green": (0, 128, 0), "blue": (0, 0, 255), "white": (255, 255, 255),
    "black": (0, 0, 0), "grey": (128, 128, 128), "orange": (255, 165, 0), "purple": (128, 0, 128),
    "turquoise": (64, 224, 208), "pink": (255, 192, 203), "brown": (139, 69, 19),
}  # fmt: skip
SHADED = {
    (0, 0, 139): ("blue", "dark"), (0, 100, 0): ("green", "dark"), (173, 216, 230): ("blue", "light"),
    (144, 238, 144): ("green", "light"), (211, 211, 211): ("grey", "light"), (139, 0, 0): ("red", "dark"),
}  # fmt: skip


@pytest.mark.parametrize("name", NAMED)
def test_a_colour_of_css_has_its_own_name(name: str) -> None:
    red, green, blue = NAMED[name]
    assert colour_name((red / 255, green / 255, blue / 255)).hue == name


@pytest.mark.parametrize("value", SHADED)
def test_light_and_dark_colours_of_css_are_told_as_such(value: tuple[int, int, int]) -> None:
    name = colour_name((value[0] / 255, value[1] / 255, value[2] / 255))
    hue, shade = SHADED[value]
    assert shade in name.shade.replace("pale", "light")
    assert name.hue == hue or (hue == "blue" and name.hue == "turquoise")


@given(st.tuples(*[st.floats(0, 1)] * 3))
@settings(max_examples=60)
def test_every_colour_has_a_name(colour: tuple[float, float, float]) -> None:
    name = colour_name(colour)
    assert name.hue and name.shade in ("", "pale", "light", "dark", "very dark")


@given(st.floats(0, 1), st.floats(0, 1))
@settings(max_examples=40)
def test_of_two_greys_the_darker_is_never_called_lighter(one: float, other: float) -> None:
    order = ["black", "dark grey", "grey", "light grey", "white"]
    dark, light = sorted((one, other))
    ranks = []
    for value in (dark, light):
        name = colour_name((value, value, value))
        ranks.append(order.index(f"{name.shade} {name.hue}".strip()))
    assert ranks[0] <= ranks[1]
