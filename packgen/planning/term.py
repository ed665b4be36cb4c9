"""The term plan: a study's chapters, works and makings spread over the weeks of the family's term.

`Term.weeks` counts calendar weeks (Monday to Sunday) from the first that has a sitting, weeks away included; those are
not taught. A date away drops its whole calendar week. The sittings fall on the weekdays in `Term.on` (0 is Monday), or
on the weekday of the first day. What a sitting cannot hold in the minutes given is planned for another time or said.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from packgen.planning import minutes
from packgen.planning.load import Holder, load_of, longest, making_minutes
from packgen.planning.notes import Facts, notes_on
from packgen.planning.spread import Layout, lay_out
from packgen.planning.weeks import MAKINGS, AwayWeek, Making, Part, Recalled, SheetDue, Sitting, TermPlan, Week
from packgen.planning.word_weeks import words_by_week
from packgen.reading.models import Chapter, Family, Study, Term, Work

__all__ = ["DEFAULT_KINDS", "TermPlan", "Week", "plan_term"]

DEFAULT_KINDS = frozenset(
    {"biography", "timeline", "picture-study", "telling", "words", "fold-book", "challenge", "model", "enlarging-grid",
     "finish-the-picture"}
)  # fmt: skip
_BY_CONTENT = frozenset(
    {"biography", "picture-study", "telling", "words", "fold-book", "challenge", "model", "results"}
)  # fmt: skip
_OF_A_PICTURE = frozenset({"enlarging-grid", "finish-the-picture", "colour-by-number", "look-closer"})
_OF_PICTURES = "matching-game"
_ORDER = ("recall", "life", "read", "tell", "look", "review")
DEFAULT_SITTING = 10


def plan_term(study: Study, family: Family | None = None, kinds: Collection[str] = DEFAULT_KINDS,
              holders: Sequence[Holder] = ()) -> TermPlan:  # fmt: skip
    """The study spread over the family's term, or over as many undated weeks as it needs without a term.

    `holders` are the children with the sheets they have: makings and sheets that nobody has are left out, and each
    sheet has one week, whoever has it. Without them, one child is taken to have every sheet of these `kinds`. A kind
    this module knows nothing of goes to the lightest week. Every chapter and work is in the plan, in order; no week
    away is used; a sitting over its minutes has its week in `over` and in the notes.
    """
    whose = tuple(holders) or (_everything(study, frozenset(kinds)),)
    term = family.term if family else None
    calendar = _calendar(term) if term else _Calendar()
    makings = _makings(study, whose)
    loose = _loose(study)
    lessons = len(study.book.chapters) if study.book and study.book.chapters else len(loose)
    days = calendar.taught or ((None,),) * max(1, lessons + len(makings) + (lessons + len(makings) > 1))
    divisible = [making.kind == "challenge" for making in makings]
    takes = [making.minutes for making in makings]
    layout = lay_out(lessons, divisible, [len(week) for week in days], len(loose) if _has_book(study) else 0, takes)
    allowed = term.minutes if term else DEFAULT_SITTING
    drafts = _contents(study, layout, makings, days, whose)
    drafts = _with_loose_sheets(study, drafts, whose)
    weeks = tuple(_recalling(study, [_timed(study, draft, allowed, whose) for draft in drafts]))
    over = tuple(week.number for week in weeks if any(s.minutes > allowed for s in week.sittings))
    facts = Facts(study, family, weeks, allowed, calendar.away, calendar.outside, lessons)
    return TermPlan(weeks, allowed, calendar.away, notes_on(facts), over)


def _everything(study: Study, kinds: frozenset[str]) -> Holder:
    """A child with every sheet of these kinds that the study has matter for."""
    works = [str(work.id) for work in study.works if work.image]
    by_work = {SheetDue(kind, work) for kind in kinds & {*_OF_A_PICTURE, "picture-study"} for work in works}
    whole = {SheetDue(kind) for kind in kinds - _OF_A_PICTURE - {"picture-study"} if _has_matter(study, kind)}
    return Holder("", "", frozenset(by_work | whole))


@dataclass(frozen=True, slots=True)
class _Calendar:
    """The days of each taught week, the weeks away, and the dates away that lie outside the term."""

    taught: tuple[tuple[date | None, ...], ...] = ()
    away: tuple[AwayWeek, ...] = ()
    outside: tuple[date, ...] = ()


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())


def _calendar(term: Term) -> _Calendar:
    on = sorted(set(term.on)) or [term.starts.weekday()]
    first = _monday(term.starts)
    if first + timedelta(days=on[-1]) < term.starts:
        first += timedelta(days=7)  # the week's last sitting is over before the term starts
    mondays = [first + timedelta(days=7 * i) for i in range(term.weeks)]
    gone = {_monday(day) for day in term.away}
    taught: list[tuple[date | None, ...]] = []
    for monday in mondays:
        if monday not in gone:
            days = [monday + timedelta(days=weekday) for weekday in on]
            taught.append(tuple(day for day in days if day >= term.starts))
    away = tuple(AwayWeek(monday) for monday in mondays if monday in gone)
    outside = tuple(sorted(day for day in set(term.away) if _monday(day) not in mondays))
    return _Calendar(tuple(taught), away, outside)


def _has_book(study: Study) -> bool:
    return bool(study.book and study.book.chapters)


def _mentioned(study: Study) -> set[str]:
    return {work for chapter in study.book.chapters for work in chapter.works} if study.book else set()


def _loose(study: Study) -> list[Work]:
    """The works no chapter speaks of, in the study's order."""
    mentioned = _mentioned(study)
    return [work for work in study.works if work.id not in mentioned]


