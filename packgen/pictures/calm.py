"""A picture made calm: texture and noise flattened into patches, the edges between them kept sharp.

Each pixel takes the mean of that one of the four squares with a corner on it that varies least (M. Kuwahara et al.,
"Processing of RI-angiocardiographic images", 1976). Variation is measured as darkest to lightest, which whole-picture
operations can do.
"""

from __future__ import annotations

from PIL import Image, ImageChops, ImageFilter

_MOST_GAIN, _CUT = 2.0, 0.01


def calmed(image: Image.Image, reach: int, passes: int) -> Image.Image:
    """The RGB picture with patches of about 2 x reach px made plain, that many times over."""
    for _ in range(passes):
        image = _once(image.filter(ImageFilter.MedianFilter(3)), reach)
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
    bands = [ImageChops.subtract(band.filter(ImageFilter.MaxFilter(side)), band.filter(ImageFilter.MinFilter(side)))
             for band in image.split()]  # fmt: skip
    return ImageChops.lighter(bands[0], ImageChops.lighter(bands[1], bands[2]))
