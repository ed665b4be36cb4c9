"""Slips inside a value: quotes, colons, brackets and signs that mean something to YAML.

Each rule looks at where the library stopped and gives the slip, or None if it is not of its kind.
"""

from __future__ import annotations

import re

from packgen.reading import messages
from packgen.reading.messages import Message
from packgen.reading.names import snippet
from packgen.reading.yaml_stop import Edit, Slip, Stop

_CURLY = re.compile("[“”„‟‘’‚‛«»]")
_KEY = r"""(?:[^\s'"\[\]{}#&*!|>%@`,-][^:\n]*?|[^\s'"\[\]{}#&*!|>%@`,][^:\n]+?|"[^"\n]*"|'[^'\n]*')"""
_LINE = re.compile(rf"^(?P<head>\s*(?:-[ \t]+)*)(?P<key>{_KEY}:[ \t]+)?(?P<value>.*?)[ \t]*$")
_CLOSES = {"[": "]", "{": "}"}


def quoted(text: str) -> str:
    """The text in the quotes that need least changed inside."""
    if '"' not in text and "\\" not in text:
        return f'"{text}"'
    return "'" + text.replace("'", "''") + "'"


def _requote(lines: list[str], line: int, text_from: int | None = None) -> tuple[Edit, str] | None:
    """The edit that puts a line's value in quotes, and the line to show; None if the line has no value.

    Quotes at the value's ends are taken for the parent's own and replaced, curly ones too. A key that begins with a
    capital letter after a dash is taken for the start of the item's text, since packgen's own keys are small.
    """
    text = lines[line]
    found = _LINE.match(text)
    if not found or not found["value"]:
        return None
    start = found.start("value")
    key = found["key"] or ""
    if key and "-" in found["head"] and key[0].isupper():
        start = found.start("key")
    if text_from is not None:
        start = max(start, text_from)
    end = found.end("value")
    value = text[start:end]
    comment = re.search(r"\s+#(?:\s.*)?$", value)
    if comment and value[0] not in "\"'":
        end -= len(comment.group())
        value = text[start:end]
    new = quoted(_bare(value))
    return Edit(line, start, end, new), snippet((text[:start] + new).strip(), 100)


def _bare(value: str) -> str:
    """A value without the quote it begins with, and without the one it ends with if that is its partner."""
    pairs = {'"': '"', "'": "'", "“": "”", "„": "“", "«": "»", "‘": "’"}
    close = pairs.get(value[:1])
    if close is None:
        return value
    if len(value) > 1 and value[-1] in (close, value[0]):
        return value[1:-1].replace("''", "'") if value[0] == "'" else value[1:-1]
    # A quote that closes before the end belongs to the text; one that never closes was meant for the whole.
    return value if close in value[1:] else value[1:]


def in_quotes(message: Message, stop: Stop, line: int, column: int, **words: object) -> Slip | None:
    """The slip whose cure is to put the value in quotes, on a line of its own or inside brackets."""
    done = _requote_in_brackets(stop, line, column) or _requote(stop.lines, line)
    if done is None:
        return None
    edit, shown = done
    if message in (messages.COLON_IN_VALUE, messages.BAD_START) and _CURLY.match(stop.lines[line][edit.start :]):
        message = messages.CURLY_QUOTES
        column = edit.start
    return Slip(message, line, column, {"line": shown, **words}, (edit,))


def _requote_in_brackets(stop: Stop, line: int, column: int) -> tuple[Edit, str] | None:
    """As `_requote`, for a value inside [ ] or { } that open on the same line; None if it is not inside any."""
    text = stop.lines[line]
    found = _LINE.match(text)
    if not found or found["value"][:1] not in ("[", "{"):
        return None
    opened, start = _open_at(text, found.start("value"), column)
    if not opened:
        return None
    rest = text[start:]
    ends = [m.start() for m in re.finditer(r",\s+[\w ]+:\s|[\]}]", rest)] if "{" in opened else []
    ends += [m.start() for m in re.finditer(r"[,\]]", rest)] if opened[-1] == "[" else []
    end = start + min((e for e in ends if start + e > column), default=len(rest))
    value = text[start:end].rstrip()
    if not value:
        return None
    new = quoted(_bare(value))
    edit = Edit(line, start, start + len(value), new)
    return edit, snippet((text[:start] + new + text[edit.end :]).strip(), 100)


