import os
import resource
import signal
import stat
from pathlib import Path

import pytest

from packgen.faults import WorkFailed
from packgen.writing.atomic import write_whole


def test_a_file_is_written_and_nothing_lies_beside_it(tmp_path: Path) -> None:
    write_whole(tmp_path / "a.pdf", b"one")
    write_whole(tmp_path / "a.pdf", b"two")
    assert (tmp_path / "a.pdf").read_bytes() == b"two"
    assert [p.name for p in tmp_path.iterdir()] == ["a.pdf"]


def test_a_new_file_has_the_permissions_of_any_new_file(tmp_path: Path) -> None:
    (tmp_path / "plain").write_bytes(b"")
    write_whole(tmp_path / "a.pdf", b"one")
    assert stat.S_IMODE((tmp_path / "a.pdf").stat().st_mode) == stat.S_IMODE((tmp_path / "plain").stat().st_mode)


def test_an_old_file_keeps_its_permissions(tmp_path: Path) -> None:
    (tmp_path / "a.pdf").write_bytes(b"old")
    (tmp_path / "a.pdf").chmod(0o640)
    write_whole(tmp_path / "a.pdf", b"new")
    assert stat.S_IMODE((tmp_path / "a.pdf").stat().st_mode) == 0o640


def test_a_missing_folder_is_told_in_words(tmp_path: Path) -> None:
    with pytest.raises(WorkFailed, match="no such folder"):
        write_whole(tmp_path / "nowhere" / "a.pdf", b"one")


def test_a_folder_in_the_way_is_told_and_nothing_is_left(tmp_path: Path) -> None:
    (tmp_path / "a.pdf").mkdir()
    with pytest.raises(WorkFailed, match=r"a\.pdf could not be written: there is a folder of that name"):
        write_whole(tmp_path / "a.pdf", b"one")
    assert [p.name for p in tmp_path.iterdir()] == ["a.pdf"]


def test_a_write_that_breaks_off_leaves_the_old_file_whole(tmp_path: Path) -> None:
    """The kernel's own limit on a file's size stands for a full disk: the write breaks off half way."""
    (tmp_path / "a.pdf").write_bytes(b"old")
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    handler = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (4096, hard))
    try:
        with pytest.raises(WorkFailed):
            write_whole(tmp_path / "a.pdf", os.urandom(100_000))
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, handler)
    assert (tmp_path / "a.pdf").read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.pdf"]
