"""How a model is built, in words: the stages of its net as sentences, the study's own steps where they belong."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from packgen.nets import NetSheets, Solid, Stage
from packgen.nets.steps import run_of
from packgen.page.desk import Desk
from packgen.page.net_key import length_words, say

_GLUED = ("glue", "teeth", "close", "close_teeth", "wind_close", "strips")
_CLOSED = ("close", "close_teeth")
_UNCUT = ("score", "cut")
_FLAT = ("fold", "bend", *_GLUED)
# An order begins a sentence, or follows "then", "and", a comma or a colon: "Is it grey? Colour it yellow."
_ORDER = re.compile(r"(?:^|[.?!:;,] |\bthen |\band )(colour|color|paint|draw|decorate|shade|prick|pierce|punch|poke)\b")
_PIERCING = {"prick", "pierce", "punch", "poke"}
_AFTER = re.compile(r"\b(?:finished|ready|when it is|once it|chart|graph|table of|what (?:you|happen))")
MANY = 12
"""So many tabs or more a small child glues with a grown-up (common practice, no source)."""
TICKED = 3
"""A stage with so many tabs or more has a row of boxes to tick."""


@dataclass(frozen=True, slots=True)
class Told:
    """One step: its words, and the letters to tick one by one, if it glues many."""

    words: str
    letters: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Extra:
    """What the steps depend on beside the net: the study's `own`, a thread for its hole, faces that bear no name."""

    own: tuple[str, ...] = ()
    thread: bool = False
    unnamed: frozenset[str] = frozenset()


def told_steps(desk: Desk, net: NetSheets, extra: Extra) -> tuple[Told, ...]:
    """Every step of building a net in order.

    Of the study's `own` steps one that begins with 'Before you cut' comes first, 'Before you fold' or 'glue' before
    that is done, any other that begins with 'Before' ahead of the last face. What colours or draws on the card comes
    first too, what pierces it while it is flat; the rest come at the end.
    """
    rows: list[tuple[str, Told]] = []
    many, first = _many(desk, net), True
    for stage in net.stages:
        if stage.kind in _CLOSED and stage.thread and extra.thread:
            rows.append(("thread", Told(say(desk, "step_thread"))))
        rows.append((stage.kind, _told(desk, net.net.solid, stage, _Way(first, many, stage.face in extra.unnamed))))
        first = first and stage.kind != "glue"
        many = 0 if stage.kind in ("glue", "teeth") else many
    for words in extra.own:
        at = _place(words, [kind for kind, _ in rows])
        rows.insert(at, ("own", Told(words)))
    return tuple(told for _, told in rows)


def _place(words: str, kinds: Sequence[str]) -> int:
    """Where among the stages one of the study's own steps belongs."""
    wanted = _stages_after(words.lower())
    return next((k for k, kind in enumerate(kinds) if kind in wanted), len(kinds))


def _stages_after(said: str) -> tuple[str, ...]:
    """Before which stages one of the study's own steps stands; none if it comes at the end."""
    if not said.startswith("before"):
        orders = {match[1] for match in _ORDER.finditer(said)}
        if not orders or _AFTER.search(said):
            return ()
        return _FLAT if orders & _PIERCING else _UNCUT
    opening = re.findall(r"\w+", said)[:5]
    if "cut" in opening or "score" in opening:
        return _UNCUT
    if "fold" in opening:
        return ("fold", "bend")
    return _GLUED if "glue" in opening else (*_CLOSED, "thread", "wind_close")


def _many(desk: Desk, net: NetSheets) -> int:
    """How many tabs there are to glue, if they are too many for a small child alone; else 0."""
    tabs = sum(len(part.tabs) for part in net.net.parts)
    return tabs if desk.level in ("first", "younger") and tabs >= MANY else 0


@dataclass(frozen=True, slots=True)
class _Way:
    """How a stage is told: as the `first` with glue, with help for so `many` tabs, its face `bare` of a name."""

    first: bool
    many: int
    bare: bool


def _told(desk: Desk, solid: Solid, stage: Stage, way: _Way) -> Told:
    letters = stage.letters
    tabs = say(desk, "tabs", letters=letters, run=len(letters) > 3 and run_of(letters)) if letters else ""
    shown = solid.shown(stage.face)
    face = say(desk, "face_words", face=shown, numbered=shown[-1:].isdigit())
    words = say(
        desk, f"step_{stage.kind}", letters=letters, tabs=tabs, face=face, count=stage.count, folds=stage.folds,
        own=stage.own, first=way.first, many=way.many, bare=way.bare, glue=not desk.no_glue,
        size=length_words(desk, stage.size),
    )  # fmt: skip
    return Told(words, letters if len(letters) >= TICKED and stage.kind in ("glue", "close") else ())


def step_lines(desk: Desk, net: NetSheets, own: Sequence[str] = ()) -> tuple[str, ...]:
    """Every step of building a net as sentences."""
    return tuple(told.words for told in told_steps(desk, net, Extra(tuple(own))))


def ready_words(desk: Desk, net: NetSheets) -> tuple[str, ...]:
    """The tools that building a net takes, and glue or tape; not the card itself."""
    kinds = {stage.kind for stage in net.stages}
    items = [say(desk, "ready_scissors")]
    if "score" in kinds:
        items.append(say(desk, "ready_score"))
    if net.net.joints or kinds & {"wind_close", "strips"}:
        items.append(say(desk, "ready_no_glue" if desk.no_glue else "ready_glue"))
    if kinds & {"punch", "string", "axle"}:
        items.append(say(desk, "ready_hole"))
    if "string" in kinds and not desk.no_glue:
        items.append(say(desk, "ready_tape"))
    return tuple(items)


def care_words(desk: Desk, nets: Sequence[NetSheets], said: str = "") -> tuple[str, ...]:
    """What to take care of when building nets, but for what is `said` already; the last line is for a grown-up."""
    about = said.lower()
    kinds = {stage.kind for net in nets for stage in net.stages}
    rows = []
    if "scissor" not in about:
        rows.append(say(desk, "care_cut"))
    if kinds & {"punch", "string", "axle"} and not any(word in about for word in ("hole", "prick", "punch", "needle")):
        rows.append(say(desk, "care_prick"))
    if "string" in kinds and not any(word in about for word in ("thread", "string", "neck")):
        rows.append(say(desk, "care_thread"))
    glue = not desk.no_glue and any(net.net.joints for net in nets)
    return (*rows, say(desk, "care_grown_up", glue=glue))
