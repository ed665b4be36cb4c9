"""The output folder: the old build whole or the new one whole, and nothing of anybody else's touched."""

import json
import os
import random
import resource
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from packgen.faults import InputFaults, WorkFailed
from packgen.writing.output import MANIFEST, opened

ROOT = Path(__file__).resolve().parents[2]
ONE = {"juno/1.pdf": b"one" * 100, "juno/2.pdf": b"two" * 100, "parent/guide.pdf": b"guide"}
TWO = {"juno/1.pdf": b"one" * 100, "juno/2.pdf": b"changed", "bram/1.pdf": b"new"}


def listing(files: dict[str, bytes]) -> bytes:
    return json.dumps({"files": [{"path": path} for path in files], "other_files": []}).encode()


def build(target: Path, files: dict[str, bytes]) -> tuple[str, ...]:
    with opened(target) as output:
        for path, data in files.items():
            output.put(path, data)
        return output.publish(listing(files))


def there(target: Path) -> dict[str, bytes]:
    """Every file under a folder."""
    return {p.relative_to(target).as_posix(): p.read_bytes() for p in target.rglob("*") if p.is_file()}


def test_a_build_is_written_with_its_manifest_and_nothing_else(tmp_path: Path) -> None:
    assert build(tmp_path / "out" / "study", ONE) == tuple(sorted(ONE))
    assert there(tmp_path) == {f"out/study/{path}": data for path, data in {**ONE, MANIFEST: listing(ONE)}.items()}


def test_files_of_an_earlier_build_that_are_not_made_now_are_gone(tmp_path: Path) -> None:
    target = tmp_path / "study"
    build(target, ONE)
    assert build(target, TWO) == ("bram/1.pdf", "juno/2.pdf")
    assert there(target) == {**TWO, MANIFEST: listing(TWO)}
    assert not (target / "parent").exists()


def test_a_file_that_stays_the_same_is_not_written_again(tmp_path: Path) -> None:
    target = tmp_path / "study"
    build(target, ONE)
    os.utime(target / "juno/1.pdf", ns=(10**18, 10**18))
    build(target, TWO)
    assert (target / "juno/1.pdf").stat().st_mtime_ns == 10**18
    assert build(target, TWO) == ()


def test_a_strangers_file_in_the_way_is_refused_by_name_and_untouched(tmp_path: Path) -> None:
    target = tmp_path / "study"
    build(target, ONE)
    (target / "bram").mkdir()
    (target / "bram" / "1.pdf").write_bytes(b"my own drawing")
    before = there(tmp_path)
    with pytest.raises(InputFaults, match=r"bram/1\.pdf: fault: This file is in the way") as refused:
        build(target, TWO)
    assert refused.value.exit_code == 2
    assert there(tmp_path) == before


def test_a_folder_never_built_into_is_not_taken_over(tmp_path: Path) -> None:
    (tmp_path / "study" / "juno").mkdir(parents=True)
    (tmp_path / "study" / "juno" / "1.pdf").write_bytes(b"mine")
    with pytest.raises(InputFaults, match=r"juno/1\.pdf"):
        build(tmp_path / "study", ONE)
    assert there(tmp_path) == {"study/juno/1.pdf": b"mine"}


def test_a_parents_own_notes_beside_the_packs_stay(tmp_path: Path) -> None:
    target = tmp_path / "study"
    build(target, ONE)
    (target / "notes.txt").write_bytes(b"Bram liked the wheel.")
    (target / "parent" / "scan.png").write_bytes(b"scan")
    build(target, TWO)
    assert there(target) == {**TWO, MANIFEST: listing(TWO), "notes.txt": b"Bram liked the wheel.",
                             "parent/scan.png": b"scan"}  # fmt: skip


def test_a_spoiled_manifest_makes_no_file_packgens(tmp_path: Path) -> None:
    target = tmp_path / "study"
    build(target, ONE)
    (target / MANIFEST).write_bytes(b"{half")
    with pytest.raises(InputFaults):
        build(target, TWO)
    assert (target / "juno/1.pdf").read_bytes() == ONE["juno/1.pdf"]


