"""Breaking blocks into pages: nothing lost, no page left empty that could be filled, headings kept with their text."""

from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import kit

from packgen.page.blocks import Block, Break, DrawBox, Prose, Space, heading
from packgen.page.flow import paginate

ROOM = 200.0


def boxes(heights: list[float], grows: bool = False) -> list[Block]:
    return [DrawBox(str(k), least=h, most=1e6 if grows else h, gap=0.0) for k, h in enumerate(heights)]


@given(st.lists(st.floats(5, 150), min_size=1, max_size=25), st.booleans())
@settings(max_examples=60, deadline=None)
def test_every_block_is_on_a_page_in_order(heights: list[float], grows: bool) -> None:
    blocks = boxes(heights, grows)
    pages = paginate(kit("older"), blocks, 100.0, lambda k: ROOM)
    assert [block for page in pages for block in page] == blocks
    for page in pages:
        assert sum(block.measure(kit("older"), 100.0).least for block in page) <= ROOM + 1e-6


def test_blocks_that_all_grow_are_shared_out_evenly() -> None:
    pages = paginate(kit("older"), boxes([30.0] * 8, grows=True), 100.0, lambda k: ROOM)
    assert [len(page) for page in pages] == [4, 4]


def test_a_page_that_cannot_grow_is_filled_before_one_that_can() -> None:
    blocks: list[Block] = [Space(40.0), Space(40.0), Space(40.0), Space(40.0), DrawBox("draw", least=60.0)]
    pages = paginate(kit("older"), blocks, 100.0, lambda k: ROOM)
    assert [len(page) for page in pages] == [4, 1]


def test_a_heading_is_not_left_behind() -> None:
    blocks: list[Block] = [Space(190.0), heading("What came next", gap=0.0), Prose("A long story. " * 40)]
    pages = paginate(kit("older"), blocks, 100.0, lambda k: ROOM)
    assert isinstance(pages[1][0], Prose) and pages[1][0].text == "What came next"


def test_a_break_begins_a_new_page() -> None:
    pages = paginate(kit("older"), [Space(10.0), Break(), Space(10.0)], 100.0, lambda k: ROOM)
    assert [len(page) for page in pages] == [1, 1]
