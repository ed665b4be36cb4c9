"""A study file is read whole: every fault in one go, every value frozen, references true."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reading_files import STUDY, is_case_of, read_text

from packgen.faults import Fault, Said
from packgen.reading import messages
from packgen.reading.models import Study
from packgen.reading.study import read_study

# An invented person, as in every example.
FULL = """\
study: Isaure Quenby
kind: inventor
in_short: Lamp-maker and painter who measured the tides.
born: 1834
died: 1902
place: {name: Saltmere, lat: 50.4, lon: -4.9}
portrait: pictures/harbour.png
book:
  title: The Lamp on the Quay
  chapters:
    - A cold harbour
    - {title: The first lamp, pages: 11-19, works: [harbour-at-dusk]}
    - {title: The tides, works: The Wave}
life:
  younger: Isaure lived by the sea.
  older: Isaure Quenby was born in 1834 above a chandler's shop.
timeline:
  - {when: 1834, what: "Born above the chandler's shop", short: Isaure is born}
  - {when: c. 1851, what: Makes her first lamp}
  - 1862-1865: Charts the tides of the whole coast
  - {when: 44 BC, what: (years before 1 are allowed too)}
works:
  - id: harbour-at-dusk
    title: The Harbour at Dusk
    when: 1861
    medium: oil on panel
    size: 420 x 310 mm
    image: pictures/harbour.png
    held: Saltmere Town Collection
    link: https://example.org/harbour
    look: [Where does the light come from?, Which boat is nearest? How do you know?]
    tell: She painted it from the same window at the same hour for a month.
    details: [{name: the boat, left: 20 %, top: 0.4, width: 0.1, height: 0.1}]
  - The Wave
  - The Wave
obstacles: [Her lamps cracked in the cold]
facts: She kept bees.
words: [{word: ebb, means: the tide going out}, flood: the tide coming in]
challenges:
  - title: A wheel the stream can turn
    brief: Build a wheel that lifts a paper clip on a thread.
    model: wheel
    given: {wheel radius: 60 mm, axle radius: 4 mm, canopy: hemisphere, run time: 1:30}
    change: {number of blades: [4, 6, 8]}
    measure: {what: time to lift, unit: s}
    keep_same: [the tap, the thread, the load]
    trials: 4
    materials: [{item: card, amount: 2, unit: sheet}, {item: thread, amount: 1.2 m, shared: ja}, a tap]
    caution: water
models:
  - title: The lamp house
    solid: prism
    given: {sides: 8, across: 5.2 m, height: 6.1 m}
    scale: 1:100
    holes: corners
