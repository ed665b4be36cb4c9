"""YAML text -> a tree of nodes that know their place. Every scalar stays text: `010`, `no` and `12:30` are as written.

A file that YAML cannot read is mended line by line in memory after each fault, so that the faults behind the first
are told as well. Limits on depth, on the number of values and on letters stop files that unfold without end.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import yaml

from packgen.faults import Fault, Place, Said
from packgen.reading import messages
from packgen.reading.names import key_form, snippet, tidy
from packgen.reading.text_file import clean, read_text
from packgen.reading.yaml_slips import Edit, explain

MAX_DEPTH = 20
MAX_VALUES = 100_000
MAX_LETTERS = 4_000_000
_INDENTS = (messages.INDENT, messages.INDENT_VALUE, messages.DASH_MISSING, messages.DASH_AFTER_VALUE)
_MAX_MENDS = 40
_MAX_MENDED_LETTERS = 8_000_000
_TAGS = ("tag:yaml.org,2002:str", "tag:yaml.org,2002:seq", "tag:yaml.org,2002:map")
_LOADER: type[yaml.CBaseLoader] | type[yaml.BaseLoader] = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


@dataclass(frozen=True, slots=True)
class Leaf:
    """A single value. `plain` is True if it was written without quotes; an empty plain leaf is nothing at all."""

    text: Said
    plain: bool = True

    @property
    def at(self) -> Place:
        return self.text.at

    @property
    def is_nothing(self) -> bool:
        """True where nothing is written, or YAML's own words for nothing."""
        return self.plain and self.text in ("", "~", "null")


@dataclass(frozen=True, slots=True)
class Listing:
    """A list of values."""

    items: tuple[Node, ...]
    at: Place
    flow: bool = False


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys with values, in the order written; no two keys of the same form."""

    pairs: tuple[tuple[Said, Node], ...]
    at: Place
    flow: bool = False

    def find(self, key: str) -> Node | None:
        """The value of a key, whatever its spelling with spaces, hyphens and underscores; None if it is not there."""
        wanted = key_form(key)
        return next((node for name, node in self.pairs if key_form(name) == wanted), None)


Node = Leaf | Listing | Mapping


@dataclass(frozen=True, slots=True)
class Tree:
    """What a file holds. `root` is None if it holds nothing that can be read.

    `gaps` is True if lines were left out to read on after a fault, so that a missing key may not truly be missing.
    """

    root: Node | None
    faults: tuple[Fault, ...]
    gaps: bool = False


def read_tree(path: Path, lines: str) -> Tree:
    """The tree of a file of keys; `lines` are the least lines such a file needs, shown where it has none."""
    text, faults = read_text(path)
    if text is None:
        return Tree(None, faults)
    tree = parse_tree(text, str(path), lines)
    return Tree(tree.root, faults + tree.faults, tree.gaps)


def parse_tree(text: str, file: str, lines: str = "    key: value") -> Tree:
    """The tree of a text, which must be keys with values at its top."""
    text, faults = clean(text, file)
    draft = _compose(_no_wide_spaces(text).split("\n"), file)
    faults += tuple(draft.faults)
    if draft.failed:
        return Tree(None, faults, True)
    if draft.node is None:
        return Tree(None, (*faults, messages.EMPTY.fault(Place(file, 1, 1), lines=lines)))
    planter = _Planter(draft)
    try:
        root = planter.node(draft.node, 1, ())
    except _Stop as stop:
        return Tree(None, (*faults, *planter.faults, stop.fault))
    faults += tuple(planter.faults)
    if isinstance(root, Mapping):
        return Tree(root, faults, draft.gaps)
    if isinstance(root, Leaf) and root.is_nothing:
        return Tree(None, (*faults, messages.EMPTY.fault(Place(file, 1, 1), lines=lines)))
    what = "list" if isinstance(root, Listing) else "single text"
    return Tree(None, (*faults, messages.NOT_KEYS.fault(root.at, what=what, lines=lines)))


def _no_wide_spaces(text: str) -> str:
    """The text with plain spaces where a no-break space, copied from a web page, stands as indent or after a colon."""
    if "\u00a0" not in text:
        return text
    text = re.sub(r"^[ \u00a0]+", lambda m: " " * len(m.group()), text, flags=re.MULTILINE)
    return re.sub(r"^([^\n:\u00a0]*:)\u00a0", r"\1 ", text, flags=re.MULTILINE)


@dataclass(slots=True)
class _Draft:
    """A text being read, with the edits that made it readable."""

    lines: list[str]
    file: str
    node: yaml.Node | None = None
    failed: bool = False
    gaps: bool = False
    faults: list[Fault] = field(default_factory=list)
    edits: dict[int, list[Edit]] = field(default_factory=dict)

    def place(self, line: int, column: int) -> Place:
        """The place in the parent's own text of a line and column (from 0) of the mended one."""
        for edit in reversed(self.edits.get(line, [])):
            if column >= edit.start + len(edit.new):
                column -= len(edit.new) - (edit.end - edit.start)
            elif column > edit.start:
                column = min(column, edit.end)
        return Place(self.file, line + 1, column + 1)

    def apply(self, edit: Edit) -> None:
        line = self.lines[edit.line]
        self.lines[edit.line] = line[: edit.start] + edit.new + line[edit.end :]
        self.edits.setdefault(edit.line, []).append(edit)


