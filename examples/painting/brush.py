"""The brush: goes over a composed surface in strokes, from broad to fine, and leaves paint with relief on canvas.

The order of work follows a known idea, painterly rendering with brushes of several sizes (A. Hertzmann, SIGGRAPH 1998):
a smaller brush only goes where the broad strokes are still too far from what was meant.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFilter

from .surface import Array, Surface, blur

_OVER = 1.5  # strokes are drawn this much larger than the picture, then reduced


@dataclass(frozen=True, slots=True)
class Brush:
    """A brush: half its width in units, the longest stroke in half-widths, and how far off it lets colours stay."""

    radius: float
    length: float = 8
    tolerance: float = 0.06
    jitter: float = 0.025


OIL = (
    Brush(17, 10, 0, 0.05),
    Brush(9, 12, 0.05, 0.045),
    Brush(4.6, 12, 0.05, 0.035),
    Brush(2.3, 10, 0.045, 0.025),
    Brush(1.1, 10, 0.05, 0.012),
)


def _directions(surface: Surface, grey: Array, sigma: float) -> Array:
    """The direction of strokes: along edges where there are edges, elsewhere as the composition says (radians)."""
    gy, gx = np.gradient(blur(grey, max(1.0, sigma * 0.4)))
    xx, yy, xy = (blur(v, sigma) for v in (gx * gx, gy * gy, gx * gy))
    along = 0.5 * np.arctan2(2 * xy, xx - yy) + np.pi / 2
    strength = np.sqrt(np.maximum(xx + yy, 0))
    pull = np.clip(strength / (np.percentile(strength, 90) + 1e-6), 0, 1) ** 1.5
    c = (1 - pull) * np.cos(2 * surface.flow) + pull * np.cos(2 * along)
    s = (1 - pull) * np.sin(2 * surface.flow) + pull * np.sin(2 * along)
    return np.asarray(0.5 * np.arctan2(s, c), np.float32)


def _paths(
    start: NDArray[np.float64], step: float, count: int, field: Array, ref: Array, now: Array
) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Stroke centre lines (n, count, 2) and how many points of each to use: a stroke ends where its colour is wrong."""
    h, w = field.shape
    path = np.empty((len(start), count, 2))
    path[:, 0] = start
    use = np.full(len(start), count)
    ix, iy = start[:, 0].astype(int), start[:, 1].astype(int)
    colour = ref[iy, ix]
    last = np.zeros((len(start), 2))
    for k in range(1, count):
        a = field[iy, ix]
        d = np.column_stack([np.cos(a), np.sin(a)])
        d[(d * last).sum(1) < 0] *= -1
        d = 0.65 * d + 0.35 * last if k > 1 else d
        d /= np.maximum(np.hypot(d[:, 0], d[:, 1]), 1e-6)[:, None]
        last = d
        path[:, k] = path[:, k - 1] + d * step
        ix = np.clip(path[:, k, 0], 0, w - 1).astype(int)
        iy = np.clip(path[:, k, 1], 0, h - 1).astype(int)
        here = ref[iy, ix]
        off = np.abs(here - colour).sum(1)
        wrong = off > np.maximum(np.abs(here - now[iy, ix]).sum(1), 0.10)
        use = np.where(wrong & (use == count) & (k >= 2), k, use)
    return path, use


def _draw(
    draw: ImageDraw.ImageDraw, path: NDArray[np.float64], colour: Array, radius: float, rng: np.random.Generator
) -> None:
    """One stroke: a bundle of bristles side by side, each a little lighter or darker, higher or lower."""
    d = np.gradient(path, axis=0)
    n = np.column_stack([-d[:, 1], d[:, 0]]) / np.maximum(np.hypot(d[:, 0], d[:, 1]), 1e-6)[:, None]
    bristles = max(1, round(radius / 1.9))
    width = max(1, round(2.5 * radius / bristles))
    tone = rng.normal(0, 0.02, (bristles, 1)) + rng.normal(0, 0.008, (bristles, 3))
    tone -= tone.mean(0)
    height = 128 + rng.normal(0, 40, bristles)
    paint = np.clip((colour + tone) * 255, 0, 255).astype(int).tolist()
    trim = rng.integers(0, 2, (bristles, 2)) if len(path) > 4 else np.zeros((bristles, 2), int)
    for j in range(bristles):
        across = 0.0 if bristles == 1 else (j / (bristles - 1) * 2 - 1) * radius * 0.86
        line = (path + n * across)[trim[j, 0] : len(path) - trim[j, 1]]
        level = int(min(255, max(0, height[j])))
        draw.line(line.ravel().tolist(), fill=(*paint[j], level), width=width, joint="curve" if width > 3 else None)


