"""SVG in, as shapes that stay vector all the way to paper.

A reader of packgen's own: the general ones bring a licence of another kind, large parts for what a sheet cannot use,
and letters from whatever fonts the machine has, so that two homes would print two pictures. Taken: paths, plain shapes,
groups, `use`, transforms, style sheets of simple rules, fills, strokes and dashes, opacity laid over white, shadings as
their mean colour. Left out, and said: letters, pictures inside, clipping, masks, filters, patterns.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

from PIL import ImageColor

from packgen.pictures import svg_paths as paths
from packgen.pictures.opening import PictureError, allow_size
from packgen.pictures.shapes import Shape, Steps, VectorPicture, moved
from packgen.pictures.svg_xml import MAX_BYTES, Node, SvgError, parsed, styler, walk
from packgen.units import MM_PER_INCH

_IN = 96.0  # CSS px to the inch
_PX = {"": 1.0, "px": 1.0, "pt": 4 / 3, "pc": 16.0, "mm": _IN / MM_PER_INCH, "cm": 10 * _IN / MM_PER_INCH, "in": _IN,
       "em": 16.0, "ex": 8.0}  # fmt: skip
_LENGTH = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(px|pt|pc|mm|cm|in|em|ex|%)?\s*$")
_WITH_OPACITY = re.compile(r"(rgb|hsl)a?\(([^)]*)\)$")
_INHERITED = ("fill", "fill-rule", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin",
              "fill-opacity", "stroke-opacity", "visibility", "color")  # fmt: skip
_GROUPS = ("svg", "g", "a", "symbol", "switch")
_SILENT = ("defs", "title", "desc", "metadata", "style", "namedview", "script", "view", "linearGradient",
           "radialGradient", "clipPath", "mask", "filter", "pattern", "marker", "foreignObject", "animate")  # fmt: skip
_LEFT_OUT = {"text": "letters are left out: turn them into paths", "image": "a picture inside the drawing is left out"}
_MAX_SHAPES = 20_000
_MAX_USES = 8


@dataclass(frozen=True, slots=True)
class _Here:
    """What a part of the drawing inherits: its style, place, opacity, and how deep in `use` it is."""

    style: dict[str, str]
    matrix: paths.Matrix
    opacity: float = 1.0
    uses: int = 0


def read_svg(path: Path) -> VectorPicture:
    """The drawing's shapes, y upwards. Raises PictureError if it is no drawing or has nothing to draw."""
    try:
        state = path.stat()
        return _read(path, state.st_size, state.st_mtime_ns)
    except OSError as error:
        raise PictureError(f"{path.name} cannot be read ({error.strerror})", "Look whether it is there.") from None


@lru_cache(maxsize=32)
def _read(path: Path, size: int, changed_ns: int) -> VectorPicture:
    if size > MAX_BYTES:
        raise PictureError(f"{path.name} is larger than {MAX_BYTES // 1_000_000} MB", "Use a simpler drawing.")
    try:
        return vector_picture(path.read_bytes(), path)
    except SvgError as error:
        raise PictureError(f"{path.name} {error}", "Save it again as a plain SVG drawing.") from None


def vector_picture(data: bytes, path: Path) -> VectorPicture:
    """The shapes of SVG text. Raises SvgError, or PictureError for an impossible size."""
    root = parsed(data)
    left, top, width, height = _view(root)
    allow_size(path, max(width, 1) if width > 0 else 0, max(height, 1) if height > 0 else 0)
    drawing = _Drawing(root, (width, height))
    drawing.draw(root, _Here({"fill": "black"}, (1, 0, 0, -1, -left, top + height)))
    if not drawing.shapes:
        raise SvgError("has nothing in it that can be drawn")
    return VectorPicture(width, height, tuple(drawing.shapes), tuple(sorted(drawing.left_out)))


def _view(root: Node) -> tuple[float, float, float, float]:
    box = paths.numbers(root.attributes.get("viewBox", ""))
    if len(box) == 4 and box[2] > 0 and box[3] > 0:
        return box[0], box[1], box[2], box[3]
    width, height = root.attributes.get("width", "100%"), root.attributes.get("height", "100%")
    return 0.0, 0.0, _length(width, 300), _length(height, 150)


