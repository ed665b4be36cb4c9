"""Every fuzz target for some seconds each, in a process of its own: run with `-m fuzz`.

PACKGEN_FUZZ_SECONDS sets the seconds a target gets (20), PACKGEN_FUZZ_SEED where its rounds begin (0).
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
RUN = [sys.executable, str(HERE / "run.py")]
NAMES = ("builds", "command-line", "fitter", "folded-pdf", "folder", "meshes", "nets", "pictures", "reader", "svg",
         "trials", "units", "when")  # fmt: skip


def test_every_target_is_run() -> None:
    listed = subprocess.run([*RUN, "--list"], capture_output=True, text=True, check=True).stdout.split()
    assert tuple(listed) == NAMES


@pytest.mark.fuzz
@pytest.mark.parametrize("name", NAMES)
def test_hostile_input_is_told_and_never_crashes(name: str) -> None:
    seconds, seed = os.environ.get("PACKGEN_FUZZ_SECONDS", "20"), os.environ.get("PACKGEN_FUZZ_SEED", "0")
    ran = subprocess.run(
        [*RUN, name, "--seconds", seconds, "--seed", seed], capture_output=True, text=True, check=False
    )
    assert ran.returncode == 0, (ran.stdout + ran.stderr)[-6000:]
