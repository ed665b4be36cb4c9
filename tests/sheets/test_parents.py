from dataclasses import replace

import pytest
from parent_desks import FAMILIES, challenge, desk, family, work

from packgen.page.parents import (
    capital,
    care_words,
    challenge_care,
    kind_name,
    minutes_of,
    other_minutes,
    persons,
    shortened,
    stock_name,
    table_minutes,
    work_caption,
)
from packgen.planning.challenges import trial_of
from packgen.planning.weeks import Part, Sitting


def test_sheets_that_are_not_in_the_files_are_not_counted() -> None:
    on = desk("guide")
    on.print_runs = tuple(replace(run, kinds=("words",)) for run in on.print_runs)
    assert all(person.kinds == {"words"} for person in persons(on))
    on.print_runs = ()
    assert all("biography" in person.kinds for person in persons(on))


def test_children_without_names_are_called_by_their_pack() -> None:
    assert [p.name for p in persons(desk("guide", of=FAMILIES["no file"]))] == ["Younger child", "Older child"]


def test_kinds_have_names_a_parent_knows() -> None:
    on = desk("guide")
    assert kind_name(on, "fold-book") == "small book"
    assert kind_name(on, "a-new-sheet") == "a new sheet"
    assert stock_name(on, "plain") == "plain paper" and stock_name(on, "vellum") == "vellum"


def test_minutes_add_up_over_sittings_and_tell_the_day() -> None:
    on = desk("guide")
    week = on.term.weeks[0]
    days = [replace(sitting, parts=(Part("tell", 5), Part("look", 4))) for sitting in (*week.sittings, *week.sittings)]
    made = replace(week, sittings=(Sitting(week.dates[0], days[0].parts), Sitting(None, days[1].parts)),
                   other=(Part("read", 18),), loads=())  # fmt: skip
    assert minutes_of(on, made, ("tell",)) == ("10 min", "Wednesday")
    assert minutes_of(on, made, ("read",)) == ("18 min", "beforehand")
    assert minutes_of(on, made, ("words",)) == ()
    assert table_minutes(made) == 18 and other_minutes(made) == 18


def test_cautions_in_one_word_become_sentences() -> None:
    on = desk("guide")
    (water,) = care_words(on, ["water"])
    assert water.endswith(".") and len(water.split()) > 3
    assert care_words(on, ["mind the cat", "mind the cat"]) == ("Mind the cat.",)


def test_a_challenge_has_the_cautions_of_its_model_and_the_last_word_is_the_parents() -> None:
    plan, _ = trial_of(challenge(), family())
    assert plan
    words = challenge_care(desk("guide"), challenge(), plan)
    assert words[: len(plan.cautions)] == plan.cautions
    assert words[-1] == "The adult who is there decides, and the rules of the place come first."


@pytest.mark.parametrize(("title", "short"), [
    ("The Harbour at Dusk", "The Harbour at Dusk"),
    ("The Harbour at Dusk, with two boats and a lamplighter going home", "The Harbour at Dusk, with two boats and a …"),
])  # fmt: skip
def test_titles_are_shortened_between_words(title: str, short: str) -> None:
    assert shortened(title) == short


def test_a_caption_has_what_is_known() -> None:
    on = desk("guide")
    assert work_caption(on, work(11)) == ("1861", "oil on panel", "42 × 31 cm")
    assert work_caption(on, replace(work(1), when=None, medium=None, width=None)) == ()
    assert capital("ebb and flow") == "Ebb and flow" and capital("") == ""
