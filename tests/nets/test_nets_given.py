"""What a parent may write for a solid, and what is said about what cannot be."""

import pytest

from packgen.nets import NetError, build, entry
from packgen.units import quantity


def refused(name, given):
    with pytest.raises(NetError) as caught:
        build(name, given)
    return caught.value


def test_names_may_have_spaces_hyphens_or_underscores():
    one = build("truncated cone", {"diameter": 60, "top diameter": 30, "height": 40})
    two = build("truncated-cone", {"diameter": 60, "top_diameter": 30, "height": 40})
    three = build("Truncated_Cone", {"Diameter": 60, "top-diameter": 30, "height": 40})
    assert one == two == three


def test_a_misspelt_solid_offers_the_nearest():
    fault = refused("piramid", {})
    assert "no solid called 'piramid'" in fault.message
    assert "Did you mean 'pyramid'?" in fault.instead


def test_a_misspelt_size_offers_the_nearest():
    fault = refused("cuboid", {"length": 60, "width": 40, "hight": 30})
    assert "no 'hight'" in fault.message
    assert "Did you mean 'height'?" in fault.instead


def test_a_missing_size_is_asked_for_by_name():
    fault = refused("cuboid", {"length": 60, "width": 40})
    assert "needs 'height'" in fault.message
    assert fault.instead == "Add height: 60 mm."


def test_a_missing_alternative_names_all_of_them():
    fault = refused("prism", {"sides": 6, "height": 40})
    assert "'side' or 'across' or 'corners'" in fault.message


def test_two_sizes_that_say_the_same_are_refused():
    fault = refused("prism", {"sides": 6, "side": 20, "across": 40, "height": 40})
    assert "'side' and 'across'" in fault.message


def test_the_same_size_under_two_names_is_refused():
    assert "given twice" in refused("prism", {"sides": 6, "across": 40, "across flats": 40, "height": 40}).message


def test_a_length_without_a_unit_is_found_out():
    fault = refused("cube", {"edge": quantity(60)})
    assert "no unit" in fault.message
    assert fault.instead == "Write edge: 60 mm, or cm, m, in."


def test_lengths_may_come_in_any_unit():
    assert build("cube", {"edge": quantity(2, "in")}) == build("cube", {"edge": 50.8})


def test_a_mass_is_no_length():
    assert "cannot be 60 g" in refused("cube", {"edge": quantity(60, "g")}).message


def test_a_word_is_no_length():
    assert "must be a number" in refused("cube", {"edge": "large"}).message


@pytest.mark.parametrize("edge", [0, -5, float("nan"), float("inf")])
def test_zero_negative_and_endless_lengths_are_refused(edge):
    fault = refused("cube", {"edge": edge})
    assert fault.instead.startswith("Write")


@pytest.mark.parametrize(("sides", "word"), [(2, "at least 3"), (25, "at most 24"), (4.5, "whole number")])
def test_impossible_numbers_of_sides_are_refused(sides, word):
    assert word in refused("prism", {"sides": sides, "side": 20, "height": 30}).message


def test_an_unknown_word_offers_the_nearest():
    fault = refused("mesh", {"text": "OFF", "up": "x"})
    assert "Choose one of: z, y" in fault.instead


def test_the_catalogue_tells_what_a_solid_takes():
    assert entry("prism").takes == "sides, side or across or corners, height"
    assert entry("pyramid").takes == "sides, base or across or corners, height or slant"
