"""Desks for the page modules of a trial: a challenge as a parent writes it, one child, no pictures."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from packgen.faults import Said
from packgen.page.blocks import Kit
from packgen.page.desk import PAPERS, Desk
from packgen.page.look import look_for
from packgen.page.type import Faces
from packgen.page.wording import Wording
from packgen.pictures.load import Store
from packgen.planning.challenges import trial_of
from packgen.planning.plan import PackPlan, PlanItem
from packgen.planning.weeks import TermPlan
from packgen.reading.models import Challenge, Child, Family, Recipe, RecipeSheet, Spot, Study
from packgen.reading.study import read_study
from packgen.resources import folder
from packgen.trials.trial import TrialPlan

FACES = Faces()
WORDS = Wording([folder("templates")])
WRITING = {"first": 10.0, "younger": 5.0, "older": 3.0, "upper": 2.5}
LEVELS = ("younger", "older", "upper")
CANOPY = """
    title: A soft landing
    brief: Make a canopy.
    model: canopy
    given: {canopy: square-pyramid, load mass: 20 g, drop height: 2 m}
    change: {canopy side: [90 mm, 120 mm, 150 mm]}
    measure: {what: time to fall, unit: s}
"""
COINS = """
    title: A bridge
    brief: Build a bridge.
    change: {shape: [flat, folded, a very long word indeed, arch]}
    measure: {what: coins it bears, unit: pennies}
"""
CLOCK = "\n    title: A shadow clock\n    brief: Make a clock.\n    model: shadow-clock\n"


@cache
def study_of(text: str) -> Study:
    """A study with one challenge of these lines."""
    with TemporaryDirectory() as held:
        path = Path(held) / "study.yaml"
        path.write_text("study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker.\nchallenges:\n  -" + text)
        study, faults = read_study(path)
    assert study and not faults, [str(fault) for fault in faults]
    return study


def trial_desk(level: str, text: str = CANOPY, *, paper: str = "A4", options: tuple[tuple[str, object], ...] = (),
               place: bool = True, **child: object) -> tuple[Desk, Challenge, TrialPlan]:  # fmt: skip
    """A desk for the challenge of these lines, the challenge, and its planned trial."""
    study = study_of(text)
    (challenge,) = study.challenges
    juno = Child(Said("Juno"), 8, Said(level), **child)  # type: ignore[arg-type]
    home = Spot(Said("Saltmere"), 50.4, -4.9) if place else None
    family = Family(Said("Ferrar"), (juno,), paper, place=home)
    recipe = Recipe(Said(level), level, (RecipeSheet(Said("challenge")),), writing=WRITING[level])
    item = PlanItem("challenge", challenge, options, 2)
    look = look_for(level, writing=WRITING[level], larger=juno.larger_type, wider=juno.wider_spacing)
    desk = Desk(
        study, family, PackPlan("juno", recipe, juno, (item,)), item, Kit(FACES, look), PAPERS[paper], WORDS,
        Store(Path()), TermPlan((), 10, (), (), ()),
    )  # fmt: skip
    plan, faults = trial_of(challenge, family)
    assert plan and not faults, [str(fault) for fault in faults]
    return desk, challenge, plan
