"""Faults as data: told with their place, in order, each once, the nearest word offered."""

from packgen.faults import (
    NOWHERE,
    Fault,
    InputFaults,
    Place,
    Said,
    Severity,
    WorkFailed,
    in_order,
    nearest,
    place_of,
    warning,
)


def test_a_fault_reads_as_place_kind_message_and_what_to_write() -> None:
    fault = Fault(Place("study.yaml", 3, 7), "`soon` is not a date.", "Write it such as 1834.")
    assert str(fault) == "study.yaml:3:7: fault: `soon` is not a date.\n    Write it such as 1834."
    assert str(warning(NOWHERE, "It is coarse.")) == "warning: It is coarse."
    assert str(Fault(Place("--pack"), "No.", "")) == "--pack: fault: No."


def test_faults_stand_in_the_order_of_the_file_each_once() -> None:
    one, two = Fault(Place("a", 9), "later", ""), Fault(Place("a", 2), "sooner", "")
    assert in_order([one, two, one, Fault(Place("a", 10), "last", "")])[:2] == (two, one)
    assert len(in_order([one, two, one])) == 2


def test_exceptions_carry_their_exit_codes_and_words() -> None:
    wrong = InputFaults([Fault(Place("b", 1), "second", ""), Fault(Place("a", 1), "first", "")])
    assert wrong.exit_code == 2 and str(wrong).splitlines()[0].endswith("first")
    assert WorkFailed("full").exit_code == 1
    assert Severity.WARNING != Severity.FAULT


def test_a_text_knows_its_place_and_is_text_everywhere_else() -> None:
    said = Said("ebb", Place("study.yaml", 4, 2))
    assert said == "ebb" and hash(said) == hash("ebb") and place_of(said).line == 4
    assert place_of("ebb") == NOWHERE and place_of(None) == NOWHERE


def test_the_nearest_word_is_offered_only_if_it_is_near() -> None:
    assert nearest("Timelin", ["timeline", "title"]) == "timeline"
    assert nearest("xyzzy", ["timeline", "title"]) is None
