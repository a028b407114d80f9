"""Recorder: the first sink of the bus; what it has taken is on the disk within a second."""

from __future__ import annotations

import contextlib
import shutil
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from types import MappingProxyType

from meterlog.model import About, Block, Event, EventKind, RawBytes
from meterlog.model.errors import DiskFailed, RecordingError, RecordingExists
from meterlog.profile.full_path import rooted
from meterlog.recording import layout
from meterlog.recording.about_text import about_bytes
from meterlog.recording.append_file import AppendFile, remedy_against, sync_folder, write_aside
from meterlog.recording.background_sync import BackgroundSync
from meterlog.recording.event_chain import EventChain
from meterlog.recording.instrument_files import InstrumentFiles
from meterlog.recording.pyramid_writer import PyramidWriter, pyramid_folder
from meterlog.recording.writer_lock import WriterLock

_FLUSH_NS = 70_000_000
"""Oldest age of what waits; ticked at most 25 ms late all is handed over within 100 ms."""
_SYNC_NS = 900_000_000
_SETTLE_NS = 100_000_000
"""What came of a sync is looked at so often, if nothing else comes."""
_MARKS = frozenset(
    {
        EventKind.SPEED,
        EventKind.TAP,
        EventKind.WIGGLE,
        EventKind.NOTE,
        EventKind.WITHDRAWN,
        EventKind.CIRCUIT,
        EventKind.END,
    }
)
"""Kinds that a person made or waits for: synced at once."""


