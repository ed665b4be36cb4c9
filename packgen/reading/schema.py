"""JSON Schemas (draft 2020-12) of the files, made from the same tables that read them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from packgen.reading.family_keys import FAMILY
from packgen.reading.fields import Defs, Record, Schema
from packgen.reading.recipe import RECIPE
from packgen.reading.results_keys import RESULTS
from packgen.reading.study_keys import STUDY

DIALECT = "https://json-schema.org/draft/2020-12/schema"
NAMES = ("study", "family", "recipe", "results")


def study_schema() -> Schema:
    """The schema of a study file."""
    return _schema("A packgen study", STUDY)


def family_schema() -> Schema:
    """The schema of a family file."""
    return _schema("A packgen family", FAMILY)


def recipe_schema() -> Schema:
    """The schema of a recipe in packs/."""
    return _schema("A packgen recipe", RECIPE)


def results_schema() -> Schema:
    """The schema of a file of results that a family file names."""
    return _schema("Results of a packgen family", RESULTS)


def write_schemas(folder: Path) -> tuple[Path, ...]:
    """Writes study.json, family.json, recipe.json and results.json into a folder, and gives their paths."""
    folder.mkdir(parents=True, exist_ok=True)
    paths = []
    schemas = (study_schema(), family_schema(), recipe_schema(), results_schema())
    for name, schema in zip(NAMES, schemas, strict=True):
        path = folder / f"{name}.json"
        path.write_text(schema_text(schema), encoding="utf-8", newline="\n")
        paths.append(path)
    return tuple(paths)


def schema_text(schema: Schema) -> str:
    """The schema as it is stored."""
    return json.dumps(schema, indent=2, ensure_ascii=False) + "\n"


def _schema(title: str, record: Record[Any]) -> Schema:
    defs: Defs = {}
    full = record.full_schema(defs)
    return {"$schema": DIALECT, "title": title, **full, "$defs": dict(sorted(defs.items()))}
