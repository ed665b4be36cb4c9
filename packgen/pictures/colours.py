"""The main colours of a picture, and how near colours are to each other. A colour is red, green, blue of 0..1."""

from __future__ import annotations

from PIL import Image

Colour = tuple[float, float, float]
_ROUNDS = 12


def apart(a: Colour, b: Colour) -> float:
    """How different two colours look, 0 to about 3: distance weighted for the eye.

    Source: T. Riemersma, "Colour metric" (CompuPhase, 2006): weights by mean red 2 + r, 4, 3 - r.
    """
    mean = (a[0] + b[0]) / 2
    red, green, blue = a[0] - b[0], a[1] - b[1], a[2] - b[2]
    return float(((2 + mean) * red * red + 4 * green * green + (3 - mean) * blue * blue) ** 0.5)


def nearest_colour(colour: Colour, among: list[Colour]) -> int:
    """The index of the colour most like the given one."""
    return min(range(len(among)), key=lambda i: apart(colour, among[i]))


def main_colours(colours: list[Colour], weights: list[float], count: int) -> list[Colour]:
    """At most that many colours standing for the given ones: means of groups, begun with those farthest apart.

    S. Lloyd's method (1982) with a fixed beginning, so that the same picture gives the same colours.
    """
    chosen = [max(zip(weights, colours, strict=True))[1]]
    while len(chosen) < count:
        far = max(
            zip(colours, weights, strict=True), key=lambda c: (min(apart(c[0], d) for d in chosen) * c[1] ** 0.3, c)
        )
        if min(apart(far[0], d) for d in chosen) < 0.02:
            break
        chosen.append(far[0])
    for _ in range(_ROUNDS):
        groups = [nearest_colour(colour, chosen) for colour in colours]
        means = []
        for index, old in enumerate(chosen):
            own = [(c, w) for c, w, g in zip(colours, weights, groups, strict=True) if g == index]
            means.append(_mean(own) if own else old)
        if means == chosen:
            break
        chosen = means
    return list(dict.fromkeys(chosen))


def _mean(own: list[tuple[Colour, float]]) -> Colour:
    whole = sum(w for _, w in own)
    red, green, blue = (sum(c[i] * w for c, w in own) / whole for i in range(3))
    return red, green, blue


def palette_of(image: Image.Image, count: int) -> tuple[Colour, ...]:
    """The picture's main colours, the one that covers most first."""
    small = image.convert("RGB")
    small.thumbnail((96, 96))
    few = small.quantize(64, method=Image.Quantize.MEDIANCUT, kmeans=1, dither=Image.Dither.NONE)
    table = few.getpalette() or []
    found = [(n, i) for n, i in few.getcolors() or [] if isinstance(i, int)]
    colours = [(table[3 * i] / 255, table[3 * i + 1] / 255, table[3 * i + 2] / 255) for _, i in found]
    weights = [float(n) for n, _ in found]
    chosen = main_colours(colours, weights, count)
    share = [0.0] * len(chosen)
    for colour, weight in zip(colours, weights, strict=True):
        share[nearest_colour(colour, chosen)] += weight
    return tuple(colour for _, colour in sorted(zip(share, chosen, strict=True), reverse=True))
