"""Runs one fuzz target for some seconds: `python tests/fuzz/run.py TARGET --seconds 60`; `--list` names the targets.

Inputs come from hypothesis, round after round with another seed; with `--guided` from atheris, which follows the
coverage of packgen's code (`pip install atheris`). An input may take a fixed number of seconds and the process a fixed
amount of memory; what fails is shown as hypothesis shows it, smallest input first, and ends the run with exit code 1.
"""

from __future__ import annotations

import argparse
import os
import resource
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(Path(__file__).parent)]

MEMORY = 3 << 30
ROUND = 150  # inputs between looks at the clock


class Hang(BaseException):
    """An input that takes too long; no `except Exception` on the way may swallow it."""


def _stop(*_: object) -> None:
    raise Hang("this input takes too long")


def _limited(holds: Callable[[Any], None], seconds: int) -> Callable[[Any], None]:
    def run(value: Any) -> None:
        signal.alarm(seconds)
        try:
            holds(value)
        except Hang as slow:
            raise AssertionError(str(slow)) from slow
        finally:
            signal.alarm(0)

    return run


def _test(name: str, count: int, seed: int) -> Any:
    from hypothesis import HealthCheck, Phase, given, settings
    from hypothesis import seed as seeded
    from targets import TARGETS

    one = TARGETS[name]
    limited = _limited(one.holds, one.seconds)

    def test(value: Any) -> None:
        limited(value)

    how = settings(max_examples=count, deadline=None, database=None, print_blob=False, report_multiple_bugs=False,
                   suppress_health_check=list(HealthCheck), phases=(Phase.generate, Phase.shrink))  # fmt: skip
    return seeded(seed)(how(given(one.inputs())(test)))


def _rounds(name: str, seconds: float, seed: int) -> None:
    end, done = time.monotonic() + seconds, 0
    count = 10
    while time.monotonic() < end:
        began = time.monotonic()
        _test(name, count, seed + done)()
        done += 1
        left = end - time.monotonic()
        count = max(5, min(ROUND, round(count * min(10.0, left) / max(0.01, time.monotonic() - began))))
    sys.stdout.write(f"{name}: {done} rounds, nothing found (seeds {seed} to {seed + done - 1})\n")


def _guided(name: str, seconds: float, seed: int) -> None:
    import atheris

    test = _test(name, 1, seed)
    arguments = [sys.argv[0], f"-max_total_time={round(seconds)}", f"-seed={seed or 1}", "-max_len=8192",
                 f"-rss_limit_mb={MEMORY >> 20}", f"-artifact_prefix={tempfile.gettempdir()}/"]  # fmt: skip
    atheris.Setup(arguments, test.hypothesis.fuzz_one_input)
    atheris.Fuzz()


def _load(guided: bool) -> tuple[str, ...]:
    """The names of the targets, loaded; with their code made to tell what it runs through if they are to be guided."""
    if guided:
        import atheris

        with atheris.instrument_imports(include=["packgen"]):
            from targets import TARGETS
    else:
        from targets import TARGETS
    return tuple(sorted(TARGETS))


def main() -> None:
    """Read the command line and run."""
    words = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    words.add_argument("target", nargs="?")
    words.add_argument("--list", action="store_true", help="name the targets")
    words.add_argument("--seconds", type=float, default=60.0)
    words.add_argument("--seed", type=int, default=0)
    words.add_argument("--guided", action="store_true", help="let atheris choose the inputs by the code they reach")
    asked = words.parse_args()
    names = _load(asked.guided)
    if asked.list or asked.target not in names:
        sys.stdout.write("\n".join(names) + "\n")
        sys.exit(0 if asked.list else 2)
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    signal.signal(signal.SIGALRM, _stop)
    os.environ["PACKGEN_FUZZ_PLACE"] = tempfile.mkdtemp(prefix="packgen-fuzz-")
    os.environ["PACKGEN_CACHE"] = os.environ["PACKGEN_FUZZ_PLACE"] + "/cache"
    try:
        (_guided if asked.guided else _rounds)(asked.target, asked.seconds, asked.seed)
    finally:
        shutil.rmtree(os.environ["PACKGEN_FUZZ_PLACE"], ignore_errors=True)


if __name__ == "__main__":
    main()
