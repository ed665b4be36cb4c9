from datetime import date, timedelta

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from planning_studies import family, studies, study, term, terms

from packgen.page.wording import Wording
from packgen.planning.calendar import Event, as_icalendar, calendar_text, escaped, folded
from packgen.planning.people import Person, people
from packgen.planning.print_plan import NumberedSheet, RunInfo
from packgen.planning.term import plan_term
from packgen.planning.weeks import TermPlan
from packgen.reading.models import Family, Study, Term
from packgen.resources import folder

STAMP = date(2027, 2, 3)
TEXTS = st.text(st.characters(exclude_categories=("Cs",)), max_size=200)


WORDING = Wording([folder("templates")])


def written(of: Study, home: Family | None, plan: TermPlan) -> str:
    def say(key: str, **values: object) -> str:
        return WORDING.say("term-plan", "parent", key, {"study": of, **values})

    return calendar_text(of, home, plan, people(home, ()) if home else (), say)


def example() -> str:
    home = family(term())
    return written(study(), home, plan_term(study(), home))


def sat(text: str) -> list[icalendar.Event]:
    """The entries of sittings."""
    return [event for event in read(text) if ", week " in event["SUMMARY"]]


def read(text: str) -> list[icalendar.Event]:
    return list(icalendar.Calendar.from_ical(text).walk("VEVENT"))


@pytest.mark.parametrize(
    ("octets", "lines"),
    # RFC 5545, section 3.1: at most 75 octets a line; a further line begins with a space, which counts
    [(75, [75]), (76, [75, 2]), (149, [75, 75]), (150, [75, 75, 2]), (160, [75, 75, 12])],
)
def test_lines_are_folded_at_75_octets(octets: int, lines: list[int]) -> None:
    assert [len(line) for line in folded("x" * octets).split("\r\n")] == lines


def test_folding_counts_octets_and_cuts_no_character() -> None:
    # `SUMMARY:` and 50 letters of two octets are 108 octets: 74 fit, as the 75th would cut a letter
    parts = folded("SUMMARY:" + "é" * 50).split("\r\n")
    assert [len(part.encode()) for part in parts] == [74, 35]


@given(TEXTS.filter(lambda text: "\r" not in text and "\n" not in text))
def test_unfolding_gives_the_line_back(line: str) -> None:
    assert folded(line).replace("\r\n ", "") == line
    assert all(len(part.encode()) <= 75 for part in folded(line).split("\r\n"))


def test_text_is_escaped_as_the_standard_says() -> None:
    # RFC 5545, section 3.3.11: its example, and the four escapes; a colon is not escaped
    said = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    assert escaped(said) == r"Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    assert escaped("a\\b;c,d:e") == r"a\\b\;c\,d:e"
    assert escaped("bell\x07 and\x85line") == r"bell and\nline"


def test_all_lines_end_in_crlf_and_none_is_too_long() -> None:
    text = example()
    assert text.endswith("END:VCALENDAR\r\n")
    assert "\n" not in text.replace("\r\n", "")
    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))


def test_the_calendar_has_what_the_standard_requires() -> None:
    calendar = icalendar.Calendar.from_ical(example())
    # RFC 5545, sections 3.6 and 3.6.1: VERSION and PRODID; UID, DTSTAMP and DTSTART once in each event
    assert calendar["VERSION"] == "2.0"
    assert calendar["PRODID"]
    for event in calendar.walk("VEVENT"):
        assert all(name in event for name in ("UID", "DTSTAMP", "DTSTART", "SUMMARY"))
        assert event["DTSTAMP"].to_ical() == b"20270203T000000Z"


def test_there_is_one_all_day_event_a_sitting_and_none_in_the_week_away() -> None:
    events = sat(example())
    days = [event["DTSTART"].dt for event in events]
    assert days == [date(2027, 2, d) for d in (3, 10, 17, 24)] + [date(2027, 3, d) for d in (3, 10, 24, 31)]
    # RFC 5545, section 3.6.1: DTEND of a day event is the day after
    assert all(event["DTEND"].dt - event["DTSTART"].dt == timedelta(days=1) for event in events)
    assert all(type(day) is date for day in days)
    assert all(event["TRANSP"] == "TRANSPARENT" for event in events)


def test_events_keep_their_identifier_when_the_plan_changes() -> None:
    home, moved = family(term()), family(term(starts=date(2027, 2, 10), away=()))
    before = [event["UID"] for event in sat(written(study(), home, plan_term(study(), home)))]
    after = [event["UID"] for event in sat(written(study(5), moved, plan_term(study(5), moved)))]
    assert before == after[: len(before)]
    assert len(set(after)) == len(after)


def test_another_study_or_year_has_other_identifiers() -> None:
    home, later = family(term()), family(term(starts=date(2028, 2, 2), away=()))
    now = {event["UID"] for event in read(written(study(), home, plan_term(study(), home)))}
    assert not now & {event["UID"] for event in read(written(study(), later, plan_term(study(), later)))}


def test_the_same_plan_gives_the_same_calendar() -> None:
    assert example() == example()


def test_an_entry_says_what_to_do_in_the_order_it_is_done() -> None:
    event = sat(example())[1]
    assert event["SUMMARY"] == "Isaure Quenby, week 2: Chapter 1"
    lines = event["DESCRIPTION"].split("\n")
    assert lines[0] == "Beforehand: Read: Chapter 1, pages 11-14 (8 min)"
    assert (
        lines[1] == "At the table (10 min): Recall (1 min); Tell back: Chapter 1 (5 min); Look and talk: Work 1 (4 min)"
    )
    assert lines[2].startswith("Sheets for Juno, Bram and Wilf: tell it back")
    assert len(lines) == len(set(lines))