class Recorder:
    """Writes one recording: Blocks, Events and RawBytes in, a folder out.

    Use :meth:`create`. All calls come from one thread, the bus's.

    Attributes
    ----------
    folder : Path
        From the root.
    failure : DiskFailed or None
        What the disk refused first; None when all is well.
    safe : int
        How many Blocks and lots of bytes, of those that were taken, are on the disk itself.
    """

    def __init__(self, folder: Path, about: About, lock: WriterLock, *, keep_raw: bool) -> None:
        self.folder = folder
        self.failure: DiskFailed | None = None
        self.safe = 0
        self._taken = self._under_way = 0
        self._background = BackgroundSync()
        self._now: Callable[[], int] = time.monotonic_ns
        self._lock = lock
        self._files = {
            instrument.key: InstrumentFiles(
                folder,
                instrument,
                keep_raw=keep_raw,
                pyramid=PyramidWriter(
                    pyramid_folder(folder, instrument.key),
                    about.recording_id,
                    instrument.key,
                    len(instrument.channels),
                ),
            )
            for instrument in about.instruments
        }
        self._events = AppendFile(folder / layout.EVENTS, layout.EVENTS)
        self._chain = EventChain(about_bytes(about))
        self._waiting_since: int | None = None
        self._synced = self._now()
        self._last_ns = 0
        self._closed = False

    @property
    def failed(self) -> str:
        """What the disk refused first, in words; empty when all is well."""
        return str(self.failure or "")

    @classmethod
    def create(cls, folder: Path, about: About, keep_raw: bool = True) -> Recorder:  # noqa: FBT001, FBT002
        """Make the folder, put ``about.json`` on the disk, and be ready for readings.

        Parameters
        ----------
        folder : Path
            Absent or empty.
        about : About
        keep_raw : bool
            Keep the bytes as they came, too.

        Returns
        -------
        Recorder

        Raises
        ------
        RecordingExists
            If the folder holds anything.
        DiskFailed
            If the folder or a file can't be made.
        RecordingError
            If an instrument's key or channel names can't be used in a recording.
        UsageError
            If the folder is relative and that one is in has gone.
        """
        _check_keys(about)
        folder = rooted(folder)  # while it is known: later its files could not be looked for
        refuse_taken(folder)
        new = [place for place in (folder, *folder.parents) if not place.exists()]
        try:
            _take_folder(folder)
            with _nothing_left(folder, new=folder in new) as lock:
                # All of it or nothing: a head that was broken off could not be opened.
                write_aside(folder / layout.ABOUT, about_bytes(about))
                recorder = cls(folder, about, lock, keep_raw=keep_raw)
                # The names of the files, and of each folder that was made for them.
                for place in (folder / layout.PAYLOAD, folder, *(one.parent for one in new)):
                    sync_folder(place)
        except OSError as error:
            raise DiskFailed(
                f"can't be made: {error.strerror}.",
                subject=str(folder),
                remedy=remedy_against(error),
            ) from error
        return recorder

    @property
    def rows(self) -> Mapping[str, int]:
        """Rows of each instrument that have been handed to the system."""
        return MappingProxyType({key: files.rows for key, files in self._files.items()})

    @property
    def lost_rows(self) -> int:
        """Rows that were taken and could not be kept."""
        return sum(files.lost_rows for files in self._files.values())

    def take(self, item: Block | Event | RawBytes) -> None:
        """Take what the bus brings.

        Parameters
        ----------
        item : Block, Event or RawBytes
            Events are written at once; a technician's mark is synced at once too.

        Raises
        ------
        DiskFailed
            Once, when the disk refuses for the first time. After that the files that failed take
            nothing more, the others go on, and ``lost_rows`` counts.
        ValueError
            If the item belongs to no instrument of this recording.
        """
        if isinstance(item, Event):
            self._last_ns = max(self._last_ns, item.t_ns)
            self._guard(lambda: self._write(item))
            return
        self._taken += 1
        files = self._files.get(item.source)
        if files is None:
            raise ValueError(f"no instrument {item.source!r} in this recording")
        if isinstance(item, RawBytes):
            files.take_raw(item)
        else:
            if len(item):
                self._last_ns = max(self._last_ns, int(item.t_ns[-1]))
            self._guard(lambda: files.take(item))
        self._keep_time()

    def tick(self, now_ns: int) -> None:
        """Flush and sync what is due.

        Parameters
        ----------
        now_ns : int, nanoseconds since the recording's zero

        Raises
        ------
        DiskFailed
            As :meth:`take`.
        """
        self._last_ns = max(self._last_ns, now_ns)
        self._keep_time()

    def rest_ns(self, now_ns: int) -> int:
        """Tell for how long nothing is due if nothing comes, nanoseconds, by the disk's clock."""
        del now_ns
        now = self._now()
        rest = _SETTLE_NS if self._background.busy else self._synced + _SYNC_NS - now
        waiting = self._waiting_since
        return rest if waiting is None else min(rest, waiting + _FLUSH_NS - now)

    def flush(self) -> None:
        """Hand everything that waits to the system now.

        Raises
        ------
        DiskFailed
            As :meth:`take`.
        """
        self._waiting_since = None
        self._guard(*(files.flush for files in self._files.values()))

    def close(self, outcome: str = "complete") -> None:
        """Write the END event and the end marks, sync and close. Does not seal; never raises.

        Parameters
        ----------
        outcome : str
            ``complete``, ``interrupted`` or another word for the END event.
        """
        if self._closed:
            return
        self._closed = True
        end = Event(self._last_ns, EventKind.END, outcome)
        with contextlib.suppress(DiskFailed):
            self._settle_sync(wait=True)
        with contextlib.suppress(DiskFailed):  # ``failed`` keeps what it says
            self._guard(*(files.finish for files in self._files.values()))
        # Before the end is written, which is synced at once: where an end is, all is.
        with contextlib.suppress(DiskFailed):
            self._guard(*(file.sync for file in self._all_files()))
        with contextlib.suppress(DiskFailed):
            self._guard(lambda: self._write(end))
        for file in self._all_files():
            file.close()
        for files in self._files.values():
            files.finish_pyramid()
        self._lock.release()

    def _all_files(self) -> Iterator[AppendFile]:
        for files in self._files.values():
            yield from files.files()
        yield self._events

    def _keep_time(self) -> None:
        now = self._now()
        if self._waiting_since is None:
            if any(files.has_waiting for files in self._files.values()):
                self._waiting_since = now
        elif now - self._waiting_since >= _FLUSH_NS:
            self.flush()
        self._settle_sync()
        if now - self._synced >= _SYNC_NS and not self._background.busy:
            self._synced = now
            self._begin_sync()

    def _begin_sync(self) -> None:
        self.flush()
        self._under_way = self._taken
        if any(file.is_dirty for file in self._all_files()):
            self._background.begin(tuple(self._all_files()))
        elif not self.failed:
            self.safe = self._taken

    def _settle_sync(self, *, wait: bool = False) -> None:
        """Take note of what came of the sync that was under way."""
        failures = self._background.outcome(wait=wait)
        if failures is None:
            return
        if not failures and not self.failed:
            self.safe = self._under_way
        self._guard(*(partial(_raise, failure) for failure in failures))

    def sync(self) -> None:
        """Hand everything that waits to the system, and to the disk itself.

        Raises
        ------
        DiskFailed
            As :meth:`take`.
        """
        self._settle_sync(wait=True)
        self.flush()
        self._guard(*(file.sync for file in self._all_files()))
        if not self.failed:
            self.safe = self._taken

    def _write(self, event: Event) -> None:
        if self._events.failed:
            return
        self._events.append([self._chain.line(event)])
        if event.kind in _MARKS:
            # A disk may take its time: what waits is handed over before, not after it.
            if not self._closed:
                self.flush()
            self._events.sync()

    def _guard(self, *steps: Callable[[], None]) -> None:
        """Take every step, whatever the one before met; raise the recording's first failure."""
        first: DiskFailed | None = None
        for step in steps:
            try:
                step()
            except DiskFailed as error:
                first = first or error
        if first is not None and not self.failed:
            self.failure = first
            self._note_fault(first)
            raise first

    def _note_fault(self, error: DiskFailed) -> None:
        """Leave a word in the events, if they still can be written: a reader must know."""
        with contextlib.suppress(DiskFailed):
            self._write(Event(self._last_ns, EventKind.FAULT, f"not kept: {error}"))


