"""Flat drawings as SVG: a tile for a kitchen wall, and the door and window of the lamp house model."""

from __future__ import annotations

import math
import re

INK, CREAM, BLUE, PALE, RED, GREEN, GOLD = "#1d2f5e", "#f7f0dd", "#2f62a3", "#a9c8e0", "#c8452f", "#4c8a5c", "#e3ac3a"


def _petal(x: float, y: float, turn: float, long: float, wide: float, colour: str) -> str:
    return (
        f'<path transform="translate({x:g} {y:g}) rotate({turn:g})" fill="{colour}" stroke="{INK}" stroke-width="1.2" '
        f'd="M0 0 C{wide:g} {-long * 0.3:g} {wide:g} {-long * 0.8:g} 0 {-long:g} '
        f'C{-wide:g} {-long * 0.8:g} {-wide:g} {-long * 0.3:g} 0 0Z"/>'
    )


def _flower(x: float, y: float, size: float, petals: int, colour: str) -> str:
    parts = [_petal(x, y, 360 / petals * k, size, size * 0.34, colour) for k in range(petals)]
    parts.append(f'<circle cx="{x:g}" cy="{y:g}" r="{size * 0.24:g}" fill="{GOLD}" stroke="{INK}" stroke-width="1.2"/>')
    return "".join(parts)


def _fish(x: float, y: float, turn: float) -> str:
    return (
        f'<g transform="translate({x:g} {y:g}) rotate({turn:g})" stroke="{INK}" stroke-width="1.4">'
        f'<path fill="{PALE}" d="M-24 0 C-12 -16 12 -16 22 0 C12 16 -12 16 -24 0Z"/>'
        f'<path fill="{BLUE}" d="M-22 0 L-38 -13 Q-33 0 -38 13Z"/>'
        f'<path fill="none" d="M-8 -10 Q-1 0 -8 10 M2 -11 Q9 0 2 11"/>'
        f'<circle cx="14" cy="-3" r="2.2" fill="{INK}"/></g>'
    )


def _tile(left: float, top: float, size: float) -> str:
    """One tile: a star flower, quarter circles in the corners that join to rings, four fish swimming round."""
    c, r = size / 2, size * 0.3
    parts = [f'<g transform="translate({left:g} {top:g})"><rect width="{size:g}" height="{size:g}" fill="{CREAM}"/>']
    for x, y in ((0, 0), (size, 0), (size, size), (0, size)):
        sx, sy = (1 if x == 0 else -1), (1 if y == 0 else -1)
        for radius, fill in ((r, BLUE), (r * 0.8, CREAM), (r * 0.62, RED), (r * 0.34, GOLD)):
            sweep = 1 if sx * sy > 0 else 0
            parts.append(
                f'<path fill="{fill}" stroke="{INK}" stroke-width="1.2" d="M{x:g} {y:g} L{x + sx * radius:g} {y:g} '
                f'A{radius:g} {radius:g} 0 0 {sweep} {x:g} {y + sy * radius:g}Z"/>'
            )
    for k in range(4):
        a = math.radians(90 * k)
        parts.append(_fish(c + 0.335 * size * math.cos(a), c + 0.335 * size * math.sin(a), 90 * k + 90))
    for k in range(4):
        parts.append(_petal(c, c, 90 * k + 45, size * 0.31, size * 0.06, GREEN))
    parts.append(_flower(c, c, size * 0.19, 8, RED))
    parts.append(f'<rect width="{size:g}" height="{size:g}" fill="none" stroke="{INK}" stroke-width="2.4"/></g>')
    return "".join(parts)


def kitchen_tiles() -> str:
    """Kitchen Tiles with Fish and Flowers: nine tiles, each the same, that make new shapes where they meet."""
    size, border = 200.0, 36.0
    side = 3 * size + 2 * border
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side:g} {side:g}" width="{side:g}" height="{side:g}">',
        f'<rect width="{side:g}" height="{side:g}" fill="{BLUE}"/>',
    ]
    n = 20
    for k in range(n):
        x = border * 0.5 + (side - border) * k / n
        r, fill = (9, GOLD) if k % 2 else (5.5, CREAM)
        for cx, cy in ((x, border / 2), (side - x, side - border / 2), (border / 2, side - x), (side - border / 2, x)):
            parts.append(f'<circle cx="{cx:g}" cy="{cy:g}" r="{r:g}" fill="{fill}"/>')
    parts += [_tile(border + size * i, border + size * j, size) for i in range(3) for j in range(3)]
    return "".join(parts) + "</svg>\n"