def _layer(surface: Surface, canvas: Image.Image, brush: Brush, first: bool, rng: np.random.Generator) -> None:
    radius = brush.radius * surface.scale
    ref = np.stack([blur(surface.px[..., i], max(0.5, radius * 0.28)) for i in range(3)], -1)
    now = np.asarray(canvas.resize((surface.w, surface.h), Image.Resampling.BOX), np.float32)[..., :3] / 255
    grey = ref @ np.array([0.3, 0.59, 0.11], np.float32)
    field = _directions(surface, grey, max(2.0, radius * 1.1))
    spacing = max(1.5, radius * 0.95)
    gx, gy = np.meshgrid(np.arange(0, surface.w, spacing), np.arange(0, surface.h, spacing))
    start = np.column_stack([gx.ravel(), gy.ravel()]) + rng.uniform(-0.5, 0.5, (gx.size, 2)) * spacing * 1.6
    start = np.clip(start, 0, (surface.w - 1.001, surface.h - 1.001))
    if not first:
        error = blur(np.abs(ref - now).sum(-1) / 3, max(0.6, radius * 0.5))
        ix, iy = start[:, 0].astype(int), start[:, 1].astype(int)
        fine = np.clip(surface.fine[iy, ix], 0.02, 1)
        keep = error[iy, ix] * (0.35 + 1.3 * fine) > brush.tolerance * rng.uniform(0.6, 1.4, len(ix))
        start = start[keep]
    rng.shuffle(start)
    count = max(3, int(brush.length))
    path, use = _paths(start, radius * 0.9, count, field, ref, now)
    colour = ref[start[:, 1].astype(int), start[:, 0].astype(int)]
    value = rng.normal(0, brush.jitter, (len(start), 1))
    hue = rng.normal(0, brush.jitter * 0.45, (len(start), 3))
    colour = np.clip(colour * (1 + value) + value * 0.3 + hue, 0, 1)
    draw = ImageDraw.Draw(canvas)
    for line, n, c in zip(path * _OVER, use, colour, strict=True):
        if n >= 2:
            _draw(draw, line[:n], c, radius * _OVER, rng)


def weave(surface: Surface, strength: float, pitch: float = 2.6) -> Array:
    """The threads of a canvas as factors around 1; `pitch` in units."""
    p = 2 * np.pi / pitch
    wander = surface.noise(60, seed=5) * 5
    threads = np.sin(surface.x * p + wander) * 0.5 + np.sin(surface.y * p + wander) * 0.5
    return np.asarray(1 + strength * threads * (0.6 + 0.8 * surface.noise(9, seed=6)), np.float32)


def painted(
    surface: Surface,
    brushes: Sequence[Brush] = OIL,
    relief: float = 0.055,
    canvas_strength: float = 0.012,
    careful: float = 0.7,
) -> Image.Image:
    """The surface as a painting. `careful` is how far the finest parts are finished with a pointed brush."""
    rng = np.random.default_rng(surface.seed + 4)
    size = (round(surface.w * _OVER), round(surface.h * _OVER))
    # Four plain channels: red, green, blue and the height of the paint, over a thin coat of the picture's own tones.
    thin = [blur(surface.px[..., i], 5 * surface.scale) for i in range(3)]
    coat = [Image.fromarray((tone * 255).clip(0, 255).astype(np.uint8)) for tone in thin]
    canvas = Image.merge("CMYK", [*(part.resize(size) for part in coat), Image.new("L", size, 128)])
    for number, brush in enumerate(brushes):
        _layer(surface, canvas, brush, number == 0, rng)
    out = np.asarray(canvas.resize((surface.w, surface.h), Image.Resampling.BOX), np.float32) / 255
    height = blur(out[..., 3], 0.7)
    gy, gx = np.gradient(height)
    light = np.clip((gx + gy) * 5, -1, 1)
    around = Image.fromarray((surface.fine * 255).astype(np.uint8)).filter(ImageFilter.MaxFilter(5))
    finest = blur(np.asarray(around, np.float32) / 255, 1.2)
    touch = np.clip((finest - 0.5) * 1.5, 0, careful)[..., None]
    colour = out[..., :3] + touch * (surface.px - out[..., :3])
    colour = colour * (1 + relief * light[..., None] * 2) * weave(surface, canvas_strength)[..., None]
    return Image.fromarray((np.clip(colour, 0, 1) * 255).astype(np.uint8))
