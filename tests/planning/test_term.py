from datetime import date, timedelta

from hypothesis import example, given, settings
from planning_studies import family, studies, study, term, terms

from packgen.planning.load import Holder, load_of
from packgen.planning.term import DEFAULT_KINDS, plan_term
from packgen.planning.weeks import SheetDue, TermPlan
from packgen.reading.models import Study, Term

SOME = settings(max_examples=120, deadline=None)


def monday(day: date) -> date:
    return day - timedelta(days=day.weekday())


def sittings(plan: TermPlan) -> list[date]:
    return [day for week in plan.weeks for day in week.dates]


@SOME
@given(studies(), terms())
@example(study(1, 0, 0, 0), term(weeks=1, away=()))
@example(study(0, 0, 0, 0), term(weeks=1))
def test_no_chapter_work_word_or_making_is_ever_lost(of: Study, when: Term) -> None:
    for plan in (plan_term(of, family(when)), plan_term(of)):
        told = [chapter for week in plan.weeks for chapter in week.chapters]
        assert told == list(of.book.chapters if of.book else ())
        assert sorted(work.id for week in plan.weeks for work in week.works) == [work.id for work in of.works]
        learned = [str(word.word) for week in plan.weeks for word in week.words]
        assert sorted(learned) == sorted(str(word.word) for word in of.words)
        made = {(making.kind, making.number) for week in plan.weeks for making in week.makings}
        challenges = {("challenge", i) for i in range(len(of.challenges))}
        models = {("model", i) for i in range(len(of.models))}
        assert made == challenges | models | {("fold-book", 0)}


@SOME
@given(studies(), terms())
def test_no_sitting_falls_in_a_week_away_or_outside_the_term(of: Study, when: Term) -> None:
    plan = plan_term(of, family(when))
    away = {monday(day) for day in when.away}
    days = sittings(plan)
    assert not away & {monday(day) for day in days}
    assert days == sorted(set(days))
    assert all(day >= when.starts and plan.is_sitting(day) for day in days)
    assert all(day < monday(when.starts) + timedelta(weeks=when.weeks + 1) for day in days)
    on = set(when.on) or {when.starts.weekday()}
    assert {day.weekday() for day in days} <= on
    if days:
        assert len(plan.weeks) + len(plan.away) == when.weeks


@SOME
@given(studies(), terms())
def test_minutes_are_never_exceeded_without_saying(of: Study, when: Term) -> None:
    plan = plan_term(of, family(when))
    over = [week.number for week in plan.weeks if any(s.minutes > when.minutes for s in week.sittings)]
    assert list(plan.over) == over
    said = " ".join(note for note in plan.notes if "minutes" in note)
    words = said.replace(",", " ").replace(".", " ").replace(";", " ").split()
    assert all(str(number) in words for number in over)


@SOME
@given(studies(), terms())
def test_a_work_is_met_in_the_week_of_the_first_chapter_that_speaks_of_it(of: Study, when: Term) -> None:
    plan = plan_term(of, family(when))
    for work in of.works:
        speaking = [week for week in plan.weeks if any(work.id in chapter.works for chapter in week.chapters)]
        if speaking:
            assert work in speaking[0].works
            assert all(work in week.again for week in speaking[1:])


@SOME
@given(studies(), terms())
def test_the_last_week_looks_back_and_every_week_recalls_what_went_before(of: Study, when: Term) -> None:
    plan = plan_term(of, family(when))
    assert [week.review for week in plan.weeks] == [False] * (len(plan.weeks) - 1) + [len(plan.weeks) > 1]
    assert plan.weeks[0].recall == ()
    for before, week in zip(plan.weeks, plan.weeks[1:], strict=False):
        titles = {item.title for item in week.recall}
        assert week.recall
        assert {str(chapter.title) for chapter in before.chapters} <= titles


@SOME
@given(studies(), terms())
def test_everything_in_a_week_has_minutes_at_the_table_or_at_another_time(of: Study, when: Term) -> None:
    for week in plan_term(of, family(when)).weeks:
        parts = [part for sitting in week.sittings for part in sitting.parts] + list(week.other)
        assert all(part.minutes > 0 for part in parts)
        assert sum(part.name == "read" for part in parts) == len(week.chapters)
        assert sum(part.name == "look" for part in parts) == len(week.works) + len(week.again)
        for making in week.makings:
            held = week.other if making.sitting is None else week.sittings[making.sitting].parts
            assert any((part.name, part.title) == (making.kind, making.title) for part in held)