def _raise(error: DiskFailed) -> None:
    raise error


def _take_folder(folder: Path) -> None:
    """Make the folder; who makes ``data`` in it owns it, however many programs try at once."""
    folder.mkdir(parents=True, exist_ok=True)
    try:
        (folder / layout.PAYLOAD).mkdir()
    except FileExistsError as error:
        raise RecordingExists(
            "another program has just begun a recording there.",
            subject=str(folder),
            remedy="Choose another folder; recordings are never overwritten.",
        ) from error


@contextmanager
def _nothing_left(folder: Path, *, new: bool) -> Iterator[WriterLock]:
    """Lock a folder that is this program's; if the block fails, take all away that it has made.

    The lock is there before anything that makes the folder a recording: nobody may find one that
    is being begun, and take it for one that was cut off.
    """
    lock: WriterLock | None = None
    try:
        lock = WriterLock(folder)
        yield lock
    except BaseException:
        for name in (layout.PAYLOAD, layout.CACHE):
            shutil.rmtree(folder / name, ignore_errors=True)
        if lock is not None:
            lock.release()
        if new:
            with contextlib.suppress(OSError):  # it is empty, or not only this program's
                folder.rmdir()
        raise


def refuse_taken(folder: Path) -> None:
    """Refuse a folder for a new recording that holds anything.

    Raises
    ------
    RecordingExists
    DiskFailed
        If it can't be looked into.
    """
    try:
        taken = folder.exists() and (not folder.is_dir() or any(folder.iterdir()))
    except OSError as error:
        raise DiskFailed(
            f"can't be looked into: {error.strerror}.",
            subject=str(folder),
            remedy=remedy_against(error),
        ) from error
    if taken:
        raise RecordingExists(
            "is there already and is not empty.",
            subject=str(folder),
            remedy="Choose another folder; recordings are never overwritten.",
        )


def _check_keys(about: About) -> None:
    keys = [instrument.key for instrument in about.instruments]
    for key in keys:
        if not layout.is_file_key(key):
            raise RecordingError(
                "can't be part of a file's name.",
                subject=repr(key),
                remedy="Use letters, digits, dot, dash and underscore only.",
            )
    if len({key.lower() for key in keys}) != len(keys):
        raise RecordingError("two instruments have the same key.", subject=", ".join(keys))
