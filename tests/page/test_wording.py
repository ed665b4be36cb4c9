"""Wordings: the nearest template wins, a family's own comes first, and what a study says is never parsed."""

from pathlib import Path

import pytest

from packgen.faults import WorkFailed
from packgen.page.wording import Wording
from packgen.resources import folder


def wording(tmp_path: Path, **files: str) -> Wording:
    for name, text in files.items():
        path = tmp_path / name.replace("__", "/")
        path = path.with_name(path.name + ".j2")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return Wording([tmp_path, folder("templates")])


def block(key: str, text: str) -> str:
    return "{% block " + key + " %}" + text + "{% endblock %}"


def test_the_level_comes_before_the_sheet_and_the_sheet_before_all(tmp_path: Path) -> None:
    said = wording(
        tmp_path, words__first=block("a", "first"), words__common=block("a", "words") + block("b", "words"),
        common=block("a", "all") + block("b", "all") + block("c", "all"),
    )  # fmt: skip
    assert [said.say("words", "first", key, {}) for key in "abc"] == ["first", "words", "all"]
    assert said.say("words", "older", "a", {}) == "words"


def test_a_familys_own_wording_replaces_packgens_one_by_one(tmp_path: Path) -> None:
    own = wording(tmp_path, common=block("date", "Datum"))
    assert own.say("", "older", "date", {}) == "Datum"
    assert own.has("fold-book", "older", "by") and not own.has("fold-book", "older", "nowhere")


def test_a_wording_is_one_line_or_several(tmp_path: Path) -> None:
    said = wording(tmp_path, common=block("a", "\n  one\n\n  two  words \n"))
    assert said.say("x", "older", "a", {}) == "one two words"
    assert said.lines("x", "older", "a", {}) == ("one", "two words")


def test_values_are_set_in_as_they_are(tmp_path: Path) -> None:
    said = wording(tmp_path, common=block("a", "Who was {{ who }}?"))
    for evil in ("{{ 7 * 7 }}", "{% raw %}", "<b>&amp;", "#{x}"):
        assert said.say("x", "older", "a", {"who": evil}) == f"Who was {evil}?"


@pytest.mark.parametrize(
    "text", ["{{ who.__class__.__mro__ }}", "{{ nobody }}", "{{ ''.__class__ }}", "{{ who.items.append(1) }}"]
)
def test_a_template_cannot_reach_into_the_program(tmp_path: Path, text: str) -> None:
    class Who:
        items: list[int] = []  # noqa: RUF012

    said = wording(tmp_path, common=block("a", text))
    with pytest.raises(WorkFailed, match=r"common\.j2 does not render"):
        said.say("x", "older", "a", {"who": Who()})


def test_a_missing_or_broken_wording_is_told_by_name(tmp_path: Path) -> None:
    with pytest.raises(WorkFailed, match='no template has the wording "nowhere" for the sheet "words"'):
        wording(tmp_path).say("words", "older", "nowhere", {})
    with pytest.raises(WorkFailed, match=r"words/first\.j2 cannot be read"):
        wording(tmp_path, words__first="{% block a %}no end").say("words", "first", "a", {})
