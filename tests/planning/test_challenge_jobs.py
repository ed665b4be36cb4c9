"""What a challenge asks for: a design or an answer, and the goal that its key solves for."""

from pathlib import Path

import pytest

from packgen.planning.challenges import job_of, planned_trial
from packgen.reading.study import read_study

HEAD = "study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker.\nchallenges:\n"


def _challenge(folder: Path, lines: str):
    (folder / "study.yaml").write_text(HEAD + lines)
    study, faults = read_study(folder / "study.yaml")
    assert not [fault for fault in faults if "goal" not in fault.message], faults
    return study.challenges[0]


@pytest.mark.parametrize(
    ("lines", "job"),
    [
        ("  - {title: A, brief: B.}\n", "design"),
        ("  - {title: A, brief: B., job: find out}\n", "find out"),
        ("  - {title: A, brief: B., job: Find-Out}\n", "find out"),
        ("  - {title: A, brief: B., model: pendulum}\n", "find out"),
        ("  - {title: A, brief: B., model: canopy}\n", "design"),
        ("  - {title: A, brief: B., model: water clock, job: design}\n", "design"),
        ("  - {title: A, brief: B., model: no such thing}\n", "design"),
    ],
)
def test_the_model_knows_the_job_and_the_study_may_say_another(lines: str, job: str, tmp_path: Path) -> None:
    assert job_of(_challenge(tmp_path, lines)) == job


def test_a_goal_is_solved_for_in_the_unit_of_the_planned_values(tmp_path: Path) -> None:
    lines = (
        "  - title: A\n    brief: B.\n    model: pendulum\n    change: {length: [20 cm, 60 cm]}\n"
        "    measure: {what: time for the swings, unit: s}\n    goal: 15 s\n"
    )
    plan, faults = planned_trial(_challenge(tmp_path, lines), "metric", 50.4)
    assert not faults and plan is not None and plan.goal is not None
    (answer,) = plan.goal.answers
    assert answer.unit == "cm" and answer.to("cm") == pytest.approx(
        55.7, abs=0.1
    )  # 15 s = 10 · 2π √(L/g), small swings


def test_a_goal_in_a_wrong_unit_is_a_fault_with_its_place(tmp_path: Path) -> None:
    lines = "  - title: A\n    brief: B.\n    model: pendulum\n    change: {length: [20 cm, 60 cm]}\n    goal: 15 g\n"
    plan, faults = planned_trial(_challenge(tmp_path, lines), "metric", 50.4)
    assert plan is None and len(faults) == 1
    assert "goal: 15 g" in faults[0].message and faults[0].place.line > 0