def _makings(study: Study, holders: Sequence[Holder]) -> list[Making]:
    """Each making that somebody has: challenges and models in turn, the book at the end. Minutes are those of all."""
    titles = {"challenge": [str(c.title) for c in study.challenges], "model": [str(m.title) for m in study.models]}
    held = [
        [
            Making(kind, title, i, _takes(study, holders, kind, i))
            for i, title in enumerate(row)
            if any(holder.has(SheetDue(kind, title)) for holder in holders)
        ]
        for kind, row in titles.items()
    ]
    # a stable sort by the share of its own list that lies before each: two lists in turn, whatever their lengths
    placed = [((i + 0.5) / len(row), making) for row in held for i, making in enumerate(row)]
    found = [making for _, making in sorted(placed, key=lambda pair: pair[0])]
    if any(holder.has(SheetDue("fold-book")) for holder in holders):
        found.append(Making("fold-book", str(study.study), 0, minutes.of_sheet("fold-book")))
    return found


def _contents(
    study: Study,
    layout: Layout,
    makings: Sequence[Making],
    days: Sequence[Sequence[date | None]],
    holders: Sequence[Holder],
) -> list[Week]:
    """Weeks with what they deal with and the sheets that belong to it; minutes are still to come."""
    has_book = _has_book(study)
    kinds = frozenset(due.kind for holder in holders for due in holder.sheets)
    chapters = study.book.chapters if study.book else ()
    works = _works_by_week(study, layout)
    told_in = [tuple(chapters[i] for i in layout.lessons[w]) if has_book else () for w in range(len(days))]
    made_in = [_makings_of(study, layout, makings, w, holders) for w in range(len(days))]
    words = words_by_week(study, told_in, works, made_in) if "words" in kinds else [()] * len(days)
    met: set[str] = set()
    weeks: list[Week] = []
    for w, of_week in enumerate(days):
        told = told_in[w]
        met |= {work.id for work in works[w]}
        again = tuple(
            work for work in study.works if work.id in met and work not in works[w] and _speaks_of(told, work)
        )
        week = Week(
            number=w + 1,
            sittings=tuple(Sitting(day) for day in of_week),
            chapters=told,
            works=works[w],
            again=again,
            makings=made_in[w],
            words=words[w],
            review=w == len(days) - 1 and len(days) > 1,
        )
        due = _due(week, kinds, first=w == 0)
        weeks.append(replace(week, due=tuple(d for d in due if any(holder.has(d) for holder in holders))))
    return weeks


def _speaks_of(chapters: Iterable[Chapter], work: Work) -> bool:
    return any(work.id in chapter.works for chapter in chapters)


