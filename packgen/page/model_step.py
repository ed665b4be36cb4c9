"""A cut-and-fold model in the guide: the scale it comes out at, its sizes, what to have ready, cautions."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from packgen.nets import NetError, NetSheets, Solid
from packgen.page.blocks import Art, Block, Prose, Row
from packgen.page.desk import Desk
from packgen.page.hazards import model_dangers
from packgen.page.needed import needed_by_all
from packgen.page.net_faces import arts_of, painter_of
from packgen.page.net_made import made_net
from packgen.page.parents import care_words
from packgen.page.pen import Pen
from packgen.page.solid_view import Painter, draw_solid
from packgen.page.timetable import Pairs, Step
from packgen.page.week_sheets import numbers_for
from packgen.planning.people import Person
from packgen.reading.models import Model

_VIEW, _CLOSE = 34.0, 24.0


def model_step(desk: Desk, model: Model, persons: Sequence[Person], notes: tuple[str, ...], close: bool) -> Step:
    """The step of one model. `notes` are its minutes; `close` leaves out what the child's own steps say too."""
    net = _net(desk, model, persons)
    title = Prose(str(model.title), "strong", tight=True)
    if isinstance(net, NetError):
        return Step(desk.say("make_name"), (title, Prose(desk.say("no_net"), gap=0.3)), notes)
    side = _CLOSE if close else _VIEW
    painter = painter_of(desk, arts_of(net.net.solid, model.faces))
    view = Art(partial(_view, net.net.solid, painter), side)
    told = Pairs(_facts(desk, model, net, persons, close))
    facts: Block = Row(((1.0, told), (-side, view)), gutter=4.0, gap=1.0, tight=bool(model.about))
    blocks: list[Block] = [title, facts]
    if model.about:
        blocks.append(Prose(str(model.about), gap=1.2))
    return Step(desk.say("make_name"), tuple(blocks), notes)


def model_care(desk: Desk, model: Model, persons: Sequence[Person]) -> tuple[str, ...]:
    """What to take care of in a model, without who has the last word; nothing if it cannot be built."""
    net = _net(desk, model, persons)
    if isinstance(net, NetError):
        return ()
    general = () if general_care_in_front(desk) else net.cautions
    own = care_words(desk, [str(words) for words in model.caution])
    holes = any(not hole.mark_only and not hole.snip for part in net.net.parts for hole in part.holes)
    return (*own, *model_dangers(desk, model, (*own, *general), holes), *general)


def general_care(desk: Desk, persons: Sequence[Person]) -> tuple[str, ...]:
    """What to take care of in every model of the study, each thing once."""
    nets = [_net(desk, model, persons) for model in desk.study.models]
    return tuple(dict.fromkeys(words for net in nets if not isinstance(net, NetError) for words in net.cautions))


def general_care_in_front(desk: Desk) -> bool:
    """True if the parent's file has first pages, on which the rules for every model stand once."""
    return any(item.sheet == "contents" for item in desk.pack.items)


def model_things(desk: Desk, number: int, persons: Sequence[Person]) -> tuple[str, ...]:
    """What has to be there to build a model of the study: its materials for all makers, and what every net wants."""
    net = _net(desk, desk.study.models[number], persons)
    own = needed_by_all(desk, "model", number, persons)
    named = " ".join(own).lower()
    wanted = () if isinstance(net, NetError) else tuple(words for words in net.materials if words not in named)
    if "punch" in named or "needle" in named:
        wanted = tuple(words for words in wanted if not words.startswith("hole punch"))
    # the card has the net on it already: it comes out of the printer and lies in the folder
    return (*own, *(desk.say("find_card") if words.startswith("card ") else words for words in wanted))


def _net(desk: Desk, model: Model, persons: Sequence[Person]) -> NetSheets | NetError:
    makers = [person for person in persons if "model" in person.kinds]
    levels = [person.level for person in makers] or [desk.level]
    return made_net(desk, model, next((level for level in levels if level != "first"), levels[0]))


def _facts(desk: Desk, model: Model, net: NetSheets, persons: Sequence[Person],
           close: bool) -> tuple[tuple[str, str], ...]:  # fmt: skip
    rows = [
        (desk.say("model_scale"), desk.say("model_sheets", scale=net.scale_text, sheets=len(net.sheets))),
        (desk.say("model_sizes"), "; ".join(net.real_size)),
    ]
    if not close:
        rows.append((desk.say("model_order"), desk.say("model_order_words")))
    numbers = numbers_for(desk, persons, "model", str(model.title))
    return (*rows, *(((desk.say("sheets_word"), numbers),) if numbers else ()))


def _view(solid: Solid, painter: Painter | None, pen: Pen, x: float, y: float, width: float, height: float) -> None:
    draw_solid(pen, solid, x, y, width, height, painter)
