"""From a picture to a given number of closed areas, as a person would outline them, each with room for a crayon.

The picture is calmed until its parts are plain, cut where it changes (a watershed of its edges: S. Beucher and
C. Lantuéjoul, "Use of watersheds in contour detection", 1979), and its parts are joined two by two, those first whose
common border is least clear. What is too narrow to be coloured goes to its neighbours.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from packgen.pictures.calm import calmed, stretched
from packgen.pictures.cells import Plane, Values, eased, in_order, nearest_of, parted, without_thin
from packgen.pictures.graph import Graph, Room
from packgen.pictures.label_map import LabelMap, from_plane
from packgen.pictures.opencv import cv

_LAB = np.array([0.65, 1.2, 1.2], np.float32)  # a shadow on a thing changes lightness more than colour: no border
_CALM_REACH, _CALM_PASSES = 2, 2
_SPREAD_PX, _SPREAD_COLOUR = 10, 16  # of the mean shift
_OVER = 3  # px on each side over which a border's step is measured
_NO_STEP = 4.0  # px of calmed picture may differ by so much less than the picture itself
_MANY = 3  # times as many areas as wanted are left when the narrow ones go
_THIN = 0.5  # of the room wanted: what is thinner than twice this is worn away
_KEPT = 0.9  # of the room wanted, which rounding may take a little of
_ROUND = 0.45  # of the room wanted, in px at most _ROUND_PX: how far edges are eased
_ROUND_PX = 2.5


@dataclass(frozen=True, slots=True)
class Wanted:
    """How many areas, from `low` to `high`, and how narrow one may be: a circle `across` of the long side fits inside.

    `power`: how much an area's size counts against how clear its borders are; less keeps small clear things longer.
    What stands out clearly all round needs only `clear_part` of that width.
    """

    low: int
    high: int
    target: int
    across: float
    power: float
    clear_part: float = 1.0


def areas_of(image: Image.Image, wanted: Wanted) -> LabelMap:
    """The picture (RGB) cut into areas, their number within the range wanted if the picture has that much in it."""
    if min(image.size) < 8:
        return from_plane(np.zeros((image.height, image.width), np.int32))
    colours, steps = _seen(image)
    fine = _cut_up(colours)
    weight = _middling(fine)
    room = max(1.5, wanted.across * max(image.size) / 2)
    graph = Graph(fine, colours, steps, weight, wanted.power)
    graph.join_alike(wanted.target * _MANY)
    for part in (0.4, 0.55, 0.7, 0.85):
        graph.join_narrow(Room(room, 0.0, wanted.clear_part), tries=3, part=part)
    graph.join_alike(round(wanted.target * 1.1))
    plane = without_thin(graph.planed(), room * _THIN)
    needed = Room(room * _KEPT, 3 * room * room * wanted.clear_part**2, wanted.clear_part)
    plane = _roomy(plane, colours, steps, weight, wanted, needed)
    plane = eased(plane, min(room * _ROUND, _ROUND_PX))
    plane = _roomy(plane, colours, steps, weight, wanted, needed)
    return from_plane(plane)


def _roomy(plane: Plane, colours: Values, steps: Values, weight: Values, wanted: Wanted, room: Room) -> Plane:
    """The plane with the areas joined to others that are too narrow, or over the number wanted."""
    graph = Graph(plane, colours, steps, weight, wanted.power)
    graph.join_narrow(room, tries=8, share=0.5)
    graph.join_smallest(wanted.high)
    return in_order(graph.planed())


def lab(pixels: NDArray[np.uint8]) -> Values:
    """The colours of RGB pixels as CIELAB, with colour counted for more than lightness."""
    colours: Values = cv().cvtColor(pixels.astype(np.float32) / 255, cv().COLOR_RGB2LAB) * _LAB
    return colours


def _seen(image: Image.Image) -> tuple[Values, Values]:
    """The colours of the picture's parts, and how much the picture changes over each pixel."""
    calm = np.asarray(calmed(stretched(image), _CALM_REACH, _CALM_PASSES))
    colours = lab(cv().pyrMeanShiftFiltering(calm, _SPREAD_PX, _SPREAD_COLOUR, maxLevel=1))
    plain = cv().GaussianBlur(lab(cv().medianBlur(np.asarray(image), 5)), (0, 0), 1.0)
    # A soft shadow is sharp once it is calmed, and grain is not there any more: a border has to be in both.
    return colours, np.minimum(_step(plain, _OVER), _step(colours, _OVER) + _NO_STEP)


def _step(colours: Values, over: int) -> Values:
    """How much the colours change between `over` px to the one and to the other side of each pixel."""
    high, wide = colours.shape[:2]
    padded = np.pad(colours, ((over, over), (over, over), (0, 0)), mode="edge")
    across = padded[over : over + high, 2 * over :] - padded[over : over + high, :wide]
    down = padded[2 * over :, over : over + wide] - padded[:high, over : over + wide]
    found: Values = np.sqrt((across**2).sum(2) + (down**2).sum(2))
    return found


def _cut_up(colours: Values) -> Plane:
    """The smallest parts: the basins of the picture's changes."""
    change = cv().GaussianBlur(_step(cv().GaussianBlur(colours, (0, 0), 1.0), 1), (0, 0), 1.0)
    depth = np.round(change * 4)
    low = (depth == cv().erode(depth, np.ones((5, 5), np.uint8))) | (depth < 4)
    _, basins = cv().connectedComponents(low.astype(np.uint8), connectivity=4)
    # The library floods where neighbouring pixels differ least, so it wants the colours, not the relief.
    shown = np.clip(colours * (2.4, 1.0, 1.0) + (40, 128, 128), 0, 255).astype(np.uint8)
    basins = basins.astype(np.int32)
    cv().watershed(shown, basins)
    return parted(nearest_of(basins, basins > 0))


def _middling(plane: Plane) -> Values:
    """How much each pixel counts, from 1 at the edge to 2 in the middle: there the subject mostly is."""
    high, wide = plane.shape
    up = (2 * np.arange(high) / high - 0.95) ** 2
    aside = (2 * np.arange(wide) / wide - 1) ** 2
    weight: Values = (1 + np.maximum(0, 1 - up[:, None] - aside[None, :])).astype(np.float32)
    return weight
