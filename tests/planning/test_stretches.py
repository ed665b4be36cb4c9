from packgen.faults import Said
from packgen.planning.stretches import busiest, longest_gap
from packgen.reading.dates import read_when
from packgen.reading.models import Event

# From the life of I. K. Brunel (Oxford DNB): born 1806, Thames Tunnel 1825-1843, Clifton contest 1829, Great Western
# Railway 1833, Great Western 1838, Great Britain 1843, Great Eastern launched 1858, died 1859.
BRUNEL = ("1806", "1825-1843", "1829", "1833", "1838", "1843", "1858", "1859")


def events(*whens: str) -> list[Event]:
    return [Event(read_when(when), Said(f"In {when}")) for when in whens]


def test_the_busiest_ten_years_are_the_first_in_which_most_events_begin() -> None:
    found = busiest(events(*BRUNEL))
    assert found and (found.first, found.last, found.count) == (1825, 1834, 3)


def test_the_longest_gap_runs_from_the_end_of_one_event_to_the_next() -> None:
    found = longest_gap(events(*BRUNEL))
    assert found and (found.first, found.last) == (1806, 1825)
    spanned = longest_gap(events("1806", "1807-1840", "1843", "1858"))
    assert spanned and (spanned.first, spanned.last) == (1843, 1858)


def test_few_events_and_years_before_christ_are_not_told() -> None:
    assert busiest(events("1806", "1859")) is None and longest_gap(events("1806", "1859")) is None
    assert busiest(events("44 BC", "1806", "1825", "1859")) is None
