"""Everything that is read is frozen, so that it can be passed along and compared."""

from __future__ import annotations

import dataclasses
import inspect

from packgen.faults import NOWHERE
from packgen.reading import models
from packgen.reading.dates import read_when


def test_every_model_is_a_frozen_dataclass_that_knows_its_place() -> None:
    classes = [cls for _, cls in inspect.getmembers(models, inspect.isclass) if cls.__module__ == models.__name__]
    assert len(classes) > 20
    for cls in classes:
        assert dataclasses.is_dataclass(cls)
        assert cls.__dataclass_params__.frozen  # type: ignore[attr-defined]
        assert "__slots__" in vars(cls)
        defaults = {field.name: field.default for field in dataclasses.fields(cls)}
        assert defaults.get("at", NOWHERE) is NOWHERE
        assert not any(isinstance(default, list | dict | set) for default in defaults.values())


def test_a_span_lasts_and_an_unknown_moment_does_not() -> None:
    assert read_when("1862-1865").is_span
    assert read_when("since 1985").is_span
    assert not read_when("1860s").is_span
    assert not read_when("before 1850").is_span
    assert not read_when("1834").is_span
