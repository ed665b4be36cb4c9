import doctest

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.planning import amounts
from packgen.planning.amounts import Amount, added, amount, largest, shown, singular, to_buy
from packgen.units import unit

LENGTHS = st.sampled_from(["mm", "cm", "m", "in", "ft", "yd"])
SIZES = st.floats(0.01, 5000)
UNITS = st.sampled_from(["mm", "m", "in", "yd", "g", "kg", "oz", "ml", "l", "cup", "tsp", "", "sheet", "roll"])


def test_its_examples_hold() -> None:
    assert doctest.testmod(amounts).failed == 0


def test_metres_and_centimetres_add_up() -> None:
    (total,) = added([amount(1, "m"), amount(20, "cm")])
    assert total.value == pytest.approx(1200)
    assert shown(total) == "1.2 m"


@pytest.mark.parametrize(
    ("parts", "of", "value"),
    [
        # exact by definition, NIST SP 811 (2008), appendix B.8: yard 914.4 mm, inch 25.4 mm
        ([(1, "yd"), (36, "in")], "length", 2 * 914.4),
        # 16 ounces to the pound of 453.592 37 g
        ([(16, "oz"), (1, "lb")], "mass", 2 * 453.59237),
        # US customary: 3 teaspoons to the tablespoon, 16 tablespoons to the cup (236.588 236 5 ml)
        ([(3, "tsp"), (15, "tbsp")], "volume", 236.5882365),
    ],
)
def test_customary_units_add_up_by_definition(parts: list[tuple[float, str]], of: str, value: float) -> None:
    (total,) = added([amount(number, name) for number, name in parts])
    assert total.of == of
    assert total.value == pytest.approx(value, rel=1e-9)


def test_words_for_units_merge_whatever_their_number() -> None:
    (total,) = added([amount(1, "Sheet"), amount(2, "sheets")])
    assert total == Amount(3, "sheet", "Sheet")
    assert shown(total) == "3 sheets"
    assert shown(amount(1, "box")) == "1 box"
    assert shown(amount(2, "box")) == "2 boxes"


def test_unlike_amounts_stand_apart() -> None:
    found = added([amount(1, "reel"), amount(2, "m"), amount(1, "reel"), amount(5)])
    assert [(one.value, one.of) for one in found] == [(2, "reel"), (2000, "length"), (5, "")]


def test_a_unit_of_another_dimension_is_a_word() -> None:
    assert not amount(2, "min").measured
    assert not amount(2, "handful").measured


def test_what_is_written_alike_is_shown_alike() -> None:
    assert shown(added([amount(300, "mm"), amount(900, "mm")])[0]) == "1200 mm"
    assert shown(added([amount(2, "tbsp"), amount(1, "tbsp")])[0]) == "3 tbsp"
    assert shown(amount(1, "cup")) == "237 ml"


@pytest.mark.parametrize(
    ("one", "words"),
    # 1 m is 39.37 in; too much is no harm, so a length is rounded up to the step of its unit
    [(amount(1, "m"), "3 1/2 ft"), (amount(20, "mm"), "1 in"), (amount(12, "m"), "13 1/2 yd"),
     (amount(250, "g"), "9 oz"), (amount(1, "kg"), "2 1/4 lb"), (amount(500, "ml"), "2 1/4 cups"),
     (amount(10, "ml"), "2 1/4 tsp")],
)  # fmt: skip
def test_customary_families_read_feet_ounces_and_cups(one: Amount, words: str) -> None:
    assert shown(one, customary=True) == words


@given(SIZES, UNITS)
def test_what_is_shown_to_a_customary_family_is_never_too_little(size: float, name: str) -> None:
    one = amount(size, name)
    words = shown(one, customary=True)
    if one.measured:
        number, _, shown_unit = words.rpartition(" ")
        value = sum(float(a) / float(b or 1) for a, _, b in (part.partition("/") for part in number.split()))
        assert value * unit(shown_unit).factor >= one.value * (1 - 1e-6)


@given(SIZES, UNITS, st.sampled_from([0.0, 0.1]), st.booleans())
def test_what_is_bought_is_enough_and_not_much_more(size: float, name: str, spare: float, customary: bool) -> None:
    one = amount(size, name)
    bought = to_buy(one, spare, customary)
    wanted = one.value * (1 + spare)
    assert bought.value >= wanted * (1 - 1e-6)
    # at most one step above: half a yard, half a pound or a thing
    step = {"length": 460.0, "mass": 115.0, "volume": 100.0}.get(one.of, 1.0)
    assert bought.value <= wanted + step


@given(st.lists(st.tuples(SIZES, LENGTHS), min_size=1, max_size=8))
def test_sums_do_not_depend_on_the_order(parts: list[tuple[float, str]]) -> None:
    forth = added(amount(*part) for part in parts)
    back = added(amount(*part) for part in reversed(parts))
    assert [one.value for one in forth] == [one.value for one in back]
    assert forth[0].value == pytest.approx(sum(size * unit(name).factor for size, name in parts))


def test_a_thing_used_again_is_needed_as_often_as_the_most_at_once() -> None:
    assert largest([amount(2), amount(5), amount(1)]) == (amount(5),)


@pytest.mark.parametrize(
    ("many", "one"),
    [("straws", "straw"), ("Berries", "berry"), ("matches", "match"), ("brushes", "brush"), ("glasses", "glass"),
     ("glass", "glass"), ("compass", "compass"), ("paper  clips", "paper clip"), ("is", "is")],
)  # fmt: skip
def test_plurals_are_known(many: str, one: str) -> None:
    assert singular(many) == one


def test_cups_have_a_plural() -> None:
    # a US cup is 236.588 ml (NIST Handbook 44, appendix C); amounts are rounded up to quarters
    assert shown(amount(1, "l"), customary=True) == "4 1/4 cups"
    assert shown(amount(1, "cup"), customary=True) == "1 cup"
