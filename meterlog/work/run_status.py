"""RunStatus: how a run in progress is doing, at one glance."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType

from meterlog.acquire import ReaderState
from meterlog.model import Event

MANY_WAITING = 1_000
"""Items between readers and disk; usually none or a few wait, and even fast meters put no more
than some hundred a second on the bus."""


@dataclass(frozen=True, slots=True)
class RunStatus:
    """One glance at a run.

    Attributes
    ----------
    elapsed_ns : int, nanoseconds since the recording's zero
        Stands still once the run has ended.
    recording : bool
        Readers are at work and the disk takes what they give.
    failed : str
        Why nothing is being kept; empty while all is well.
    disk_free : int, bytes
        Free on the recording's disk; -1 when it can't be told.
    meters : tuple of ReaderState
        One for each instrument.
    rows : mapping of str to int
        Rows handed to the disk, by instrument; of a recording that was read, :attr:`readings`.
    refused : int
        Lines and answers not understood, all instruments together.
    events : tuple of Event
        The newest, oldest first.
    marks : int
        How many marks the technician has made.
    faults : tuple of str
        Parts of the program that failed while the others went on.
    waiting : int
        Items between the readers and the disk.
    lost_rows : int
        Rows that the disk did not take.
    dropped_rows : int
        Rows that the screen did not come to fetch; they are on the disk.
    warnings : tuple of str
        Why the readings may not be what they seem: no zero taken, a stuck value, ...
    zero : str
        How the taking of a zero goes or went, in one sentence; empty before the first.
    moved : str
        Which disk failed and where the recording goes on; empty while none has. Everything is
        being kept all the same, unless ``failed`` says otherwise.
    sleep : str
        Whether the computer is kept awake, and what to do if it is not; empty while nothing is
        being recorded.
    """

    elapsed_ns: int = 0
    recording: bool = False
    failed: str = ""
    disk_free: int = -1
    meters: tuple[ReaderState, ...] = ()
    rows: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    refused: int = 0
    events: tuple[Event, ...] = ()
    marks: int = 0
    faults: tuple[str, ...] = ()
    waiting: int = 0
    lost_rows: int = 0
    dropped_rows: int = 0
    warnings: tuple[str, ...] = ()
    zero: str = ""
    moved: str = ""
    sleep: str = ""

    @property
    def lost(self) -> int:
        """Bytes lost or damaged on the lines, all instruments together."""
        return sum(meter.lost for meter in self.meters)

    @property
    def readings(self) -> Mapping[str, int]:
        """Readings that are kept, by instrument, without rows that only say that nothing came."""
        came = {meter.key: meter.readings for meter in self.meters}
        return {key: min(count, came.get(key, count)) for key, count in self.rows.items()}

    @property
    def falls_behind(self) -> bool:
        """True when so much waits that the disk can't keep up; nothing is lost yet."""
        return self.waiting >= MANY_WAITING

    @property
    def elapsed_s(self) -> float:
        """Seconds since the recording's zero."""
        return self.elapsed_ns / 1e9


def disk_free(folder: Path) -> int:
    """Give the bytes free on the disk where a folder is or will be; -1 when it can't be told."""
    existing = next((place for place in (folder, *folder.parents) if place.exists()), None)
    try:
        return shutil.disk_usage(existing).free if existing else -1
    except OSError:
        return -1
