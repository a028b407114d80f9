"""Judge: the reviewer of a run in progress, fed on the bus thread and looked at from another."""

from __future__ import annotations

import threading
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path

from meterlog.acquire import NO_HURRY_NS, Item
from meterlog.model import About, Block, Event, EventKind, RawBytes, Review, join
from meterlog.work.judged_anew import JudgedAnew, new_reviewer

_SNAPSHOT_PERIOD_S = 0.25
_CALM_PERIOD_S = 1.0
"""While nothing but more of the same comes in: figures that settle needn't be told more often."""
_GATHER_S = 0.2
_GATHER_ROWS = 2_000
"""A meter's readings are judged together over so much time or so many, as one by one they cost
several times as much. Whoever asks for a review has them judged at once."""
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
        self._taken_s = -_CALM_PERIOD_S
        self._state: object = None
        self._typed = {one.key for one in about.instruments if one.typed}
        self._gathered: list[Block] = []
        self._gathered_rows = 0
        self._gathered_s = 0.0
        self._failed = False
        self._fault: Exception | None = None
        self._rows: Counter[str] = Counter()
        self._events: list[Event] = []
        self._anew: JudgedAnew | None = None
        self._since: list[Block | Event] = []
        self._stale = ""

    def take(self, item: Item) -> None:
        """Feed a Block or an Event to the reviewer.

        Raises
        ------
        Exception
            Whatever the reviewer failed with, once.
        """
        self._tell_fault()
        if self._failed or isinstance(item, RawBytes):
            return
        try:
            self._change_over()
            with self._lock:
                self._gather(item)
        except Exception:
            self._failed = True
            self.stop()
            raise
        self._keep(item)

    def _gather(self, item: Block | Event) -> None:
        """Let a Block wait for more of the same meter's; all else is judged in its order."""
        joins = isinstance(item, Block) and item.source not in self._typed
        if not joins or (self._gathered and self._gathered[0].source != item.source):
            self._judge_gathered()
        if not isinstance(item, Block) or not joins:
            self._reviewer.feed(item)
            return
        now_s = time.monotonic()
        if not self._gathered:
            self._gathered_s = now_s
        self._gathered.append(item)
        self._gathered_rows += len(item)
        if self._gathered_rows >= _GATHER_ROWS or now_s - self._gathered_s >= _GATHER_S:
            self._judge_gathered()

    def _judge_gathered(self) -> None:
        if self._gathered:
            together, self._gathered, self._gathered_rows = join(self._gathered), [], 0
            self._reviewer.feed(together)

    def _tell_fault(self) -> None:
        """Raise, on the bus, what judging failed with in another thread."""
        fault, self._fault = self._fault, None
        if fault is not None:
            self.stop()
            raise fault

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
            self._gathered, self._gathered_rows = [], 0  # they are among those since
            self._reviewer = anew.reviewer

    def tick(self, now_ns: int) -> None:
        """Tell what judging failed with meanwhile; what is known changes with readings only."""
        del now_ns
        self._tell_fault()

    def rest_ns(self, now_ns: int) -> int:
        """Need ticks only to tell faults."""
        del now_ns
        return NO_HURRY_NS

    def stop(self) -> None:
        """Let go of what is being judged anew; what is there stands."""
        if self._anew is not None:
            self._anew.stop()
            self._anew = None

    def review(self) -> Review:
        """Give what has been found so far.

        It is made afresh at most four times a second, and once a second while nothing but more of
        the same comes in: no event, no other label.
        """
        now_s = time.monotonic()
        if self._failed or now_s - self._taken_s < _SNAPSHOT_PERIOD_S:
            return self._snapshot
        try:
            with self._lock:
                self._judge_gathered()
                state = (self._reviewer.state, len(self._events), self._stale)
                if state == self._state and now_s - self._taken_s < _CALM_PERIOD_S:
                    return self._snapshot
                review = self._reviewer.live()
        # Whoever looks goes on with what was known; the bus tells the fault.
        except Exception as error:  # noqa: BLE001
            self._failed, self._fault = True, error
            return self._snapshot
        notes = (self._stale, *review.notes) if self._stale else review.notes
        self._snapshot, self._state = replace(review, notes=notes), state
        self._taken_s = time.monotonic()
        return self._snapshot
