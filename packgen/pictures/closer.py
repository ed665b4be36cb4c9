"""Looking closer at a picture: lines of composition, details worth finding, and tones to match.

Lines lie in a unit square, y upwards. Details are fractions of the picture from its upper left corner, as a study
writes them.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageStat

from packgen.pictures.calm import grown, shrunk
from packgen.pictures.load import Crop, Store

Segment = tuple[tuple[float, float], tuple[float, float]]

KINDS = ("thirds", "diagonals", "golden", "middle")
_GOLDEN = (5**0.5 - 1) / 2  # the lesser part of a line in the golden section; 1/1.6180339887 (MathWorld)
_LOOK_PX = 320
_LOOK, _SAME = 12, 9.0  # px a side at which two details are compared, and how far apart their greys are at least
_FOLLOWED, _MOST_KINDS = 1.25, 2  # a picture follows lines across which it changes so much more than elsewhere
_BESIDE = 0.022  # of the long side: how near a line an edge counts
_PENCIL = 30.0  # L* of the darkest that a soft pencil gives (common practice, no source)
_SPOT, _APART = 0.017, 0.12
# How far from a tone, in parts of a step, and how uneven a place may be: plain ones
# first; the last are for the lightest and the darkest, and for a picture that has few.
_STRICT = ((1 / 6, 45.0, 9), (1 / 4, 60.0, 9), (0.42, 90.0, 3))
_DARKER = 20.0  # of 255, by which a place may be darker than the darkest tone
_DETAIL = 0.24  # side of a detail over the picture's short side


def composition_lines(kind: str) -> tuple[Segment, ...]:
    """The lines of `thirds`, `diagonals`, `golden` (section) or `middle`. Raises ValueError for another word."""
    if kind == "diagonals":
        return (((0.0, 0.0), (1.0, 1.0)), ((0.0, 1.0), (1.0, 0.0)))
    places = {"thirds": (1 / 3, 2 / 3), "golden": (1 - _GOLDEN, _GOLDEN), "middle": (0.5,)}
    if kind not in places:
        raise ValueError(f"{kind} is none of {', '.join(KINDS)}")
    upright = tuple(((x, 0.0), (x, 1.0)) for x in places[kind])
    level = tuple(((0.0, y), (1.0, y)) for y in places[kind])
    return upright + level


def eye_line(y: float) -> Segment:
    """The horizon at the height of the painter's eyes, y upwards."""
    return (0.0, y), (1.0, y)


def details(store: Store, path: Path, count: int = 4, aspect: float = 1.0, side: float = _DETAIL) -> tuple[Crop, ...]:
    """Parts of the picture with the most to see, apart from each other, in reading order. Raises PictureError.

    Each has the aspect (width over height) given and a height of `side` of the picture's short side. There may be
    fewer in a picture with nothing more to see. Found once a build.
    """
    found: tuple[Crop, ...] = store.keep(
        path, ("details", count, aspect, side), lambda: _details(store, path, count, aspect, side)
    )
    return found


