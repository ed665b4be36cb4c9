"""What a making needs in words: each item with its amount for all who make it."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.page.desk import Desk
from packgen.planning.amounts import amount, shown
from packgen.reading.models import Material


def needed_words(desk: Desk, materials: Sequence[Material], makers: int) -> tuple[str, ...]:
    """The materials with the amounts for so many makers; what is shared counts once.

    `2 sheets of card` as `card, 2 sheets` would part at the wrong comma, so: `card (2 sheets)`.
    """
    return tuple(_words(desk, material, 1 if material.shared else max(1, makers)) for material in materials)


def _words(desk: Desk, material: Material, times: int) -> str:
    if material.amount is None:
        return str(material.item)
    said = shown(amount(material.amount * times, str(material.unit or "")), desk.family.units == "customary")
    return str(material.item) if said == "1" else f"{material.item} ({said})"