"""


def read(folder: Path, text: str) -> Study:
    study, faults = read_text(folder, "study", text)
    assert [str(fault) for fault in faults] == []
    assert isinstance(study, Study)
    return study


def faults_of(folder: Path, text: str) -> tuple[Fault, ...]:
    return read_text(folder, "study", text)[1]


def test_the_whole_study_is_read(tmp_path: Path) -> None:
    study = read(tmp_path, FULL)
    assert (study.study, study.kind, study.folder) == ("Isaure Quenby", "inventor", tmp_path)
    assert study.place is not None and (study.place.lat, study.place.lon) == (50.4, -4.9)
    assert study.book is not None
    assert [(c.title, c.pages, c.works) for c in study.book.chapters] == [
        ("A cold harbour", None, ()),
        ("The first lamp", "11-19", ("harbour-at-dusk",)),
        ("The tides", None, ("the-wave",)),
    ]
    assert [level for level, _ in study.life] == ["younger", "older"]
    assert [e.when.start.year for e in study.timeline if e.when.start] == [1834, 1851, 1862, -43]
    assert study.timeline[2].what == "Charts the tides of the whole coast"
    assert [w.word for w in study.words] == ["ebb", "flood"]
    assert study.facts == ("She kept bees.",)


def test_works_have_sizes_pictures_and_ids_of_their_own(tmp_path: Path) -> None:
    first, second, third = read(tmp_path, FULL).works
    assert (first.width, first.height) == (420, 310)
    assert first.image == (tmp_path / "pictures" / "harbour.png").resolve()
    assert first.image_said == "pictures/harbour.png"
    assert first.details[0].left == pytest.approx(0.2)
    assert (first.id, second.id, third.id) == ("harbour-at-dusk", "the-wave", "the-wave-2")
    assert len(first.look) == 2


def test_a_work_has_a_drawing_lines_and_sheets_to_leave_out(tmp_path: Path) -> None:
    more = (
        "image: pictures/harbour.png\n    drawing: pictures/harbour.png\n    leave_out: [Colour by number]\n"
        "    composition: [golden section, Halves]\n    vanishing: {left: 51 %, top: 0.6}"
    )
    first, second, _ = read(tmp_path, FULL.replace("image: pictures/harbour.png", more)).works
    assert first.drawing == (tmp_path / "pictures" / "harbour.png").resolve()
    assert first.composition == ("golden section", "halves") and second.composition is None
    assert first.vanishing is not None and (first.vanishing.left, first.vanishing.top) == pytest.approx((0.51, 0.6))
    assert first.leave_out == ("colour-by-number",) and (second.drawing, second.vanishing, second.leave_out) == (
        None,
        None,
        (),
    )


def test_challenges_and_models_are_read_with_their_quantities(tmp_path: Path) -> None:
    study = read(tmp_path, FULL)
    (challenge,), (model,) = study.challenges, study.models
    given_ = {g.name: g.values[0] for g in challenge.given}
    assert getattr(given_["wheel radius"], "value", None) == 60
    assert getattr(given_["run time"], "value", None) == 90
    assert given_["canopy"] == "hemisphere"
    assert challenge.change is not None
    assert (challenge.change.name, len(challenge.change.values)) == ("number of blades", 3)
    assert [(m.item, m.amount, m.unit, m.shared) for m in challenge.materials] == [
        ("card", 2, "sheet", False),
        ("thread", 1.2, "m", True),
        ("a tap", None, None, False),
    ]
    assert challenge.caution == ("water",)
    assert (model.scale, model.holes[0].where, model.holes[0].across) == ("1:100", "corners", 3.0)


def test_a_study_is_hashable_and_its_texts_know_their_places(tmp_path: Path) -> None:
    study = read(tmp_path, FULL)
    hash(study)
    tell = study.works[0].tell
    assert isinstance(tell, Said)
    assert (tell.at.line, tell.at.column) == (32, 11)
    assert study.works[0].at.line == 23


FIVE = """\
study: Isaure Quenby
kind: painter
in_short: Lamp-maker: she measured the tides.
timeline:
  - {when: 31 February 1834, what: Born}
  - {when: 1862-1865, waht: Charts the tides}
works:
  - title: The Harbour at Dusk
    size: 420 x 310
