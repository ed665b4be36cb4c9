"""Sentences that are too hard for the pack that is to read them."""

from __future__ import annotations

from pathlib import Path

from packgen.faults import Place, Said
from packgen.planning.plan import PackPlan
from packgen.planning.reading_check import reading_warnings, texts_for
from packgen.reading.models import Child, Recipe, Study, Word

HARD = "Notwithstanding considerable institutional opposition, she systematically recalibrated every instrument."
EASY = "She lit the lamp. The boats came home."


def _study(**more: object) -> Study:
    life = (("younger", Said(HARD, Place("s.yaml", 9, 3))), ("older", Said(EASY, Place("s.yaml", 12, 3))))
    return Study(Said("Ola Veen"), Said("inventor"), Said("Maker."), Path(), life=life, **more)  # type: ignore[arg-type]


def _pack(level: str, grade: float) -> PackPlan:
    recipe = Recipe(Said(level), level, (), grade=grade)
    return PackPlan(level, recipe, Child(Said("A"), None, Said(level)), ())


def test_a_hard_sentence_is_told_with_its_place_and_its_hardest_words() -> None:
    (found,) = reading_warnings(_study(), [_pack("younger", 3)])
    assert found.place == Place("s.yaml", 9, 3)
    assert "grade" in found.message
    assert "recalibrated" in found.instead or "institutional" in found.instead or "systematically" in found.instead


def test_a_text_written_for_another_level_is_not_held_against_this_one() -> None:
    assert reading_warnings(_study(), [_pack("older", 6)]) == ()


def test_a_sentence_two_packs_read_is_told_once() -> None:
    packs = [_pack("younger", 3), _pack("younger", 2)]
    assert len(reading_warnings(_study(), packs)) == 1


def test_words_meant_for_older_children_are_not_read_by_the_younger() -> None:
    word = Word(Said("gauge"), Said("a tool"), (Said("older"),))
    assert Said("a tool") not in texts_for(_study(words=(word,)), "younger")
    assert Said("a tool") in texts_for(_study(words=(word,)), "older")
