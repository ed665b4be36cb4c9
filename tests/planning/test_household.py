from packgen.planning.household import is_container, is_kept, is_small, kit, stand_in


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


def test_the_kit_follows_the_sheets_and_the_glue() -> None:
    assert kit({"words"}, glue=True, tape=False) == ("pencils", "coloured pencils")
    assert "a glue stick" in kit({"model"}, glue=True, tape=False)
    assert "a glue stick" not in kit({"model"}, glue=False, tape=True)
    assert "clear tape" in kit({"model"}, glue=False, tape=True)
