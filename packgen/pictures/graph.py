"""Areas and their neighbours, joined two by two: what lies between two areas tells whether they belong together.

A border counts by how sharply the picture changes over it and how far apart the colours on its sides are. That is what
the eye outlines by: a sky that only grows paler has no border in it, however different its ends.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from packgen.pictures.cells import Plane, Values, rooms
from packgen.pictures.label_map import find

_SOFT = 5.0  # a change smaller than this, in units of CIELAB, is no border
_GRAIN = 0.65  # nor is one that hardly stands out from what lies within the areas on its sides
_CLEAR_STEP, _CLEAR_COLOUR = 36.0, 40.0  # a greater difference counts no more
_LEAST = 1.5
_CLEAR = 28.0  # a border at least so clear stands out
_LARGE = 0.03  # beyond this part of the picture size counts no more, so that a pale sky is not kept in bands
_LONG = 0.5  # how much the length of a border counts when a small area looks for the neighbour to join


@dataclass(slots=True)
class _Border:
    """The length of a border in px and the sum of the steps over it."""

    length: float = 0.0
    step: float = 0.0


@dataclass(frozen=True, slots=True)
class Room:
    """What an area must have: a circle of that `radius` px in it, and `least` px in all.

    An area that stands out clearly all round, like an eye, needs only `clear_part` of the radius.
    """

    radius: float
    least: float = 0.0
    clear_part: float = 1.0


class Graph:
    """The areas of a plane, each with its size, mean colour and neighbours; areas are joined until few are left."""

    def __init__(self, plane: Plane, colours: Values, steps: Values, weight: Values, power: float) -> None:
        """`colours` are CIELAB, `steps` how much they change round each pixel, `weight` how much each pixel counts."""
        self.plane, self.power = plane, power
        self.count = self.left = int(plane.max()) + 1
        numbers = plane.ravel()

        def summed(values: NDArray[Any]) -> list[float]:
            found: list[float] = np.bincount(numbers, values.ravel(), self.count).tolist()
            return found

        self.size = summed(np.ones(plane.shape))
        self.weight, self.rough = summed(weight), summed(steps)
        self.sums = [list(three) for three in zip(*(summed(colours[..., k]) for k in range(3)), strict=True)]
        self.enough = _LARGE * plane.size
        self.parent = list(range(self.count))
        self.near: list[dict[int, _Border]] = [{} for _ in range(self.count)]
        for one, two in ((np.s_[:, :-1], np.s_[:, 1:]), (np.s_[:-1], np.s_[1:])):
            self._border(plane[one], plane[two], np.maximum(steps[one], steps[two]))

    def _border(self, one: Plane, two: Plane, step: Values) -> None:
        other = one != two
        low, high = np.minimum(one[other], two[other]), np.maximum(one[other], two[other])
        pairs, index = np.unique(low.astype(np.int64) * self.count + high, return_inverse=True)
        lengths, sums = np.bincount(index), np.bincount(index, step[other])
        for pair, length, total in zip(pairs.tolist(), lengths.tolist(), sums.tolist(), strict=True):
            a, b = divmod(pair, self.count)
            border = self.near[a].setdefault(b, _Border())
            self.near[b][a] = border  # one and the same for both
            border.length += length
            border.step += total

    def planed(self) -> NDArray[np.int64]:
        """The plane of what is left; numbers have gaps."""
        heads: NDArray[np.int64] = np.array([find(self.parent, area) for area in range(self.count)])[self.plane]
        return heads

    def alive(self) -> list[int]:
        """The areas left."""
        return [area for area in range(self.count) if self.parent[area] == area]

    def clear(self, a: int, b: int) -> float:
        """How clear the border between two neighbours is, 0 to about 37."""
        na, nb = self.size[a], self.size[b]
        apart = sum((x / na - y / nb) ** 2 for x, y in zip(self.sums[a], self.sums[b], strict=True)) ** 0.5
        border = self.near[a][b]
        grain = _GRAIN * min(self.rough[a] / na, self.rough[b] / nb)
        step = max(0.0, border.step / border.length - _SOFT - grain)
        return float(min(step, _CLEAR_STEP) ** 0.65 * min(apart, _CLEAR_COLOUR) ** 0.35)

    def _cost(self, a: int, b: int) -> float:
        """What is lost if two are joined: how clear their border is, how large they are and how near the middle."""
        na, nb = self.size[a], self.size[b]
        clear = self.clear(a, b)
        size = min(na * nb / (na + nb), self.enough)
        weight = max(self.weight[a] / na, self.weight[b] / nb)
        return float(max(0.0, clear - _LEAST) * size**self.power * weight + 1e-6 * clear)

    def join(self, area: int, into: int) -> None:
        """Make one area part of a neighbour."""
        self.size[into] += self.size[area]
        self.weight[into] += self.weight[area]
        self.rough[into] += self.rough[area]
        self.sums[into] = [x + y for x, y in zip(self.sums[area], self.sums[into], strict=True)]
        for other, border in self.near[area].items():
            del self.near[other][area]
            if other == into:
                continue
            kept = self.near[into].setdefault(other, _Border())
            self.near[other][into] = kept
            kept.length += border.length
            kept.step += border.step
        self.near[area] = {}
        self.parent[area] = into
        self.left -= 1

    def join_alike(self, target: int) -> None:
        """Join the neighbours that lose least by it until `target` are left, and those that lose nothing anyway."""
        waiting = [(self._cost(a, b), a, b) for a in range(self.count) for b in self.near[a] if a < b]
        heapq.heapify(waiting)
        while waiting:
            known, a, b = heapq.heappop(waiting)
            if b not in self.near[a]:
                continue
            # Costs are looked at again only when they come up: an area with many neighbours would be slow otherwise.
            cost = self._cost(a, b)
            if cost > known and waiting and cost > waiting[0][0]:
                heapq.heappush(waiting, (cost, a, b))
                continue
            if self.left <= target and cost > 1e-4:
                break
            area, into = (a, b) if self.size[a] <= self.size[b] else (b, a)
            self.join(area, into)
            for other in self.near[into]:
                heapq.heappush(waiting, (self._cost(into, other), min(into, other), max(into, other)))

    def join_narrow(self, room: Room, tries: int = 1, share: float = 1.0, part: float = 1.0) -> None:
        """Give areas without the room wanted, or without `part` of it, to the most alike neighbour.

        A narrow ring takes what lies in it, if that has not the room either. Only the smallest `share` of the areas
        goes at a time; it is looked again `tries` times, for those that others join grow.
        """
        for _ in range(tries):
            radius = rooms(self.planed(), self.count)
            narrow = [area for area in self.alive() if self._is_narrow(area, radius[area] / part, room)]
            if not narrow:
                return
            narrow = sorted(narrow, key=lambda area: (self.size[area], area))[: round(len(narrow) * share) + 1]
            self._join_each(narrow, {area for area in self.alive() if radius[area] < room.radius})

    def _is_narrow(self, area: int, radius: float, room: Room) -> bool:
        if self.size[area] < room.least:
            return True
        if radius >= room.radius or radius < room.radius * room.clear_part:
            return radius < room.radius
        return any(self.clear(area, other) < _CLEAR for other in self.near[area])

    def join_smallest(self, most: int) -> None:
        """Join the smallest areas to the most alike neighbours until no more than `most` are left."""
        while self.left > most:
            smallest = min(self.alive(), key=lambda area: (self.size[area], area))
            self._join_each([smallest], set())

    def _join_each(self, areas: Iterable[int], may_go: set[int]) -> None:
        grown: set[int] = set()  # what others were joined to may have room enough now
        for area in areas:
            if self.parent[area] != area or not self.near[area] or area in grown:
                continue
            inside = [other for other in self.near[area] if len(self.near[other]) == 1 and other in may_go]
            if inside and len(self.near[area]) > len(inside):
                for other in inside:
                    self.join(other, area)
                grown.add(area)
            else:
                into = min(self.near[area], key=self._unlike(area))
                self.join(area, into)
                grown.add(into)

    def _unlike(self, area: int) -> Callable[[int], tuple[float, int]]:
        near = self.near[area]
        return lambda other: ((self.clear(area, other) + 2.0) / near[other].length ** _LONG, other)
