"""A family file is read whole: children, printer, term and goals."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reading_files import PACKS, is_case_of, read_text

from packgen.faults import Fault, Severity
from packgen.reading import messages
from packgen.reading.family import child_folder, pack_for, read_family
from packgen.reading.models import Family

FULL = """\
family: Ferrar                   # invented
paper: A4
printer: {sides: two-sided-long-edge, margin: 6 mm, colour: false, duplex shift: [0.5 mm, -1 mm], caliper: 0.1 mm}
children:
  - {name: Juno, age: 11, pack: older, left handed: yes, larger-type: ja, wider_spacing: on, tint: 1, letters: joined}
  - {name: Bram, age: 8, pack: younger, leave_out: [enlarging-grid], extra: {design-draft: 3}, book: {scheme: slit}}
  - {name: Wilf, age: 4, glue: no, book: stitched}
term: {starts: 2027-02-03, weeks: 9, on: Wednesday, away: [2027-03-17], minutes: 10}
goals:
  - {id: make-1, text: Plans and makes a thing to a brief, met_by: [challenge, model]}
  - Looks closely
units: customary
place: {name: Saltmere, lat: 50.4, lon: -4.9}
"""


def read(folder: Path, text: str) -> Family:
    family, faults = read_text(folder, "family", text)
    assert [str(fault) for fault in faults] == []
    assert isinstance(family, Family)
    return family


def faults_of(folder: Path, text: str) -> tuple[Fault, ...]:
    return read_text(folder, "family", text)[1]


def one_child(folder: Path, text: str) -> Family:
    return read(folder, f"family: F\nchildren: [{{{text}}}]\n")


def test_the_whole_family_is_read(tmp_path: Path) -> None:
    family = read(tmp_path, FULL)
    hash(family)
    assert (family.family, family.paper, family.units, family.folder) == ("Ferrar", "A4", "customary", tmp_path)
    printer = family.printer
    assert (printer.sides, printer.margin, printer.colour) == ("two-sided-long-edge", 6.0, False)
    assert (printer.duplex_shift, printer.caliper) == ((0.5, -1.0), 0.1)
    juno, bram, wilf = family.children
    assert (juno.left_handed, juno.larger_type, juno.wider_spacing, juno.tint, juno.letters) == (
        True, True, True, True, "cursive"
    )  # fmt: skip
    assert (bram.leave_out, bram.extra, bram.book) == (("enlarging-grid",), (("design-draft", 3),), "slit")
    assert (wilf.pack, wilf.glue, wilf.book) == ("first", False, "stitched")
    assert family.term is not None
    assert (family.term.starts, family.term.on, family.term.away) == (date(2027, 2, 3), (2,), (date(2027, 3, 17),))
    assert [(g.id, g.met_by) for g in family.goals] == [("make-1", ("challenge", "model")), ("looks-closely", ())]


# The ages of the design: first about 3-5, younger 6-8, older 9-12, upper 13 and over.
@pytest.mark.parametrize(
    ("age", "pack"),
    [
        (3, "first"),
        (5, "first"),
        (6, "younger"),
        (8, "younger"),
        (9, "older"),
        (12, "older"),
        (13, "upper"),
        (17, "upper"),
    ],
)
def test_a_child_without_a_pack_gets_the_one_of_its_age(age: int, pack: str, tmp_path: Path) -> None:
    assert pack_for(age) == pack
    assert one_child(tmp_path, f"name: Juno, age: {age}").children[0].pack == pack


@pytest.mark.parametrize("text", ["4 1/2", "4.5", "4½", "4 years", "4 years old", "4"])
def test_ages_are_whole_years(text: str, tmp_path: Path) -> None:
    assert one_child(tmp_path, f"name: Wilf, age: {text}").children[0].age == 4


def test_an_age_far_from_the_pack_is_a_warning(tmp_path: Path) -> None:
    family, (warned,) = read_text(tmp_path, "family", "family: F\nchildren: [{name: Wilf, age: 4, pack: older}]\n")
    assert warned.severity is Severity.WARNING
    assert isinstance(family, Family)
    assert faults_of(tmp_path, "family: F\nchildren: [{name: Bram, age: 8, pack: older}]\n") == ()


@pytest.mark.parametrize(
    ("paper", "wanted"),
    [
        ("A4", "A4"),
        ("a4", "A4"),
        ("letter", "Letter"),
        ("US Letter", "Letter"),
        ("us-letter", "Letter"),
        ("DIN A4", "A4"),
    ],
)
def test_papers_are_known_in_any_case(paper: str, wanted: str, tmp_path: Path) -> None:
    assert one_child(tmp_path, f"name: Juno, age: 9}}]\npaper: {paper}\ngoals: [{{text: x").paper == wanted


@pytest.mark.parametrize(
    ("days", "wanted"),
    [
        ("Wednesday", (2,)), ("wed", (2,)), ("Wednesdays", (2,)), ("[Monday, Thursday]", (0, 3)),
        ("Thurs., Mon", (0, 3)),
        ("Monday and Thursday", (0, 3)), ("[Tue, Tuesday]", (1,)), ("Sa", (5,)), ("", (2,)),
    ],
)  # fmt: skip
def test_days_of_the_week_are_understood(days: str, wanted: tuple[int, ...], tmp_path: Path) -> None:
    text = f"family: F\nchildren: [{{name: J, age: 9}}]\nterm:\n  starts: 3 February 2027\n  weeks: 9\n  on: {days}\n"
    family = read(tmp_path, text)
    assert family.term is not None and family.term.on == wanted


def test_times_away_may_be_spans(tmp_path: Path) -> None:
    text = "term: {starts: 2027-02-03, weeks: 9, away: ['2027-03-15/2027-03-17', 1 March 2027]}\n"
    family = read(tmp_path, f"family: F\nchildren: [{{name: J, age: 9}}]\n{text}")
    assert family.term is not None
    assert family.term.away == (date(2027, 3, 1), date(2027, 3, 15), date(2027, 3, 16), date(2027, 3, 17))


@pytest.mark.parametrize("starts", ["2027-02", "03/02/2027", "2027-02-30", "soon", "44 BC", "9999-12-31"])
def test_a_term_starts_on_one_full_day(starts: str, tmp_path: Path) -> None:
    text = f"family: F\nchildren: [{{name: J, age: 9}}]\nterm: {{starts: {starts}, weeks: 9}}\n"
    assert len(faults_of(tmp_path, text)) == (starts != "9999-12-31")


@pytest.mark.parametrize(
    ("sides", "wanted"),
    [
        ("one-sided", "one-sided"),
        ("One sided", "one-sided"),
        ("two_sided_short_edge", "two-sided-short-edge"),
        ("long edge", "two-sided-long-edge"),
    ],
)
def test_sides_are_the_words_of_the_printing_standard(sides: str, wanted: str, tmp_path: Path) -> None:
    text = f"family: F\nchildren: [{{name: J, age: 9}}]\nprinter: {sides}\n"
    assert read(tmp_path, text).printer.sides == wanted


def test_two_sided_alone_is_asked_for_its_edge(tmp_path: Path) -> None:
    (fault,) = faults_of(tmp_path, "family: F\nchildren: [{name: J, age: 9}]\nprinter: {sides: two-sided}\n")
    assert "two-sided-long-edge" in fault.instead and "two-sided-short-edge" in fault.instead


@pytest.mark.parametrize("shift", ["[0.5 mm, -1 mm]", "0.5 mm, -1 mm", "[0.5 mm, -0.1 cm]"])
def test_the_shift_of_a_back_is_two_lengths(shift: str, tmp_path: Path) -> None:
    text = f"family: F\nchildren: [{{name: J, age: 9}}]\nprinter:\n  duplex shift: {shift}\n"
    assert read(tmp_path, text).printer.duplex_shift == (0.5, -1.0)


@pytest.mark.parametrize(
    "name", ["葛飾 北斎", "Ελένη", "Жанна", "Nguyễn Văn Cao", "x" * 60, "O'Neill", "J.", "x" * 120]
)
def test_names_of_children_are_of_any_script(name: str, tmp_path: Path) -> None:
    family = read(tmp_path, f'family: F\nchildren: [{{name: "{name}", age: 9}}]\n')
    assert family.children[0].name == name
    assert child_folder(family.children[0].name)


def test_a_name_too_long_is_told(tmp_path: Path) -> None:
    (fault,) = faults_of(tmp_path, f"family: F\nchildren: [{{name: {'x' * 121}, age: 9}}]\n")
    assert is_case_of(fault, messages.TOO_LONG)


def test_names_that_would_share_a_folder_are_told_with_both_lines(tmp_path: Path) -> None:
    children = "  - {name: Ann-Marie, age: 9}\n  - {name: Ann Marie!, age: 7}\n  - {name: ann-marie, age: 5}\n"
    faults = faults_of(tmp_path, f"family: F\nchildren:\n{children}")
    assert [f.place.line for f in faults] == [4, 5]
    assert "line 3" in faults[0].message


def test_a_child_called_parent_does_not_take_the_parents_folder() -> None:
    assert child_folder("Parent") != "parent"
    assert child_folder("!") == "child"


def test_a_wrong_pack_is_one_fault_and_suggests_the_nearest(tmp_path: Path) -> None:
    (fault,) = faults_of(tmp_path, "family: F\nchildren: [{name: J, pack: oldr}]\n")
    assert "`older` meant" in fault.instead


def test_a_familys_own_pack_is_known_if_the_caller_knows_it(tmp_path: Path) -> None:
    path = tmp_path / "family.yaml"
    path.write_text("family: F\nchildren: [{name: J, pack: Our Own}]\n")
    family, faults = read_family(path, (*PACKS, "our-own"))
    assert faults == () and family is not None
    assert family.children[0].pack == "our-own"


def test_goals_without_ids_get_different_ones(tmp_path: Path) -> None:
    family = read(tmp_path, "family: F\nchildren: [{name: J, age: 9}]\ngoals: [Looks, Looks, {id: looks, text: x}]\n")
    assert sorted(goal.id for goal in family.goals) == ["looks", "looks-2", "looks-3"]


def test_fonts_are_files_below_the_family_or_anywhere(tmp_path: Path) -> None:
    (tmp_path / "Own.TTF").touch()
    other = tmp_path / "else" / "Other.otf"
    other.parent.mkdir()
    other.touch()
    text = f"family: F\nchildren: [{{name: J, age: 9}}]\nfonts: [Own.TTF, '{other}']\n"
    assert read(tmp_path, text).fonts == ((tmp_path / "Own.TTF").resolve(), other.resolve())


def test_a_co_op_of_three_hundred_children_is_read(tmp_path: Path) -> None:
    text = "family: Co-op\nchildren:\n" + "".join(f"  - {{name: Child {i}, age: {3 + i % 12}}}\n" for i in range(300))
    assert len(read(tmp_path, text).children) == 300


def test_an_empty_family_is_told_its_lines(tmp_path: Path) -> None:
    family, (fault,) = read_text(tmp_path, "family", "")
    assert family is None
    assert "children:" in fault.instead


KEYS = [
    "family",
    "children",
    "name",
    "age",
    "pack",
    "printer",
    "term",
    "starts",
    "on",
    "goals",
    "extra",
    "duplex shift",
]
VALUES = st.recursive(
    st.sampled_from(["~", "1834", "6 mm", "x: y", "[]", "{}", "yes", "2027-02-03", "Monday", "older", "J", "9"]),
    lambda inner: (
        st.lists(inner, max_size=3).map(lambda v: f"[{', '.join(v)}]")
        | st.dictionaries(st.sampled_from(KEYS), inner, max_size=4).map(
            lambda v: "{" + ", ".join(f"{key}: {value}" for key, value in v.items()) + "}"
        )
    ),
    max_leaves=8,
)


@given(pairs=st.lists(st.tuples(st.sampled_from(KEYS), VALUES), max_size=6))
@settings(max_examples=200, deadline=None)
def test_no_family_however_odd_breaks_the_reader(
    pairs: list[tuple[str, str]], tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = tmp_path_factory.getbasetemp() / "odd-family.yaml"
    path.write_text("".join(f"{key}: {value}\n" for key, value in pairs), encoding="utf-8")
    family, faults = read_family(path, PACKS)
    assert family is not None or faults
