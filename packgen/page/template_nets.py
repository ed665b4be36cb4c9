"""Nets for the planned values of a challenge: a canopy of each size, a wheel of each number of blades, on card."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from packgen.nets import Drilling, NetError, NetSheets, Solid, build
from packgen.nets import lay_out as lay_out_net
from packgen.page.blocks import Art, Block, Boxed, Bullets, Prose, Row, Stack, heading
from packgen.page.desk import Desk, Laid
from packgen.page.frame import draw_ruler
from packgen.page.net_key import FOOT, HeadWords, draw_card_head
from packgen.page.net_lines import CROSS, RING
from packgen.page.net_pages import net_area, net_facts, net_pages
from packgen.page.net_steps import care_words, ready_words, step_lines
from packgen.page.on_axle import on_its_stick
from packgen.page.pen import Pen
from packgen.page.sheet_number import draw_tag
from packgen.page.sketching import squared_paper
from packgen.page.solid_view import draw_solid
from packgen.reading.models import Challenge
from packgen.trials.frame import NetFor
from packgen.trials.trial import TrialPlan
from packgen.units import Quantity

_NEEDLE, _PENCIL = 2.5, 10.0  # mm; the widest holes that a thick needle and a pencil make (common practice, no source)
MOST_SHEETS = 4
"""A template that takes more sheets of card than this is quicker drawn on one large sheet."""


@dataclass(frozen=True, slots=True)
class Template:
    """The net for one planned value, or for all that need the same one; `values` says for which."""

    values: str
    wanted: NetFor
    net: NetSheets


def template_nets(desk: Desk, challenge: Challenge, plan: TrialPlan) -> tuple[Template, ...]:
    """The nets of a challenge at true size, one for each different one; those too large are told and left out."""
    wanted: dict[NetFor, list[str]] = {}
    for row, net in zip(plan.rows, plan.nets, strict=True):
        if net is not None:
            wanted.setdefault(net, []).append(plan.named(row))
    found: list[Template] = []
    for net, names in wanted.items():
        made = desk.once(("template", net), lambda net=net: _net(desk, net))  # type: ignore[misc]
        values = ", ".join(names) if len(wanted) > 1 or len(names) < len(plan.rows) else ""
        if isinstance(made, NetSheets):
            found.append(Template(values, net, made))
        else:
            assert isinstance(made, NetError)
            desk.warn(challenge.at, f'"{challenge.title}" gets no template for {values or "its values"}: '
                      f"{made.message}", "Draw it on larger paper, or choose smaller values.")  # fmt: skip
    _tell_missing(desk, challenge, plan)
    return tuple(found)


def _tell_missing(desk: Desk, challenge: Challenge, plan: TrialPlan) -> None:
    """A warning about the values that have no net where others have one, such as a wheel of two blades."""
    without = [plan.named(row) for row, net in zip(plan.rows, plan.nets, strict=True) if net is None]
    if without and len(without) < len(plan.rows) and not plan.x_axis.words:
        desk.warn(challenge.at, f'"{challenge.title}" gets no template for {", ".join(without)}: there is no net for '
                  "it.", "The children draw it themselves on card, or you choose another value.")  # fmt: skip


def _net(desk: Desk, wanted: NetFor) -> NetSheets | NetError:
    """The net at true size on the family's paper, or why there is none."""
    area = net_area(desk)
    given: dict[str, float | str | Quantity] = dict(wanted.given)
    holes = (Drilling(wanted.holes),) if wanted.holes else ()
    try:
        solid = build(wanted.solid, given)
        return lay_out_net(solid, area.width, area.height, "true", holes=holes, most_sheets=MOST_SHEETS)
    except NetError as error:
        return error


def template_care(desk: Desk, templates: Sequence[Template], said: str = "") -> tuple[str, ...]:
    """What to take care of when cutting and folding the templates, but for what is `said` already."""
    return care_words(desk, [template.net for template in templates], said) if templates else ()


