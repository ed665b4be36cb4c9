"""Solids: named faces in space, the edges between them, their angles. Lengths in mm, z upwards, angles in radians."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from packgen.faults import nearest
from packgen.nets.errors import NetError
from packgen.nets.vectors import Point, Vector, cross, dot, length, mean, minus, newell, times, unit

FLAT = math.radians(0.01)
"""Faces that meet at less than this from straight are one flat surface: no fold is drawn there."""


@dataclass(frozen=True, slots=True)
class Face:
    """A plane face: its name, its corners as indices into the vertices, anticlockwise seen from outside.

    `up` is the direction in space that a drawing on the face points with its top. `also` are other names for it;
    `label` is what stands on the card, if that is another.
    """

    name: str
    loop: tuple[int, ...]
    up: Vector = (0.0, 0.0, 1.0)
    also: tuple[str, ...] = ()
    label: str = ""


@dataclass(frozen=True, slots=True)
class Disc:
    """A round plane face lying level at height `z`, seen from above if `upward`."""

    name: str
    radius: float
    z: float
    upward: bool = False


@dataclass(frozen=True, slots=True)
class Mantle:
    """The curved side of an upright cone, cut-off cone or cylinder: radii at its foot and its top (0 at a point).

    `label` is what stands on the card, if that is not its name.
    """

    name: str
    foot: float
    top: float
    height: float
    z: float = 0.0
    label: str = ""

    @property
    def slant(self) -> float:
        """The distance from foot to top along the surface."""
        return math.hypot(self.height, self.foot - self.top)


@dataclass(frozen=True, slots=True)
class Strip:
    """A band of card wound on a round former `turns` times; its length follows from the card's thickness."""

    name: str
    former: float
    width: float
    turns: float


Curved = Disc | Mantle | Strip


@dataclass(frozen=True, slots=True)
class Drill:
    """A hole the solid itself asks for: on the named face, at a point in space, `across` wide in real mm."""

    face: str
    at: Vector
    across: float


@dataclass(frozen=True, slots=True)
class Edge:
    """Where two faces meet: from corner `a` to corner `b` as `left` runs round. `right` is -1 at an open rim.

    `fold` is how far the surface turns there: 0 flat, positive where the solid is convex. The dihedral angle inside the
    solid is pi - fold. `left_at` and `right_at` are the places of the edge in the two loops.
    """

    a: int
    b: int
    left: int
    left_at: int
    right: int
    right_at: int
    length: float
    fold: float

    @property
    def dihedral(self) -> float:
        """The angle between the two faces, measured inside the solid."""
        return math.pi - self.fold

    @property
    def flat(self) -> bool:
        """True if the two faces lie in one plane."""
        return abs(self.fold) < FLAT


@dataclass(frozen=True, slots=True)
class Solid:
    """A thing to build of card. `sizes` are (name, real mm or count) pairs for the caption.

    `swell` moves each vertex by that much for every mm of the fitting allowance (a lid must go over its box at any
    scale). `rim_strings` is how many holes a round open rim gets. What is `made_to_size` is not scaled by `auto`.
    """

    name: str
    title: str
    vertices: tuple[Vector, ...] = ()
    faces: tuple[Face, ...] = ()
    curved: tuple[Curved, ...] = ()
    closed: bool = True
    sizes: tuple[tuple[str, float, str], ...] = ()
    swell: tuple[Vector, ...] = ()
    drills: tuple[Drill, ...] = ()
    rim_strings: int = 4
    made_to_size: bool = False

    def corners(self, face: int) -> tuple[Vector, ...]:
        """The corners of a face in space."""
        return tuple(self.vertices[v] for v in self.faces[face].loop)

    def normal(self, face: int) -> Vector:
        """The unit vector that points out of the solid on that face."""
        return unit(newell(self.corners(face)))

    def scaled(self, ratio: float, allowance: float = 0.0) -> Solid:
        """The solid `ratio` times as large, with the parts that fit over others swollen by `allowance` mm a side."""
        swell = self.swell or ((0.0, 0.0, 0.0),) * len(self.vertices)
        vertices = tuple(
            (v[0] * ratio + s[0] * allowance, v[1] * ratio + s[1] * allowance, v[2] * ratio + s[2] * allowance)
            for v, s in zip(self.vertices, swell, strict=True)
        )
        drills = tuple(Drill(d.face, times(d.at, ratio), d.across * ratio) for d in self.drills)
        curved = tuple(_scaled(part, ratio) for part in self.curved)
        return replace(self, vertices=vertices, drills=drills, curved=curved, swell=())

    @property
    def names(self) -> tuple[str, ...]:
        """The names of all faces, plane ones first."""
        return tuple(f.name for f in self.faces) + tuple(c.name for c in self.curved)

    @property
    def labels(self) -> dict[str, str]:
        """What stands on the card for the faces that have a label."""
        mantles = {part.name: part.label for part in self.curved if isinstance(part, Mantle)}
        return {name: label for name, label in ({f.name: f.label for f in self.faces} | mantles).items() if label}

    def shown(self, name: str) -> str:
        """What stands on the card for a face, or for a sector of one ('mantle 2')."""
        labels = self.labels
        whole = name.rstrip(" 0123456789")
        return labels.get(name) or (f"{labels[whole]}{name[len(whole) :]}" if whole in labels else name)

    def named(self, name: str) -> str:
        """The face's own name for a name as a parent writes it. Raises NetError if there is no such face."""
        wanted = " ".join(name.lower().replace("-", " ").replace("_", " ").split())
        known = {n: n for n in self.names} | {other: f.name for f in self.faces for other in f.also}
        known = {label: own for own, label in self.labels.items()} | known
        if wanted in known:
            return known[wanted]
        near = nearest(wanted, known)
        listed = ", ".join(self.shown(own) for own in self.names[:12]) + (" ..." if len(self.names) > 12 else "")
        hint = f"Did you mean '{near}'? " if near else ""
        raise NetError(f"The {self.title} has no face called '{name}'.", f"{hint}Its faces are: {listed}.")


