"""Many packs made at once: helper processes, each of which makes one pack after the other."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from multiprocessing.connection import wait
from pathlib import Path

from packgen.faults import WorkFailed
from packgen.making import Made, Sink, Tell, make
from packgen.workshop import Order, Workshop, open_workshop

_MANY = 6  # packs from which on helpers are worth their start

# The workshop of this process. Helpers that are forked find their parent's, with all that was made in it so far.
_shop: Workshop | None = None


def hands(jobs: int | None, packs: int) -> int:
    """How many processes make so many packs: as many as asked for, else all cores if there are many packs."""
    most = jobs or (_cores() if packs >= _MANY else 1)
    return max(1, min(most, packs))


def make_all(order: Order, shop: Workshop, places: Sequence[int], sink: Sink | None, count: int,
             tell: Tell) -> Iterator[tuple[int, Made]]:  # fmt: skip
    """What was made of the packs at these places, each with its place, as they are done. Raises PackgenError.

    Of many packs the first of each recipe is made before helpers start, so that what all packs of a recipe share
    (pictures, line art, nets, measured text) is made once where helpers can be forked.
    """
    firsts = sorted({shop.packs[k].recipe.pack: k for k in reversed(places)}.values())
    if 2 * len(firsts) > len(places):
        firsts = []
    if count < 2:
        firsts = list(places)
    rest = [k for k in places if k not in firsts]
    for k in firsts:
        yield k, make(shop, shop.packs[k], (), sink, tell)
    if rest:
        yield from _helped(order, shop, rest, sink, count)


def _helped(order: Order, shop: Workshop, places: Sequence[int], sink: Sink | None,
            count: int) -> Iterator[tuple[int, Made]]:  # fmt: skip
    global _shop
    kind = "fork" if os.name == "posix" and "fork" in multiprocessing.get_all_start_methods() else "spawn"
    _shop = shop
    pool = ProcessPoolExecutor(count, multiprocessing.get_context(kind), _start, (order, shop.store.folder))
    try:
        with _ctrl_c_later():
            waiting = {pool.submit(_one, place, sink): place for place in places}
        for done in as_completed(waiting):
            yield waiting.pop(done), done.result()
    except BrokenProcessPool as error:
        raise WorkFailed("A helper process was stopped from outside; perhaps the memory is full. "
                         "Try again with --jobs 1.") from error  # fmt: skip
    finally:
        pool.shutdown(cancel_futures=True)
        _shop = None


@contextmanager
def _ctrl_c_later() -> Iterator[None]:
    """Keeps Ctrl-C waiting while helpers are forked: what Python itself does at a fork would swallow it."""
    if not hasattr(signal, "pthread_sigmask"):  # not on every system, and there nothing is forked
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _start(order: Order, pictures: Path | None) -> None:
    """A helper begins: it ends with its parent, leaves Ctrl-C to it, and opens a workshop if it did not inherit one."""
    global _shop
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent = multiprocessing.parent_process()
    if parent:
        threading.Thread(target=_end_with, args=(parent.sentinel,), daemon=True).start()
    if _shop is None:
        _shop = open_workshop(order, pictures)


def _end_with(sentinel: int) -> None:
    wait([sentinel])
    os._exit(1)


def _one(place: int, sink: Sink | None) -> Made:
    assert _shop is not None
    return make(_shop, _shop.packs[place], (), sink, _quiet)


def _quiet(words: str) -> None:
    """Helpers say nothing on the way."""


def _cores() -> int:
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:  # not on every system
        return os.cpu_count() or 1