def _length(text: str, whole: float, missing: float = 0.0) -> float:
    """A length in px of 1/96 inch (CSS); a percentage is of `whole`."""
    found = _LENGTH.match(text)
    if not found or not math.isfinite(float(found[1])):
        return missing
    value = float(found[1])
    return value * whole / 100 if found[2] == "%" else value * _PX[found[2] or ""]


class _Drawing:
    """Walks the tree and gathers shapes."""

    def __init__(self, root: Node, size: tuple[float, float]) -> None:
        self.size = size
        self.style = styler(root)
        self.names = {node.attributes["id"]: node for node in walk(root) if "id" in node.attributes}
        self.shapes: list[Shape] = []
        self.left_out: set[str] = set()

    def draw(self, node: Node, here: _Here) -> None:
        own = self.style(node)
        if own.get("display") == "none":
            return
        for key in ("clip-path", "mask", "filter"):
            if own.get(key, "none") != "none":
                self.left_out.add("clipping, masks and filters are left out")
        matrix = paths.times(here.matrix, paths.transform(node.attributes.get("transform", "")))
        style = here.style | {key: value for key, value in own.items() if key in _INHERITED and value != "inherit"}
        here = _Here(style, matrix, here.opacity * _fraction(own.get("opacity", "1")), here.uses)
        if node.tag in _GROUPS:
            for child in node.children:
                if child.tag != "symbol" or node.tag != "svg":
                    self.draw(child, here)
        elif node.tag == "use":
            self._use(node, here)
        elif node.tag in _MAKERS:
            self._shape(_MAKERS[node.tag](node, self.size), here)
        elif node.tag not in _SILENT:
            self.left_out.add(_LEFT_OUT.get(node.tag, f"its <{node.tag[:20]}> parts are left out"))

    def _use(self, node: Node, here: _Here) -> None:
        target = self.names.get(node.attributes.get("href", "").removeprefix("#"))
        if target is None or here.uses >= _MAX_USES:
            self.left_out.add("a copy of something outside the drawing is left out")
            return
        x, y = (_length(node.attributes.get(key, "0"), whole) for key, whole in zip("xy", self.size, strict=True))
        self.draw(target, replace(here, matrix=paths.times(here.matrix, (1, 0, 0, 1, x, y)), uses=here.uses + 1))

    def _shape(self, steps: Steps, here: _Here) -> None:
        style = here.style
        if not steps or style.get("visibility") in ("hidden", "collapse") or here.opacity <= 0:
            return
        steps = moved(steps, here.matrix)
        if not all(math.isfinite(float(v)) and abs(float(v)) < 1e7 for step in steps for v in step[1:]):
            raise SvgError("has a shape of impossible size")
        fill = self._ink(style.get("fill", "black"), here.opacity * _fraction(style.get("fill-opacity", "1")), style)
        line = self._ink(style.get("stroke", "none"), here.opacity * _fraction(style.get("stroke-opacity", "1")), style)
        a, b, c, d, _, _ = here.matrix
        scale = math.sqrt(abs(a * d - b * c))
        width = _length(style.get("stroke-width", "1"), self.size[0], 1.0) * scale
        if fill is None and (line is None or width <= 0):
            return
        dash = tuple(v * scale for v in paths.numbers(style.get("stroke-dasharray", "")))
        dash = dash if dash and min(dash) >= 0 and max(dash) > 0 else ()
        round_cap, round_join = style.get("stroke-linecap") == "round", style.get("stroke-linejoin") == "round"
        shape = Shape(steps, fill, line if width > 0 else None, width, dash, round_cap, round_join)
        even_odd = fill is None or style.get("fill-rule") == "evenodd"
        self.shapes.extend(replace(shape, steps=part) for part in ([steps] if even_odd else paths.for_even_odd(steps)))
        if len(self.shapes) > _MAX_SHAPES:
            raise SvgError("has more shapes than can be drawn")

    def _ink(self, text: str, opacity: float, style: dict[str, str]) -> tuple[float, float, float] | None:
        """A colour laid over white, or None for nothing to draw."""
        text = text.strip()
        if text.startswith("url("):
            name, _, other = text[4:].partition(")")
            shading = self._shading(name.strip("\"' #"))
            if shading is not None:
                self.left_out.add("shadings are drawn as one plain colour")
                return _over_white(shading[0], shading[1] * opacity)
            text = other.strip() or "none"
            self.left_out.add("patterns are left out")
        if text in ("none", "transparent", ""):
            return None
        colour = _colour(style.get("color", "black") if text.lower() == "currentcolor" else text)
        return None if colour is None else _over_white(colour[0], colour[1] * opacity)

    def _shading(self, name: str, depth: int = 0) -> tuple[tuple[float, float, float], float] | None:
        node = self.names.get(name)
        if node is None or not node.tag.endswith("Gradient") or depth > _MAX_USES:
            return None
        stops = [child for child in node.children if child.tag == "stop"]
        if not stops:
            return self._shading(node.attributes.get("href", "").removeprefix("#"), depth + 1)
        found = []
        for stop in stops:
            own = self.style(stop)
            colour, alpha = _colour(own.get("stop-color", "black")) or ((0.0, 0.0, 0.0), 1.0)
            found.append((*colour, alpha * _fraction(own.get("stop-opacity", "1"))))
        red, green, blue, alpha = (sum(values) / len(found) for values in zip(*found, strict=True))
        return (red, green, blue), alpha


