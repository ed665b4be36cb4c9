"""What is sure without laying out: nothing else is left out of a check, and nothing that could be wrong is sure."""

from __future__ import annotations

import random
import string
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from packgen.all_made import all_made
from packgen.checking import check
from packgen.pictures.cellar import Cellar
from packgen.resources import cache_folder
from packgen.sure import Sure, ordinary
from packgen.workshop import Order, open_workshop, read_all

EXAMPLES = Path(__file__).resolve().parents[1] / "examples"
FAMILY = """\
family: Ferrar
paper: A4
printer: {sides: two-sided-long-edge, margin: 8 mm}
term: {starts: 2027-02-03, weeks: 9, on: Wednesday}
children:
  - {name: Rhea, age: 14, pack: upper}
  - {name: Juno, age: 11, pack: older}
  - {name: Bram, age: 8, pack: younger}
  - {name: Wilf, age: 4, pack: first}
"""
STUDY = """\
study: Isaure Quenby
kind: both
in_short: Lamp-maker who measured the tides.
timeline:
  - {when: 1851, what: Makes her first lamp}
challenges:
  - {title: A weight on a thread, brief: Time how long a weight swings., model: pendulum, given: {length: 50 cm}}
models:
  - {title: The lamp house, solid: prism, given: {sides: 8, across: 5.2 m, height: 6.1 m}}
"""


def left(order: Order) -> list[tuple[str, str]]:
    """(pack, sheet) of what a check would have to lay out."""
    sure = Sure(read_all(order), order.study, Cellar(cache_folder()))
    return [(pack.folder, item.sheet) for pack in sure.left() for item in pack.items]


@pytest.fixture
def order(tmp_path: Path) -> Order:
    (tmp_path / "study.yaml").write_text(STUDY)
    (tmp_path / "family.yaml").write_text(FAMILY)
    return Order(tmp_path / "study.yaml", tmp_path / "family.yaml")


def test_what_was_checked_is_not_laid_out_again_until_it_changes(order: Order) -> None:
    assert check(order) == ()
    assert left(order) == []
    order.study.write_text(STUDY.replace("1851, what: Makes", "1852, what: Built").replace("measured", "mapped"))
    assert left(order) == []  # short texts about the whole study fit every sheet
    order.study.write_text(STUDY.replace("length: 50 cm", "length: 60 cm"))
    assert {sheet for _, sheet in left(order)} == {"challenge", "results"}
    assert order.family
    order.family.write_text(FAMILY.replace("{name: Bram, age: 8", "{name: Bram, age: 8, tint: true"))
    assert {pack for pack, _ in left(replace(order, paper="Letter"))} == {"rhea", "juno", "bram", "wilf"}
    order.study.write_text(STUDY)
    assert {pack for pack, _ in left(order)} == {"bram"}
    assert check(order) == ()
    assert left(order) == []


def test_what_is_wrong_is_told_again_and_again(order: Order) -> None:
    order.study.write_text(STUDY.replace("sides: 8", "sides: 800"))
    first = check(order)
    assert len(first) == 1 and "sides" in first[0].message
    assert check(order) == first


def test_a_text_beyond_the_ordinary_is_laid_out(order: Order) -> None:
    check(order)
    order.study.write_text(STUDY.replace("Makes her first lamp", "lamp " * 60))
    assert ("juno", "timeline") in left(order)
    order.study.write_text(STUDY.replace("Makes her first lamp", "L" * 60))
    assert ("juno", "timeline") in left(order)


@pytest.mark.parametrize("wish", ["larger_type: true", "wider_spacing: true", "book: slit"])
def test_a_child_with_type_or_a_book_of_its_own_is_laid_out(order: Order, wish: str) -> None:
    check(order)
    assert order.family
    order.family.write_text(FAMILY.replace("age: 8", f"age: 8, {wish}"))
    assert ("bram", "fold-book") in left(order)


def test_a_wording_of_the_familys_own_is_laid_out(order: Order) -> None:
    check(order)
    (order.study.parent / "templates").mkdir()
    assert ("juno", "biography") in left(order)


def words(dice: random.Random, most: int) -> str:
    """A text of the most letters, its words of all lengths up to the longest ordinary one."""
    text = ""
    while len(text) < most:
        long = min(dice.randint(2, 24), most - len(text))
        text += "".join(dice.choices(string.ascii_lowercase + "mw", k=long)) + " "
    return text[:most].strip().capitalize()


def fullest(place: Path, dice: random.Random, slim: bool) -> str:
    """A study with as much in it as an ordinary one can have, and the picture it shows."""
    Image.new("RGB", (1400, 700) if slim else (700, 1400), (200, 120, 40)).save(place / "picture.png")

    def say(most: int) -> str:
        return words(dice, most)

    lines = [f"study: {say(40)}", "kind: both", f"in_short: {say(90)}", "born: 1801", "died: 1890",
             "portrait: picture.png", f"place: {{name: {say(40)}, lat: 50, lon: -4}}", f"note: {say(200)}",
             "book:", f"  title: {say(50)}", f"  author: {say(40)}", "  chapters:"]  # fmt: skip
    lines += [f"    - {{title: {say(50)}, pages: 1-9}}" for _ in range(24)]
    lines += ["life:", *(f"  {level}: {say(2500)}" for level in ("first", "younger", "older")), "timeline:"]
    lines += [f"  - {{when: {1801 + dice.randrange(60)}, what: {say(90)}, short: {say(40)}}}" for _ in range(24)]
    lines += ["works:"]
    for k in range(8):
        lines += [f"  - id: work-{k}", f"    title: {say(50)}", "    image: picture.png", f"    medium: {say(40)}",
                  f"    held: {say(60)}", f"    tell: {say(320)}", "    when: c. 1851"]  # fmt: skip
        for key, count, most in (
            ("look", 4, 100),
            ("answers", 4, 145),
            ("look_first", 3, 70),
            ("answers_first", 3, 85),
        ):
            lines.append(f"    {key}: [{', '.join(say(most) for _ in range(count))}]")
    lines += [f"{key}: [{', '.join(say(140) for _ in range(12))}]" for key in ("obstacles", "facts")]
    lines += ["words:"] + [f"  - {{word: {say(24)}, means: {say(75)}}}" for _ in range(20)]
    lines += ["challenges:", f"  - {{title: {say(50)}, brief: {say(240)}, materials: ["]
    lines += ["    " + ", ".join(f"{{item: {say(60)}, amount: 3, unit: {say(12)}}}" for _ in range(12)) + "]}"]
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize(("paper", "slim"), [("A4", True), ("Letter", False)])
def test_the_fullest_ordinary_study_has_no_fault_on_a_sheet_about_the_whole(
    order: Order, tmp_path: Path, paper: str, slim: bool
) -> None:
    order = replace(order, paper=paper)
    order.study.write_text(fullest(tmp_path, random.Random(1834), slim))
    plans = read_all(order)
    assert ordinary(plans.study, plans.family)
    whole = tuple(
        replace(pack, items=tuple(item for item in pack.items if item.subject is plans.study)) for pack in plans.packs
    )
    shop = open_workshop(order, plans=replace(plans, packs=whole))
    faults = [fault for one in all_made(order, shop, None, 1, None) for fault in one.faults]
    assert faults == []


@pytest.mark.parametrize("name", ["isaure-quenby", "tomasz-orrelin"])
def test_the_examples_are_ordinary(name: str) -> None:
    plans = read_all(Order(EXAMPLES / name / "study.yaml", EXAMPLES / "ferrar.yaml"))
    assert plans.shipped and ordinary(plans.study, plans.family)
