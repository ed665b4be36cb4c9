"""Whole packs, each built once for all tests that read them."""

from __future__ import annotations

from pathlib import Path

import pytest
from built import EXAMPLES, ORRELIN, QUENBY, Maker, Packs, make
from households import LETTER_GREY, ONE_SIDED_WIDE_MARGIN, SHORT_EDGE


@pytest.fixture(scope="session")
def maker(tmp_path_factory: pytest.TempPathFactory) -> Maker:
    def made(study: Path, family: str) -> Packs:
        home = tmp_path_factory.mktemp("home")
        (home / "family.yaml").write_text(family, encoding="utf-8")
        return make(study, home / "family.yaml", tmp_path_factory.mktemp("out"))

    return made


@pytest.fixture(scope="session")
def example(maker: Maker) -> Packs:
    """The example inventor for the example family: A4, two-sided on the long edge, a margin of 6 mm, colour."""
    return maker(QUENBY, (EXAMPLES / "ferrar.yaml").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def letter(maker: Maker) -> Packs:
    """All four levels on Letter in black and white."""
    return maker(QUENBY, LETTER_GREY)


@pytest.fixture(scope="session")
def one_sided(maker: Maker) -> Packs:
    """A4 on a printer that prints one side only and cannot reach the outer 12 mm."""
    return maker(QUENBY, ONE_SIDED_WIDE_MARGIN)


@pytest.fixture(scope="session")
def short_edge(maker: Maker) -> Packs:
    """The example painter on Letter, on a printer that flips on the short edge; larger type, other books."""
    return maker(ORRELIN, SHORT_EDGE)


ALL = ("example", "letter", "one_sided", "short_edge")


@pytest.fixture(params=ALL)
def packs(request: pytest.FixtureRequest) -> Packs:
    """Each of the built packs in turn."""
    found: Packs = request.getfixturevalue(request.param)
    return found
