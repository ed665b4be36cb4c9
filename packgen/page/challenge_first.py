"""A challenge for the youngest: what may happen, getting ready, and what did, with a grown-up's pen."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.page.blocks import Art, Block, Boxed, Break, Bullets, DrawBox, Lines, Prose, Row, Stack
from packgen.page.challenge_set import ChallengeSet, older_child
from packgen.page.desk import Section
from packgen.page.look import MIDDLE, Ruling, look_for
from packgen.page.marks import Stroke
from packgen.page.net_steps import step_lines
from packgen.page.pen import Pen
from packgen.page.preparing import care, material_words, several
from packgen.page.text import Style, fit
from packgen.page.values_drawn import Shown, draw_value, shown_values
from packgen.reading.models import Material
from packgen.trials.stages import stages

_READ_ALOUD = 18  # words; a longer brief is set small, to be read to the child
_VERY_LONG = 60  # words; a brief longer than this is set as small as a grown-up reads with ease
_PEN: Ruling = look_for("parent").ruling
_GROWN_UP: Style = look_for("first").small
_CELL = 30.0


def first_sections(made: ChallengeSet) -> list[Section]:
    """The pages: look and guess, get ready, try."""
    return [
        _shortest(
            made, "ask", [_ask(made, *how) for how in ((42.0, True), (34.0, True), (34.0, False), (26.0, False))]
        ),
        _ready(made),
        _shortest(
            made, "try", [_try(made, *how) for how in ((48.0, True), (40.0, False), (30.0, False))], _pen_lines(made)
        ),
    ]


def _shortest(made: ChallengeSet, now: str, ways: Sequence[Sequence[Block]], *more: Block) -> Section:
    """The first way that fits one page, or else the one that takes fewest; with more blocks if they fit as well."""
    lengths = [made.length(made.section(now, blocks)) for blocks in ways]
    return made.roomy(now, ways[lengths.index(min(lengths))], *more)


def _ask(made: ChallengeSet, draw: float, pen: bool) -> list[Block]:
    """The brief, the question, the things to choose from, a place to draw what may happen, `draw` mm high at least."""
    desk, say, challenge = made.desk, made.say, made.challenge
    short = str(challenge.brief_first or "")
    brief = short or str(challenge.brief)
    long = len(brief.split()) > _READ_ALOUD and not short
    style = desk.look.small if len(brief.split()) <= _VERY_LONG else desk.look.small.at(desk.look.floor)
    told: Block = Prose(f"{say('read_aloud')} {brief}", style) if long else Prose(brief, "body")
    guess = _values(made, say("guess"), "guess-ring")
    question = made.plan.question("first")
    blocks: list[Block] = [told, Boxed(Prose(question, "strong"), "note"), *guess]
    return [*blocks, DrawBox(desk.say("before"), least=draw), *([_pen_lines(made)] if pen else [])]


def _ready(made: ChallengeSet) -> Section:
    """What is needed, and for the grown-up the steps and cautions: in large words, or smaller ones if it is much."""
    drawn = DrawBox(made.say("made_draw"), least=40.0, most=120.0)
    older = older_child(made.desk)
    ways = [_needed(made, "strong", most) for most in (5, 3)]
    ways += [_needed(made, "strong", most, "elsewhere") for most in (5, 3, 2)] if older and _steps(made) else []
    if older is None:  # the grown-up has the steps nowhere else
        ways += [_needed(made, style, 3) for style in ("body", "small")]
    if older or not _steps(made):
        ways += [_needed(made, style, 3, "untold") for style in ("strong", "body", "small")]
    if not ways[0]:
        return made.section("make", [DrawBox(made.say("made_draw"), least=120.0), _pen_lines(made)])
    if older is None and all(made.length(made.section("make", way)) > 1 for way in ways):
        things, rest = ways[0][:2], ways[0][2:]  # what is needed, and on the next page what the grown-up reads
        return made.section("make", [*things, drawn, Break(), *rest])
    return _shortest(made, "make", ways, drawn)


def _needed(made: ChallengeSet, style: str, most: int, told: str = "told") -> list[Block]:
    """The materials, each with a ring to tick, the grown-up's box, and the first `most` cautions.

    Where the steps are told "elsewhere", the box says in which child's pack; "steps" leaves out the amounts, which the
    shopping list has too, "untold" the whole box.
    """
    desk, challenge = made.desk, made.challenge
    blocks: list[Block] = []
    names = [_plain_words(m) for m in challenge.materials]
    if names:
        half = (len(names) + 1) // 2
        parts = [Bullets(tuple(part), "ring", style, spread=0.3) for part in (names[:half], names[half:]) if part]
        columns = tuple((1.0, part) for part in parts)
        blocks += [Prose(made.say("need"), "strong", tight=True), Row(columns, gutter=5.0, gap=2.0)]
    amounts = _amounts(made) if told != "steps" else ""
    steps = _steps(made) if told in ("told", "steps") else (_steps_elsewhere(made),)
    listed: list[Block] = [Prose(amounts, _GROWN_UP, gap=1.0)] if amounts else []
    listed += (
        [Bullets(steps, "dot" if told == "elsewhere" else "number", _GROWN_UP, spread=0.1, gap=1.0)] if steps else []
    )
    if listed and told != "untold":
        blocks.append(Boxed(Stack(tuple(listed)), "plain", made.say("grown_up")))
    return [*blocks, *care(desk, challenge, made.plan, most)]


def _plain_words(material: Material) -> str:
    """A material in the words a child knows it by: several if so many, without what stands after a comma."""
    words = str(material.item).split(",")[0].split("(")[0].strip()
    if material.amount and material.amount > 1 and not material.unit:
        return several(material.amount, words).split(" ", 1)[1]
    return words


def _steps(made: ChallengeSet) -> tuple[str, ...]:
    """The steps for the grown-up, with those of the parts on card, or where these are."""
    own = tuple(map(str, made.challenge.steps))
    if made.templates:
        return step_lines(made.desk, made.templates[0].net, own)
    if own and any(made.plan.nets):
        older = older_child(made.desk)
        title = str(made.challenge.title)
        return (made.desk.say("card_elsewhere", older=older[0], title=title), *own) if older else own
    return own


def _steps_elsewhere(made: ChallengeSet) -> str:
    """Where the grown-up finds the steps, and the card if there is any."""
    older = older_child(made.desk)
    if older is None:
        return ""
    page = next(stage.title for stage in stages(older[1], made.job) if stage.key == "make")
    card = any(made.plan.nets)
    return made.desk.say("steps_elsewhere", older=older[0], title=str(made.challenge.title), page=page, card=card)


def _amounts(made: ChallengeSet) -> str:
    """The amounts that matter, for the grown-up, in one line."""
    said = [material_words(made.desk, m) for m in made.challenge.materials if m.amount and (m.unit or m.amount > 1)]
    return made.say("amounts") + " " + "; ".join(said) + "." if said else ""


def _try(made: ChallengeSet, draw: float, again: bool) -> list[Block]:
    """A place to draw what happened, the things to choose from `again`, and whether it did what was thought."""
    say = made.say
    which = _values(made, say("which"), "answer-ring") if again else []
    return [Prose(say("now_try"), "body"), DrawBox(say("after"), least=draw), *which, _faces(made)]


def _pen_lines(made: ChallengeSet) -> Block:
    """Two lines for the grown-up to write on what the child says."""
    return Stack((Prose(made.say("pen"), "small", tight=True), Lines(2, 2, ruling=_PEN, gap=0.0)), gap=3.0)


def _values(made: ChallengeSet, ask: str, role: str) -> list[Block]:
    """The values side by side, drawn true to one another, each in a box to ring."""
    found = shown_values(made.plan)
    if not found:
        return []
    words = [made.say(f"size_{one.key}") if one.key else one.text for one in found]
    if max(map(len, words)) > 16:
        return []
    drawn = any(one.picture for one in found)
    return [_boxes(made, ask, words, found if drawn else (), role)]


def _faces(made: ChallengeSet) -> Block:
    """Whether it did what was thought: yes, a bit, no."""
    ask, *answers = made.say_lines("did_it")
    return _boxes(made, ask, answers, (), "answer-ring")


def _boxes(made: ChallengeSet, ask: str, words: Sequence[str], found: Sequence[Shown], role: str) -> Block:
    """A question, and under it boxes to ring: a word each, under its drawing if there is one."""
    desk = made.desk
    style = desk.look.strong
    deep = (_CELL if found else 0.0) + style.leading + 5.0

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        pen.text(x, y + height - pen.drop(style), ask, style)
        cell = width / len(words)
        for k, word in enumerate(words):
            left = x + k * cell + cell * 0.05
            wide = cell * 0.9
            pen.box(left, y, wide, deep, Stroke(MIDDLE, 0.75), corner=4.0, role=role)
            fitted = fit(desk.faces, word, style, wide - 4.0, style.leading, desk.look.floor * 0.7)
            foot = y + 1.5 + fitted.height
            pen.lines(left, foot, fitted.lines, fitted.style, align="centre", width=wide)
            if found:
                draw_value(pen, found[k], left + 3.0, foot + 2.0, wide - 6.0, y + deep - 3.0 - foot - 2.0)

    return Art(paint, style.leading + 2.0 + deep)
