"""The words sheet: every word and meaning on paper at every level, full pages, no meaning beside its word."""

import io

import pdfplumber
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from study_desks import words_desk

from packgen.page.marks import Line, Page, Path_, Text
from packgen.sheets.words import Match, lay_out, shuffled
from packgen.writing.pdf import Document, pdf_bytes

LEVELS = ("first", "younger", "older", "upper")
PAPERS = ("A4", "Letter")
TWELVE = (
    ("ebb", "the tide going out"), ("flow", "the tide coming in"), ("quay", "a place where ships are loaded"),
    ("wick", "the thread in a lamp that burns"), ("harbour", "calm water where ships are safe"),
    ("chandler", "a person who sells candles, oil and rope"), ("tide", "the sea rising and falling twice a day"),
    ("lantern", "a lamp with glass sides"), ("hull", "the body of a ship"), ("mast", "the pole that holds the sails"),
    ("buoy", "a float that shows ships the way"), ("fathom", "a measure of depth, six feet"),
)  # fmt: skip
THIRTY = (*TWELVE, *((f"name{k}", f"the meaning of the name with the number {k}") for k in range(18)))
LONG = (("Donaudampfschifffahrtskapitän", "the captain of a steam ship"), ("Łódź", "a boat"), ("Москва", "a town"),
        ("the tide that comes in", "a phrase of several words " * 12), ("x" * 30, "no word at all"))  # fmt: skip


def said(pages: tuple[Page, ...]) -> str:
    """All text of some pages without the spaces, for a line may break anywhere between words."""
    return "".join(m.text for page in pages for m in page.marks if isinstance(m, Text)).replace(" ", "")


def reach(page: Page) -> tuple[float, float, float, float]:
    """The rectangle that the lines and shapes of a page cover."""
    xs: list[float] = []
    ys: list[float] = []
    for mark in page.marks:
        if isinstance(mark, Line):
            xs += [mark.x1, mark.x2]
            ys += [mark.y1, mark.y2]
        elif isinstance(mark, Path_):
            numbers = [float(n) for step in mark.steps for n in step[1:]]
            xs += numbers[::2]
            ys += numbers[1::2]
    return min(xs), min(ys), max(xs), max(ys)


def test_a_study_without_words_gets_no_sheet() -> None:
    assert all(lay_out(words_desk(level, ())) == () for level in LEVELS)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("words", [TWELVE[:1], TWELVE[:2], TWELVE[:3], TWELVE, THIRTY, LONG], ids=len)
def test_every_word_and_meaning_is_on_paper(words, level: str, paper: str) -> None:  # type: ignore[no-untyped-def]
    desk = words_desk(level, words, paper=paper, most=len(words))
    (laid,) = lay_out(desk)
    text = said(laid.pages)
    for word, means in words:
        assert word.replace(" ", "") in text
        assert means.replace(" ", "") in text
    assert not desk.faults


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("words", [TWELVE[:1], TWELVE[:3], TWELVE, THIRTY, LONG], ids=len)
def test_nothing_reaches_into_the_margins_and_pages_are_full(words, level: str, paper: str) -> None:  # type: ignore[no-untyped-def]
    desk = words_desk(level, words, paper=paper)
    (laid,) = lay_out(desk)
    edge = desk.margins
    for page in laid.pages:
        left, low, right, high = reach(page)
        assert left >= edge.left - 1.5 and right <= page.width - edge.right + 1.5
        assert low >= edge.bottom - 1e-6 and high <= page.height - edge.top + 1.5
        # What is drawn under the foot's hairline does not count: how low does the work itself reach?
        work = [min(m.y1, m.y2) for m in page.marks if isinstance(m, Line) and m.role != "footline"]
        work += [min(float(n) for step in m.steps for n in step[2::2]) for m in page.marks if isinstance(m, Path_)]
        assert min(work) < page.height * 0.3


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("count", [8, 9, 10, 12])
def test_pairs_for_two_pages_fill_both(count: int, paper: str) -> None:
    words = [
        (word, f"{means}, along the whole shore from the quay to the mill in the evening") for word, means in TWELVE
    ]
    desk = words_desk("younger", words[:count], paper=paper, most=count)
    (laid,) = lay_out(desk)
    assert sum(any(isinstance(m, Path_) and m.role == "label" for m in page.marks) for page in laid.pages) == 2
    for page in laid.pages:
        boxes = [m for m in page.marks if isinstance(m, Path_) and m.role == "label"]
        if boxes:
            low = min(float(n) for m in boxes for step in m.steps for n in step[2::2])
            assert low - desk.margins.bottom < 0.18 * page.height, f"{len(boxes) // 2} pairs end at {low:.0f} mm"


def test_the_first_have_two_huge_words_on_a_page() -> None:
    (laid,) = lay_out(words_desk("first", THIRTY))
    assert len(laid.pages) == 2
    for page in laid.pages:
        boxes = [m for m in page.marks if getattr(m, "role", "") == "drawbox"]
        assert len(boxes) == 2
    assert all(word in said(laid.pages) for word in ("ebb", "flow", "quay", "wick"))


