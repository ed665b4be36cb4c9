"""Solids are found by their place, and the package is pure geometry."""

import dataclasses
import importlib
import pkgutil
import subprocess
import sys
from pathlib import Path

import packgen.nets
from packgen.nets import catalogue, solids

FOLDER = Path(solids.__file__).parent


def test_every_file_in_the_folder_is_a_solid_and_there_are_no_others():
    files = {p.stem.replace("_", "-") for p in FOLDER.glob("*.py")} - {"--init--"}
    assert {e.name for e in catalogue()} == files


def test_the_solids_the_study_file_promises_are_there():
    promised = (
        "cuboid open-box lidded-box prism pyramid frustum antiprism tetrahedron cube octahedron dodecahedron "
        "icosahedron cuboctahedron truncated-icosahedron cone truncated-cone cylinder tower gabled-house bridge-pier "
        "stepped-pyramid pyramid-canopy cone-canopy bladed-wheel wound-strip mesh"
    )
    assert set(promised.split()) <= {e.name for e in catalogue()}


def test_every_value_class_is_frozen():
    for info in pkgutil.walk_packages(packgen.nets.__path__, "packgen.nets."):
        module = importlib.import_module(info.name)
        for value in vars(module).values():
            if isinstance(value, type) and dataclasses.is_dataclass(value):
                assert value.__dataclass_params__.frozen, value


def test_importing_the_nets_loads_no_pdf_yaml_picture_or_terminal_library():
    code = "import sys, packgen.nets; print(*sorted({m.split('.')[0] for m in sys.modules}))"
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(out.stdout.split())
    assert not loaded & {"reportlab", "yaml", "PIL", "click", "jinja2", "pypdf", "qrcode", "pypdfium2"}


def test_nets_do_not_depend_on_the_hash_seed():
    code = (
        "from packgen.nets import build, lay_out\n"
        "print(lay_out(build('dodecahedron', {'edge': 25}), 190, 277, 'fit'))\n"
        "print(lay_out(build('tower', {'sides': 9, 'side': 40, 'height': 90, 'roof': 80}), 190, 277, 'true'))"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, check=True, env={"PYTHONHASHSEED": seed}
        ).stdout
        for seed in ("1", "77")
    }
    assert len(runs) == 1
