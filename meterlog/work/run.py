"""Run: meters, bus, disk and judge put together for one recording in progress."""

from __future__ import annotations

import uuid
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from meterlog import __version__
from meterlog.acquire import (
    Acquisition,
    Bus,
    Clock,
    MeterChoice,
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
    Zero,
)
from meterlog.model.errors import DiskFailed, RecordingError, RecordingExists, UsageError
from meterlog.recording import Recorder, seal
from meterlog.work.judge import Judge
from meterlog.work.kept_meters import KeptMeters, StatedMeter
from meterlog.work.live_tail import LiveTail
from meterlog.work.marks_made import MarksMade
from meterlog.work.run_status import RunStatus, disk_free
from meterlog.work.skews import KeptSkews
from meterlog.work.zeros import KeptZeros, ZeroKey, adapter_serial

_ZERO_NOT_STORED = (
    "The zero of {} is in force and in this recording, but could not be stored for the next one:"
    " the folder of your settings can't be written. Take it again next time."
)


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

    Raises
    ------
    UsageError
        If there is no meter, or something is stated of one that is not there.
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
        self.marks = MarksMade()
        self._zeroing: ZeroTaking | None = None
        self._kept_zeros = KeptZeros()
        self._not_stored = ""
        self._kept_last: Zero | None = None

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
        if self.folder.exists() and (not self.folder.is_dir() or any(self.folder.iterdir())):
            raise RecordingExists(
                "is there already.", subject=str(self.folder), remedy="Choose another folder."
            )
        self._clock = Clock.start()
        acquisition = Acquisition(self._choices, self._clock, self._known)
        instruments = acquisition.connect()
        try:
            self.about = self._head(instruments)
            self._recorder = Recorder.create(self.folder, self.about, self._keep_raw)
            self._judge = Judge(self.about, self.folder)
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

    def _head(self, instruments: tuple[Instrument, ...]) -> About:
        origin = self._origin
        if origin is None:
            simulated = any(instrument.simulated for instrument in instruments)
            typed = all(instrument.typed for instrument in instruments)
            origin = Origin.TYPED if typed else Origin.MEASURED
            origin = Origin.SIMULATED if simulated else origin
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
            self._settle_zero()
            channel = instrument.channels[column]
            bounds = bounds_when_asked(channel, self.marks.speed, self.limits.open_current_a)
            taking = ZeroTaking(instrument.key, column, channel, seconds, bounds)
            self._acquisition.take_zero(taking)
            self._zeroing = taking
            return taking
        raise UsageError(
            "no channel plays this role, so it has no zero.",
            subject=role.value,
            remedy=f"Start again with --assign {role.value}=PROFILE.CHANNEL.",
        )

    def _settle_zero(self) -> None:
        """Keep a zero that was taken; here, as a reader must never wait for a disk."""
        taking = self._zeroing
        if taking is None or taking.zero is None or taking.zero is self._kept_last:
            return
        self._kept_last = taking.zero
        instrument = next(one for one in self.instruments if one.key == taking.key)
        serial = adapter_serial(instrument.url, instrument.usb_serial)
        key = ZeroKey.of(instrument.profile, serial, taking.channel)
        stored = self._kept_zeros.keep(key, taking.zero)
        self._not_stored = "" if stored else _ZERO_NOT_STORED.format(taking.channel.name)

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
        self._settle_zero()
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
            zero="" if self._zeroing is None else str(self._zeroing),
        )

    def _warnings(self) -> tuple[str, ...]:
        doubts = tuple(doubt.text for doubt in self.review().doubts)
        stored = (self._not_stored,) if self._not_stored else ()
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
        if self._judge is not None:
            self._judge.stop()
        self._settle_zero()
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


def _refuse_unknown(stated: Mapping[str, StatedMeter], keys: Sequence[str]) -> None:
    for key in stated:
        if key not in keys:
            raise UsageError(
                "there is no such meter, but something is stated of it.",
                subject=key,
                remedy=f"There are: {', '.join(keys)}.",
            )
