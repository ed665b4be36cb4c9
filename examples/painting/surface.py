"""The surface a picture is composed on before the brush goes over it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from .shapes import Points

Array = NDArray[np.float32]
Shader = Callable[[Array, Array], Array]
Plain = str | Sequence[float] | NDArray[np.floating]
Colour = Plain | Shader
_KERNEL_REACH = 3


def rgb(colour: Plain) -> Array:
    """The colour as three numbers 0..1 from `#rrggbb` or three numbers 0..1."""
    if isinstance(colour, str):
        return np.array([int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)], np.float32)
    return np.asarray(colour, np.float32)


def mix(a: Plain, b: Plain, t: float) -> Array:
    """The colour a fraction t of the way from a to b."""
    return np.asarray(rgb(a) * (1 - t) + rgb(b) * t, np.float32)


def _stops(t: Array, stops: Sequence[tuple[float, Plain]]) -> Array:
    at = [s[0] for s in stops]
    colours = np.array([rgb(s[1]) for s in stops])
    return np.stack([np.interp(t, at, colours[:, i]) for i in range(3)], -1).astype(np.float32)


def ramp(start: Sequence[float], end: Sequence[float], *stops: tuple[float, Plain]) -> Shader:
    """A colour that changes along the line from start to end; stops are (fraction, colour)."""
    a, d = np.asarray(start, float), np.asarray(end, float) - np.asarray(start, float)
    return lambda x, y: _stops(((x - a[0]) * d[0] + (y - a[1]) * d[1]) / (d @ d), stops)


def halo(centre: Sequence[float], reach: float, *stops: tuple[float, Plain], squash: float = 1) -> Shader:
    """A colour that changes outwards from a centre."""
    return lambda x, y: _stops(np.hypot(x - centre[0], (y - centre[1]) / squash) / reach, stops)


def blur(values: Array, sigma: float) -> Array:
    """Values smoothed by a Gaussian of `sigma` pixels (two dimensions; reduced first when sigma is large)."""
    h, w = values.shape
    factor = max(1, int(sigma / 2.5))
    small = values
    if factor > 1:
        size = (max(2, w // factor), max(2, h // factor))
        small = np.asarray(Image.fromarray(values.astype(np.float32)).resize(size, Image.Resampling.BOX))
    s = max(sigma / factor, 0.3)
    reach = int(np.ceil(_KERNEL_REACH * s))
    k = np.exp(-0.5 * (np.arange(-reach, reach + 1) / s) ** 2)
    k /= k.sum()
    for axis in (0, 1):
        pad = [(reach, reach) if i == axis else (0, 0) for i in (0, 1)]
        padded = np.pad(small, pad, mode="edge")
        n = small.shape[axis]
        total = np.zeros_like(small, dtype=np.float32)
        for i, weight in enumerate(k):
            total += np.float32(weight) * (padded[i : i + n] if axis == 0 else padded[:, i : i + n])
        small = total
    if factor > 1:
        small = np.asarray(Image.fromarray(small).resize((w, h), Image.Resampling.BICUBIC))
    return np.asarray(small, np.float32)


@dataclass(frozen=True, slots=True)
class Frame:
    """Where shapes land: moved to (x, y), enlarged, perhaps mirrored left-right or upside down, faded or tinted."""

    x: float = 0.0
    y: float = 0.0
    size: float = 1.0
    left_right: float = 1.0
    upside: float = 1.0
    alpha: float = 1.0
    tint: tuple[float, float, float] | None = None
    strength: float = 0.0


class Surface:
    """Colours, the direction strokes will run (radians) and how fine they may be (0..1), one value a pixel.

    `strewn` is how much of what is strewn about, like grass and waves, is painted: all of it.
    """

    strewn = 1.0

    def __init__(self, width: float, height: float, pixels: int, seed: int) -> None:
        self.width, self.height = width, height
        self.scale = pixels / max(width, height)
        self.w, self.h = round(width * self.scale), round(height * self.scale)
        self.seed = seed
        self.rng = np.random.default_rng(seed)
        self.px: Array = np.zeros((self.h, self.w, 3), np.float32)
        self.flow: Array = np.zeros((self.h, self.w), np.float32)
        self.fine: Array = np.full((self.h, self.w), 0.4, np.float32)
        y, x = np.mgrid[0 : self.h, 0 : self.w].astype(np.float32)
        self.x, self.y = x / self.scale, y / self.scale
        self.frame = Frame()
        self._grain = self.noise(30, 1.6, octaves=4, seed=seed + 77) - 0.5

    def noise(self, size: float, stretch: float = 1.0, octaves: int = 4, seed: int = 0, contrast: float = 1.0) -> Array:
        """Cloud-like values 0..1; `size` is the largest lump in units, `stretch` its width over its height."""
        rng = np.random.default_rng(self.seed * 1000 + seed)
        total = np.zeros((self.h, self.w), np.float32)
        weight = 0.0
        for octave in range(octaves):
            step = size / 2**octave
            nx, ny = max(2, int(self.width / (step * stretch)) + 2), max(2, int(self.height / step) + 2)
            lumps = Image.fromarray(rng.random((ny, nx)).astype(np.float32))
            total += np.asarray(lumps.resize((self.w, self.h), Image.Resampling.BICUBIC)) / 1.8**octave
            weight += 1 / 1.8**octave
        total /= weight
        low, high = np.percentile(total, (1, 99))
        spread = np.clip((total - low) / (high - low), 0, 1)
        return np.asarray(np.clip((spread - 0.5) * contrast + 0.5, 0, 1), np.float32)

    @contextmanager
    def at(
        self,
        x: float,
        y: float,
        size: float = 1.0,
        *,
        mirror: bool = False,
        water: float = 0.0,
        fade: float = 0.0,
        fade_to: str = "#8090a8",
    ) -> Iterator[None]:
        """Paint what follows moved to (x, y) and enlarged; `water` > 0 paints it upside down and that much faded.

        `fade` leans all colours to `fade_to`, as distance or dusk does. Frames do not nest.
        """
        before = self.frame
        side = -1.0 if mirror else 1.0
        tint = rgb(fade_to)
        self.frame = Frame(x, y, size, side, strength=fade, tint=(float(tint[0]), float(tint[1]), float(tint[2])))
        if water:
            self.frame = replace(self.frame, upside=-1.0, alpha=1 - water)
        yield
        self.frame = before

    def _placed(self, shape: Points) -> NDArray[np.float64]:
        f = self.frame
        return np.asarray(shape, float) * (f.size * f.left_right, f.size * f.upside) + (f.x, f.y)

    def mask(self, shape: Points, soft: float = 0.0) -> Array:
        """How much of each pixel of the whole surface lies in the shape."""
        window, alpha = self._patch(shape, soft, 0)
        whole = np.zeros((self.h, self.w), np.float32)
        whole[window] = alpha
        return whole

    def _patch(self, shape: Points, soft: float, margin: float) -> tuple[tuple[slice, slice], Array]:
        p = np.asarray(shape, float) * self.scale
        reach = 3 * soft * self.scale + margin * self.scale + 2
        x0, y0 = np.maximum(np.floor(p.min(0) - reach), 0).astype(int)
        x1, y1 = np.minimum(np.ceil(p.max(0) + reach).astype(int), (self.w, self.h))
        if x1 <= x0 or y1 <= y0:
            return (slice(0, 0), slice(0, 0)), np.zeros((0, 0), np.float32)
        image = Image.new("L", (2 * int(x1 - x0), 2 * int(y1 - y0)))
        ImageDraw.Draw(image).polygon([tuple(q) for q in (2 * (p - (x0, y0))).tolist()], fill=255)
        small = image.resize((int(x1 - x0), int(y1 - y0)), Image.Resampling.BOX)
        alpha = np.asarray(small, np.float32) / 255
        return (slice(int(y0), int(y1)), slice(int(x0), int(x1))), blur(alpha, soft * self.scale) if soft else alpha

    def fill(
        self,
        shape: Points,
        colour: Colour,
        alpha: float = 1.0,
        *,
        soft: float = 0.0,
        flow: float | None = None,
        fine: float | None = None,
        vary: float = 0.05,
        form: tuple[float, float, float] | None = None,
        lights: tuple[str, str] = ("#fff2d8", "#3a3358"),
        clip: Array | None = None,
    ) -> None:
        """Paint a shape. `flow` in degrees; `form` = (direction of the light in degrees, strength, roundness in units).

        `lights` are the colours the lit and the shaded side lean to. `clip` keeps the paint inside a mask.
        """
        frame = self.frame
        soft *= frame.size
        window, a = self._patch(self._placed(shape), soft, 0)
        if not a.size:
            return
        x = (self.x[window] - frame.x) / (frame.size * frame.left_right)
        y = (self.y[window] - frame.y) / (frame.size * frame.upside)
        c = colour(x, y) if callable(colour) else np.broadcast_to(rgb(colour), (*x.shape, 3))
        if vary:
            c = c * (1 + 2 * vary * self._grain[window][..., None])
        if form:
            towards, strength, roundness = form
            towards = towards if frame.left_right > 0 else 180 - towards
            c = self._round(c, a, (towards * frame.upside, strength, roundness * frame.size), lights)
        if frame.tint is not None and frame.strength:
            c = c + frame.strength * (np.array(frame.tint, np.float32) - c)
        if clip is not None:
            a = a * clip[window]
        a = a * np.float32(alpha * frame.alpha)
        self.px[window] += a[..., None] * (np.clip(c, 0, 1) - self.px[window])
        solid = a > 0.5
        if flow is not None:
            self.flow[window][solid] = np.radians(flow)
        if fine is not None:
            self.fine[window] += a * (fine - self.fine[window])

    def _round(self, c: Array, a: Array, form: tuple[float, float, float], lights: tuple[str, str]) -> Array:
        towards, strength, roundness = form
        pad = int(roundness * self.scale * 2) + 2
        padded = np.pad(a, pad)
        sigma = roundness * self.scale
        hill = blur(padded, sigma)
        gy, gx = np.gradient(hill)
        t = (-(gx * np.cos(np.radians(towards)) + gy * np.sin(np.radians(towards))) * sigma * 2.2)[pad:-pad, pad:-pad]
        t = np.clip(t, -1, 1) * strength
        lit = np.clip(t, 0, 1)[..., None]
        dark = np.clip(-t, 0, 1)[..., None]
        c = c * (1 - 0.55 * lit) + (0.45 * c + 0.75 * rgb(lights[0])) * 0.55 * lit
        shade = c * (0.25 + 0.55 * rgb(lights[1]))
        return np.asarray(c * (1 - dark) + shade * dark, np.float32)

    def tint(self, amount: Array, colour: Plain) -> None:
        """Lay a colour over the whole surface, as much of it as `amount` says at each pixel."""
        self.px += np.clip(amount, 0, 1)[..., None] * (rgb(colour) - self.px)

    def darken(self, amount: Array, tint: str = "#2a2440") -> None:
        """Shade the surface: multiply by the tint where amount is 1."""
        self.px *= 1 - np.clip(amount, 0, 1)[..., None] * (1 - rgb(tint))

    def glow(self, x: float, y: float, reach: float, colour: str, strength: float = 1.0, squash: float = 1.0) -> None:
        """Add light around a point; it falls off smoothly to nothing at about `reach`."""
        d2 = ((self.x - x) ** 2 + ((self.y - y) / squash) ** 2) / reach**2
        fall = (np.exp(-4 * d2) * 0.6 + 0.4 / (1 + 28 * d2) * np.exp(-1.5 * d2)) * strength
        self.px[:] = 1 - (1 - self.px) * (1 - rgb(colour) * np.clip(fall, 0, 1)[..., None])

    def mirror(self, waterline: float, tint: str, amount: float, stretch: float = 1.0) -> None:
        """Lay the picture above the waterline upside down below it, leaning to the tint by `amount`."""
        row = round(waterline * self.scale)
        below = np.arange(row, self.h)
        source = np.clip(row - 1 - ((below - row) / stretch).astype(int), 0, row - 1)
        self.px[row:] = self.px[source] * (1 - amount) + rgb(tint) * amount

    def ripple(self, where: Array, waterline: float, near: float, far: float = 0.3, seed: int = 9) -> None:
        """Shake the water sideways: `far` units at the waterline, `near` at the foot of the picture."""
        depth = np.clip((self.y - waterline) / (self.height - waterline), 0, 1)
        wave = 5 + 24 * depth
        phase = np.cumsum(1 / np.maximum(wave * self.scale, 1), axis=0) * 2 * np.pi
        shake = np.sin(phase + 3.0 * self.noise(120, 5, seed=seed)) + 1.5 * (self.noise(14, 7, 3, seed=seed + 1) - 0.5)
        dx = shake * (far + (near - far) * depth) * where * self.scale
        columns = np.clip(np.arange(self.w)[None] + dx, 0, self.w - 1).astype(int)
        self.px = np.asarray(np.take_along_axis(self.px, columns[..., None].repeat(3, -1), 1))
