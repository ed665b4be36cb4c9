"""The looks of the levels: type falls with age, writing lines lie in published ranges, a child's wishes are met."""

import pytest

from packgen.page.look import BLACK, SOFT, look_for
from packgen.units import MM_PER_POINT

LEVELS = ("first", "younger", "older", "upper")


def test_type_gets_smaller_from_level_to_level() -> None:
    for role in ("title", "body", "small"):
        sizes = [getattr(look_for(level), role).size for level in LEVELS]
        assert sizes == sorted(sizes, reverse=True) and len(set(sizes)) == 4


def test_body_sizes_lie_where_books_for_the_age_have_them() -> None:
    """About 24 pt at 5, 14 to 18 at 6 to 8, 12 from 10 (common practice, no source); not more for the first: J. Watts
    and J. Nisbet, Legibility in Children's Books (1974), hold that more than 18 pt may hinder the knowing of words."""
    points = {level: look_for(level).body.size / MM_PER_POINT for level in LEVELS}
    assert 18 <= points["first"] <= 24 and 14 <= points["younger"] <= 18
    assert 11 <= points["older"] <= 13 and 10 <= points["upper"] <= 12


def test_early_readers_get_the_face_with_single_storey_letters() -> None:
    assert [look_for(level).body.face for level in LEVELS] == ["early", "early", "text", "text"]


def test_writing_lines_lie_in_published_ranges() -> None:
    """Small letters of 4 to 6 mm at Key Stage 1 (National Handwriting Association, UK). US rulings: wide 11/32 in,
    medium (college) 9/32 in."""
    assert 4.0 <= look_for("younger").ruling.x_height <= 6.0
    assert look_for("older").ruling.pitch == pytest.approx(11 / 32 * 25.4, abs=0.05)
    assert look_for("upper").ruling.pitch == pytest.approx(9 / 32 * 25.4, abs=0.05)


@pytest.mark.parametrize("level", LEVELS)
def test_sets_of_lines_do_not_run_into_one_another(level: str) -> None:
    ruling = look_for(level).ruling
    if ruling.guides != "one":
        assert ruling.ascent + ruling.descent < ruling.pitch


def test_text_is_never_lighter_than_seven_to_one_on_white() -> None:
    """WCAG 2.1, 1.4.6, with its definition of relative luminance."""
    for grey in (BLACK, SOFT):
        light = grey / 12.92 if grey <= 0.04045 else ((grey + 0.055) / 1.055) ** 2.4
        assert 1.05 / (light + 0.05) >= 7.0


def test_larger_type_is_a_fifth_larger_and_wider_lines_are_wider_apart() -> None:
    plain, larger, wider = look_for("older"), look_for("older", larger=True), look_for("older", wider=True)
    assert larger.body.size == pytest.approx(1.2 * plain.body.size)
    assert wider.body.size == plain.body.size and wider.body.leading > plain.body.leading
    assert wider.ruling.pitch == pytest.approx(1.2 * plain.ruling.pitch)


def test_a_recipes_writing_height_scales_the_whole_ruling() -> None:
    plain, higher = look_for("younger").ruling, look_for("younger", writing=6.0).ruling
    assert higher.x_height == 6.0
    assert higher.pitch / plain.pitch == pytest.approx(6.0 / plain.x_height)
