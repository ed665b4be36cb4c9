"""The joined hand: strokes never jump, the pencil lifts where it should, dots and bars come last."""

import itertools
import math
import string

from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.page import strokes, strokes_joined
from packgen.page.joined import joined
from packgen.page.skeleton import points


def test_the_joined_hand_has_every_small_letter() -> None:
    assert set(strokes_joined.JOINED) == set(strokes.SMALL) == set(string.ascii_lowercase)


@given(st.text(alphabet=string.ascii_lowercase + "éñüçí", min_size=1, max_size=14))
@settings(max_examples=60, deadline=None)
def test_joined_strokes_never_jump(word: str) -> None:
    for stroke in joined(tuple(word)).strokes:
        for before, after in itertools.pairwise(stroke):
            assert math.dist(before[-1], after[0]) < 1e-9


def test_letters_join_until_the_pencil_lifts() -> None:
    # The usual break letters b g j p q s x y z (common practice in British schools, no source).
    assert joined(tuple("main")).marked == 1
    assert joined(tuple("mug")).marked == 1
    assert joined(tuple("gum")).marked == 2
    assert joined(tuple("boys")).marked == 3
    assert joined(tuple("Main")).marked == 2 + 1


def test_dots_and_bars_come_after_the_word() -> None:
    known = joined(tuple("tint"))
    assert known.marked == 1 and len(known.strokes) == 1 + 3
    assert len(points(known)) == 1


def test_letters_of_a_joined_word_keep_their_order() -> None:
    assert joined(tuple("minimum")).width > joined(tuple("minim")).width > joined(tuple("min")).width
