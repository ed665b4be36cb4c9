"""Pages laid out sideways: a page of long rows or a wide picture is laid out on the paper turned, then turned back.

The head of a sideways page lies along the paper's left edge, where sheets are bound, and it is read from the right.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from packgen.page.desk import Desk
from packgen.page.marks import Group, Page


def sideways(desk: Desk) -> Desk:
    """The same desk with its paper turned: what is laid out on it must go through `upright`."""
    return replace(desk, paper=(desk.paper[1], desk.paper[0]))


def upright(pages: Sequence[Page]) -> tuple[Page, ...]:
    """Pages laid out sideways as pages of the upright paper."""
    return tuple(
        Page(page.height, page.width, (Group(page.marks, (0.0, 1.0, -1.0, 0.0, page.height, 0.0)),), page.title)
        for page in pages
    )
