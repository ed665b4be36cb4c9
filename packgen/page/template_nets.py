"""Nets for the planned values of a challenge: a canopy of each size, a wheel of each number of blades, on card."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from packgen.nets import Drilling, NetError, NetSheets, Solid, build
from packgen.nets import lay_out as lay_out_net
from packgen.page.blocks import Art, Block, Boxed, Bullets, Prose, Row, Stack, heading
from packgen.page.desk import Desk, Laid
from packgen.page.net_pages import net_area, net_facts, net_pages
from packgen.page.net_steps import care_words, ready_words, step_lines
from packgen.page.pen import Pen
from packgen.page.solid_view import draw_solid
from packgen.reading.models import Challenge
from packgen.trials.frame import NetFor
from packgen.trials.trial import TrialPlan
from packgen.units import Quantity

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
    return tuple(found)


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


def building_blocks(desk: Desk, templates: Sequence[Template], own: Sequence[str] = ()) -> list[Block]:
    """How to build from the templates: what is needed, and for each kind of solid its view and its steps.

    `own` are the study's steps, which go on from those of the last kind, or come where they say ("Before you cut").
    """
    kinds = {template.wanted.solid: template for template in reversed(templates)}
    first = list(reversed(kinds.values()))
    if not first:
        return []
    count = sum(len(template.net.sheets) for template in templates)
    words = desk.say("templates_how", values=[t.values for t in templates if t.values], sheets=count)
    ready = tuple(dict.fromkeys(words for kind in first for words in ready_words(desk, kind.net)))
    told = Stack((Prose(words, "body"), Bullets(ready, "box", "body", spread=0.15)))
    views = tuple((1.0, Art(partial(_view, kind.net.net.solid), 40.0)) for kind in first[:2])
    blocks: list[Block] = [Row(((1.0 + 0.5 * len(views), told), *views), gutter=6.0)]
    if desk.no_glue:
        blocks.append(Boxed(Prose(desk.wording.say("model", desk.level, "no_glue", {}), "body"), "note"))
    for kind in first:
        title = desk.say("steps") if len(first) == 1 else f"{desk.say('steps')}: {kind.values}"
        after = own if kind is first[-1] else ()
        blocks += [heading(title), Bullets(step_lines(desk, kind.net, after), "number", "body", gap=1.5)]
    return blocks


def _view(solid: Solid, pen: Pen, x: float, y: float, width: float, height: float) -> None:
    draw_solid(pen, solid, x, y, width, height)


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
