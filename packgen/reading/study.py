"""A study file -> a frozen `Study`, with every fault found on the way."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from packgen.faults import Fault, Place, Said, in_order, nearest
from packgen.reading import messages
from packgen.reading.dates import as_years, plain
from packgen.reading.fields import Notes
from packgen.reading.models import Book, Study, Work
from packgen.reading.names import key_form, slug, snippet
from packgen.reading.study_keys import STUDY
from packgen.reading.yaml_tree import Leaf, Listing, Mapping, Node, read_tree

LEAST = "    study: Isaure Quenby\n    kind: inventor\n    in_short: Lamp-maker who measured the tides."


def read_study(path: Path) -> tuple[Study | None, tuple[Fault, ...]]:
    """The study, and its faults and warnings in order of place.

    There is a study even with faults, as long as its required keys could be read: parts with faults are left out of
    it, so that later stages can look at the rest. Only a study without faults is to be built.
    """
    tree = read_tree(path, LEAST)
    if not isinstance(tree.root, Mapping):
        return None, in_order(tree.faults)
    notes = Notes(path.parent, tree.gaps)
    study = STUDY.read(tree.root, notes)
    if study is not None:
        study = _linked(study, tree.root, notes)
    return study, in_order((*tree.faults, *notes.faults))


def _linked(study: Study, root: Mapping, notes: Notes) -> Study:
    """The study with ids that are unique and references that are true."""
    if study.born and study.died and as_years(study.died)[1] < as_years(study.born)[0]:
        words = {"died": plain(study.died), "born": plain(study.born)}
        notes.add(messages.DIED_FIRST, study.died.said.at, **words)
    works = tuple(_with_ids(study.works, notes))
    book = study.book and _with_works(study.book, works, set(_ids_written(root.find("works"))), notes)
    return replace(study, works=works, book=book)


def _with_ids(works: tuple[Work, ...], notes: Notes) -> Iterator[Work]:
    """The works with an id each. One made from a title gets a number if another work has it; a written one must not."""
    taken: dict[str, Place] = {}
    for work in works:
        if _is_written(work):
            if work.id in taken:
                notes.add(messages.ID_TWICE, work.id.at, id=snippet(work.id), first=taken[work.id].line)
            taken.setdefault(work.id, work.id.at)
    for work in works:
        made, number = str(work.id), 1
        while not _is_written(work) and made in taken:
            number += 1
            made = f"{work.id}-{number}"
        taken.setdefault(made, work.id.at)
        yield replace(work, id=Said(made, work.id.at))


def _is_written(work: Work) -> bool:
    return work.id.at != work.title.at


def _with_works(book: Book, works: tuple[Work, ...], written: set[str], notes: Notes) -> Book:
    """The book whose chapters name works by their true ids; a work may also be named by its title."""
    forms = {key_form(work.title): work.id for work in works} | {key_form(work.id): work.id for work in works}
    forms = {slug(form): id for form, id in forms.items()} | forms
    chapters = []
    for chapter in book.chapters:
        ids = []
        for said in chapter.works:
            found = forms.get(key_form(said)) or forms.get(slug(said))
            if found:
                ids.append(Said(found, said.at))
            elif key_form(said) not in written and not notes.gaps:
                near = nearest(key_form(said), forms)
                known = ", ".join(snippet(work.id, 30) for work in works[:12])
                hint = f"Is `{forms[near]}` meant?" if near else f"The works are: {known or 'none yet'}."
                notes.add(messages.NO_SUCH_WORK, said.at, text=snippet(said), hint=hint)
        chapters.append(replace(chapter, works=tuple(ids)))
    return replace(book, chapters=tuple(chapters))


def _ids_written(node: Node | None) -> Iterator[str]:
    """The ids and titles in the file, also of works that were left out for a fault of their own."""
    for item in node.items if isinstance(node, Listing) else (node,):
        for key in ("id", "title") if isinstance(item, Mapping) else ():
            value = item.find(key) if isinstance(item, Mapping) else None
            if isinstance(value, Leaf):
                yield key_form(value.text)
