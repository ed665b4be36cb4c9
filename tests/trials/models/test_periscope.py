"""The periscope's geometry."""

import pytest

from packgen.trials.models.periscope import mirror_length, view_height


def test_a_mirror_across_an_eighty_millimetre_tube():
    # Hypotenuse of a right-angled triangle with equal sides: 80 mm gives 113.1 mm.
    assert mirror_length(80) == pytest.approx(113.1, abs=0.05)


def test_a_window_half_as_high_shows_the_whole_at_equal_distances():
    # OpenStax College Physics, section 25.2: a mirror half your height shows all of you (eye and image equally far).
    assert view_height(0.85, 1.0, 1.0) == pytest.approx(1.70)


def test_at_the_window_itself_only_the_window_is_seen():
    assert view_height(60, 400, 0) == 60