@SOME
@given(studies(), terms())
def test_every_sheet_is_due_in_a_week_and_can_be_found(of: Study, when: Term) -> None:
    plan = plan_term(of, family(when))
    for i, chapter in enumerate(of.book.chapters if of.book else ()):
        week = plan.week_of("telling", str(chapter.title))
        assert week is not None and of.book is not None and of.book.chapters[i] in week.chapters
    for work in of.works:
        week = plan.week_of("picture-study", str(work.id))
        assert week is not None and work in week.works
    for kind in ("biography", "timeline", "fold-book"):
        assert plan.week_of(kind) is not None


def test_the_weeks_of_the_example_term_are_nine_with_one_away() -> None:
    plan = plan_term(study(), family(term()))
    # Wednesdays from 3 February to 31 March 2027 without 17 March, counted off a calendar
    assert sittings(plan) == [date(2027, 2, d) for d in (3, 10, 17, 24)] + [date(2027, 3, d) for d in (3, 10, 24, 31)]
    assert [week.starts for week in plan.away] == [date(2027, 3, 15)]
    assert not plan.is_sitting(date(2027, 3, 17))
    found = plan.week_on(date(2027, 3, 24))
    assert found is not None and found.number == 7


def test_a_date_away_on_another_weekday_drops_its_week() -> None:
    plan = plan_term(study(), family(term(away=(date(2027, 3, 15),))))
    assert date(2027, 3, 17) not in sittings(plan)
    assert date(2027, 3, 10) in sittings(plan)


def test_a_term_that_starts_after_its_weekday_starts_in_the_next_week() -> None:
    # 4 February 2027 is a Thursday; the first Wednesday after it is the 10th
    plan = plan_term(study(), family(term(weeks=2, starts=date(2027, 2, 4), away=())))
    assert sittings(plan) == [date(2027, 2, 10), date(2027, 2, 17)]


def test_with_a_second_day_the_makings_take_it() -> None:
    plan = plan_term(study(5, 4, 2, 1), family(term(weeks=8, on=(0, 3), away=(), starts=date(2027, 2, 1))))
    placed = [making.sitting for week in plan.weeks for making in week.makings]
    assert placed and all(sitting == 1 for sitting in placed)


def test_makings_have_weeks_of_their_own_when_there_are_enough() -> None:
    plan = plan_term(study(4, 4, 2, 1), family(term(weeks=12, away=())))
    for week in plan.weeks:
        assert not (week.makings and week.chapters)
    assert not any("more makings" in note for note in plan.notes)


def test_more_makings_than_weeks_are_balanced_and_said() -> None:
    plan = plan_term(study(4, 0, 7, 6), family(term(weeks=4, away=())))
    counts = [len(week.makings) for week in plan.weeks]
    assert sum(counts) == 14 and counts[-1] == 0  # the last week is kept for looking back
    assert max(counts[:-1]) - min(counts[:-1]) <= 1
    assert any("needs an afternoon of its own" in note for note in plan.notes)
    assert any("In weeks 1, 2 and 3 there is more than one making" in note for note in plan.notes)


def test_more_chapters_than_weeks_share_weeks_and_this_is_said() -> None:
    plan = plan_term(study(10, 0, 0, 0), family(term(weeks=4, away=())))
    assert [len(week.chapters) for week in plan.weeks] == [2, 3, 3, 2]
    assert any("Ten chapters in four weeks" in note for note in plan.notes)


def test_too_many_weeks_are_left_open_and_this_is_said() -> None:
    plan = plan_term(study(3, 0, 0, 0, words=0), family(term(weeks=12, away=())))
    spare = [week.number for week in plan.weeks if week.spare]
    assert spare
    assert any("left open" in note and str(spare[0]) in note for note in plan.notes)


def test_without_a_book_the_works_lead_the_weeks() -> None:
    plan = plan_term(study(0, 6, 0, 0), family(term(weeks=9)))
    assert [len(week.works) for week in plan.weeks if week.works] == [1] * 6


def test_without_a_term_there_are_as_many_weeks_as_the_study_needs() -> None:
    plan = plan_term(study(8, 6, 3, 2))
    # 8 chapters, 5 makings and the book, and looking back
    assert len(plan.weeks) == 15
    assert not plan.dated
    assert not any(week.spare for week in plan.weeks)
    assert len(plan_term(study(0, 0, 0, 0)).weeks) >= 1


