"""Stamper: gives every reading its time."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.times.clock_fit import ClockFit, ClockLine
from meterlog.acquire.times.clock_ticks import ClockTicks
from meterlog.acquire.times.device_time import DeviceTime, Kind, TimeCounts, Timed
from meterlog.acquire.times.pace import PaceLearner
from meterlog.acquire.times.skipped import SkippedReadings
from meterlog.acquire.times.transfer import Transfer
from meterlog.acquire.times.withheld import Withheld
from meterlog.instruments import Readings
from meterlog.profile import MeterProfile

_CLOCK_WINDOW_S = 2.0
_CLOCK_WINDOWS = 150
"""Five minutes of a clock: long against every delay, short against its warming up."""
_SET_AHEAD_S = 1.0
"""A clock that is ahead of what the line allows by more was set, or one of its figures is wrong:
nothing is missing, and nothing is to be reckoned from there to before."""
_LONGEST_HELD_S = 60.0
"""So much longer than the recording lasts, readings that come at once can't have been held back."""
_PACE_WINDOW_S = 0.1
_PACE_ARRIVALS = 6.0
_PACE_WINDOWS = 20
_PACE_FEWEST = 3
_PACE_PRIOR = 0.02
"""A few seconds: a sender that waits between readings, instead of counting time, wanders off."""


@dataclass(frozen=True, slots=True)
class Sending:
    """How an instrument sends, as far as its readings' times depend on it.

    Attributes
    ----------
    interval_s : float, seconds
        From one reading to the next.
    integration_s : float, seconds
        0 when unknown.
    unasked : bool
        It sends without being asked, each reading in a message of its own.
    renewed : bool
        Asked, it gives the last value that it measured by itself, of any age up to an interval.
    sample_s : float, seconds
        From one sample to the next by its sample clock; 0 when it has none.
    typed : bool
        A person types the readings.
    byte_s : float, seconds
        Time that one byte takes on the way.
    skew_s : float, seconds
        So much later than others its times are known to be.
    """

    interval_s: float
    integration_s: float = 0.0
    unasked: bool = True
    renewed: bool = False
    sample_s: float = 0.0
    typed: bool = False
    byte_s: float = 0.0
    skew_s: float = 0.0


def sending(choice: MeterChoice, byte_s: float = 0.0, skew_s: float = 0.0) -> Sending:
    """Tell how the chosen meter sends."""
    profile, channel = choice.profile, choice.channels[0]
    return Sending(
        interval_s=channel.interval_s,
        integration_s=channel.integration_s,
        unasked=profile.dialect in {"ascii-lines", "lcd-frames"},
        renewed=profile.dialect == "modbus-rtu" or _fetches(profile),
        sample_s=profile.blocks.sample_s if profile.dialect == "scpi-blocks" else 0.0,
        typed=profile.typed,
        byte_s=byte_s,
        skew_s=skew_s,
    )


def _fetches(profile: MeterProfile) -> bool:
    """Tell whether the last value is asked for, not a new one: SCPI-1999, volume 2, chapter 3."""
    return profile.dialect == "scpi" and profile.scpi.query.upper().lstrip(":").startswith("FETC")


@dataclass(frozen=True, slots=True, eq=False)
class Stamped:
    """Rows with their final times.

    Attributes
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds since the recording's zero
        Never decreasing, never before those given earlier.
    readings : Readings or None
        n rows; None for rows that say that nothing came.
    """

    t_ns: NDArray[np.int64]
    readings: Readings | None


