"""What the parent's pages share: the children's names, the names of sheets, minutes and cautions in words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from packgen.page.blocks import Block, gap_of
from packgen.page.desk import Desk
from packgen.planning.care import besides
from packgen.planning.days import WEEKDAYS
from packgen.planning.people import Person, in_groups, people
from packgen.planning.plan import PlanItem
from packgen.planning.printed_items import printed_for
from packgen.planning.weeks import Making, Part, Week
from packgen.reading.models import Challenge, Work
from packgen.trials.plan import TrialPlan

MAKINGS = ("challenge", "model", "fold-book")


def persons(desk: Desk) -> tuple[Person, ...]:
    """Everybody the packs are for; a child without a name goes by its pack."""

    def called(pack: str) -> str:
        key = f"nameless_{pack.replace('-', '_')}"
        return desk.say(key) if desk.has(key) else capital(pack)

    found = people(desk.family, desk.packs, called)
    return tuple(replace(person, items=_printed(desk, person)) for person in found)


def spoken_of(desk: Desk) -> tuple[Person, ...]:
    """Everybody as the guide speaks of them: of a great many, those who have the same sheets together."""
    return in_groups(persons(desk), lambda level, count: desk.say("group", level=capital(level), count=count))


def _printed(desk: Desk, person: Person) -> tuple[PlanItem, ...]:
    """The sheets that are in a person's files; all that are planned if the files are not known."""
    return tuple(item for item, _ in printed_for(person.items, desk.print_runs, person.folder))


def shortened(title: str, most: int = 46) -> str:
    """A title for a narrow column: whole, or its first words. The whole of it stands elsewhere."""
    return title if len(title) <= most else f"{title[:most].rsplit(' ', 1)[0].rstrip(' ,;:–-')} …"


def kind_name(desk: Desk, kind: str) -> str:
    """What a kind of sheet is called in a sentence, without a capital letter."""
    key = f"kind_{kind.replace('-', '_')}"
    return desk.say(key) if desk.has(key) else kind.replace("-", " ")


def stock_name(desk: Desk, stock: str) -> str:
    """What a kind of paper is called in a sentence."""
    key = f"stock_{stock.replace('-', '_')}"
    return desk.say(key) if desk.has(key) else stock


def part_name(desk: Desk, name: str) -> str:
    """What a part of a week is called: something done together, or a kind of sheet."""
    key = f"part_{name}"
    return desk.say(key) if desk.has(key) else kind_name(desk, name)


def capital(text: str) -> str:
    """The text with a capital letter first, the rest as it is."""
    return text[:1].upper() + text[1:]


def chapter_titles(week: Week) -> str:
    """The titles of a week's chapters, in order."""
    return " · ".join(str(chapter.title) for chapter in week.chapters)


def table_minutes(week: Week) -> int:
    """Minutes at the table, all sittings of the week together."""
    return sum(sitting.minutes for sitting in week.sittings)


def other_minutes(week: Week) -> int:
    """Minutes of what is done at other times: the children do their sheets side by side."""
    return max(0, week.minutes - table_minutes(week))


def minutes_of(desk: Desk, week: Week, names: Iterable[str], title: str = "") -> tuple[str, ...]:
    """How long parts of a week take, and when if it is not plain: `5 min`, `Friday`, `before`.

    With a title only the parts of that title count.
    """
    wanted = frozenset(names)

    def ours(part: Part) -> bool:
        return part.name in wanted and (not title or part.title == title)

    found = [(sitting, part) for sitting in week.sittings for part in sitting.parts if ours(part)]
    later = [part for part in week.other if ours(part)]
    total = sum(part.minutes for _, part in found) + sum(part.minutes for part in later)
    if not total:
        return ()
    said = [desk.say("minutes", minutes=total)]
    days = list(dict.fromkeys(sitting.day for sitting, _ in found))
    if len(week.sittings) > 1 and found:
        said += [WEEKDAYS[day.weekday()] for day in days if day]
    if later:
        early = any(part.name in ("read", "life") for part in later)
        said.append(desk.say("before" if early else "another_time"))
    return tuple(said)


def book_words(desk: Desk) -> str:
    """The book that is read aloud, in words to ask for it by: title, author, edition, ISBN; empty without one."""
    book = desk.study.book
    if book is None:
        return ""
    return desk.say("book_named", book=book)


def making_title(desk: Desk, making: Making) -> str:
    """A making by its title; the book by its own name."""
    return desk.say("the_book") if making.kind == "fold-book" else making.title


def making_words(desk: Desk, making: Making) -> str:
    """A making in a table: its title, and what of it is done if it takes two weeks."""
    title = shortened(making_title(desk, making))
    if making.parts == 1:
        return title
    return f"{title} ({desk.say('stage_build' if making.part == 1 else 'stage_test')})"


def care_words(desk: Desk, study: Sequence[str], more: Sequence[str] = ()) -> tuple[str, ...]:
    """Cautions as sentences, each once: those given as one word (`water`) are looked up in the wording."""
    said: list[str] = list(more)
    for words in study:
        key = f"care_{'_'.join(words.strip().lower().replace('-', ' ').split())}"
        known = desk.wording.has("challenge", desk.level, key)
        sentence = desk.wording.say("challenge", desk.level, key, {}) if known else words
        said.append(capital(sentence) if sentence.rstrip().endswith((".", "!")) else f"{capital(sentence)}.")
    return tuple(dict.fromkeys(said))


def challenge_care(desk: Desk, challenge: Challenge, plan: TrialPlan | None) -> tuple[str, ...]:
    """What to take care of in a challenge: the model's cautions, the study's, and who has the last word.

    The study's own sentences stand for the model's on the same dangers, and a single word of the study (`water`) adds
    nothing where it is spoken of already.
    """
    whole = [str(words) for words in challenge.caution if " " in words.strip()]
    known = besides(whole, plan.cautions) if plan else ()
    said = " ".join((*whole, *known)).lower()
    own = care_words(desk, [str(w) for w in challenge.caution if " " in w.strip() or w.lower() not in said], known)
    return (*own, desk.say("care_last"))


def work_caption(desk: Desk, work: Work) -> tuple[str, ...]:
    """Year, medium and size of a work, those that are known, for one line under its title."""
    when = desk.say("when_words", when=work.when) if work.when else ""
    size = ""
    if work.width and work.height:
        inches = desk.family.units == "customary"
        step, unit, digits = (25.4, "in", 3) if inches else (10.0, "cm", 4)
        size = f"{work.width / step:.{digits}g} × {work.height / step:.{digits}g} {unit}"
    return tuple(part for part in (when, str(work.medium or ""), size) if part)


def height_of(desk: Desk, blocks: Sequence[Block]) -> float:
    """The least height in mm of blocks one under the other."""
    gaps = sum(gap_of(desk.kit, block) for block in blocks[1:])
    return sum(block.measure(desk.kit, desk.live_width).least for block in blocks) + gaps
