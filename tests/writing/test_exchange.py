"""Two folders change places, and a stop in the middle is mended."""

from __future__ import annotations

from pathlib import Path

import pytest

from packgen.writing.exchange import exchange, put_back


def folders(tmp_path: Path) -> tuple[Path, Path, Path]:
    for name in ("one", "two"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "file").write_text(name)
    return tmp_path / "one", tmp_path / "two", tmp_path / "aside"


# "other" stands for a system without a call to exchange two names.
@pytest.mark.parametrize("system", ["", "other"])
def test_two_folders_change_places(tmp_path: Path, system: str, monkeypatch: pytest.MonkeyPatch) -> None:
    one, two, aside = folders(tmp_path)
    if system:
        monkeypatch.setattr("sys.platform", system)
    exchange(one, two, aside)
    assert (one / "file").read_text() == "two" and (two / "file").read_text() == "one"
    assert not aside.exists()


@pytest.mark.parametrize("system", ["", "other"])
def test_both_stay_where_they_are_if_it_cannot_be_done(
    tmp_path: Path, system: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    one, two, aside = folders(tmp_path)
    if system:
        monkeypatch.setattr("sys.platform", system)
    with pytest.raises(OSError):
        exchange(tmp_path / "missing", two, aside)
    assert (one / "file").read_text() == "one" and (two / "file").read_text() == "two"
    assert not aside.exists()


def test_a_folder_put_aside_by_a_stopped_build_comes_back(tmp_path: Path) -> None:
    _, two, aside = folders(tmp_path)
    two.rename(aside)
    put_back(two, aside)
    assert (two / "file").read_text() == "two" and not aside.exists()


def test_a_folder_in_its_place_is_not_touched(tmp_path: Path) -> None:
    _, two, aside = folders(tmp_path)
    aside.mkdir()
    put_back(two, aside)
    assert (two / "file").read_text() == "two" and aside.exists()
