"""A work as numbered areas to paint, with a key to mix its own colours; or as tones to shade with a pencil."""

from __future__ import annotations

from bisect import bisect
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.artwork import (
    Box,
    Lining,
    centred,
    draw_line_art,
    drawing_of,
    enough_in,
    frame_of,
    subject_of,
    turns,
    underlay,
)
from packgen.page.blocks import Block, Bullets, Prose, draw_stack, gap_of
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.frame import Head
from packgen.page.look import BLACK, HAIR, MIDDLE, RULE, SOFT, THIN
from packgen.page.marks import Ink, Point, Stroke
from packgen.page.pen import Pen
from packgen.page.sideways import sideways, upright
from packgen.page.text import fit, wrap
from packgen.pictures.colour_names import ColourName, colour_name
from packgen.pictures.colours import Colour
from packgen.pictures.line_art import LineArt, Region, numbered, tone_shapes
from packgen.pictures.load import aspect
from packgen.pictures.mixing import PAINTS, mix_for
from packgen.reading.models import Work

SHEET = Sheet(
    title="Colour by number",
    about="The work as numbered areas with a key to mix its own colours, or as numbered tones to shade.",
    per="work",
    options=(
        Option("form", "", "paint in colours, or shade in tones; left out: as suits the level", ("colours", "tones")),
        Option("colours", "", "how many colours or tones; left out: as suits the level"),
        Option("most", "", "at most this many works"),
        Option("only", "", "only these works, by id or title"),
    ),
)

