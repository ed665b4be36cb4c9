"""What YAML could not read -> plain words, and the edit of the line that lets reading go on.

The library says where it stopped, but in words for programmers, and often a line too late; so each rule looks at the
parent's own line.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import yaml

from packgen.reading import messages
from packgen.reading.yaml_lines import colon, indent, key_without_colon, several, tab
from packgen.reading.yaml_stop import Edit, Slip, Stop
from packgen.reading.yaml_values import backslash, bad_start, block_start, brackets, quote

__all__ = ["Edit", "Slip", "explain"]


def explain(error: yaml.YAMLError, lines: list[str]) -> Slip:
    """The slip behind an error of the YAML library."""
    mark = getattr(error, "problem_mark", None)
    context = getattr(error, "context_mark", None) or mark
    problem = f"{getattr(error, 'context', None) or ''}: {getattr(error, 'problem', None) or error}"
    if mark is None or context is None:
        return Slip(messages.NOT_YAML, 0, 0)
    # At the end of the file the marks lie one line below the last.
    last = len(lines) - 1
    stop = Stop(lines, problem, min(mark.line, last), mark.column, min(context.line, last), context.column)
    for rule in _RULES:
        slip = rule(stop)
        if slip is not None:
            return slip
    return Slip(messages.NOT_YAML, stop.line, stop.column)


def _too_deep(stop: Stop) -> Slip | None:
    if "maximum nesting" not in stop.problem:
        return None
    return Slip(messages.TOO_DEEP, stop.line, stop.column, {"most": 20})


def _duplicate_anchor(stop: Stop) -> Slip | None:
    if "duplicate anchor" not in stop.problem:
        return None
    found = re.match(r"&[\w-]+", stop.text[stop.column :])
    return Slip(messages.ANCHOR_TWICE, stop.line, stop.column, {"mark": found.group() if found else "&"})


# The rules, in the order they are asked. Each looks for one habit of people who write by hand.
_RULES: tuple[Callable[[Stop], Slip | None], ...] = (
    _too_deep, tab, several, _duplicate_anchor, block_start, backslash, bad_start, quote, colon, key_without_colon,
    brackets, indent,
)  # fmt: skip