def kitchen_tiles_lines() -> str:
    """The tiles as a line drawing with flat fills."""
    pen = 'stroke="#000000" stroke-width="2.2"'
    bare = re.sub(r' stroke(-width)?="[^"]*"', "", kitchen_tiles())
    inked = re.sub(r'(fill="#[0-9a-f]{6}")', rf"\1 {pen}", bare)
    return inked.replace('fill="none"', f'fill="none" {pen}')


# The faces of the lamp house model: 100 units stand for the 1.08 m of one wall, 613 for its 6.6 m.
_WALL = (100, 613)
_EDGE = "#3a3340"


def _wall(inside: str) -> str:
    """One wall of the lamp house: the lamp room's glass, the gallery's rail, courses of stone, and what is inside."""
    w, h = _WALL
    tones = ("#ffe9ac", "#ffdc84")
    glass = "".join(
        f'<rect x="{7 + 30 * i}" y="{14 + 48 * j}" width="26" height="44" fill="{tones[(i + j) % 2]}"/>'
        for i in range(3)
        for j in range(2)
    )
    rails = "".join(f"M{x} 106 V146 " for x in range(5, 100, 15))
    courses = "".join(f"M0 {y} H{w} " for y in (226, 300, 374, 448, 522))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {w} {h}" width="{w}" height="{h}">'
        f'<rect width="{w}" height="{h}" fill="#f6efe0"/><rect width="{w}" height="112" fill="{_EDGE}"/>{glass}'
        f'<rect y="110" width="{w}" height="42" fill="#e4dac6"/>'
        f'<path d="{rails}M0 106 H{w}" fill="none" stroke="{_EDGE}" stroke-width="3"/>'
        f'<rect y="146" width="{w}" height="12" fill="#8a8090"/>'
        f'<path d="{courses}" fill="none" stroke="#cbbfa6" stroke-width="2"/>{inside}</svg>\n'
    )


def lamp_house_wall() -> str:
    """A wall of the lamp house without door or window."""
    return _wall("")


def lamp_house_window() -> str:
    """A wall of the lamp house with a window."""
    panes = "".join(
        f'<rect x="{33 + 18 * i}" y="{317 + 24 * j}" width="16" height="22" fill="#7f97b8"/>'
        for i in (0, 1)
        for j in (0, 1, 2)
    )
    return _wall(
        f'<rect x="26" y="310" width="48" height="84" fill="#b9ab93" stroke="{_EDGE}" stroke-width="2"/>'
        f'<rect x="31" y="315" width="38" height="74" fill="{_EDGE}"/>{panes}'
        f'<rect x="20" y="394" width="60" height="9" fill="#cfc3ab" stroke="{_EDGE}" stroke-width="2"/>'
    )


def lamp_house_door() -> str:
    """The wall of the lamp house with its door."""
    boards = "".join(f'<path d="M{x} 462 V598" stroke="#4a2f22" stroke-width="2"/>' for x in (38, 50, 62))
    return _wall(
        f'<path d="M18 600 V478 A32 32 0 0 1 82 478 V600Z" fill="#b9ab93" stroke="{_EDGE}" stroke-width="2"/>'
        f'<path d="M25 600 V480 A25 25 0 0 1 75 480 V600Z" fill="#8a5336" stroke="{_EDGE}" stroke-width="2"/>{boards}'
        '<path d="M27 500 H56 M27 570 H56" stroke="#2c2630" stroke-width="5" stroke-linecap="round"/>'
        f'<circle cx="67" cy="540" r="4" fill="#e0b04a" stroke="{_EDGE}" stroke-width="1.5"/>'
        f'<rect x="10" y="600" width="80" height="13" fill="#bdb096" stroke="{_EDGE}" stroke-width="2"/>'
    )


def barn_gable() -> str:
    """A gable of the barn: boards, and high up a ring where the knot-hole is."""
    boards = "".join(f"M{x} 0V52" for x in range(5, 50, 5))
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 50 52">'
        f'<path d="{boards}" fill="none" stroke="#8a8a8a" stroke-width="0.4"/>'
        '<circle cx="25" cy="14" r="2.2" fill="#ffffff" stroke="#000000" stroke-width="0.7"/></svg>\n'
    )
