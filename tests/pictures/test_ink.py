from PIL import Image, ImageDraw

from packgen.pictures.ink import stroke_outlines, strokes, zone
from packgen.pictures.label_map import connected
from packgen.pictures.tracing import traced


def face() -> Image.Image:
    image = Image.new("L", (300, 300), 200)
    pen = ImageDraw.Draw(image)
    pen.rectangle((0, 0, 150, 300), fill=90)  # a shadow: an edge, but no stroke
    for x in (190, 250):
        pen.ellipse((x, 100, x + 14, 110), fill=20)
    pen.line((190, 200, 262, 206), fill=30, width=6)
    return image


def test_dark_marks_are_strokes_and_the_edge_of_a_shadow_is_none() -> None:
    found = strokes(face(), [], 1.0, 2.4, 0.05, 10)
    inked = [i for i in range(found.count) if found.value[i]]
    assert len(inked) == 3
    picture = found.image([255 * bool(v) for v in found.value])
    assert picture.getpixel((197, 105)) and picture.getpixel((225, 203))
    assert not any(picture.getpixel((x, 50)) for x in range(130, 170))


def test_only_the_strongest_few_stay() -> None:
    found = strokes(face(), [], 1.0, 2.4, 0.05, 1)
    assert sum(bool(v) for v in found.value) == 1


def test_a_mark_along_an_outline_is_left_out() -> None:
    areas = connected(face().point(lambda v: 1 if v < 60 else 2))
    outlines = traced(areas, 4, 0.4)
    assert not any(strokes(face(), outlines, 1.0, 2.4, 0.05, 10).value)
    near = zone((300, 300), outlines, 1.0, 8)
    assert near.getpixel((190, 105)) and not near.getpixel((220, 60))


def test_stroke_outlines_close() -> None:
    found = strokes(face(), [], 1.0, 2.4, 0.05, 10)
    outlines = stroke_outlines(found)
    assert len(outlines) == 3
    assert all(chain.closed for chains in outlines for chain in chains)
