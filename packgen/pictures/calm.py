"""A picture made calm: texture and noise flattened into patches, the edges between them kept sharp.

Each pixel takes the mean of that one of the four squares with a corner on it that varies least (M. Kuwahara et al.,
"Processing of RI-angiocardiographic images", 1976). Variation is measured as darkest to lightest, which whole-picture
operations can do.
"""

from __future__ import annotations

import numpy as np
from PIL import Image, ImageChops, ImageFilter

_MOST_GAIN, _CUT = 2.0, 0.01
# The median of nine by nineteen exchanges of a pair (J. L. Smith, "Implementing median filters in XC4000E FPGAs",
# Xilinx XCell 23, 1996). The numbers are places of the 3 x 3 square; after each the lower value is in the first.
_EXCHANGES = (
    (1, 2), (4, 5), (7, 8), (0, 1), (3, 4), (6, 7), (1, 2), (4, 5), (7, 8), (0, 3),
    (5, 8), (4, 7), (3, 6), (1, 4), (2, 5), (4, 7), (4, 2), (6, 4), (4, 2),
)  # fmt: skip


def calmed(image: Image.Image, reach: int, passes: int) -> Image.Image:
    """The RGB picture with patches of about 2 x reach px made plain, that many times over."""
    for _ in range(passes):
        image = _once(median(image), reach)
    return image


def stretched(image: Image.Image) -> Image.Image:
    """The picture with its tones spread over the whole range, if they lie close together, at most doubled.

    More would make the grain of a plain picture into a pattern.
    """
    histogram = image.convert("L").histogram()
    low, high = _level(histogram), 255 - _level(histogram[::-1])
    gain = min(_MOST_GAIN, 255 / max(1, high - low))
    base = 127.5 + gain * ((low + high) / 2 - 127.5) / _MOST_GAIN if gain == _MOST_GAIN else 127.5
    middle = (low + high) / 2
    table = [max(0, min(255, round(base + (v - middle) * gain))) for v in range(256)]
    return image.point(table * len(image.getbands()))


def _level(histogram: list[int]) -> int:
    """The first level above which all but a hundredth of the picture lies."""
    left = sum(histogram) * _CUT
    for level, count in enumerate(histogram):
        left -= count
        if left < 0:
            return level
    return 0


def _once(image: Image.Image, reach: int) -> Image.Image:
    wide = _margined(image, reach)
    side = reach + 1 + reach % 2  # the filters want an odd side
    shift = side // 2
    mean = wide.filter(ImageFilter.BoxBlur(shift))
    spread = _spread(wide, side)
    best, least = Image.new("RGB", wide.size), Image.new("L", wide.size, 255)
    for dx, dy in ((-shift, -shift), (shift, -shift), (-shift, shift), (shift, shift)):
        here, varies = ImageChops.offset(mean, dx, dy), ImageChops.offset(spread, dx, dy)
        calmer = ImageChops.subtract(least, varies).point([0] + [255] * 255)
        best.paste(here, mask=calmer)
        least = ImageChops.darker(least, varies)
    return best.crop((reach * 2, reach * 2, reach * 2 + image.width, reach * 2 + image.height))


def _margined(image: Image.Image, reach: int) -> Image.Image:
    """The picture with a margin that goes on much as its edge does, so that no pixel looks outside."""
    margin = reach * 2
    wide = image.resize((image.width + 2 * margin, image.height + 2 * margin))
    wide.paste(image, (margin, margin))
    return wide


def _spread(image: Image.Image, side: int) -> Image.Image:
    """The largest difference of any colour band within a square of that side round each pixel, as L."""
    bands = ImageChops.subtract(grown(image, side // 2), shrunk(image, side // 2)).split()
    return ImageChops.lighter(bands[0], ImageChops.lighter(bands[1], bands[2]))


def grown(image: Image.Image, reach: int) -> Image.Image:
    """The lightest value within `reach` px each way, band by band, as a rank filter gives it; for L and RGB."""
    return _best(image, reach, np.maximum)


def shrunk(image: Image.Image, reach: int) -> Image.Image:
    """The darkest value within `reach` px each way, band by band, as a rank filter gives it; for L and RGB."""
    return _best(image, reach, np.minimum)


def _best(image: Image.Image, reach: int, better: np.ufunc) -> Image.Image:
    """The best value within reach: the picture against itself moved by 1, 2, 4 ... px across, then down."""
    pixels = np.asarray(image)
    for _ in range(2):
        pixels = np.pad(pixels, ((reach, reach), *[(0, 0)] * (pixels.ndim - 1)), mode="edge")
        held, side = 1, 2 * reach + 1
        while held < side:
            step = min(held, side - held)
            pixels = better(pixels[:-step], pixels[step:])
            held += step
        pixels = pixels.swapaxes(0, 1)
    return Image.fromarray(np.ascontiguousarray(pixels))


def median(image: Image.Image) -> Image.Image:
    """Each pixel the median of the 3 x 3 square round it, band by band, as a rank filter gives it; for L and RGB."""
    pixels = np.asarray(image)
    wide = np.pad(pixels, ((1, 1), (1, 1), *[(0, 0)] * (pixels.ndim - 2)), mode="edge")
    height, width = pixels.shape[:2]
    nine = [wide[y : y + height, x : x + width] for y in range(3) for x in range(3)]
    for low, high in _EXCHANGES:
        nine[low], nine[high] = np.minimum(nine[low], nine[high]), np.maximum(nine[low], nine[high])
    return Image.fromarray(nine[4])
