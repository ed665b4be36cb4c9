"""`packgen new`: a commented study and family file that build at once, for a parent to write over."""

from __future__ import annotations

from pathlib import Path

from packgen.faults import Fault, InputFaults, Place, WorkFailed
from packgen.page.wording import Wording
from packgen.reading.names import slug, tidy
from packgen.resources import folder


def new_study(target: Path, who: str, kind: str) -> tuple[Path, ...]:
    """Write study.yaml, family.yaml and a picture to replace into a new folder; returns the paths written.

    Raises InputFaults if a file is in the way or the name cannot be used, WorkFailed if the folder cannot be written.
    """
    name = tidy(" ".join(who.split()))
    if not name or any(ord(letter) < 32 for letter in name):
        raise InputFaults([Fault(Place("--who"), "There is no name to write the study about.",
                                 'Write for example --who "Name of the artist".')])  # fmt: skip
    wording = Wording([folder("templates")])
    quoted = name.replace("\\", "\\\\").replace('"', '\\"')
    values = {"who": quoted, "plain": name, "kind": kind, "called": name.split()[0], "work": slug(name)}
    files = {
        "study.yaml": "\n".join(_kept(wording, "study", values)),
        "family.yaml": "\n".join(_kept(wording, "family", values)),
        "pictures/first-work.svg": "\n".join(_kept(wording, "picture", values)),
    }
    there = [target / path for path in files if (target / path).exists()]
    if there:
        raise InputFaults([Fault(Place(str(path)), "This file is already there, and packgen does not write over it.",
                                 "Choose another folder.") for path in there])  # fmt: skip
    try:
        for path, text in files.items():
            (target / path).parent.mkdir(parents=True, exist_ok=True)
            (target / path).write_text(text.strip("\n") + "\n", encoding="utf-8")
    except OSError as error:
        raise WorkFailed(f"{target} cannot be written: {error.strerror}. Choose another folder.") from error
    return tuple(target / path for path in files)


def _kept(wording: Wording, key: str, values: dict[str, str]) -> list[str]:
    """The lines of a starter file as they stand in its template, indentation kept."""
    return wording.text("new", values["kind"], key, values).splitlines()