def _scaled(part: Curved, ratio: float) -> Curved:
    if isinstance(part, Disc):
        return replace(part, radius=part.radius * ratio, z=part.z * ratio)
    if isinstance(part, Strip):
        return replace(part, former=part.former * ratio, width=part.width * ratio)
    return replace(part, foot=part.foot * ratio, top=part.top * ratio, height=part.height * ratio, z=part.z * ratio)


def edges_of(solid: Solid) -> tuple[Edge, ...]:
    """Every edge of the plane faces, open rims last.

    Raises NetError, naming the ends, if an edge belongs to three faces or two faces run round it the same way.
    """
    halves: dict[tuple[int, int], tuple[int, int]] = {}
    for f, face in enumerate(solid.faces):
        loop = face.loop
        for i, a in enumerate(loop):
            b = loop[(i + 1) % len(loop)]
            if (a, b) in halves:
                raise NetError(
                    f"The edge {between(solid, a, b)} belongs to more than two faces, or two faces run round it the "
                    "same way.",
                    "Mend the solid so that every edge joins two faces, each listed anticlockwise from outside.",
                )
            halves[(a, b)] = (f, i)
    normals = [solid.normal(f) for f in range(len(solid.faces))]
    inner: list[Edge] = []
    rim: list[Edge] = []
    for (a, b), (f, i) in halves.items():
        along = minus(solid.vertices[b], solid.vertices[a])
        if (b, a) in halves:
            if a < b:
                g, j = halves[(b, a)]
                turn = math.atan2(dot(cross(normals[f], normals[g]), unit(along)), dot(normals[f], normals[g]))
                inner.append(Edge(a, b, f, i, g, j, length(along), turn))
        else:
            rim.append(Edge(a, b, f, i, -1, -1, length(along), 0.0))
    if solid.closed and rim:
        raise NetError(
            f"The solid is not closed: the edge {between(solid, rim[0].a, rim[0].b)} has a face on one side only.",
            "Add the missing face, or check that touching corners have exactly the same coordinates.",
        )
    return (*inner, *rim)


def between(solid: Solid, a: int, b: int) -> str:
    """An edge in words: the numbers of its ends, counted from 1, and where they lie."""
    ends = [f"{v + 1} ({', '.join(f'{c:g}' for c in solid.vertices[v])})" for v in (a, b)]
    return f"from corner {ends[0]} to corner {ends[1]}"


def flat_loop(solid: Solid, face: int) -> tuple[Point, ...]:
    """The corners of a face in a plane of its own, anticlockwise seen from outside, the first edge along x."""
    corners = solid.corners(face)
    normal = solid.normal(face)
    u = unit(minus(corners[1], corners[0]))
    u = unit(minus(u, times(normal, dot(u, normal))))
    v = cross(normal, u)
    return tuple((dot(minus(p, corners[0]), u), dot(minus(p, corners[0]), v)) for p in corners)


def flat_up(solid: Solid, face: int) -> Point:
    """The unit direction, in the plane of `flat_loop`, in which `up` points; level faces fall back to y, then z."""
    corners = solid.corners(face)
    u = unit(minus(corners[1], corners[0]))
    v = cross(solid.normal(face), u)
    for up in (solid.faces[face].up, (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)):
        x, y = dot(up, u), dot(up, v)
        size = math.hypot(x, y)
        if size > 1e-6:
            return (x / size, y / size)
    return (0.0, 1.0)


def middle(solid: Solid) -> Vector:
    """The middle of all corners."""
    return mean(solid.vertices)
