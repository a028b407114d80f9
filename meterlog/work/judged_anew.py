"""JudgedAnew: a run in progress judged from its beginning, without the marks withdrawn since."""

from __future__ import annotations

import threading
import time
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from meterlog.analysis import Reviewer
from meterlog.model import About, Block, Event, standing
from meterlog.model.errors import MeterlogError
from meterlog.recording import Recording
from meterlog.recording.merge import merge
from meterlog.work.attic_file import AtticFile

_PATIENCE_S = 3.0
"""What is taken is handed to the system within 0.1 s; a slow disk may take longer."""
_LOOK_S = 0.05
_ROWS = 8_192
"""Small pieces: between two of them the readers and the picture get their turn."""


class JudgedAnew:
    """A reviewer that is fed from the disk, on a thread of its own.

    Parameters
    ----------
    folder : Path
        Of the recording, which is still being written.
    about : About
    rows : mapping of str to int
        How many rows of each instrument it is fed; those behind are for whoever made it.
    events : sequence of Event
        All until now, in the order in which they came.

    Attributes
    ----------
    done : bool
    reviewer : Reviewer or None
        Once done; None where the rows could not be had.
    trouble : str
        Why not.
    """

    def __init__(
        self, folder: Path, about: About, rows: Mapping[str, int], events: Sequence[Event]
    ) -> None:
        self._folder = folder
        self._about = about
        self._rows = dict(rows)
        self._events = standing(sorted(events, key=lambda one: one.t_ns))
        self._stopped = threading.Event()
        self.done = False
        self.reviewer: Reviewer | None = None
        self.trouble = ""
        # A daemon: it only reads, and nothing waits for it.
        threading.Thread(target=self._work, name="meterlog-anew", daemon=True).start()

    def stop(self) -> None:
        """Leave off; it is never done then."""
        self._stopped.set()

    def _work(self) -> None:
        try:
            reviewer = self._judged()
        except MeterlogError as error:
            self.trouble = str(error)
        except Exception as error:  # noqa: BLE001 - top of a thread: whatever it is must be seen
            self.trouble = f"{type(error).__name__}: {error}"
        else:
            self.reviewer = reviewer
        self.done = not self._stopped.is_set()

    def _judged(self) -> Reviewer | None:
        recording = self._on_disk()
        if recording is None:
            self.trouble = "the readings are not on the disk."
            return None
        reviewer = new_reviewer(self._about)
        sources = [self._first(recording, one.key) for one in self._about.instruments]
        for item in merge(sources, self._events):
            if self._stopped.is_set():
                return None
            reviewer.feed(item)
        return reviewer

    def _on_disk(self) -> Recording | None:
        """Give the recording as soon as all rows that are wanted can be read."""
        until_s = time.monotonic() + _PATIENCE_S
        while not self._stopped.is_set():
            recording = Recording.open(self._folder)
            if all(recording.rows(key) >= count for key, count in self._rows.items()):
                return recording
            if time.monotonic() > until_s:
                return None
            self._stopped.wait(_LOOK_S)
        return None

    def _first(self, recording: Recording, key: str) -> Iterator[Block]:
        """Give as many rows of an instrument as are wanted; typed ones one by one, as they came."""
        left = self._rows.get(key, 0)
        typed = any(one.typed for one in self._about.instruments if one.key == key)
        for block in recording.blocks(key, 1 if typed else _ROWS):
            if left <= 0:
                return
            yield block if len(block) <= left else block.rows(0, left)
            left -= len(block)


def new_reviewer(about: About) -> Reviewer:
    """Give the reviewer of a run that begins."""
    return Reviewer(
        about.instruments,
        about.limits,
        about.started_utc,
        about.job.measured_under,
        attic=AtticFile(),
    )