def building_blocks(
    desk: Desk,
    templates: Sequence[Template],
    own: Sequence[str] = (),
    designed: str = "",
    between: Sequence[Block] = (),
) -> list[Block]:
    """How to build from the templates: what is needed, and for each kind of solid its view and its steps.

    `own` are the study's steps, which go on from those of the last kind, or come where they say ("Before you cut").
    `designed` says how the child's own design is built. What stands `between` comes before the steps; the view is
    large then.
    """
    kinds = {template.wanted.solid: template for template in reversed(templates)}
    first = list(reversed(kinds.values()))
    if not first:
        return []
    count = sum(len(template.net.sheets) for template in templates)
    words = desk.say("templates_how", values=[t.values for t in templates if t.values], sheets=count)
    ready = tuple(dict.fromkeys(words for kind in first for words in _ready(desk, kind.net)))
    told = Stack((Prose(words, "body"), Bullets(ready, "box", "body", spread=0.15)))
    size = (42.0, 120.0, 1.0) if between else (40.0,)
    views = tuple((1.0, Art(partial(_view, kind.net.net.solid), *size)) for kind in first[:2])
    blocks: list[Block] = [Row(((1.0 + 0.5 * len(views), told), *views), gutter=6.0)]
    if desk.no_glue:
        blocks.append(Boxed(Prose(desk.wording.say("model", desk.level, "no_glue", {}), "body"), "note"))
    if designed:
        blocks.append(Boxed(Prose(designed, "body"), "note"))
    blocks += between
    for kind in first:
        title = desk.say("steps") if len(first) == 1 else f"{desk.say('steps')}: {kind.values}"
        after = own if kind is first[-1] else ()
        blocks += [heading(title), Bullets(step_lines(desk, kind.net, after), "number", "body", gap=1.5)]
    return blocks


def _ready(desk: Desk, net: NetSheets) -> tuple[str, ...]:
    """The tools for a net; for holes the one that makes a hole so wide in such a place."""
    usual = desk.wording.say("model", desk.level, "ready_hole", {})
    tools = [words for words in ready_words(desk, net) if words != usual]
    holes = [hole for part in net.net.parts for hole in part.holes if not hole.mark_only and not hole.snip]
    if len(tools) == len(ready_words(desk, net)) or not holes:
        return ready_words(desk, net)
    width = max(hole.across for hole in holes)
    middle = any(hole.where == "axle" for hole in holes)
    wide = "wide" if width > _PENCIL else "punched" if not middle and width > _NEEDLE else "round"
    key = {"wide": "hole_cut", "punched": "hole_punch", "round": "hole_pencil" if width > _NEEDLE else "hole_needle"}
    return (*tools, desk.say(key[wide]))


def _view(solid: Solid, pen: Pen, x: float, y: float, width: float, height: float) -> None:
    """The thing as it will stand; a wheel on its stick."""
    draw_solid(pen, on_its_stick(solid) or solid, x, y, width, height)


def template_sheets(desk: Desk, challenge: Challenge, templates: tuple[Template, ...]) -> tuple[Laid, ...]:
    """A sheet on card for each template, with its lines for the manifest."""
    made: list[Laid] = []
    for template in templates:
        title = f"{challenge.title}: {template.values}" if template.values else str(challenge.title)
        pages = net_pages(desk, title, template.net)
        facts = net_facts(desk, title, template.wanted.solid, template.net)
        after = (desk.say("templates_after", title=title),)
        week = desk.item.week
        made.append(Laid("challenge", title, pages, "card", week=week, part="templates", after=after, net=facts))
    return tuple(made)


def own_sheet(desk: Desk, challenge: Challenge, templates: Sequence[Template]) -> Laid:
    """A sheet of card with squares, for the child's own design to be drawn on; with the same hole, if there is one."""
    area = net_area(desk)
    pen = desk.kit.pen()
    title = desk.say("own_title", title=challenge.title)
    draw_card_head(desk, pen, HeadWords(title, desk.say("own_scale")))
    top = area.y + area.height - 2.0
    foot = squared_paper(pen, area.x, top, area.width, area.height - 4.0)
    holes = [hole for t in templates for part in t.net.net.parts for hole in part.holes if hole.where == "axle"]
    if holes:
        x, y, reach = area.x + area.width / 2, (top + foot) / 2, holes[0].across / 2
        pen.ring(x, y, reach, RING, 1.0, role="hole")
        pen.line(x - reach - 1.5, y, x + reach + 1.5, y, CROSS.width, CROSS.ink)
        pen.line(x, y - reach - 1.5, x, y + reach + 1.5, CROSS.width, CROSS.ink)
    low = area.y - FOOT + 1.5
    draw_ruler(desk.kit, pen, desk.wording.say("", desk.level, "foot_ruler", {}), area.x, low, area.width - 142.0)
    draw_tag(desk.kit, pen, desk.tag, area.x + area.width, low + 0.6, 38.0)
    page = desk.finish(pen, *desk.paper, title)
    after = (desk.say("own_after", title=challenge.title),)
    return Laid("challenge", title, (page,), "card", week=desk.item.week, part="own", after=after)
