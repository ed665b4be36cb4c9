"""A plain name for a colour, so that it can be picked from a box of pencils even from a print in greys."""

from __future__ import annotations

import colorsys
from dataclasses import dataclass

from packgen.pictures.colours import Colour

# Where one hue ends and the next begins, in degrees round the circle of hues (from memory, checked against the names
# of CSS Color Module Level 4 in the tests).
_HUES = (
    (14, "red"), (42, "orange"), (68, "yellow"), (165, "green"), (195, "turquoise"), (255, "blue"), (290, "purple"),
    (342, "pink"), (360, "red"),
)  # fmt: skip
_GREY = 0.10  # colours with less between their strongest and their weakest band are greys


@dataclass(frozen=True, slots=True)
class ColourName:
    """A hue (`red`, `brown`, `grey`, `white` ...) and a shade: `pale`, `light`, `dark`, `very dark` or nothing."""

    hue: str
    shade: str = ""


def colour_name(colour: Colour) -> ColourName:
    """The plain name of an sRGB colour of 0..1."""
    hue = colorsys.rgb_to_hls(*colour)[0]
    seen = _lightness(colour)
    chroma = max(colour) - min(colour)
    if chroma < _GREY or (seen < 10 and chroma < 0.25):
        return _grey(seen)
    name = next(name for end, name in _HUES if hue * 360 <= end)
    if name in ("red", "orange", "yellow") and 12 <= hue * 360 <= 52:
        if seen < 50 or (chroma < 0.45 and seen < 72):
            return ColourName("brown", _shade(seen, 18, 26, 48, 62))
        if chroma < 0.35:
            return ColourName("cream" if seen > 85 else "beige")
    if name == "red" and seen > 60:
        return ColourName("pink", _shade(seen, 20, 40, 76, 88))
    if name == "pink" and seen < 42:
        name = "purple"
    bounds = (25, 40, 78, 90) if name in ("yellow", "green", "turquoise") else (17, 32, 66, 82)
    if name == "yellow":
        bounds = (30, 55, 93, 96)
    return ColourName(name, _shade(seen, *bounds))


def _shade(seen: float, very_dark: float, dark: float, light: float, pale: float) -> str:
    if seen < dark:
        return "very dark" if seen < very_dark else "dark"
    if seen > light:
        return "pale" if seen > pale else "light"
    return ""


def _grey(seen: float) -> ColourName:
    if seen > 92:
        return ColourName("white")
    if seen < 14:
        return ColourName("black")
    return ColourName("grey", "dark" if seen < 42 else "light" if seen > 70 else "")


def _lightness(colour: Colour) -> float:
    """Lightness L* of 0..100 (CIE 1976) of an sRGB colour (IEC 61966-2-1)."""
    red, green, blue = (v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in colour)
    y = 0.2126 * red + 0.7152 * green + 0.0722 * blue
    return 116 * y ** (1 / 3) - 16 if y > 0.008856 else 903.3 * y
