"""What a study, a family and a recipe say, as frozen values. Lengths in mm, masses in g (see packgen.units.BASE).

Every text is a `Said`: it knows the file, line and column it was written at. Every record has its own place in `at`.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from packgen.faults import NOWHERE, Place, Said
from packgen.units import Quantity

LEVELS = ("first", "younger", "older", "upper")
KINDS = ("artist", "inventor", "both")
JOBS = ("design", "find out")
COMPOSITIONS = ("thirds", "diagonals", "golden section", "halves")
SIDES = ("one-sided", "two-sided-long-edge", "two-sided-short-edge")


@dataclass(frozen=True, slots=True)
class Day:
    """A point in time known to the year, month or day. `year` is astronomical: 0 is 1 BC, -43 is 44 BC."""

    year: int
    month: int | None = None
    day: int | None = None


@dataclass(frozen=True, slots=True)
class When:
    """A date as a parent writes it: a day or a span, with what is unsure about it.

    `start` and `end` are equal for a single date; None means unknown or still open. For `186X` the start is 1860 and
    the end 1869, and `spread` is True because it is one unknown moment in that range, not a span of time.
    """

    said: Said
    start: Day | None
    end: Day | None
    approximate: bool = False
    uncertain: bool = False
    spread: bool = False

    @property
    def is_span(self) -> bool:
        """True if this lasted from one date to another."""
        return self.start != self.end and not self.spread


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on the Earth: degrees north and east, both None if only the name is known."""

    name: Said
    lat: float | None = None
    lon: float | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Chapter:
    """A chapter of the book read aloud; `works` are ids of works it speaks of."""

    title: Said
    pages: Said | None = None
    works: tuple[Said, ...] = ()
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Book:
    title: Said
    author: Said | None = None
    chapters: tuple[Chapter, ...] = ()
    edition: Said | None = None
    isbn: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Event:
    """`short` is the wording for the younger and for narrow places; `what` the full one."""

    when: When
    what: Said
    short: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Detail:
    """A part of a picture worth a close look: fractions 0..1 of the picture, from its upper left corner."""

    name: Said
    left: float
    top: float
    width: float
    height: float
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Meeting:
    """Where lines that run into depth meet in a picture: fractions from its upper left corner."""

    left: float
    top: float
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Work:
    """A painting, drawing or invention. `image` is a checked path inside the study's folder; size in mm.

    `drawing` is a line drawing of the picture, as checked a path. `leave_out` names kinds of sheet not to make of it.
    `composition` are the lines it is built on (`COMPOSITIONS`), None if nobody said.

    `answers` are those to the questions in `look`, in their order, as far as they go; `answers_first` to `look_first`.
    """

    id: Said
    title: Said
    when: When | None = None
    medium: Said | None = None
    width: float | None = None
    height: float | None = None
    image: Path | None = None
    image_said: Said | None = None
    held: Said | None = None
    held_at: Spot | None = None
    link: Said | None = None
    look: tuple[Said, ...] = ()
    look_first: tuple[Said, ...] = ()
    answers: tuple[Said, ...] = ()
    answers_first: tuple[Said, ...] = ()
    tell: Said | None = None
    details: tuple[Detail, ...] = ()
    drawing: Path | None = None
    drawing_said: Said | None = None
    composition: tuple[Said, ...] | None = None
    vanishing: Meeting | None = None
    leave_out: tuple[Said, ...] = ()
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Word:
    """A word to learn; `levels` are those it is for, empty for all."""

    word: Said
    means: Said
    levels: tuple[Said, ...] = ()
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Given:
    """One given value of a challenge or model: a quantity, a word (`canopy: hemisphere`), or several planned ones."""

    name: Said
    values: tuple[Quantity | Said, ...]
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Material:
    """Something to have ready: `amount` per child, or for all together if shared. `unit` may be any word."""

    item: Said
    amount: float | None = None
    unit: Said | None = None
    shared: bool = False
    instead: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Measure:
    what: Said
    unit: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Challenge:
    """A challenge. `change.values` is empty if the parent named the quantity but planned no values.

    `job` is "design" or "find out", None if the model decides. `goal` is the result that is asked for.
    """

    title: Said
    brief: Said
    model: Said | None = None
    given: tuple[Given, ...] = ()
    change: Given | None = None
    measure: Measure | None = None
    keep_same: tuple[Said, ...] = ()
    trials: int | None = None
    materials: tuple[Material, ...] = ()
    caution: tuple[Said, ...] = ()
    steps: tuple[Said, ...] = ()
    extension: Said | None = None
    job: Said | None = None
    goal: Quantity | None = None
    brief_first: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole or mark on a model: `where` is `corners`, `base` or `apex`; `across` its diameter; or only a mark."""

    where: Said
    across: float
    mark_only: bool = False
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class FaceArt:
    """A drawing from the study on a face of a model. `face` is a face's name in the solid (`side 1`, `base`)."""

    face: Said
    image: Path | None = None
    image_said: Said | None = None
    texture: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Model:
    """A cut-and-fold model. `scale` is `auto`, `fit`, `true` or a ratio such as `1:100`."""

    title: Said
    solid: Said
    given: tuple[Given, ...] = ()
    scale: Said = field(default_factory=lambda: Said("auto"))
    mesh: Path | None = None
    mesh_said: Said | None = None
    holes: tuple[Hole, ...] = ()
    faces: tuple[FaceArt, ...] = ()
    steps: tuple[Said, ...] = ()
    materials: tuple[Material, ...] = ()
    caution: tuple[Said, ...] = ()
    about: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Study:
    """Everything a study file says. `life` holds (level, text) pairs for the levels that were written."""

    study: Said
    kind: Said
    in_short: Said
    folder: Path
    born: When | None = None
    died: When | None = None
    place: Spot | None = None
    portrait: Path | None = None
    portrait_said: Said | None = None
    book: Book | None = None
    life: tuple[tuple[str, Said], ...] = ()
    timeline: tuple[Event, ...] = ()
    works: tuple[Work, ...] = ()
    obstacles: tuple[Said, ...] = ()
    facts: tuple[Said, ...] = ()
    words: tuple[Word, ...] = ()
    challenges: tuple[Challenge, ...] = ()
    models: tuple[Model, ...] = ()
    note: Said | None = None
    language: str = "en"
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Printer:
    """`margin` is the strip the printer cannot reach; `duplex_shift` how far a back lands right of, above its front."""

    sides: str = "two-sided-long-edge"
    margin: float = 6.0
    colour: bool = True
    duplex_shift: tuple[float, float] = (0.0, 0.0)
    caliper: float = 0.10
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Child:
    """A child and what suits it. `pack` names a recipe; `extra` gives copies more of a sheet or part of a sheet."""

    name: Said
    age: int | None = None
    pack: Said = field(default_factory=lambda: Said("younger"))
    leave_out: tuple[Said, ...] = ()
    extra: tuple[tuple[Said, int], ...] = ()
    left_handed: bool = False
    larger_type: bool = False
    wider_spacing: bool = False
    tint: bool = False
    glue: bool = True
    letters: str = "print"
    book: Said | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Term:
    starts: date
    weeks: int
    on: tuple[int, ...] = ()
    away: tuple[date, ...] = ()
    minutes: int = 10
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Goal:
    id: Said
    text: Said
    met_by: tuple[Said, ...] = ()
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class RowTried:
    """A row of a trial table as a child filled it in: its label, and the numbers as written, "" for one missed."""

    label: Said
    tried: tuple[Said, ...] = ()
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class ChildResults:
    """What one child's trials of one challenge gave, as written. `study` is None if the challenge's title is enough."""

    challenge: Said
    child: Said
    trials: tuple[RowTried, ...]
    study: Said | None = None
    done: date | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Family:
    """The private file: who the children are, what the printer can do, when the term runs; no file, no folder."""

    family: Said
    children: tuple[Child, ...]
    paper: str = "A4"
    printer: Printer = field(default_factory=Printer)
    term: Term | None = None
    goals: tuple[Goal, ...] = ()
    units: str = "metric"
    place: Spot | None = None
    fonts: tuple[Path, ...] = ()
    results: tuple[ChildResults, ...] = ()
    folder: Path | None = None
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class RecipeSheet:
    """One line of a recipe: a sheet and the options it is to have, as written (name, value) pairs."""

    sheet: Said
    options: tuple[tuple[Said, object], ...] = ()
    at: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Recipe:
    """A file in packs/: which sheets, in which order, at which level. `writing` is the x-height of ruled lines in mm.

    `type_size` is the size of running text in mm; `grade` the highest reading grade its text should have.
    """

    pack: Said
    level: str
    sheets: tuple[RecipeSheet, ...]
    about: Said | None = None
    type_size: float = 4.2
    writing: float = 5.0
    grade: float | None = None
    trials: int = 3
    events: int | None = None
    at: Place = NOWHERE
