"""Cluster: lots of recordings reviewed by the workers of a Dask scheduler that runs elsewhere.

They must have this program, and see the recordings under the same names.
"""

from __future__ import annotations

import logging
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from queue import Empty, SimpleQueue
from typing import TYPE_CHECKING, Any

import meterlog
from meterlog.model.errors import LinkNotFound, UsageError
from meterlog.work.screening.places import Place
from meterlog.work.screening.reviewing import Asked, review_lot

if TYPE_CHECKING:
    import pyarrow as pa

WAVE = 16
"""Lots a worker in one graph: between two graphs workers wait for each other."""
_CONNECT_S = 10.0
_LOOK_S = 1.0
"""So often it is looked whether the scheduler is still there while nothing comes from it."""
_SUCH_AS = "Give its address as it says it itself, such as tcp://HOST:8786."
_GONE = frozenset({"closing", "closed"})
_LOST = frozenset({"cancelled", "lost"})
"""What a future is once the connection has broken off."""
ADDRESS = re.compile(r"(?:[a-z]+://)?(?:[^\s/:]+|\[[0-9a-f:.]+(?:%\w+)?\]):\d+/?|inproc://.+", re.I)


def review_on_cluster(
    left: Mapping[int, tuple[Place, ...]],
    asked: Asked,
    address: str,
    taken: Callable[[int, pa.Table], None],
) -> None:
    """Have lots reviewed; those at which a worker dies are not taken.

    Parameters
    ----------
    left : mapping of int to tuple of Place
        Lots by their numbers.
    asked : Asked
    address : str
        Of the scheduler.
    taken : callable
        Called with the number of a lot and its rows, on the calling thread.

    Raises
    ------
    UsageError
        If the workers have another program, there are none, or the address is none.
    LinkNotFound
        If there is no scheduler at the address, or it goes away.
    """
    with _client(address) as client:
        waiting = iter(list(left.items()))
        room = WAVE * max(1, sum(client.nthreads().values()))
        running: dict[Any, int] = {}
        done: SimpleQueue[Any] = SimpleQueue()

        def add() -> None:
            for number, lot in waiting:
                future = client.submit(review_lot, lot, asked, pure=False)
                running[future] = number
                future.add_done_callback(done.put)
                return

        for _ in range(room):
            add()
        while running:
            # Not as_completed: once the scheduler has gone away, it waits for ever.
            future = _next(done)
            if client.status in _GONE or (future is not None and future.status in _LOST):
                raise _gone(address)
            if future is None:
                continue
            rows, number = _rows(future), running.pop(future)
            if rows is not None:
                taken(number, rows)
            future.release()
            add()


def _next(done: SimpleQueue[Any]) -> Any | None:  # noqa: ANN401 - distributed has no types
    try:
        return done.get(timeout=_LOOK_S)
    except Empty:
        return None


def _rows(future: Any) -> pa.Table | None:  # noqa: ANN401 - as above
    """Give what a worker made; None where it died over it, or nothing comes through any more."""
    try:
        return future.result(timeout=_CONNECT_S) if future.status == "finished" else None
    except Exception:  # noqa: BLE001 - whatever goes wrong, it is done here, or another time
        return None


def _gone(address: str) -> LinkNotFound:
    return LinkNotFound(
        "the Dask scheduler went away.",
        subject=f"--cluster {address}",
        remedy="What was done is kept: start it and screen once more.",
    )


@contextmanager
def _quiet() -> Iterator[None]:
    """Keep its own words to the library: what a person is to know is raised."""
    names = [name for name in logging.root.manager.loggerDict if name.startswith("distributed")]
    before = {name: logging.getLogger(name).level for name in names}
    for name in names:
        logging.getLogger(name).setLevel(logging.CRITICAL)
    try:
        yield
    finally:
        for name, level in before.items():
            logging.getLogger(name).setLevel(level)


@contextmanager
def _client(address: str) -> Iterator[Any]:
    from distributed import Client

    if not ADDRESS.fullmatch(address):
        raise UsageError(
            "is no address of a Dask scheduler.", subject=f"--cluster {address}", remedy=_SUCH_AS
        )
    try:
        client = Client(address, timeout=_CONNECT_S, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise LinkNotFound(
            "no Dask scheduler answers there.",
            subject=f"--cluster {address}",
            remedy=_SUCH_AS,
        ) from error
    with _quiet():
        try:
            _refuse_other_programs(client)
            yield client
        finally:
            client.close()


def _refuse_other_programs(client: Any) -> None:  # noqa: ANN401 - distributed has no types
    try:
        found = set(client.run(_version).values())
    except Exception as error:  # whatever a worker raises comes back as itself
        raise UsageError(
            f"a worker can't run this program: {type(error).__name__}: {error}",
            subject="--cluster",
            remedy="Install the same version of meterlog with its extra 'screen' at all workers.",
        ) from error
    if found - {meterlog.__version__}:
        raise UsageError(
            f"workers have version {', '.join(sorted(found))}, not {meterlog.__version__}.",
            subject="--cluster",
            remedy="Install the same version everywhere, so that all is judged alike.",
        )
    if not found:
        raise UsageError(
            "the scheduler has no workers.",
            subject="--cluster",
            remedy="Start some, and try again.",
        )


def _version() -> str:
    return meterlog.__version__
