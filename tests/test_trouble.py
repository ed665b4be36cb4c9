"""Trouble on the way, met by the whole program: full and read-only disks, kills, two builds at once, bad fonts.

After each: the old output whole or the new one, a message, exit code 1, no traceback.
"""

from __future__ import annotations

import json
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from PIL import Image

ROOT = Path(__file__).resolve().parents[1]
CAN_MOUNT = (
    shutil.which("unshare") is not None
    and not subprocess.run(["unshare", "-rm", "mount", "-t", "tmpfs", "tmpfs", "/mnt"], capture_output=True).returncode
)
needs_mounts = pytest.mark.skipif(not CAN_MOUNT, reason="this system lets nobody mount a disk of their own")

STUDY = """
study: Isaure Quenby
kind: inventor
in_short: Lamp-maker who measured the tides.
born: 1834
works:
  - {id: harbour, title: The Harbour at Dusk, when: 1861, image: harbour.png}
timeline:
  - {when: 1851, what: Makes her first lamp}
"""
FAMILY = """
family: Ferrar
children:
  - {name: Juno, age: 11, pack: older}
  - {name: Bram, age: 8, pack: younger}
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "study.yaml").write_text(STUDY)
    (tmp_path / "family.yaml").write_text(FAMILY)
    noise = random.Random(1834).randbytes(600 * 400 * 3)
    Image.frombytes("RGB", (600, 400), noise).save(tmp_path / "harbour.png")
    return tmp_path


ONLY = ("--only", "biography", "--only", "picture-study", "--only", "timeline")


def start(home: Path, *more: str, before: tuple[str, ...] = (), **env: str) -> subprocess.Popen[str]:
    """A build of the home's study into home/out, begun."""
    return subprocess.Popen(
        [*before, sys.executable, "-m", "packgen", "build", "study.yaml", "--family", "family.yaml", *ONLY, *more],
        cwd=home, env={**os.environ, "PYTHONPATH": str(ROOT), **env}, text=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    )  # fmt: skip


def ran(home: Path, *more: str, before: tuple[str, ...] = (), **env: str) -> tuple[int, str]:
    """The exit code of a build, and all that it said."""
    running = start(home, *more, before=before, **env)
    out, err = running.communicate()
    assert "Traceback" not in out + err, err
    return running.returncode, out + err


def there(out: Path) -> dict[str, bytes]:
    return {path.relative_to(out).as_posix(): path.read_bytes() for path in out.rglob("*") if path.is_file()}


def whole(out: Path) -> bool:
    """True if the output is what its manifest says, and nothing else lies there."""
    import hashlib

    folder = out / "isaure-quenby"
    listing = json.loads((folder / "packgen.json").read_text(encoding="utf-8"))
    sums = {entry["path"]: entry["sha256"] for key in ("files", "other_files") for entry in listing[key]}
    found = there(folder)
    del found["packgen.json"]
    return {path: hashlib.sha256(data).hexdigest() for path, data in found.items()} == sums


def in_mounts(script: str) -> tuple[str, ...]:
    """What runs a command with disks of its own, mounted by a script."""
    return ("unshare", "-rm", "sh", "-c", f'{script} && exec "$@"', "sh")


@needs_mounts
@pytest.mark.parametrize("room", ["64k", "300k", "600k"])
def test_a_full_disk_is_told_and_the_old_output_is_whole(home: Path, room: str) -> None:
    assert ran(home)[0] == 0
    old = there(home / "out")
    script = f"cp -a out kept && mount -t tmpfs -o size={room} tmpfs out"
    # The old output of a small disk is what fits: its manifest. A build on it must leave just that.
    script += " && mkdir out/isaure-quenby && echo '{}' > out/isaure-quenby/packgen.json"
    after = 'code=$?; ls -A out out/isaure-quenby > left; exit $code'  # fmt: skip
    code, said = ran(home, before=("unshare", "-rm", "sh", "-c", f'{script} && "$@"; {after}', "sh"))
    assert code == 1 and "disk is full" in said
    assert (home / "left").read_text().split() == ["out:", "isaure-quenby", "out/isaure-quenby:", "packgen.json"]
    assert there(home / "out") == old


@needs_mounts
def test_a_read_only_disk_is_told(home: Path) -> None:
    assert ran(home)[0] == 0
    old = there(home / "out")
    code, said = ran(home, before=in_mounts("mount --bind out out && mount -o remount,ro,bind out"))
    assert code == 1 and "read-only" in said
    assert there(home / "out") == old


@needs_mounts
def test_no_room_for_pictures_on_the_way_is_told(home: Path) -> None:
    script = 'mkdir -p tmp && mount -t tmpfs -o size=32k tmpfs tmp && export TMPDIR="$PWD/tmp"'
    code, said = ran(home, before=in_mounts(script), PACKGEN_CACHE="off")
    assert code == 1 and "disk" in said
    assert not (home / "out" / "isaure-quenby").exists()


