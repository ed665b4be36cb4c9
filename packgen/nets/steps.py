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
    many = len(net.parts) > 1
    steps.append(
        f"Cut out {'all ' + str(len(net.parts)) + ' pieces' if many else 'the piece'} along the solid lines. "
        "The printed side will be the outside."
    )
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
    groups = _grouped(net, early)
    steps = [_sentence(net, g) for g in groups]
    if late:
        own = all(_face(net, j.tab.source) == net.last for j in late)
        letters = _letters(late)
        tabs = f"tab {letters}" if len(late) == 1 else f"tabs {letters}"
        how = f"tuck {tabs} in" if own else f"lay it on {tabs}"
        steps.append(f"Close the {net.last} last: spread glue on {tabs} while you can still reach inside, then {how}.")
    return steps


def _grouped(net: Net, joints: list[Joint]) -> list[list[Joint]]:
    """The joints in at most eight groups of neighbours in the order of gluing."""
    if not joints:
        return []
    size = max(1, -(-len(joints) // _MOST_STEPS))
    if size == 1:
        return [[j] for j in joints]
    return [joints[i : i + size] for i in range(0, len(joints), size)]


def _sentence(net: Net, group: list[Joint]) -> str:
    if len(group) == 1:
        j = group[0]
        on, under = _face(net, j.tab.source), _face(net, j.edge.source)
        return f"Glue tab {j.letter} of {on} behind {under}, edge to edge." if on != under else (
            f"Glue tab {j.letter} of {on} behind its other edge."
        )  # fmt: skip
    return f"Glue tabs {_letters(group)} in this order, each behind the edge with its letter."


def _letters(joints: list[Joint]) -> str:
    letters = [j.letter for j in joints]
    if len(letters) < 2:
        return "".join(letters)
    return f"{', '.join(letters[:-1])} and {letters[-1]}"


def _face(net: Net, source: int) -> str:
    names = net.solid.names
    return names[source] if 0 <= source < len(names) else ""
