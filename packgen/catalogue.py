"""The catalogue: every sheet, fold scheme, solid and challenge model with its options, as text for a terminal."""

from __future__ import annotations

import textwrap

from packgen import sheets
from packgen.folding.schemes import schemes
from packgen.nets.catalogue import Entry
from packgen.nets.catalogue import catalogue as solids
from packgen.nets.given import Parameter
from packgen.trials import catalogue as models

_WIDTH = 96


def text() -> str:
    """The whole catalogue."""
    parts = [
        _part("SHEETS", [_sheet(kind) for kind in sheets.kinds()]),
        _part(
            "FOLD SCHEMES", [_entry(name, s.title, s.about, [_holds(s.most_pages)]) for name, s in schemes().items()]
        ),
        _part("SOLIDS, for models", [_solid(entry) for entry in solids()]),
        _part("CHALLENGE MODELS", [_model(entry) for entry in models.catalogue()]),
    ]
    return "\n".join(parts)


def _part(title: str, entries: list[str]) -> str:
    return f"{title}\n\n" + "\n".join(entries)


def _entry(name: str, title: str, about: str, lines: list[str]) -> str:
    rows = [f"  {name}", *_wrapped(f"{title}. {about}" if title.lower() != name else about, 4)]
    for line in lines:
        rows += _wrapped(line, 6)
    return "\n".join(rows) + "\n"


def _wrapped(words: str, indent: int) -> list[str]:
    room = " " * indent
    return textwrap.wrap(words, _WIDTH, initial_indent=room, subsequent_indent=room + ("  " if indent > 4 else ""))


def _holds(most: int | None) -> str:
    return "any number of pages" if most is None else f"up to {most} pages"


def _sheet(kind: str) -> str:
    about = sheets.about(kind)
    lines = [f"levels: {', '.join(about.levels)}"]
    for option in about.options:
        choices = f" ({' | '.join(option.choices)})" if option.choices else ""
        usual = f" [{option.default}]" if option.default != "" else ""
        lines.append(f"{option.name}: {option.about}{choices}{usual}")
    if about.parts:
        lines.append(f"parts that can have extra copies: {', '.join(about.parts)}")
    return _entry(kind, about.title, about.about, lines)


def _solid(entry: Entry) -> str:
    return _entry(entry.name, entry.title, entry.about, [_parameter(p) for p in entry.parameters])


def _parameter(parameter: Parameter) -> str:
    """What one measure of a solid is, and whether it must be given."""
    need = (
        "one of the group is given"
        if parameter.group
        else "required"
        if parameter.required and parameter.default is None
        else ""
    )
    usual = f"usual {parameter.default}" if parameter.default is not None else ""
    words = " | ".join(parameter.words)
    notes = "; ".join(part for part in (parameter.dimension, words, need, usual) if part)
    return f"{parameter.name}: {parameter.help} ({notes})"


def _model(entry: models.ModelLine) -> str:
    lines = [f"{i.name}: {i.help} ({i.allowed}{'; usual ' + i.default if i.default else ''})" for i in entry.inputs]
    lines += [f"measures: {', '.join(entry.measures)}", f"changes, if nothing else is said: {entry.change}"]
    lines.append(f"source: {entry.source}")
    return _entry(entry.key, entry.title, entry.about, lines)
