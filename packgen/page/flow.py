"""Breaking a stack of blocks into pages, evenly: no last page left nearly empty, no heading left behind."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from packgen.page.blocks import Block, Break, Kit, gap_of

# A last page filled less than this is rebalanced with the ones before it.
_SHORT = 0.55


class DoesNotFit(Exception):
    """A block is higher than a whole page and cannot be parted."""

    def __init__(self, block: Block, needed: float, room: float) -> None:
        self.block, self.needed, self.room = block, needed, room
        super().__init__(f"a block {needed:.0f} mm high does not fit a page of {room:.0f} mm")


def paginate(kit: Kit, blocks: Sequence[Block], width: float, room: Callable[[int], float]) -> list[list[Block]]:
    """The blocks of each page. `room(k)` is the height of page k's live area (k from 0).

    Raises DoesNotFit if one block alone is higher than a page.
    """
    pages: list[list[Block]] = []
    for chunk in _chunks(blocks):

        def later(k: int, offset: int = len(pages)) -> float:
            return room(k + offset)

        pages.extend(_even(kit, chunk, width, later))
    return pages


def _chunks(blocks: Sequence[Block]) -> list[list[Block]]:
    """The blocks between forced page breaks."""
    chunks: list[list[Block]] = [[]]
    for block in blocks:
        if isinstance(block, Break):
            chunks.append([])
        else:
            chunks[-1].append(block)
    return [chunk for chunk in chunks if chunk]


def _even(kit: Kit, blocks: list[Block], width: float, room: Callable[[int], float]) -> list[list[Block]]:
    pages = _greedy(kit, blocks, width, room)
    count = len(pages)
    if count < 2 or _used(kit, pages[-1], width) > _SHORT * room(count - 1):
        return pages
    # Lower and lower pages fill evenly; of those that need no more pages, take the ones that leave least of any empty.
    best, score = pages, _emptiest(kit, pages, width, room)
    for step in range(1, 10):
        part = 1.0 - 0.07 * step

        def less(k: int, part: float = part) -> float:
            return room(k) * part

        try:
            tried = _greedy(kit, blocks, width, less, room)
        except DoesNotFit:
            break
        if len(tried) > count:
            break
        fills = _emptiest(kit, tried, width, room)
        if fills >= score - 0.02:
            best, score = tried, fills
    return best


def _emptiest(kit: Kit, pages: Sequence[Sequence[Block]], width: float, room: Callable[[int], float]) -> float:
    """How much of its page the emptiest of some pages can fill when all its blocks grow, at most 1."""
    return min(min(1.0, _used(kit, page, width, grown=True) / room(k)) for k, page in enumerate(pages))


def _used(kit: Kit, page: Sequence[Block], width: float, grown: bool = False) -> float:
    """The height the blocks of a page take at their least, or grown as high as they may be."""
    spans = [block.measure(kit, width) for block in page]
    return sum(s.most if grown else s.least for s in spans) + sum(gap_of(kit, b) for b in page[1:])


def _greedy(kit: Kit, blocks: Sequence[Block], width: float, room: Callable[[int], float],
            full: Callable[[int], float] | None = None) -> list[list[Block]]:  # fmt: skip
    """Fill page after page. `full` is the height that may be used by a block that has a page to itself."""
    full = full or room
    pages: list[list[Block]] = []
    current: list[Block] = []
    used = 0.0
    waiting = list(blocks)
    while waiting:
        block = waiting.pop(0)
        span = block.measure(kit, width)
        gap = gap_of(kit, block) if current else 0.0
        left = room(len(pages)) - used - gap
        if span.least <= left + 1e-6:
            current.append(block)
            used += gap + span.least
            continue
        parts = block.split(kit, width, left)
        if parts:
            current.append(parts[0])
            waiting.insert(0, parts[1])
        elif not current:
            if span.least > full(len(pages)) + 1e-6:
                parts = block.split(kit, width, full(len(pages)))
                if not parts:
                    raise DoesNotFit(block, span.least, full(len(pages)))
                waiting.insert(0, parts[1])
                block = parts[0]
            current.append(block)
        else:
            back: list[Block] = [block]
            while len(current) > 1 and current[-1].tight:
                back.insert(0, current.pop())
            waiting[:0] = back
        pages.append(current)
        current, used = [], 0.0
    if current:
        pages.append(current)
    return pages
