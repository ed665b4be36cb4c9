"""The table of a family's keys agrees with the records it fills."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from packgen.reading import family_keys
from packgen.reading.fields import Record
from packgen.reading.models import Child, Family, Goal, Printer, Term

RECORDS: list[tuple[Record[Any], type]] = [
    (family_keys.FAMILY, Family),
    (family_keys.CHILD, Child),
    (family_keys.PRINTER, Printer),
    (family_keys.TERM, Term),
    (family_keys.GOAL, Goal),
]


@pytest.mark.parametrize(("record", "cls"), RECORDS, ids=[cls.__name__ for _, cls in RECORDS])
def test_every_field_has_a_key_and_every_key_a_field(record: Record[Any], cls: type) -> None:
    fields = {field.name for field in dataclasses.fields(cls)} - {"at", "folder"}
    assert {key.target for key in record.keys} == fields


@pytest.mark.parametrize("record", [record for record, _ in RECORDS], ids=[cls.__name__ for _, cls in RECORDS])
def test_no_two_keys_share_a_spelling(record: Record[Any]) -> None:
    spellings = [spelling for key in record.keys for spelling in key.spellings]
    assert len(spellings) == len(set(spellings))
