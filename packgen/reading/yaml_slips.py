"""What YAML could not read -> plain words, and the edit of the line that lets reading go on.

The library says where it stopped, but in words for programmers, and often a line too late; so each rule looks at the
parent's own line. Lines and columns count from 0 here.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

import yaml

from packgen.reading import messages
from packgen.reading.messages import Message
from packgen.reading.names import snippet

_CURLY = re.compile("[“”„‟‘’‚‛«»]")
_KEY = r"""(?:[^\s'"\[\]{}#&*!|>%@`,-][^:\n]*?|[^\s'"\[\]{}#&*!|>%@`,][^:\n]+?|"[^"\n]*"|'[^'\n]*')"""
_LINE = re.compile(rf"^(?P<head>\s*(?:-[ \t]+)*)(?P<key>{_KEY}:[ \t]+)?(?P<value>.*?)[ \t]*$")
_CLOSES = {"[": "]", "{": "}"}


@dataclass(frozen=True, slots=True)
class Edit:
    """Put `new` in the place of what stands from `start` to `end` of a line."""

    line: int
    start: int
    end: int
    new: str


@dataclass(frozen=True, slots=True)
class Slip:
    """What is wrong, where, and the edits after which reading can go on. `gap` is True if they leave something out."""

    message: Message
    line: int
    column: int
    words: Mapping[str, object] = field(default_factory=dict)
    edits: tuple[Edit, ...] = ()
    gap: bool = False


@dataclass(frozen=True, slots=True)
class _Stop:
    """Where the library stopped, and why, beside the lines of the file."""

    lines: list[str]
    problem: str
    line: int
    column: int
    from_line: int
    from_column: int

    @property
    def text(self) -> str:
        return self.lines[self.line]

    @property
    def letter(self) -> str:
        return self.text[self.column : self.column + 1]

    @property
    def before(self) -> str:
        return self.text[: self.column]


def explain(error: yaml.YAMLError, lines: list[str]) -> Slip:
    """The slip behind an error of the YAML library."""
    mark = getattr(error, "problem_mark", None)
    context = getattr(error, "context_mark", None) or mark
    problem = f"{getattr(error, 'context', None) or ''}: {getattr(error, 'problem', None) or error}"
    if mark is None or context is None:
        return Slip(messages.NOT_YAML, 0, 0)
    # At the end of the file the marks lie one line below the last.
    last = len(lines) - 1
    stop = _Stop(lines, problem, min(mark.line, last), mark.column, min(context.line, last), context.column)
    for rule in _RULES:
        slip = rule(stop)
        if slip is not None:
            return slip
    return Slip(messages.NOT_YAML, stop.line, stop.column)


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


def _in_quotes(message: Message, stop: _Stop, line: int, column: int, **words: object) -> Slip | None:
    """The slip whose cure is to put the value in quotes, on a line of its own or inside brackets."""
    done = _requote_in_brackets(stop, line, column) or _requote(stop.lines, line)
    if done is None:
        return None
    edit, shown = done
    if message in (messages.COLON_IN_VALUE, messages.BAD_START) and _CURLY.match(stop.lines[line][edit.start :]):
        message = messages.CURLY_QUOTES
        column = edit.start
    return Slip(message, line, column, {"line": shown, **words}, (edit,))


def _requote_in_brackets(stop: _Stop, line: int, column: int) -> tuple[Edit, str] | None:
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


# The rules, in the order they are asked. Each looks for one habit of people who write by hand.


def _too_deep(stop: _Stop) -> Slip | None:
    if "maximum nesting" not in stop.problem:
        return None
    return Slip(messages.TOO_DEEP, stop.line, stop.column, {"most": 20})


def _tab(stop: _Stop) -> Slip | None:
    if stop.letter != "\t" and "tab character" not in stop.problem:
        return None
    indents = [(i, m) for i, line in enumerate(stop.lines) if (m := re.match(r"[ -]*\t[ \t-]*", line)) and line.strip()]
    edits = tuple(Edit(i, m.start(), m.end(), m.group().replace("\t", "  ")) for i, m in indents)
    others = sum(i > stop.line for i, _ in indents)
    also = f", and on {others} more line{'s' * (others > 1)}" if others else ""
    return Slip(messages.TAB, stop.line, stop.column, {"also": also}, edits)


def _duplicate_anchor(stop: _Stop) -> Slip | None:
    if "duplicate anchor" not in stop.problem:
        return None
    found = re.match(r"&[\w-]+", stop.text[stop.column :])
    return Slip(messages.ANCHOR_TWICE, stop.line, stop.column, {"mark": found.group() if found else "&"})


def _bad_start(stop: _Stop) -> Slip | None:
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
    return _in_quotes(messages.BAD_START, stop, line, column, mark=letter)


def _block_start(stop: _Stop) -> Slip | None:
    if "block scalar" not in stop.problem:
        return None
    mark = stop.lines[stop.from_line][stop.from_column : stop.from_column + 1]
    return _in_quotes(messages.BLOCK_START, stop, stop.from_line, stop.from_column, mark=mark)


def _backslash(stop: _Stop) -> Slip | None:
    if "escape" not in stop.problem and "hexdecimal" not in stop.problem:
        return None
    done = _requote(stop.lines, stop.line) if stop.line == stop.from_line else None
    edits, shown = ((done[0],), done[1]) if done else ((), snippet(stop.text, 100))
    return Slip(messages.BACKSLASH, stop.line, max(stop.column - 1, 0), {"line": shown}, edits)


def _quote(stop: _Stop) -> Slip | None:
    """A quote that never closes, closes too soon, or closed at the next quote in the file, lines further down."""
    if "quoted scalar" in stop.problem:
        return _in_quotes(messages.QUOTE_OPEN, stop, stop.from_line, stop.from_column)
    if "did not find expected" not in stop.problem and "could not find expected" not in stop.problem:
        return None
    before = stop.before.rstrip()
    if not before or before[-1] not in "\"'":
        return None
    quote = before[-1]
    if not re.search(r"(?:[:,]\s+|[\[{]\s*|-\s+|^\s*)$", before[:-1]):
        return _in_quotes(messages.QUOTE_INSIDE, stop, stop.line, stop.column)
    for line in range(stop.line - 1, -1, -1):
        found = _LINE.match(stop.lines[line])
        value = found["value"] if found else ""
        if found and value.startswith(quote) and quote not in value[1:]:
            return _in_quotes(messages.QUOTE_OPEN, stop, line, found.start("value"))
    return None


def _colon(stop: _Stop) -> Slip | None:
    """A colon where a value already stands: in the value itself, or on a line that YAML took for more of the last."""
    if "mapping values are not allowed" not in stop.problem:
        return None
    head = re.match(r"\s*(?:-\s+)*", stop.text)
    start = head.end() if head else 0
    if re.search(r":\s", stop.text[start : stop.column]):
        return _in_quotes(messages.COLON_IN_VALUE, stop, stop.line, stop.column)
    above = next((i for i in range(stop.line - 1, -1, -1) if stop.lines[i].strip()), None)
    if above is None:
        return None
    if not re.search(r":(\s|$)", stop.lines[above]):
        return _no_colon(stop.lines, above)
    indent = len(stop.lines[above]) - len(stop.lines[above].lstrip(" -"))
    edit = Edit(stop.line, 0, len(stop.text) - len(stop.text.lstrip()), " " * indent)
    return Slip(messages.INDENT_VALUE, stop.line, start, {"column": indent + 1}, (edit,))


def _key_without_colon(stop: _Stop) -> Slip | None:
    if "could not find expected ':'" not in stop.problem:
        return None
    return _no_colon(stop.lines, stop.from_line)


def _no_colon(lines: list[str], line: int) -> Slip:
    text = lines[line]
    start = len(text) - len(text.lstrip(" -"))
    joined = re.match(r"([^\s:：][^:：]*)[:：](?!//)(?=\S)", text[start:])
    if joined:
        at = start + joined.end()
        shown = f"{text[start : at - 1]}: {text[at:]}"
        edit = Edit(line, at - 1, at, ": ")
        return Slip(messages.COLON_NO_SPACE, line, at - 1, {"line": snippet(shown, 100)}, (edit,))
    return Slip(messages.NO_COLON, line, start, {}, (Edit(line, 0, len(text), ""),), gap=True)


def _brackets(stop: _Stop) -> Slip | None:
    """Inside [ ] or { }: a colon too many, or a bracket that is not closed; after them: text that goes on."""
    if "flow" in stop.problem:
        opening = stop.lines[stop.from_line]
        mark = opening[stop.from_column : stop.from_column + 1]
        if stop.line == stop.from_line and stop.letter:
            return _in_quotes(messages.COLON_IN_VALUE, stop, stop.line, stop.column)
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


def _indent(stop: _Stop) -> Slip | None:
    """A line that starts where none above it does; it is moved to where its neighbours start."""
    if stop.before.strip(" -") or not stop.text.strip():
        return None
    here = len(stop.text) - len(stop.text.lstrip(" "))
    if "'-' indicator" in stop.problem:
        return _below_a_dash(stop, here)
    if "did not find expected key" not in stop.problem:
        return None
    if stop.text[here:].startswith("- "):
        return Slip(messages.DASH_AFTER_VALUE, stop.line, here, {}, (Edit(stop.line, 0, len(stop.text), ""),), True)
    deeper = [n for line in stop.lines[: stop.line] if line.strip() and (n := len(line) - len(line.lstrip(" "))) > here]
    to = deeper[-1] if deeper else 0
    edit = Edit(stop.line, 0, here, " " * to)
    return Slip(messages.INDENT, stop.line, here, {"column": here + 1, "line": " " * to + stop.text.strip()}, (edit,))


def _below_a_dash(stop: _Stop, here: int) -> Slip:
    """A line without a dash among the items of a list, and the lines that follow it in the same way."""
    to = stop.from_column + 2
    items = (line for line in reversed(stop.lines[: stop.line]) if line.startswith(" " * stop.from_column + "-"))
    if not re.search(r":(\s|$)", next(items, "")):
        text = stop.text.strip()
        edit = Edit(stop.line, here, here + len(text), "- " + quoted(text))
        return Slip(messages.DASH_MISSING_ITEM, stop.line, here, {"line": edit.new}, (edit,))
    run = [stop.line]
    for line in range(stop.line + 1, len(stop.lines)):
        text = stop.lines[line]
        indent = len(text) - len(text.lstrip(" "))
        if text.strip() and (indent < here or (indent == here and text.lstrip().startswith("-"))):
            break
        run.append(line)
    edits = tuple(Edit(line, 0, 0, " " * (to - here)) for line in run if stop.lines[line].strip())
    return Slip(messages.DASH_MISSING, stop.line, here, {"line": " " * to + stop.text.strip()}, edits)


def _several(stop: _Stop) -> Slip | None:
    if "another document" not in stop.problem and "document start" not in stop.problem:
        return None
    mark = next((i for i in range(stop.line, -1, -1) if re.match(r"(---|\.\.\.)(\s|$)", stop.lines[i])), stop.line)
    return Slip(messages.SEVERAL, mark, 0, {}, (Edit(mark, 0, len(stop.lines[mark]), ""),))


_RULES: tuple[Callable[[_Stop], Slip | None], ...] = (
    _too_deep, _tab, _several, _duplicate_anchor, _block_start, _backslash, _bad_start, _quote, _colon,
    _key_without_colon, _brackets, _indent,
)  # fmt: skip