def _fraction(text: str) -> float:
    found = _length(text, 1.0, 1.0)
    return min(1.0, max(0.0, found))


def _over_white(colour: tuple[float, float, float], opacity: float) -> tuple[float, float, float] | None:
    if opacity <= 0.004:
        return None
    red, green, blue = (1 - (1 - v) * min(1.0, opacity) for v in colour)
    return red, green, blue


def _colour(text: str) -> tuple[tuple[float, float, float], float] | None:
    """A CSS colour as red, green, blue and opacity of 0..1; None if it is not one."""
    text = text.strip().lower()
    alpha, found = 1.0, _WITH_OPACITY.match(text)
    if found:
        parts = re.split(r"[\s,/]+", found[2].strip())
        text = f"{found[1]}({','.join(parts[:3])})"
        alpha = _fraction(parts[3]) if len(parts) > 3 else 1.0
    try:
        rgb = ImageColor.getrgb(text)
    except ValueError:
        return None
    if len(rgb) == 4:
        alpha *= rgb[3] / 255
    return (rgb[0] / 255, rgb[1] / 255, rgb[2] / 255), alpha


def _points(node: Node, close: bool) -> Steps:
    values = paths.numbers(node.attributes.get("points", ""))
    pairs = list(zip(values[::2], values[1::2], strict=False))
    if len(pairs) < 2:
        return ()
    steps: list[tuple[str | float, ...]] = [("m" if i == 0 else "l", x, y) for i, (x, y) in enumerate(pairs)]
    return (*steps, ("z",)) if close else tuple(steps)


def _lengths(node: Node, size: tuple[float, float], *names: str) -> list[float]:
    mean = math.hypot(*size) / math.sqrt(2)
    whole = {"x": size[0], "w": size[0], "y": size[1], "h": size[1]}
    wholes = (mean if name == "r" else whole.get(name.strip("rc12")[:1], mean) for name in names)
    return [_length(node.attributes.get(name, "0"), of) for name, of in zip(names, wholes, strict=True)]


def _rect(node: Node, size: tuple[float, float]) -> Steps:
    x, y, width, height, rx, ry = _lengths(node, size, "x", "y", "width", "height", "rx", "ry")
    if width <= 0 or height <= 0:
        return ()
    rx, ry = rx if "rx" in node.attributes else ry, ry if "ry" in node.attributes else rx
    return paths.rectangle_steps(x, y, width, height, max(0.0, rx), max(0.0, ry))


def _ellipse(node: Node, size: tuple[float, float]) -> Steps:
    cx, cy, rx, ry, r = _lengths(node, size, "cx", "cy", "rx", "ry", "r")
    rx, ry = (r, r) if node.tag == "circle" else (rx, ry)
    return paths.ellipse_steps(cx, cy, rx, ry) if rx > 0 and ry > 0 else ()


def _line(node: Node, size: tuple[float, float]) -> Steps:
    x1, y1, x2, y2 = _lengths(node, size, "x1", "y1", "x2", "y2")
    return (("m", x1, y1), ("l", x2, y2))


_MAKERS: dict[str, Callable[[Node, tuple[float, float]], Steps]] = {
    "path": lambda node, size: paths.path_steps(node.attributes.get("d", "")),
    "rect": _rect, "circle": _ellipse, "ellipse": _ellipse, "line": _line,
    "polyline": lambda node, size: _points(node, False), "polygon": lambda node, size: _points(node, True),
}  # fmt: skip
