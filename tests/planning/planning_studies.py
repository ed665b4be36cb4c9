"""Invented studies, families and terms for the planning tests; nothing here is real."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

from hypothesis import strategies as st

from packgen.faults import Said
from packgen.reading.models import (
    Book,
    Challenge,
    Chapter,
    Child,
    Event,
    Family,
    Given,
    Material,
    Model,
    Study,
    Term,
    When,
    Word,
    Work,
)
from packgen.units import quantity

CHILDREN = (
    Child(Said("Juno"), 11, Said("older")),
    Child(Said("Bram"), 8, Said("younger")),
    Child(Said("Wilf"), 4, Said("first")),
)


def material(
    item: str, amount: float | None = None, unit: str = "", shared: bool = False, instead: str = ""
) -> Material:
    return Material(Said(item), amount, Said(unit) if unit else None, shared, Said(instead) if instead else None)


def challenge(title: str, *materials: Material, trials: int | None = None, values: int = 0) -> Challenge:
    change = Given(Said("blades"), tuple(quantity(i + 3) for i in range(values)))
    return Challenge(Said(title), Said("Build it."), change=change, trials=trials, materials=materials)


def model(title: str, *materials: Material) -> Model:
    return Model(Said(title), Said("prism"), materials=materials)


def study(
    chapters: int = 8,
    works: int = 6,
    challenges: int = 3,
    models: int = 2,
    words: int = 10,
    mentions: dict[int, list[int]] | None = None,
    pages: str = "11-14",
    pictured: bool = True,
) -> Study:
    """A study of that size. `mentions` says which works (by number) each chapter speaks of."""
    told = {} if mentions is None else mentions
    book = Book(
        Said("The Lamp on the Quay"),
        chapters=tuple(
            Chapter(
                Said(f"Chapter {i}"),
                Said(pages) if pages else None,
                tuple(Said(f"work-{w}") for w in told.get(i, []) if w < works),
            )
            for i in range(chapters)
        ),
    )
    return Study(
        Said("Isaure Quenby"),
        Said("inventor"),
        Said("Lamp-maker of Saltmere."),
        Path("."),
        book=book if chapters else None,
        timeline=(Event(When(Said("1834"), None, None), Said("Born")),),
        works=tuple(
            Work(Said(f"work-{i}"), Said(f"Work {i}"), image=Path("w.png") if pictured else None) for i in range(works)
        ),
        words=tuple(Word(Said(f"word{i}"), Said("what it means")) for i in range(words)),
        challenges=tuple(challenge(f"Challenge {i}") for i in range(challenges)),
        models=tuple(model(f"Model {i}") for i in range(models)),
    )


def family(term: Term | None = None, children: tuple[Child, ...] = CHILDREN) -> Family:
    return Family(Said("Ferrar"), children, term=term)


def term(
    weeks: int = 9,
    on: tuple[int, ...] = (2,),
    away: tuple[date, ...] = (date(2027, 3, 17),),
    minutes: int = 10,
    starts: date = date(2027, 2, 3),
) -> Term:
    return Term(starts, weeks, on, away, minutes)


@st.composite
def studies(draw: st.DrawFn) -> Study:
    chapters = draw(st.integers(0, 14))
    works = draw(st.integers(0, 9))
    mentions = draw(st.dictionaries(st.integers(0, 13), st.lists(st.integers(0, 8), max_size=3), max_size=8))
    return study(
        chapters,
        works,
        draw(st.integers(0, 5)),
        draw(st.integers(0, 4)),
        draw(st.integers(0, 12)),
        mentions,
        draw(st.sampled_from(["", "3-9", "pp. 1-40"])),
    )


@st.composite
def terms(draw: st.DrawFn) -> Term:
    starts = draw(st.dates(date(2020, 1, 1), date(2035, 12, 31)))
    weeks = draw(st.integers(1, 20))
    away = draw(st.lists(st.integers(-20, 7 * weeks + 20), max_size=4))
    return Term(
        starts,
        weeks,
        tuple(draw(st.sets(st.integers(0, 6), max_size=3))),
        tuple(starts + timedelta(days=days) for days in away),
        draw(st.sampled_from([5, 10, 15, 20, 45])),
    )