def _details(store: Store, path: Path, count: int, aspect: float, side: float) -> tuple[Crop, ...]:
    image = store.pixels(path, _LOOK_PX, grey=True)
    high = max(3, round(side * min(image.size) * min(1.0, 1 / aspect)))
    wide = max(3, round(high * aspect))
    if wide > image.width or high > image.height:
        return ((0.0, 0.0, 1.0, 1.0),)
    seen = _worth(image, wide, high)
    found: list[tuple[int, int]] = []
    looks: list[Image.Image] = []
    while len(found) < count:
        place = _most(seen)
        if place is None:
            break
        left, top = place[0] - wide // 2, place[1] - high // 2
        look = image.crop((left, top, left + wide, top + high)).resize((_LOOK, _LOOK), Image.Resampling.BOX)
        if not any(_alike(look, other) for other in looks):  # of a pattern, which is everywhere, one piece is enough
            found.append((top, left))
            looks.append(look)
        box = (left - wide // 2, top - high // 2, left + wide + wide // 2, top + high + high // 2)
        seen.paste(0, (max(0, box[0]), max(0, box[1]), box[2], box[3]))
    rows = max(1, high)
    ordered = sorted(found, key=lambda place: (round(place[0] / rows), place[1]))
    return tuple(
        (left / image.width, top / image.height, wide / image.width, high / image.height) for top, left in ordered
    )


def _alike(one: Image.Image, other: Image.Image) -> bool:
    return ImageStat.Stat(ImageChops.difference(one, other)).mean[0] < _SAME


def _worth(image: Image.Image, wide: int, high: int) -> Image.Image:
    """How much there is to see in the window round each pixel, as L; 0 where the window would leave the picture."""
    calm = image.filter(ImageFilter.GaussianBlur(1.2))
    edges = ImageChops.subtract(calm.filter(ImageFilter.MaxFilter(3)), calm.filter(ImageFilter.MinFilter(3)))
    mean = edges.filter(ImageFilter.BoxBlur((wide / 2, high / 2)))
    out = Image.new("L", image.size, 0)
    left, top = wide // 2, high // 2
    box = (left, top, image.width - (wide - left) + 1, image.height - (high - top) + 1)
    out.paste(mean.crop(box).point([0] + [v if v > 1 else 1 for v in range(1, 256)]), box)
    return out


def _most(seen: Image.Image) -> tuple[int, int] | None:
    highest = seen.getextrema()[1]
    if not isinstance(highest, int) or highest == 0:
        return None
    at = seen.tobytes().index(highest)
    return at % seen.width, at // seen.width


def built_on(store: Store, path: Path, least: int = 0) -> tuple[str, ...]:
    """The kinds of lines a picture follows, the most followed first: those along which it has plainly more edges.

    Thirds and the golden section lie near each other, so only the better is given. At least `least` kinds, however
    little it follows them. Raises PictureError.
    """
    found: list[tuple[float, str]] = store.keep_long(
        path, "built on", lambda: tuple(sorted(((_followed(store, path, k), k) for k in KINDS), reverse=True))
    )
    kinds: list[str] = []
    for worth, kind in found:
        twin = {"thirds": "golden", "golden": "thirds"}.get(kind)
        if ((worth >= _FOLLOWED and len(kinds) < _MOST_KINDS) or len(kinds) < least) and twin not in kinds:
            kinds.append(kind)
    return tuple(kinds)


def _followed(store: Store, path: Path, kind: str) -> float:
    """How much more a picture changes across the lines of a kind than it does on the whole: 1 for as much."""
    image = store.pixels(path, _LOOK_PX, grey=True).filter(ImageFilter.GaussianBlur(1.5))
    right = ImageChops.difference(image, ImageChops.offset(image, 1, 0))
    down = ImageChops.difference(image, ImageChops.offset(image, 0, 1))
    worth = []
    for (x0, y0), (x1, y1) in composition_lines(kind):
        across, level = abs(x1 - x0) * image.width, abs(y1 - y0) * image.height
        changes = down if not level else right if not across else ImageChops.lighter(right, down)
        mask = Image.new("L", image.size, 0)
        ends = [(x0 * image.width, (1 - y0) * image.height), (x1 * image.width, (1 - y1) * image.height)]
        ImageDraw.Draw(mask).line(ends, fill=255, width=round(_BESIDE * max(image.size)))
        whole = ImageStat.Stat(changes).mean[0]
        worth.append(ImageStat.Stat(changes, mask).mean[0] / max(whole, 0.01))
    return sum(worth) / len(worth)


def tone_strip(count: int) -> tuple[float, ...]:
    """Greys from white to as dark as a pencil goes (1 to about 0.27) that look evenly spaced, to match with a pencil.

    Even steps of CIE 1976 lightness L*, as sRGB values (IEC 61966-2-1).
    """
    return tuple(_grey_of(100 - (100 - _PENCIL) * i / (count - 1)) for i in range(count))


@dataclass(frozen=True, slots=True)
class ToneSpot:
    """A place of even tone: fractions from the picture's upper left corner, and which of the tones it has, from 0."""

    x: float
    y: float
    tone: int


def tone_spots(store: Store, path: Path, greys: tuple[float, ...], most: int = 5) -> tuple[ToneSpot, ...]:
    """Places in the picture (as grey) of even tone, each of another of the greys, apart from each other.

    At most `most`, in reading order; tones the picture has not are left out. Found once a build. Raises PictureError.
    """
    found: tuple[ToneSpot, ...] = store.keep(
        path, ("tone spots", greys, most), lambda: _tone_spots(store, path, greys, most)
    )
    return found


def _tone_spots(store: Store, path: Path, greys: tuple[float, ...], most: int) -> tuple[ToneSpot, ...]:
    image = store.pixels(path, _LOOK_PX, grey=True)
    reach = max(2, round(_SPOT * max(image.size)))
    mean = np.asarray(image.filter(ImageFilter.BoxBlur(reach)), float)
    lightest, darkest = (np.asarray(f(image, reach), float) for f in (grown, shrunk))
    uneven = lightest - darkest
    free = np.zeros(mean.shape, bool)
    edge = 2 * reach
    free[edge:-edge, edge:-edge] = True
    step = 255 * (greys[0] - greys[-1]) / (len(greys) - 1)
    middle = sorted(range(len(greys)), key=lambda k: -int((abs(mean - 255 * greys[k]) < step / 4).sum()))
    order = list(dict.fromkeys((0, len(greys) - 1, *middle)))  # the lightest and the darkest before the others
    found: dict[int, ToneSpot] = {}
    for part, limit, least in _STRICT:
        for tone in order:
            if tone not in order[:2] and len(found) >= least:
                continue
            off = _off(mean, tone, greys)
            cost = np.where(free & (off < step * part), uneven + 2 * off, 1e6)
            at = int(cost.argmin())
            y, x = divmod(at, image.width)
            if cost[y, x] > limit or len(found) == most or tone in found:
                continue
            found[tone] = ToneSpot((x + 0.5) / image.width, (y + 0.5) / image.height, tone)
            apart = round(_APART * max(image.size))
            free[max(0, y - apart) : y + apart, max(0, x - apart) : x + apart] = False
    return tuple(sorted(found.values(), key=lambda spot: (round(3 * spot.y), spot.x)))


def _off(mean: NDArray[np.float64], tone: int, greys: tuple[float, ...]) -> NDArray[np.float64]:
    """How far each grey is from a tone, of 255; what is a little darker than the darkest counts as that."""
    off: NDArray[np.float64] = abs(mean - 255 * greys[tone])
    if tone == len(greys) - 1:
        off = np.where((mean < 255 * greys[tone]) & (off < _DARKER), off * 0.1, off)
    return off


def _grey_of(lightness: float) -> float:
    light = ((lightness + 16) / 116) ** 3 if lightness > 8 else lightness / 903.2963
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
