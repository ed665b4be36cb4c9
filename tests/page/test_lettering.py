"""Letters that cannot be set are told at the place where they were written, wherever that is."""

from dataclasses import replace
from pathlib import Path

import pytest
from page_marks import FACES

from packgen.faults import Place, Said
from packgen.page.lettering import all_said, letter_faults
from packgen.reading.models import Child, Family, Study, Word

AT = Place("study.yaml", 7, 3)
STUDY = Study(Said("Isaure Quenby"), Said("inventor"), Said("Invented."), Path())


@pytest.mark.parametrize(
    "name", ["Jiří Trnka", "Елена Щукина", "Ελένη", "Nguyễn Ánh", "田中一村", "陈小月", "Ævar Þór", "½ ‘x’ – …"]
)
def test_scripts_with_a_face_are_no_fault(name: str) -> None:
    assert letter_faults(FACES, replace(STUDY, study=Said(name, AT))) == ()


@pytest.mark.parametrize(
    ("text", "word"),
    [("שרה", "right to left"), ("سلام", "right to left"), ("सूरज", "Devanagari"), ("ไทย", "Thai"), ("한글", "Hangul"),
     ("a 🙂", "face")],
)  # fmt: skip
def test_other_scripts_are_refused_by_name_at_their_place(text: str, word: str) -> None:
    (fault,) = letter_faults(FACES, replace(STUDY, words=(Word(Said("ebb"), Said(text, AT)),)))
    assert fault.place == AT and fault.instead
    assert word.lower() in fault.message.lower() or word == "face"


def test_a_childs_name_is_looked_at_too() -> None:
    family = Family(Said("F"), (Child(Said("นก", AT), 5),))
    assert [fault.place for fault in letter_faults(FACES, STUDY, family)] == [AT]


def test_every_text_is_found_whatever_record_it_is_in() -> None:
    study = replace(STUDY, words=(Word(Said("ebb"), Said("out")),), life=(("older", Said("Long.")),))
    assert [str(s) for s in all_said(study)] == ["Isaure Quenby", "inventor", "Invented.", "Long.", "ebb", "out"]
