"""What stands on the faces of a net: drawings and ruled textures from the study, clear of the folds, and face names."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from math import dist
from pathlib import Path

from packgen.faults import nearest
from packgen.nets.errors import NetError
from packgen.nets.layout import NetSheet
from packgen.nets.net import Art, FlatFace
from packgen.nets.plane import shrunk
from packgen.nets.solid import Disc, Solid
from packgen.page.desk import Desk
from packgen.page.look import SOFT
from packgen.page.marks import Mark, Point
from packgen.page.net_labels import Spot, circles
from packgen.page.net_lines import patch, turned
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.solid_view import Painter
from packgen.page.textures import TEXTURES, draw_texture, texture_named
from packgen.pictures.load import aspect
from packgen.reading.models import FaceArt

CLEAR = 1.4
"""A drawing keeps so far (mm) from the folds and cuts round its face, so that no line runs through it."""
CROPPED = 0.2
"""A drawing that would lose more than this part of itself to fill its face is shown whole instead."""
_SIZES = (2.7, 2.3, 1.9)
_SPACE = 0.6


def art_of(arts: Mapping[str, FaceArt], face: str) -> FaceArt | None:
    """The drawing on a face; all sectors of a curved face share that of the whole."""
    return arts.get(face) or arts.get(face.rstrip(" 0123456789"))


def art_marks(desk: Desk, box: Art, wanted: FaceArt) -> tuple[tuple[Mark, ...], tuple[Point, ...]]:
    """The marks of a drawing or texture in the upright box of a face, and the outline they are to be shown inside."""
    outline = shrunk(box.outline, CLEAR)
    pen = desk.kit.pen()
    if not outline:
        return (), ()
    if wanted.image:
        x, y, wide, high = placed(wanted.image, box)
        place_picture(desk, pen, wanted.image, x, y, wide, high, about=wanted.image_said, framed=False)
    elif wanted.texture:
        inner = desk.kit.pen()  # whole rows between the folds: none is cut through at the eaves
        draw_texture(inner, str(wanted.texture), box.width - 2 * CLEAR, box.height - 2 * CLEAR)
        pen.group(inner.marks, (1.0, 0.0, 0.0, 1.0, CLEAR, CLEAR))
    return tuple(pen.marks), outline


def arts_of(solid: Solid, art: Sequence[FaceArt]) -> dict[str, FaceArt]:
    """The drawings by the solid's own names of their faces, without those for a face there is not."""
    found: dict[str, FaceArt] = {}
    for one in art:
        with suppress(NetError):
            found.setdefault(solid.named(str(one.face)), one)
    return found


def painter_of(desk: Desk, arts: Mapping[str, FaceArt]) -> Painter | None:
    """What draws the drawings on a view of the solid, if it has any."""

    def paint(name: str, box: Art) -> tuple[tuple[Mark, ...], tuple[Point, ...]]:
        wanted = art_of(arts, name)
        return art_marks(desk, box, wanted) if wanted else ((), ())

    return paint if arts else None


def placed(image: Path, box: Art) -> tuple[float, float, float, float]:
    """Where a picture lies in a face's box: it fills the face if little of it is lost, else it is shown whole.

    A picture much higher than its face is wide stands in the middle across, one much wider in the middle upwards.
    """
    shape = aspect(image)
    width, height = box.width - 2 * CLEAR, box.height - 2 * CLEAR
    fill = max(width, height * shape)
    lost = 1 - (width * height) / (fill * fill / shape)
    wide = fill if lost <= CROPPED else min(width, height * shape)
    high = wide / shape
    return (box.width - wide) / 2, (box.height - high) / 2, wide, high


def misfit(image: Path, box: Art) -> bool:
    """True if a picture's shape is so far from its face's that it does not fill it."""
    _, _, wide, high = placed(image, box)
    return wide < box.width - 2 * CLEAR - 0.01 or high < box.height - 2 * CLEAR - 0.01


def draw_arts(desk: Desk, pen: Pen, sheet: NetSheet, arts: Mapping[str, FaceArt]) -> None:
    """Draw the drawings on all faces of a sheet."""
    for face in sheet.faces:
        wanted = art_of(arts, face.name)
        if wanted:
            marks, outline = art_marks(desk, face.art, wanted)
            pen.group(marks, face.art.matrix, outline)


@dataclass(frozen=True, slots=True)
class Name:
    """A face's name with its em in mm and its place, `patched` where bend lines lie under it."""

    text: str
    size: float
    spot: Spot
    patched: bool


