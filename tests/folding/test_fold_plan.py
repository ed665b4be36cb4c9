import itertools

import pytest
from folding_hands import Mark
from hypothesis import given, settings
from hypothesis import strategies as st
from reading_books import READERS, UP, Book

from packgen.folding import FoldError, FoldPlan, Slot, plan_fold, schemes
from packgen.folding.slots import Flip

# ISO 216 (A4 210 x 297) and ANSI/ASME Y14.1 (Letter 8.5 x 11 in), in mm.
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
FLIPS: tuple[Flip, ...] = ("two-sided-long-edge", "two-sided-short-edge")
HEADS = {0: (0, 1), 90: (-1, 0), 180: (0, -1), 270: (1, 0)}


def marks_of(plan: FoldPlan) -> list[Mark]:
    return [
        Mark(slot.page, number, side, slot.x + slot.width / 2, slot.y + slot.height / 2, HEADS[slot.rotation_deg])
        for number, sheet in enumerate(plan.sheets)
        for side, slots in (("front", sheet.front), ("back", sheet.back))
        for slot in slots
    ]


def book_of(plan: FoldPlan, marks: list[Mark]) -> Book:
    lines = [[(p.x1, p.y1, p.x2, p.y2, p.kind) for p in (*s.fold_lines, *s.cut_lines)] for s in plan.sheets]
    flap = plan.program.glue_flap if len(plan.sheets) > 1 else 0.0
    return Book(
        plan.sheet_width, plan.sheet_height, plan.sides, marks, lines,
        signatures=plan.signatures, panels=plan.program.panels, flap=flap,
    )  # fmt: skip


def capacity(scheme: str) -> int:
    return schemes()[scheme].most_pages or 64


def numbers(plan: FoldPlan, slots: tuple[Slot, ...]) -> list[list[int]]:
    """The page numbers of a side, row by row from the top, each from the left; turned ones are negative."""
    rows = itertools.groupby(sorted(slots, key=lambda s: (-s.y, s.x)), key=lambda s: s.y)
    return [[-s.page if s.rotation_deg == 180 else s.page for s in row] for _, row in rows]


def test_every_scheme_has_a_reader_of_its_own() -> None:
    assert set(READERS) == set(schemes())


@pytest.mark.parametrize("scheme", sorted(schemes()))
@pytest.mark.parametrize("paper", sorted(PAPERS))
@pytest.mark.parametrize("flip", FLIPS)
def test_a_folded_book_of_any_length_reads_from_the_first_page_to_the_last(scheme: str, paper: str, flip: Flip) -> None:
    numbered_blanks = scheme in ("slit", "meander")  # the strip is followed by its numbers, so blanks need them too
    for pages in range(1, capacity(scheme) + 1):
        plan = plan_fold(scheme, pages, *PAPERS[paper], two_sided_flip=flip)
        if numbered_blanks:
            plan = plan_fold(scheme, plan.book_pages, *PAPERS[paper], two_sided_flip=flip)
            pages = plan.book_pages
        read = READERS[scheme](book_of(plan, marks_of(plan)))
        wanted = [number if number <= pages else 0 for number in range(1, plan.book_pages + 1)]
        assert [number for number, _ in read] == wanted, pages
        assert all(head == UP for _, head in read), pages


@settings(max_examples=60, deadline=None)
@given(
    pages=st.integers(1, 64),
    panels=st.integers(2, 12),
    faces=st.sampled_from((1, 2)),
    paper=st.sampled_from(sorted(PAPERS)),
    flip=st.sampled_from(FLIPS),
)
def test_a_concertina_of_any_panels_reads_along_its_fronts_and_back_along_its_backs(
    pages: int, panels: int, faces: int, paper: str, flip: Flip
) -> None:
    plan = plan_fold("concertina", pages, *PAPERS[paper], panels=panels, faces=faces, two_sided_flip=flip)
    read = READERS["concertina"](book_of(plan, marks_of(plan)))
    assert [n for n, _ in read] == [n if n <= pages else 0 for n in range(1, plan.book_pages + 1)]
    assert all(head == UP for _, head in read)


@pytest.mark.parametrize("panels", range(2, 7))
def test_a_flap_book_of_any_number_of_flaps_reads_flap_by_flap(panels: int) -> None:
    plan = plan_fold("flaps", 3 * panels, *PAPERS["A4"], panels=panels)
    read = READERS["flaps"](book_of(plan, marks_of(plan)))
    assert read == [(number, UP) for number in range(1, 3 * panels + 1)]


