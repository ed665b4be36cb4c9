"""The keys of a challenge: the job in plain spellings, the goal as a quantity, the short brief."""

from pathlib import Path

import pytest

from packgen.reading.study import read_study

HEAD = "study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker.\nchallenges:\n  - title: A\n    brief: B.\n"


def _read(folder: Path, lines: str):
    (folder / "study.yaml").write_text(HEAD + lines)
    return read_study(folder / "study.yaml")


@pytest.mark.parametrize("words", ["find out", "find-out", "Find Out", "investigation", "investigate"])
def test_finding_out_may_be_written_in_several_ways(words: str, tmp_path: Path) -> None:
    study, faults = _read(tmp_path, f"    job: {words}\n")
    assert not faults and study is not None and study.challenges[0].job == "find out"


def test_another_job_is_a_fault_that_names_both(tmp_path: Path) -> None:
    _, faults = _read(tmp_path, "    job: desing\n")
    (fault,) = faults
    assert "design" in fault.instead + fault.message and "find out" in fault.instead + fault.message
    assert fault.place.line == 7


def test_a_goal_is_a_quantity_and_the_short_brief_a_text(tmp_path: Path) -> None:
    study, faults = _read(tmp_path, "    goal: 1.5 min\n    brief_first: Make it.\n")
    assert not faults and study is not None
    challenge = study.challenges[0]
    assert challenge.goal is not None and challenge.goal.to("s") == 90 and challenge.brief_first == "Make it."
    _, faults = _read(tmp_path, "    goal: soon\n")
    assert len(faults) == 1 and faults[0].place.line == 7