@dataclass(frozen=True, slots=True)
class Names:
    """Whose names are to stand on a sheet: the faces of a solid that a step names, and unless `few` the rest.

    A model with drawings is to look like its real thing: none but the faces of its steps are named on it.
    """

    solid: Solid
    told: frozenset[str]
    few: bool = False

    def told_on(self, desk: Desk, sheet: NetSheet) -> list[Name]:
        """The names of the faces that a step names, placed before anything else; on a small face only its number."""
        names = (self._name(desk, sheet, face, ()) for face in sheet.faces if face.name in self.told)
        return [name for name in names if name]

    def others_on(self, desk: Desk, sheet: NetSheet, taken: Sequence[Spot]) -> list[Name]:
        """The names of all other faces, where there is room beside what is placed already."""
        faces = () if self.few else (f for f in sheet.faces if f.name not in self.told)
        names = (self._name(desk, sheet, face, taken) for face in faces)
        return [name for name in names if name]

    def _name(self, desk: Desk, sheet: NetSheet, face: FlatFace, taken: Sequence[Spot]) -> Name | None:
        short = re.search(r"\d+$", face.name)
        for text in (self.solid.shown(face.name), *((short[0],) if short and face.name in self.told else ())):
            for size in _SIZES:
                style = desk.look.small.at(size)
                wide = desk.faces.width(text, style.face, size) / 2
                for at in _places(face):
                    spot = Spot(at, wide, size * 0.45, _turn(face, self.solid))
                    if _free(spot, face, taken, sheet):
                        return Name(text, size, spot, bool(sheet.scores))
        return None


def draw_name(desk: Desk, pen: Pen, name: Name) -> None:
    """A face's name in small grey letters."""
    style = desk.look.small.at(name.size).grey(SOFT)
    inner = desk.kit.pen()
    if name.patched:
        patch(inner, name.spot)
    inner.text(0.0, -style.size * 0.33, name.text, style, align="centre", role="face-name")
    turned(pen, inner.marks, name.spot.at, name.spot.turn_deg)


def _turn(face: FlatFace, solid: Solid) -> float:
    """The slant of a name: upright on the built model, but for level faces, which have no up: readable on the sheet."""
    turn = (face.up_deg - 90.0 + 180.0) % 360.0 - 180.0
    if not _level(face, solid) or -90 < turn <= 90:
        return turn
    return turn - 180.0 if turn > 0 else turn + 180.0


def _level(face: FlatFace, solid: Solid) -> bool:
    if solid.curved:
        return isinstance(solid.curved[face.source], Disc)
    return abs(solid.normal(face.source)[2]) > 0.99


def _places(face: FlatFace) -> Iterator[Point]:
    """Where a face's name may stand: in the middle, then towards its foot and head."""
    x, y = face.label
    ux, uy = face.up
    reach = max(dist(p, q) for p in face.points for q in face.points)
    for k in (0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5):
        yield x + ux * k * reach / 12, y + uy * k * reach / 12


def _free(spot: Spot, face: FlatFace, taken: Sequence[Spot], sheet: NetSheet) -> bool:
    """True if letters at a spot lie inside their face and keep clear of glue letters, holes and crosses."""
    return (
        spot.within(face.points, _SPACE)
        and all(spot.apart(other, _SPACE) for other in taken)
        and all(spot.off(*mark) for mark in circles(sheet))
    )


def check_faces(desk: Desk, solid: Solid, art: Sequence[FaceArt], sheets: Sequence[NetSheet]) -> dict[str, FaceArt]:
    """The drawings by face; a face that is not, or drawn on twice, is a fault at its place, a misfit a warning."""
    found: dict[str, FaceArt] = {}
    check_textures(desk, art)
    for one in art:
        try:
            name = solid.named(str(one.face))
        except NetError as error:
            desk.fault(one.face, error.message, error.instead)
            continue
        if name in found:
            desk.fault(one.face, f"The face '{name}' has two drawings.", "Keep one of them.")
            continue
        found[name] = one
        box = next((f.art for s in sheets for f in s.faces if f.name == name and not f.whole), None)
        if one.image and box and misfit(one.image, box):
            desk.warn(
                one.image_said or one.at,
                f"The picture for '{name}' has another shape than the face and does not fill it.",
                f"The face is {box.width:.0f} mm wide and {box.height:.0f} mm high: make the picture of that shape.",
            )
    return found


def check_textures(desk: Desk, art: Sequence[FaceArt]) -> None:
    """Note a fault for each texture there is not."""
    for one in art:
        if one.texture and not texture_named(str(one.texture)):
            near = nearest(str(one.texture), TEXTURES)
            hint = f"Did you mean '{near}'? " if near else ""
            desk.fault(one.texture, f"There is no texture '{one.texture}'.", f"{hint}Choose {', '.join(TEXTURES)}.")
