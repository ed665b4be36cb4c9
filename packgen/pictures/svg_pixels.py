"""A vector picture drawn as pixels, for what needs pixels: small copies, palettes, line art from a drawing."""

from __future__ import annotations

from PIL import Image, ImageChops, ImageDraw

from packgen.pictures.shapes import Ink, Point, Shape, VectorPicture, flattened, moved

_FINER = 3  # drawn so many times larger, then brought down, for smooth edges
_MOST_PX = 6000
_PIECES = 16


def drawn(picture: VectorPicture, width_px: int, height_px: int) -> Image.Image:
    """The picture on white as RGB, exactly that size."""
    finer = max(1, min(_FINER, _MOST_PX // max(width_px, height_px, 1)))
    sheet = Image.new("RGB", (width_px * finer, height_px * finer), (255, 255, 255))
    across, up = sheet.width / picture.width, sheet.height / picture.height
    for shape in picture.shapes:
        steps = moved(shape.steps, (across, 0, 0, -up, 0, sheet.height))
        _draw(sheet, shape, flattened(steps, _PIECES), shape.stroke_width * (across * up) ** 0.5)
    return sheet.resize((width_px, height_px), Image.Resampling.BOX) if finer > 1 else sheet


def _draw(sheet: Image.Image, shape: Shape, lines: list[list[Point]], stroke: float) -> None:
    if shape.fill is not None:
        if len(lines) == 1:
            ImageDraw.Draw(sheet).polygon(lines[0], fill=_bytes(shape.fill))
        elif lines:
            _fill_even_odd(sheet, lines, _bytes(shape.fill))
    if shape.stroke is not None:
        pen = ImageDraw.Draw(sheet)
        for line in lines:
            joined = [*line, line[1]] if line[0] == line[-1] else line
            pen.line(joined, fill=_bytes(shape.stroke), width=max(1, round(stroke)), joint="curve")


def _fill_even_odd(sheet: Image.Image, lines: list[list[Point]], ink: tuple[int, int, int]) -> None:
    """Fill what lies within an odd number of the lines, working only on the part of the sheet they reach."""
    xs, ys = [x for line in lines for x, _ in line], [y for line in lines for _, y in line]
    left, top = max(0, int(min(xs))), max(0, int(min(ys)))
    right, low = min(sheet.width, int(max(xs)) + 2), min(sheet.height, int(max(ys)) + 2)
    if right <= left or low <= top:
        return
    whole = Image.new("1", (right - left, low - top), 0)
    for line in lines:
        one = Image.new("1", whole.size, 0)
        ImageDraw.Draw(one).polygon([(x - left, y - top) for x, y in line], fill=1)
        whole = ImageChops.logical_xor(whole, one)
    sheet.paste(ink, (left, top, right, low), whole.convert("L"))


def _bytes(ink: Ink) -> tuple[int, int, int]:
    red, green, blue = (ink, ink, ink) if isinstance(ink, float | int) else ink
    return round(red * 255), round(green * 255), round(blue * 255)
