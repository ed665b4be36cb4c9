"""A picture made calm: texture and noise flattened into patches, the edges between them kept sharp.

Each pixel takes the mean of that one of the four squares with a corner on it that varies least (M. Kuwahara et al.,
"Processing of RI-angiocardiographic images", 1976). Variation is measured as darkest to lightest, which whole-picture
operations can do.
"""

from __future__ import annotations

from PIL import Image, ImageChops, ImageFilter


def calmed(image: Image.Image, reach: int, passes: int) -> Image.Image:
    """The RGB picture with patches of about 2 x reach px made plain, that many times over."""
    for _ in range(passes):
        image = _once(image.filter(ImageFilter.MedianFilter(3)), reach)
    return image


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
