"""Nets on sheets: the scale chosen, pieces turned, split and placed, and everything the sheet needs in mm."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.nets.errors import NetError, TooSmall
from packgen.nets.holes import Drilling, drilled
from packgen.nets.net import PRINTED_SIDE, Cut, FlatFace, Fold, Hole, Letter, Net, Overlap, Stage, Tab
from packgen.nets.packing import Spot, pack
from packgen.nets.scale import (
    AUTO,
    FIT,
    fitting_scales,
    larger_scales,
    read_scale,
    real_length,
    scale_words,
    standard_scales,
)
from packgen.nets.solid import Solid, edges_of
from packgen.nets.splitting import split_nets
from packgen.nets.tabs import TabRule
from packgen.nets.tiling import tiled
from packgen.nets.unfold import Unfolding, largest_fit, paper_area
from packgen.nets.vectors import Point

MOST_SHEETS = 12
_EASIER = 4
_FACES = 120
_FINGER = 12.0
"""An edge shorter than this (mm) is hard for a child to crease and glue (common practice, no source)."""
LEAST_AREA = 60.0
"""The least width and height (mm) of a sheet that nets are laid out on."""
PLAY = 0.25
"""How much room a lid has on each side besides the card's thickness (mm; common practice, no source)."""


def lid_allowance(card: float) -> float:
    """How much larger than its box a lid is made on each side (mm): 2 t + 0.25.

    The lid is folded to its outside size, so its wall of thickness t lies inside that, and so does the tab glued behind
    the wall at a corner; a quarter of a millimetre is left to slide.
    """
    return 2 * card + PLAY


@dataclass(frozen=True, slots=True)
class NetSheet:
    """Everything on one sheet, in mm from the lower left of the area given. `parts` are the net's pieces on it."""

    faces: tuple[FlatFace, ...]
    folds: tuple[Fold, ...]
    cuts: tuple[Cut, ...]
    tabs: tuple[Tab, ...]
    letters: tuple[Letter, ...]
    scores: tuple[tuple[Point, ...], ...]
    holes: tuple[Hole, ...]
    overlaps: tuple[Overlap, ...]
    lays: tuple[tuple[Point, ...], ...] = ()
    parts: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Size:
    """A size for the caption: its name, the real thing's and the model's, in mm, degrees or a count (`dimension`)."""

    name: str
    real: float
    model: float
    dimension: str


@dataclass(frozen=True, slots=True)
class NetSheets:
    """A net laid out. `ratio` is paper to real thing; `net` is at paper size, its pieces where the sheets have them."""

    scale_text: str
    ratio: float
    sheets: tuple[NetSheet, ...]
    sizes: tuple[Size, ...]
    real_size: tuple[str, ...]
    stages: tuple[Stage, ...]
    cautions: tuple[str, ...]
    materials: tuple[str, ...]
    net: Net
    printed_side: str = PRINTED_SIDE


@dataclass(frozen=True, slots=True)
class _Wish:
    """What a layout is asked for, apart from the scale."""

    solid: Solid
    width: float
    height: float
    rule: TabRule
    holes: tuple[Drilling, ...]
    most: int

    @property
    def area(self) -> tuple[float, float]:
        """Its width and height."""
        return self.width, self.height


def lay_out(
    thing: Solid | Net,
    area_width: float,
    area_height: float,
    scale: str = AUTO,
    *,
    card: float = 0.25,
    youngest: bool = False,
    small_hands: bool = False,
    holes: Sequence[Drilling] = (),
    most_sheets: int = MOST_SHEETS,
    auto_sheets: int = 1,
) -> NetSheets:
    """A solid unfolded and laid out on sheets with a printable area of that size (mm).

    `scale` is `auto`, `fit` (as large as one sheet allows), `true`, or a ratio. `auto` is the largest ISO 5455 scale,
    not above true size, whose net fits on `auto_sheets` sheets; more sheets or an enlargement if it would be too small
    to fold, or most of its edges shorter than 12 mm; and true size for a thing that is made to size. `card` is the
    card's thickness in mm; for the `youngest` and for `small_hands` see TabRule.

    Raises NetError, with the nearest sensible scale, if it cannot fold or takes more than `most_sheets`.
    """
    if isinstance(thing, Net):
        card, youngest, thing = thing.card, thing.youngest, thing.solid
    if min(area_width, area_height) < LEAST_AREA:
        raise NetError(
            f"A printable area of {area_width:g} x {area_height:g} mm is too small for a net.",
            f"Give it at least {LEAST_AREA:g} mm each way.",
        )
    rule = TabRule(card, youngest, small_hands)
    wish = _Wish(thing, area_width, area_height, rule, tuple(holes), most_sheets)
    wanted = read_scale(scale)
    if wanted == AUTO and thing.made_to_size:
        wanted = 1.0
    if wanted == AUTO:
        return _auto(wish, auto_sheets)
    if wanted == FIT:
        return _fit(wish)
    assert isinstance(wanted, float)
    return _asked(wish, wanted)


