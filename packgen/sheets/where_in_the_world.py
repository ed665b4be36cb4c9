"""Where in the world: a map with where the artist lived and where the works hang, to colour, or to mark by degrees."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist
from typing import Any

from packgen.page.artwork import Box
from packgen.page.blocks import Block, Bullets, Lines, Prose, Stack, draw_stack, gap_of
from packgen.page.desk import Desk, Laid, Option, Paint, Sheet
from packgen.page.frame import Head
from packgen.page.map_inset import TELLABLE, Inset, draw_inset, inset_for
from packgen.page.maps import BAND, Marked, draw_map, labels_for, mark_places, north, scale_bar
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
_EDGE = (13.0, 7.2)  # mm, for the names of degrees at the left and at the foot, the band between them and the map
_FOOT = 13.5  # mm under the map, for its scale
_SAME = 5.0  # km; places nearer to each other are one
_HOME = 30.0  # km; home is shown if it is so far from every other place
_FLAT = 90.0  # degrees of longitude; on a wider map a ruler misleads
_MOST = 10
_LOWEST = 70.0  # mm; a map with less room than this has a page of its own
_LINES = ((3, 100.0), (2, 75.0), (1, 0.0))  # so many lines to an answer if the map is still so high, in mm


@dataclass(frozen=True, slots=True)
class _Map:
    """A map, the words over it and under it, the room its edges take, and the height there was for it."""

    view: MapView
    over: tuple[Block, ...]
    under: tuple[Block, ...]
    left: float
    foot: float
    room: float

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in mm with the names of degrees, the scale and all."""
        band = BAND if self.left else 0.0
        return self.view.width + self.left + band, self.view.height + self.foot + band


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The map with what to do on it; the older have a table of degrees and distances with it."""
    places = _places(desk)
    if not any(place.kind != "home" for place in places):
        return ()
    form = str(desk.option("form") or _FORM[desk.level])
    head = desk.head(desk.say("title"), desk.say("subject"), "map")
    made = _map_for(desk, head, places, form)
    at = desk
    if form == "named" and _is_world(made.view):
        at = sideways(desk)  # nothing but the map is on it, and that is wide
        made = _map_for(at, head, places, form, asks=False)
    elif form == "blank" and made.room < _LOWEST:
        return (Laid("where-in-the-world", SHEET.title, _apart(desk, head, places), week=desk.item.week),)
    page = at.free_page(_page(at, made, places, form), head, name=SHEET.title)
    return (Laid("where-in-the-world", SHEET.title, (page,) if at is desk else upright((page,)),
                 week=desk.item.week),)  # fmt: skip


def _apart(desk: Desk, head: Head, places: Sequence[Marked]) -> tuple[Page, ...]:
    """The map sideways on a page of its own, and on the next the table and the questions: too many for one page."""
    at = sideways(desk)
    made = _map_for(at, head, places, "blank", asks=False)
    map_page = at.free_page(_page(at, made, places, "blank"), head, name=SHEET.title, count=2)
    under = _under(desk, "blank", places, made.view, 2)
    return (*upright((map_page,)), *desk.pages(head, under, name=SHEET.title, before=1))


def _is_world(view: MapView) -> bool:
    return view.width / (view.per_degree * view.squeeze) >= 359.0


def _places(desk: Desk) -> list[Marked]:
    """Where the artist lived, where each work hangs, and home if it is elsewhere; each place once."""
    found: list[Marked] = []

    def add(spot: Spot | None, kind: str, name: str, title: str = "") -> None:
        if spot is None or spot.lat is None or spot.lon is None or len(found) >= _MOST:
            return
        at = (spot.lat, spot.lon)
        if all(km_between(at, (p.lat, p.lon)) > (_HOME if kind == "home" else _SAME) for p in found):
            found.append(Marked(name, spot.lat, spot.lon, kind, title))

    place = desk.study.place
    add(place, "life", str(place.name) if place else "")
    for work in desk.study.works:
        if work.held_at:
            add(work.held_at, "work", str(work.held_at.name or work.held or work.title), str(work.title))
    add(desk.family.place, "home", desk.say("home"))
    return found


def _inset(desk: Desk, places: Sequence[Marked], view: MapView) -> Inset | None:
    """The small map of places that lie too near each other; the youngest do without."""
    return None if desk.level == "first" else inset_for(view, places)


def _facts(desk: Desk, places: Sequence[Marked], view: MapView) -> dict[str, Any]:
    """What the words depend on: what kinds of places there are, and which are far enough from the first to measure.

    `far` are those places but home, `gone` the work at the farthest of them, `to` those places by name with home last,
    `ways` their number, `goal` the farthest; `near` are places too near the first to measure, and `inset` those of
    them that a small map shows. `globe` is True if only a globe shows the way.
    """
    kinds = [place.kind for place in places]
    start, *others = places
    apart = [(p, dist(_at(view, start), _at(view, p))) for p in others] if start.kind == "life" else []
    ways = [p for p, way in apart if way >= TELLABLE]
    works = [p for p in ways if p.kind == "work"]
    goal = max(works or ways, key=lambda p: km_between((p.lat, p.lon), (start.lat, start.lon)), default=None)
    made = _inset(desk, places, view)
    shown = made.places if made else ()
    return {
        "lived": "life" in kinds, "works": kinds.count("work"), "home": "home" in kinds, "start": start.name,
        "far": [p.name for p in works], "gone": goal.title if goal else "", "ways": len(ways),
        "to": [_called(desk, p) for p in ways], "goal": _called(desk, goal) if goal else "",
        "near": [_called(desk, p) for p, way in apart if way < TELLABLE], "inset": [p.name for p in shown],
        "frames": any(p.kind == "work" and (p in shown or p in works or "life" not in kinds) for p in places),
        "way_home": any(p.kind == "home" for p in ways),
        "globe": bool(ways) and view.width / (view.per_degree * view.squeeze) > _FLAT,
        "division": view.division,
    }  # fmt: skip


def _at(view: MapView, place: Marked) -> tuple[float, float]:
    return view.place((place.lat, place.lon))


def _called(desk: Desk, place: Marked) -> str:
    """A place as a sentence names it: "your home"."""
    return desk.say("your_home") if place.kind == "home" else place.name


# What to do


def _over(desk: Desk, form: str, facts: dict[str, Any]) -> tuple[Block, ...]:
    marker = "ring" if desk.level in ("first", "younger") else "box"
    return (Bullets(desk.say_lines(f"steps_{form}", **facts), marker, "body", spread=0.12),)


def _under(desk: Desk, form: str, places: Sequence[Marked], view: MapView, lines: int) -> tuple[Block, ...]:
    """The table of degrees for a blank map, and what to write."""
    facts = _facts(desk, places, view)
    asks = [
        Stack((Prose(ask, "strong", tight=True), Lines(lines, 10, gap=0.3)))
        for ask in desk.say_lines(f"asks_{form}", **facts)
    ]
    if form == "blank":
        return (_table(desk, places, view, facts), *asks)
    return tuple(asks)


def _table(desk: Desk, places: Sequence[Marked], view: MapView, facts: dict[str, Any]) -> Block:
    """Each place with its degrees as exact as they can be set, and a cell for how far it is, measured on the map.

    Places that come to the same degrees are one. A place too near to be measured is said to be.
    """
    distances = bool(facts["ways"] or set(facts["near"]) & set(facts["inset"])) and not facts["globe"]
    columns = [Column(desk.say("place"), 0.4, names=True), Column(desk.say("latitude"), 0.18, align="right"),
               Column(desk.say("longitude"), 0.18, align="right")]  # fmt: skip
    if distances:
        unit = "miles" if desk.family.units == "customary" else "km"
        columns.append(Column(desk.say("distance", place=places[0].name), 0.24, unit=unit))
    names: dict[tuple[str, str], list[str]] = {}
    for place in places:
        at = (_degrees(place.lat, view.exact, "N", "S"), _degrees(place.lon, view.exact, "E", "W"))
        names.setdefault(at, []).append(place.name)
    rows = []
    for k, (at, named) in enumerate(names.items()):
        near = named[0] in facts["near"] and named[0] not in facts["inset"]
        far = "0" if k == 0 else desk.say("too_near") if near else ""
        rows.append((", ".join(named), *at, *((far,) if distances else ())))
    return Table(tuple(columns), tuple(rows), style="small", least=desk.look.ruling.pitch)


def _degrees(value: float, exact: float, above: str, below: str) -> str:
    """Degrees rounded to a multiple of `exact`, which may be 180 at most: '50.5° N', '0°'."""
    rounded = round(value / exact) * exact
    digits = 0 if exact >= 1 else 1
    text = f"{abs(rounded):.{digits}f}°"
    return text if abs(rounded) < 1e-9 or abs(rounded) == 180 else f"{text} {above if rounded > 0 else below}"


# The map


def _map_for(at: Desk, head: Head, places: Sequence[Marked], form: str, *, asks: bool = True) -> _Map:
    """The largest map for the room that words and table leave, and its words, which name the divisions of its edge."""
    left, foot, band = (_EDGE[0], _EDGE[1] + _FOOT, BAND) if form == "blank" else (0.0, _FOOT, 0.0)
    spots = [(p.lat, p.lon) for p in places]
    view = map_for(spots, at.live_width - left - band, at.live_width * 0.7)
    for lines, least in _LINES:
        over = _over(at, form, _facts(at, places, view))
        under = _under(at, form, places, view, lines) if asks else ()
        used = sum(b.measure(at.kit, at.live_width).least + gap_of(at.kit, b) for b in (*over, *under))
        room = at.room(head, 0) - used - foot - band - at.look.gap
        view = map_for(spots, at.live_width - left - band, max(40.0, room))
        if room >= least:
            break
    under = _under(at, form, places, view, lines) if asks else ()
    return _Map(view, _over(at, form, _facts(at, places, view)), under, left, foot, room)


def _page(at: Desk, made: _Map, places: Sequence[Marked], form: str) -> Paint:
    over, under = list(made.over), list(made.under)

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        top = draw_stack(at.kit, pen, over, x, y + height, width, height) - at.look.gap
        wide, high = made.size
        spare = 0.0 if under else max(0.0, top - y - high)
        lowest = top - high - spare / 2
        band = BAND if made.left else 0.0
        left = x + (width - wide) / 2 + made.left
        _map(at, pen, made, Box(left, lowest + made.foot, wide - made.left - band, made.view.height), places, form)
        if under:
            draw_stack(at.kit, pen, under, x, lowest - at.look.gap, width, lowest - at.look.gap - y)

    return paint


def _map(desk: Desk, pen: Pen, made: _Map, box: Box, places: Sequence[Marked], form: str) -> None:
    blank, view = form == "blank", made.view
    size = _MARKER[desk.level]
    inset = _inset(desk, places, view)
    taken = inset.taken(box.x, box.y) if inset else ()
    labels = [] if blank else labels_for(desk, view, box, places, size, taken)
    draw_map(desk, pen, view, box, net=blank, bold=desk.level in ("first", "younger"),
             clear=[label.box for label in labels])  # fmt: skip
    if not blank:
        mark_places(pen, view, box, places, labels, size)
    if inset:
        draw_inset(desk, pen, inset, box.x, box.y, size)
    foot = box.y - (_EDGE[1] if blank else 0.0) - 11.0
    if desk.level != "first":
        scale_bar(desk, pen, view, box.x + 2.0, foot + 0.5, min(60.0, box.width * 0.4))
    north(desk, pen, box.x + box.width - 5.0, foot + 0.5, 7.5)
