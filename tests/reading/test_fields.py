"""The declarative reader: one description gives the reading, the messages and the schema."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from reading_files import is_case_of

from packgen.faults import NOWHERE, Place, Said
from packgen.reading import messages
from packgen.reading.fields import Key, Many, Notes, Pairs, Record, making, or_nothing
from packgen.reading.values import name, whole
from packgen.reading.yaml_tree import Mapping, parse_tree


@dataclass(frozen=True, slots=True)
class Boat:
    name: Said
    masts: int = 1
    tow_line: Said | None = None
    at: Place = NOWHERE


BOAT: Record[Boat] = Record(
    "a boat",
    "A boat of the harbour.",
    (
        Key("name", name(), "What she is called.", "Tern", required=True, aliases=("title",)),
        Key("masts", whole(1, 5), "How many masts she has.", 2),
        Key("tow line", name(), "What she is towed by.", "a rope"),
    ),
    making(Boat),
    alone="name",
)


@dataclass(frozen=True, slots=True)
class Fleet:
    boats: tuple[Boat, ...] = ()
    at: Place = NOWHERE


FLEET: Record[Fleet] = Record("a fleet", "Boats.", (Key("boats", Many(BOAT, 3), "The boats."),), making(Fleet))


def read(text: str, record: Record[Boat] | Record[Fleet] = BOAT) -> tuple[object, list[str]]:
    tree = parse_tree(text, "f")
    assert isinstance(tree.root, Mapping)
    notes = Notes(Path("."), tree.gaps)
    value = record.read(tree.root, notes)
    return value, [f"{f.place.line}:{f.place.column} {f.message} {f.instead}" for f in notes.faults]


def test_keys_are_read_in_any_spelling_and_by_their_other_names() -> None:
    for text in ("name: Tern\ntow line: rope\n", "title: Tern\nTow-Line: rope\n", "Name: Tern\ntow_line: rope\n"):
        boat, faults = read(text)
        assert faults == []
        assert isinstance(boat, Boat)
        assert (boat.name, boat.tow_line, boat.masts) == ("Tern", "rope", 1)


def test_defaults_are_those_of_the_record() -> None:
    boat, _ = read("name: Tern\nmasts:\n")
    assert isinstance(boat, Boat) and boat.masts == 1


def test_every_fault_of_a_record_is_told() -> None:
    boat, faults = read("nmae: Tern\nmasts: many\ncolour: red\ntow line: [a, b]\n")
    assert isinstance(boat, Boat) and boat.name == "Tern"
    assert len(faults) == 4
    assert "Write `name`." in faults[0]
    assert any("Its keys are: name, masts, tow line." in fault for fault in faults)


def test_a_key_and_its_other_name_are_one_key_given_twice() -> None:
    _, faults = read("name: Tern\ntitle: Gull\n")
    assert len(faults) == 1 and "twice" in faults[0] and faults[0].startswith("2:1")


def test_a_bare_text_stands_for_the_main_key_and_one_for_a_list() -> None:
    for text in ("boats: Tern\n", "boats: [Tern]\n", "boats: {name: Tern}\n", "boats:\n  - name: Tern\n"):
        fleet, faults = read(text, FLEET)
        assert faults == []
        assert isinstance(fleet, Fleet) and [boat.name for boat in fleet.boats] == ["Tern"]


def test_items_with_faults_are_left_out_and_the_rest_is_read() -> None:
    fleet, faults = read("boats: [{masts: 2}, Tern, {name: Gull, masts: 9}]\n", FLEET)
    assert isinstance(fleet, Fleet) and [boat.name for boat in fleet.boats] == ["Tern", "Gull"]
    assert len(faults) == 2


def test_a_list_longer_than_its_limit_is_told_and_cut() -> None:
    fleet, faults = read("boats: [a, b, c, d]\n", FLEET)
    assert isinstance(fleet, Fleet) and len(fleet.boats) == 3
    assert faults[0].startswith("1:18")


def test_an_inner_key_in_the_wrong_place_is_told_where_it_belongs() -> None:
    _, faults = read("masts: 2\n", FLEET)
    assert "below `boats:`" in faults[0]


def test_nothing_is_missed_in_a_file_that_was_read_with_gaps() -> None:
    tree = parse_tree("name Tern\nmasts: 2\n", "f")
    assert isinstance(tree.root, Mapping)
    notes = Notes(Path("."), tree.gaps)
    assert BOAT.read(tree.root, notes) is None
    assert notes.faults == []


def test_pairs_are_spelt_out_into_records() -> None:
    shape = Pairs(BOAT, "name", "masts", lambda key: key != "nonsense", 10)
    tree = parse_tree("one: [Tern: 2, {name: Gull}]\ntwo: {Tern: 2, Gull: 3}\nthree: [{nonsense: 2}]\n", "f")
    assert isinstance(tree.root, Mapping)
    notes = Notes(Path("."))
    one, two, three = (shape.read(node, notes) for _, node in tree.root.pairs)
    assert [(b.name, b.masts) for b in one] == [("Tern", 2), ("Gull", 1)]
    assert [(b.name, b.masts) for b in two] == [("Tern", 2), ("Gull", 3)]
    assert three == ()
    assert [is_case_of(f, messages.UNKNOWN_KEY) for f in notes.faults] == [True, False]


def test_the_schema_describes_every_key_and_lets_every_spelling_pass() -> None:
    schema = BOAT.full_schema({})
    assert list(schema["properties"]) == ["name", "masts", "tow line"]
    assert all(key["description"] for key in schema["properties"].values())
    assert schema["additionalProperties"] is False
    assert schema["allOf"] == [{"anyOf": [{"required": ["name"]}, {"required": ["title"]}]}]
    assert "^(tow_line|tow-line)$" in schema["patternProperties"]


def test_a_record_is_defined_once_in_the_schema() -> None:
    defs: dict[str, dict[str, object]] = {}
    FLEET.full_schema(defs)
    assert list(defs) == ["boat"]


def test_optional_values_may_be_empty_in_the_schema() -> None:
    assert or_nothing({"type": "string"}) == {"anyOf": [{"type": "string"}, {"type": "null"}]}
    assert or_nothing({"type": "string"}, required=True) == {"type": "string"}