# Saddle stitch: pages padded to a multiple of 4; the two pages of a side add up to n + 1, the odd one at the right
# (mindprod Java glossary, "imposition"); n = 4 is [4, 1] and [2, 3] (help page of the print shop vesterkopi.dk).
SADDLE = {
    4: [([4, 1], [2, 3])],
    8: [([8, 1], [2, 7]), ([6, 3], [4, 5])],
    12: [([12, 1], [2, 11]), ([10, 3], [4, 9]), ([8, 5], [6, 7])],
    16: [([16, 1], [2, 15]), ([14, 3], [4, 13]), ([12, 5], [6, 11]), ([10, 7], [8, 9])],
}


@pytest.mark.parametrize("pages", SADDLE)
def test_stitched_sheets_carry_the_published_pairs(pages: int) -> None:
    plan = plan_fold("stitched", pages, *PAPERS["A4"], two_sided_flip="two-sided-short-edge")
    found = [(numbers(plan, s.front), numbers(plan, s.back)) for s in plan.sheets]
    assert found == [([front], [back]) for front, back in SADDLE[pages]]


@pytest.mark.parametrize("pages", [4, 8, 12, 16, 20, 24, 32, 40, 48])
def test_facing_pages_of_a_stitched_side_add_up_to_one_more_than_the_pages(pages: int) -> None:
    plan = plan_fold("stitched", pages, *PAPERS["Letter"])
    assert plan.signatures == (pages // 4,)
    for sheet in plan.sheets:
        for side in (sheet.front, sheet.back):
            left, right = sorted(side, key=lambda slot: slot.x)
            assert left.page + right.page == pages + 1
            assert right.page % 2 == 1


@pytest.mark.parametrize(("pages", "padded"), [(1, 4), (4, 4), (5, 8), (10, 12), (16, 16), (61, 64)])
def test_a_stitched_book_is_filled_up_with_blanks_to_a_multiple_of_four(pages: int, padded: int) -> None:
    plan = plan_fold("stitched", pages, *PAPERS["A4"])
    slots = [slot for sheet in plan.sheets for slot in (*sheet.front, *sheet.back)]
    assert plan.book_pages == len(slots) == padded
    assert sorted(slot.page for slot in slots if slot.page) == list(range(1, pages + 1))


def test_an_octavo_sheet_carries_the_pages_of_nicholsons_manual() -> None:
    """J. B. Nicholson, A Manual of the Art of Bookbinding (1856), "Folding": inner side, bottom row 2 15 14 3 upright,
    top row 7 10 11 6 heads reversed. The outer side is its mirror: 4 13 16 1 below, 5 12 9 8 above."""
    sheet = (plan := plan_fold("octavo", 16, *PAPERS["A4"], two_sided_flip="two-sided-short-edge")).sheets[0]
    assert numbers(plan, sheet.back) == [[-7, -10, -11, -6], [2, 15, 14, 3]]
    assert numbers(plan, sheet.front) == [[-5, -12, -9, -8], [4, 13, 16, 1]]


def test_a_quarto_sheet_carries_the_classical_formes() -> None:
    """Outer forme 8 1 below and 5 4 above, heads together; inner 2 7 and 3 6 (the order of P. Gaskell, A New
    Introduction to Bibliography, from memory; the fold order, top down and then sideways, is that of the paper model
    in the Xerox 2101 ST/Fiery manual, appendix A)."""
    sheet = (plan := plan_fold("quarto", 8, *PAPERS["A4"], two_sided_flip="two-sided-long-edge")).sheets[0]
    assert numbers(plan, sheet.front) == [[-5, -4], [8, 1]]
    assert numbers(plan, sheet.back) == [[-3, -6], [2, 7]]


@pytest.mark.parametrize(("scheme", "pages"), [("quarto", 8), ("octavo", 16)])
def test_pages_across_the_spine_of_a_folded_sheet_add_up_and_leaves_are_back_to_back(scheme: str, pages: int) -> None:
    """Invariants of any quarto or octavo (issue of the rule: sums n + 1 in each pair of columns; 2j-1 behind 2j)."""
    sheet = (plan := plan_fold(scheme, pages, *PAPERS["A4"])).sheets[0]
    for side in (sheet.front, sheet.back):
        for row in numbers(plan, side):
            for left, right in zip(row[::2], row[1::2], strict=True):
                assert abs(left) + abs(right) == pages + 1
    for front, back in zip(numbers(plan, sheet.front), numbers(plan, sheet.back), strict=True):
        for one, other in zip(front, reversed(back), strict=True):
            assert sorted((abs(one), abs(other)))[0] % 2 == 1
            assert abs(abs(one) - abs(other)) == 1


def test_the_one_slit_sheet_follows_the_ring_of_its_panels() -> None:
    """4 x 2 panels, printed on one side, the whole top row upside down (printed example, tressabelle.wordpress.com,
    2013); round the ring of panels the numbers follow one another, and 8 and 1 share a spine edge (geometry)."""
    plan = plan_fold("slit", 8, *PAPERS["A4"], two_sided_flip="two-sided-long-edge")
    top, bottom = numbers(plan, plan.sheets[0].front)
    assert all(number < 0 for number in top)
    assert all(number > 0 for number in bottom)
    ring = [*bottom, *(-number for number in reversed(top))]
    steps = {(b - a) % 8 for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)}
    assert steps in ({1}, {7})
    pairs = [set(ring[i : i + 2]) for i in (0, 2, 4, 6)]
    assert {8, 1} in pairs
    assert plan.sides == "one-sided"
    assert plan.sheets[0].back == ()


