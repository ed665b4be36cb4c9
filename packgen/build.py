"""The arrow: read the study -> plan -> lay out sheets as pages -> place pages on printed sheets -> write."""

from __future__ import annotations

import hashlib
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from packgen.all_made import Progress, all_made
from packgen.checking import check, told
from packgen.faults import Fault, InputFaults, Place, WorkFailed
from packgen.making import Made
from packgen.planning.calendar import calendar_text
from packgen.planning.people import people
from packgen.planning.print_plan import RunInfo
from packgen.reading.dates import plain
from packgen.reading.names import slug
from packgen.workshop import Order, Workshop, open_workshop
from packgen.writing.atomic import in_words
from packgen.writing.manifest import Written, manifest
from packgen.writing.output import Output, opened

__all__ = ["Built", "Order", "Previewed", "Progress", "build", "check", "preview"]


@dataclass(frozen=True, slots=True)
class Built:
    """What a build wrote: the folder, its files, what is to be told, and which paths changed."""

    folder: Path
    files: tuple[Written, ...]
    faults: tuple[Fault, ...]
    changed: tuple[str, ...]
    others: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Previewed:
    """What a preview wrote, and what is to be told."""

    paths: tuple[Path, ...]
    faults: tuple[Fault, ...]


def build(order: Order, out: Path, progress: Progress | None = None, jobs: int | None = None) -> Built:
    """Read the study, plan, lay out, impose and write. Raises InputFaults and WorkFailed.

    `jobs` is the number of processes to share the packs among; None: all cores if there are many packs.
    """
    with _pictures() as pictures:
        shop = open_workshop(order, Path(pictures))
        with opened(_target(order, shop, out)) as output:
            made = all_made(order, shop, output.put, jobs, progress)
            faults = _told(shop, made)
            files = tuple(file for one in made for file in one.files)
            more = extras(shop, [run for one in made for run in one.runs])
            for path, data in more.items():
                output.put(path, data)
            shown = {path: hashlib.sha256(data).hexdigest() for path, data in more.items()}
            changed = output.publish(manifest(str(shop.study.study), shop.family.paper, files, faults, shown))
            return Built(output.target, files, faults, changed, tuple(more))


def preview(order: Order, out: Path, progress: Progress | None = None, jobs: int | None = None) -> Previewed:
    """Write contact sheets of every file the build would make. Raises InputFaults and WorkFailed."""
    with _pictures() as pictures:
        shop = open_workshop(order, Path(pictures))
        with opened(_target(order, shop, out)) as output:
            made = all_made(order, shop, _Contacts(output), jobs, progress)
            faults = _told(shop, made)
            return Previewed(output.add(), faults)


@dataclass(frozen=True, slots=True)
class _Contacts:
    """Takes a file and puts the contact sheets of its pages."""

    output: Output

    def __call__(self, path: str, data: bytes) -> None:
        from packgen.writing.preview import contact_sheets  # loads the PDF renderer, which only this needs

        stem = path.removesuffix(".pdf").replace("/", "-")
        for number, picture in enumerate(contact_sheets(data), 1):
            self.output.put(f"preview/{stem}-{number}.png", picture)


def _pictures() -> tempfile.TemporaryDirectory[str]:
    """A folder for prepared pictures that goes when they are in the files."""
    try:
        return tempfile.TemporaryDirectory(prefix="packgen-", ignore_cleanup_errors=True)
    except OSError as error:
        raise WorkFailed(f"There is no place for pictures on the way: {in_words(error)}.") from error


def _target(order: Order, shop: Workshop, out: Path) -> Path:
    """The study's folder under `out`. Raises InputFaults if it is the study's own folder or a file."""
    target = out / slug(str(shop.study.study))
    if target.resolve() == shop.study.folder.resolve():
        raise InputFaults([Fault(Place(str(target)), "The output would land among the study's own files.",
                                 "Choose another folder with --out.")])  # fmt: skip
    if target.exists() and not target.is_dir():
        raise InputFaults([Fault(Place(str(target)), "There is a file of this name where a folder is needed.",
                                 "Choose another folder with --out.")])  # fmt: skip
    return target


def _told(shop: Workshop, made: tuple[Made, ...]) -> tuple[Fault, ...]:
    """What is to be told of a build. Raises InputFaults if one is a fault, or there is nothing to print."""
    faults = (*shop.faults, *(fault for one in made for fault in one.faults))
    return told(shop.study, faults, any(one.runs for one in made))


def extras(shop: Workshop, runs: Sequence[RunInfo] = ()) -> dict[str, bytes]:
    """The files that are not printed: the calendar, if the term has dates, with the sheets in these print runs."""
    if not shop.term.dated or not any(pack.folder == "parent" for pack in shop.packs):
        return {}

    def say(key: str, **values: object) -> str:
        """A wording; a kind of sheet nobody has named yet goes by its key."""
        if key.startswith("kind_") and not shop.wording.has("term-plan", "parent", key):
            return key.removeprefix("kind_").replace("_", " ")
        return shop.wording.say("term-plan", "parent", key, {"study": shop.study, "plain": plain, **values})

    persons = people(shop.family, shop.packs)
    return {"parent/term.ics": calendar_text(shop.study, shop.family, shop.term, persons, say, runs).encode()}
