"""Every message has a broken file that causes it, says what to write instead, and goes when the file is mended."""

from __future__ import annotations

from pathlib import Path

import pytest
from broken_files import CASES
from reading_files import STUDY, all_messages, is_case_of, read_path, read_text

from packgen.faults import Fault, Place, Severity
from packgen.reading import messages
from packgen.reading.messages import Message, Misread

_BY_PATH = {"NO_FILE", "NOT_A_FILE", "CANNOT_OPEN"}


def test_every_message_has_a_broken_file() -> None:
    assert set(CASES) | _BY_PATH == set(all_messages())


@pytest.mark.parametrize("name", CASES)
def test_the_broken_file_gives_that_one_line(name: str, tmp_path: Path) -> None:
    kind, broken, _ = CASES[name]
    _, faults = read_text(tmp_path, kind, broken)
    assert len(faults) == 1, [str(fault) for fault in faults]
    assert is_case_of(faults[0], all_messages()[name]), str(faults[0])
    assert faults[0].instead.strip()
    assert "{" not in faults[0].message or "{" in str(broken)


@pytest.mark.parametrize("name", CASES)
def test_the_mended_file_gives_none(name: str, tmp_path: Path) -> None:
    kind, _, mended = CASES[name]
    if name.startswith("FONT"):
        (tmp_path / "Own.ttf").touch()
    value, faults = read_text(tmp_path, kind, mended)
    assert [str(fault) for fault in faults] == []
    assert value is not None


def test_every_line_names_a_place_in_the_file(tmp_path: Path) -> None:
    for name, (kind, broken, _) in CASES.items():
        _, (fault,) = read_text(tmp_path, kind, broken)
        whole = name in ("TOO_LARGE", "NOT_TEXT")
        lines = broken.count(b"\n" if isinstance(broken, bytes) else "\n")  # type: ignore[arg-type]
        assert whole or 1 <= fault.place.line <= lines + 1, name
        assert whole or fault.place.column >= 1, name
        assert Path(fault.place.file).name == f"{kind}.yaml"


def test_a_file_that_is_not_there_is_told_with_the_nearest_name(tmp_path: Path) -> None:
    (tmp_path / "study.yaml").write_text(STUDY)
    _, faults = read_path(tmp_path / "stuyd.yaml", "study")
    assert is_case_of(faults[0], messages.NO_FILE)
    assert "study.yaml" in faults[0].instead


def test_a_folder_is_told_from_a_file(tmp_path: Path) -> None:
    _, faults = read_path(tmp_path, "study")
    assert is_case_of(faults[0], messages.NOT_A_FILE)


def test_a_file_that_cannot_be_opened_is_a_fault(tmp_path: Path) -> None:
    loop = tmp_path / "study.yaml"
    loop.symlink_to(loop)
    _, faults = read_path(loop, "study")
    assert is_case_of(faults[0], messages.CANNOT_OPEN)


def test_a_misread_becomes_a_fault_at_a_place() -> None:
    message = Message("`{text}` is wrong.", "Write {better}.", Severity.WARNING)
    misread = Misread(message, text="x", better="y")
    place = Place("f", 3, 4)
    assert misread.fault(place) == Fault(place, "`x` is wrong.", "Write y.", Severity.WARNING)
    assert (str(misread), misread.instead) == ("`x` is wrong.", "Write y.")


def test_braces_in_a_parents_text_stay_as_they_are() -> None:
    fault = messages.NOT_DATE.fault(Place("f", 1, 1), text="{hint} {0!r}", hint="")
    assert "{hint} {0!r}" in fault.message
