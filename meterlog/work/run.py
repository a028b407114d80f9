"""Run: meters, bus, disk and judge put together for one recording in progress."""

from __future__ import annotations

import shutil
import uuid
from collections.abc import Sequence
from pathlib import Path

from meterlog import __version__
from meterlog.acquire import Acquisition, Bus, Clock, MeterChoice
from meterlog.model import About, Event, EventKind, Instrument, Job, Limits, Origin, Review
from meterlog.model.errors import DiskFailed, RecordingError, RecordingExists, UsageError
from meterlog.recording import Recorder, seal
from meterlog.work.judge import Judge
from meterlog.work.live_tail import LiveTail
from meterlog.work.run_status import RunStatus


class Run:
    """A recording in progress: start it, mark what happens, stop it.

    Parameters
    ----------
    choices : sequence of MeterChoice
        At least one meter, with the roles of its channels.
    limits : Limits
        By which the live judgement is made; kept with the recording.
    folder : Path
        Where the recording goes; absent or empty.
    job : Job
    origin : Origin or None
        None: ``simulated`` as soon as one instrument says so of itself, else ``measured``.
    keep_raw : bool
        Keep the bytes as they came, too.

    Raises
    ------
    UsageError
        If there is no meter.
    """

    def __init__(
        self,
        choices: Sequence[MeterChoice],
        limits: Limits,
        folder: Path,
        job: Job | None = None,
        origin: Origin | None = None,
        *,
        keep_raw: bool = True,
    ) -> None:
        if not choices:
            raise UsageError("there is no meter to record.", remedy="Choose at least one.")
        self.folder = folder
        self.limits = limits
        self.tail = LiveTail()
        self.about: About | None = None
        self._choices = tuple(choices)
        self._job = job or Job()
        self._origin = origin
        self._keep_raw = keep_raw
        self._clock = Clock.start()
        self._acquisition: Acquisition | None = None
        self._bus: Bus | None = None
        self._recorder: Recorder | None = None
        self._judge: Judge | None = None
        self._running = False
        self._ended_ns: int | None = None
        self._seal_failed = ""
        self._marks = 0

    @property
    def instruments(self) -> tuple[Instrument, ...]:
        """The instruments as they were met; empty before :meth:`start`."""
        return self.about.instruments if self.about else ()

    @property
    def is_running(self) -> bool:
        """True from :meth:`start` to :meth:`stop`."""
        return self._running

    def start(self) -> None:
        """Open the meters and begin to record.

        Raises
        ------
        RecordingExists
            If the folder is there and holds something.
        RecordingError
            If the folder can't be made.
        LinkError, TalkError
            If a meter can't be opened or does not answer; all others are closed again.
        """
        if self.folder.exists() and (not self.folder.is_dir() or any(self.folder.iterdir())):
            raise RecordingExists(
                "is there already.", subject=str(self.folder), remedy="Choose another folder."
            )
        self._clock = Clock.start()
        acquisition = Acquisition(self._choices, self._clock)
        instruments = acquisition.connect()
        try:
            self.about = self._head(instruments)
            self._recorder = Recorder.create(self.folder, self.about, self._keep_raw)
            self._judge = Judge(instruments, self.limits)
            self._bus = Bus([self._recorder, self._judge, self.tail], self._clock)
            self._bus.start()
            acquisition.start(self._bus.put)
        except BaseException:
            acquisition.stop()
            if self._bus is not None:
                self._bus.stop()
            raise
        self._acquisition = acquisition
        self._running = True

    def _head(self, instruments: tuple[Instrument, ...]) -> About:
        origin = self._origin
        if origin is None:
            simulated = any(instrument.simulated for instrument in instruments)
            origin = Origin.SIMULATED if simulated else Origin.MEASURED
        return About(
            recording_id=str(uuid.uuid4()),
            started_utc=self._clock.started_utc,
            local_offset_s=self._clock.local_offset_s,
            zero_ns=self._clock.zero_ns,
            program=f"meterlog {__version__}",
            origin=origin,
            instruments=instruments,
            limits=self.limits,
            job=self._job,
        )

    def now_ns(self) -> int:
        """Nanoseconds since the recording's zero."""
        return self._clock.now_ns()

    def mark(self, kind: EventKind, value: str = "", at_ns: int | None = None) -> Event:
        """Put what the technician did into the recording.

        Parameters
        ----------
        kind : EventKind
        value : str
            For ``speed`` the commanded step, for ``note`` the words.
        at_ns : int or None, nanoseconds since the recording's zero
            None: now.

        Returns
        -------
        Event
            As recorded.

        Raises
        ------
        UsageError
            If nothing is being recorded, or a speed is no whole number of 0 or more.
        """
        if self._bus is None or not self._running:
            raise UsageError("nothing is being recorded.", remedy="Start a recording first.")
        event = Event(self._clock.now_ns() if at_ns is None else at_ns, kind, value)
        if kind is EventKind.SPEED and not (value.isascii() and value.isdecimal()):
            raise UsageError(
                "is no speed step.", subject=value, remedy="Expected 0 for off, or 1, 2, 3 ..."
            )
        self._bus.put(event)
        self._marks += 1
        return event

    def review(self) -> Review:
        """Give what has been found so far; made afresh at most four times a second."""
        return self._judge.review() if self._judge else Review()

    def status(self) -> RunStatus:
        """Tell how the run is doing."""
        bus, recorder, acquisition = self._bus, self._recorder, self._acquisition
        failed = (recorder.failed if recorder else "") or self._seal_failed
        meters = acquisition.state() if acquisition else ()
        elapsed_ns = self._clock.now_ns() if self._running else self._ended_ns or 0
        return RunStatus(
            elapsed_ns=elapsed_ns,
            recording=self._running and not failed,
            failed=failed,
            disk_free=_disk_free(self.folder),
            meters=meters,
            rows=dict(recorder.rows) if recorder else {},
            refused=sum(meter.refused for meter in meters),
            events=self.tail.events,
            marks=self._marks,
            faults=bus.faults if bus else (),
            waiting=bus.waiting if bus else 0,
            dropped_rows=self.tail.dropped_rows,
        )

    def stop(self, outcome: str = "complete") -> Path:
        """End the recording: what is under way is written, closed and sealed.

        Parameters
        ----------
        outcome : str
            ``complete``, ``stopped`` (by the user before its time) or ``interrupted``.

        Returns
        -------
        Path
            The folder. Calling again does nothing and gives it again.

        Raises
        ------
        DiskFailed
            If not all readings could be kept, or the recording can't be sealed. Everything is
            closed all the same.
        """
        if not self._running or not (self._acquisition and self._bus and self._recorder):
            return self.folder
        self._running = False
        self._acquisition.stop()
        self._bus.stop()
        self._ended_ns = self._clock.now_ns()
        self._finish(self._recorder, outcome)
        if self._recorder.failed or self._seal_failed:
            raise DiskFailed(
                f"not everything could be kept: {self._recorder.failed or self._seal_failed}",
                subject=str(self.folder),
                remedy="What was written before can still be reviewed and exported.",
            )
        return self.folder

    def _finish(self, recorder: Recorder, outcome: str) -> None:
        try:
            recorder.close(outcome)
            seal(self.folder)
        except (RecordingError, OSError) as error:
            self._seal_failed = str(error)


def _disk_free(folder: Path) -> int:
    existing = next((place for place in (folder, *folder.parents) if place.exists()), None)
    try:
        return shutil.disk_usage(existing).free if existing else -1
    except OSError:
        return -1
