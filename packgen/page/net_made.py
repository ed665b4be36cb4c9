"""A study's model unfolded for the family's paper, once a build, for whoever shows it."""

from __future__ import annotations

from packgen.faults import Place, place_of
from packgen.nets import Drilling, NetError, NetSheets, build, entry
from packgen.nets import lay_out as lay_out_net
from packgen.nets.given import plain_name
from packgen.nets.gluing import ROUND
from packgen.nets.solid import Solid
from packgen.nets.tabs import TabRule
from packgen.page.desk import Desk
from packgen.page.net_key import net_area
from packgen.reading.measures import read_length
from packgen.reading.messages import Misread
from packgen.reading.models import Model
from packgen.units import Quantity

CARD = 0.25
"""The card's thickness (mm) if no recipe says another: about 200 g/m2, which a home printer takes."""
_CARDS = (0.05, 1.0)


def made_net(desk: Desk, model: Model, level: str) -> NetSheets | NetError:
    """The model's net on the family's paper for a level, or all reasons why it cannot be made.

    For `first` tabs are larger and round, for `first` and `younger` those round a rim are fewer.
    """
    rule = TabRule(card_of(desk, model), level == "first", level in ("first", "younger") and _has_rings(model))
    made = desk.once(("net", model, rule), lambda: _net(desk, model, rule))
    assert isinstance(made, NetSheets | NetError)
    return made


def card_of(desk: Desk, model: Model) -> float:
    """The thickness of the card: what this sheet's recipe says, else that of the first pack that has the model."""
    items = [desk.item] if desk.item.sheet == "model" else [item for pack in desk.packs for item in pack.items]
    for item in items:
        said = dict(item.options).get("card")
        if item.sheet == "model" and item.subject is model and said is not None:
            try:
                card = read_length(str(said))
            except Misread:
                card = 0.0
            if _CARDS[0] <= card <= _CARDS[1]:
                return card
            desk.fault(said, f'"card" is a thickness from {_CARDS[0]:g} to {_CARDS[1]:g} mm, not "{said}".',
                       "Write for example card: 0.25 mm.")  # fmt: skip
    return CARD


def _has_rings(model: Model) -> bool:
    """True if the solid has a rim with a ring of tabs: it is round, or has many corners."""
    try:
        solid = asked_solid(model)
    except NetError:
        return False
    return bool(solid.curved) or any(len(face.loop) >= ROUND for face in solid.faces)


def _net(desk: Desk, model: Model, rule: TabRule) -> NetSheets | NetError:
    area = net_area(desk)
    holes = tuple(Drilling(str(h.where), h.across, h.mark_only) for h in model.holes)
    try:
        solid = asked_solid(model)
        return lay_out_net(
            solid, area.width, area.height, str(model.scale), card=rule.card, youngest=rule.youngest,
            small_hands=rule.small_hands, holes=holes,
        )  # fmt: skip
    except NetError as error:
        return error


def asked_solid(model: Model) -> Solid:
    """The solid a model asks for. Raises NetError."""
    given: dict[str, float | str | Quantity] = {
        str(g.name): g.values[0] if isinstance(g.values[0], Quantity) else str(g.values[0])
        for g in model.given
        if g.values
    }
    if model.mesh:
        given["text"] = model.mesh.read_text(encoding="utf-8", errors="replace")
    if model.mesh and plain_name(str(model.solid)) != "mesh":
        raise NetError("A model from a file is no other solid as well.", "Leave out solid, or the file.", "solid")
    return build(str(model.solid), given)


def place_in(model: Model, error: NetError) -> Place:
    """Where in the study the thing stands that an error is about; the model itself if it is none of its keys."""
    about = error.about
    if about == "solid":
        return place_of(model.solid)
    if about == "scale":
        return place_of(model.scale) if place_of(model.scale).line else model.at
    if about == "mesh":
        return place_of(model.mesh_said) if model.mesh_said else model.at
    if about.startswith("hole "):
        return model.holes[int(about.removeprefix("hole ")) - 1].at
    names = _names(str(model.solid))
    wanted = names.get(plain_name(about), plain_name(about))
    found = [g for g in model.given if names.get(plain_name(str(g.name)), plain_name(str(g.name))) == wanted]
    if not about or not found:
        return model.at
    return place_of(found[-1].name) if place_of(found[-1].name).line else found[-1].at


def _names(solid: str) -> dict[str, str]:
    """The solid's own name for each name one of its sizes may be given."""
    try:
        return {plain_name(n): p.name for p in entry(solid).parameters for n in (p.name, *p.also)}
    except NetError:
        return {}