def _works_by_week(study: Study, layout: Layout) -> list[tuple[Work, ...]]:
    """Each work in the week of the first chapter that speaks of it; the others where there is most room."""
    found: list[list[Work]] = [[] for _ in layout.lessons]
    loose = _loose(study)
    if not _has_book(study):
        return [tuple(loose[i] for i in lessons) for lessons in layout.lessons]
    chapters = study.book.chapters if study.book else ()
    for w, lessons in enumerate(layout.lessons):
        found[w] += [
            work
            for work in study.works
            if _speaks_of((chapters[i] for i in lessons), work) and not any(work in earlier for earlier in found[:w])
        ]
    for week, work in zip(layout.looks, loose, strict=False):
        found[week].append(work)
    open_weeks = [w for w, lessons in enumerate(layout.lessons) if lessons or w in layout.spare]
    for work in loose[len(layout.looks) :]:
        found[min(open_weeks, key=lambda w: (len(found[w]), w))].append(work)
    return [tuple(works) for works in found]


def _makings_of(study: Study, layout: Layout, makings: Sequence[Making], week: int,
                holders: Sequence[Holder]) -> tuple[Making, ...]:  # fmt: skip
    found: list[Making] = []
    for making, slots in zip(makings, layout.makings, strict=True):
        for part, slot in enumerate(slots, start=1):
            if slot.week == week:
                takes = _takes(study, holders, making.kind, making.number, part, len(slots))
                found.append(replace(making, minutes=takes, sitting=slot.sitting, part=part, parts=len(slots)))
    return tuple(found)


def _takes(study: Study, holders: Sequence[Holder], kind: str, number: int, part: int = 1, parts: int = 1) -> int:
    """Minutes of a challenge or model, or of one of its parts, for all together."""
    challenge = study.challenges[number] if kind == "challenge" else None
    due = SheetDue(kind, str(challenge.title) if challenge else "")
    return making_minutes(holders, due, challenge, part, parts)


def _due(week: Week, kinds: frozenset[str], first: bool) -> Iterable[SheetDue]:
    """The sheets that belong to what the week deals with."""
    if first and "biography" in kinds:
        yield SheetDue("biography")
    if "telling" in kinds:
        yield from (SheetDue("telling", str(chapter.title)) for chapter in week.chapters)
    if "picture-study" in kinds:
        yield from (SheetDue("picture-study", str(work.id)) for work in week.works if work.image)
    if week.words:
        yield SheetDue("words")
    for making in week.makings:
        yield SheetDue(making.kind, "" if making.kind == "fold-book" else making.title)


def _with_loose_sheets(study: Study, weeks: list[Week], holders: Sequence[Holder]) -> list[Week]:
    """The weeks with the sheets that belong to no chapter, work or making: each in one week, the lightest it suits.

    A picture is drawn, coloured or searched only when it has been looked at with fresh eyes. The week is the lightest
    for those who have the sheet.
    """
    order = {str(work.id): place for place, work in enumerate(study.works)}
    loose = {due for holder in holders for due in holder.sheets if due.kind not in _BY_CONTENT}
    for due in sorted(
        loose, key=lambda due: (due.kind != "timeline", bool(due.about), due.kind, order.get(due.about, 0))
    ):
        if not _has_matter(study, due.kind):
            continue
        suits = list(range(_from(study, weeks, due), len(weeks) - 1)) or [len(weeks) - 1]
        having = [holder for holder in holders if holder.has(due)]
        best = min(suits, key=lambda w: (_load(weeks[w], having), w))
        weeks[best] = replace(weeks[best], due=(*weeks[best].due, due))
    return weeks


def _from(study: Study, weeks: Sequence[Week], due: SheetDue) -> int:
    """The first week, from 0, in which a loose sheet makes sense."""
    if due.about:
        return next((w for w, week in enumerate(weeks) if due.about in {str(work.id) for work in week.works}), 0)
    if due.kind != _OF_PICTURES and due.kind not in _OF_A_PICTURE:
        return 1
    pictured = sum(work.image is not None for work in study.works)
    met = 0
    for w, week in enumerate(weeks):
        met += sum(work.image is not None for work in week.works)
        # the game has cards of all pictures; for a drawing half of them are enough to choose from
        if met >= pictured if due.kind == _OF_PICTURES else 2 * met >= pictured:
            return w
    return 0


def _has_matter(study: Study, kind: str) -> bool:
    """True if the study has what such a sheet is made of: events, pictures, or places with degrees."""
    pictures = sum(work.image is not None for work in study.works)
    if kind == "timeline":
        return bool(study.timeline)
    if kind == "where-in-the-world":
        return any(spot and spot.lat is not None for spot in (study.place, *(work.held_at for work in study.works)))
    if kind == _OF_PICTURES:
        return pictures > 1
    return kind not in _OF_A_PICTURE or pictures > 0