@pytest.mark.parametrize(
    ("paper", "slit"), [("A4", (74.25, 105.0, 222.75, 105.0)), ("Letter", (69.85, 107.95, 209.55, 107.95))]
)
def test_the_slit_lies_on_the_middle_fold_across_the_two_middle_panels(
    paper: str, slit: tuple[float, float, float, float]
) -> None:
    """eHow, "eight-page mini book on A4": half the sheet's length. Letter: 5.5 in long, 2.75 in from each side."""
    (line,) = plan_fold("slit", 8, *PAPERS[paper]).cut_lines
    assert (line.x1, line.y1, line.x2, line.y2) == pytest.approx(slit)
    assert line.kind == "slit"


# ISO 216: A5 148 x 210, A6 105 x 148, A7 74 x 105, A8 52 x 74 (each rounded down from the exact half).
@pytest.mark.parametrize(
    ("scheme", "pages", "size"),
    [
        ("half", 4, (148, 210)),
        ("stitched", 12, (148, 210)),
        ("quarto", 8, (105, 148)),
        ("pocket", 32, (105, 148)),
        ("octavo", 16, (74, 105)),
        ("slit", 8, (74, 105)),
        ("meander", 16, (52, 74)),
    ],
)
def test_pages_folded_from_a4_are_the_smaller_sizes_of_the_series(
    scheme: str, pages: int, size: tuple[int, int]
) -> None:
    plan = plan_fold(scheme, pages, *PAPERS["A4"])
    assert 0 <= plan.page_width - size[0] < 1
    assert 0 <= plan.page_height - size[1] < 1


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_the_cells_of_a_side_lie_on_the_sheet_and_never_overlap(scheme: str) -> None:
    plan = plan_fold(scheme, min(capacity(scheme), 16), *PAPERS["Letter"])
    for sheet in plan.sheets:
        for side in (sheet.front, sheet.back):
            for slot in side:
                assert slot.x >= -1e-9
                assert slot.x + slot.width <= plan.sheet_width + 1e-9
                assert slot.y >= -1e-9
                assert slot.y + slot.height <= plan.sheet_height + 1e-9
            for a, b in itertools.combinations(side, 2):
                apart_x = min(a.x + a.width, b.x + b.width) - max(a.x, b.x)
                apart_y = min(a.y + a.height, b.y + b.height) - max(a.y, b.y)
                assert min(apart_x, apart_y) <= 1e-9


# Stack model: each nested sheet stands one thickness further out (colorvisionprinting.com on creep), so with 0.10 mm
# paper the innermost sheet of 8, 16, 32 and 48 pages stands out 0.1, 0.3, 0.7 and 1.1 mm.
@pytest.mark.parametrize(("pages", "most"), [(4, 0.0), (8, 0.1), (16, 0.3), (32, 0.7), (48, 1.1)])
def test_creep_grows_by_one_caliper_for_each_nested_sheet(pages: int, most: float) -> None:
    plan = plan_fold("stitched", pages, *PAPERS["A4"], caliper=0.10)
    assert plan.creep_most == pytest.approx(most)
    for number, sheet in enumerate(plan.sheets):
        for slot in (*sheet.front, *sheet.back):
            assert slot.creep == pytest.approx(number * 0.10)


def test_creep_moves_pages_toward_the_spine() -> None:
    """Toward the spine, most on the inner sheets (Xerox 2101 ST/Fiery manual, appendix A)."""
    for flip in FLIPS:
        plan = plan_fold("stitched", 16, *PAPERS["A4"], two_sided_flip=flip)
        middle = plan.sheet_width / 2
        for sheet in plan.sheets:
            for slot in (*sheet.front, *sheet.back):
                a, b, c, d, e, f = slot.matrix
                x = a * slot.page_width / 2 + c * slot.page_height / 2 + e
                centre = slot.x + slot.width / 2
                toward = 1 if centre < middle else -1
                assert x - centre == pytest.approx(toward * slot.creep)
                assert b * slot.page_width / 2 + d * slot.page_height / 2 + f == pytest.approx(slot.y + slot.height / 2)