def _open_at(text: str, begin: int, column: int) -> tuple[str, int]:
    """The brackets open at a column, outermost first, and where the value that stands there starts."""
    opened, start, quote = "", begin, ""
    for i in range(begin, min(column, len(text))):
        letter = text[i]
        if quote:
            quote = "" if letter == quote else quote
        elif letter in "\"'" and text[start:i].strip() == "":
            quote = letter
        elif letter in "[{":
            opened, start = opened + letter, i + 1
        elif letter in "]}":
            opened = opened[:-1]
        elif letter == "," or (letter == ":" and text[i + 1 : i + 2] == " " and i < column and _is_key(text[start:i])):
            start = i + 1
    return opened, start + len(text[start:]) - len(text[start:].lstrip())


def _is_key(text: str) -> bool:
    return re.fullmatch(r"\s*[a-z][\w -]*", text) is not None


def bad_start(stop: Stop) -> Slip | None:
    begun = any(w in stop.problem for w in ("an alias", "undefined alias", "an anchor", "a tag", "a directive"))
    line, column = (stop.from_line, stop.from_column) if begun else (stop.line, stop.column)
    letter = stop.lines[line][column : column + 1]
    stray = "cannot start any token" in stop.problem or "node content" in stop.problem or "tag handle" in stop.problem
    marker = "not allowed in this context" in stop.problem and letter in "-?"
    if not (begun or stray or marker) or not letter or letter.isalnum():
        return None
    if letter == "%" and stop.lines[line][column - 1 : column] == "{":
        column -= 1
        letter = "{%"
    return in_quotes(messages.BAD_START, stop, line, column, mark=letter)


def block_start(stop: Stop) -> Slip | None:
    if "block scalar" not in stop.problem:
        return None
    mark = stop.lines[stop.from_line][stop.from_column : stop.from_column + 1]
    return in_quotes(messages.BLOCK_START, stop, stop.from_line, stop.from_column, mark=mark)


def backslash(stop: Stop) -> Slip | None:
    if "escape" not in stop.problem and "hexdecimal" not in stop.problem:
        return None
    done = _requote(stop.lines, stop.line) if stop.line == stop.from_line else None
    edits, shown = ((done[0],), done[1]) if done else ((), snippet(stop.text, 100))
    return Slip(messages.BACKSLASH, stop.line, max(stop.column - 1, 0), {"line": shown}, edits)


def quote(stop: Stop) -> Slip | None:
    """A quote that never closes, closes too soon, or closed at the next quote in the file, lines further down."""
    if "quoted scalar" in stop.problem:
        return in_quotes(messages.QUOTE_OPEN, stop, stop.from_line, stop.from_column)
    if "did not find expected" not in stop.problem and "could not find expected" not in stop.problem:
        return None
    before = stop.before.rstrip()
    if not before or before[-1] not in "\"'":
        return None
    quote = before[-1]
    if not re.search(r"(?:[:,]\s+|[\[{]\s*|-\s+|^\s*)$", before[:-1]):
        return in_quotes(messages.QUOTE_INSIDE, stop, stop.line, stop.column)
    for line in range(stop.line - 1, -1, -1):
        found = _LINE.match(stop.lines[line])
        value = found["value"] if found else ""
        if found and value.startswith(quote) and quote not in value[1:]:
            return in_quotes(messages.QUOTE_OPEN, stop, line, found.start("value"))
    return None


def brackets(stop: Stop) -> Slip | None:
    """Inside [ ] or { }: a colon too many, or a bracket that is not closed; after them: text that goes on."""
    if "flow" in stop.problem:
        opening = stop.lines[stop.from_line]
        mark = opening[stop.from_column : stop.from_column + 1]
        if stop.line == stop.from_line and stop.letter:
            return in_quotes(messages.COLON_IN_VALUE, stop, stop.line, stop.column)
        close = _CLOSES.get(mark, "]")
        end = len(opening.rstrip())
        edit = Edit(stop.from_line, end, end, close)
        return Slip(messages.FLOW_OPEN, stop.from_line, stop.from_column, {"mark": mark, "close": close}, (edit,))
    if "did not find expected key" in stop.problem and stop.before.rstrip()[-1:] in ("]", "}"):
        found = _LINE.match(stop.text)
        mark = found["value"][:1] if found else ""
        if found and mark in _CLOSES:
            done = _requote(stop.lines, stop.line)
            if done:
                words = {"line": done[1], "mark": mark}
                return Slip(messages.BRACKET_START, stop.line, found.start("value"), words, (done[0],))
    return None
