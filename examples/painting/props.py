"""Things that stand in several pictures: houses, boats, the lamp house, people, trees. Each is drawn around (0, 0)."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np

from .shapes import arc, blob, box, edges, oval, ragged, ribbon
from .surface import Surface, mix


def window(s: Surface, x: float, y: float, w: float, h: float, lit: bool, frame: str = "#3a3040") -> None:
    """A window with four panes, its upper left corner at (x, y)."""
    glass = "#ffd27a" if lit else "#39486a"
    s.fill(box(x - w * 0.12, y - h * 0.08, x + w * 1.12, y + h * 1.08), frame, fine=0.9)
    for i in (0, 1):
        for j in (0, 1):
            left, top = x + i * w * 0.54, y + j * h * 0.54
            tone = mix(glass, "#fff3c4" if lit else "#6c83a6", 0.2 + 0.4 * ((i + j) % 2))
            s.fill(box(left, top, left + w * 0.46, top + h * 0.46), tone, vary=0.1)


def house(
    s: Surface, x: float, y: float, w: float, h: float, wall: str, roof: str, lit: str = "", light: float = 1.0,
    long: bool = False,
) -> None:
    """A cottage, foot at (x, y) (left corner); `long` shows the slope of the roof, else the gable.

    `lit` says for each window in turn `1` lit, `0` dark, `d` a door, anything else none.
    """
    top = y - h
    peak = top - w * (0.34 if long else 0.42)
    s.fill(box(x, top, x + w, y), wall, flow=90, fine=0.6, vary=0.09)
    s.fill(box(x + w * 0.62, top, x + w, y), mix(wall, "#2c2848", 0.35 * light), alpha=0.6, soft=w * 0.06)
    chimney = x + w * 0.68
    s.fill(box(chimney, peak + w * 0.02, chimney + w * 0.13, top - w * 0.05), mix(wall, "#5a3a38", 0.5))
    s.fill(box(chimney - w * 0.02, peak - w * 0.02, chimney + w * 0.15, peak + w * 0.04), mix(wall, "#4a3038", 0.6))
    over = w * 0.07
    eaves = top + over * 0.4
    if long:
        s.fill([[x - over, eaves], [x + w * 0.1, peak], [x + w * 0.9, peak], [x + w + over, eaves]], roof, flow=70,
               vary=0.1)
        for f in (0.3, 0.6, 0.85):
            inset = (w * 0.1 + over) * (1 - f)
            s.fill(ribbon([[x - over + inset, eaves + (peak - eaves) * (1 - f)],
                           [x + w + over - inset, eaves + (peak - eaves) * (1 - f)]], w * 0.02),
                   mix(roof, "#1d1c34", 0.4), alpha=0.6)
    else:
        ridge = x + w * 0.5
        s.fill([[x, top], [ridge, peak + over], [x + w, top]], wall, flow=90, vary=0.09)
        s.fill([[x + w * 0.62, top], [ridge, peak + over], [x + w, top]], mix(wall, "#2c2848", 0.3 * light), alpha=0.5)
        s.fill(ribbon([[x - over, eaves], [ridge, peak], [x + w + over, eaves]], w * 0.13, False), roof, vary=0.1,
               fine=0.7)
        s.fill(ribbon([[ridge, peak], [x + w + over, eaves]], w * 0.13, False), mix(roof, "#1d1c34", 0.35 * light),
               alpha=0.8)
    size = w * 0.17
    spots = [(0.16, 0.16), (0.6, 0.16), (0.16, 0.56), (0.6, 0.56)]
    for flag, (fx, fy) in zip(lit, spots, strict=False):
        if flag in "01":
            window(s, x + w * fx, top + h * fy, size, size * 1.25, flag == "1")
        elif flag == "d":
            s.fill(box(x + w * fx, top + h * fy, x + w * fx + size * 1.1, y), "#3d2f3a", flow=90, fine=0.8)


def smoke(s: Surface, x: float, y: float, size: float, colour: str, lean: float = 1.0) -> None:
    """A wisp of smoke rising from (x, y)."""
    path = [[x, y], [x + lean * size * 0.2, y - size * 0.35], [x + lean * size * 0.1, y - size * 0.7],
            [x + lean * size * 0.5, y - size]]
    s.fill(ribbon(path, [size * 0.05, size * 0.2, size * 0.3]), colour, alpha=0.4, soft=size * 0.06)


def gull(s: Surface, x: float, y: float, size: float, colour: str = "#f4f0ea", tilt: float = 0.0) -> None:
    """A gull on the wing."""
    c, n = np.cos(np.radians(tilt)), np.sin(np.radians(tilt))
    for side in (-1, 1):
        wing = np.array([[0, 0], [side * 0.45, -0.38], [side * 1.0, -0.16], [side * 0.5, -0.24], [side * 0.06, 0.1]])
        turned = np.column_stack([wing[:, 0] * c - wing[:, 1] * n, wing[:, 0] * n + wing[:, 1] * c])
        s.fill(turned * size + (x, y), colour, fine=1)
    s.fill(oval(x, y + size * 0.06, size * 0.26, size * 0.09, tilt), colour, fine=1)


def lugger(s: Surface, hull: str, sail: str, furled: bool) -> None:
    """A two-masted fishing boat about 200 units long; the waterline is y = 0."""
    s.fill(blob([-104, -30], [-60, -22], [0, -18], [60, -22], [106, -38], [98, -8], [80, 6], [-78, 6], [-96, -6]), hull,
           flow=0, fine=0.7, form=(250, 0.5, 10), vary=0.1)
    s.fill(ribbon([[-105, -31], [-60, -22], [0, -18], [60, -22], [107, -39]], 4.5), mix(hull, "#f2dcb0", 0.75),
           fine=0.9)
    s.fill(ribbon([[-98, -14], [0, -3], [98, -18]], 2.2), mix(hull, "#f7ead0", 0.5), alpha=0.8)
    s.fill(box(-14, -40, 26, -19), mix(hull, "#e8c490", 0.45), fine=0.8, form=(200, 0.4, 5))
    s.fill(ribbon([[-38, -20], [-40, -190]], [5, 3.2], False), "#4a3326", fine=0.9, flow=90)
    s.fill(ribbon([[52, -24], [55, -150]], [4.4, 2.8], False), "#4a3326", fine=0.9, flow=90)
    if furled:
        s.fill(ribbon([[-78, -96], [-40, -112], [16, -132]], [5, 17, 13, 6]), sail, flow=-20, form=(250, 0.6, 6),
               vary=0.12)
        s.fill(ribbon([[26, -84], [56, -94], [98, -112]], [4, 13, 10, 5]), sail, flow=-20, form=(250, 0.6, 5),
               vary=0.12)
    else:
        s.fill(edges([[-88, -148], [-40, -164], [6, -186]], [[6, -186], [22, -130], [26, -46]],
                     [[26, -46], [-30, -40], [-86, -46]], [[-86, -46], [-76, -96], [-88, -148]]), sail, flow=75,
               form=(200, 0.5, 16), vary=0.1, fine=0.5)
        s.fill(edges([[30, -116], [60, -128], [94, -144]], [[94, -144], [100, -96], [108, -44]],
                     [[108, -44], [70, -40], [34, -42]], [[34, -42], [40, -80], [30, -116]]), mix(sail, "#2d2340",
                     0.18),
               flow=75, form=(200, 0.5, 12), vary=0.1)
        for f in (0.3, 0.62):
            s.fill(ribbon([[-86 + 6 * f, -148 + 102 * f], [-30, -152 + 108 * f], [10 + 18 * f, -184 + 140 * f]], 1.3),
                   mix(sail, "#2d2340", 0.5), alpha=0.7, fine=0.9)
        s.fill(ribbon([[-92, -146], [10, -188]], 3, False), "#4a3326", fine=0.9)
        s.fill(ribbon([[26, -114], [98, -146]], 2.6, False), "#4a3326", fine=0.9)
    for a, b in (([-40, -190], [-102, -30]), ([-40, -190], [10, -22]), ([55, -150], [106, -38]),
           ([-40, -190], [54, -148])):
        s.fill(ribbon([a, b], 1.0, False), "#3a2e34", alpha=0.75, fine=1)
    s.fill([[-40, -190], [-40, -202], [-18, -194]], "#c8453a", fine=1)


def rowing_boat(s: Surface, hull: str, inside: str) -> None:
    """A small boat seen a little from above, about 200 units long, afloat at y = 0."""
    s.fill(blob([-100, -34], [-50, -30], [20, -30], [80, -36], [108, -48], [92, -10], [64, 8], [-64, 8], [-92, -8]),
           hull,
           flow=0, fine=0.7, form=(240, 0.5, 10), vary=0.1)
    s.fill(blob([-98, -36], [-50, -48], [20, -50], [80, -48], [106, -50], [74, -34], [20, -27], [-50, -27]), inside,
           flow=0, fine=0.7, form=(60, 0.5, 6))
    for x in (-46, 8, 52):
        s.fill([[x, -47], [x + 12, -47], [x + 16, -29], [x + 2, -29]], mix(inside, "#e8c898", 0.55), fine=0.9)
    rim = [[-99, -35], [-50, -28], [20, -27], [76, -34], [108, -49]]
    s.fill(ribbon(rim, 4), mix(hull, "#f3e2c0", 0.8), fine=1)
    s.fill(ribbon([[-92, -16], [0, -6], [88, -18]], 2), mix(hull, "#ffffff", 0.4), alpha=0.7)


def lamp_house(s: Surface, wall: str = "#e6ddcf", roof: str = "#8c3b34", dusk: float = 0.3, lit: bool = True) -> None:
    """The lamp house: an eight-sided tower with gallery and lantern room, 100 units wide, 290 high, foot at y = 0."""
    faces = ((-50, -38, 0.02), (-38, -8, 0.10), (-8, 25, 0.28), (25, 44, 0.5), (44, 50, 0.62))
    for left, right, shade in faces:
        narrow = 0.86
        s.fill([[left, 0], [right, 0], [right * narrow, -190], [left * narrow, -190]],
               mix(mix(wall, "#ffe9c4", 0.15), "#3c3a60", shade * (0.75 + dusk * 0.5)), flow=90, fine=0.7, vary=0.09)
    for y in (-40, -78, -116, -154):
        wide = 50 * (1 + 0.14 * y / 190)
        s.fill(ribbon([[-wide, y], [-8, y + 4], [wide, y]], 1.2), "#6d6470", alpha=0.35, fine=0.9)
    s.fill(edges([[-19, 0], [-18, -42]], [[-18, -42], [-7, -57], [5, -42]], [[5, -42], [6, 0]]), "#5c3f31", fine=1,
           flow=90)
    s.fill(oval(1, -24, 1.8, 1.8), "#e3b765", fine=1)
    window(s, -16, -112, 15, 20, lit)
    window(s, -14, -164, 13, 17, False)
    s.fill(box(-57, -200, 57, -188), mix(wall, "#50506c", 0.35), fine=0.8)
    s.fill(box(-60, -190, 60, -186), "#54506a", fine=0.8)
    for x in range(-54, 58, 12):
        s.fill(ribbon([[x, -188], [x, -214]], 1.5, False), "#302c3c", fine=1)
    s.fill(ribbon([[-57, -214], [57, -214]], 2, False), "#302c3c", fine=1)
    glass = "#ffe49a" if lit else "#8fa6b8"
    s.fill(box(-30, -252, 30, -200), glass, fine=0.9, vary=0.04)
    if lit:
        s.fill(oval(0, -226, 18, 18), "#fff9e0", soft=5)
    for x in (-30, -18, -2, 17, 30):
        s.fill(ribbon([[x, -200], [x, -252]], 2.4, False), "#4a3a34", fine=1)
    s.fill(ribbon([[-31, -228], [31, -228]], 1.5, False), "#4a3a34", fine=1)
    s.fill([[-38, -250], [38, -250], [26, -266], [0, -290], [-26, -266]], roof, fine=0.8, flow=60)
    s.fill([[8, -250], [38, -250], [26, -266], [0, -290]], mix(roof, "#241c38", 0.45), fine=0.8, flow=-60)
    s.fill(ribbon([[0, -288], [0, -306]], 2, False), "#302c3c", fine=1)
    s.fill(oval(0, -292, 5, 5), "#caa050", fine=1)
    s.fill([[0, -306], [20, -301], [0, -297]], "#302c3c", fine=1)


def person(s: Surface, coat: str, skirt: str, hair: str, skin: str = "#dba580", lantern: bool = False) -> None:
    """A person standing, seen from behind, 100 units tall, feet at y = 0."""
    s.fill(blob([-17, -2], [-15, -30], [-10, -58], [10, -58], [16, -30], [19, -2], [0, 1]), skirt, flow=85, fine=0.9,
           form=(200, 0.5, 6))
    s.fill(blob([-13, -46], [-14, -70], [-7, -81], [7, -81], [14, -70], [13, -46], [0, -42]), coat, flow=80, fine=1,
           form=(200, 0.5, 5))
    s.fill(oval(0, -89, 7, 8.5), skin, fine=1, form=(200, 0.4, 3))
    s.fill(oval(0, -90.5, 8.4, 9.6), hair, fine=1, form=(200, 0.4, 3))
    s.fill(oval(1, -100, 4, 3.4), hair, fine=1)
    s.fill(ribbon([[-11, -74], [-17, -58], [-14, -46]], [6, 5, 4]), coat, fine=1)
    if lantern:
        s.fill(ribbon([[11, -74], [21, -64], [25, -52]], [6, 5, 4]), coat, fine=1)
        s.fill(ribbon([[25, -52], [25, -46]], 1, False), "#2c2430", fine=1)
        s.fill(box(20, -47, 30, -32), "#2c2430", fine=1)
        s.fill(box(21.5, -45, 28.5, -34), "#ffe9a0", fine=1)
        s.fill([[19, -46], [31, -46], [25, -52]], "#2c2430", fine=1)
    else:
        s.fill(ribbon([[11, -74], [17, -60], [15, -46]], [6, 5, 4]), coat, fine=1)


def round_tree(s: Surface, size: float, leaf: str, seed: int, lit: str = "#f0dc8a", trunk: str = "#5a4436") -> None:
    """A tree as big round lumps of leaves; the trunk's foot is at y = 0."""
    rng = np.random.default_rng(seed)
    s.fill(ribbon([[0, 2], [-size * 0.02, -size * 0.3], [size * 0.03, -size * 0.55]], [size * 0.13, size * 0.08,
           size * 0.05]),
           trunk, flow=90, fine=0.7)
    for turn in (-1, 1):
        s.fill(ribbon([[0, -size * 0.3], [turn * size * 0.16, -size * 0.5]], [size * 0.06, size * 0.03], False), trunk)
    for layer, shade in enumerate((0.5, 0.25, 0.0)):
        for _ in range(9 - layer):
            a, r = rng.uniform(0, 6.28), size * rng.uniform(0, 0.3)
            x, y = np.cos(a) * r * 1.1 - layer * size * 0.03, -size * 0.66 + np.sin(a) * r * 0.85 - layer * size * 0.04
            lump = size * rng.uniform(0.11, 0.2) * (1 - 0.15 * layer)
            s.fill(ragged(oval(x, y, lump * 1.15, lump, wobble=0.1, seed=seed + layer), lump * 0.07, seed, lump * 0.12),
                   mix(leaf, "#1c2a3c", shade), flow=rng.uniform(0, 180), form=(225, 0.65, lump * 0.4),
                   lights=(lit, "#24304a"), vary=0.12, fine=0.5)


def pot(s: Surface, x: float, y: float, size: float) -> None:
    """A wicker lobster pot with its foot at (x, y)."""
    s.fill(blob([x - size * 0.6, y], [x - size * 0.58, y - size * 0.5], [x, y - size * 0.85],
           [x + size * 0.58, y - size * 0.5],
                [x + size * 0.6, y]), "#4a382c", fine=0.9)
    for k in range(5):
        f = k / 4 * 2 - 1
        s.fill(ribbon([[x + f * size * 0.58, y], [x + f * size * 0.46, y - size * 0.5], [x + f * size * 0.1,
               y - size * 0.83]],
                      size * 0.05), "#b08d5c", fine=1)
    for k in range(3):
        wide = size * (0.6 - 0.1 * k**1.3)
        s.fill(ribbon(arc(x, y - size * (0.12 + 0.24 * k), wide, size * 0.1, 180, 0), size * 0.05), "#c8a670", fine=1)
