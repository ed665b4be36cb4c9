"""packgen's own data is found in a checkout, and a missing part is told by name."""

import pytest

from packgen.resources import folder


@pytest.mark.parametrize(
    ("kind", "file"), [("templates", "common.j2"), ("packs", "older.yaml"), ("fonts", "Andika-Regular.ttf")]
)
def test_data_lies_where_it_is_looked_for(kind: str, file: str) -> None:
    assert (folder(kind) / file).is_file()


def test_what_is_missing_is_told() -> None:
    with pytest.raises(FileNotFoundError, match="packgen's own maps are missing"):
        folder("maps")
