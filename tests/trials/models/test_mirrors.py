"""Hinged mirrors against a published count."""

import pytest

from packgen.trials.models.mirrors import images


@pytest.mark.parametrize(("angle", "count"), [(10, 35), (45, 7), (60, 5), (90, 3), (120, 2), (180, 1)])
def test_the_number_of_pictures(angle, count):
    # National University of Singapore, "Mirror systems": 10 degrees gives 35 and 45 gives 7 (360/angle - 1).
    assert images(angle) == count