def _auto(wish: _Wish, auto_sheets: int) -> NetSheets:
    most = largest_fit(wish.solid, wish.area, wish.rule.card) * math.sqrt(auto_sheets)
    small = 0.0
    for ratio in standard_scales(min(1.0, most * 1.02)):
        try:
            found = _try(wish, ratio, auto_sheets, whole=True)
        except TooSmall:
            small = ratio
            break
        if found:
            return _easier(wish, ratio) or _finished(wish, ratio, *found)
        if ratio < most / 40:
            small = ratio
            break
    tries = 0
    for ratio in larger_scales(small):
        tries += 1
        try:
            found = _try(wish, ratio, wish.most, whole=False)
        except TooSmall:
            if tries > 6:
                break
            continue
        if found:
            return _finished(wish, ratio, *found)
        break
    raise NetError(
        f"The {wish.solid.title} cannot be made from {wish.most} sheets of this size with tabs of 4 mm or more.",
        "Choose a simpler solid, or larger paper.",
    )


def _easier(wish: _Wish, ratio: float) -> NetSheets | None:
    """A thing of small faces at the next scale that fingers can fold, not above true size, on a few sheets more."""
    if not _fiddly(wish, ratio):
        return None
    for larger in larger_scales(ratio):
        if larger > 1.0 + 1e-9:
            return None
        if not _fiddly(wish, larger):
            found = _try(wish, larger, min(_EASIER, wish.most), whole=False)
            return _finished(wish, larger, *found) if found else None
    return None