def _load(week: Week, holders: Sequence[Holder]) -> int:
    """Minutes of a week for those who have a sheet, to tell light weeks from full ones."""
    quiet = longest([load_of(holder, week) for holder in holders])
    return quiet + week.making_minutes + sum(p.minutes for p in (*_talk(week), *_reading(week)))


def _talk(week: Week) -> list[Part]:
    """What is done together at the table, in order."""
    # looking back over the whole study takes in last week
    recalled = week.number > 1 and (week.chapters or not week.review)
    parts = [Part("recall", minutes.MINUTES["recall"])] if recalled else []
    parts += [Part("tell", minutes.MINUTES["tell"], str(chapter.title)) for chapter in week.chapters]
    parts += [Part("look", minutes.MINUTES["look"], str(work.title)) for work in (*week.works, *week.again)]
    if week.works and not week.chapters:
        parts.append(Part("tell", minutes.MINUTES["tell"], str(week.works[0].title)))
    return [*parts, Part("review", minutes.MINUTES["review"])] if week.review else parts


def _reading(week: Week) -> list[Part]:
    """Reading aloud, which can be done at another time."""
    return [Part("read", minutes.of_chapter(chapter), str(chapter.title)) for chapter in week.chapters]


def _sheets(week: Week, holders: Sequence[Holder]) -> list[Part]:
    """The sheets a child does by itself, a part for each kind: as long as the child takes who has most of them."""
    found = []
    for kind in week.sheets:
        due = [due for due in week.due if due.kind == kind]
        most = max((sum(holder.has(one) for one in due) for holder in holders), default=0)
        if kind not in MAKINGS and most:
            found.append(Part(kind, most * minutes.of_sheet(kind), due[0].about if len(due) == 1 else ""))
    return found


def _timed(study: Study, week: Week, allowed: int, holders: Sequence[Holder]) -> Week:
    """The week with its parts laid into its sittings: talk first, then whatever else the minutes hold."""
    table: list[list[Part]] = [[] for _ in week.sittings]
    other: list[Part] = []
    taken = {m.sitting for m in week.makings}
    quiet = [s for s in range(len(table)) if s not in taken]

    def lay(part: Part, places: list[int]) -> bool:
        for s in places:
            if sum(p.minutes for p in table[s]) + part.minutes <= allowed:
                table[s].append(part)
                return True
        return False

    for part in _talk(week):
        # only looking may wait for the week's next sitting; if all are full it stays on the first and is said
        if part.name != "look" or not lay(part, quiet):
            table[0].append(part)
    life = [Part("life", minutes.MINUTES["life"], str(study.study))] if week.number == 1 else []
    for part in (*life, *_reading(week), *_sheets(week, holders)):
        # a chapter is read before it is told back, so on the first sitting or before it
        places = [s for s in quiet if s == 0] if part.name in ("life", "read") else quiet
        if not lay(part, places):
            other.append(part)
    for making in week.makings:
        part = Part(making.kind, making.minutes, making.title)
        (other if making.sitting is None else table[making.sitting]).append(part)
    sittings = tuple(
        replace(s, parts=tuple(sorted(parts, key=_rank))) for s, parts in zip(week.sittings, table, strict=True)
    )
    spare = not (week.chapters or week.works or week.due or week.review or week.number == 1)
    loads = tuple(load_of(holder, week) for holder in holders)
    return replace(week, sittings=sittings, other=tuple(other), spare=spare, loads=loads)


def _rank(part: Part) -> int:
    return _ORDER.index(part.name) if part.name in _ORDER else len(_ORDER)


def _recalling(study: Study, weeks: list[Week]) -> Iterable[Week]:
    """The weeks with what the last week that dealt with something was about."""
    last: tuple[Recalled, ...] = ()
    for week in weeks:
        yield replace(week, recall=last)
        held = [Recalled("life", str(study.study))] if week.number == 1 else []
        held += [Recalled("chapter", str(chapter.title)) for chapter in week.chapters]
        held += [Recalled("work", str(work.title)) for work in week.works]
        held += [Recalled(m.kind, m.title) for m in week.makings]
        last = tuple(held) or last