def _compose(lines: list[str], file: str) -> _Draft:
    """The nodes of a text; after each fault its line is mended and the text is read again.

    Slips of indent that follow a slip of indent line upon line are told as one: the first made the others.
    """
    draft = _Draft(lines, file)
    letters = sum(len(line) + 1 for line in lines)
    tries = max(1, min(_MAX_MENDS, _MAX_MENDED_LETTERS // max(letters, 1)))
    seen: set[tuple[str, int]] = set()
    last: int | None = None
    for _ in range(tries):
        try:
            draft.node = yaml.compose("\n".join(draft.lines) + "\n", Loader=_LOADER)
            return draft
        except RecursionError:
            draft.faults.append(messages.TOO_DEEP.fault(Place(file), most=MAX_DEPTH))
            break
        except yaml.YAMLError as error:
            slip = explain(error, draft.lines)
        again = (slip.message.text, slip.line) in seen
        follows = (
            slip.message in _INDENTS and last is not None and not "".join(draft.lines[last + 1 : slip.line]).strip()
        )
        if follows:
            draft.gaps = True
        elif not again:
            draft.faults.append(slip.message.fault(draft.place(slip.line, slip.column), **slip.words))
        last = max(edit.line for edit in slip.edits) if slip.edits and (slip.gap or slip.message in _INDENTS) else None
        if again or not slip.edits:
            break
        seen.add((slip.message.text, slip.line))
        draft.gaps = draft.gaps or slip.gap
        for edit in slip.edits:
            draft.apply(edit)
    draft.failed = True
    return draft


class _Stop(Exception):
    """The tree is too deep or too large to go on."""

    def __init__(self, fault: Fault) -> None:
        self.fault = fault
        super().__init__(fault.message)


class _Planter:
    """Turns the library's nodes into packgen's, within the limits, and collects the faults on the way."""

    def __init__(self, draft: _Draft) -> None:
        self.draft = draft
        self.faults: list[Fault] = []
        self.values = 0
        self.letters = 0

    def node(self, node: yaml.Node, depth: int, above: tuple[int, ...], key_at: Place | None = None) -> Node:
        at = self.draft.place(node.start_mark.line, node.start_mark.column)
        self._count(node, depth, above, at)
        self._lost_word(node, at)
        if isinstance(node, yaml.ScalarNode):
            return self._leaf(node, at, key_at)
        above = (*above, id(node))
        assert isinstance(node, yaml.CollectionNode)
        flow = bool(node.flow_style)
        if isinstance(node, yaml.SequenceNode):
            return Listing(tuple(self.node(item, depth + 1, above) for item in node.value), at, flow)
        assert isinstance(node, yaml.MappingNode)
        if any(not isinstance(key, yaml.ScalarNode) for key, _ in node.value):
            return self._brackets_as_text(node, at)
        pairs: dict[str, tuple[Said, Node]] = {}
        for name, value in self._pairs(node, depth, above):
            form = key_form(name)
            if form in pairs:
                first = pairs[form][0]
                self.faults.append(messages.TWICE.fault(name.at, key=snippet(name), first=first.at.line))
            else:
                pairs[form] = (name, value)
        return Mapping(tuple(pairs.values()), at, flow)

    def _count(self, node: yaml.Node, depth: int, above: tuple[int, ...], at: Place) -> None:
        if id(node) in above:
            raise _Stop(messages.CYCLE.fault(at))
        if depth > MAX_DEPTH:
            raise _Stop(messages.TOO_DEEP.fault(at, most=MAX_DEPTH))
        self.values += 1
        self.letters += len(node.value) if isinstance(node, yaml.ScalarNode) else 0
        if self.values > MAX_VALUES or self.letters > MAX_LETTERS:
            raise _Stop(messages.TOO_MUCH.fault(at, most=MAX_VALUES))

    def _pairs(self, node: yaml.MappingNode, depth: int, above: tuple[int, ...]) -> Iterator[tuple[Said, Node]]:
        """The pairs of a mapping; `<<: *mark` gives the pairs of the marked mapping that the mapping lacks."""
        own: set[str] = set()
        taken: list[tuple[Said, Node]] = []
        for key, value in node.value:
            at = self.draft.place(key.start_mark.line, key.start_mark.column)
            name = Said(tidy(key.value), at)
            if not name:
                self.faults.append(messages.KEY_EMPTY.fault(at))
                continue
            self._lost_word(key, at)
            child = self.node(value, depth + 1, above, at)
            self._note_cut(key, child)
            if key.value == "<<" and not key.style:
                taken += self._merged(child, at)
            else:
                own.add(key_form(name))
                yield name, child
        for name, child in taken:
            if key_form(name) not in own:
                own.add(key_form(name))
                yield name, child

    def _brackets_as_text(self, node: yaml.MappingNode, at: Place) -> Leaf:
        """The text that was meant where brackets stand for a key, as in `title: {{ name }}`; a fault is noted."""
        key = next(key for key, _ in node.value if not isinstance(key, yaml.ScalarNode))
        what = "list" if isinstance(key, yaml.SequenceNode) else "set of keys in braces"
        key_at = self.draft.place(key.start_mark.line, key.start_mark.column)
        self.faults.append(messages.KEY_NOT_TEXT.fault(key_at, what=what))
        return Leaf(Said(tidy(self._rest(node.start_mark.line, node.start_mark.column)), at), plain=False)

    def _merged(self, node: Node, at: Place) -> list[tuple[Said, Node]]:
        parts = node.items if isinstance(node, Listing) else (node,)
        if not all(isinstance(part, Mapping) for part in parts):
            self.faults.append(messages.BAD_MERGE.fault(at))
        return [pair for part in parts if isinstance(part, Mapping) for pair in part.pairs]

    def _leaf(self, node: yaml.ScalarNode, at: Place, key_at: Place | None) -> Leaf:
        plain = not node.style
        if plain and node.value:
            self._cut(node.end_mark.line, node.end_mark.column)
            self._swallowed(node)
        if not node.value and key_at is not None:
            at = key_at
        text, faults = clean(node.value, at.file)
        if faults:
            code = f"U+{ord(next(c for c in node.value if c not in text)):04X}"
            self.faults.append(messages.CONTROL.fault(at, code=code))
        return Leaf(Said(tidy(text), at), plain)

    def _note_cut(self, key: yaml.ScalarNode, value: Node) -> None:
        if isinstance(value, Leaf) and value.is_nothing:
            line = key.end_mark.line
            colon = re.match(r"\s*:", self._rest(line, key.end_mark.column))
            if colon:
                self._cut(line, key.end_mark.column + colon.end())

    def _swallowed(self, node: yaml.ScalarNode) -> None:
        """Warns where a line that begins with a dash became more of the text above it."""
        for line in range(node.start_mark.line + 1, node.end_mark.line + 1):
            found = re.match(r"\s*-\s", self._rest(line, 0))
            if found:
                self.faults.append(messages.DASH_SWALLOWED.fault(self.draft.place(line, found.end() - 2)))

    def _cut(self, line: int, column: int) -> None:
        """Warns where a # right before a word, as in `no #3`, silently ends the value."""
        found = re.match(r"\s+#(?=\w)", self._rest(line, column))
        if found:
            self.faults.append(messages.HASH_CUT.fault(self.draft.place(line, column + found.end() - 1)))

    def _lost_word(self, node: yaml.Node, at: Place) -> None:
        """A fault where `!word` or `&word` begins a text: YAML takes it for a mark of its own and drops it."""
        rest = self._rest(node.start_mark.line, node.start_mark.column)
        if node.tag not in _TAGS or rest.startswith("!"):
            self.faults.append(messages.TAGGED.fault(at, text=snippet(rest)))
        elif rest.startswith("&"):
            anchor = re.match(r"&([\w-]+)", rest)
            if anchor and not any(re.search(rf"\*{re.escape(anchor[1])}\b", line) for line in self.draft.lines):
                self.faults.append(messages.ANCHORED.fault(at, text=snippet(rest)))

    def _rest(self, line: int, column: int) -> str:
        return self.draft.lines[line][column:] if line < len(self.draft.lines) else ""
