from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import FACES, box, drawn, kit, of_role, overlap, words_of

from packgen.page.blocks import Bullets, Prose, Span
from packgen.page.flow import paginate
from packgen.page.marks import Line, Text
from packgen.page.table import Column, Table
from packgen.page.timetable import IfRoom, Pairs, Sayings, Step, part_blocks

KIT = kit("parent")
WIDTH = 178.0
WORDS = st.lists(st.sampled_from(("tide", "lamp", "harbour", "measured", "a", "Saltmere")), min_size=1, max_size=60)
TEXTS = WORDS.map(" ".join)


def test_a_step_has_its_name_beside_its_words() -> None:
    step = Step("Recall", (Prose("Who was there?"),), ("5 min", "Friday"))
    pen = drawn(KIT, step, WIDTH)
    name, notes, words = (mark for mark in pen.marks if isinstance(mark, Text))
    assert (name.text, notes.text, words.text) == ("Recall", "5 min · Friday", "Who was there?")
    assert words.x > name.x + 31.0 and notes.y < name.y


def test_a_wide_step_has_its_words_under_its_name() -> None:
    pen = drawn(KIT, Step("Recall", (Prose("Who?"),), wide=True), WIDTH)
    name, words = (mark for mark in pen.marks if isinstance(mark, Text))
    assert words.x == name.x and words.y < name.y


def test_a_step_grows_as_its_table_does() -> None:
    table = Table((Column("a"),), (("x",), ("y",)), least=8.0, most=16.0)
    assert Step("Goals", (table,), wide=True).measure(KIT, WIDTH).grow == table.measure(KIT, WIDTH).grow > 0
    assert not Step("Recall", (Prose("Who?"),)).measure(KIT, WIDTH).grow


@given(st.lists(TEXTS, min_size=1, max_size=12), st.floats(30, 120), st.booleans())
@settings(max_examples=25, deadline=None)
def test_a_step_on_several_pages_loses_no_word(items: list[str], room: float, wide: bool) -> None:
    step = Step("Recall", (Bullets(tuple(items)), Prose(items[0])), wide=wide, on="Recall (on)")
    pages = paginate(KIT, [step], WIDTH, lambda k: room)
    found = []
    for page in pages:
        for block in page:
            assert block.measure(KIT, WIDTH).least <= room + 1e-6
            found += words_of(drawn(KIT, block, WIDTH).marks)
    said = [word for word in " ".join(found).split() if word not in ("Recall", "(on)")]
    assert said == " ".join([*items, items[0]]).split()
    assert found.count("(on)") == len(pages) - 1


def test_what_does_not_fit_is_not_parted_from_what_it_heads() -> None:
    blocks = (Prose("one line"), Prose("a heading", tight=True), Bullets(("x",)))
    least = sum(b.measure(KIT, 100.0).least for b in blocks[:2]) + KIT.look.gap
    parted = part_blocks(KIT, blocks, 100.0, least + 1.0)
    assert parted == (blocks[:1], blocks[1:])
    assert part_blocks(KIT, blocks, 100.0, 1.0) is None
    assert part_blocks(KIT, blocks, 100.0, 1000.0) is None


@given(st.lists(st.tuples(st.sampled_from(("Wilf", "Juno and Bram", "Maximilian")), TEXTS), min_size=1, max_size=8))
@settings(max_examples=25, deadline=None)
def test_names_and_their_texts_never_touch(rows: list[tuple[str, str]]) -> None:
    pen = drawn(KIT, Pairs(tuple(rows)), 120.0)
    boxes = [box(mark) for mark in pen.marks]
    assert not any(overlap(a, b) for k, a in enumerate(boxes) for b in boxes[:k])
    assert max(b[2] for b in boxes) <= 120.0 + 1e-6
    assert " ".join(words_of(pen.marks)).split() == " ".join(f"{name} {text}" for name, text in rows).split()


def test_pairs_are_parted_between_rows() -> None:
    pairs = Pairs(tuple((str(k), "text") for k in range(6)))
    high = pairs.measure(KIT, 100.0).least
    parted = pairs.split(KIT, 100.0, high / 2)
    assert parted
    first, rest = parted
    assert isinstance(first, Pairs) and isinstance(rest, Pairs) and first.rows + rest.rows == pairs.rows


def test_what_is_drawn_if_there_is_room_never_asks_for_any() -> None:
    block = IfRoom((Sayings("Kept", ("Juno",)), Prose("short")))
    assert block.measure(KIT, WIDTH).least == 0.0
    assert words_of(drawn(KIT, block, WIDTH, 2.0).marks) == []
    assert words_of(drawn(KIT, block, WIDTH, 10.0).marks) == ["short"]
    assert words_of(drawn(KIT, block, WIDTH, 60.0).marks)[0] == "Kept"


def test_sayings_have_lines_for_each_name_or_a_box() -> None:
    sayings = Sayings("Kept", ("Juno", "Bram", "Wilf"))
    lines = of_role(drawn(KIT, sayings, WIDTH, 60.0).marks, "baseline")
    assert len(lines) == 6  # two a name
    boxes = of_role(drawn(KIT, sayings, WIDTH, 150.0).marks, "drawbox")
    assert len(boxes) == 3
    places = [box(mark) for mark in boxes]
    assert not any(overlap(a, b) for k, a in enumerate(places) for b in places[:k])
    assert min(p[1] for p in places) >= -150.0 - 1e-6 and max(p[2] for p in places) <= WIDTH + 1e-6


def test_sayings_without_names_are_at_most_so_many_lines() -> None:
    sayings = Sayings("Also", (), most=3)
    span = sayings.measure(KIT, WIDTH)
    assert isinstance(span, Span) and span.most < 60.0
    lines = of_role(drawn(KIT, sayings, WIDTH, span.most).marks, "baseline")
    assert len(lines) == 3 and all(isinstance(line, Line) for line in lines)


def test_a_name_too_long_for_its_column_is_shortened_by_words() -> None:
    pen = drawn(KIT, Sayings("Kept", ("Maximilian Alexander Wolfgang",)), WIDTH, 40.0)
    named = [mark for mark in pen.marks if isinstance(mark, Text)][1]
    assert named.text == "Maximilian"
    assert FACES.width(named.text, named.face, named.size) <= 31.0
