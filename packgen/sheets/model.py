"""A model to cut and fold: its net to scale on card, and pages with what to have ready and what to do."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from packgen.nets import NetSheets
from packgen.page.blocks import Art, Block, Boxed, Break, Bullets, DrawBox, Prose, Row, Stack, heading
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.marks import Page
from packgen.page.net_faces import art_of, check_faces, check_textures, painter_of
from packgen.page.net_figures import figures_of
from packgen.page.net_key import length_words
from packgen.page.net_made import made_net, place_in
from packgen.page.net_pages import net_facts, net_pages
from packgen.page.net_steps import Extra, care_words, ready_words, told_steps
from packgen.page.pen import Pen
from packgen.page.preparing import once
from packgen.page.solid_view import draw_solid, view_shape
from packgen.page.step_list import StepList
from packgen.planning.amounts import amount, shown
from packgen.reading.models import FaceArt, Material, Model

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
_LEAST, _LEFT = 48.0, 1.15
_THREAD = re.compile(r"\b(thread|string|yarn|ribbon|cord)s?\b", re.IGNORECASE)
"""What goes through the hole of a closed model, if the study speaks of it."""
_OWN = 90.0
"""A place for the child's own drawing or photograph is no higher (mm)."""
_WIDE = 0.55
"""A view whose width is more than this part of its height stands below the list of things, where there is room."""


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The net on card, and the steps on plain paper."""
    model = desk.item.subject
    assert isinstance(model, Model)
    net = net_of(desk, model)
    if net is None:
        check_textures(desk, model.faces)
        return ()
    arts = check_faces(desk, net.net.solid, model.faces, net.sheets)
    title = f"{SHEET.title}: {model.title}"
    pages = net_pages(desk, str(model.title), net, arts)
    after = (desk.say("after", title=model.title, glue=not desk.no_glue),)
    facts = net_facts(desk, str(model.title), str(model.solid), net)
    steps = _steps(_Job(desk, model, net, arts))
    colour = bool(arts)
    return (
        Laid("model", title, pages, "card", week=desk.item.week, after=after, colour=colour, net=facts),
        Laid("model", title, steps, part="steps", week=desk.item.week),
    )


def net_of(desk: Desk, model: Model) -> NetSheets | None:
    """The model's net on the family's paper, or None with a fault at the place of each thing wrong with it."""
    made = made_net(desk, model, desk.level)
    if isinstance(made, NetSheets):
        return made
    for error in made.all:
        desk.fault(place_in(model, error), error.message, error.instead)
    return None


@dataclass(frozen=True, slots=True)
class _Job:
    """A model with its net and the drawings on its faces, for one child."""

    desk: Desk
    model: Model
    net: NetSheets
    arts: Mapping[str, FaceArt]


def _steps(job: _Job) -> tuple[Page, ...]:
    """One page if all fits, else two: the finished model and what to have ready, then what to do.

    A place for the child's own picture of it is there if it takes no page of its own.
    """
    desk, model = job.desk, job.model
    subject = desk.say("subject", title=model.title, who=desk.study.study)
    head = desk.head(desk.say("title"), subject, "box")
    figures, care, after = figures_of(desk, job.net), _care_box(job), _after(job)
    beside, box = _before(job, False), DrawBox(desk.say("finished"), least=45.0, most=_OWN)
    before = _before(job, view_shape(job.net.net.solid) > _WIDE)
    wishes: tuple[tuple[int, list[Block]], ...] = (
        (1, [*beside, figures, care, *after, box]),
        (1, [*beside, figures, care, *after]),
        *((2, [*blocks, care, Break(), figures, *after, box]) for blocks in (before, beside)),
        *((2, [*blocks, care, Break(), figures, *after]) for blocks in (before, beside)),
        (2, [*before, care, Break(), *after]),
    )
    for most, blocks in wishes:
        pages = desk.pages(head, blocks, name=str(model.title))
        if len(pages) <= most:
            return pages
    return desk.pages(head, [*beside, figures, care, *after], name=str(model.title))


def _before(job: _Job, wide: bool) -> list[Block]:
    """What it is, what to have ready and its sizes; how it will look beside them, or below them if it is wide."""
    desk, model, net = job.desk, job.model, job.net
    blocks: list[Block] = []
    if model.about:
        blocks.append(Prose(str(model.about), "body"))
    have = Stack((heading(desk.say("ready")), Bullets(_ready(job), "box", "body", gap=1.5, spread=0.15)))
    words = desk.say("sizes", scale=net.scale_text, ratio=net.ratio)
    sizes = Boxed(Bullets(tuple(_sizes(job)), "dot", "small", spread=0.1), "note", words)
    share = 1.0 if wide else 1 / (1 + _LEFT)
    view = Art(partial(_view, job), _LEAST, max(_LEAST, share * desk.live_width / view_shape(net.net.solid)))
    if wide:
        return [*blocks, Row(((_LEFT, have), (1.0, sizes)), gutter=6.0), view]
    return [*blocks, Row(((_LEFT, Stack((have, sizes))), (1.0, view)), gutter=6.0)]


def _after(job: _Job) -> list[Block]:
    """What to do."""
    desk = job.desk
    blocks: list[Block] = []
    if desk.no_glue and job.net.net.joints:
        blocks.append(Boxed(Prose(desk.say("no_glue"), "body"), "note"))
    return [*blocks, heading(desk.say("steps")), StepList(told_steps(desk, job.net, _extra(job)), gap=1.5)]


def _extra(job: _Job) -> Extra:
    """What the steps of this model depend on beside its net."""
    model = job.model
    said = " ".join([*(str(w) for w in model.steps), *(str(m.item) for m in model.materials)])
    drawn = frozenset(face.name for face in job.net.net.solid.faces if art_of(job.arts, face.name))
    return Extra(tuple(str(words) for words in model.steps), bool(_THREAD.search(said)), drawn)


def _ready(job: _Job) -> tuple[str, ...]:
    """What to have ready: the printed card, tools, glue or tape, and what the study adds, each once."""
    desk, net = job.desk, job.net
    items = (desk.say("ready_card", sheets=len(net.sheets)), *ready_words(desk, net))
    said = {item.lower() for item in items}
    return (*items, *(words for m in job.model.materials if (words := _material(desk, m)).lower() not in said))


def _material(desk: Desk, material: Material) -> str:
    """A material of the study, with its amount if it says more than that there is one."""
    if material.amount is None or (material.amount == 1 and not material.unit):
        return str(material.item)
    words = shown(amount(material.amount, str(material.unit or "")), desk.family.units == "customary")
    return desk.say("ready_amount", item=material.item, amount=words)


def _sizes(job: _Job) -> list[str]:
    """The sizes of the real thing and of the model, in the family's units."""
    desk, rows = job.desk, []
    for size in job.net.sizes:
        if size.dimension == "length":
            real, model = length_words(desk, size.real), length_words(desk, size.model)
            rows.append(desk.say("size", name=size.name, real=real, model=model, count=""))
        elif size.dimension == "count":
            rows.append(desk.say("size", name=size.name, real="", model="", count=f"{size.real:g}"))
    return rows


def _care_box(job: _Job) -> Block:
    """Cautions, each once: the study's own sentences, what its single words stand for, and what building wants."""
    desk, model = job.desk, job.model
    own = [str(words).strip() for words in model.caution if " " in str(words).strip()]
    about = " ".join(own).lower()
    for words in model.caution:
        name = str(words).strip().lower().replace("-", "_")
        known = " " not in name and desk.wording.has("challenge", desk.level, f"care_{name}")
        if known and name.removesuffix("s") not in about:
            own.append(desk.wording.say("challenge", desk.level, f"care_{name}", {}))
    said = (*once(own), *care_words(desk, (job.net,), " ".join(own)))
    return Boxed(Bullets(said, "dot", "small", spread=0.1), "caution", desk.say("care"))


def _view(job: _Job, pen: Pen, x: float, y: float, width: float, height: float) -> None:
    """The finished model as large as fits, its drawings on it."""
    draw_solid(pen, job.net.net.solid, x, y, width, height, painter_of(job.desk, job.arts))
