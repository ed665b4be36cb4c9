"""Nets on pages: a sheet of card for each sheet of a laid-out net, and what the manifest says of it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from packgen.nets.layout import NetSheet, NetSheets
from packgen.nets.net import Hole
from packgen.nets.tabs import inside
from packgen.page.desk import Desk
from packgen.page.marks import Page, Point
from packgen.page.net_faces import Names, art_of, draw_arts, draw_name
from packgen.page.net_key import (
    HeadWords,
    NetArea,
    card_foot,
    card_head,
    draw_card_head,
    net_area,
    say,
    sizes_words,
)
from packgen.page.net_labels import place_letters
from packgen.page.net_lines import CUT, MOUNTAIN, TAB, VALLEY, draw_letter, draw_lines, draw_strips
from packgen.page.pen import Pen
from packgen.reading.models import FaceArt

__all__ = ["CUT", "MOUNTAIN", "VALLEY", "NetArea", "card_foot", "card_head", "net_area", "net_facts", "net_pages"]


@dataclass(frozen=True, slots=True)
class _Job:
    """A net to draw: its title and the drawings on its faces."""

    title: str
    net: NetSheets
    arts: Mapping[str, FaceArt] = field(default_factory=dict)


def net_pages(desk: Desk, title: str, net: NetSheets, arts: Mapping[str, FaceArt] | None = None) -> tuple[Page, ...]:
    """A page for each sheet of a net, drawn on its printed side. `arts` are drawings by the names of their faces."""
    job = _Job(title, net, arts or {})
    return tuple(_page(desk, job, sheet, number) for number, sheet in enumerate(net.sheets, 1))


def _page(desk: Desk, job: _Job, sheet: NetSheet, number: int) -> Page:
    area = net_area(desk)
    count = len(job.net.sheets)
    pen = desk.kit.pen()
    more = say(desk, "sheet_of", number=number, count=count) if count > 1 else ""
    scale = say(desk, "scale_words", scale=job.net.scale_text, ratio=job.net.ratio)
    sizes = sizes_words(desk, job.net.sizes, job.net.ratio)
    draw_card_head(desk, pen, HeadWords(job.title, scale, more, sizes, job.net.ratio))
    inner = desk.kit.pen()
    _draw(desk, inner, sheet, job)
    pen.lost += inner.lost
    pen.group(inner.marks, (1.0, 0.0, 0.0, 1.0, area.x, area.y))
    card_foot(desk, pen, sheet, count)
    return desk.finish(pen, *desk.paper, job.title)


def _draw(desk: Desk, pen: Pen, sheet: NetSheet, job: _Job) -> None:
    """Draw one sheet: tabs, drawings and names first, the lines over them, the glue letters last."""
    for shape in (*(t.points for t in sheet.tabs), *(o.points for o in sheet.overlaps)):
        pen.polygon(shape, None, TAB, role="tab")
    draw_arts(desk, pen, sheet, job.arts)
    told = frozenset(s.face for s in job.net.stages if s.face and not art_of(job.arts, s.face))
    names = Names(job.net.net.solid, told, bool(job.arts))
    first = names.told_on(desk, sheet)
    letters = place_letters(desk, sheet, [name.spot for name in first])
    taken = [*(name.spot for name in first), *(placed.spot for placed in letters)]
    for name in (*first, *names.others_on(desk, sheet, taken)):
        draw_name(desk, pen, name)
    draw_lines(pen, sheet)
    for placed in letters:
        edge = placed.letter.on == "edge"
        draw_letter(desk, pen, placed, edge and (bool(sheet.scores) or _on_art(sheet, job, placed.spot.at)))
    draw_strips(desk, pen, sheet)


def _on_art(sheet: NetSheet, job: _Job, at: Point) -> bool:
    """True if a place lies on a face that has a drawing."""
    return any(art_of(job.arts, face.name) and inside(at, face.points) for face in sheet.faces)


def net_facts(desk: Desk, title: str, solid: str, net: NetSheets) -> dict[str, Any]:
    """What the manifest says: every line in mm from the page's lower left corner, pages from 1 in the sheet."""
    area = net_area(desk)

    def at(points: Sequence[Point]) -> list[list[float]]:
        return [[round(x + area.x, 4), round(y + area.y, 4)] for x, y in points]

    facts: dict[str, Any] = {"title": title, "solid": solid, "scale": net.scale_text, "ratio": net.ratio}
    pages = list(enumerate(net.sheets, 1))
    facts["faces"] = [{"page": k, "name": f.name, "points_mm": at(f.points)} for k, s in pages for f in s.faces]
    facts["folds"] = [{"page": k, "kind": f.kind, "points_mm": at((f.start, f.end))} for k, s in pages for f in s.folds]
    facts["cuts"] = [{"page": k, "closed": c.closed, "points_mm": at(c.points)} for k, s in pages for c in s.cuts]
    facts["tabs"] = [
        {"page": k, "letter": t.letter, "on": t.on_face, "under": t.under, "points_mm": at(t.points)}
        for k, s in pages
        for t in s.tabs
    ]
    facts["holes"] = [
        {"page": k, "kind": _kind(h), "at_mm": at((h.centre,))[0], "across_mm": round(h.across, 4)}
        for k, s in pages
        for h in s.holes
    ]
    return facts


def _kind(hole: Hole) -> str:
    return "mark" if hole.mark_only else "snip" if hole.snip else "hole"