def _fiddly(wish: _Wish, ratio: float) -> bool:
    """True if half of the edges of a solid are shorter on paper than a child's fingers can crease."""
    edges = sorted(edge.length for edge in edges_of(wish.solid)) if 0 < len(wish.solid.faces) <= _FACES else []
    return bool(edges) and edges[len(edges) // 2] * ratio < _FINGER


def _fit(wish: _Wish) -> NetSheets:
    most = largest_fit(wish.solid, wish.area, wish.rule.card)
    for ratio in fitting_scales(most):
        if ratio < most / 3:
            break
        try:
            found = _try(wish, ratio, 1, whole=True)
        except TooSmall as small:
            raise _small(wish, ratio, small) from None
        if found:
            return _finished(wish, ratio, *found, fit=True)
    raise NetError(f"The {wish.solid.title} does not fit on one sheet.", "Write scale: auto.", "scale")


def _asked(wish: _Wish, ratio: float) -> NetSheets:
    try:
        found = _try(wish, ratio, wish.most, whole=False)
    except TooSmall as small:
        raise _small(wish, ratio, small) from None
    if found:
        return _finished(wish, ratio, *found)
    better = _lower(wish, ratio)
    raise NetError(
        f"At {scale_words(ratio)} the {wish.solid.title} needs more than {wish.most} sheets.",
        f"Write scale: {scale_words(better).replace(' size', '')}." if better else "Write scale: fit.",
        "scale",
    )


def _lower(wish: _Wish, ratio: float) -> float | None:
    """The largest standard scale below a ratio that needs no more sheets than allowed."""
    for lower in standard_scales(ratio * 0.999):
        try:
            if _try(wish, lower, wish.most, whole=False):
                return lower
        except TooSmall:
            return None
    return None


def _small(wish: _Wish, ratio: float, small: TooSmall) -> NetError:
    message = small.message
    for larger in larger_scales(ratio * min(small.factor, 20.0) * 0.8):
        try:
            if _try(wish, larger, wish.most, whole=False):
                return NetError(
                    f"At {scale_words(ratio)}: {message}",
                    f"Write scale: {scale_words(larger).replace(' size', '')}.",
                    "scale",
                )
            break
        except TooSmall:
            if larger > ratio * 100:
                break
    return NetError(f"At {scale_words(ratio)}: {message}", "Choose a simpler solid, or larger paper.", "scale")


def _try(wish: _Wish, ratio: float, most: int, whole: bool) -> tuple[Net, list[Spot]] | None:
    """The net at a scale and a place for each of its pieces, on as few sheets as possible.

    With `whole` no piece may be split or tiled to fit. None if it needs more sheets than `most`.
    """
    solid = wish.solid.scaled(ratio, lid_allowance(wish.rule.card))
    if paper_area(solid, wish.rule.card) > most * wish.width * wish.height:
        return None
    work = Unfolding(solid, wish.rule, wish.area)
    best: tuple[Net, list[Spot]] | None = None
    for net in work.nets():
        best = _better(best, drilled(net, wish.holes), wish, most)
        if best and (_count(best[1]) == 1 or len(net.parts) > 1):
            break
    if best or whole:
        return best
    for net in split_nets(work):
        best = _better(best, tiled(drilled(net, wish.holes), wish.area), wish, most)
    return best


def _better(best: tuple[Net, list[Spot]] | None, net: Net, wish: _Wish, most: int) -> tuple[Net, list[Spot]] | None:
    """The net packed, if that takes fewer sheets than the best so far."""
    spots = pack(net.parts, wish.width, wish.height, most)
    return (net, spots) if spots and (best is None or _count(spots) < _count(best[1])) else best


def _count(spots: Sequence[Spot]) -> int:
    return 1 + max(s.sheet for s in spots)


def _finished(wish: _Wish, ratio: float, net: Net, spots: list[Spot], fit: bool = False) -> NetSheets:
    for i, spot in enumerate(spots):
        net = net.moved(i, spot.move)
    sheets = tuple(_sheet(net, spots, s) for s in range(_count(spots)))
    sizes = tuple(
        Size(name, value, value * ratio if dimension == "length" else value, dimension)
        for name, value, dimension in wish.solid.sizes
    )
    lines = tuple(_line(size, ratio) for size in sizes)
    return NetSheets(
        scale_words(ratio, fit), ratio, sheets, sizes, lines, net.stages, net.cautions, _materials(net, wish), net
    )


def _line(size: Size, ratio: float) -> str:
    if size.dimension == "count":
        return f"{size.name}: {size.real:g}"
    if size.dimension == "angle":
        return f"{size.name}: {size.real:g}°"
    if abs(ratio - 1) < 1e-9:
        return f"{size.name}: {real_length(size.real)}"
    return f"{size.name}: {real_length(size.real)} (on the model {size.model:.3g} mm)"


def _materials(net: Net, wish: _Wish) -> tuple[str, ...]:
    glue = ("glue stick or white glue",) if net.joints or net.solid.curved else ()
    folds = any(p.folds for p in net.parts)
    tools = ("ruler and a blunt point for scoring",) if folds else ()
    strings = any(not h.mark_only and not h.snip for p in net.parts for h in p.holes)
    holes = ("hole punch or pricker",) if strings else ()
    return (f"card about {wish.rule.card:g} mm thick", "scissors", *tools, *glue, *holes)


def _sheet(net: Net, spots: Sequence[Spot], number: int) -> NetSheet:
    mine = [i for i, s in enumerate(spots) if s.sheet == number]
    meets: dict[tuple[int, str], tuple[Point, ...]] = {}
    for j in net.joints:
        if j.edge.part in mine and j.tab.part in mine:
            meets[j.tab.part, j.letter] = j.edge.points
    parts = [net.parts[i] for i in mine]
    tabs = tuple(
        replace(t, edge=meets.get((i, t.letter), ())) for i, p in zip(mine, parts, strict=True) for t in p.tabs
    )
    return NetSheet(
        tuple(f for p in parts for f in p.faces),
        tuple(f for p in parts for f in p.folds),
        tuple(c for p in parts for c in p.cuts),
        tabs,
        tuple(replace(x, turn_deg=_readable(x.turn_deg)) for p in parts for x in p.letters),
        tuple(s for p in parts for s in p.scores),
        tuple(h for p in parts for h in p.holes),
        tuple(o for p in parts for o in p.overlaps),
        tuple(s for p in parts for s in p.lays),
        tuple(mine),
    )


def _readable(turn_deg: float) -> float:
    """The same slant, the letter the right way up for a reader of the sheet."""
    turn_deg = (turn_deg + 180) % 360 - 180
    if -90 < turn_deg <= 90:
        return turn_deg
    return turn_deg - 180 if turn_deg > 0 else turn_deg + 180
