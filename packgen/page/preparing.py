"""What to have ready for a challenge and what to take care of, as blocks and words."""

from __future__ import annotations

import re
from collections.abc import Iterable

from packgen.page.blocks import Block, Boxed, Bullets, Row, Stack, heading
from packgen.page.desk import Desk
from packgen.planning.amounts import Amount, amount, shown
from packgen.planning.care import besides
from packgen.reading.models import Challenge, Material
from packgen.trials.trial import TrialPlan

_CUTTING = ("scissors", "card", "cardboard", "paper", "knife", "foil", "straw")
_SAME = 0.6  # a caution most of whose words another one has is said already
_TWO_COLUMNS = 5


def material_words(desk: Desk, material: Material) -> str:
    """One material in words: `2 sheets of stiff card`, `10 paper clips (to share)`, `scissors`."""
    item = str(material.item)
    number, unit = material.amount, str(material.unit or "")
    if number is None or (number == 1 and not unit):
        words = item
    elif unit:
        words = desk.say("material", amount=shown(amount(number, unit), desk.family.units == "customary"), item=item)
    else:
        words = several(number, item)
    return f"{words} ({desk.say('shared')})" if material.shared else words


def several(number: float, item: str) -> str:
    """So many of a thing: the noun before `of`, `with` or `that` gets its plural."""
    found = re.match(r"(.+?)(?= (?:of|with|that|for|from|to)\b)|.+", item)
    noun = found[0] if found else item
    plural = noun if noun.endswith("s") else shown(Amount(number, noun)).split(" ", 1)[1]
    return f"{number:g} {plural}{item[len(noun) :]}"


def materials(desk: Desk, challenge: Challenge, narrow: bool = False) -> list[Block]:
    """A list to tick, in two columns if it is long and the place for it is not narrow; nothing without materials."""
    items = [material_words(desk, m) for m in challenge.materials]
    if not items:
        return []
    half = (len(items) + 1) // 2
    if narrow or len(items) < _TWO_COLUMNS:
        listed: Block = Bullets(tuple(items), "box", "body", gap=1.5)
    else:
        parts = (Bullets(tuple(items[:half]), "box", "body"), Bullets(tuple(items[half:]), "box", "body"))
        listed = Row(tuple((1.0, part) for part in parts), gutter=5.0, gap=1.5)
    return [Stack((heading(desk.say("materials")), listed))]


def cautions(desk: Desk, challenge: Challenge, plan: TrialPlan) -> tuple[str, ...]:
    """What to take care of, each thing once: the study's own words first, then the model's and packgen's."""
    own = [str(words).strip() for words in challenge.caution if " " in str(words).strip()]
    named = [str(words).strip().lower() for words in challenge.caution if " " not in str(words).strip()]
    named = [name.replace("-", "_") for name in named]
    if any(_cuts(material) for material in challenge.materials):
        named.append("scissors")
    said = once([*own, *besides(own, plan.cautions)])
    for name in dict.fromkeys(named):
        if desk.has(f"care_{name}") and not any(_stem(name) in words.lower() for words in said):
            said.append(desk.say(f"care_{name}"))
    return tuple(once(said))


def _stem(name: str) -> str:
    return name.replace("_", " ").removesuffix("s").removesuffix("light")


def for_upper(desk: Desk, words: str) -> str:
    """A sentence of the study as the upper level reads it: there a grown-up is an adult."""
    if desk.level != "upper":
        return words
    said = re.sub(r"\b([Aa]) grown-up", lambda m: f"{m[1]}n adult", words)
    return re.sub(r"\b(G|g)rown-up", lambda m: "Adult" if m[1] == "G" else "adult", said)


def once(said: Iterable[str]) -> list[str]:
    """The sentences without those whose words are nearly all in another one."""
    kept: list[str] = []
    for words in said:
        mine = _words(words)
        if not any(len(mine & _words(other)) >= _SAME * min(len(mine), len(_words(other))) for other in kept):
            kept.append(words)
    return kept


def _words(sentence: str) -> set[str]:
    return {word for word in re.findall(r"\w+", sentence.lower()) if len(word) > 3}


def _cuts(material: Material) -> bool:
    return any(word in _CUTTING for word in re.findall(r"\w+", str(material.item).lower()))


def care(desk: Desk, challenge: Challenge, plan: TrialPlan, most: int, more: Iterable[str] = ()) -> list[Block]:
    """A box with the first `most` cautions, and that an adult is with the child; nothing if there are none.

    `more` are cautions of what comes with the challenge, told where its own do not speak of them.
    """
    own = cautions(desk, challenge, plan)[:most]
    said = (*own, *besides(own, once(more)))
    if not said:
        return []
    told = tuple(for_upper(desk, words) for words in (*said, desk.say("care_adult")))
    return [Boxed(Bullets(told, "dot", "small", spread=0.1), "caution", desk.say("care"))]