def test_a_manifest_cannot_make_packgen_remove_files_elsewhere(tmp_path: Path) -> None:
    (tmp_path / "precious").write_bytes(b"precious")
    target = tmp_path / "study"
    build(target, ONE)
    (target / MANIFEST).write_bytes(listing({**ONE, "../precious": b"", str(tmp_path / "precious"): b""}))
    build(target, TWO)
    assert (tmp_path / "precious").read_bytes() == b"precious"


def test_a_build_that_fails_leaves_the_old_one_and_nothing_else(tmp_path: Path) -> None:
    target = tmp_path / "study"
    build(target, ONE)
    before = there(tmp_path)
    with pytest.raises(ZeroDivisionError), opened(target) as output:
        output.put("juno/2.pdf", b"half a build")
        raise ZeroDivisionError
    assert there(tmp_path) == before
    assert [path.name for path in tmp_path.iterdir()] == ["study"]


def test_a_full_disk_is_told_and_the_old_build_is_whole(tmp_path: Path) -> None:
    """The kernel's limit on a file's size stands for the full disk."""
    target = tmp_path / "study"
    build(target, ONE)
    before = there(tmp_path)
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    handler = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (4096, hard))
    try:
        with pytest.raises(WorkFailed, match="cannot be written") as failed:
            build(target, {**ONE, "juno/3.pdf": bytes(100_000)})
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, handler)
    assert failed.value.exit_code == 1
    assert there(tmp_path) == before


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(WorkFailed):
        build(tmp_path / "file" / "study", ONE)


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is unwritable for the superuser")
def test_an_unwritable_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "locked").mkdir(mode=0o555)
    with pytest.raises(WorkFailed, match="may not be written"):
        build(tmp_path / "locked" / "study", ONE)


def test_a_folder_in_use_is_told_and_left_alone(tmp_path: Path) -> None:
    target = tmp_path / "study"
    build(target, ONE)
    with opened(target), pytest.raises(WorkFailed, match="busy"):
        build(target, TWO)
    assert there(target) == {**ONE, MANIFEST: listing(ONE)}


FOREVER = """
import itertools, sys
sys.path.insert(0, {here!r})
from pathlib import Path
from test_output import build
for turn in itertools.count(1):
    files = {{f"child/{{k}}.pdf": b"%d " % turn * 20_000 for k in range(4)}}
    files[f"only/{{turn}}.pdf"] = b"%d " % turn
    build(Path({target!r}), files)
    print(turn, flush=True)
"""


def killed(tmp_path: Path, times: int) -> None:
    """Builds follow one another until they are killed; each time one build must lie there, whole."""
    target = tmp_path / "study"
    script = FOREVER.format(here=str(Path(__file__).parent), target=str(target))
    chance = random.Random(20270203)
    for _ in range(times):
        running = subprocess.Popen(
            [sys.executable, "-c", script], stdout=subprocess.PIPE, env={**os.environ, "PYTHONPATH": str(ROOT)}
        )
        assert running.stdout
        running.stdout.readline()
        time.sleep(chance.uniform(0.0, 0.03))
        running.send_signal(signal.SIGKILL)
        running.wait()
        running.stdout.close()
        listed = [entry["path"] for entry in json.loads((target / MANIFEST).read_bytes())["files"]]
        files = there(target)
        assert sorted(files) == sorted([*listed, MANIFEST])
        turns = {data.split()[0] for path, data in files.items() if path != MANIFEST}
        assert len(turns) == 1, turns
        sizes = {len(data) for path, data in files.items() if path.startswith("child/")}
        assert len(sizes) == 1
    build(target, ONE)
    assert there(tmp_path) == {f"study/{path}": data for path, data in {**ONE, MANIFEST: listing(ONE)}.items()}


def test_a_build_killed_at_any_moment_leaves_one_whole_build(tmp_path: Path) -> None:
    killed(tmp_path, 10)


@pytest.mark.slow
def test_a_build_killed_a_hundred_times_leaves_one_whole_build(tmp_path: Path) -> None:
    killed(tmp_path, 100)