@pytest.mark.parametrize("letters", ["print", "cursive"])
def test_the_younger_trace_and_then_write_on_the_same_line(letters: str) -> None:
    desk = words_desk("younger", TWELVE[:5], letters=letters)
    (laid,) = lay_out(desk)
    traces = [m for m in laid.pages[0].marks if isinstance(m, Path_) and m.role == "trace" and m.stroke]
    assert len(traces) >= 5
    for trace in traces:
        xs = [float(step[1]) for step in trace.steps]
        assert min(xs) < desk.margins.left + 3.0 and max(xs) < desk.margins.left + desk.live_width * 0.5


def test_left_handed_children_get_models_on_the_right() -> None:
    desk = words_desk("younger", TWELVE[:5], left_handed=True)
    (laid,) = lay_out(desk)
    for trace in (m for m in laid.pages[0].marks if isinstance(m, Path_) and m.role == "trace" and m.stroke):
        xs = [float(step[1]) for step in trace.steps]
        assert max(xs) > desk.paper[0] - desk.margins.right - 3.0
    old = words_desk("older", TWELVE[:5], left_handed=True)
    (laid,) = lay_out(old)
    word = next(m for m in laid.pages[0].marks if isinstance(m, Text) and m.text == "ebb")
    assert word.x > old.paper[0] / 2


def test_the_meanings_are_not_on_the_page_where_the_older_guess() -> None:
    (laid,) = lay_out(words_desk("older", TWELVE))
    guessing = [page for page in laid.pages if any(getattr(m, "text", "") == "My guess" for m in page.marks)]
    assert guessing
    assert not any(means.replace(" ", "") in said(tuple(guessing)) for _, means in TWELVE)


def test_the_upper_fold_the_meanings_back() -> None:
    (laid,) = lay_out(words_desk("upper", TWELVE))
    page = laid.pages[0]
    fold = next(m for m in page.marks if isinstance(m, Line) and m.role == "fold")
    placed = [m for m in page.marks if isinstance(m, Text) and m.text == "the tide going out"]
    assert placed and placed[0].x >= fold.x1 + 4.0  # clear of the crease


@pytest.mark.parametrize("paper", PAPERS)
def test_what_is_folded_away_is_printed_nowhere_else(paper: str) -> None:
    (laid,) = lay_out(words_desk("upper", TWELVE, paper=paper))
    text = said(laid.pages)
    assert [text.count(means.replace(" ", "")) for _, means in TWELVE] == [1] * len(TWELVE)


PAIRS = st.lists(st.tuples(st.text(min_size=1, max_size=8), st.text(min_size=1, max_size=8)), min_size=2, max_size=14)


@given(PAIRS)
@settings(max_examples=80, deadline=None)
def test_no_meaning_stands_beside_its_word(pairs) -> None:  # type: ignore[no-untyped-def]
    order = shuffled(pairs)
    assert sorted(order) == list(range(len(pairs)))
    assert all(k != row for row, k in enumerate(order))
    assert order == shuffled(tuple(pairs))


def test_equal_meanings_do_not_meet_the_other_word_where_that_can_be() -> None:
    pairs = (("ebb", "the tide"), ("flow", "the tide"), ("quay", "a wall"), ("mast", "a pole"), ("hull", "a body"))
    assert all(pairs[k][1] != pairs[row][1] for row, k in enumerate(shuffled(pairs)))


def test_a_split_match_is_two_puzzles_of_their_own() -> None:
    desk = words_desk("younger", TWELVE)
    block = Match(TWELVE)
    parts = block.split(desk.kit, desk.live_width, block.measure(desk.kit, desk.live_width).least * 0.5)
    assert parts
    first, second = parts
    assert isinstance(first, Match) and isinstance(second, Match)
    assert (*first.pairs, *second.pairs) == TWELVE
    assert set(first.meanings()) == {means for _, means in first.pairs}
    assert min(len(first.pairs), len(second.pairs)) >= 3


def test_the_words_can_be_read_in_the_finished_file() -> None:
    (laid,) = lay_out(words_desk("younger", TWELVE))
    with pdfplumber.open(io.BytesIO(pdf_bytes(Document("words", laid.pages)))) as file:
        text = " ".join(page.extract_text() for page in file.pages)
    assert all(word in text for word, _ in TWELVE)
    assert "Trace it, write it" in text and "page 1 of" in text


def test_words_to_match_do_not_stand_above_their_meanings() -> None:
    """Where meanings are to be found by matching, the list of words to use has neither them nor the same order."""
    (laid,) = lay_out(words_desk("older", TWELVE))
    text = said(laid.pages)
    for _, means in TWELVE:
        assert text.count(means.replace(" ", "")) == 1
    after = text[text.index("Putittouse") :]
    order = [after.index(word) for word, _ in TWELVE]
    assert order != sorted(order)
