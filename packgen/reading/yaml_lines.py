"""Slips of whole lines: tabs, indents, dashes and colons that are missing, and more than one document.

Each rule looks at where the library stopped and gives the slip, or None if it is not of its kind.
"""

from __future__ import annotations

import re

from packgen.reading import messages
from packgen.reading.names import snippet
from packgen.reading.yaml_stop import Edit, Slip, Stop, indent_of, text_column
from packgen.reading.yaml_values import in_quotes, quoted

_JOINED = re.compile(r"\s*(?:-\s+)*[A-Za-z][\w -]*:[\[{\"'](?!\s*$)")


def tab(stop: Stop) -> Slip | None:
    if stop.letter != "\t" and "tab character" not in stop.problem:
        return None
    indents = [(i, m) for i, line in enumerate(stop.lines) if (m := re.match(r"[ -]*\t[ \t-]*", line)) and line.strip()]
    edits = tuple(Edit(i, m.start(), m.end(), m.group().replace("\t", "  ")) for i, m in indents)
    others = sum(i > stop.line for i, _ in indents)
    also = f", and on {others} more line{'s' * (others > 1)}" if others else ""
    return Slip(messages.TAB, stop.line, stop.column, {"also": also}, edits)


def colon(stop: Stop) -> Slip | None:
    """A colon where a value already stands: in the value itself, or on a line that YAML took for more of the last."""
    if "mapping values are not allowed" not in stop.problem:
        return None
    start = text_column(stop.text)
    if _JOINED.match(stop.text):
        return _no_colon(stop.lines, stop.line)
    if re.search(r":\s", stop.text[start : stop.column]):
        return in_quotes(messages.COLON_IN_VALUE, stop, stop.line, stop.column)
    above = _above(stop, stop.line)
    if above is None:
        return None
    here = indent_of(stop.text)
    if not re.search(r":(\s|$)", stop.lines[above]):
        if stop.lines[above].lstrip().startswith("- "):
            return _moved(stop, stop.line)
        return _no_colon(stop.lines, above)
    before = _above(stop, above)
    if before is not None and text_column(stop.lines[before]) == here and indent_of(stop.lines[above]) < here:
        return _moved(stop, above, here)
    block = _block(stop.lines, stop.line, here)
    to = text_column(stop.lines[above])
    edits = _shifted(stop.lines, block, to - here)
    # Several lines further right are more likely the keys of something whose own line is missing.
    return Slip(messages.INDENT_VALUE, stop.line, here, {"column": to + 1}, edits, gap=len(block) > 1)


def key_without_colon(stop: Stop) -> Slip | None:
    """A line that YAML waited for a colon on."""
    if "could not find expected ':'" not in stop.problem:
        return None
    dash = " " * indent_of(stop.lines[stop.from_line]) + "- "
    below = next((line for line in stop.lines[stop.from_line + 1 :] if line.strip()), "")
    if below.startswith(dash) and any(line.startswith(dash) for line in stop.lines[: stop.from_line]):
        return _without_dash(stop.lines, stop.from_line, len(dash) - 2)
    return _no_colon(stop.lines, stop.from_line)


def _no_colon(lines: list[str], line: int) -> Slip:
    text = lines[line]
    start = text_column(text)
    joined = re.match(r"([^\s:：][^:：]*)[:：](?!//)(?=\S)", text[start:])
    if joined:
        at = start + joined.end()
        shown = f"{text[start : at - 1]}: {text[at:]}"
        edit = Edit(line, at - 1, at, ": ")
        return Slip(messages.COLON_NO_SPACE, line, at - 1, {"line": snippet(shown, 100)}, (edit,))
    below = next((later for later in lines[line + 1 :] if later.strip()), "")
    opens = indent_of(below) > start or below.lstrip().startswith("- ")
    if opens and re.fullmatch(r"[A-Za-z][A-Za-z_ -]{1,19}", text.strip()):
        end = len(text.rstrip())
        return Slip(messages.NO_COLON, line, start, {}, (Edit(line, end, end, ":"),))
    return Slip(messages.NO_COLON, line, start, {}, (Edit(line, 0, len(text), ""),), gap=True)


def indent(stop: Stop) -> Slip | None:
    """A line that starts where none above it does; it is moved to where its neighbours start."""
    if stop.before.strip(" -") or not stop.text.strip():
        return None
    here = indent_of(stop.text)
    if "'-' indicator" in stop.problem:
        return _below_a_dash(stop, here)
    if "did not find expected key" not in stop.problem:
        return None
    above = _above(stop, stop.line)
    if stop.text[here:].startswith("- ") and not (above is not None and stop.lines[above].lstrip().startswith("- ")):
        block = _block(stop.lines, stop.line, here, dashes=True)
        edits = tuple(Edit(line, 0, len(stop.lines[line]), "") for line in block)
        return Slip(messages.DASH_AFTER_VALUE, stop.line, here, {}, edits, gap=True)
    return _moved(stop, stop.line)


