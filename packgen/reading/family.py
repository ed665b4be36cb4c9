"""A family file -> a frozen `Family`, with every fault found on the way."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace
from pathlib import Path

from packgen.faults import Fault, Place, Said, Severity, in_order, nearest
from packgen.reading import messages
from packgen.reading.family_keys import FAMILY, pack_for
from packgen.reading.fields import Notes
from packgen.reading.models import Child, ChildResults, Family, Goal
from packgen.reading.names import key_form, slug, snippet
from packgen.reading.yaml_tree import Mapping, read_tree

__all__ = ["child_folder", "pack_for", "read_family"]

LEAST = "    family: Ferrar\n    children:\n      - {name: Juno, age: 11}"


def read_family(
    path: Path, packs: Collection[str], sheets: Collection[str] = ()
) -> tuple[Family | None, tuple[Fault, ...]]:
    """The family, and its faults and warnings in order of place.

    `packs` are the names of the recipes a child can have; `sheets` those that can be left out or meet a goal, not
    looked at if empty. As with a study, a family with faults may come back; it is not to be built.
    """
    tree = read_tree(path, LEAST)
    if not isinstance(tree.root, Mapping):
        return None, in_order(tree.faults)
    known = {"packs": tuple(packs), "sheets": tuple(sheets)}
    notes = Notes(path.parent, tree.gaps, known=known)
    family = FAMILY.read(tree.root, notes)
    if family is not None:
        _own_folders(family.children, notes)
        goals, results = tuple(_with_ids(family.goals, notes)), tuple(_with_children(family, notes))
        family = replace(family, goals=goals, results=results)
    return family, in_order((*tree.faults, *notes.faults))


def child_folder(name: str) -> str:
    """The folder a child's pack is written to."""
    return slug(name, "child")


def _own_folders(children: tuple[Child, ...], notes: Notes) -> None:
    """Faults where two children would be written to one folder."""
    folders: dict[str, Child] = {}
    for child in children:
        folder = child_folder(child.name)
        other = folders.setdefault(folder, child)
        if other is child:
            continue
        words = {"name": snippet(child.name), "first": other.name.at.line}
        if key_form(other.name) == key_form(child.name):
            notes.add(messages.NAME_TWICE, child.name.at, **words)
        else:
            notes.add(messages.FOLDER_TWICE, child.name.at, other=snippet(other.name), folder=folder, **words)


def _with_ids(goals: tuple[Goal, ...], notes: Notes) -> Iterator[Goal]:
    """The goals with an id each. One made from the text gets a number if another has it; a written one must not."""
    taken: dict[str, Place] = {}
    for goal in goals:
        if goal.id.at != goal.text.at:
            if goal.id in taken:
                notes.add(messages.ID_TWICE, goal.id.at, id=snippet(goal.id), first=taken[goal.id].line)
            taken.setdefault(goal.id, goal.id.at)
    for goal in goals:
        made, number = str(goal.id), 1
        while goal.id.at == goal.text.at and made in taken:
            number += 1
            made = f"{goal.id}-{number}"
        taken.setdefault(made, goal.id.at)
        yield replace(goal, id=Said(made, goal.id.at))


def _with_children(family: Family, notes: Notes) -> Iterator[ChildResults]:
    """The results of the family's children, each by the name it has there; no child twice for one challenge."""
    names = {key_form(child.name): child.name for child in family.children}
    spoilt = any(fault.severity is Severity.FAULT for fault in notes.faults)
    seen: dict[tuple[str, str, str], ChildResults] = {}
    for result in family.results:
        form = key_form(result.child)
        if form not in names:
            if not spoilt:  # else the child may be one that could not be read
                near = nearest(form, names)
                hint = f" Is `{names[near]}` meant?" if near else ""
                words = ", ".join(str(name) for name in names.values() if name)
                notes.add(messages.NO_SUCH_CHILD, result.child.at, text=snippet(result.child), words=words, hint=hint)
            continue
        key = (form, key_form(result.challenge), key_form(result.study or ""))
        first = seen.setdefault(key, result)
        if first is not result:
            notes.add(messages.RESULTS_TWICE, result.at, name=names[form], first=first.at.line)
            continue
        yield replace(result, child=Said(names[form], result.child.at))