class Stamper:
    """Tells when readings were taken, from when they arrived.

    A reading is the mean over the integration time that ended when it was sent, so its time is the
    arrival, less the time its own bytes took on the way, less half the integration time, less the
    skew that was measured. From there:

    - an instrument that sends unasked and steadily: the count of its readings times its pace, laid
      on the arrivals (:class:`meterlog.acquire.times.device_time.DeviceTime`). What came late has
      its own time, what is missing leaves a gap. Until the pace is known, and where there is none,
      readings that come in one lump lie one interval apart, the last one last;
    - one with a clock of its own: that clock, laid on the arrivals in the same way; where it shows
      only seconds, or stands still (:class:`meterlog.acquire.times.clock_ticks.ClockTicks`), the
      count of its readings;
    - one that is asked: not before the question was sent; with an unknown integration time the
      middle between question and arrival; one that then gives its last value, which it renews by
      itself: half an interval earlier, the mean of the ages it may have;
    - one whose readings are typed: when they were typed.

    Rows that say that nothing came wait with :class:`meterlog.acquire.times.withheld.Withheld`.

    Parameters
    ----------
    sending : Sending
    """

    def __init__(self, sending: Sending) -> None:
        self._sending = sending
        self._interval_ns = round(sending.interval_s * 1e9)
        self._transfer = Transfer(sending.byte_s)
        self._lag_ns = round((sending.integration_s / 2.0 + sending.skew_s) * 1e9)
        self._pace = PaceLearner()
        self._pace_s: float | None = None
        self._skipped = SkippedReadings(sending.sample_s)
        self._ticks = ClockTicks(sending.interval_s)
        self._device: DeviceTime | None = None
        self._rows = Withheld()
        self._taken = 0
        self.counts = TimeCounts()
        self.crowded = 0
        """Readings that came when their time had passed: others, or rows without data, have it."""
        self.last_ns = 0

    @property
    def lines(self) -> tuple[Kind, ClockLine] | None:
        """What is known of the instrument's clock or pace; None when nothing is."""
        return None if self._device is None else (self._device.kind, self._device.line)

    @property
    def asked(self) -> bool:
        """Tell whether the instrument sends when it is asked, and not otherwise."""
        return not self._sending.unasked

    @property
    def pace_s(self) -> float | None:
        """How far apart the readings of an instrument without a clock are, by this computer."""
        if self._pace_s is None or self._device is None or self._device.kind is not Kind.COUNT:
            return None
        return self._pace_s * self._device.line.slope

    @property
    def scatter_s(self) -> float:
        """Standard deviation of the arrivals about the line, seconds; 0 without a line."""
        return self._device.usual.scatter_s if self._device is not None else 0.0

    @property
    def lost(self) -> int:
        """Readings or samples that the instrument took, or should have, and that never came."""
        return self.counts.lost + self._skipped.lost

    @property
    def waits(self) -> bool:
        """Tell whether late readings wait for what comes next."""
        return self._device is not None and self._device.waits

    def wait_s(self, now_ns: int, at_most_s: float) -> float:
        """Give how long one may listen before :meth:`check` has something to decide, seconds."""
        if self._device is None or not self._device.waits:
            return at_most_s
        return min(max((self._device.until_ns - now_ns) / 1e9, 0.001), at_most_s)

    def heard(self, data: bytes) -> None:
        """Note the bytes that came, before the readings they completed."""
        self._transfer.heard(len(data))

    def take(
        self, readings: Readings, arrived_ns: int, asked_ns: int | None = None
    ) -> list[Stamped]:
        """Take readings that arrived together.

        Parameters
        ----------
        readings : Readings
            n rows, at least one.
        arrived_ns : int, nanoseconds since the recording's zero
            When the read returned that completed them.
        asked_ns : int or None, nanoseconds since the recording's zero
            When the query was sent that they answer; not used where the instrument has a clock.

        Returns
        -------
        list of Stamped
            What is decided now: at once in the usual case, a little later when the readings are
            late. No stamp is after its reading's arrival.
        """
        way_ns = self._transfer.of(len(readings), whole=not self._sending.unasked)
        end_ns = arrived_ns - way_ns - self._lag_ns
        if self._sending.typed:
            timed = [Timed(readings, np.full(len(readings), arrived_ns), arrived_ns)]
        elif readings.own_time_s is not None and not self._ticks.coarse(
            readings.own_time_s, arrived_ns
        ):
            timed = self._by_clock(readings, readings.own_time_s, end_ns, arrived_ns)
        elif self._sending.unasked:
            timed = self._by_count(readings, end_ns, arrived_ns)
        else:
            timed = [self._asked(readings, end_ns, arrived_ns, asked_ns)]
        self._rows.heard(arrived_ns)
        self._taken += len(readings)
        return self._finish(timed)

    def nothing(self, now_ns: int) -> list[Stamped]:
        """Take a row that says that nothing came: it may have to wait."""
        self._rows.add(now_ns)
        return self.check(now_ns)

    def check(self, now_ns: int) -> list[Stamped]:
        """Give what has waited long enough."""
        done = self._finish(self._device.check(now_ns)) if self._device is not None else []
        if self._device is None or not self._device.waits:
            may_wait = not self._sending.typed
            done += self._nothing(self._rows.due(now_ns, may_wait=may_wait))
        return done

    def gone(self) -> list[Stamped]:
        """Give all that waits: the port is gone or the recording ends, nothing more comes."""
        done = self._finish(self._device.give_up()) if self._device is not None else []
        done += self._nothing(self._rows.all())
        self._rows.stop_waiting()
        return done

    def forget_own_clock(self) -> None:
        """Tie clock or count anew at the next reading: the instrument may have been restarted."""
        self._device = None
        self._skipped.restart()
        self._pace.restart()
        self._transfer.restart()

    def _asked(
        self, readings: Readings, end_ns: int, arrived_ns: int, asked_ns: int | None
    ) -> Timed:
        if self._sending.renewed:
            return self._spread(readings, end_ns - self._interval_ns // 2)
        if asked_ns is None:
            return self._spread(readings, end_ns)
        if not self._sending.integration_s:
            middle_ns = (asked_ns + arrived_ns) // 2 - round(self._sending.skew_s * 1e9)
            return self._spread(readings, max(middle_ns, asked_ns))
        return self._spread(readings, max(end_ns, min(asked_ns, arrived_ns)))

    def _by_clock(
        self, readings: Readings, own_s: NDArray[np.float64], end_ns: int, arrived_ns: int
    ) -> list[Timed]:
        span_s = float(own_s[-1] - own_s[0])
        if span_s > arrived_ns / 1e9 + _LONGEST_HELD_S or np.any(np.diff(own_s) < 0.0):
            # Set within the lump: where, the arrival can't tell.
            before = self._device.give_up() if self._device is not None else []
            self._tie_anew()
            return [*before, self._spread(readings, end_ns)]
        before = []
        device = self._device
        if device is not None and (
            own_s[0] < (device.last_x or own_s[0])
            or device.ahead_s(float(own_s[-1]), end_ns) > _SET_AHEAD_S
        ):
            before = device.give_up()
            self._tie_anew()
        if self._device is None:
            kind = Kind.SAMPLES if self._sending.sample_s else Kind.TIMED
            step_s = self._sending.sample_s or self._sending.interval_s
            fit = ClockFit(_CLOCK_WINDOW_S, _CLOCK_WINDOWS)
            self._device = DeviceTime(kind, step_s, fit, self.counts)
        jumps = self.counts.jumps
        timed = self._device.take(readings, own_s, end_ns, arrived_ns)
        if self.counts.jumps > jumps:
            self._skipped.restart()
        self._skipped.see(own_s)
        return [*before, *timed]

    def _tie_anew(self) -> None:
        self.counts.jumps += 1
        self._device = None
        self._skipped.restart()

    def _by_count(self, readings: Readings, end_ns: int, arrived_ns: int) -> list[Timed]:
        if self._device is not None and self._device.kind is Kind.TIMED:
            before = self._device.give_up()
            self._tie_anew()
            return [*before, self._spread(readings, end_ns)]
        if self._device is not None and self._device.off and not self._device.waits:
            self._device, self._pace_s, self._pace = None, None, PaceLearner()
        if self._device is None:
            learnt = self._pace.arrived(len(readings), arrived_ns)
            self._pace_s = self._pace_s or learnt
            if self._pace_s is None:
                return [self._spread(readings, end_ns)]
            window_s = max(_PACE_WINDOW_S, _PACE_ARRIVALS * max(self._pace_s, self._pace.gap_s))
            fit = ClockFit(window_s, _PACE_WINDOWS, fewest=_PACE_FEWEST, prior=_PACE_PRIOR)
            self._device = DeviceTime(Kind.COUNT, self._pace_s, fit, self.counts)
        pace_s = self._pace_s or self._sending.interval_s
        count = len(readings)
        x_s = (
            np.array([self._taken + 1.0]) if count == 1 else self._taken + np.arange(1.0, count + 1)
        )
        x_s *= pace_s
        return self._device.take(readings, x_s, end_ns, arrived_ns)

    def _spread(self, readings: Readings, end_ns: int) -> Timed:
        """Lay the readings of a lump one interval apart, as far as there is time for it."""
        count = len(readings)
        free_ns = max(end_ns - self.last_ns, 0)
        step_ns = min(self._interval_ns, free_ns // count)
        stamps = end_ns - step_ns * np.arange(count - 1, -1, -1, dtype=np.int64)
        return Timed(readings, stamps, end_ns)

    def _finish(self, timed: list[Timed]) -> list[Stamped]:
        done = []
        for one in timed:
            if len(one.t_ns) == 1 and not self._rows and one.t_ns[0] >= self._rows.written_ns:
                t_ns = int(one.t_ns[0])
                self.crowded += t_ns < self._passed_ns
                self.last_ns = max(min(t_ns, one.end_ns), self.last_ns)
                done.append(Stamped(np.array([self.last_ns], np.int64), one.readings))
                continue
            # A line through arrivals may reach a little beyond the next arrival.
            stamps = np.minimum(one.t_ns, one.end_ns)
            done += self._nothing(self._rows.before(int(stamps[0])))
            late = int(np.count_nonzero(stamps < self._rows.written_ns))
            if late:
                # Written is written: in the little time that is left they keep their order.
                self.crowded += late
                stamps = self._spread(one.readings, one.end_ns).t_ns
            else:
                # So many had been given up, and what came next has their times.
                self.crowded += int(np.count_nonzero(stamps < self._passed_ns))
            done.append(Stamped(self._in_order(stamps), one.readings))
        return done

    @property
    def _passed_ns(self) -> int:
        """Give before what a reading is not only moved by what the line is uncertain by."""
        return self.last_ns - self._interval_ns // 2

    def _nothing(self, rows: NDArray[np.int64]) -> list[Stamped]:
        return [Stamped(self._in_order(rows), None)] if len(rows) else []

    def _in_order(self, stamps: NDArray[np.int64]) -> NDArray[np.int64]:
        stamps = np.maximum.accumulate(np.maximum(stamps, self.last_ns))
        self.last_ns = int(stamps[-1])
        return stamps
