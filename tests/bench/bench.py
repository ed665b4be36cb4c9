"""How fast packgen is, as ratios measured in one run: run `python tests/bench/bench.py`, with --quick for less.

The floor is a plain reportlab script that draws what packgen's own pages of the same build hold: the same strings,
lines, paths and pictures, at the same places, into as many files (tests/bench/floor.py). CPU seconds, user and system,
of fresh processes; the best of three. Memory is the most a process held at once (ru_maxrss). Everything is written
below a temporary folder, packgen's cache too: "first" is a build with an empty cache, "again" one that finds it filled.
"""

from __future__ import annotations

import os
import platform
import random
import shutil
import sys
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageDraw

ROOT = Path(__file__).resolve().parents[2]
STUDY = ROOT / "examples" / "isaure-quenby" / "study.yaml"
FAMILY = ROOT / "examples" / "ferrar.yaml"
PACKS = ("older", "younger", "first", "upper")


@dataclass(frozen=True)
class Run:
    """What a process took: CPU seconds, and the most memory in MB."""

    cpu: float
    memory: float


def run(*command: object, tries: int = 3, before: Callable[[], None] = lambda: None) -> Run:
    """The best of some runs of a command, which must succeed."""
    best = Run(float("inf"), float("inf"))
    for _ in range(tries):
        before()
        arguments = [str(word) for word in command]
        quiet = [(os.POSIX_SPAWN_OPEN, stream, os.devnull, os.O_WRONLY, 0) for stream in (1, 2)]
        pid = os.posix_spawn(arguments[0], arguments, os.environ, file_actions=quiet)
        _, status, used = os.wait4(pid, 0)
        if status:
            raise SystemExit(f"{' '.join(arguments)} failed")
        best = Run(min(best.cpu, used.ru_utime + used.ru_stime), min(best.memory, used.ru_maxrss / 1024))
    return best


def packgen(*words: object, **how: object) -> Run:
    """A run of packgen."""
    return run(sys.executable, "-m", "packgen", *words, **how)  # type: ignore[arg-type]


def say(words: str = "") -> None:
    """A line of the report."""
    sys.stdout.write(words + "\n")
    sys.stdout.flush()


def pages_in(folder: Path) -> int:
    """All pages of a built folder."""
    from pypdf import PdfReader

    return sum(len(PdfReader(path).pages) for path in folder.rglob("*.pdf"))


def family_of(place: Path, children: int) -> Path:
    """A family of so many children of all levels, their names invented."""
    lines = ["family: Bench", "paper: A4", "printer: {sides: two-sided-long-edge, margin: 6 mm, colour: true}"]
    lines += ["term: {starts: 2027-02-03, weeks: 9, on: Wednesday, minutes: 10}", "children:"]
    lines += [f"  - {{name: Child{k}, age: {8 - k % 3}, pack: {PACKS[k % 3]}}}" for k in range(children)]
    path = place / f"family-{children}.yaml"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def study_of(place: Path, works: int, events: int) -> Path:
    """An invented study of so many works, each with a picture of its own, and so many events."""
    folder = place / f"study-{works}-{events}"
    folder.mkdir()
    dice = random.Random(works * 10_000 + events)
    lines = ["study: Bench Person", "kind: artist", "in_short: Nobody; made up for measuring.", "born: 1800",
             "works:" if works else ""]  # fmt: skip
    for k in range(works):
        _picture(folder / f"work-{k}.jpg", dice)
        lines.append(f"  - {{id: work-{k}, title: Work {k}, when: {1820 + k}, image: work-{k}.jpg}}")
    lines.append("timeline:")
    lines += [f"  - {{when: {1800 + k % 90}, what: Event number {k} of this life}}" for k in range(events)]
    path = folder / "study.yaml"
    path.write_text("\n".join(filter(None, lines)) + "\n", encoding="utf-8")
    return path


def _picture(path: Path, dice: random.Random) -> None:
    image = Image.effect_noise((1200, 900), 12).convert("RGB")
    pen = ImageDraw.Draw(image)
    for _ in range(12):
        x, y, side = dice.randrange(1000), dice.randrange(700), dice.randrange(80, 300)
        pen.ellipse((x, y, x + side, y + side), fill=tuple(dice.randrange(256) for _ in range(3)))
    image.save(path, "JPEG", quality=85)


