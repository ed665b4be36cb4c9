"""The steps of building a net in order, in plain sentences, and the cautions that go with them."""

from __future__ import annotations

from packgen.nets.net import MOUNTAIN, VALLEY, Joint, Net

BLADES = (
    "Blunt-nosed scissors for the young. A craft knife is for an adult, on a cutting mat, along a steel rule, cutting "
    "away from the hand."
)
GLUE = "Use stick or white glue. A hot glue gun burns, the low-temperature kind too: an adult holds it."
SMALL = "Small cut-off pieces do not belong near a child under three."
_MOST_STEPS = 8


def cautions_for(net: Net) -> tuple[str, ...]:
    """What to take care of. Ages and tools are common practice in schools, no source."""
    return (BLADES, *((GLUE,) if net.joints else ()), SMALL)


def steps_for(net: Net) -> tuple[str, ...]:
    """How to build the net, as sentences in order."""
    kinds = {f.kind for p in net.parts for f in p.folds}
    scores = any(p.scores for p in net.parts)
    steps = []
    if kinds:
        steps.append("Score the fold lines along a ruler with a blunt point, so that the card folds sharply.")
    count = len(net.parts)
    pieces = {1: "the piece", 2: "both pieces"}.get(count, f"all {count} pieces")
    steps.append(f"Cut out {pieces} along the solid lines. The printed side will be the outside.")
    folding = {
        frozenset({MOUNTAIN}): "Fold every dash-dot line back, away from the printed side.",
        frozenset({VALLEY}): "Fold every dashed line forward, towards the printed side.",
        frozenset({MOUNTAIN, VALLEY}): (
            "Fold the dash-dot lines back, away from the printed side, and the dashed lines forward, towards it."
        ),
    }
    if kinds:
        steps.append(folding[frozenset(kinds)])
    if scores and any(c for c in net.solid.curved):
        steps.append("Draw the curved piece over the edge of a table, so that it bends evenly along its fine lines.")
    steps += _gluing(net)
    return tuple(steps)


def _gluing(net: Net) -> list[str]:
    early = [j for j in net.joints if net.last not in (_face(net, j.tab.source), _face(net, j.edge.source))]
    late = [j for j in net.joints if j not in early]
    steps = [_sentence(net, group) for group in _grouped(early)]
    if late:
        own = all(_face(net, j.tab.source) == net.last for j in late)
        how = "then tuck it in" if own else "then lay it on"
        steps.append(
            f"Close the {net.last} last: spread glue on {_tabs(net, late)} while you can still reach inside, {how} and "
            "hold it until it sticks."
        )
    return steps


def _grouped(joints: list[Joint]) -> list[list[Joint]]:
    """The joints in at most eight groups of neighbours in the order of gluing, those of one rim kept together."""
    rims: list[list[Joint]] = []
    for j in joints:
        if rims and rims[-1][-1].letter == j.letter:
            rims[-1].append(j)
        else:
            rims.append([j])
    size = max(1, -(-len(rims) // _MOST_STEPS))
    return [[j for rim in rims[i : i + size] for j in rim] for i in range(0, len(rims), size)]


def _sentence(net: Net, group: list[Joint]) -> str:
    j = group[0]
    on, under = _face(net, j.tab.source), _face(net, j.edge.source)
    if len(j.tab.points) > 2:
        return f"Bend {_tabs(net, group)} of the {on} in, spread glue on them and lay the {under} on."
    if len(group) > 1:
        return f"Glue {_tabs(net, group)} in this order, each behind the edge with its letter."
    if on == under:
        return f"Glue tab {j.letter} behind the other edge of the {on}, edge to edge."
    return f"Glue tab {j.letter} of {on} behind {under}, edge to edge."


def _tabs(net: Net, joints: list[Joint]) -> str:
    """Tabs in words: 'tab A', 'tabs A and B', 'tabs C to K', 'the teeth B'."""
    letters = list(dict.fromkeys(j.letter for j in joints))
    if any(len(j.tab.points) > 2 for j in joints):
        return f"the teeth {' and '.join(letters)}"
    if len(letters) == 1:
        return f"tab {letters[0]}"
    if len(letters) > 3 and _run(letters):
        return f"tabs {letters[0]} to {letters[-1]}"
    return f"tabs {', '.join(letters[:-1])} and {letters[-1]}"


def _run(letters: list[str]) -> bool:
    """True if the letters follow each other without a gap."""
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
