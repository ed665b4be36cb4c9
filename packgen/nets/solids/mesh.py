"""Any closed solid with flat faces, from an OBJ or OFF file."""

from __future__ import annotations

from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, Read, read
from packgen.nets.mesh_text import MOST_FACES, read_mesh
from packgen.nets.solid import Face, Solid
from packgen.nets.surface import Named, clean_surface, scaled_to
from packgen.nets.vectors import Vector

TITLE = "mesh"
ABOUT = "Any closed solid with flat faces, convex or not, from an OBJ or OFF file in the study's folder."
PARAMETERS = (
    Parameter("text", "word", "what stands in the OBJ or OFF file"),
    Parameter("format", "word", "obj or off (found out from the file if left out)", required=False,
              words=("obj", "off")),
    Parameter("height", "length", "how tall the real thing is", group="mesh size", required=False),
    Parameter("longest", "length", "the real thing's longest measure along x, y or z (file numbers are mm if neither)",
              group="mesh size", required=False),
    Parameter("up", "word", "which way is up in the file: z or y", required=False, default="z", words=("z", "y")),
)  # fmt: skip


def build(given: Given) -> Solid:
    """The closed solid of the file, standing on the ground.

    Faces are 'face 1', 'face 2' ..., or named by their OBJ group. Faces that are not flat are cut into triangles, and
    neighbours in one plane are joined.
    """
    got = read(TITLE, PARAMETERS, given)
    try:
        vertices, faces = _surface(got)
    except NetError as fault:
        raise NetError(fault.message, fault.instead, "mesh") from None
    extent = [max(v[k] for v in vertices) - min(v[k] for v in vertices) for k in range(3)]
    factor = 1.0
    if got.has("height"):
        factor = got.number("height") / extent[2]
    elif got.has("longest"):
        factor = got.number("longest") / max(extent)
    placed = scaled_to(vertices, factor)
    sizes = [("height", extent[2] * factor, "length"), ("length", extent[0] * factor, "length"),
             ("width", extent[1] * factor, "length")]  # fmt: skip
    return Solid("mesh", TITLE, placed, tuple(Face(name, loop) for name, loop in faces), sizes=tuple(sizes))


def _surface(got: Read) -> tuple[tuple[Vector, ...], tuple[Named, ...]]:
    """The corners, z upwards, and the named faces of the file. Raises NetError for what is wrong with it."""
    raw = read_mesh(got.word("text"), got.word("format") if got.has("format") else "")
    vertices, faces = clean_surface(raw)
    if got.word("up") == "y":
        vertices = tuple((x, -z, y) for x, y, z in vertices)
    if len(faces) > MOST_FACES:
        raise NetError(f"The mesh has {len(faces)} flat faces, too many to cut out.",
                       f"Simplify it to {MOST_FACES} faces or fewer.")  # fmt: skip
    return vertices, faces
