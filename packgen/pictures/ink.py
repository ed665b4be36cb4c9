"""A few ink strokes: the dark accents that make a face a face, as filled shapes to lie over closed areas.

Accents are where the picture is darker than just around (a difference of two blurs). Those along an outline are
already drawn and are left out; of the rest the strongest few stay.
"""

from __future__ import annotations

from PIL import Image, ImageChops, ImageDraw, ImageFilter

from packgen.pictures.calm import grown, median, shrunk, stretched
from packgen.pictures.label_map import LabelMap, connected
from packgen.pictures.tracing import Chain, drawn_line, traced

_WORTH = 0.15  # of the strongest three: what is fainter is texture
_LEAST = 18  # grey levels darker than around, of 255, to be an accent at all


def strokes(image: Image.Image, outlines: list[Chain], scale: float, blur: float, share: float, most: int) -> LabelMap:
    """At most `most` accents, areas with the value 1, in a picture (L); `share` is the part of it that may be inked.

    `outlines` are in pixels of a picture `scale` times smaller; `blur` is the strokes' width in px.
    """
    grey = stretched(image)
    smooth = median(grey).filter(ImageFilter.GaussianBlur(blur / 2))
    reach = round(blur * 2)
    closed = shrunk(grown(smooth, reach), reach)
    darker = ImageChops.subtract(closed, smooth)
    mask = darker.point([0] * (limit := _limit(darker, share)) + [255] * (256 - limit))
    mask = ImageChops.subtract(
        mask.filter(ImageFilter.MedianFilter(5)), zone(image.size, outlines, scale, max(3, round(blur * 4)))
    )
    areas = connected(mask)
    return _strongest(areas, darker, most, blur)


def _limit(darker: Image.Image, share: float) -> int:
    """The darkness above which at most that share of the picture lies."""
    left = share * darker.width * darker.height
    histogram = darker.histogram()
    for level in range(255, _LEAST, -1):
        left -= histogram[level]
        if left < 0:
            return level
    return _LEAST


def zone(size: tuple[int, int], outlines: list[Chain], scale: float, width: int) -> Image.Image:
    """White where an outline or the frame, drawn `width` px wide, makes a stroke needless."""
    near = Image.new("L", size, 0)
    pen = ImageDraw.Draw(near)
    for chain in outlines:
        line = [(x * scale, y * scale) for x, y in drawn_line(chain.steps, 4)]
        pen.line(line, fill=255, width=width, joint="curve")
    return near


def _strongest(areas: LabelMap, darker: Image.Image, most: int, blur: float) -> LabelMap:
    data, width = darker.tobytes(), areas.width
    weight, size = [0] * areas.count, areas.sizes()
    for y, row in enumerate(areas.rows):
        for start, end, area in row:
            if areas.value[area]:
                weight[area] += sum(data[y * width + start : y * width + end])
    ground = 6 * blur * blur
    good = sorted((i for i in range(areas.count) if size[i] >= ground and weight[i]), key=lambda i: (-weight[i], i))
    enough = _WORTH * sum(weight[i] for i in good[:3]) / 3
    kept = {i for i in good[:most] if weight[i] >= enough}
    return connected(areas.image([255 * (i in kept) for i in range(areas.count)]))


def stroke_outlines(areas: LabelMap) -> list[list[Chain]]:
    """The outlines of each stroke, holes included."""
    chains = traced(areas, 6, 0.3)
    inked = [i for i in range(areas.count) if areas.value[i]]
    return [[chain for chain in chains if area in chain.areas] for area in inked]