class Bench:
    """The measurements, below one temporary folder."""

    def __init__(self, place: Path, quick: bool) -> None:
        self.place, self.quick = place, quick
        self.out, self.cache = place / "out", place / "cache"
        os.environ.update(PYTHONPATH=str(ROOT), PACKGEN_CACHE=str(self.cache), PYTHONPYCACHEPREFIX=str(place / "pyc"))
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

    def fresh(self, cache: bool = True) -> None:
        """An empty output, and an empty cache if asked."""
        shutil.rmtree(self.out, ignore_errors=True)
        if cache:
            shutil.rmtree(self.cache, ignore_errors=True)

    def example(self) -> None:
        """The example family: build over floor, memory, check and help."""
        words = ("build", STUDY, "--family", FAMILY, "--out", self.out, "--jobs", 1)
        packgen("--help", tries=1)
        packgen(*words, tries=1)
        first = packgen(*words, before=self.fresh)
        again = packgen(*words, before=lambda: self.fresh(cache=False))
        pages = pages_in(self.out)
        run(sys.executable, ROOT / "tests/bench/floor.py", "record", STUDY, FAMILY, self.place / "floor", tries=1)
        floor = run(sys.executable, ROOT / "tests/bench/floor.py", "draw", self.place / "floor")
        check = packgen("check", STUDY, "--family", FAMILY)
        cold = packgen("check", STUDY, "--family", FAMILY, before=self.fresh)
        nothing = run(sys.executable, "-c", "pass")
        say(f"example family, {pages} pages; CPU seconds, and the most memory")
        say(f"  python alone   {nothing.cpu:6.2f} s")
        say(f"  --help         {packgen('--help').cpu:6.2f} s")
        say(f"  floor          {floor.cpu:6.2f} s                 {floor.memory:4.0f} MB")
        say(f"  build, first   {first.cpu:6.2f} s = {first.cpu / floor.cpu:4.1f} floors   {first.memory:4.0f} MB")
        say(f"  build, again   {again.cpu:6.2f} s = {again.cpu / floor.cpu:4.1f} floors   {again.memory:4.0f} MB")
        say(f"  check, first   {cold.cpu:6.2f} s")
        say(f"  check, again   {check.cpu:6.2f} s")

    def children(self) -> None:
        """Time and memory over the number of children, who are of three levels."""
        say("children (same study; one process)")
        for count in (3, 30) if self.quick else (3, 30, 300):
            family = family_of(self.place, count)
            made = self._built("build", STUDY, "--family", family)
            self._row(count, "children", made)

    def works(self) -> None:
        """Time and memory over the number of works and events, for one older and one younger child."""
        say("works (two children)")
        for count in (5, 50):
            self._row(count, "works", self._built("build", study_of(self.place, count, 5)))
        say("events (two children)")
        for count in (10, 1000):
            self._row(count, "events", self._built("build", study_of(self.place, 0, count)))

    def jobs(self) -> None:
        """Thirty children shared among all cores, in seconds on the clock."""
        import time

        family, cores = family_of(self.place, 30), len(os.sched_getaffinity(0))
        clock = []
        for count in (1, cores):
            self.fresh(cache=False)
            start = time.monotonic()
            packgen("build", STUDY, "--family", family, "--out", self.out, "--jobs", count, tries=1)
            clock.append(time.monotonic() - start)
        say(f"30 children, {cores} processes: {clock[0]:.1f} s by the clock with one, {clock[1]:.1f} s with all")

    def _built(self, *words: object) -> tuple[Run, int]:
        made = packgen(*words, "--out", self.out, "--jobs", 1, tries=1, before=self.fresh)
        return made, pages_in(self.out)

    def _row(self, count: int, thing: str, made: tuple[Run, int]) -> None:
        used, pages = made
        per_page = 1000 * used.cpu / pages
        say(f"  {count:5} {thing:9} {pages:6} pages {used.cpu:8.2f} s {per_page:6.1f} ms a page {used.memory:5.0f} MB")


def main() -> None:
    """The whole report."""
    quick = "--quick" in sys.argv
    cores = len(os.sched_getaffinity(0))
    say(f"Python {platform.python_version()}, {platform.system()} {platform.machine()}, {cores} cores")
    with tempfile.TemporaryDirectory(prefix="packgen-bench-") as place:
        bench = Bench(Path(place), quick)
        bench.example()
        bench.children()
        bench.works()
        bench.jobs()


if __name__ == "__main__":
    main()
