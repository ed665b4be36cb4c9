from fractions import Fraction

import pytest
from folding_hands import Mark, Table

from packgen.folding import schemes
from packgen.folding.derive import reading
from packgen.folding.layers import folded
from packgen.folding.program import Close, Cut, Edge, Fold, Program, equal

# CIP4 XJDF specification, Appendix E, Table E.5 (grid columns x rows; folds as shares of the whole sheet, "+"
# where the direction changes). F12-12 and the gate folds are left out: how their notation counts was not read.
CATALOGUE = {
    "F4-1": (2, 1, "1/2"),
    "F6-1": (3, 1, "1/3 1/3"),
    "F8-1": (4, 1, "1/2 1/4"),
    "F8-3": (4, 1, "1/4 1/4 1/4"),
    "F8-7": (2, 2, "1/2 + 1/2"),
    "F12-7": (3, 2, "1/3 1/3 + 1/2"),
    "F16-1": (8, 1, "1/2 1/4 1/8"),
    "F16-6": (4, 2, "1/2 + 1/2 + 1/4"),
    "F16-9": (4, 2, "1/2 1/4 + 1/2"),
    "F16-13": (2, 4, "1/2 + 1/2 1/4"),
    "F32-4": (4, 4, "1/2 + 1/2 + 1/4 + 1/4"),
}
SAME_AS = {"half": "F4-1", "stitched": "F4-1", "quarto": "F8-7", "octavo": "F16-6"}


def program_of(columns: int, rows: int, sequence: str) -> Program:
    """A fold program with the folds of a catalogue row: each folds its share off the far end of what is left."""
    left = [Fraction(1), Fraction(1)]
    axis, steps = 0, []
    for word in sequence.split():
        if word == "+":
            axis = 1 - axis
            continue
        left[axis] -= Fraction(word)
        moving: Edge = "right" if axis == 0 else "top"
        steps.append(Fold(left[axis], moving))
    return Program(
        columns=equal(columns), rows=equal(rows), orientation="landscape", laid="back", steps=tuple(steps), spine="left"
    )


def sequence_of(program: Program) -> str:
    """The fold sequence of a program in the catalogue's notation: the share of the sheet that each fold brings over."""
    low, high = [Fraction(0), Fraction(0)], [Fraction(1), Fraction(1)]
    words: list[str] = []
    last = None
    for step in program.steps:
        if not isinstance(step, Fold):
            continue
        axis = 0 if step.moving in ("left", "right") else 1
        if last is not None and axis != last:
            words.append("+")
        far = step.moving in ("right", "top")
        words.append(str(high[axis] - step.at if far else step.at - low[axis]))
        (high if far else low)[axis] = step.at
        last = axis
    return " ".join(words)


@pytest.mark.parametrize("name", CATALOGUE)
def test_a_catalogue_fold_is_a_few_lines_of_data_and_gives_its_number_of_pages(name: str) -> None:
    columns, rows, sequence = CATALOGUE[name]
    program = program_of(columns, rows, sequence)
    faces = reading(program)
    assert f"F{len(faces)}" == name.split("-")[0]
    assert len({(face.cell, face.side) for face in faces}) == 2 * columns * rows
    assert sequence_of(program) == sequence
    for odd, even in zip(faces[::2], faces[1::2], strict=True):
        assert odd.cell == even.cell
        assert {odd.side, even.side} == {"front", "back"}


@pytest.mark.parametrize("name", CATALOGUE)
def test_a_catalogue_fold_made_by_hand_has_its_pages_in_the_derived_order(name: str) -> None:
    columns, rows, sequence = CATALOGUE[name]
    width, height = 30.0 * columns, 20.0 * rows
    marks = [
        Mark(number, 0, face.side, (face.cell[0] + 0.5) * 30.0, (face.cell[1] + 0.5) * 20.0, face.up)
        for number, face in enumerate(reading(program_of(columns, rows, sequence)), 1)
    ]
    table = Table(width, height, [], "two-sided-long-edge")
    table.marks = marks
    table.lay([0], back_up=True)
    edge, axis = [width, height], 0
    for word in sequence.split():
        if word == "+":
            axis = 1 - axis
            continue
        edge[axis] -= float(Fraction(word)) * (width, height)[axis]
        table.fold("right" if axis == 0 else "top", edge[axis])
    (pile,) = table.piles().values()
    assert table.leaf_through(pile) == [(number, (0, 1)) for number in range(1, 2 * columns * rows + 1)]


@pytest.mark.parametrize("scheme", SAME_AS)
def test_packgens_folds_are_those_of_the_catalogue(scheme: str) -> None:
    (program,) = schemes()[scheme].programs
    columns, rows, sequence = CATALOGUE[SAME_AS[scheme]]
    assert (len(program.columns), len(program.rows)) == (columns, rows)
    assert sequence_of(program) == sequence


def test_a_fold_through_the_middle_of_a_panel_is_refused() -> None:
    program = Program(equal(2), equal(1), "landscape", (Fold(Fraction(1, 3), "left"),), "left")
    with pytest.raises(ValueError, match="middle of panel"):
        folded(program)


def test_a_second_fold_through_a_panel_is_refused_too() -> None:
    quarter, half = Fraction(1, 4), Fraction(1, 2)
    uneven = Program(
        (quarter, half, quarter), equal(1), "landscape", (Fold(quarter, "left"), Fold(half, "right")), "left"
    )
    with pytest.raises(ValueError, match="middle of panel"):
        folded(uneven)


def test_a_cut_must_run_along_panels() -> None:
    cut = Cut(Fraction(0), Fraction(1, 3), Fraction(1), Fraction(1, 3))
    with pytest.raises(ValueError, match="edges of panels"):
        folded(Program(equal(2), equal(2), "landscape", (cut,), "left"))


def test_panels_must_fill_the_sheet() -> None:
    with pytest.raises(ValueError, match="fill the sheet"):
        Program((Fraction(1, 2), Fraction(1, 3)), equal(1), "landscape", (), "left")


def test_a_new_scheme_is_data_alone() -> None:
    """A 16-page ring of 8 x 2 panels with one long slit needs no new code: its pages follow from the slit."""
    half = Fraction(1, 2)
    program = Program(
        columns=equal(8), rows=equal(2), orientation="landscape", faces=1, spine="left",
        steps=(Cut(Fraction(1, 8), half, Fraction(7, 8), half, "slit"), Close((7, 0), (7, 1))),
    )  # fmt: skip
    faces = reading(program)
    assert [face.cell for face in faces[:3]] == [(7, 0), (7, 1), (6, 1)]
    assert [face.up for face in faces] == [(0, 1)] + [(0, -1)] * 8 + [(0, 1)] * 7
    assert faces[-1].cell == (6, 0)
