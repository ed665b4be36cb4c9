import pytest

from packgen.planning.aims import AIMS, BANDS, aims_for
from packgen.reading.models import LEVELS


def test_every_level_has_an_age_band() -> None:
    assert tuple(BANDS) == LEVELS


@pytest.mark.parametrize("level", LEVELS)
def test_every_level_has_aims_of_making_and_of_looking(level: str) -> None:
    kinds = {kind for aim in aims_for(level) for kind in aim.met_by}
    assert {"challenge", "picture-study", "telling"} <= kinds


def test_the_aims_name_the_framework_of_their_age_band() -> None:
    # NGSS has engineering design for K-2, 3-5 and middle school (codes K-2-ETS1, 3-5-ETS1, MS-ETS1)
    bands = {"first": "K-2-ETS1", "younger": "K-2-ETS1", "older": "3-5-ETS1", "upper": "MS-ETS1"}
    for aim in AIMS:
        if aim.spirit.startswith("NGSS"):
            assert bands[aim.level] in aim.spirit
    assert len({aim.id for aim in AIMS}) == len(AIMS)
    assert aims_for("no such level") == ()
