"""Where in the world: a map with where the artist lived and where the works hang, to colour, or to mark by degrees."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist

from packgen.page.artwork import Box, turns
from packgen.page.blocks import Block, Bullets, Lines, Prose, Stack, draw_stack, gap_of
from packgen.page.desk import Desk, Laid, Option, Paint, Sheet
from packgen.page.frame import Head
from packgen.page.maps import Marked, draw_map, labels_for, mark_places, north, scale_bar
from packgen.page.marks import Page
from packgen.page.pen import Pen
from packgen.page.sideways import sideways, upright
from packgen.page.table import Column, Table
from packgen.pictures.world import MapView, km_between, map_for
from packgen.reading.models import Spot

SHEET = Sheet(
    title="Where in the world",
    about="A map with where the artist lived and where the works hang: named to colour, or blank to mark by degrees.",
    options=(
        Option("form", "", "places named on the map, or a blank map to mark; left out: as suits the level",
               ("named", "blank")),
    ),
)  # fmt: skip

_FORM = {"first": "named", "younger": "named", "older": "blank", "upper": "blank"}
_MARKER = {"first": 8.0, "younger": 6.0, "older": 4.5, "upper": 4.5}
_EDGE = (13.0, 5.5)  # mm, for the names of degrees at the left and at the foot
_FOOT = 13.5  # mm under the map, for its scale
_SAME = 5.0  # km; places nearer to each other are one
_HOME = 30.0  # km; home is shown if it is so far from every other place
_MEASURED = 8.0  # mm; a shorter way is not worth a ruler
_FLAT = 90.0  # degrees of longitude; on a wider map a ruler misleads
_MOST = 10


@dataclass(frozen=True, slots=True)
class _Frame:
    """A map and the room it takes, with its edges."""

    view: MapView
    left: float
    foot: float

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in mm with the names of degrees, the scale and all."""
        return self.view.width + self.left, self.view.height + self.foot


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The map with what to do on it; the older have a table of degrees and distances with it."""
    places = _places(desk)
    if not any(place.kind != "home" for place in places):
        return ()
    form = str(desk.option("form") or _FORM[desk.level])
    head = desk.head(desk.say("title"), desk.say("subject"), "map")
    reach = _reach(desk, places)
    over, under = _over(desk, form, places, reach), _under(desk, form, places, reach)
    frames = [_frame(at, head, over, [] if at is not desk else under, places, form) for at in (desk, sideways(desk))]
    if turns(frames[0].view.per_degree, frames[1].view.per_degree):
        pages = _turned(desk, head, (over, under), frames[1], places, form)
    else:
        paint = _page(desk, over, under, frames[0], places, form)
        pages = (desk.free_page(paint, head, name=SHEET.title),)
    return (Laid("where-in-the-world", SHEET.title, pages, week=desk.item.week),)


def _places(desk: Desk) -> list[Marked]:
    """Where the artist lived, where each work hangs, and home if it is elsewhere; each place once."""
    found: list[Marked] = []

    def add(spot: Spot | None, kind: str, name: str) -> None:
        if spot is None or spot.lat is None or spot.lon is None or len(found) >= _MOST:
            return
        at = (spot.lat, spot.lon)
        if all(km_between(at, (p.lat, p.lon)) > (_HOME if kind == "home" else _SAME) for p in found):
            found.append(Marked(name, spot.lat, spot.lon, kind))

    place = desk.study.place
    add(place, "life", str(place.name) if place else "")
    for work in desk.study.works:
        if work.held_at:
            add(work.held_at, "work", str(work.held_at.name or work.held or work.title))
    add(desk.family.place, "home", desk.say("home"))
    return found


@dataclass(frozen=True, slots=True)
class _Reach:
    """If some place is `far` enough from the first to be measured, and if so far that only a `globe` shows the way."""

    far: bool
    globe: bool


def _reach(desk: Desk, places: Sequence[Marked]) -> _Reach:
    view = map_for([(p.lat, p.lon) for p in places], desk.live_width, desk.live_width)
    start, *others = (view.place((p.lat, p.lon)) for p in places)
    far = places[0].kind == "life" and any(dist(start, at) >= _MEASURED for at in others)
    return _Reach(far, far and view.width / (view.per_degree * view.squeeze) > _FLAT)


# What to do


def _over(desk: Desk, form: str, places: Sequence[Marked], reach: _Reach) -> list[Block]:
    kinds = [place.kind for place in places]
    values = {"lived": "life" in kinds, "works": kinds.count("work"), "home": "home" in kinds,
              "far": reach.far, "globe": reach.globe}  # fmt: skip
    marker = "ring" if desk.level in ("first", "younger") else "box"
    return [Bullets(desk.say_lines(f"steps_{form}", **values), marker, "body", spread=0.12)]


def _under(desk: Desk, form: str, places: Sequence[Marked], reach: _Reach) -> list[Block]:
    """The table of degrees for a blank map, and what to write."""
    blocks: list[Block] = []
    works = sum(p.kind == "work" for p in places)
    if form == "blank":
        blocks.append(_table(desk, places, reach.far and not reach.globe))
    blocks += [
        Stack((Prose(ask, "strong", tight=True), Lines(1, 10, gap=0.3)))
        for ask in desk.say_lines(f"asks_{form}", works=works, far=reach.far, globe=reach.globe)
    ]
    return blocks


def _table(desk: Desk, places: Sequence[Marked], distances: bool) -> Block:
    """Each place with its degrees, and a cell for how far it is, measured on the map."""
    columns = [Column(desk.say("place"), 0.4, names=True), Column(desk.say("latitude"), 0.18, align="right"),
               Column(desk.say("longitude"), 0.18, align="right")]  # fmt: skip
    if distances:
        unit = "miles" if desk.family.units == "customary" else "km"
        columns.append(Column(desk.say("distance", place=places[0].name), 0.24, unit=unit))
    rows = []
    for place in places:
        cells = [place.name, _degrees(place.lat, "N", "S"), _degrees(place.lon, "E", "W")]
        if distances:
            cells.append("0" if place is places[0] else "")
        rows.append(tuple(cells))
    return Table(tuple(columns), tuple(rows), style="small", least=desk.look.ruling.pitch)


def _degrees(value: float, above: str, below: str) -> str:
    return f"{abs(value):.1f}° {above if value >= 0 else below}"


# The map


def _frame(at: Desk, head: Head, over: Sequence[Block], under: Sequence[Block], places: Sequence[Marked],
           form: str) -> _Frame:  # fmt: skip
    """The largest map for the room that words and table leave."""
    used = sum(b.measure(at.kit, at.live_width).least + gap_of(at.kit, b) for b in (*over, *under))
    left, foot = (_EDGE[0], _EDGE[1] + _FOOT) if form == "blank" else (0.0, _FOOT)
    width, height = at.live_width - left, max(40.0, at.room(head, 0) - used - foot)
    return _Frame(map_for([(p.lat, p.lon) for p in places], width, height), left, foot)


def _page(at: Desk, over: Sequence[Block], under: Sequence[Block], frame: _Frame, places: Sequence[Marked],
          form: str) -> Paint:  # fmt: skip
    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        top = draw_stack(at.kit, pen, list(over), x, y + height, width, height) - at.look.gap
        wide, high = frame.size
        least = sum(b.measure(at.kit, width).least + gap_of(at.kit, b) for b in under)
        spare = max(0.0, top - y - high - least)
        lowest = top - high - (spare / 2 if not under else 0.0)
        box = Box(x + (width - wide) / 2 + frame.left, lowest + frame.foot, frame.view.width, frame.view.height)
        _map(at, pen, frame, box, places, form)
        if under:
            draw_stack(at.kit, pen, list(under), x, lowest - at.look.gap, width, lowest - at.look.gap - y)

    return paint


def _turned(desk: Desk, head: Head, words: tuple[Sequence[Block], Sequence[Block]], frame: _Frame,
            places: Sequence[Marked], form: str) -> tuple[Page, ...]:  # fmt: skip
    """The map on a page of its own, sideways, and what there is to write on the next."""
    over, under = words
    if not any(isinstance(block, Table) for block in under):
        under = ()  # a single question is not worth a page; it is one to talk about
    at = sideways(desk)
    count = 2 if under else 1
    page = at.free_page(_page(at, over, (), frame, places, form), head, name=SHEET.title, number=1, count=count)
    if not under:
        return upright((page,))
    return (*upright((page,)), *desk.pages(head, list(under), name=SHEET.title, before=1))


def _map(desk: Desk, pen: Pen, frame: _Frame, box: Box, places: Sequence[Marked], form: str) -> None:
    blank = form == "blank"
    size = _MARKER[desk.level]
    labels = [] if blank else labels_for(desk, frame.view, box, places, size)
    draw_map(desk, pen, frame.view, box, net=blank, bold=desk.level in ("first", "younger"),
             clear=[label.box for label in labels])  # fmt: skip
    if not blank:
        mark_places(pen, frame.view, box, places, labels, size)
    foot = box.y - (_EDGE[1] if blank else 0.0) - 11.0
    if desk.level != "first":
        scale_bar(desk, pen, frame.view, box.x + 2.0, foot + 0.5, min(60.0, box.width * 0.4))
    north(desk, pen, box.x + box.width - 5.0, foot + 0.5, 7.5)
