"""Workers: lots of recordings reviewed side by side, through dask.

Local processes or threads by dask's own schedulers; or those of a Dask scheduler that is running
elsewhere, whose workers must have this program and see the recordings.
"""

from __future__ import annotations

import os
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import (
    BrokenExecutor,
    Executor,
    Future,
    ProcessPoolExecutor,
    ThreadPoolExecutor,
)
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from importlib.util import find_spec
from multiprocessing import get_context, parent_process, resource_tracker
from multiprocessing.connection import Connection, wait
from typing import TYPE_CHECKING, TypeVar

from meterlog.work.screening.cluster import WAVE, review_on_cluster
from meterlog.work.screening.places import Place
from meterlog.work.screening.reviewing import Asked, as_table, bare_row, review_lot

if TYPE_CHECKING:
    import pyarrow as pa

_LESS_URGENT = 5
_BROKE_OFF = (
    "the program broke off while it was reviewed: out of memory, or a fault of the program; report"
    " it with the recording"
)

T = TypeVar("T")
Lot = tuple[Place, ...]
Take = Callable[[Lot, "pa.Table"], None]


@dataclass(frozen=True, slots=True)
class Workers:
    """Who does the work.

    Attributes
    ----------
    count : int
        Of workers on this computer.
    threads : bool
        Threads of this process instead of processes of their own.
    cluster : str
        Address of a Dask scheduler; empty: this computer.
    """

    count: int = 1
    threads: bool = False
    cluster: str = ""


def packages_missing(cluster: str) -> tuple[str, ...]:
    """Give the names of packages that are needed and not installed."""
    wanted = ("dask", "fsspec", *(("distributed",) if cluster else ()))
    return tuple(name for name in wanted if find_spec(name) is None)


def review_lots(lots: Sequence[Lot], asked: Asked, workers: Workers, take: Take) -> None:
    """Review lots; each is handed over as soon as it is there, in any order.

    A lot at which a worker dies is done again, one recording at a time; that at which it dies
    again has a row that says so.

    Parameters
    ----------
    lots : sequence of tuple of Place
    asked : Asked
    workers : Workers
    take : callable
        Called with the lot and its rows, on the calling thread; what it raises ends the work.

    Raises
    ------
    UsageError
        If the workers of a cluster have another program, there are none, or its address is none.
    LinkNotFound
        If there is no scheduler at the address, or it goes away.
    """
    left = dict(enumerate(lots))

    def taken(number: int, rows: pa.Table) -> None:
        take(left.pop(number), rows)

    if workers.cluster:
        review_on_cluster(left, asked, workers.cluster, taken)
    else:
        _here(left, asked, workers, taken)
    for place in [place for lot in left.values() for place in lot]:
        take((place,), _alone(place, asked))


def _here(
    left: dict[int, Lot], asked: Asked, workers: Workers, taken: Callable[[int, pa.Table], None]
) -> None:
    import dask
    from dask import multiprocessing, threaded
    from dask.callbacks import Callback

    def after(key: str, rows: pa.Table, _graph: object, _state: object, _worker: object) -> None:
        taken(int(str(key).rpartition("-")[2]), rows)

    work = partial(review_lot, asked=asked)
    # By its name dask would look whether a cluster is meant, and load all that belongs to one.
    scheduler = threaded.get if workers.threads else multiprocessing.get
    numbers = list(left)
    size = WAVE * workers.count
    try:
        with _pool(workers) as pool, Callback(posttask=after):
            for start in range(0, len(numbers), size):
                wave = [
                    dask.delayed(work, pure=False)(left[one], dask_key_name=f"lot-{one}")
                    for one in numbers[start : start + size]
                ]
                dask.compute(
                    *wave, scheduler=scheduler, pool=pool, num_workers=workers.count, chunksize=1
                )
    except BrokenExecutor:
        return  # a worker has died: what is left is done one by one


class _DeafWorkers(ProcessPoolExecutor):
    """Processes deaf to Ctrl-C from their first instant on: at a terminal all of them hear it.

    Until one has loaded what it needs to be told so, it would end with a traceback. They are
    started while work is given, and inherit what is blocked in the thread that gives it.
    """

    def submit(self, fn: Callable[..., T], /, *args: object, **kwargs: object) -> Future[T]:
        """Give work; see :meth:`concurrent.futures.Executor.submit`."""
        if not hasattr(signal, "pthread_sigmask"):
            return super().submit(fn, *args, **kwargs)
        # Started with the first process, it would let the signal through again.
        resource_tracker.ensure_running()
        before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
        try:
            return super().submit(fn, *args, **kwargs)
        finally:
            signal.pthread_sigmask(signal.SIG_SETMASK, before)


@contextmanager
def _pool(workers: Workers) -> Iterator[Executor]:
    if workers.threads:
        with ThreadPoolExecutor(workers.count) as threads:
            yield threads
        return
    context = get_context("spawn")
    theirs, ours = context.Pipe(duplex=False)
    pool = _DeafWorkers(workers.count, context, _begin_worker, (theirs,))
    try:
        yield pool
    except BaseException:
        # Who is told to stop a second time waits for nobody: without it the workers end, too.
        ours.close()
        pool.shutdown(wait=False, cancel_futures=True)
        raise
    pool.shutdown()
    ours.close()


def _begin_worker(word: Connection | None = None) -> None:
    """Make a worker one that ends with its parent, leaves Ctrl-C to it and is less urgent.

    It ends, too, when the other end of ``word`` is closed.
    """
    import pyarrow as pa

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(signal, "pthread_sigmask"):
        signal.pthread_sigmask(signal.SIG_UNBLOCK, {signal.SIGINT})
    pa.set_cpu_count(1)
    if hasattr(os, "nice"):
        os.nice(_LESS_URGENT)
    threading.Thread(target=_end_with_parent, args=(word,), name="parent", daemon=True).start()


def _end_with_parent(word: Connection | None) -> None:
    # A worker holds both ends of the queue it reads from, so that it never hears of its end.
    parent = parent_process()
    if parent is not None:
        wait([parent.sentinel, *([] if word is None else [word])])
        os._exit(1)


def _alone(place: Place, asked: Asked) -> pa.Table:
    """Review one recording in a process of its own."""
    with _DeafWorkers(1, get_context("spawn"), _begin_worker) as pool:
        try:
            return pool.submit(review_lot, (place,), asked).result()
        except BrokenExecutor:
            return as_table([bare_row(place, asked, _BROKE_OFF, passing=True)])