@needs_mounts
def test_an_output_folder_that_is_a_disk_of_its_own_is_written_too(home: Path) -> None:
    script = "mkdir -p out/isaure-quenby && mount -t tmpfs tmpfs out/isaure-quenby && echo mine > out/isaure-quenby/own"
    keep = 'code=$?; cp -a out/isaure-quenby there; exit $code'  # fmt: skip
    code, said = ran(home, before=("unshare", "-rm", "sh", "-c", f'{script} && "$@"; {keep}', "sh"))
    assert code == 0, said
    assert (home / "there" / "own").read_text() == "mine\n"
    assert (home / "there" / "juno").is_dir() and not list((home / "there").glob(".packgen*"))


def test_two_builds_at_once_leave_one_whole_output(home: Path) -> None:
    running = [start(home) for _ in range(3)]
    said = [one.communicate() for one in running]
    codes = [one.returncode for one in running]
    assert 0 in codes and set(codes) <= {0, 1}
    assert all("busy" in err for code, (_, err) in zip(codes, said, strict=True) if code)
    assert whole(home / "out")
    assert [path.name for path in (home / "out").iterdir()] == ["isaure-quenby"]


@pytest.mark.parametrize("jobs", ["1", "2"])
def test_a_build_killed_on_the_way_leaves_the_old_output_and_no_process(home: Path, jobs: str) -> None:
    assert ran(home)[0] == 0
    old = there(home / "out")
    (home / "study.yaml").write_text(STUDY.replace("measured", "mapped"))
    dice = random.Random(1902)
    seen = []
    for _ in range(3):
        running = start(home, "--jobs", jobs)
        time.sleep(dice.uniform(0.3, 1.0))
        running.kill()
        running.communicate()  # returns when the last helper that holds the pipe has ended
        assert whole(home / "out")
        seen.append(there(home / "out" / "isaure-quenby"))
    assert ran(home)[0] == 0
    assert whole(home / "out")
    old = {path.removeprefix("isaure-quenby/"): data for path, data in old.items()}
    new = there(home / "out" / "isaure-quenby")
    assert old != new
    assert all(found in (old, new) for found in seen)  # a kill after the exchange finds the new output, whole
    assert [path.name for path in (home / "out").iterdir()] == ["isaure-quenby"]


@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="helpers are found in /proc")
def test_a_helper_that_is_killed_is_told(home: Path) -> None:
    children = "".join(f"  - {{name: Child {k}, age: 8, pack: younger}}\n" for k in range(30))
    (home / "family.yaml").write_text("family: Ferrar\nchildren:\n" + children)
    running = start(home, "--jobs", "2")
    helpers: list[str] = []
    while running.poll() is None and not helpers:
        helpers = Path(f"/proc/{running.pid}/task/{running.pid}/children").read_text().split()
    os.kill(int(helpers[0]), signal.SIGKILL)
    _, said = running.communicate()
    assert running.returncode == 1 and "helper process" in said and "Traceback" not in said
    assert not (home / "out").exists()


def test_ctrl_c_stops_a_build_with_a_word(home: Path) -> None:
    running = start(home, "--jobs", "2")
    while running.poll() is None and not list(home.glob("out/.packgen.*")):
        time.sleep(0.01)  # until the build has begun; before that Python itself is stopped
    running.send_signal(signal.SIGINT)
    _, said = running.communicate(timeout=60)
    assert running.returncode in (0, 1)
    assert running.returncode == 0 or "Stopped." in said
    assert "Traceback" not in said
    assert not list((home / "out").glob(".packgen*"))


@pytest.mark.parametrize("data", [b"", b"no font at all", b"\x00\x01\x00\x00" + bytes(400), b"OTTO" + bytes(100)])
def test_a_font_that_is_none_is_told_by_name(home: Path, data: bytes) -> None:
    (home / "hand.ttf").write_bytes(data)
    (home / "family.yaml").write_text(FAMILY + "fonts: [hand.ttf]\n")
    code, said = ran(home)
    assert code in (1, 2) and "hand.ttf" in said
    assert not (home / "out").exists()


def test_half_a_font_is_told_by_name(home: Path) -> None:
    font = next((ROOT / "packgen" / "fonts").glob("FiraSans-Regular.ttf")).read_bytes()
    (home / "hand.ttf").write_bytes(font[: len(font) // 2])
    (home / "family.yaml").write_text(FAMILY + "fonts: [hand.ttf]\n")
    code, said = ran(home)
    assert code in (1, 2) and "hand.ttf" in said


def test_a_picture_that_goes_while_it_is_used_is_told(home: Path) -> None:
    (home / "harbour.png").unlink()
    (home / "harbour.png").symlink_to("nowhere.png")
    code, said = ran(home)
    assert code == 2 and "study.yaml:7:" in said