_FORM = {"first": "colours", "younger": "colours", "older": "colours", "upper": "tones"}
_DETAIL = {"first": 1, "younger": 2, "older": 3, "upper": 3}
_COLOURS = {"first": 5, "younger": 10, "older": 13, "upper": 12}
_TONES = {"first": 3, "younger": 3, "older": 4, "upper": 5}
_MOST_COLOURS, _MOST_TONES = 20, 9
# The em of a number in mm: the largest, and the smallest that is still read with ease (6 pt and more; common practice).
_NUMBER = {"first": (8.0, 4.4), "younger": (5.0, 2.8), "older": (3.6, 2.3), "upper": (3.4, 2.2)}
_ROW = {"first": 12.5, "younger": 10.6, "older": 9.4, "upper": 9.4}
_RIM = 0.1  # mm of a number's box in which a line does not touch its figures
_TIGHT = 0.8  # of the room a number wants, which it may have at the least if no stroke runs through it
_DAB = 1.34  # ems across a dab of paint
_CLEAR = 0.5  # mm between a name's letters that reach below their line and its dabs
_ENTRY = 84.0
_LINES = {
    "first": Lining(0.9, 0.0, swell=0.35, frame=False), "younger": Lining(0.6, 0.1, swell=0.1, frame=False),
    "older": Lining(0.4, 0.25, frame=False), "upper": Lining(0.35, 0.3, frame=False),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Entry:
    """A line of the key."""

    number: int
    colour: Colour
    name: str
    parts: tuple[tuple[str, int], ...] = ()


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The page with the numbered picture and its key."""
    work = desk.item.subject
    assert isinstance(work, Work) and work.image
    if not enough_in(desk, work, SHEET.title):
        return ()
    form = str(desk.option("form") or _FORM[desk.level])
    art = _art(desk, work, form)
    entries = _entries(desk, art, form)
    head = desk.head(desk.say(f"title_{form}"), subject_of(desk, work), "star")
    shape = aspect(work.image)
    turned = sideways(desk)
    wide = [centred(shape, _room(at, head, form, entries, bool(art.ink))).width for at in (desk, turned)]
    at = turned if turns(*wide) else desk

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        foot = draw_stack(desk.kit, pen, _words(at, form, bool(art.ink)), x, y + height, width, height) - at.look.gap
        high = _key_height(at, form, entries)
        box = centred(shape, Box(x, y + high + at.look.gap, width, foot - y - high - at.look.gap), 0.0)
        if form == "colours":
            underlay(at, pen, work, box)
        shown = _areas(at, pen, art, form, box)  # the old numbers, and the new ones without gaps
        room = box.y - at.look.gap - y
        high = min(room, high * 1.35)
        told = tuple(replace(entry, number=shown[entry.number]) for entry in entries if entry.number in shown)
        _key(at, pen, form, told, Box(x, y + (room - high) * 0.6, width, high))

    page = at.free_page(paint, head, name=str(work.title))
    pages = upright((page,)) if at is turned else (page,)
    title = f"{SHEET.title}: {work.title}"
    return (Laid("colour-by-number", title, pages, week=desk.item.week, colour=form == "colours"),)


def _art(desk: Desk, work: Work, form: str) -> LineArt:
    assert work.image
    if form == "tones":
        count = desk.count("colours", _TONES[desk.level])
        tones = min(max(2, count), _MOST_TONES)
        return tone_shapes(desk.store, work.image, _DETAIL[desk.level], tones, drawing_of(work))
    count = desk.count("colours", _COLOURS[desk.level])
    colours = min(max(2, count), _MOST_COLOURS)
    return numbered(desk.store, work.image, _DETAIL[desk.level], colours, drawing_of(work))


def _words(desk: Desk, form: str, filled: bool) -> list[Block]:
    steps = desk.say_lines(f"steps_{form}", colour=desk.family.printer.colour, filled=filled)
    marker = "ring" if desk.level in ("first", "younger") else "box"
    return [Bullets(steps, marker, "body", spread=0.12)] if len(steps) > 1 else [Prose(steps[0], "body")]


def _room(at: Desk, head: Head, form: str, entries: tuple[_Entry, ...], filled: bool) -> Box:
    blocks = _words(at, form, filled)
    words = sum(b.measure(at.kit, at.live_width).least for b in blocks) + sum(gap_of(at.kit, b) for b in blocks[1:])
    used = words + _key_height(at, form, entries) + 2 * at.look.gap
    return Box(0, 0, at.live_width, at.room(head, 0) - used)


# The picture


def _areas(desk: Desk, pen: Pen, art: LineArt, form: str, box: Box) -> dict[int, int]:
    """Draws the lines, and in every area its number as large as its room allows; what each number shown is now.

    Where the strokes of a drawing would run through it, it stands on white if the area is wide. An area of a drawing
    that has no room for it is printed in its colour.
    """
    placed = art.placed(box.x, box.y, box.width)
    style = desk.look.label.grey(BLACK)
    strokes = sorted((float(step[-2]), float(step[-1])) for steps in placed.ink for step in steps if len(step) > 2)
    numbers: list[tuple[Region, float, bool]] = []
    for region in placed.regions:
        size, fits, inked = _number(desk, region, strokes)
        if placed.ink and not fits:
            pen.path(
                region.steps,
                None,
                _ink(desk, region.colour if form == "colours" else art.palette[region.number - 1]),
                role="painted",
            )
            continue
        numbers.append((region, size, inked))
    used = sorted({region.number for region, *_ in numbers})
    shown = {old: new for new, old in enumerate(used, 1)}
    draw_line_art(pen, art, box, _LINES[desk.level])
    frame_of(pen, box, _LINES[desk.level].width, _LINES[desk.level].ink)
    rise = desk.faces.metrics(style.face).cap / 2
    for region, size, inked in numbers:
        words = str(shown[region.number])
        ground = _ground(desk, region, size)
        if inked:
            pen.box(ground.x - _RIM, ground.y - _RIM, ground.width + 2 * _RIM, ground.height + 2 * _RIM, None, 1.0,
                    role="number-ground")  # fmt: skip
        pen.text(region.label[0], region.label[1] - rise * size, words, style.at(size), align="centre", role="number")
    return shown


def _number(desk: Desk, region: Region, strokes: Sequence[Point]) -> tuple[float, bool, bool]:
    """The em of an area's number in mm, if there is room for it, and if strokes run through its place."""
    largest, least = _NUMBER[desk.level]
    one = _ground(desk, region, 1.0)
    # The number's box must fit the circle of free room: half its diagonal is no longer than the radius.
    room = 1.86 * region.room / (one.width * one.width + one.height * one.height) ** 0.5
    size = max(least, min(largest, room))
    inked = _inked(strokes, _ground(desk, region, size))
    return size, room >= size if inked else room >= size * _TIGHT, inked


def _ground(desk: Desk, region: Region, size: float) -> Box:
    """The box round the figures of an area's number."""
    style = desk.look.label
    wide, rise = desk.faces.width(str(region.number), style.face, size), desk.faces.metrics(style.face).cap * size / 2
    return Box(region.label[0] - wide / 2, region.label[1] - rise, wide, 2 * rise)


def _inked(strokes: Sequence[Point], box: Box) -> bool:
    """True if a stroke's edge, as sorted points that lie far closer than a box is wide, is in a box, its rim apart."""
    low, high = box.y + _RIM, box.y + box.height - _RIM
    first = bisect(strokes, (box.x + _RIM, 0.0))
    last = bisect(strokes, (box.x + box.width - _RIM, 0.0))
    return any(low < y < high for _, y in strokes[first:last])


def _ink(desk: Desk, colour: Colour) -> Ink:
    """A colour as it is printed: a grey if the printer has no colours (luma of ITU-R BT.601)."""
    if desk.family.printer.colour:
        return colour
    return 0.299 * colour[0] + 0.587 * colour[1] + 0.114 * colour[2]


# The key


def _entries(desk: Desk, art: LineArt, form: str) -> tuple[_Entry, ...]:
    """The key's lines: the paints that some area has."""
    used = sorted({region.number for region in art.regions})
    palette = [art.palette[n - 1] for n in used]
    if form == "tones":
        return tuple(_Entry(n, colour, "") for n, colour in zip(used, palette, strict=True))
    names = _names(desk, [colour_name(colour) for colour in palette])
    return tuple(
        _Entry(n, colour, name, mix_for(colour).parts) for n, colour, name in zip(used, palette, names, strict=True)
    )


def _names(desk: Desk, found: list[ColourName]) -> list[str]:
    """The names in words; of several that are alike each says which it is, from the lightest."""
    words = []
    for k, name in enumerate(found):
        same = found.count(name)
        place = found[: k + 1].count(name)
        words.append(desk.say("colour", hue=name.hue, shade=name.shade, place=place, same=same))
    return words


def _columns(desk: Desk, form: str, entries: tuple[_Entry, ...]) -> int:
    if form == "tones":
        return len(entries)
    return max(1, min(len(entries), int(desk.live_width / _ENTRY)))


def _key_height(desk: Desk, form: str, entries: tuple[_Entry, ...]) -> float:
    if form == "tones":
        return 24.0
    rows = -(-len(entries) // _columns(desk, form, entries))
    return rows * _row(desk) + (desk.look.small.leading + 1.0 if _mixes(desk) else 0.0)


def _row(desk: Desk) -> float:
    """The least height of a line of the key: a name over its dabs, whatever size the child's type has."""
    small = desk.look.small
    return max(_ROW[desk.level], small.leading + _DAB * small.size + _CLEAR + 0.6)


def _mixes(desk: Desk) -> bool:
    """True if the key tells how to mix; the youngest are handed their colours."""
    return desk.level != "first"


def _key(desk: Desk, pen: Pen, form: str, entries: tuple[_Entry, ...], box: Box) -> None:
    if form == "tones":
        _tone_key(desk, pen, entries, box)
        return
    columns = _columns(desk, form, entries)
    rows = -(-len(entries) // columns)
    style = desk.look.small.grey(SOFT)
    top, wide = box.y + box.height, box.width / columns
    row = (box.height - (style.leading + 1.0 if _mixes(desk) else 0.0)) / rows
    for k, entry in enumerate(entries):
        x, y = box.x + (k // rows) * wide, top - (k % rows + 1) * row
        _line(desk, pen, entry, Box(x, y, wide - 3.0, row))
    if not _mixes(desk):
        return
    legend = desk.say("paints", letters={name: desk.say("letter", paint=name) for name in PAINTS})
    pen.lines(box.x, box.y + style.leading, wrap(desk.faces, legend, style, box.width)[:1], style)


def _line(desk: Desk, pen: Pen, entry: _Entry, box: Box) -> None:
    """One colour: its number, a printed patch, an empty one to try it in, its name and the paints it is mixed from."""
    high = min(box.height * 0.76, 10.5)
    middle = box.y + box.height / 2
    label = desk.look.label.at(min(desk.look.label.size, high * 0.55))
    drop = desk.faces.metrics(label.face).cap * label.size / 2
    pen.ring(box.x + high / 2, middle, high / 2, Stroke(THIN, 0.2), role="key")
    pen.text(box.x + high / 2, middle - drop, str(entry.number), label, align="centre", role="key-number")
    x = box.x + high + 1.5
    for fill in (_ink(desk, entry.colour), None):
        pen.box(x, middle - high / 2, high * 1.2, high, Stroke(HAIR, RULE), fill, role="patch")
        x += high * 1.2 + 1.2
    room = box.x + box.width - x
    style = desk.look.small
    if not _mixes(desk):
        pen.lines(x, middle + style.leading / 2, (entry.name,), style)
        return
    across = _DAB * style.size
    top = middle + (style.leading + _CLEAR + across) / 2
    name = fit(desk.faces, entry.name, style, room, style.leading, style.size * 0.98)
    pen.lines(x, top, name.lines[:1], style)
    _mix(desk, pen, entry.parts, Box(x, top - style.leading - _CLEAR - across, room, across))


def _mix(desk: Desk, pen: Pen, parts: tuple[tuple[str, int], ...], box: Box) -> None:
    """The paints of a mix: how many parts, and a dab of each."""
    across = box.height
    style = desk.look.label.at(desk.look.small.size)
    drop = desk.faces.metrics(style.face).cap * style.size / 2
    x, middle = box.x, box.y + box.height / 2
    for paint, count in parts:
        wide = pen.text(x, middle - drop, str(count), style)
        _dab(desk, pen, paint, x + wide + 0.4 + across / 2, middle, across)
        x += wide + across + 1.6


def _dab(desk: Desk, pen: Pen, paint: str, x: float, y: float, across: float) -> None:
    """A part of paint: a ring in its colour round its letter, so that it can be told without colours too."""
    ring = Stroke(across * 0.14, PAINTS[paint])
    if paint == "white" or not desk.family.printer.colour:
        ring = Stroke(HAIR, RULE)
    pen.ring(x, y, across * 0.43, ring, 1.0, role="dab")
    style = desk.look.small
    drop = desk.faces.metrics(style.face).cap * style.size / 2
    pen.text(x, y - drop, desk.say("letter", paint=paint), style, align="centre", role="ornament")


def _tone_key(desk: Desk, pen: Pen, entries: tuple[_Entry, ...], box: Box) -> None:
    """A strip of tones, and under each an empty box to match it in with the pencil."""
    wide = min(26.0, box.width / len(entries))
    left = box.x + (box.width - wide * len(entries)) / 2
    high = (box.height - 5.0) / 2
    style = desk.look.label
    for k, entry in enumerate(entries):
        x = left + k * wide
        pen.text(x + wide / 2, box.y + box.height - 3.6, str(entry.number), style, align="centre", role="key-number")
        pen.box(x, box.y + high, wide, high, Stroke(HAIR, RULE), entry.colour[0], role="tone")
        pen.box(x, box.y, wide, high, Stroke(MIDDLE, 0.3), role="drawbox")