def test_the_evening_before_an_alarm_says_what_to_have_ready() -> None:
    # RFC 5545, section 3.6.6: a DISPLAY alarm has ACTION, DESCRIPTION and TRIGGER; section 3.3.6: -PT6H is six hours
    for event in read(example()):
        (alarm,) = event.walk("VALARM")
        assert alarm["ACTION"] == "DISPLAY"
        assert alarm["TRIGGER"].dt == timedelta(hours=-6)
    told = sat(example())[1].walk("VALARM")[0]["DESCRIPTION"]
    assert "Tomorrow: Isaure Quenby, week 2" in told and "Have ready: tell it back" in told
    assert "Beforehand: Read: Chapter 1" in told


def test_the_book_is_remembered_two_weeks_before_the_first_sitting() -> None:
    first = read(example())[0]
    assert first["DTSTART"].dt == date(2027, 1, 20)
    assert "Borrow or buy the book: “The Lamp on the Quay”" in first["DESCRIPTION"]


def test_a_making_without_a_sitting_has_an_entry_on_the_saturday() -> None:
    home = family(term())
    plan = plan_term(study(), home)
    made = [event for event in read(example()) if "to make: " in event["SUMMARY"]]
    apart = [making for week in plan.weeks for making in week.makings if making.sitting is None]
    assert len(made) == len(apart) > 0
    assert all(event["DTSTART"].dt.weekday() == 5 for event in made)


def test_two_makings_of_a_week_have_two_days() -> None:
    home, told = family(term(away=())), study(8, 0, 5, 4)
    plan = plan_term(told, home)
    made = [event["DTSTART"].dt for event in read(written(told, home, plan)) if "to make: " in event["SUMMARY"]]
    assert len(made) == 10 > len(plan.weeks) - 1
    assert len(set(made)) == len(made) and {day.weekday() for day in made} == {4, 5}


def test_two_chapters_of_a_week_are_read_on_two_evenings() -> None:
    home, told = family(term(away=(), weeks=8)), study(9, 0, 0, 0)
    events = read(written(told, home, plan_term(told, home)))
    (first,) = (event for event in events if "this evening: " in event["SUMMARY"])
    sitting = next(event for event in events if ", week 5: " in event["SUMMARY"])
    # the sitting is on Wednesday 3 March: one chapter on Monday evening, the other on the eve of the sitting
    assert first["DTSTART"].dt == date(2027, 3, 1) and "Chapter 4" in first["SUMMARY"]
    assert first.walk("VALARM")[0]["TRIGGER"].dt == timedelta(hours=18)
    eve = sitting.walk("VALARM")[0]["DESCRIPTION"]
    assert "Chapter 5, pages" in eve and "Chapter 4, pages" not in eve
    assert "Read on two evenings, a chapter each." in sitting["DESCRIPTION"]


def test_a_plan_without_dates_has_no_calendar() -> None:
    assert written(study(), None, plan_term(study())) == ""


@settings(max_examples=40, deadline=None)
@given(TEXTS, TEXTS)
def test_any_text_comes_back_from_a_calendar_program(summary: str, description: str) -> None:
    text = as_icalendar([Event(STAMP, "key", "s" + summary, "d" + description, "e" + summary)], "name", STAMP)
    (event,) = read(text)
    assert len(event.walk("VALARM")) == 1
    said = "\n".join(("d" + description).splitlines())
    assert event["DESCRIPTION"] == "".join(c for c in said if c in "\t\n" or not (ord(c) < 32 or 127 <= ord(c) < 160))


@settings(max_examples=40, deadline=None)
@given(studies(), terms())
def test_every_sitting_of_any_plan_is_in_the_calendar(of: Study, when: Term) -> None:
    home = family(when)
    plan = plan_term(of, home)
    text = written(of, home, plan)
    days = [day for week in plan.weeks for day in week.dates]
    assert [event["DTSTART"].dt for event in sat(text)] == days if days else text == ""
    if days:
        events = read(text)
        assert [event["DTSTART"].dt for event in events] == sorted(event["DTSTART"].dt for event in events)
        assert len({event["UID"] for event in events}) == len(events)


def test_sheets_go_by_their_numbers_and_printed_titles() -> None:
    home, told = family(term()), study()
    plan = plan_term(told, home)
    look = NumberedSheet("Juno", 4, "Look, cover, tell", "picture-study", "Picture study: Work 0", week=1)
    made = NumberedSheet("Juno", 5, "Challenge 0", "challenge", "Challenge: Challenge 0", week=1)
    run = RunInfo("juno/1-plain.pdf", "Juno", "plain", "one-sided", 1, 2, 2, sheets=(look, made))
    juno = Person("Juno", "J", "older", folder="juno")

    def say(key: str, **values: object) -> str:
        return WORDING.say("term-plan", "parent", key, {"study": told, **values})

    first = sat(calendar_text(told, home, plan, (juno,), say, (run,)))[0]
    assert "Sheets for Juno: 4 Look, cover, tell: Work 0" in first["DESCRIPTION"].split("\n")
    assert "Have ready: Juno: 4 Look, cover, tell: Work 0" in first.walk("VALARM")[0]["DESCRIPTION"]
    assert "picture study" not in first["DESCRIPTION"]
