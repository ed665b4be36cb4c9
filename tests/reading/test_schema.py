"""The JSON Schemas are valid, current, documented, and as wide as the reader."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml
from broken_files import CASES
from reading_files import CHILD, PACKS, RECIPE, STUDY, read_text

import packgen
from packgen.reading.family import read_family
from packgen.reading.family_keys import FAMILY
from packgen.reading.recipe import RECIPE as RECIPE_KEYS
from packgen.reading.recipe import find_recipes, read_recipe
from packgen.reading.schema import (
    DIALECT,
    family_schema,
    recipe_schema,
    results_schema,
    schema_text,
    study_schema,
    write_schemas,
)
from packgen.reading.study import read_study
from packgen.reading.study_keys import STUDY as STUDY_KEYS

SCHEMAS = {"study": study_schema(), "family": family_schema(), "recipe": recipe_schema()}
WITH_RESULTS = {**SCHEMAS, "results": results_schema()}
STORED = Path(packgen.__file__).parent / "schema"
ROOT = Path(packgen.__file__).parent.parent


def records(schema: Any) -> Iterator[dict[str, Any]]:
    """Every object with properties in a schema, at any depth."""
    if isinstance(schema, dict):
        if "properties" in schema:
            yield schema
        for value in schema.values():
            yield from records(value)
    elif isinstance(schema, list):
        for value in schema:
            yield from records(value)


def as_an_editor_sees(text: str) -> Any:
    """The data of a file with the types YAML 1.2 editors give it: numbers, true and false, and nothing."""

    kinds = (":int", ":float", ":null")
    rules = yaml.SafeLoader.yaml_implicit_resolvers.items()
    numbers = {letter: [(tag, rule) for tag, rule in known if tag.endswith(kinds)] for letter, known in rules}
    editor = type("Editor", (yaml.SafeLoader,), {"yaml_implicit_resolvers": numbers})
    truth = re.compile("true|True|TRUE|false|False|FALSE")
    editor.add_implicit_resolver("tag:yaml.org,2002:bool", truth, list("tTfF"))
    return yaml.load(text, Loader=editor)


def validate(kind: str, data: Any) -> None:
    jsonschema.Draft202012Validator(WITH_RESULTS[kind]).validate(data)


@pytest.mark.parametrize("kind", WITH_RESULTS)
def test_the_schema_is_valid_and_stored_as_it_is_made(kind: str) -> None:
    jsonschema.Draft202012Validator.check_schema(WITH_RESULTS[kind])
    assert WITH_RESULTS[kind]["$schema"] == DIALECT
    assert (STORED / f"{kind}.json").read_text(encoding="utf-8") == schema_text(WITH_RESULTS[kind])


def test_writing_gives_the_stored_files(tmp_path: Path) -> None:
    for path in write_schemas(tmp_path / "new"):
        assert path.read_bytes() == (STORED / path.name).read_bytes()
    assert {p.name for p in STORED.iterdir()} == {p.name for p in (tmp_path / "new").iterdir()}


@pytest.mark.parametrize("kind", WITH_RESULTS)
def test_every_key_is_described(kind: str) -> None:
    for record in records(WITH_RESULTS[kind]):
        for key, about in record["properties"].items():
            assert about.get("description", "").strip(), (kind, key)
            assert about["description"] == about["description"].strip()
        assert record.get("description")


@pytest.mark.parametrize("kind", SCHEMAS)
def test_every_example_is_valid_and_reads_without_a_fault(kind: str, tmp_path: Path) -> None:
    table = {"study": STUDY_KEYS, "family": FAMILY, "recipe": RECIPE_KEYS}[kind]
    start = {"study": STUDY, "family": CHILD, "recipe": RECIPE}[kind]
    (tmp_path / "fonts").mkdir()
    (tmp_path / "fonts" / "Own.ttf").touch()
    for key in table.keys:
        example = key.example
        if example is None or f"{key.name}:" in start or key.name == "portrait":
            continue
        text = f"{start}{key.name}: {json.dumps(example)}\n"
        validate(kind, as_an_editor_sees(text))
        assert read_text(tmp_path, kind, text)[1] == (), key.name


@pytest.mark.parametrize("name", CASES)
def test_what_the_reader_takes_the_schema_takes(name: str) -> None:
    kind, _, mended = CASES[name]
    assert isinstance(mended, str)
    validate(kind, as_an_editor_sees(mended))


SHAPE_FAULTS = ["UNKNOWN_KEY", "MISSING", "NOT_CHOICE", "LIST_FOR_KEYS", "KEYS_FOR_TEXT", "NO_SHEET", "NAMES_WANTED"]


@pytest.mark.parametrize("name", SHAPE_FAULTS)
def test_what_has_the_wrong_shape_the_schema_refuses(name: str) -> None:
    kind, broken, _ = CASES[name]
    assert isinstance(broken, str)
    with pytest.raises(jsonschema.ValidationError):
        validate(kind, as_an_editor_sees(broken))


def test_other_spellings_of_keys_pass_the_schema() -> None:
    for key in ("in_short", "in short", "in-short"):
        validate("study", {"study": "x", "kind": "artist", key: "y"})
    for key in ("left handed", "left_handed", "left-handed"):
        validate("family", {"family": "x", "children": [{"name": "y", key: True}]})
    with pytest.raises(jsonschema.ValidationError):
        validate("study", {"study": "x", "kind": "artist"})


FILES = sorted(path for folder in ("examples", "packs") for path in (ROOT / folder).rglob("*.yaml"))


def kind_of(path: Path, text: str) -> str:
    if path.is_relative_to(ROOT / "packs"):
        return "recipe"
    kinds = {"family": "^family:", "results": "^results:"}
    return next((kind for kind, line in kinds.items() if re.search(line, text, re.MULTILINE)), "study")


def named_by_its_family(results: Path, folder: Path) -> Path:
    """A copy of the family file beside some results, with the line that names them taken up."""
    family = results.with_name(results.name.replace("-results", "")).read_text(encoding="utf-8")
    text, count = re.subn(f"^# (results: {results.name})", r"\1", family, flags=re.MULTILINE)
    assert count == 1
    (folder / results.name).write_bytes(results.read_bytes())
    (folder / "family.yaml").write_text(text, encoding="utf-8")
    return folder / "family.yaml"


@pytest.mark.parametrize("path", FILES, ids=[str(path.relative_to(ROOT)) for path in FILES])
def test_the_files_that_come_with_packgen_are_valid(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    validate(kind_of(path, text), as_an_editor_sees(text))


@pytest.mark.parametrize("path", FILES, ids=[str(path.relative_to(ROOT)) for path in FILES])
def test_the_files_that_come_with_packgen_read_without_a_fault(path: Path, tmp_path: Path) -> None:
    kind = kind_of(path, path.read_text(encoding="utf-8"))
    readers = {
        "recipe": read_recipe,
        "study": read_study,
        "family": lambda p: read_family(p, find_recipes([ROOT / "packs"]) or PACKS),
        "results": lambda p: read_family(named_by_its_family(p, tmp_path), find_recipes([ROOT / "packs"]) or PACKS),
    }
    value, faults = readers[kind](path)
    assert [str(fault) for fault in faults if fault.severity == "fault"] == []
    assert value is not None
