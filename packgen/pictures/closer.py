"""Looking closer at a picture: lines of composition, details worth finding, and tones to match.

Lines lie in a unit square, y upwards. Details are fractions of the picture from its upper left corner, as a study
writes them.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
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
_SPOT, _APART, _UNEVEN = 0.012, 0.12, 60.0
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


def vanishing_lines(x: float, y: float, count: int = 12) -> tuple[Segment, ...]:
    """Lines from a vanishing point (fractions, y upwards; it may lie outside) through even steps round the frame.

    Only their part inside the picture is given. Parallels going into depth meet in that point.
    """
    steps = [4 * (i + 0.5) / count for i in range(count)]
    ends = [_on_frame(step) for step in steps]
    clipped = [_inside((x, y), end) for end in ends]
    return tuple(segment for segment in clipped if segment is not None)


def eye_line(y: float) -> Segment:
    """The horizon at the height of the painter's eyes, y upwards."""
    return (0.0, y), (1.0, y)


def _on_frame(step: float) -> tuple[float, float]:
    side, along = int(step) % 4, step % 1
    return ((along, 0.0), (1.0, along), (1 - along, 1.0), (0.0, 1 - along))[side]


def _inside(start: tuple[float, float], end: tuple[float, float]) -> Segment | None:
    """The part of a straight piece within the unit square, or None (Liang and Barsky, 1984)."""
    (x0, y0), (x1, y1) = start, end
    low, high = 0.0, 1.0
    for step, room in ((x0 - x1, x0), (x1 - x0, 1 - x0), (y0 - y1, y0), (y1 - y0, 1 - y0)):
        if step == 0:
            if room < 0:
                return None
        elif step < 0:
            low = max(low, room / step)
        else:
            high = min(high, room / step)
    if high - low < 1e-9:
        return None
    points = [(x0 + t * (x1 - x0), y0 + t * (y1 - y0)) for t in (low, high)]
    return points[0], points[1]


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
    found: list[ToneSpot] = []
    for tone in sorted(range(len(greys)), key=lambda k: -int((abs(mean - 255 * greys[k]) < step / 4).sum())):
        off = abs(mean - 255 * greys[tone])
        cost = np.where(free & (off < step / 3), uneven + 2 * off, 1e6)
        at = int(cost.argmin())
        y, x = divmod(at, image.width)
        if cost[y, x] > _UNEVEN or len(found) == most:
            continue
        found.append(ToneSpot((x + 0.5) / image.width, (y + 0.5) / image.height, tone))
        apart = round(_APART * max(image.size))
        free[max(0, y - apart) : y + apart, max(0, x - apart) : x + apart] = False
    return tuple(sorted(found, key=lambda spot: (round(3 * spot.y), spot.x)))


def _grey_of(lightness: float) -> float:
    light = ((lightness + 16) / 116) ** 3 if lightness > 8 else lightness / 903.2963
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
