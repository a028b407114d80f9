"""Judge: the reviewer of a run in progress, fed on the bus thread and looked at from another."""

from __future__ import annotations

import threading
import time

from meterlog.acquire import Item
from meterlog.analysis import Reviewer
from meterlog.model import About, RawBytes, Review

_SNAPSHOT_PERIOD_S = 0.25


class Judge:
    """A sink that feeds a Reviewer and gives snapshots of what it has found.

    A reviewer that fails is left alone from then on: the run, the disk and the picture go on, and
    the last snapshot stands. The bus keeps the fault.

    Parameters
    ----------
    about : About
        Of the run: instruments, limits and the time of its start.
    """

    def __init__(self, about: About) -> None:
        self._reviewer = Reviewer(
            about.instruments, about.limits, about.started_utc, about.job.measured_under
        )
        self._lock = threading.Lock()
        self._snapshot = Review()
        self._taken_s = -_SNAPSHOT_PERIOD_S
        self._failed = False

    def take(self, item: Item) -> None:
        """Feed a Block or an Event to the reviewer."""
        if self._failed or isinstance(item, RawBytes):
            return
        try:
            with self._lock:
                self._reviewer.feed(item)
        except Exception:
            self._failed = True
            raise

    def tick(self, now_ns: int) -> None:
        """Nothing to do: what is known changes with readings only."""

    def review(self) -> Review:
        """Give what has been found so far; at most four times a second it is made afresh."""
        now_s = time.monotonic()
        if self._failed or now_s - self._taken_s < _SNAPSHOT_PERIOD_S:
            return self._snapshot
        with self._lock:
            self._snapshot = self._reviewer.live()
        self._taken_s = time.monotonic()
        return self._snapshot