def test_a_book_too_thick_to_fold_is_split_into_even_signatures() -> None:
    """Limit 1.2 mm of paper folded at once: common practice, no source."""
    assert plan_fold("stitched", 48, *PAPERS["A4"], caliper=0.1).signatures == (12,)
    assert plan_fold("stitched", 52, *PAPERS["A4"], caliper=0.1).signatures == (7, 6)
    assert plan_fold("stitched", 16, *PAPERS["A4"], caliper=0.5).signatures == (2, 2)
    assert plan_fold("pocket", 48, *PAPERS["A4"], caliper=0.1).signatures == (6,)
    assert plan_fold("pocket", 56, *PAPERS["A4"], caliper=0.1).signatures == (4, 3)


def test_a_32_page_pocket_book_takes_four_sheets() -> None:
    plan = plan_fold("pocket", 32, *PAPERS["A4"])
    assert len(plan.sheets) == 4
    assert plan.creep_most == pytest.approx(0.7)


def test_the_natural_flip_keeps_backs_upright_and_the_other_turns_them() -> None:
    """A landscape two-up sheet with an upright spine needs the short edge; a standing page the long one (geometry)."""
    for scheme, natural in (("stitched", "two-sided-short-edge"), ("pocket", "two-sided-long-edge")):
        assert plan_fold(scheme, 8, *PAPERS["A4"]).sides == natural
        for flip in FLIPS:
            plan = plan_fold(scheme, 8, *PAPERS["A4"], two_sided_flip=flip)
            turned = {slot.rotation_deg for sheet in plan.sheets for slot in sheet.back}
            assert turned == ({0} if flip == natural else {180})


def test_slots_turn_and_move_a_page_by_their_matrix() -> None:
    plan = plan_fold("octavo", 16, *PAPERS["A4"], caliper=0.0)
    slot = next(s for s in plan.sheets[0].front if s.page == 5)
    a, b, c, d, e, f = slot.matrix
    corner = (a * 0 + c * 0 + e, b * 0 + d * 0 + f)
    assert corner == pytest.approx((slot.x + slot.width, slot.y + slot.height))


def test_ticks_lie_at_the_edges_and_reach_past_the_margin() -> None:
    for margin in (4.0, 6.35):
        plan = plan_fold("octavo", 16, *PAPERS["A4"], margin=margin)
        ticks = plan.sheets[0].back_ticks
        assert len(ticks) == 8
        for tick in ticks:
            assert margin < abs(tick.x2 - tick.x1) + abs(tick.y2 - tick.y1) < margin + 4
            at_edge = tick.x1 == 0 or tick.y1 == 0 or tick.x2 == plan.sheet_width or tick.y2 == plan.sheet_height
            assert at_edge


@pytest.mark.parametrize(
    ("scheme", "pages", "says", "instead"),
    [
        ("octavo", 17, "17 pages do not fit octavo, which holds 16", "stitched"),
        ("slit", 9, "which holds 8", "meander"),
        ("half", 5, "which holds 4", "quarto (8)"),
        ("stiched", 4, "there is no fold scheme 'stiched'", "write stitched, or another of: concertina, flaps"),
        ("stitched", 0, "at least one page", "at least one page"),
        ("quarto", -3, "at least one page", "at least one page"),
    ],
)
def test_a_fold_that_cannot_be_made_says_why_and_what_to_ask_for(
    scheme: str, pages: int, says: str, instead: str
) -> None:
    with pytest.raises(FoldError) as caught:
        plan_fold(scheme, pages, *PAPERS["A4"])
    assert says in caught.value.message
    assert instead in caught.value.instead


def test_panels_or_paper_that_cannot_be_folded_are_refused() -> None:
    with pytest.raises(FoldError, match="13 panels"):
        plan_fold("concertina", 13, *PAPERS["A4"], panels=13)
    with pytest.raises(FoldError, match="5 mm thick"):
        plan_fold("stitched", 8, *PAPERS["A4"], caliper=5)


def test_a_concertina_longer_than_a_sheet_keeps_a_glue_flap_and_equal_pages() -> None:
    plan = plan_fold("concertina", 12, *PAPERS["A4"], panels=4, faces=1)
    assert len(plan.sheets) == 3
    assert plan.page_width == pytest.approx((297 - 10) / 4)
    kinds = [[line.kind for line in sheet.cut_lines] for sheet in plan.sheets]
    assert kinds == [[], [], ["cut"]]  # the last flap joins nothing and is cut off


def test_the_back_under_a_glue_flap_is_kept_clear() -> None:
    plan = plan_fold("concertina", 16, *PAPERS["A4"], panels=4, faces=2)
    clear = {slot.page: slot.clear for sheet in plan.sheets for slot in sheet.back if any(slot.clear)}
    assert clear == {12: (0.0, 0.0, 10.0, 0.0)}
