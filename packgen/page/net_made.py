"""A study's model unfolded for the family's paper, once a build, for whoever shows it."""

from __future__ import annotations

from packgen.nets import Drilling, NetError, NetSheets, build
from packgen.nets import lay_out as lay_out_net
from packgen.page.desk import Desk
from packgen.page.net_pages import net_area
from packgen.reading.models import Model
from packgen.units import Quantity


def made_net(desk: Desk, model: Model, youngest: bool) -> NetSheets | NetError:
    """The model's net on the family's paper, or why it cannot be made. `youngest` asks for larger tabs."""
    made = desk.once(("net", model, youngest), lambda: _net(desk, model, youngest))
    assert isinstance(made, NetSheets | NetError)
    return made


def _net(desk: Desk, model: Model, youngest: bool) -> NetSheets | NetError:
    area = net_area(desk)
    given: dict[str, float | str | Quantity] = {
        str(g.name): g.values[0] if isinstance(g.values[0], Quantity) else str(g.values[0])
        for g in model.given
        if g.values
    }
    if model.mesh:
        given["text"] = model.mesh.read_text(encoding="utf-8", errors="replace")
    holes = tuple(Drilling(str(h.where), h.across, h.mark_only) for h in model.holes)
    try:
        solid = build(str(model.solid), given)
        return lay_out_net(solid, area.width, area.height, str(model.scale), youngest=youngest, holes=holes)
    except NetError as error:
        return error
