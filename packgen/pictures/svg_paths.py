"""Path data and transforms of SVG as steps. Source: W3C, SVG 1.1 (second edition), chapters 7-9."""

from __future__ import annotations

import math
import re

from packgen.pictures.shapes import Point, Step, Steps, flattened, signed_area, winding

Matrix = tuple[float, float, float, float, float, float]
IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
MAX_STEPS = 400_000
_KAPPA = 4 / 3 * (math.sqrt(2) - 1)
_NUMBER = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_TOKEN = re.compile(rf"([MmLlHhVvCcSsQqTtAaZz])|({_NUMBER})")
_ARC_FLAGS = re.compile(r"[\s,]*([01])")
_NUMBER_AT = re.compile(rf"[\s,]*({_NUMBER})")
_TRANSFORM = re.compile(r"(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^)]*)\)")
_COUNTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
_MANY_RINGS = 300


def numbers(text: str) -> list[float]:
    """Every number in a text, finite ones only."""
    return [v for v in (float(found) for found in re.findall(_NUMBER, text)) if math.isfinite(v)]


def times(first: Matrix, second: Matrix) -> Matrix:
    """The matrix that does `second`, then `first`."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = second
    return (a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * m + e, b * k + d * m + f)


def transform(text: str) -> Matrix:
    """The matrix of a `transform` attribute; what makes no sense is left out."""
    whole = IDENTITY
    for name, inside in _TRANSFORM.findall(text):
        one = _one_transform(name, numbers(inside))
        if one is not None:
            whole = times(whole, one)
    return whole


def _one_transform(name: str, v: list[float]) -> Matrix | None:
    if name == "matrix" and len(v) == 6:
        return (v[0], v[1], v[2], v[3], v[4], v[5])
    if name == "translate" and v:
        return (1, 0, 0, 1, v[0], v[1] if len(v) > 1 else 0)
    if name == "scale" and v:
        return (v[0], 0, 0, v[1] if len(v) > 1 else v[0], 0, 0)
    if name == "rotate" and v:
        cos, sin = math.cos(math.radians(v[0])), math.sin(math.radians(v[0]))
        x, y = (v[1], v[2]) if len(v) > 2 else (0.0, 0.0)
        return (cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y)
    if name.startswith("skew") and v:
        tan = math.tan(math.radians(v[0]))
        return (1, 0, tan, 1, 0, 0) if name == "skewX" else (1, tan, 0, 1, 0, 0)
    return None


def path_steps(data: str) -> Steps:
    """The steps of a `d` attribute; like every reader it draws up to the first mistake and leaves out the rest."""
    return _Reader().read(data)


class _Reader:
    """Follows path data with the pen's place, the subpath's start and the last control point."""

    def __init__(self) -> None:
        self.steps: list[Step] = []
        self.x = self.y = self.start_x = self.start_y = 0.0
        self.control: tuple[str, float, float] = ("", 0.0, 0.0)

    def read(self, data: str) -> Steps:
        at, command = 0, ""
        while len(self.steps) < MAX_STEPS:
            token = _TOKEN.search(data, at)
            if not token or data[at : token.start()].strip(" ,\t\r\n\f"):
                break
            if token[1]:
                command, at = token[1], token.end()
            elif not command or command in "Zz":
                break
            if not self.steps and command not in "Mm":
                break
            values, at = _arguments(data, at, command.upper())
            if values is None:
                break
            self._do(command, values)
            command = {"M": "L", "m": "l"}.get(command, command)
        return tuple(self.steps)

    def _do(self, command: str, v: list[float]) -> None:
        kind, last = command.upper(), self.control
        if command.islower() and kind != "Z":
            v = _absolute(kind, v, self.x, self.y)
        x0, y0 = self.x, self.y
        if kind == "Z":
            self.steps.append(("z",))
            self.x, self.y = self.start_x, self.start_y
            self.control = ("", 0, 0)
            return
        if self.steps and self.steps[-1] == ("z",) and kind != "M":
            self.steps.append(("m", x0, y0))
        self.x, self.y = _end(kind, v, x0, y0)
        mirrored = (2 * x0 - last[1], 2 * y0 - last[2])
        self.control = ("", 0, 0)
        if kind == "M":
            self.start_x, self.start_y = self.x, self.y
            self.steps.append(("m", self.x, self.y))
        elif kind in "CS":
            x1, y1 = (v[0], v[1]) if kind == "C" else mirrored if last[0] == "C" else (x0, y0)
            self.control = ("C", v[-4], v[-3])
            self.steps.append(("c", x1, y1, v[-4], v[-3], self.x, self.y))
        elif kind in "QT":
            qx, qy = (v[0], v[1]) if kind == "Q" else mirrored if last[0] == "Q" else (x0, y0)
            self.control = ("Q", qx, qy)
            self.steps.append(_quadratic((x0, y0), (qx, qy), (self.x, self.y)))
        elif kind == "A":
            self.steps.extend(_arc((x0, y0), v))
        else:
            self.steps.append(("l", self.x, self.y))


def _arguments(data: str, at: int, kind: str) -> tuple[list[float] | None, int]:
    values: list[float] = []
    for index in range(_COUNTS[kind]):
        # The two flags of an arc are single digits that may be written without anything between.
        pattern = _ARC_FLAGS if kind == "A" and index in (3, 4) else _NUMBER_AT
        found = pattern.match(data, at)
        if not found or not math.isfinite(float(found[1])):
            return None, at
        values.append(float(found[1]))
        at = found.end()
    return values, at


def _absolute(kind: str, v: list[float], x: float, y: float) -> list[float]:
    if kind == "H":
        return [v[0] + x]
    if kind == "V":
        return [v[0] + y]
    if kind == "A":
        return [*v[:5], v[5] + x, v[6] + y]
    return [value + (y if index % 2 else x) for index, value in enumerate(v)]


def _end(kind: str, v: list[float], x: float, y: float) -> Point:
    if kind == "H":
        return v[0], y
    if kind == "V":
        return x, v[0]
    return v[-2], v[-1]


def _quadratic(start: Point, control: Point, end: Point) -> Step:
    (x0, y0), (x1, y1), (x2, y2) = start, control, end
    return ("c", x0 + 2 / 3 * (x1 - x0), y0 + 2 / 3 * (y1 - y0), x2 + 2 / 3 * (x1 - x2), y2 + 2 / 3 * (y1 - y2), x2, y2)


def _arc(start: Point, v: list[float]) -> list[Step]:
    """An elliptical arc as cubic curves of at most a quarter turn (SVG 1.1, appendix F.6)."""
    (x0, y0), (rx, ry, tilt, large, sweep, x1, y1) = start, v
    rx, ry = abs(rx), abs(ry)
    if not rx or not ry or (x0, y0) == (x1, y1):
        return [("l", x1, y1)]
    cos, sin = math.cos(math.radians(tilt)), math.sin(math.radians(tilt))
    px = (cos * (x0 - x1) + sin * (y0 - y1)) / 2
    py = (-sin * (x0 - x1) + cos * (y0 - y1)) / 2
    grow = math.sqrt(max(1.0, (px / rx) ** 2 + (py / ry) ** 2))
    rx, ry = rx * grow, ry * grow
    under = (px / rx) ** 2 + (py / ry) ** 2
    factor = math.sqrt(max(0.0, 1 / under - 1)) * (1 if large != sweep else -1)
    cx, cy = factor * rx * py / ry, -factor * ry * px / rx
    first = math.atan2((py - cy) / ry, (px - cx) / rx)
    turn = math.atan2((-py - cy) / ry, (-px - cx) / rx) - first
    if sweep and turn < 0:
        turn += 2 * math.pi
    elif not sweep and turn > 0:
        turn -= 2 * math.pi
    middle = (cos * cx - sin * cy + (x0 + x1) / 2, sin * cx + cos * cy + (y0 + y1) / 2)
    steps = _turned((rx * cos, rx * sin, -ry * sin, ry * cos, *middle), first, turn)
    return [*steps[:-1], (*steps[-1][:5], x1, y1)]


def _turned(matrix: Matrix, first: float, turn: float) -> list[Step]:
    """An arc of the unit circle from an angle over an angle (rad), under a matrix, as cubic curves."""
    a, b, c, d, e, f = matrix
    count = max(1, math.ceil(abs(turn) / (math.pi / 2) - 1e-9))
    piece = turn / count
    pull = 4 / 3 * math.tan(piece / 4)
    steps: list[Step] = []
    for index in range(count):
        t0, t1 = first + index * piece, first + (index + 1) * piece
        flat = (
            (math.cos(t0) - pull * math.sin(t0), math.sin(t0) + pull * math.cos(t0)),
            (math.cos(t1) + pull * math.sin(t1), math.sin(t1) - pull * math.cos(t1)),
            (math.cos(t1), math.sin(t1)),
        )
        steps.append(("c", *(v for x, y in flat for v in (a * x + c * y + e, b * x + d * y + f))))
    return steps


def ellipse_steps(cx: float, cy: float, rx: float, ry: float) -> Steps:
    """An ellipse as four curves."""
    return (("m", cx + rx, cy), *_turned((rx, 0, 0, ry, cx, cy), 0, 2 * math.pi), ("z",))


def rectangle_steps(x: float, y: float, width: float, height: float, rx: float, ry: float) -> Steps:
    """A rectangle, its corners rounded by rx and ry."""
    rx, ry = min(rx, width / 2), min(ry, height / 2)
    if not rx or not ry:
        return (("m", x, y), ("l", x + width, y), ("l", x + width, y + height), ("l", x, y + height), ("z",))
    kx, ky, right, top = rx * (1 - _KAPPA), ry * (1 - _KAPPA), x + width, y + height
    return (
        ("m", x + rx, y), ("l", right - rx, y), ("c", right - kx, y, right, y + ky, right, y + ry),
        ("l", right, top - ry), ("c", right, top - ky, right - kx, top, right - rx, top),
        ("l", x + rx, top), ("c", x + kx, top, x, top - ky, x, top - ry),
        ("l", x, y + ry), ("c", x, y + ky, x + kx, y, x + rx, y), ("z",),
    )  # fmt: skip


def for_even_odd(steps: Steps) -> list[Steps]:
    """Shapes that, filled even-odd one over the other, look as the one shape filled by the non-zero rule.

    Rings that are holes stay with the ring round them; rings within filled ground become shapes of their own. A ring
    that crosses itself stays as it is.
    """
    rings = _subpaths(steps)
    if len(rings) < 2 or len(rings) > _MANY_RINGS:
        return [steps]
    lines = [(flattened(ring, 4) or [[(0.0, 0.0)]])[0] for ring in rings]
    areas = [signed_area(line) for line in lines]
    holes: dict[int, int] = {}
    for index, line in enumerate(lines):
        inside = _just_inside(line, areas[index])
        around = [i for i, other in enumerate(lines) if winding(other, inside)] if inside else []
        if inside and sum(winding(lines[i], inside) for i in around) == 0 and len(around) > 1:
            holes[index] = min((i for i in around if i != index), key=lambda i: abs(areas[i]))
    out = []
    for index in range(len(rings)):
        if index not in holes:
            group = [index, *(hole for hole, owner in holes.items() if owner == index)]
            out.append(tuple(step for i in group for step in rings[i]))
    return out if sum(len(one) for one in out) == len(steps) else [steps]


def _subpaths(steps: Steps) -> list[Steps]:
    out: list[list[Step]] = []
    for step in steps:
        if step[0] == "m" or not out:
            out.append([])
        out[-1].append(step)
    return [tuple(ring) for ring in out]


def _just_inside(line: list[Point], area: float) -> Point | None:
    """A point a hair within a ring, beside the middle of its longest edge; None if the ring has no ground."""
    if len(line) < 3 or not area:
        return None
    edges = list(zip(line, [*line[1:], line[0]], strict=True))
    (x0, y0), (x1, y1) = max(edges, key=lambda edge: math.dist(*edge))
    aside = 1e-4 * (1 if area > 0 else -1)
    return (x0 + x1) / 2 - (y1 - y0) * aside, (y0 + y1) / 2 + (x1 - x0) * aside
