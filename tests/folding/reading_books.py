"""How a parent would make each of packgen's books from printed sheets, typed out step by step, and what they then read.

Used on planned slots and on finished PDFs alike: both give marks.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

from folding_hands import Mark, Table, behind, line_at, strip

Line = tuple[float, float, float, float, str]
UP, DOWN = (0, 1), (0, -1)


class Book:
    """Printed sheets, ready to be folded: their size, their marks, and the lines on each sheet's front."""

    def __init__(
        self, width: float, height: float, sides: str, marks: list[Mark], lines: list[list[Line]], *,
        signatures: tuple[int, ...] = (), panels: int = 0, flap: float = 0.0,
    ) -> None:  # fmt: skip
        self.width, self.height, self.sides, self.marks, self.lines = width, height, sides, marks, lines
        self.signatures, self.panels, self.flap = signatures, panels, flap

    def table(self) -> Table:
        return Table(self.width, self.height, self.marks, self.sides)


Read = list[tuple[int, tuple[int, int]]]


def one_pile(table: Table) -> Read:
    (pile,) = table.piles().values()
    return table.leaf_through(pile)


def read_half(book: Book) -> Read:
    table = book.table()
    table.lay([0], back_up=True)
    table.fold("left", book.width / 2)
    return one_pile(table)


def read_stitched(book: Book) -> Read:
    read: Read = []
    first = 0
    for count in book.signatures:
        table = book.table()
        table.lay(range(first, first + count), back_up=True)
        table.fold("left", book.width / 2)
        read += one_pile(table)
        first += count
    return read


def read_pocket(book: Book) -> Read:
    read: Read = []
    first = 0
    for count in book.signatures:
        table = book.table()
        table.lay(range(first, first + count), back_up=True)
        table.cut_and_put_on_top("top", book.height / 2, (0.0, -book.height / 2))
        table.fold("left", book.width / 2)
        read += one_pile(table)
        first += count
    return read


def read_quarto(book: Book) -> Read:
    table = book.table()
    table.lay([0], back_up=True)
    table.fold("top", book.height / 2)
    table.fold("left", book.width / 2)
    return one_pile(table)


def read_octavo(book: Book) -> Read:
    """J. B. Nicholson, A Manual of the Art of Bookbinding (1856), "Folding": inner side up, page 1's corner down at the
    lower left; the right half over, the top brought down, then 8 and 9 together."""
    table = book.table()
    table.lay([0], back_up=True)
    table.fold("right", book.width / 2)
    table.fold("top", book.height / 2)
    table.fold("left", book.width / 4)
    return one_pile(table)


def read_flaps(book: Book) -> Read:
    """Flap by flap: outside, then lifted (its underside must stand upright when it points away), then the box."""
    table = book.table()
    table.lay([0], back_up=True)
    table.fold("top", book.height / 2)
    for flap in range(1, book.panels):
        table.cut("left", flap * book.width / book.panels)
    read: Read = []
    for _, pile in sorted(table.piles().items()):
        upper, lower = pile
        read += table.printed(upper, upper=True)
        read += [(number, (-hx, -hy)) for number, (hx, hy) in table.printed(upper, upper=False)]
        read += table.printed(lower, upper=True)
        assert table.printed(lower, upper=False) == []
    return read


def read_gate(book: Book) -> Read:
    flat = book.table()
    flat.lay([0], back_up=True)
    inside = flat.printed(flat.parts[0], upper=True)
    by_place = {mark.number: -mark.x for mark in flat.marks}  # seen from the back, the front's right is left
    inside.sort(key=lambda found: by_place[found[0]])
    table = book.table()
    table.lay([0], back_up=True)
    table.fold("left", book.width / 4)
    table.fold("right", book.width * 3 / 4)
    parts = sorted(table.parts, key=lambda part: (-part.level, part.place()))
    gates, middle = sorted(parts[:2], key=lambda part: part.place()), parts[2]
    read = [found for gate in gates for found in table.printed(gate, upper=True)]
    return [*read, *inside, *table.printed(middle, upper=False)]


def read_concertina(book: Book) -> Read:
    """Glue the sheets into one long strip, fold it forth and back, read the fronts down the pile and the backs up."""
    one = book.width - book.flap
    long = Table(one * len(book.lines), book.height, [], book.sides)
    for mark in book.marks:
        seen = mark if mark.side == "front" else behind(mark, book.width, book.height, book.sides)
        long.marks.append(Mark(mark.number, 0, mark.side, seen.x + mark.sheet * one, seen.y, seen.head))
    long.lay([0])
    panel = one / book.panels
    for fold in range(book.panels * len(book.lines) - 1, 0, -1):
        kind = "mountain" if fold % 2 else "valley"
        sheet, here = divmod(fold, book.panels)
        lines = book.lines[sheet] if here else book.lines[sheet - 1]
        assert line_at(lines, True, here * panel if here else one, book.height / 2) == kind, fold
        long.fold("right", fold * panel, under=kind == "mountain")
    (pile,) = long.piles().values()
    read: Read = []
    for wanted, order in (("front", pile), ("back", pile[::-1])):
        for part in order:
            front_up = part.sx * part.sy > 0
            read += long.printed(part, upper=(wanted == "front") == front_up)
    return read


def read_slit(book: Book) -> Read:
    """Close the ring of panels; the printed faces must look out of the book, up and down in turn."""
    return _read_strip(book, 4, 2, ring=True)


def read_meander(book: Book) -> Read:
    """Close the strip; the first printed face looks down, pasted inside the front cover."""
    return _read_strip(book, 4, 4, ring=False)


def snapped(mark: Mark, book: Book, across: int, up: int) -> Mark:
    """The mark at the very middle of its panel, for a number read off a printed sheet never stands quite there."""
    w, h = book.width / across, book.height / up
    return replace(mark, x=(int(mark.x / w) + 0.5) * w, y=(int(mark.y / h) + 0.5) * h)


def _read_strip(book: Book, across: int, up: int, *, ring: bool) -> Read:
    marks = [snapped(mark, book, across, up) for mark in sorted(book.marks, key=lambda mark: mark.number)]
    lines = book.lines[0]
    told = strip(marks, lines, across, up, book.width, book.height)
    assert len({tuple(round(edge, 3) for edge in box) for box, _, _ in told}) == 1
    faces = [face for _, _, face in told]
    assert all(one != other for one, other in pairwise(faces))
    for number, (one, other) in enumerate(pairwise(marks)):
        upright = abs(one.y - other.y) < 1.0
        line = (one.x + other.x) / 2 if upright else (one.y + other.y) / 2
        back_to_back = number % 2 == (0 if ring else 1)
        assert line_at(lines, upright, line, one.y if upright else one.x) == ("mountain" if back_to_back else "valley")
    if ring:
        first, last = marks[0], marks[-1]
        assert line_at(lines, True, (first.x + last.x) / 2, first.y) == "valley"
        assert last.x < first.x  # the spine is at the left of the cover
    return [(mark.number, head) for mark, (_, head, _) in zip(marks, told, strict=True)]


READERS: dict[str, Callable[[Book], Read]] = {
    "half": read_half,
    "stitched": read_stitched,
    "pocket": read_pocket,
    "quarto": read_quarto,
    "octavo": read_octavo,
    "slit": read_slit,
    "meander": read_meander,
    "concertina": read_concertina,
    "flaps": read_flaps,
    "gate": read_gate,
}
