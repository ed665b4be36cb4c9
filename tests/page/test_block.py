"""Sharing a height among blocks: none gets less than it must or more than it may, whole lines stay whole."""

from dataclasses import dataclass

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import kit

from packgen.page.block import Kit, Span, Whole, draw_stack, gap_of, rigid, shares, style_of
from packgen.page.blocks import Lines
from packgen.page.pen import Pen
from packgen.page.text import Style

KIT = kit("older")


@dataclass(frozen=True)
class Lump(Whole):
    """A block of a given span that draws a box as high as it got."""

    span: Span
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return self.span

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        pen.box(x, top - height, width, height, role="lump")


@st.composite
def lumps(draw: st.DrawFn) -> Lump:
    least = draw(st.floats(1, 30))
    if not draw(st.booleans()):
        return Lump(rigid(least))
    step = draw(st.sampled_from([0.0, 7.1, 8.7]))
    steps = draw(st.integers(0, 6))
    most = least + (steps * step if step else draw(st.floats(0, 80)))
    return Lump(Span(least, most, draw(st.floats(0.5, 3)), step))


@given(st.lists(lumps(), min_size=1, max_size=8), st.floats(0, 200))
@settings(max_examples=100, deadline=None)
def test_every_block_gets_between_its_least_and_its_most(blocks: list[Lump], spare: float) -> None:
    gaps = KIT.look.gap * (len(blocks) - 1)
    height = sum(b.span.least for b in blocks) + gaps + spare
    got = shares(KIT, blocks, 100.0, height)
    assert sum(got) + gaps <= height + 1e-6
    for block, high in zip(blocks, got, strict=True):
        assert block.span.least - 1e-6 <= high <= max(block.span.least, block.span.most) + 1e-6
        if block.span.step:
            lines = (high - block.span.least) / block.span.step
            assert lines == pytest.approx(round(lines), abs=1e-6)


@given(st.lists(lumps(), min_size=1, max_size=8), st.floats(0, 200))
@settings(max_examples=60, deadline=None)
def test_nothing_is_left_over_while_a_block_can_take_it(blocks: list[Lump], spare: float) -> None:
    gaps = KIT.look.gap * (len(blocks) - 1)
    height = sum(b.span.least for b in blocks) + gaps + spare
    got = shares(KIT, blocks, 100.0, height)
    left = height - gaps - sum(got)
    for block, high in zip(blocks, got, strict=True):
        room = block.span.most - high
        if block.span.grow and room > 1e-6:
            assert left <= (block.span.step or 1e-6) + 1e-6


def test_blocks_are_stacked_downwards_with_their_gaps() -> None:
    pen = KIT.pen()
    foot = draw_stack(
        KIT, pen, [Lump(rigid(10.0)), Lump(rigid(5.0)), Lump(rigid(5.0), gap=1.0)], 0.0, 100.0, 50.0, 60.0
    )
    assert foot == pytest.approx(100.0 - 10.0 - KIT.look.gap - 5.0 - 1.0 - 5.0)


def test_gaps_loosen_no_more_than_asked() -> None:
    pen = KIT.pen()
    foot = draw_stack(KIT, pen, [Lump(rigid(10.0)), Lump(rigid(10.0))], 0.0, 100.0, 50.0, 80.0, loosen=6.0)
    assert foot == pytest.approx(100.0 - 20.0 - KIT.look.gap - 6.0)


def test_styles_go_by_name_or_are_themselves() -> None:
    own = Style("text", 3.0, 4.0)
    assert style_of(KIT, "body") is KIT.look.body and style_of(KIT, own) is own
    assert gap_of(KIT, Lump(rigid(1.0))) == KIT.look.gap and gap_of(KIT, Lump(rigid(1.0), gap=0.0)) == 0.0


def test_no_block_gets_many_more_lines_than_one_like_it() -> None:
    on = kit("older")
    pitch = on.look.ruling.pitch
    for spare in range(40):
        heights = shares(on, [Lines(2, 9) for _ in range(5)], 100.0, 5 * 2 * pitch + 4 * on.look.gap + spare * 4.0)
        assert max(heights) - min(heights) <= pitch + 1e-6
