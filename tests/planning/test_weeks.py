from datetime import date

from packgen.planning.weeks import AwayWeek, Part, SheetDue, Sitting, TermPlan, Week

DAY = date(2027, 2, 3)
FIRST = Week(1, (Sitting(DAY, (Part("tell", 5), Part("look", 4))),), due=(SheetDue("picture-study", "work-1"),))
SECOND = Week(2, (Sitting(None),), due=(SheetDue("picture-study", "work-2"), SheetDue("words"), SheetDue("words")),
              other=(Part("read", 8),))  # fmt: skip
PLAN = TermPlan((FIRST, SECOND), 10)


def test_minutes_are_those_of_the_table_and_of_other_times() -> None:
    assert FIRST.minutes == 9
    assert SECOND.minutes == 8


def test_dates_leave_out_sittings_without_a_day() -> None:
    assert FIRST.dates == (DAY,)
    assert SECOND.dates == ()
    assert PLAN.dated and not TermPlan((SECOND,), 10).dated


def test_each_kind_of_sheet_is_named_once() -> None:
    assert SECOND.sheets == ("picture-study", "words")


def test_a_sheet_is_found_by_what_it_is_about_or_else_by_its_kind() -> None:
    assert PLAN.week_of("picture-study", "work-2") is SECOND
    assert PLAN.week_of("picture-study") is FIRST
    assert PLAN.week_of("picture-study", "no such work") is FIRST
    assert PLAN.week_of("model") is None


def test_a_week_away_runs_from_monday_to_sunday() -> None:
    # 15 March 2027 is a Monday
    assert AwayWeek(date(2027, 3, 15)).ends == date(2027, 3, 21)
