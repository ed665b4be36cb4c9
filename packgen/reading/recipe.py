"""A recipe file of packs/ -> a frozen `Recipe`, with every fault found on the way; and where the recipes lie."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from packgen.faults import Fault, Said, in_order
from packgen.reading import messages
from packgen.reading.fields import Defs, Key, Many, Notes, Record, Schema
from packgen.reading.messages import Misread
from packgen.reading.models import LEVELS, Recipe, RecipeSheet
from packgen.reading.names import key_form, snippet
from packgen.reading.values import choice, identifier, known_name, measure, number, prose, type_size, whole
from packgen.reading.yaml_tree import Leaf, Listing, Mapping, Node, read_tree

LEAST = "    pack: older\n    level: older\n    sheets: [biography, timeline]"
RECIPE_LEVELS = (*LEVELS, "parent")
MAX_SHEETS = 100

Option = str | tuple[object, ...]


def read_recipe(path: Path, sheets: Collection[str] = ()) -> tuple[Recipe | None, tuple[Fault, ...]]:
    """The recipe, and its faults and warnings in order of place. `sheets` are those that exist; empty, any is taken."""
    tree = read_tree(path, LEAST)
    if not isinstance(tree.root, Mapping):
        return None, in_order(tree.faults)
    notes = Notes(path.parent, tree.gaps, known={"sheets": tuple(sheets)})
    recipe = RECIPE.read(tree.root, notes)
    if recipe is not None and key_form(recipe.pack) != key_form(path.stem):
        notes.add(messages.PACK_NAME, recipe.pack.at, stem=snippet(path.stem), pack=snippet(recipe.pack))
    return recipe, in_order((*tree.faults, *notes.faults))


def find_recipes(folders: Sequence[Path]) -> dict[str, Path]:
    """The recipe files by pack name, in order of name; of two with the same name the one in the first folder."""
    found: dict[str, Path] = {}
    for folder in folders:
        for path in _files(folder):
            found.setdefault(path.stem, path)
    return dict(sorted(found.items()))


def _files(folder: Path) -> Iterable[Path]:
    if not folder.is_dir():
        return ()
    return sorted(p for p in folder.iterdir() if p.suffix in (".yaml", ".yml") and p.is_file() and p.stem[0] != ".")


@dataclass(frozen=True, slots=True)
class SheetItem:
    """A sheet's name, alone or as `sheet:` among its options."""

    def read(self, node: Node, notes: Notes) -> RecipeSheet | None:
        """The sheet with its options as written."""
        if isinstance(node, Leaf):
            sheet = self._sheet(node, notes)
            return RecipeSheet(sheet, (), node.at) if sheet else None
        name = node.find("sheet") if isinstance(node, Mapping) else None
        if not isinstance(node, Mapping) or not isinstance(name, Leaf) or name.is_nothing:
            notes.add(messages.NO_SHEET, node.at)
            return None
        sheet = self._sheet(name, notes)
        options = tuple((key, option_value(value)) for key, value in node.pairs if key_form(key) != "sheet")
        return RecipeSheet(sheet, options, node.at) if sheet else None

    @staticmethod
    def _sheet(node: Leaf, notes: Notes) -> Said | None:
        try:
            return known_name(node.text, notes.known.get("sheets", ()), messages.UNKNOWN_SHEET)
        except Misread as misread:
            notes.faults.append(misread.fault(node.at))
            return None

    def schema(self, defs: Defs) -> Schema:
        """A name, or an object with `sheet` and any options."""
        name: Schema = {"type": "string", "description": "A sheet of the catalogue.", "examples": ["timeline"]}
        about = "A sheet with its options; the catalogue lists them."
        whole_: Schema = {"type": "object", "description": about, "properties": {"sheet": name}, "required": ["sheet"]}
        return {"anyOf": [name, whole_]}


def option_value(node: Node) -> Option:
    """An option as plain, hashable data: text, a tuple of values for a list, (name, value) pairs for keys."""
    if isinstance(node, Leaf):
        return Said("", node.at) if node.is_nothing else node.text
    if isinstance(node, Listing):
        return tuple(option_value(item) for item in node.items)
    return tuple((key, option_value(value)) for key, value in node.pairs)


def _recipe(values: dict[str, Any], notes: Notes) -> Recipe:
    return Recipe(**{**values, "level": str(values["level"])})


RECIPE: Record[Recipe] = Record(
    "the recipe",
    "Which sheets a pack has, in which order and how they are made.",
    (
        Key("pack", identifier(), "The pack's name, the same as the file's.", "older", required=True),
        Key("level", choice(RECIPE_LEVELS), "first, younger, older, upper or parent.", "older", required=True),
        Key("about", prose(500), "A word about whom it suits.", "For children of 9 to 12."),
        Key("type size", type_size(2, 15), "The size of running text, in pt or mm.", "13 pt"),
        Key("writing", measure("length", 1.5, 30), "The height of small letters on ruled lines.", "5 mm"),
        Key("grade", number(-5, 20), "The highest reading grade its text should have.", 6),
        Key("trials", whole(1, 20), "Trials of each value in a challenge.", 3),
        Key("events", whole(1, 2000), "Events on the timeline; all if left out.", 12),
        Key("sheets", Many(SheetItem(), MAX_SHEETS), "The sheets, in order.", ["biography"], required=True),
    ),
    _recipe,
)
