"""A model to cut and fold: its net to scale on card, and a page with what to do."""

from __future__ import annotations

from functools import partial

from packgen.faults import place_of
from packgen.nets import NetSheets, Solid
from packgen.page.blocks import Art, Block, Boxed, Bullets, DrawBox, Prose, Row, Stack, heading
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.net_made import made_net
from packgen.page.net_pages import net_facts, net_pages
from packgen.page.pen import Pen
from packgen.page.solid_view import draw_solid
from packgen.reading.models import Model

SHEET = Sheet(
    title="Model",
    about="A solid to cut and fold: its net with tabs, to scale, on card, and the steps to build it.",
    per="model",
    options=(
        Option("most", "", "at most this many models"),
        Option("only", "", "only these models, by title"),
        Option("card", "0.25 mm", "how thick the card is"),
    ),
)


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The net on card, and the steps on plain paper."""
    model = desk.item.subject
    assert isinstance(model, Model)
    net = net_of(desk, model)
    if net is None:
        return ()
    title = f"{SHEET.title}: {model.title}"
    pages = net_pages(desk, str(model.title), net, model.faces)
    after = (desk.say("after", title=model.title),)
    facts = net_facts(desk, str(model.title), str(model.solid), net)
    head = desk.head(desk.say("title"), str(model.title), "box")
    blocks = _steps(desk, model, net)
    steps = desk.pages(head, [*blocks, DrawBox(desk.say("finished"), least=40.0)], name=str(model.title))
    if len(steps) > 1:  # a place for the finished model is not worth a page of its own
        without = desk.pages(head, blocks, name=str(model.title))
        steps = without if len(without) < len(steps) else steps
    return (
        Laid("model", title, pages, "card", week=desk.item.week, after=after, net=facts),
        Laid("model", title, steps, part="steps", week=desk.item.week),
    )


def net_of(desk: Desk, model: Model) -> NetSheets | None:
    """The model's net on the family's paper, or None with a fault at the model's place."""
    made = made_net(desk, model, desk.level == "first")
    if isinstance(made, NetSheets):
        return made
    place = place_of(model.solid) if "solid called" in made.message else model.at
    desk.fault(place, made.message, made.instead)
    return None


def _steps(desk: Desk, model: Model, net: NetSheets) -> list[Block]:
    care = tuple(words for words in dict.fromkeys((*map(str, model.caution), *net.cautions)) if " " in words)
    blocks: list[Block] = []
    if model.about:
        blocks.append(Prose(str(model.about), "body"))
    ready = tuple(dict.fromkeys((*net.materials, *(str(m.item) for m in model.materials))))
    have = Stack((heading(desk.say("ready")), Bullets(ready, "box", "body", gap=1.5, spread=0.15)))
    sizes = Boxed(
        Bullets(tuple(net.real_size), "dot", "small", spread=0.1), "note", desk.say("sizes", scale=net.scale_text)
    )
    view = Art(partial(_view, net.net.solid), 50.0)
    blocks.append(Row(((1.1, have), (1.0, Stack((view, sizes)))), gutter=6.0))
    blocks.append(Boxed(Bullets(care, "dot", "small", spread=0.1), "caution", desk.say("care")))
    steps = (*net.steps, *map(str, model.steps))
    if desk.no_glue:
        blocks.append(Boxed(Prose(desk.say("no_glue"), "body"), "note"))
    blocks.append(heading(desk.say("steps")))
    blocks.append(Bullets(steps, "number", "body", gap=1.5))
    return blocks


def _view(solid: Solid, pen: Pen, x: float, y: float, width: float, height: float) -> None:
    draw_solid(pen, solid, x, y, width, height)
