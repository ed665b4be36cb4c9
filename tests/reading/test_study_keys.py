"""The table of a study's keys agrees with the records it fills."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from packgen.reading import challenge_keys, study_keys
from packgen.reading.fields import Record
from packgen.reading.models import (
    Book,
    Challenge,
    Chapter,
    Detail,
    Event,
    FaceArt,
    Hole,
    Material,
    Measure,
    Meeting,
    Model,
    Spot,
    Study,
    Word,
    Work,
)

# Fields that come from another key, or from no key at all.
DERIVED = {"at", "folder", "image_said", "portrait_said", "mesh_said", "drawing_said"}
SPELT_OUT = {"size"}
RECORDS: list[tuple[Record[Any], type]] = [
    (study_keys.STUDY, Study), (study_keys.PLACE, Spot), (study_keys.BOOK, Book), (study_keys.CHAPTER, Chapter),
    (study_keys.EVENT, Event), (study_keys.WORK, Work), (study_keys.DETAIL, Detail), (study_keys.WORD, Word),
    (study_keys.MEETING, Meeting),
    (challenge_keys.CHALLENGE, Challenge), (challenge_keys.MEASURE, Measure), (challenge_keys.MATERIAL, Material),
    (study_keys.MODEL, Model), (study_keys.HOLE, Hole), (study_keys.FACE, FaceArt),
]  # fmt: skip


@pytest.mark.parametrize(("record", "cls"), RECORDS, ids=[cls.__name__ for _, cls in RECORDS])
def test_every_field_has_a_key_and_every_key_a_field(record: Record[Any], cls: type) -> None:
    fields = {field.name for field in dataclasses.fields(cls)} - DERIVED
    assert {key.target for key in record.keys} - SPELT_OUT == fields


@pytest.mark.parametrize("record", [record for record, _ in RECORDS], ids=[cls.__name__ for _, cls in RECORDS])
def test_no_two_keys_share_a_spelling(record: Record[Any]) -> None:
    spellings = [spelling for key in record.keys for spelling in key.spellings]
    assert len(spellings) == len(set(spellings))
    assert record.alone == "" or record.find(record.alone)
