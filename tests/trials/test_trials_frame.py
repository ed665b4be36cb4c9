"""The small parts of the frame."""

import pytest

from packgen.trials.frame import Expected, Result, Values, band, example_of, figures_for, fill, plain, tidy

TIME = Result("time", "time", "s", lambda v: 1.0, "the time", least=0.15)


def test_an_expectation_is_told_with_no_more_figures_than_its_band_bears():
    assert Expected(1.6123, 1.29, 1.93, "time", "s").text == "1.6 s (1.3 to 1.9 s)"
    assert Expected(235.2, 188.1, 282.9, "time", "s").text == "235 s (188 to 283 s)"
    assert Expected(11.2, 9.4, 12.9, "count", "").text == "11 (9 to 13)"
    assert Expected(38.0, 35.0, 41.0, "angle", "°").text == "38° (35 to 41°)"


def test_a_band_is_the_spread_but_never_narrower_than_a_hand_can_tell():
    assert band(TIME, 10.0, 0.2) == (8.0, 12.0)
    assert band(TIME, 0.5, 0.2) == pytest.approx((0.35, 0.65))
    assert band(TIME, 0.1, 0.2) == pytest.approx((0.0, 0.25))


def test_values_are_read_in_the_unit_a_formula_wants():
    values = Values((("length", 250.0), ("load", 20.0), ("shape", "cone")))
    assert values.metres("length") == 0.25
    assert values.kilograms("load") == 0.02
    assert values.word("shape") == "cone"
    assert not values.has("colour")
    assert values.changed("length", 100.0).number("length") == 100.0
    with pytest.raises(KeyError):
        values.number("shape")
    with pytest.raises(KeyError):
        values.word("length")


def test_a_phrase_loses_the_part_about_what_is_changed():
    phrase = "the time it takes to fall[ {drop height}]"
    texts = (("drop height", "2 m"),)
    assert fill(phrase, texts, "canopy side") == "the time it takes to fall 2 m"
    assert fill(phrase, texts, "drop height") == "the time it takes to fall"
    assert fill(phrase, (), "canopy side") == "the time it takes to fall"


def test_names_are_compared_without_case_or_hyphens():
    assert tidy(" Drop-Height ") == tidy("drop_height") == "drop height"


def test_small_things():
    assert example_of("angle") == "an angle such as 30 deg"
    assert plain(-0.001, 2) == "0.00"
    assert figures_for(0.28, 1.0) == 2
    assert figures_for(100, 1000) == 0
