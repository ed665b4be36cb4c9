"""How a net is built, stage by stage, as plain facts (the words for them are templates), and its cautions."""

from __future__ import annotations

import re
from dataclasses import dataclass

from packgen.nets.net import Joint, Net, Stage
from packgen.nets.solid import Mantle

BLADES = (
    "Blunt-nosed scissors for the young. A craft knife is for an adult, on a cutting mat, along a steel rule, cutting "
    "away from the hand."
)
GLUE = "Use stick or white glue. A hot glue gun burns, the low-temperature kind too: an adult holds it."
SMALL = "Small cut-off pieces do not belong near a child under three."
_MOST_STAGES = 8
_FEW = 2


def cautions_for(net: Net) -> tuple[str, ...]:
    """What to take care of. Ages and tools are common practice in schools, no source."""
    return (BLADES, *((GLUE,) if net.joints else ()), SMALL)


def stages_for(net: Net) -> tuple[Stage, ...]:
    """How to build the net, in order. Holes come while the card is flat, but last on a thing that stays open."""
    kinds = tuple(sorted({f.kind for p in net.parts for f in p.folds}))
    out = []
    if kinds:
        out.append(Stage("score"))
    out.append(Stage("cut", count=len(net.parts)))
    if kinds:
        out.append(Stage("fold", folds=kinds))
    if any(isinstance(c, Mantle) for c in net.solid.curved):
        out.append(Stage("bend"))
    holes = _holes(net)
    early = holes if net.solid.closed else [s for s in holes if s.kind == "snip"]
    thread = bool(early)
    return (*out, *early, *_gluing(net, thread), *(s for s in holes if s not in early))


def _holes(net: Net) -> list[Stage]:
    holes = [h for p in net.parts for h in p.holes if not h.mark_only]
    snips = sum(h.snip for h in holes)
    rings = [h for h in holes if not h.snip]
    out = [Stage("snip", count=snips)] if snips else []
    if rings:
        kind = "axle" if all(h.where == "axle" for h in rings) else "punch" if net.solid.closed else "string"
        out.append(Stage(kind, count=len(rings)))
    return out


@dataclass(frozen=True, slots=True)
class _Group:
    """Joints glued in one go."""

    joints: tuple[Joint, ...]

    @property
    def letters(self) -> tuple[str, ...]:
        """Their letters, each once."""
        return tuple(dict.fromkeys(j.letter for j in self.joints))


def _gluing(net: Net, thread: bool) -> list[Stage]:
    early = [j for j in net.joints if net.last not in (_face(net, j.tab.source), _face(net, j.edge.source))]
    late = [j for j in net.joints if j not in early]
    out = []
    for group in _grouped(net, early):
        first = group.joints[0]
        if _toothed(first):
            out.append(Stage("teeth", group.letters, _face(net, first.edge.source)))
        else:
            out.append(Stage("glue", group.letters))
    if late:
        own = all(_face(net, j.tab.source) == net.last for j in late)
        letters = _Group(tuple(late)).letters
        out.append(Stage("close_teeth" if _toothed(late[0]) else "close", letters, net.last, own=own, thread=thread))
    return out


def _grouped(net: Net, joints: list[Joint]) -> list[_Group]:
    """The joints in the order of gluing, those between the same kinds of faces (side and side, side and roof) together.

    Where the kinds change after one or two joints, these go together whatever their kind; so they do if there would be
    more than eight groups.
    """
    rows: list[list[Joint]] = []
    for j in joints:
        if rows and _kind(net, rows[-1][-1]) == _kind(net, j):
            rows[-1].append(j)
        else:
            rows.append([j])
    joined: list[list[list[Joint]]] = []
    for row in rows:
        small = len(row) <= _FEW and not _toothed(row[0])
        if joined and small and all(len(r) <= _FEW and not _toothed(r[0]) for r in joined[-1]):
            joined[-1].append(row)
        else:
            joined.append([row])
    size = max(1, -(-len(joined) // _MOST_STAGES))
    merged = [joined[i : i + size] for i in range(0, len(joined), size)]
    return [_Group(tuple(j for group in part for row in group for j in row)) for part in merged]


def _toothed(joint: Joint) -> bool:
    """True for the teeth round a rim."""
    return len(joint.tab.points) > 2


def _kind(net: Net, joint: Joint) -> tuple[bool, frozenset[str]]:
    names = frozenset(re.sub(r"[\d ]+$", "", _face(net, side.source)) for side in (joint.tab, joint.edge))
    return _toothed(joint), names


def run_of(letters: tuple[str, ...]) -> bool:
    """True if the letters follow each other in the alphabet without a gap."""
    places = [_place(x) for x in letters]
    return places == list(range(places[0], places[0] + len(places)))


def _place(text: str) -> int:
    number = 0
    for c in text:
        number = number * 26 + ord(c) - 64
    return number


def _face(net: Net, source: int) -> str:
    names = net.solid.names
    return names[source] if 0 <= source < len(names) else ""
