"""Run: meters, bus, disk and judge put together for one recording in progress."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from meterlog.acquire import (
    Acquisition,
    Bus,
    Clock,
    MeterChoice,
    SleepBlock,
    TimeWatch,
    ZeroTaking,
    bounds_when_asked,
)
from meterlog.model import (
    About,
    Event,
    EventKind,
    Instrument,
    Job,
    Limits,
    Origin,
    Review,
    Role,
)
from meterlog.model.errors import DiskFailed, EvidenceError, RecordingError, UsageError
from meterlog.profile.full_path import rooted
from meterlog.recording import MovingRecorder, refuse_taken, seal
from meterlog.recording.spill_places import spill_places
from meterlog.work.judge import Judge
from meterlog.work.kept_meters import KeptMeters, StatedMeter
from meterlog.work.live_tail import LiveTail
from meterlog.work.marks_made import MarksMade
from meterlog.work.parts_made import PartsMade
from meterlog.work.run_head import run_head
from meterlog.work.run_status import RunStatus, disk_free
from meterlog.work.skews import KeptSkews
from meterlog.work.zero_kept import ZeroKept


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
        None: ``simulated`` as soon as one instrument says so of itself, ``typed`` when all are
        typed by hand, else ``measured``.
    keep_raw : bool
        Keep the bytes as they came, too.
    stated : mapping of str to StatedMeter or None
        Model, serial number and calibration of meters by key; kept for later recordings.

    Attributes
    ----------
    places : callable
        Gives the folders to try, best first, should the disk fail. Set before :meth:`start`.

    Raises
    ------
    UsageError
        If there is no meter, or something is stated of one that is not there; if the folder is
        relative and that one is in has gone.
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
        stated: Mapping[str, StatedMeter] | None = None,
    ) -> None:
        if not choices:
            raise UsageError("there is no meter to record.", remedy="Choose at least one.")
        self._stated = dict(stated or {})
        self._kept_meters = KeptMeters()
        _refuse_unknown(self._stated, [choice.key for choice in choices])
        self._asked = rooted(folder)
        self.places: Callable[[], Sequence[Path]] = spill_places
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
        self._recorder: MovingRecorder | None = None
        self._awake: SleepBlock | None = None
        self._parts = PartsMade()
        self._judge: Judge | None = None
        self._running = False
        self._ended_ns: int | None = None
        self._seal_failed = ""
        self.marks = MarksMade()
        self._zero = ZeroKept()

    @property
    def folder(self) -> Path:
        """Where the recording is being written; once it has ended, where the whole of it is.

        The folder that was asked for, unless its disk failed.
        """
        if self._parts.folder is not None:
            return self._parts.folder
        return self._recorder.parts[-1] if self._recorder else self._asked

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
        UsageError
            If a meter says other of itself than was stated; likewise.
        """
        refuse_taken(self._asked)
        self._clock = Clock.start()
        acquisition = Acquisition(self._choices, self._clock, self._known)
        instruments = acquisition.connect()
        try:
            self.about = run_head(self._clock, instruments, self._origin, self.limits, self._job)
            self._recorder = MovingRecorder(
                self._asked, self.about, keep_raw=self._keep_raw, places=self.places
            )
            self._judge = Judge(self.about, self._asked)
            times = TimeWatch(self._put_own)
            self._bus = Bus([self._recorder, self._judge, self.tail, times], self._clock)
            self._bus.start()
            acquisition.start(self._bus.put)
        except BaseException:
            acquisition.stop()
            if self._bus is not None:
                self._bus.stop()
            raise
        self._acquisition = acquisition
        self._awake = SleepBlock()
        self._running = True

    def _put_own(self, event: Event) -> None:
        """Put what this program itself noticed into the recording."""
        if self._bus is not None:
            self._bus.put(event)

    def _known(self, met: Sequence[Instrument]) -> tuple[Instrument, ...]:
        """Give instruments with what is kept and stated of them, and of their skews."""
        skews, named = KeptSkews(), self._kept_meters.identified(met, self._stated)
        known = skews.applied(named)
        if known != named:
            return known
        # A skew may have been measured before the serial number was stated.
        return tuple(
            replace(one, skew_s=as_met.skew_s, skew_u_s=as_met.skew_u_s)
            for one, as_met in zip(named, skews.applied(met), strict=True)
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
        t_ns = self._clock.now_ns() if at_ns is None else at_ns
        event = self.marks.make(t_ns, kind, value)
        self._bus.put(event)
        return event

    def undo_mark(self) -> tuple[Event, Event]:
        """Take back the mark that was made last and still stands: a speed, tap, wiggle or note.

        It is kept, with an entry on top; the judgement in progress is made anew without it.

        Returns
        -------
        mark, entry : Event
            What was taken back, and what did it.

        Raises
        ------
        UsageError
            If nothing is being recorded, or no mark is left to take back.
        """
        if self._bus is None or not self._running:
            raise UsageError("nothing is being recorded.", remedy="Start a recording first.")
        mark, entry = self.marks.take_back(self._clock.now_ns())
        self._bus.put(entry)
        return mark, entry

    def take_zero(self, role: Role, seconds: float = 3.0) -> ZeroTaking:
        """Take the zero of a channel from the readings to come, with its clamp empty and shut.

        Returns at once. When enough readings are there and they can be a zero, it is subtracted
        from then on, told by a ``zero`` event, and kept for later recordings.

        Parameters
        ----------
        role : Role
        seconds : float, seconds
            Over which readings are gathered.

        Returns
        -------
        ZeroTaking
            Says how it goes, and why it was refused.

        Raises
        ------
        UsageError
            If nothing is being recorded, no channel plays ``role``, or a zero is being taken.
        """
        if self._acquisition is None or not self._running:
            raise UsageError("nothing is being recorded.", remedy="Start a recording first.")
        for instrument in self.instruments:
            column = instrument.column(role)
            if column is None:
                continue
            self._zero.settle(self.instruments)
            channel = instrument.channels[column]
            bounds = bounds_when_asked(channel, self.marks.speed, self.limits.open_current_a)
            taking = ZeroTaking(instrument.key, column, channel, seconds, bounds)
            self._acquisition.take_zero(taking)
            self._zero.follow(taking)
            return taking
        raise UsageError(
            "no channel plays this role, so it has no zero.",
            subject=role.value,
            remedy=f"Start again with --assign {role.value}=PROFILE.CHANNEL.",
        )

    def type_reading(self, key: str, values: Sequence[float]) -> None:
        """Put a reading that somebody read off a meter into the recording, as of now.

        Parameters
        ----------
        key : str
            Of an instrument that is typed by hand.
        values : sequence of float
            As the meter shows them, one a channel; scale and zero are applied as to any reading.

        Raises
        ------
        UsageError
            If nothing is being recorded, there is no such instrument, it is not typed by hand,
            or the values are not one finite number a channel.
        """
        if self._acquisition is None or not self._running:
            raise UsageError("nothing is being recorded.", remedy="Start a recording first.")
        self._acquisition.type_reading(key, values)

    def review(self) -> Review:
        """Give what has been found so far; made afresh at most four times a second."""
        return self._judge.review() if self._judge else Review()

    def status(self) -> RunStatus:
        """Tell how the run is doing."""
        self._zero.settle(self.instruments)
        bus, recorder, acquisition = self._bus, self._recorder, self._acquisition
        failed = (recorder.failed if recorder else "") or self._seal_failed
        meters = acquisition.state() if acquisition else ()
        elapsed_ns = self._clock.now_ns() if self._running else self._ended_ns or 0
        return RunStatus(
            elapsed_ns=elapsed_ns,
            recording=self._running and not failed,
            failed=failed,
            disk_free=disk_free(self.folder),
            meters=meters,
            rows=dict(recorder.rows) if recorder else {},
            refused=sum(meter.refused for meter in meters),
            events=self.tail.events,
            marks=len(self.marks),
            faults=bus.faults if bus else (),
            waiting=bus.waiting if bus else 0,
            lost_rows=recorder.lost_rows if recorder else 0,
            dropped_rows=self.tail.dropped_rows,
            warnings=self._warnings(),
            moved=(recorder.moved if recorder else "") + self._parts.words,
            sleep=self._awake.words if self._awake else "",
            zero=self._zero.words,
        )

    def _warnings(self) -> tuple[str, ...]:
        doubts = tuple(doubt.text for doubt in self.review().doubts)
        stored = (self._zero.not_stored,) if self._zero.not_stored else ()
        return (*doubts, *stored, *self._kept_meters.not_kept)

    def stop(self, outcome: str = "complete") -> Path:
        """End the recording: what is under way is written, closed and sealed.

        Parameters
        ----------
        outcome : str
            ``complete``, ``stopped`` (by the user before its time) or ``interrupted``.

        Returns
        -------
        Path
            The folder with the whole of it: where a disk failed and the recording went on
            elsewhere, both parts are put together if the first can be read, else it is the last
            part. Calling again does nothing and gives it again.

        Raises
        ------
        DiskFailed
            If not all readings could be kept anywhere, or the recording can't be sealed.
            Everything is closed all the same.
        """
        if not self._running or not (self._acquisition and self._bus and self._recorder):
            return self.folder
        self._running = False
        self._acquisition.stop()
        self._bus.stop()
        if self._judge is not None:
            self._judge.stop()
        self._zero.settle(self.instruments)
        self._ended_ns = self._clock.now_ns()
        self._finish(self._recorder, outcome)
        if self._recorder.failed or self._seal_failed:
            raise DiskFailed(
                f"not everything could be kept: {self._recorder.failed or self._seal_failed}",
                subject=str(self.folder),
                remedy="What was written before can still be reviewed and exported.",
            )
        return self.folder

    def _finish(self, recorder: MovingRecorder, outcome: str) -> None:
        if self._awake is not None:
            self._awake.release()
        try:
            recorder.close(outcome)
            seal(recorder.parts[-1])
        except (RecordingError, EvidenceError, OSError) as error:
            self._seal_failed = str(error)
            return
        self._parts.put_together(recorder.parts)


def _refuse_unknown(stated: Mapping[str, StatedMeter], keys: Sequence[str]) -> None:
    for key in stated:
        if key not in keys:
            raise UsageError(
                "there is no such meter, but something is stated of it.",
                subject=key,
                remedy=f"There are: {', '.join(keys)}.",
            )
