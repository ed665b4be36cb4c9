"""Cautions each said once: which dangers a sentence speaks of, and whose words come first."""

from __future__ import annotations

import re
from collections.abc import Iterable

_DANGERS = {
    "water": r"water|tub|basin|bowl",
    "neck": r"\bnecks?\b|loop round",
    "points": r"skewers?|points? of|has a point|have points|pointed",
    "holes": r"needle|drill|\bpins?\b|pinhole|\bholes? (?:are|is)|makes the hole|prick",
    "blades": r"kni(?:fe|ves)|blades? of|saws?\b",
    "scissors": r"scissors?",
    "sun": r"(?:at|towards) the sun",
    "small": r"small (?:sharp )?parts?|chok|swallow",
    "height": r"stairs?\b|chair|leans?|\brail\b|climb|safe step|drops\b",
    "landing": r"landing place",
    "eyes": r"eye cover|eyes",
    "faces": r"\bfaces?\b",
    "fan": r"\bfan\b",
    "mirror": r"mirror edges?",
    "edges": r"cut edges?|edges of|sharp edges?|edge of the (?:tin|can)|sharp",
    "hot": r"hair dryer|flame|candle|burn",
    "bags": r"\bbags?\b|suffocat|breath",
    "fingers": r"fingers?",
    "flicker": r"flicker",
}
"""The words by which a danger is known, in small letters."""


def dangers(sentence: str) -> frozenset[str]:
    """The dangers a caution speaks of; none if it is of a kind that this table does not know."""
    said = sentence.lower()
    return frozenset(name for name, words in _DANGERS.items() if re.search(words, said))


def besides(said: Iterable[str], more: Iterable[str]) -> tuple[str, ...]:
    """Of `more` cautions those that speak of a danger which none of those `said` does, or of one not in the table."""
    known = frozenset(danger for sentence in said for danger in dangers(sentence))
    return tuple(sentence for sentence in more if not dangers(sentence) or not dangers(sentence) <= known)
