"""The wheel carries everything packgen needs, and runs from where it is unpacked."""

from __future__ import annotations

import os
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest
from hatchling.builders.wheel import WheelBuilder

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel as pip would build it."""
    folder = tmp_path_factory.mktemp("wheel")
    return Path(next(WheelBuilder(str(ROOT)).build(directory=str(folder), versions=["standard"])))


def names(wheel: Path) -> set[str]:
    with zipfile.ZipFile(wheel) as packed:
        return set(packed.namelist())


def files(folder: str) -> set[str]:
    """Every file packgen has in a folder of the checkout, by its path there."""
    return {
        p.relative_to(ROOT / folder).as_posix() for p in (ROOT / folder).rglob("*")
        if p.is_file() and "__pycache__" not in p.parts
    }  # fmt: skip


def test_the_wheel_holds_the_package_and_its_data(wheel: Path) -> None:
    packed = names(wheel)
    assert {f"packgen/{path}" for path in files("packgen")} <= packed
    assert {f"packgen/templates/{path}" for path in files("templates")} <= packed
    assert {f"packgen/packs/{path}" for path in files("packs")} <= packed
    for path in ("fonts/Andika-Regular.ttf", "pictures/data/land-110m.json", "schema/study.json"):
        assert f"packgen/{path}" in packed


def test_every_font_in_the_wheel_has_its_licence_beside_it(wheel: Path) -> None:
    fonts = {Path(name).name for name in names(wheel) if name.startswith("packgen/fonts/")}
    licences = {name.removesuffix("-LICENSE.txt") for name in fonts if name.endswith("-LICENSE.txt")}
    for name in fonts:
        if name.endswith(".ttf"):
            family = name.split("-")[0].removesuffix(".ttf")
            named = {"PackgenDisplay": "Fredoka", "DroidSansFallbackFull": "DroidSansFallback"}.get(family, family)
            assert named in licences, name


def test_the_wheel_has_no_tests_examples_or_leftovers(wheel: Path) -> None:
    for name in names(wheel):
        assert name.startswith(("packgen/", "packgen-"))
        assert "__pycache__" not in name and not name.endswith((".pyc", ".orig", ".rej"))


def test_the_wheel_names_its_command_and_licence(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as packed:
        info = next(name for name in packed.namelist() if name.endswith("METADATA")).rsplit("/", 1)[0]
        told = packed.read(f"{info}/METADATA").decode()
        assert "packgen = packgen.cli:main" in packed.read(f"{info}/entry_points.txt").decode()
    assert "Requires-Python: >=3.11" in told and "MIT" in told


def test_an_unpacked_wheel_makes_and_builds_a_study(wheel: Path, tmp_path: Path) -> None:
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(tmp_path / "site")
    env = {**os.environ, "PYTHONPATH": str(tmp_path / "site"), "PYTHONSAFEPATH": "1"}
    where = [sys.executable, "-c", "import packgen; print(packgen.__file__)"]
    shown = subprocess.run(where, cwd=tmp_path, env=env, capture_output=True, text=True, check=True).stdout
    assert shown.startswith(str(tmp_path / "site"))
    for args in (
        ("new", "my", "--who", "Oda Brann"),
        ("build", "my/study.yaml", "--family", "my/family.yaml", "--only", "biography", "--only", "fold-book"),
        ("catalogue",),
        ("printer-page", "--out", "page.pdf"),
    ):
        ran = subprocess.run(
            [sys.executable, "-m", "packgen", *args], cwd=tmp_path, env=env, capture_output=True, text=True, check=False
        )
        assert ran.returncode == 0 and not ran.stderr, ran.stderr
    assert list((tmp_path / "out" / "oda-brann").rglob("*.pdf")) and (tmp_path / "page.pdf").is_file()


def test_what_is_imported_is_declared() -> None:
    """Every library a module of packgen imports is among its dependencies."""
    import ast

    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    said = {line.split(">")[0].lower() for line in project["dependencies"]}
    declared = {{"pyyaml": "yaml", "pillow": "PIL", "opencv-python-headless": "cv2"}.get(name, name) for name in said}
    for path in (ROOT / "packgen").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            modules = [a.name for a in node.names] if isinstance(node, ast.Import) else []
            modules += [node.module] if isinstance(node, ast.ImportFrom) and node.module and not node.level else []
            for module in modules:
                top = module.split(".")[0]
                assert top in declared or top in sys.stdlib_module_names or top == "packgen", (path.name, module)
