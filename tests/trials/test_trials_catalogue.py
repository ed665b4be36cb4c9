"""The catalogue of challenge models."""

from pathlib import Path

import packgen.trials.models as folder
from packgen.trials.catalogue import catalogue
from packgen.trials.frame import tidy
from packgen.trials.models import models


def test_every_file_is_a_model_with_a_line_and_a_test():
    files = {p.stem for p in Path(folder.__file__).parent.glob("*.py")} - {"__init__"}
    keys = {name.replace("_", "-") for name in files}
    assert keys == set(models()) == {line.key for line in catalogue()}
    tests = {p.stem.removeprefix("test_") for p in (Path(__file__).parent / "models").glob("test_*.py")}
    assert tests == files


def test_no_two_models_share_a_name():
    names = [tidy(name) for model in models().values() for name in {model.key, *model.also}]
    assert len(names) == len(set(names))


def test_lines_tell_ranges_units_and_defaults():
    canopy = next(line for line in catalogue() if line.key == "canopy")
    inputs = {i.name: i for i in canopy.inputs}
    assert inputs["canopy side"].allowed == "40 mm to 2000 mm"
    assert inputs["canopy"].allowed == "flat, cone, hemisphere, square-pyramid"
    assert inputs["canopy"].default == "flat"
    assert inputs["load mass"].default == ""
    assert inputs["canopy height"].default == "may be left out"
    assert canopy.measures == ("time to fall (s)", "steady speed (m/s)")
    assert canopy.source.startswith("NASA")


def test_a_customary_catalogue_speaks_inches():
    canopy = next(line for line in catalogue("customary") if line.key == "canopy")
    assert next(i for i in canopy.inputs if i.name == "canopy side").allowed == "1.575 in to 78.74 in"


def test_the_challenges_of_the_design_are_all_there():
    named = {"canopy", "glide", "cup-rotor", "bladed-rotor", "pendulum", "lever", "ramp", "rolling", "launched-ball",
             "paper-beam", "boat-load", "gears", "pulleys", "wheel", "water-clock", "shadow-clock", "pinhole",
             "sounding-pipe", "strings", "picture-disc", "periscope"}  # fmt: skip
    assert named <= set(models())