def _moved(stop: Stop, line: int, to: int | None = None) -> Slip:
    """The slip of one line that has to start elsewhere: at `to`, or at the nearest start of an open line above it.

    Of two starts as near, a line that opens something takes the left one and a line with a value the right one.
    """
    text = stop.lines[line]
    here = indent_of(text)
    if to is None:
        opens = text.rstrip().endswith(":")
        to = min(_starts(stop, line), key=lambda start: (abs(start - here), start if opens else -start), default=0)
    words = {"column": here + 1, "line": " " * to + text.strip()}
    return Slip(messages.INDENT, line, here, words, (Edit(line, 0, here, " " * to),))


def _starts(stop: Stop, line: int) -> set[int]:
    """The columns where a line may start: those of the dashes above it for an item, of the keys for another line."""
    starts: set[int] = set()
    item = stop.lines[line].lstrip().startswith("- ")
    for text in reversed(stop.lines[:line]):
        if text.strip() and text.lstrip()[0] != "#":
            dashed = text.lstrip().startswith("- ")
            if item == dashed or (dashed and ":" in text):
                starts.add(indent_of(text) if item else text_column(text))
            if indent_of(text) == 0:
                break
    return starts - {indent_of(stop.lines[line])}


def _below_a_dash(stop: Stop, here: int) -> Slip:
    """A line without a dash among the items of a list, and the lines that follow it in the same way."""
    to = stop.from_column + 2
    items = (line for line in reversed(stop.lines[: stop.line]) if line.startswith(" " * stop.from_column + "-"))
    if not re.search(r":(\s|$)", next(items, "")) or not re.search(r":(\s|$)", stop.text):
        return _without_dash(stop.lines, stop.line, stop.from_column)
    edits = _shifted(stop.lines, _astray(stop.lines, stop.line, here, to), to - here)
    return Slip(messages.DASH_MISSING, stop.line, here, {"line": " " * to + stop.text.strip()}, edits)


def _without_dash(lines: list[str], line: int, to: int) -> Slip:
    """The slip of an item of a list that lost its dash."""
    here = indent_of(lines[line])
    edit = Edit(line, 0, len(lines[line]), " " * to + "- " + quoted(lines[line].strip()))
    return Slip(messages.DASH_MISSING_ITEM, line, here, {"line": edit.new.strip()}, (edit,))


def _astray(lines: list[str], first: int, here: int, to: int) -> list[int]:
    """The lines from the first that start too far left, with what belongs to them; those in their place end it."""
    found = [first]
    for line in range(first + 1, len(lines)):
        text = lines[line]
        indent = indent_of(text)
        if not text.strip():
            continue
        if indent < here or (indent == here and text.lstrip().startswith("-")):
            break
        holds = lines[found[-1]].rstrip().endswith(":")
        if indent == to != here and not holds and re.match(r"\s*[A-Za-z][\w -]*:(\s|$)", text):
            break
        found.append(line)
    return found


def _block(lines: list[str], first: int, here: int, dashes: bool = False) -> list[int]:
    """The lines from the first that start as far right as it does or further; only items at that place if `dashes`."""
    found = [first]
    for line in range(first + 1, len(lines)):
        text = lines[line]
        if not text.strip():
            continue
        if indent_of(text) < here or (dashes and indent_of(text) == here and not text.lstrip().startswith("-")):
            break
        found.append(line)
    return found


def _shifted(lines: list[str], block: list[int], by: int) -> tuple[Edit, ...]:
    """The edits that move lines to the right, or to the left if `by` is negative."""
    if by >= 0:
        return tuple(Edit(line, 0, 0, " " * by) for line in block)
    return tuple(Edit(line, 0, min(-by, indent_of(lines[line])), "") for line in block)


def _above(stop: Stop, line: int) -> int | None:
    """The nearest line above that has text and is no note."""
    above = ((i, stop.lines[i].strip()) for i in range(line - 1, -1, -1))
    return next((i for i, text in above if text and text[0] != "#"), None)


def several(stop: Stop) -> Slip | None:
    """A second document, or a first line further right than the rest, which YAML takes for a document of its own."""
    if "another document" not in stop.problem and "document start" not in stop.problem:
        return None
    marks = (i for i in range(stop.line, -1, -1) if re.match(r"(---|\.\.\.)(\s|$)", stop.lines[i]))
    mark = next(marks, None)
    if mark is not None:
        return Slip(messages.SEVERAL, mark, 0, {}, (Edit(mark, 0, len(stop.lines[mark]), ""),))
    first = next((i for i, line in enumerate(stop.lines) if line.strip() and line.lstrip()[0] != "#"), stop.line)
    here = indent_of(stop.lines[first])
    if first == stop.line or here == 0:
        return Slip(messages.SEVERAL, stop.line, 0)
    edits = _shifted(stop.lines, [i for i in range(first, stop.line) if indent_of(stop.lines[i]) >= here], -here)
    words = {"column": here + 1, "line": stop.lines[first].strip()}
    return Slip(messages.INDENT, first, here, words, edits)
