"""What a sheet says about itself is read from its file, and is what its module says."""

from __future__ import annotations

import subprocess
import sys

import pytest

from packgen import sheets


@pytest.mark.parametrize("kind", sheets.kinds())
def test_a_sheet_is_known_by_its_file_as_by_its_module(kind: str) -> None:
    assert sheets.about(kind) == sheets._module(kind).SHEET


def test_what_sheets_there_are_is_known_without_loading_one() -> None:
    code = "import sys; from packgen import sheets; [sheets.about(k) for k in sheets.kinds()]; print(*sys.modules)"
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split()
    assert not [name for name in loaded if name.startswith(("packgen.sheets.", "packgen.page.desk", "reportlab"))]
