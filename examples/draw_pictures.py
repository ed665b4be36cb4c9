"""Draws every picture of the example studies: `python examples/draw_pictures.py [NAME]...` (needs Pillow and shapely).

All of them are invented for these examples. The same command gives the same pictures: every brush stroke comes from a
seeded generator. Without names all are drawn, which takes some minutes.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

from painting import chart, flat, heron, hills, lane, portraits, quenby, rooms, sitters
from painting.outline import drawing
from PIL import Image

HERE = Path(__file__).resolve().parent
LONG_SIDE = 1900
QUALITY = 86

PAINTINGS: dict[str, Callable[[int], Image.Image]] = {
    "isaure-quenby/pictures/isaure-quenby.jpg": portraits.isaure_quenby,
    "isaure-quenby/pictures/harbour-at-dusk.jpg": quenby.harbour_at_dusk,
    "isaure-quenby/pictures/lamp-house-on-the-quay.jpg": quenby.the_lamp_house_on_the_quay,
    "isaure-quenby/pictures/tides-at-saltmere.jpg": chart.tides_at_saltmere,
    "isaure-quenby/pictures/self-portrait-with-a-lantern.jpg": portraits.self_portrait_with_a_lantern,
    "isaure-quenby/pictures/mother-reading-by-the-lamp.jpg": rooms.mother_reading_by_the_lamp,
    "tomasz-orrelin/pictures/tomasz-orrelin.jpg": sitters.tomasz_orrelin,
    "tomasz-orrelin/pictures/jug-and-lemons.jpg": rooms.jug_and_lemons,
    "tomasz-orrelin/pictures/the-bakers-daughter.jpg": sitters.the_bakers_daughter,
    "tomasz-orrelin/pictures/the-orchard-hills.jpg": hills.the_orchard_hills,
    "tomasz-orrelin/pictures/heron-at-the-weir.jpg": heron.heron_at_the_weir,
    "tomasz-orrelin/pictures/lamplighters-lane.jpg": lane.lamplighters_lane,
}
DRAWINGS: dict[str, Callable[[], str]] = {
    "isaure-quenby/pictures/lamp-house-door.svg": flat.lamp_house_door,
    "isaure-quenby/pictures/lamp-house-wall.svg": flat.lamp_house_wall,
    "isaure-quenby/pictures/lamp-house-window.svg": flat.lamp_house_window,
    "tomasz-orrelin/pictures/barn-gable.svg": flat.barn_gable,
    "tomasz-orrelin/pictures/kitchen-tiles.svg": flat.kitchen_tiles,
    "tomasz-orrelin/pictures/kitchen-tiles-lines.svg": flat.kitchen_tiles_lines,
}


# The paintings that are works, each with a line drawing of it for the sheets that are coloured or carried on.
DRAWN = {name: name.replace(".jpg", "-lines.svg") for name in PAINTINGS
         if not name.endswith(("isaure-quenby.jpg", "tomasz-orrelin.jpg", "tides-at-saltmere.jpg"))}  # fmt: skip


def main(wanted: list[str]) -> None:
    """Draw the pictures whose path contains one of the wanted words, or all."""
    for name in (*PAINTINGS, *DRAWINGS, *DRAWN.values()):
        if wanted and not any(word in name for word in wanted):
            continue
        path = HERE / name
        path.parent.mkdir(parents=True, exist_ok=True)
        if name in DRAWINGS:
            path.write_text(DRAWINGS[name](), encoding="utf-8")
        elif name.endswith(".svg"):
            path.write_text(drawing(PAINTINGS[name.replace("-lines.svg", ".jpg")]), encoding="utf-8")
        else:
            PAINTINGS[name](LONG_SIDE).save(path, quality=QUALITY, subsampling=2, optimize=True, progressive=False)


if __name__ == "__main__":
    main(sys.argv[1:])
