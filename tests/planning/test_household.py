from packgen.planning.household import for_grown_up, is_container, is_kept, is_small, kit, stand_in


def test_tools_are_kept_and_stuff_is_used_up() -> None:
    assert is_kept("scissors") and is_kept("Blunt scissors") and is_kept("stopwatch")
    assert not is_kept("card") and not is_kept("thread")


def test_a_name_is_matched_as_a_word_and_not_inside_one() -> None:
    assert not is_kept("eyeball stickers")
    assert not is_small("spin")
    assert is_small("steel washers")


def test_the_nearest_stand_in_is_taken() -> None:
    assert stand_in("thin card") == "a cereal box, cut flat"
    assert stand_in("cotton threads").startswith("dental floss")
    assert stand_in("paper cups") == "a yoghurt pot"
    assert stand_in("unobtainium") == ""


def test_rolls_are_bought_whole() -> None:
    assert is_container("rolls") and is_container("bottle")
    assert not is_container("sheet")


def names(*kinds: set[str], glue: bool = True, told: str = "", holes: bool = False) -> list[str]:
    return [tool.words for tool in kit(kinds, [glue] * len(kinds), told, holes)]


def test_the_kit_follows_the_sheets_and_the_glue() -> None:
    assert names({"words"}) == ["a pencil"]
    assert "coloured pencils, a set to share" in names({"telling"})
    assert "a glue stick" in names({"model"}) and "clear tape" not in names({"model"})
    assert "clear tape" in names({"model"}, glue=False) and "a glue stick" not in names({"model"}, glue=False)


def test_every_child_who_cuts_has_scissors_and_who_measures_a_ruler() -> None:
    found = names({"model", "fold-book"}, {"timeline"}, {"matching-game"}, {"words"})
    assert "3 pairs of scissors with blunt ends" in found
    assert "2 rulers" in found and "2 glue sticks" in found and "4 pencils" in found


def test_what_steps_speak_of_and_holes_are_on_the_table() -> None:
    assert "a hole punch or a thick needle" in names({"model"}, holes=True)
    found = names({"challenge"}, told="A grown-up makes the hole, with a drill or a warm needle, on a wooden block.")
    assert {"a hand drill", "a hole punch or a thick needle", "a wooden block to work on"} <= {*found}
    assert not any("drill" in name for name in names({"challenge"}, told="Stop when the stream breaks into drops."))


def test_no_stand_in_is_a_thing_a_small_child_can_choke_on_or_in() -> None:
    # thin plastic bags and small hard things are kept from young children (common practice, no source)
    from packgen.planning import household

    for words in household._INSTEAD.values():
        assert not any(risky in words for risky in ("plastic bag", "carrier bag", "bin bag", " pea", "bean")), words


def test_what_is_sharp_or_hot_is_for_a_grown_up() -> None:
    # Out of the reach of children: knives, needles, hot glue (common practice, no source)
    sharp = ("a hand drill", "a hole punch or a thick needle", "Craft knife", "hot glue gun", "skewers")
    assert all(for_grown_up(item) for item in sharp)
    assert not any(for_grown_up(item) for item in ("scissors", "butter knife", "ruler", "box without a lid"))