"""
MENDED = (
    ("kind: painter", "kind: artist"),
    ("in_short: Lamp-maker: she measured the tides.", 'in_short: "Lamp-maker: she measured the tides."'),
    ("31 February", "28 February"),
    ("waht", "what"),
    ("420 x 310", "420 x 310 mm"),
)


def test_five_faults_give_five_lines_in_order_of_place(tmp_path: Path) -> None:
    faults = faults_of(tmp_path, FIVE)
    wanted = ["NOT_CHOICE", "COLON_IN_VALUE", "NO_SUCH_DAY", "UNKNOWN_KEY", "NOT_SIZE"]
    assert [is_case_of(f, getattr(messages, name)) for f, name in zip(faults, wanted, strict=True)] == [True] * 5
    assert [f.place.line for f in faults] == [2, 3, 5, 6, 9]
    assert "`what`" in faults[3].instead


@pytest.mark.parametrize("index", range(5))
def test_mending_one_fault_loses_exactly_its_line(index: int, tmp_path: Path) -> None:
    before = [f.message for f in faults_of(tmp_path, FIVE)]
    after = [f.message for f in faults_of(tmp_path, FIVE.replace(*MENDED[index]))]
    assert after == before[:index] + before[index + 1 :]


def test_an_empty_study_is_told_its_three_lines(tmp_path: Path) -> None:
    for text in ("", "\n\n", "# a note\n", "---\n", "~\n"):
        study, (fault,) = read_text(tmp_path, "study", text)
        assert study is None
        assert all(f"{key}:" in fault.instead for key in ("study", "kind", "in_short"))


def test_each_missing_key_names_the_line_of_its_record(tmp_path: Path) -> None:
    faults = faults_of(tmp_path, STUDY + "works:\n  - medium: oil\n  - title: x\nchallenges:\n  - title: y\n")
    assert [(f.place.line, f.message) for f in faults] == [
        (5, "A work has no `title`."),
        (8, "A challenge has no `brief`."),
    ]


def test_a_study_with_faults_still_shows_the_rest(tmp_path: Path) -> None:
    study, faults = read_text(tmp_path, "study", STUDY + "timeline: [{when: never, what: x}, {when: 1834, what: y}]\n")
    assert isinstance(study, Study)
    assert len(faults) == 1
    assert [event.what for event in study.timeline] == ["y"]


def test_a_misspelt_required_key_is_one_fault_and_is_read_all_the_same(tmp_path: Path) -> None:
    study, faults = read_text(tmp_path, "study", STUDY.replace("kind:", "knid:"))
    assert len(faults) == 1
    assert isinstance(study, Study) and study.kind == "inventor"


def test_a_key_indented_too_little_is_told_where_it_belongs(tmp_path: Path) -> None:
    (fault,) = faults_of(tmp_path, STUDY + "medium: oil\n")
    assert "below `works:`" in fault.instead


def test_a_chapter_may_name_a_work_that_has_a_fault_of_its_own(tmp_path: Path) -> None:
    text = "book: {title: B, chapters: [{title: C, works: wave}]}\nworks: [{id: wave, titel: W, image: no.png}]\n"
    assert len(faults_of(tmp_path, STUDY + text)) == 2  # the key and the picture, not the chapter


def test_one_life_serves_every_level(tmp_path: Path) -> None:
    study = read(tmp_path, STUDY + "life: She lived by the sea.\n")
    assert dict(study.life) == dict.fromkeys(("first", "younger", "older", "upper"), "She lived by the sea.")


@pytest.mark.parametrize(("key", "most", "item"), [("timeline", 2000, "{when: 1834, what: x}"), ("works", 500, "x")])
def test_there_is_a_limit_to_the_parts_of_a_study(key: str, most: int, item: str, tmp_path: Path) -> None:
    lines = f"  - {item}\n" * most
    assert faults_of(tmp_path, f"{STUDY}{key}:\n{lines}") == ()
    (fault,) = faults_of(tmp_path, f"{STUDY}{key}:\n{lines}  - {item}\n")
    assert is_case_of(fault, messages.TOO_MANY)
    assert fault.place.line == 5 + most


def test_a_picture_may_not_leave_the_folder_by_any_way(tmp_path: Path) -> None:
    home = tmp_path / "home"
    home.mkdir()
    (tmp_path / "secret.png").write_bytes(b"x")
    (home / "link.png").symlink_to(tmp_path / "secret.png")
    (home / "up").symlink_to(tmp_path)
    (home / "loop.png").symlink_to(home / "loop.png")
    for path in (
        "../secret.png",
        str(tmp_path / "secret.png"),
        "link.png",
        "up/secret.png",
        "~/secret.png",
        "C:\\x.png",
    ):
        (fault,) = faults_of(home, f"{STUDY}portrait: {path}\n")
        assert is_case_of(fault, messages.PATH_OUTSIDE), str(fault)
        assert fault.place.line == 4
    for path in ("loop.png", "no.png", "x" * 150 + "/" + "y" * 300 + ".png"):
        (fault,) = faults_of(home, f"{STUDY}portrait: {path}\n")
        assert is_case_of(fault, messages.PATH_MISSING), str(fault)
    for path in ("file:///etc/passwd", "http://example.org/x.png", "data:image/png;base64,xx"):
        assert len(faults_of(home, f"{STUDY}portrait: {path}\n")) == 1


def test_a_link_on_the_disk_inside_the_folder_is_followed(tmp_path: Path) -> None:
    (tmp_path / "pictures").mkdir()
    (tmp_path / "same.png").symlink_to(tmp_path / "pictures" / "harbour.png")
    assert read(tmp_path, STUDY + "portrait: same.png\n").portrait == (tmp_path / "pictures" / "harbour.png").resolve()


def test_a_picture_in_another_case_is_suggested(tmp_path: Path) -> None:
    (fault,) = faults_of(tmp_path, STUDY + "portrait: pictures/Harbour.PNG\n")
    assert "pictures/harbour.png" in fault.instead


@pytest.mark.parametrize(
    "link",
    ["javascript:alert(1)", "file:///etc/passwd", "ftp://x.org", "example.org", "http://", "https://a b.org", "data:x"],
)
def test_links_other_than_web_addresses_are_refused(link: str, tmp_path: Path) -> None:
    (fault,) = faults_of(tmp_path, f"{STUDY}works: [{{title: x, link: '{link}'}}]\n")
    assert is_case_of(fault, messages.NOT_LINK)


@pytest.mark.parametrize(
    "text", ["{{ 7*7 }}", "<b>bold</b>", "{% include 'x' %}", "<img src='file:///x'/>", "${HOME}", "%s %(x)s"]
)
def test_markup_in_a_study_is_plain_letters(text: str, tmp_path: Path) -> None:
    quoted = "'" + text.replace("'", "''") + "'"
    assert read(tmp_path, f"{STUDY}note: {quoted}\n").note == text


def test_names_in_any_script_are_read_as_written(tmp_path: Path) -> None:
    for name in ("葛飾 北斎", "Ελένη", "Жанна", "Nguyễn Văn Cao", "x" * 60):
        assert read(tmp_path, STUDY.replace("Isaure Quenby", name)).study == name


def test_utf16_from_an_old_editor_is_read(tmp_path: Path) -> None:
    study, faults = read_text(tmp_path, "study", (STUDY + "note: café\n").encode("utf-16"))
    assert faults == ()
    assert isinstance(study, Study) and study.note == "café"


KEYS = [
    "study",
    "kind",
    "in_short",
    "born",
    "timeline",
    "works",
    "words",
    "life",
    "challenges",
    "given",
    "title",
    "when",
]
VALUES = st.recursive(
    st.sampled_from(["~", "''", "1834", "60 mm", "x: y", "[]", "{}", "yes", "'{{x}}'", "- x", "44 BC", "pictures"]),
    lambda inner: (
        st.lists(inner, max_size=3).map(lambda v: f"[{', '.join(v)}]")
        | st.dictionaries(st.sampled_from(KEYS), inner, max_size=3).map(
            lambda v: "{" + ", ".join(f"{key}: {value}" for key, value in v.items()) + "}"
        )
    ),
    max_leaves=8,
)


@given(pairs=st.lists(st.tuples(st.sampled_from(KEYS), VALUES), max_size=6))
@settings(max_examples=250, deadline=None)
def test_no_study_however_odd_breaks_the_reader(
    pairs: list[tuple[str, str]], tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = tmp_path_factory.getbasetemp() / "odd.yaml"
    path.write_text("".join(f"{key}: {value}\n" for key, value in pairs), encoding="utf-8")
    study, faults = read_study(path)
    assert study is not None or faults
    assert all(fault.instead for fault in faults)
    assert list(faults) == sorted(faults, key=lambda f: f.place)


@given(data=st.binary(max_size=300))
@settings(max_examples=150, deadline=None)
def test_no_bytes_break_the_reader(data: bytes, tmp_path_factory: pytest.TempPathFactory) -> None:
    path = tmp_path_factory.getbasetemp() / "bytes.yaml"
    path.write_bytes(data)
    study, faults = read_study(path)
    assert study is not None or faults
