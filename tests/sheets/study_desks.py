"""Desks for the tests of sheets: an invented study, one child, and no pictures."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from packgen.faults import Said
from packgen.page.blocks import Kit
from packgen.page.desk import PAPERS, Desk
from packgen.page.look import look_for
from packgen.page.type import Faces
from packgen.page.wording import Wording
from packgen.pictures.load import Store
from packgen.planning.plan import PackPlan, PlanItem
from packgen.planning.weeks import TermPlan
from packgen.reading.models import Book, Child, Family, Recipe, RecipeSheet, Study, Word
from packgen.resources import folder

FACES = Faces()
WRITING = {"first": 10.0, "younger": 5.0, "older": 3.0, "upper": 2.5}


def words_desk(level: str, words: Sequence[tuple[str, str]], *, paper: str = "A4", left_handed: bool = False,
               letters: str = "print", most: int | None = None) -> Desk:  # fmt: skip
    """A desk for the words sheet of one child, with these words in the study."""
    study = Study(
        Said("Isaure Quenby"), Said("inventor"), Said("Lamp-maker who measured the tides."), Path(),
        book=Book(Said("The Lamp on the Quay")), words=tuple(Word(Said(a), Said(b)) for a, b in words),
    )  # fmt: skip
    child = Child(Said("Juno"), 8, Said(level), left_handed=left_handed, letters=letters)
    recipe = Recipe(Said(level), level, (RecipeSheet(Said("words")),), writing=WRITING[level])
    item = PlanItem("words", study, () if most is None else (("most", most),), 2)
    kit = Kit(FACES, look_for(level, writing=WRITING[level]))
    return Desk(
        study, Family(Said("Ferrar"), (child,), paper), PackPlan("juno", recipe, child, (item,)), item, kit,
        PAPERS[paper], Wording([folder("templates")]), Store(Path()), TermPlan((), 10, (), (), ()),
    )  # fmt: skip
