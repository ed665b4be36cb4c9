"""The order of the layers, one door for each library, and the sizes of files and functions."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1] / "packgen"
ORDER = (
    ("faults", "units", "resources", "__init__"),
    ("reading",),
    ("folding", "nets", "trials"),
    ("pictures",),
    ("planning",),
    ("page",),
    ("sheets",),
    ("printed",),
    ("writing",),
    ("known_names",),
    ("workshop",),
    ("sure", "making"),
    ("hands",),
    ("all_made",),
    ("checking",),
    ("build", "starter", "catalogue", "fold_command"),
    ("cli",),
    ("__main__",),
)
RANK = {name: rank for rank, names in enumerate(ORDER) for name in names}
DOORS = {
    "click": ("cli.py",),
    "yaml": ("reading/",),
    "jinja2": ("page/wording.py",),
    "reportlab": ("writing/", "page/type.py"),
    "qrcode": ("page/qr.py",),
    "shapely": ("nets/",),
    "PIL": ("pictures/",),
    "numpy": ("pictures/",),
    "cv2": ("pictures/opencv.py",),
    "pypdf": ("writing/",),
    "pypdfium2": ("writing/",),
}
PURE = ("folding", "nets", "trials")
FILES = sorted(ROOT.rglob("*.py"))


def _imports(path: Path) -> list[str]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    found: list[str] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            found += [f"{node.module}.{alias.name}" for alias in node.names]
    return found


def _layer(path: Path) -> str:
    return path.relative_to(ROOT).parts[0].removesuffix(".py")


@pytest.mark.parametrize("path", FILES, ids=lambda p: str(p.relative_to(ROOT)))
def test_a_module_imports_only_from_the_layers_before_its_own(path: Path) -> None:
    layer = _layer(path)
    for name in _imports(path):
        parts = name.split(".")
        if parts[0] == "packgen" and len(parts) > 1 and parts[1] in RANK:
            assert RANK[parts[1]] <= RANK[layer], f"{layer} may not import {name}"
            if layer in PURE and parts[1] != layer:
                assert RANK[parts[1]] == 0, f"{layer} is pure and may not import {name}"


@pytest.mark.parametrize("path", FILES, ids=lambda p: str(p.relative_to(ROOT)))
def test_each_library_has_one_door(path: Path) -> None:
    inside = path.relative_to(ROOT).as_posix()
    for name in _imports(path):
        doors = DOORS.get(name.split(".")[0])
        assert doors is None or any(inside.startswith(door) for door in doors), f"{name} is imported in {inside}"


def test_sheets_never_import_each_other() -> None:
    for path in sorted((ROOT / "sheets").glob("*.py")):
        if path.name != "__init__.py":
            assert not [name for name in _imports(path) if name.startswith("packgen.sheets")], path.name


@pytest.mark.parametrize("path", FILES, ids=lambda p: str(p.relative_to(ROOT)))
def test_files_have_at_most_400_lines_and_functions_50(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.count("\n") <= 400
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.FunctionDef):
            assert (node.end_lineno or 0) - node.lineno < 50, node.name


def test_only_the_command_line_prints() -> None:
    for path in FILES:
        names = {n.id for n in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(n, ast.Name)}
        assert "print" not in names, path
