"""SVG text into a tree of plain nodes with their style worked out. Nothing outside the file is ever fetched.

Expat is used directly, so that what can hurt is refused as it is met: entities that multiply or point outside, depth
and number of elements beyond any drawing's.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from xml.parsers import expat

MAX_BYTES = 8_000_000
_MAX_NODES = 60_000
_MAX_DEPTH = 60  # with copies of copies this stays well within what can be walked
_MAX_ENTITY = 100
_PRESENTATION = (
    "fill", "fill-opacity", "fill-rule", "stroke", "stroke-width", "stroke-opacity", "stroke-dasharray",
    "stroke-linecap", "stroke-linejoin", "opacity", "display", "visibility", "color", "stop-color", "stop-opacity",
    "clip-path", "mask", "filter",
)  # fmt: skip
_RULE = re.compile(r"([^{}]+)\{([^{}]*)\}")
_SELECTOR = re.compile(r"(?P<tag>[\w-]+|\*)?(?P<part>[.#][\w-]+)?$")


class SvgError(ValueError):
    """A drawing that cannot be taken: the message says why."""


@dataclass(slots=True)
class Node:
    """An element: its name without a namespace, attributes likewise, own style declarations, children."""

    tag: str
    attributes: dict[str, str]
    children: list[Node] = field(default_factory=list)
    text: str = ""


def parsed(data: bytes) -> Node:
    """The root element. Raises SvgError if the text is not a well-formed, harmless SVG drawing."""
    builder = _Builder()
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.StartElementHandler = builder.start
    parser.EndElementHandler = builder.end
    parser.CharacterDataHandler = builder.text
    parser.EntityDeclHandler = _entity
    parser.SetParamEntityParsing(expat.XML_PARAM_ENTITY_PARSING_NEVER)
    try:
        parser.Parse(data, True)
    except expat.ExpatError as error:
        raise SvgError(f"is not well-formed at line {error.lineno}, column {error.offset + 1}") from None
    if builder.root is None or builder.root.tag != "svg":
        raise SvgError("is not an SVG drawing")
    return builder.root


def _entity(name: str, parameter: bool, value: str | None, *outside: object) -> None:
    # Some drawing programs name their namespaces with short plain entities; anything more is an attack.
    if value is None or parameter or len(value) > _MAX_ENTITY or "&" in value or "%" in value:
        raise SvgError(f"uses the entity {name!r}, which is not taken")


class _Builder:
    def __init__(self) -> None:
        self.root: Node | None = None
        self.stack: list[Node] = []
        self.count = 0

    def start(self, name: str, attributes: dict[str, str]) -> None:
        self.count += 1
        if self.count > _MAX_NODES or len(self.stack) > _MAX_DEPTH:
            raise SvgError("has more parts than can be drawn")
        node = Node(name.rpartition(" ")[2], {key.rpartition(" ")[2]: value for key, value in attributes.items()})
        if self.stack:
            self.stack[-1].children.append(node)
        elif self.root is None:
            self.root = node
        self.stack.append(node)

    def end(self, name: str) -> None:
        self.stack.pop()

    def text(self, data: str) -> None:
        if self.stack and self.stack[-1].tag == "style":
            self.stack[-1].text += data


def walk(node: Node) -> list[Node]:
    """The node and all below it, in the order they are written."""
    out, waiting = [], [node]
    while waiting:
        here = waiting.pop()
        out.append(here)
        waiting.extend(reversed(here.children))
    return out


def styler(root: Node) -> Callable[[Node], dict[str, str]]:
    """A function giving a node's own style: presentation attributes, then the sheet's rules, then `style`.

    Rules with one element name, class or id are followed (the ones drawing programs write), others are not.
    """
    rules: list[tuple[int, int, str, str, dict[str, str]]] = []
    for sheet in (node.text for node in walk(root) if node.tag == "style"):
        for selectors, body in _RULE.findall(re.sub(r"/\*.*?\*/", "", sheet, flags=re.S)):
            for selector in selectors.split(","):
                found = _SELECTOR.match(selector.strip())
                if found and selector.strip():
                    part = found["part"] or ""
                    weight = {"#": 3, ".": 2, "": 1}[part[:1]]
                    rules.append((weight, len(rules), found["tag"] or "*", part, declarations(body)))
    rules.sort(key=lambda rule: rule[:2])

    def style(node: Node) -> dict[str, str]:
        own = {key: node.attributes[key] for key in _PRESENTATION if key in node.attributes}
        names = {"." + name for name in node.attributes.get("class", "").split()}
        names.add("#" + node.attributes.get("id", ""))
        for _, _, tag, part, body in rules:
            if tag in ("*", node.tag) and (not part or part in names):
                own |= body
        return own | declarations(node.attributes.get("style", ""))

    return style


def declarations(text: str) -> dict[str, str]:
    """The `name: value` pairs of a style text."""
    pairs = (part.partition(":") for part in text.split(";"))
    return {name.strip().lower(): value.replace("!important", "").strip() for name, colon, value in pairs if colon}
