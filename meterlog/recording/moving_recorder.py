"""MovingRecorder: a recorder that goes on elsewhere when the disk fails."""

from __future__ import annotations

import contextlib
import errno
import shutil
import time
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType

from meterlog.model import About, Block, Event, EventKind, RawBytes
from meterlog.model.errors import DiskFailed, RecordingError, RecordingExists
from meterlog.recording import layout
from meterlog.recording.append_file import AppendFile, sync_folder
from meterlog.recording.continuation import Continuation, continuation_bytes
from meterlog.recording.recorder import Recorder
from meterlog.recording.spill_places import fresh_spill, is_own, spill_places

_MOST_EVENTS = 100_000
"""Kept for a recording that goes on elsewhere: a day of one a second."""
_TRIES = 100
"""Each is lost to another recording that goes on in the same place."""
_MOMENT_S = 2.0
"""A move that takes longer is no passing trouble: a place that hangs, such as a share."""
MOVED = "goes on elsewhere"
"""Outcome of a recording whose disk failed."""


class MovingRecorder:
    """A sink like :class:`Recorder`, over as many folders as it takes.

    What was taken since the disk last kept everything (about a second) stays in memory, and so do
    the events. When a disk fails, the recording goes on in the first place that takes it, which
    begins with these: the two overlap, and nothing that the failing disk still had in its cache
    is missing. Both are recordings by themselves, and can be joined
    (:mod:`~meterlog.recording.joining`).

    Parameters
    ----------
    folder : Path
        Absent or empty.
    about : About
    keep_raw : bool
    places : callable
        Gives the folders in which to go on; relative ones are meant from where it was begun.

    Attributes
    ----------
    parts : list of Path
        The folders of the recording from the root, oldest first; the last is being written.
    moved : str
        Why and where the recording goes on elsewhere, for a person; empty when it does not.

    Raises
    ------
    RecordingExists, DiskFailed, RecordingError, UsageError
        As :meth:`Recorder.create`: a recording that can't be begun is not begun elsewhere.
    """

    def __init__(
        self,
        folder: Path,
        about: About,
        *,
        keep_raw: bool = True,
        places: Callable[[], Sequence[Path]] = spill_places,
    ) -> None:
        self._about = about
        self._keep_raw = keep_raw
        self._places = places
        self._recorder = Recorder.create(folder, about, keep_raw)
        self._begun_in = _here()
        self.parts = [self._recorder.folder]
        self.moved = ""
        self._events: list[Event] = []
        self._nowhere = False
        self._moving_s: float | None = None
        self._since: list[Block | RawBytes] = []
        self._let_go = 0
        self._rows: Counter[str] = Counter({one.key: 0 for one in about.instruments})
        self._frames: Counter[str] = Counter({one.key: 0 for one in about.instruments})
        self._first: Mapping[str, int] = dict(self._rows)

    @property
    def failed(self) -> str:
        """Why nothing is being kept anywhere; empty while all is well, or may be in a moment."""
        begun_s = self._moving_s
        late = begun_s is not None and time.monotonic() - begun_s > _MOMENT_S
        return self._recorder.failed if self._nowhere or late else ""

    @property
    def rows(self) -> Mapping[str, int]:
        """Rows of each instrument that have been handed to the system, all parts together."""
        return MappingProxyType(
            {key: self._first[key] + rows for key, rows in self._recorder.rows.items()}
        )

    @property
    def lost_rows(self) -> int:
        """Rows that were taken and could not be kept anywhere."""
        return self._recorder.lost_rows

    def take(self, item: Block | Event | RawBytes) -> None:
        """Take what the bus brings.

        Raises
        ------
        DiskFailed
            Once for each disk that fails; says where the recording goes on, or that it does not.
        ValueError
            If the item belongs to no instrument of this recording.
        """
        if isinstance(item, Event):
            self._events.append(item)
            del self._events[:-_MOST_EVENTS]
        elif not self._recorder.failed:
            self._since.append(item)
        self._try(lambda: self._recorder.take(item))

    def tick(self, now_ns: int) -> None:
        """Flush and sync what is due.

        Raises
        ------
        DiskFailed
            As :meth:`take`.
        """
        self._try(lambda: self._recorder.tick(now_ns))

    def rest_ns(self, now_ns: int) -> int:
        """Tell for how long nothing is due if nothing comes, nanoseconds."""
        return self._recorder.rest_ns(now_ns)

    def close(self, outcome: str = "complete") -> None:
        """Write the END event, sync and close; moves once more if that is what it takes."""
        if not self._recorder.failed:
            with contextlib.suppress(DiskFailed):  # ``failed`` or ``moved`` keep what it says
                self._try(self._recorder.sync)
        self._recorder.close(outcome)
        self._nowhere |= bool(self._recorder.failed)

    def _try(self, step: Callable[[], None]) -> None:
        try:
            step()
        except DiskFailed as error:
            self._moving_s = time.monotonic()
            try:
                self._move(error)
            finally:
                self._nowhere, self._moving_s = bool(self._recorder.failed), None
        if self._recorder.safe > self._let_go:
            self._forget()

    def _forget(self) -> None:
        """Let go of what is on the disk itself."""
        many = self._recorder.safe - self._let_go
        self._let_go = self._recorder.safe
        rows, frames = self._counts(self._since[:many])
        self._rows += rows
        self._frames += frames
        del self._since[:many]

    def _counts(self, items: Sequence[Block | RawBytes]) -> tuple[Counter[str], Counter[str]]:
        rows: Counter[str] = Counter()
        frames: Counter[str] = Counter()
        for item in items:
            if isinstance(item, Block):
                rows[item.source] += len(item)
            elif self._keep_raw:
                frames[item.source] += 1
        return rows, frames

    def _move(self, error: DiskFailed) -> None:
        """Go on in the first place that takes all there is; raise what is to be said of it."""
        before, tried = self.parts[-1], []
        keys = [one.key for one in self._about.instruments]
        went_on = Continuation(
            before,
            error.message,
            {key: self._rows[key] for key in keys},
            {key: self._frames[key] for key in keys},
        )
        for place in (self._begun_in / one for one in self._places()):
            try:
                folder, recorder = self._begin(place, went_on)
            except (RecordingError, OSError) as refused:
                tried.append(f"{place}: {_words(refused)}")
                continue
            old, self._recorder, self._let_go = self._recorder, recorder, 0
            self.parts.append(folder)
            self._first = went_on.rows
            self.moved = (
                f"{error.subject or before}: {error.message} The recording goes on in {folder}."
            )
            with contextlib.suppress(DiskFailed):
                old.take(Event(self._last_ns(), EventKind.FAULT, f"goes on in {folder}"))
            old.close(MOVED)
            raise DiskFailed(
                f"{error.message} The recording goes on in {folder}.",
                subject=error.subject or str(before),
                remedy="Nothing is lost so far; it is put together when the recording ends.",
            ) from error
        self._since = []  # nobody will ask for it any more
        raise DiskFailed(
            f"{error.message} It could not go on elsewhere either ({'; '.join(tried)}).",
            subject=error.subject,
            remedy=error.remedy,
        ) from error

    def _begin(self, place: Path, went_on: Continuation) -> tuple[Path, Recorder]:
        """Begin a recording there with all that the disk before may not have kept."""
        new = [one for one in (place, *place.parents) if not one.exists()]
        place.mkdir(mode=0o700, parents=True, exist_ok=True)
        for one in new:
            sync_folder(one.parent)
        if not is_own(place):
            raise PermissionError(13, "the folder is another user's")
        folder, recorder = self._fresh(place)
        try:
            note = AppendFile(folder / layout.CONTINUES, layout.CONTINUES)
            try:
                note.append([continuation_bytes(went_on)])
                note.sync()
            finally:
                note.close()
            sync_folder(folder / layout.PAYLOAD)
            words = f"goes on from {went_on.folder}: {went_on.because}"
            for item in (
                *self._events,
                *self._since,
                Event(self._last_ns(), EventKind.FAULT, words),
            ):
                # What belongs to no instrument was refused when it came, and told.
                with contextlib.suppress(ValueError):
                    recorder.take(item)
            recorder.sync()
        except BaseException:
            recorder.close(MOVED)
            shutil.rmtree(folder, ignore_errors=True)  # all of it is in memory still
            raise
        return folder, recorder

    def _fresh(self, place: Path) -> tuple[Path, Recorder]:
        """Begin an empty recording there, in a folder that no other program has."""
        for _ in range(_TRIES):
            folder = fresh_spill(place, self.parts[0].name)
            # Another recording of this name may go on there at the same moment. What is in a
            # folder that it has taken is its own.
            with contextlib.suppress(RecordingExists):
                return folder, Recorder.create(folder, self._about, self._keep_raw)
        raise FileExistsError(errno.EEXIST, "other programs take every folder in it")

    def _last_ns(self) -> int:
        """Give the latest time among what is in memory, nanoseconds since the zero."""
        events = [event.t_ns for event in self._events[-1:]]
        blocks = [int(one.t_ns[-1]) for one in self._since if isinstance(one, Block) and len(one)]
        return max([0, *events, *blocks])


def _here() -> Path:
    """Give the folder one is in; where it has gone relative places stay as they stand."""
    try:
        return Path.cwd()
    except OSError:
        return Path()


def _words(error: RecordingError | OSError) -> str:
    if isinstance(error, RecordingError):
        return error.message
    return error.strerror or str(error)
