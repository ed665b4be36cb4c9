"""A word in a joined hand: the skeletons of its letters with the joins between them, as one skeleton."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from packgen.page.marks import Point
from packgen.page.skeleton import Segment, Skeleton, Strokes, accents_on, bounds, moved, parted, read_strokes, skeleton
from packgen.page.strokes_joined import JOINED, STEPS

Stroke = tuple[Segment, ...]

# How strongly a join keeps its direction at both ends, as a part of its length.
_PULL = 0.42


@dataclass(frozen=True, slots=True)
class _Letter:
    """A letter of a word: how it is met and left (see strokes_joined.py), its main stroke, and what is added last."""

    met: str
    left: str
    main: Stroke
    bar: Stroke
    late: Strokes


@cache
def joined(letters: tuple[str, ...]) -> Skeleton:
    """One skeleton of a word, whose letters must all have strokes. Its width is that of the whole word.

    Letters a joined hand does not know (capitals, figures, marks) stand as they are printed, and start afresh.
    """
    done: list[Stroke] = []
    late: list[Stroke] = []
    open_: Stroke = ()
    leave = "n"
    x = 0.0
    for number, letter in enumerate(letters):
        known = _letter(letter)
        printed = skeleton(letter)
        if printed is None:
            raise ValueError(f"{letter} has no strokes")
        if known is None:
            done += [open_] if open_ else []
            x = _after(done, late) + (printed.left + 0.1 if number else 0.0)
            done += moved(printed.strokes, x, 0.0)
            open_, leave = (), "n"
            continue
        if leave in "lh" and open_:
            x = open_[-1][-1][0] + STEPS[leave + known.met]
            main = moved((known.main,), x, 0.0)[0]
            open_ = (*open_, *_join(open_[-1], main, known.met), *main)
        else:
            done += [open_] if open_ else []
            x = _after(done, late) + (printed.left + 0.1 if number else 0.0) - bounds((known.main,))[0]
            open_ = moved((known.main,), x, 0.0)[0]
        late += moved(known.late, x, 0.0)
        leave = known.left
        if leave == "x":
            done.append(open_)
            open_, leave = moved((known.bar,), x, 0.0)[0], "h"
    done += [open_] if open_ else []
    return _whole(letters, done, late)


def _whole(letters: Sequence[str], done: Sequence[Stroke], late: Sequence[Stroke]) -> Skeleton:
    strokes = (*done, *late)
    left, _, right, _ = bounds(strokes)
    first, last = skeleton(letters[0]), skeleton(letters[-1])
    room = (first.left if first else 0.0, last.right if last else 0.0)
    return Skeleton(moved(strokes, -left, 0.0), right - left, *room, marked=len(done))


def _after(done: Sequence[Stroke], late: Sequence[Stroke]) -> float:
    """The right edge of what is written so far."""
    return max((bounds((stroke,))[2] for stroke in itertools.chain(done, late)), default=0.0)


@cache
def _letter(letter: str) -> _Letter | None:
    """A small letter of the joined hand, with its accents; None if the hand has none."""
    base, accents = parted(letter)
    if base not in JOINED:
        return None
    text = JOINED[base]
    main, *more = read_strokes(text[2:])
    bar = more.pop(0) if text[1] == "x" else ()
    added = accents_on(base, (main, *((bar,) if bar else ())), accents)
    if added is None:
        return None
    # An accent takes the place of the dot on i and j.
    late = (*(more if not (base in "ij" and added.above) else ()), *added.strokes)
    return _Letter(text[0], text[1], main, bar, late)


def _join(before: Segment, after: Sequence[Segment], met: str) -> Stroke:
    """The join from the end of one letter to the next: a smooth curve, and for round letters back along their top."""
    first = after[0]
    start, leaving = before[-1], _direction(before[-2], before[-1])
    if met in "rs":
        end, arriving = first[-1], _direction(first[-1], first[-2])
        return _curve(start, leaving, end, arriving), tuple(reversed(first))
    end = first[0]
    arriving = _direction(first[0], first[1]) if met == "e" else _unit(0.3, 1.0 if end[1] < 1.5 else 1.4)
    return (_curve(start, leaving, end, arriving),)


def _curve(start: Point, leaving: Point, end: Point, arriving: Point) -> Segment:
    pull = _PULL * math.dist(start, end)
    return (start, (start[0] + leaving[0] * pull, start[1] + leaving[1] * pull),
            (end[0] - arriving[0] * pull, end[1] - arriving[1] * pull), end)  # fmt: skip


def _direction(a: Point, b: Point) -> Point:
    return _unit(b[0] - a[0], b[1] - a[1])


def _unit(x: float, y: float) -> Point:
    long = math.hypot(x, y) or 1.0
    return x / long, y / long