def test_a_term_wholly_away_gives_undated_weeks_and_says_so() -> None:
    plan = plan_term(study(), family(term(weeks=1, away=(date(2027, 2, 3),))))
    assert not plan.dated
    assert any("Every week of the term is a week away" in note for note in plan.notes)


def test_sheets_and_makings_that_no_child_has_are_not_planned() -> None:
    plan = plan_term(study(), family(term()), DEFAULT_KINDS - {"model", "words", "timeline"})
    assert all(making.kind != "model" for week in plan.weeks for making in week.makings)
    assert not {"model", "words", "timeline"} & {kind for week in plan.weeks for kind in week.sheets}


def test_a_sheet_kind_of_next_year_gets_a_week_too() -> None:
    plan = plan_term(study(), family(term()), DEFAULT_KINDS | {"moon-diary"})
    assert plan.week_of("moon-diary") is not None


def test_sheets_of_a_picture_need_a_picture() -> None:
    plan = plan_term(study(pictured=False), family(term()))
    assert plan.week_of("enlarging-grid") is None
    assert plan.week_of("picture-study") is None


def test_a_plan_is_a_value_that_can_be_hashed() -> None:
    assert len({plan_term(study(), family(term())), plan_term(study(), family(term()))}) == 1


DRAWN = ("enlarging-grid", "finish-the-picture", "colour-by-number", "look-closer")
HOLDERS = (
    Holder("juno", "older", frozenset({SheetDue(kind, f"work-{i}") for kind in DRAWN for i in range(3)})),
    Holder("bram", "younger", frozenset({SheetDue("look-closer", "work-4"), SheetDue("matching-game")})),
)


@SOME
@given(studies(), terms())
def test_each_drawing_sheet_has_one_week_and_not_before_its_picture_is_looked_at(of: Study, when: Term) -> None:
    plan = plan_term(of, family(when), holders=HOLDERS)
    there = {str(work.id) for work in of.works}
    for due in {due for holder in HOLDERS for due in holder.sheets if not due.about or due.about in there}:
        weeks = [week.number for week in plan.weeks if due in week.due]
        if due.about:
            looked = next(week.number for week in plan.weeks if due.about in {work.id for work in week.works})
            assert len(weeks) == 1 and weeks[0] >= looked
            found = plan.week_of(due.kind, due.about)
            assert found is not None and found.number == weeks[0]
        else:
            assert len(weeks) == (len(of.works) > 1)
            # the game's cards show every picture: not before the last of them has been looked at
            assert not weeks or weeks[0] >= max(week.number for week in plan.weeks if week.works)


@SOME
@given(studies(), terms())
def test_a_weeks_minutes_are_the_sum_of_its_parts(of: Study, when: Term) -> None:
    for week in plan_term(of, family(when), holders=HOLDERS).weeks:
        assert week.loads == tuple(load_of(holder, week) for holder in HOLDERS)
        own = max(load.talk + load.more for load in week.loads)
        parts = [
            part.minutes for part in week.parts if part.name in ("recall", "life", "read", "tell", "look", "review")
        ]
        assert week.minutes == sum(parts) + own + sum(making.minutes for making in week.makings)
        assert week.talk_minutes + week.reading_minutes == sum(parts)


def test_a_challenge_takes_longer_with_more_children_who_test_in_turn() -> None:
    told = study(2, 0, 1, 0)
    made = frozenset({SheetDue("challenge", "Challenge 0")})

    def takes(*levels: str) -> int:
        holders = [Holder(str(k), level, made) for k, level in enumerate(levels)]
        plan = plan_term(told, family(term(weeks=2, away=())), holders=holders)
        return sum(making.minutes for week in plan.weeks for making in week.makings)

    # 40 to plan and build, 15 to test for each child; the youngest works beside the others
    assert takes("older") == 55
    assert takes("older", "younger", "first") == 70
    assert takes("first") == 55


def test_the_last_week_has_no_more_chapters_than_the_others() -> None:
    for chapters in range(9, 16):
        counts = [len(week.chapters) for week in plan_term(study(chapters, 0), family(term())).weeks]
        assert counts[-1] == min(counts)


def test_a_sheet_that_every_child_leaves_out_is_in_no_week() -> None:
    plan = plan_term(study(), family(term()), holders=HOLDERS)
    assert not any(week.makings for week in plan.weeks)
    assert {due.kind for week in plan.weeks for due in week.due} <= {*DRAWN, "matching-game"}
