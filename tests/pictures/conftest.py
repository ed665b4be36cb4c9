"""The six pictures as files, and one store for the session."""

from __future__ import annotations

from pathlib import Path

import pytest
from picture_kinds import KINDS

from packgen.pictures.load import Store


@pytest.fixture(scope="session")
def six(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The six pictures as files, by kind."""
    folder = tmp_path_factory.mktemp("six")
    paths = {}
    for name, draw in KINDS.items():
        paths[name] = folder / f"{name}.png"
        draw().save(paths[name])
    return paths


@pytest.fixture(scope="session")
def store(tmp_path_factory: pytest.TempPathFactory) -> Store:
    """One store for the whole session, so that line art is made once."""
    return Store(tmp_path_factory.mktemp("store"))
