"""What to have in the house: materials by the week they are needed in, tools, and the paper of the real print runs."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.page.blocks import Block, Boxed, Bullets, Prose, Row
from packgen.page.desk import Desk, Laid, Sheet
from packgen.page.look import SOFT
from packgen.page.needed import makers_of
from packgen.page.parents import book_words, capital, persons, shortened, stock_name
from packgen.page.table import Cell, Column, Table
from packgen.page.timetable import IfRoom, Sayings, Step
from packgen.planning.days import short_days
from packgen.planning.household import for_grown_up
from packgen.planning.load import BESIDE
from packgen.planning.notes import listed, week_list
from packgen.planning.people import Person
from packgen.planning.print_plan import count_paper
from packgen.planning.shopping import Item, ShoppingList, Use, shopping_list

SHEET = Sheet(
    title="Shopping list",
    about="Materials added up over challenges, models and children, by the week they are needed in; paper and card.",
    levels=("parent",),
)

_MOST_USES = 3  # makings named one by one; of more the weeks are enough


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """One list for the whole study."""
    everybody = persons(desk)
    runs = desk.runs
    found = shopping_list(
        desk.study, makers_of(desk, everybody), desk.term, count_paper(runs), desk.family.units == "customary"
    )
    subject = desk.say("subject", count=len(everybody))
    head = desk.head(desk.say("title"), subject, "box", date=False)
    blocks = _materials(desk, found, everybody)
    if found.beside:
        words = desk.say("beside", names=listed(found.beside), count=len(found.beside))
        blocks.append(Prose(words, desk.look.small.grey(SOFT), gap=1.2))
    if found.notes:
        blocks.append(Boxed(Prose(" ".join(found.notes), "small"), "caution", desk.say("care_title"), pad=2.4))
    blocks += [*_tools(desk, found), _paper(desk, found)]
    blocks.append(IfRoom((Sayings(desk.say("more_name"), (), most=16),)))
    pages = desk.pages(head, blocks, name=desk.say("list_word"), loosen=2.0)
    return (Laid("shopping-list", SHEET.title, pages, sides="two-sided-long-edge"),)


# Materials


def _materials(desk: Desk, found: ShoppingList, everybody: Sequence[Person]) -> list[Block]:
    """One table: the book, then what is used up by the week it is first needed in."""
    book = book_words(desk)
    used_up = [item for item in found.items if not item.again]
    if not used_up and not book:
        return [] if found.items else [Prose(desk.say("nothing"))]
    names = ("item", "buy", "whom", "instead", "used")
    widths = (1.0, 0.85, 1.05, 1.3, 1.4)
    columns = [Column("", -8.0), Column(desk.say("needed"), -19.0, names=True)]
    columns += [Column(desk.say(name), width) for name, width in zip(names, widths, strict=True)]
    rows: list[tuple[str | Cell, ...]] = [_book(desk, book)] if book else []
    said = ""
    for item in used_up:
        group = _group(desk, item)
        again = Cell(group.split("\n")[0], desk.look.small.grey(SOFT))
        rows.append(_row(desk, found, item, everybody, again if group == said else Cell(group, "label")))
        said = group
    return [Table(tuple(columns), tuple(rows), least=7.5, most=9.5, style="small", grow=0.5, pad=1.2)]


def _book(desk: Desk, book: str) -> tuple[str | Cell, ...]:
    """The book, which comes first: it is wanted before the first week."""
    fine = desk.look.small.grey(SOFT)
    return (Cell(box=True), Cell(desk.say("group_before"), "label"), Cell(book, "label"), Cell("1", "label"),
            desk.say("all_share"), Cell(desk.say("book_instead"), fine), desk.say("book_use"))  # fmt: skip


def _group(desk: Desk, item: Item) -> str:
    """Under which words an item stands: its week and day."""
    if item.week is None:
        return desk.say("group_any")
    day = short_days([item.by]) if item.by else ""
    return "\n".join(part for part in (desk.say("group_week", number=item.week), day) if part)


def _row(
    desk: Desk, found: ShoppingList, item: Item, everybody: Sequence[Person], group: Cell
) -> tuple[str | Cell, ...]:
    return (
        Cell(box=True),
        group,
        Cell(capital(item.name), "label"),
        Cell(_how_much(desk, found, item), "label"),
        _for_whom(desk, found, item, everybody),
        Cell(item.instead, desk.look.small.grey(SOFT)),
        _uses(desk, item),
    )


def _how_much(desk: Desk, found: ShoppingList, item: Item) -> str:
    return found.shown(item.buy) or desk.say("some")


def _for_whom(desk: Desk, found: ShoppingList, item: Item, everybody: Sequence[Person]) -> str:
    """What each child takes, in as few words as say it all."""
    if not item.each:
        return desk.say("all_share")
    amounts = {share.amounts for share in item.each}
    if len(amounts) == 1 and len(item.each) == _makers_of(everybody, item):
        same = found.shown(item.each[0].amounts)
        said = [desk.say("each", amount=same) if same else desk.say("each_some")]
    else:
        marks = {person.name: person.mark for person in everybody}
        short = len(item.each) > 3
        said = [
            desk.say("share", name=marks[s.child] if short else s.child, amount=found.shown(s.amounts)).strip()
            for s in item.each
        ]
    if item.shared:
        said.append(desk.say("to_share", amount=found.shown(item.shared)))
    if item.printed:
        said.append(desk.say("rest_printed"))
    return ", ".join(said)


def _makers_of(everybody: Sequence[Person], item: Item) -> int:
    """How many make the things an item is for, but for the youngest who work beside them."""
    kinds = {use.kind for use in item.uses}
    makers = [person for person in everybody if not person.items or kinds & person.kinds]
    older = [person for person in makers if person.level != BESIDE]
    return len(older or makers)


def _uses(desk: Desk, item: Item) -> str:
    """The makings an item is for; the week only where it is not the one it is listed under."""
    weeks = [use.week for use in item.uses if use.week is not None]
    if len(item.uses) > _MOST_USES and weeks:
        return desk.say("use_weeks", weeks=week_list(weeks))
    return ", ".join(_use(desk, use, item.week) for use in item.uses)


def _use(desk: Desk, use: Use, listed: int | None) -> str:
    if use.week is None or use.week == listed:
        return shortened(use.title)
    return desk.say("use_week", title=shortened(use.title), week=use.week)


# Tools and paper


def _tools(desk: Desk, found: ShoppingList) -> list[Block]:
    """What is used again: tools by the weeks they are needed in, what the table always has, what a grown-up keeps."""
    tools = [(item.name, _tool(desk, found, item)) for item in found.items if item.again]
    always = [(tool.words, capital(tool.words)) for tool in found.kit]
    kept = [words for name, words in (*tools, *always) if for_grown_up(name)]
    groups = (
        ("tools_name", [words for name, words in tools if not for_grown_up(name)]),
        ("kit_name", [words for name, words in always if not for_grown_up(name)]),
        ("grown_up_name", kept),
    )
    return [_in_two(desk.say(name), words) for name, words in groups if words]


def _tool(desk: Desk, found: ShoppingList, item: Item) -> str:
    """A tool with how many of it, the weeks, and what may stand in for it."""
    many = found.shown(item.total)
    weeks = [use.week for use in item.uses if use.week is not None]
    said = [week_list(weeks)] if weeks else []
    said += [desk.say("tool_instead", instead=item.instead)] if item.instead else []
    name = capital(item.name) if many in ("", "1") else f"{many} × {item.name}"
    return f"{name} ({', '.join(said)})" if said else name


def _in_two(name: str, words: Sequence[str]) -> Block:
    """A step with boxes to tick in two columns."""
    half = -(-len(words) // 2)
    cells = tuple((1.0, Bullets(tuple(part), "box", spread=0.2)) for part in (words[:half], words[half:]) if part)
    return Step(name, (Row(cells, gutter=6.0),))


def _paper(desk: Desk, found: ShoppingList) -> Block:
    if not found.paper:
        return Step(desk.say("paper_name"), (Prose(desk.say("no_paper")),))
    colour = any(item.colour_pages for item in found.paper)
    columns = [
        Column("", -8.0),
        Column(desk.say("paper_stock", paper=desk.family.paper), 1.6),
        Column(desk.say("paper_printed"), 1.0, align="right"),
        Column(desk.say("paper_buy"), 1.0, align="right"),
        Column(desk.say("paper_pages"), 0.7, align="right"),
    ]
    columns += [Column(desk.say("paper_colour"), 1.0, align="right")] if colour else []
    rows = []
    for item in found.paper:
        row: list[str | Cell] = [Cell(box=True), Cell(capital(stock_name(desk, item.stock)), "label"), str(item.sheets)]
        row += [Cell(str(item.buy), "label"), str(item.pages)]
        rows.append(tuple([*row, str(item.colour_pages)] if colour else row))
    table = Table(tuple(columns), tuple(rows), least=8.0, grow=0.0, pad=1.3)
    return Step(desk.say("paper_name"), (table, Prose(desk.say("paper_note"), "small", gap=1.2)))
