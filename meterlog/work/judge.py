"""Judge: the reviewer of a run in progress, fed on the bus thread and looked at from another."""

from __future__ import annotations

import threading
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path

from meterlog.acquire import Item
from meterlog.model import About, Block, Event, EventKind, RawBytes, Review
from meterlog.work.judged_anew import JudgedAnew, new_reviewer

_SNAPSHOT_PERIOD_S = 0.25
_STALE = (
    "A mark that was withdrawn still counts in what is told while recording, as the recording"
    " could not be judged anew: {} The judgement after the stop is without it."
)


class Judge:
    """A sink that feeds a Reviewer and gives snapshots of what it has found.

    A reviewer that fails is left alone from then on: the run, the disk and the picture go on, and
    the last snapshot stands. The bus keeps the fault.

    What a reviewer has taken it can't give back. When a mark is withdrawn all that was recorded
    is judged anew without it, from the disk and on a thread of its own; what comes in meanwhile
    waits, and the new reviewer takes the place of the old one.

    Parameters
    ----------
    about : About
        Of the run: instruments, limits and the time of its start.
    folder : Path
        Of the recording, which is written before this judge is given anything.
    """

    def __init__(self, about: About, folder: Path) -> None:
        self._about = about
        self._folder = folder
        self._reviewer = new_reviewer(about)
        self._lock = threading.Lock()
        self._snapshot = Review()
        self._taken_s = -_SNAPSHOT_PERIOD_S
        self._failed = False
        self._rows: Counter[str] = Counter()
        self._events: list[Event] = []
        self._anew: JudgedAnew | None = None
        self._since: list[Block | Event] = []
        self._stale = ""

    def take(self, item: Item) -> None:
        """Feed a Block or an Event to the reviewer."""
        if self._failed or isinstance(item, RawBytes):
            return
        try:
            self._change_over()
            with self._lock:
                self._reviewer.feed(item)
        except Exception:
            self._failed = True
            self.stop()
            raise
        self._keep(item)

    def _keep(self, item: Block | Event) -> None:
        """Keep what is needed to judge anew, and begin with it where a mark was withdrawn."""
        if isinstance(item, Block):
            self._rows[item.source] += len(item)
        else:
            self._events.append(item)
        if isinstance(item, Event) and item.kind is EventKind.WITHDRAWN:
            self.stop()
            self._since = []
            self._anew = JudgedAnew(self._folder, self._about, self._rows, self._events)
        elif self._anew is not None:
            self._since.append(item)

    def _change_over(self) -> None:
        """Put the reviewer that was made anew in the place of the old one, once it is ready."""
        anew = self._anew
        if anew is None or not anew.done:
            return
        self._anew, since, self._since = None, self._since, []
        if anew.reviewer is None:
            self._stale = _STALE.format(anew.trouble)
            return
        for item in since:
            anew.reviewer.feed(item)
        self._stale = ""
        with self._lock:
            self._reviewer = anew.reviewer

    def tick(self, now_ns: int) -> None:
        """Nothing to do: what is known changes with readings only."""

    def stop(self) -> None:
        """Let go of what is being judged anew; what is there stands."""
        if self._anew is not None:
            self._anew.stop()
            self._anew = None

    def review(self) -> Review:
        """Give what has been found so far; at most four times a second it is made afresh."""
        now_s = time.monotonic()
        if self._failed or now_s - self._taken_s < _SNAPSHOT_PERIOD_S:
            return self._snapshot
        with self._lock:
            review = self._reviewer.live()
        notes = (self._stale, *review.notes) if self._stale else review.notes
        self._snapshot = replace(review, notes=notes)
        self._taken_s = time.monotonic()
        return self._snapshot
