"""A picture as a plane of area numbers: how much room areas have, where a number goes, and how their edges are eased.

A plane is an array with a number for each pixel, y downwards; areas are numbered from 0, mostly without gaps.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from packgen.pictures.opencv import cv

Plane = NDArray[np.int32]
Values = NDArray[np.float32]


def in_order(plane: NDArray[Any]) -> Plane:
    """The plane with its areas numbered from 0 without gaps, by their old numbers."""
    known = np.bincount(plane.ravel()) > 0
    areas: Plane = (np.cumsum(known) - 1).astype(np.int32)[plane]
    return areas


def parted(plane: NDArray[Any]) -> Plane:
    """The plane with every area that is in several pieces made into several areas, numbered by their old numbers."""
    areas, out, count = in_order(plane), np.zeros(plane.shape, np.int32), 0
    for area, (top, low, left, right) in enumerate(_boxes(areas)):
        pieces, found = cv().connectedComponents((areas[top:low, left:right] == area).astype(np.uint8), connectivity=4)
        inside = found > 0
        out[top:low, left:right][inside] = found[inside] + (count - 1)
        count += pieces - 1
    return out


def _boxes(areas: Plane) -> list[tuple[int, int, int, int]]:
    """The box round each area: top, low, left, right; low and right are not included."""
    count, (high, wide) = int(areas.max()) + 1, areas.shape
    rows, columns = np.indices(areas.shape)
    numbers = areas.ravel()
    found = []
    for places, size in ((rows.ravel(), high), (columns.ravel(), wide)):
        first, last = np.full(count, size), np.zeros(count, np.int64)
        np.minimum.at(first, numbers, places)
        np.maximum.at(last, numbers, places)
        found += [first.tolist(), (last + 1).tolist()]
    return list(zip(*found, strict=True))


def edge_distance(plane: NDArray[Any]) -> Values:
    """How far each pixel lies from the nearest edge of its own area, the picture's frame included, in px."""
    edge = np.zeros(plane.shape, np.uint8)
    across, down = plane[:, 1:] != plane[:, :-1], plane[1:] != plane[:-1]
    edge[:, 1:] |= across
    edge[:, :-1] |= across
    edge[1:] |= down
    edge[:-1] |= down
    edge[0] = edge[-1] = 1
    edge[:, 0] = edge[:, -1] = 1
    far: Values = cv().distanceTransform(1 - edge, cv().DIST_L2, 5) + np.float32(0.5)
    return far


def rooms(plane: NDArray[Any], count: int) -> list[float]:
    """The radius in px of the largest circle inside each of `count` areas; 0 for numbers that are not in the plane."""
    room = np.zeros(count)
    np.maximum.at(room, plane.ravel(), edge_distance(plane).ravel())
    found: list[float] = room.tolist()
    return found


def middles(plane: Plane, marked: NDArray[np.bool_] | None = None) -> list[tuple[float, float, float]]:
    """For each area the middle of the largest circle inside it and that circle's radius: x, y, room, in px.

    The circle holds nothing that is marked, if there is anywhere else.
    """
    far = edge_distance(plane if marked is None else np.where(marked, -1, plane)).ravel()
    if marked is not None:
        far[marked.ravel()] = 0
    numbers = plane.ravel()
    order = np.lexsort((-far, numbers))  # by area, the farthest from its edge first
    first = order[np.flatnonzero(np.diff(numbers[order], prepend=-1))]
    ys, xs = np.divmod(first, plane.shape[1])
    return [(x + 0.5, y + 0.5, r) for x, y, r in zip(xs.tolist(), ys.tolist(), far[first].tolist(), strict=True)]


def nearest_of(plane: NDArray[Any], known: NDArray[np.bool_]) -> NDArray[Any]:
    """The plane with every pixel that is not known given the number of the nearest that is."""
    if known.all() or not known.any():
        return plane
    _, place = cv().distanceTransformWithLabels(
        (~known).astype(np.uint8), cv().DIST_L2, 5, labelType=cv().DIST_LABEL_PIXEL
    )
    numbers = np.zeros(int(place.max()) + 1, plane.dtype)
    numbers[place[known]] = plane[known]
    found: NDArray[Any] = numbers[place]
    return found


def without_thin(plane: NDArray[Any], reach: float) -> Plane:
    """The plane without all that is thinner than twice `reach` px; what lies beside takes the ground."""
    return parted(nearest_of(plane, edge_distance(plane) >= reach))


def eased(plane: NDArray[Any], soft: float) -> Plane:
    """The plane with rounded edges: each area is blurred by `soft` px, and a pixel goes to the strongest there."""
    areas = in_order(plane)
    best, out = np.zeros(areas.shape, np.float32), np.zeros(areas.shape, np.int32)
    reach = int(3 * soft) + 2
    for area, (top, low, left, right) in enumerate(_boxes(areas)):
        part = np.s_[max(0, top - reach) : low + reach, max(0, left - reach) : right + reach]
        shown = cv().GaussianBlur(
            (areas[part] == area).astype(np.float32), (0, 0), soft, borderType=cv().BORDER_REPLICATE
        )
        stronger = shown > best[part]
        best[part][stronger] = shown[stronger]
        out[part][stronger] = area
    return parted(out)
