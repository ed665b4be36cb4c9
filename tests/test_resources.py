"""Where packgen keeps what is slow to make."""

from __future__ import annotations

from pathlib import Path

import pytest

from packgen.resources import cache_folder, code_stamp


def test_the_cache_is_where_the_system_keeps_such_things(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PACKGEN_CACHE", raising=False)
    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    assert cache_folder() == tmp_path / "cache" / "packgen"
    assert (tmp_path / "cache" / "packgen").is_dir()


def test_the_cache_can_be_elsewhere_or_off(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PACKGEN_CACHE", str(tmp_path / "mine"))
    assert cache_folder() == tmp_path / "mine"
    monkeypatch.setenv("PACKGEN_CACHE", "off")
    assert cache_folder() is None


def test_a_cache_that_cannot_be_made_is_done_without(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_bytes(b"")
    monkeypatch.setenv("PACKGEN_CACHE", str(tmp_path / "file" / "below"))
    assert cache_folder() is None


def test_the_stamp_changes_with_the_code(tmp_path: Path) -> None:
    (tmp_path / "a.py").write_text("x = 1\n")
    before = code_stamp(tmp_path)
    (tmp_path / "a.py").write_text("x = 12\n")
    assert code_stamp(tmp_path) != before
