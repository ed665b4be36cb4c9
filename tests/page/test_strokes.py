"""The letters' strokes: every letter has some, on the lines of the ruling, in the order and direction schools teach."""

import itertools
import string

import pytest

from packgen.page.skeleton import bounds, length, runs, skeleton

LATIN = string.ascii_letters + string.digits + ".,:;!?'\"’‘“”-–—()/&+=%£€$½"
# Letters of European languages beyond a to z, from Danish, French, German, Polish, Czech, Icelandic, Latvian, Romanian,
# Turkish, Hungarian, Welsh and Spanish, and Vietnamese with two accents at once (the alphabets are common knowledge).
ACCENTED = "éèêëñüåçøßšőłæðþœđãõűžčřěůďťľąęįųģķļņșțşğıŵŷÿïîíìāēīūặếợữẩỗÉÅÑÜŐČŠŁÆØŒĐÞÇŞĄÕÂŽŘĎŤĽÍ"


@pytest.mark.parametrize("letter", LATIN + ACCENTED)
def test_every_latin_letter_has_strokes_of_its_own(letter: str) -> None:
    assert skeleton(letter) is not None


@pytest.mark.parametrize("letter", string.ascii_letters + string.digits)
def test_letters_stand_on_the_lines_of_the_ruling(letter: str) -> None:
    # Tall letters twice as high as small ones, tails nearly as deep: National Handwriting Association.
    known = skeleton(letter)
    assert known
    _, low, _, high = bounds(known.strokes)
    tall = letter in "bdfhkl" or not letter.islower()
    top = {"t": 1.6, "i": 1.52, "j": 1.52}.get(letter, 2.0 if tall else 1.0)
    tail = -0.9 if letter in "gjpqy" else (-0.08 if letter == "Q" else 0.0)
    assert high == pytest.approx(top, abs=0.03)
    assert low == pytest.approx(tail, abs=0.03)


def turning(letter: str) -> float:
    """Twice the area the longest curve of the first stroke goes round: positive if it turns anticlockwise."""
    known = skeleton(letter)
    assert known
    line = max(runs(known.strokes[0]), key=length)
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in itertools.pairwise([*line, line[0]]))


# How schools teach it (common practice, no source): round letters anticlockwise from the right, b and p clockwise
# after the stem, stems downwards, bars to the right.
@pytest.mark.parametrize("letter", "acdegoqCGOQ069")
def test_round_letters_turn_anticlockwise(letter: str) -> None:
    assert turning(letter) > 0


@pytest.mark.parametrize("letter", "bhjklmnprtuvwxyBDEFHKLMNPRTUVWXY147")
def test_the_first_stroke_begins_at_the_top(letter: str) -> None:
    known = skeleton(letter)
    assert known
    first = known.strokes[0]
    highest = max(y for seg in first for _, y in seg)
    assert first[0][0][1] >= highest - 0.4


@pytest.mark.parametrize("letter", "ftAEFHTZz")
def test_bars_are_written_to_the_right(letter: str) -> None:
    known = skeleton(letter)
    assert known
    bars = [s for stroke in known.strokes for s in stroke if len(s) == 2 and abs(s[0][1] - s[1][1]) < 1e-9]
    assert bars and all(start[0] < end[0] for start, end in bars)


def test_small_a_and_g_have_one_storey() -> None:
    for letter in "ag":
        known = skeleton(letter)
        assert known and len(known.strokes) == 1 and bounds(known.strokes)[3] == pytest.approx(1.0, abs=0.01)
