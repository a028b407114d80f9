"""StepCollector: the figures of each stretch at one commanded speed."""

from __future__ import annotations

import copy
from collections.abc import Sequence
from dataclasses import replace
from typing import Self

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.comoments import Comoments
from meterlog.analysis.delayed import Delayed
from meterlog.analysis.labels import NOTCH_NS, Stretch
from meterlog.analysis.moments import Moments
from meterlog.analysis.piece_mean import PieceMean
from meterlog.analysis.rows import Rows
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Step


class _Volts:
    """Motor voltage, and the feed by itself."""

    def __init__(self) -> None:
        self.across = Moments(median=False)
        self.feed = PieceMean()

    def add(self, *columns: NDArray[np.float64]) -> None:
        """Take the voltage across the motor and, where there is a return, the feed."""
        self.across.add(columns[0])
        if len(columns) > 1:
            self.feed.add(columns[1])

    def copy(self) -> Self:
        """Give sums that can go on by themselves."""
        other = copy.copy(self)
        other.across, other.feed = self.across.copy(), self.feed.copy()
        return other


class _Gathering:
    """One step while its readings come in."""

    def __init__(self, speed: int | None, start_ns: int, delay_ns: int) -> None:
        self.speed = speed
        self.start_ns = start_ns
        self.volts = Moments(median=False)
        self.amps = Moments()
        self.was_steady = False
        self.steady_volts = Delayed(delay_ns, _Volts())
        self.steady_amps = Delayed(delay_ns, Moments(median=False))
        self.steady_pairs = Delayed(delay_ns, Comoments())

    @property
    def steady(self) -> tuple[Delayed[_Volts], Delayed[Moments], Delayed[Comoments]]:
        return self.steady_volts, self.steady_amps, self.steady_pairs

    def step(self, end_ns: int) -> Step:
        """Give the figures so far."""
        amps, steady = self.amps, self.steady_amps.counted()
        volts = self.steady_volts.counted()
        across = volts.across.mean
        feed = volts.feed.mean if volts.feed.mean is not None else across
        # From the same rows, so that feed less return is the voltage across.
        back = None if volts.feed.mean is None or across is None else volts.feed.mean - across
        return Step(
            speed=self.speed,
            start_ns=self.start_ns,
            end_ns=end_ns,
            n=amps.n or self.volts.n,
            mean_v=self.volts.mean,
            sd_v=self.volts.sd,
            mean_a=amps.mean,
            sd_a=amps.sd,
            median_a=amps.median,
            min_a=amps.low,
            max_a=amps.high,
            steady_n=steady.n,
            steady_mean_v=across,
            steady_mean_a=steady.mean,
            steady_sd_a=steady.sd,
            steady_lag1_a=steady.lag1,
            steady_max_a=_largest(steady.low, steady.high),
            steady_volts_n=volts.across.n,
            steady_sd_v=volts.across.sd,
            steady_lag1_v=volts.across.lag1,
            steady_correlation=self.steady_pairs.counted().correlation,
            steady_feed_v=feed,
            steady_back_v=back,
        )


def _largest(low: float | None, high: float | None) -> float | None:
    return None if low is None or high is None else max(abs(low), abs(high))


def _whole(column: NDArray[np.float64]) -> bool:
    """Tell whether all are finite: one sum is cheaper than a test of each value."""
    return bool(np.isfinite(column.sum()))


def _read(
    t_ns: NDArray[np.int64], new: NDArray[np.bool_] | None, *columns: NDArray[np.float64]
) -> tuple[NDArray[np.int64], tuple[NDArray[np.float64], ...]]:
    """Leave out what was held over, and where the first column has no value."""
    if new is not None:
        t_ns, columns = t_ns[new], tuple(column[new] for column in columns)
    if _whole(columns[0]):
        return t_ns, columns
    there = np.isfinite(columns[0])
    return t_ns[there], tuple(column[there] for column in columns)


class StepCollector:
    """Gathers the statistics of steps.

    Parameters
    ----------
    timeline : SpeedTimeline
        The same as the detector's.
    lag_ns : int, nanoseconds
        So late a hand may be on the key: what was read in this time before a new command is not
        counted among the steady readings.
    """

    def __init__(self, timeline: SpeedTimeline, lag_ns: int) -> None:
        self._timeline = timeline
        self._lag_ns = lag_ns
        self._open: _Gathering | None = None
        self._ended: list[Step] = []
        """The figures of all before it: of their readings nothing is kept."""
        self._last_ns = 0
        self._notch: list[tuple[Rows, Stretch]] = []

    def take(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows and the stretches that cover them, in order."""
        for stretch in stretches:
            part = rows.part(stretch.start, stretch.stop)
            if not self._is_in_a_notch(part, stretch):
                self._take(part, stretch)

    def _is_in_a_notch(self, part: Rows, stretch: Stretch) -> bool:
        """Hold back what may be a notch of a running motor, until that is known.

        The notches of a dead bar are part of what the motor draws, as an averaging meter reads it.
        """
        first_ns = int(part.t_ns[0])
        if self._notch and stretch.steady:
            brief = first_ns - int(self._notch[0][0].t_ns[0]) < NOTCH_NS and not part.gap[0]
            self._settle_notch(steady=brief and stretch.speed == self._notch[0][1].speed)
        elif self._notch and stretch.speed != self._notch[0][1].speed:
            self._settle_notch(steady=False)
        known = self._open
        going = known is not None and known.was_steady and not part.gap[0]
        if stretch.steady or known is None or not going or stretch.speed != known.speed:
            return False
        self._notch.append((part, stretch))
        if int(part.t_ns[-1]) - int(self._notch[0][0].t_ns[0]) >= NOTCH_NS:
            self._settle_notch(steady=False)
        return True

    def _settle_notch(self, *, steady: bool) -> None:
        """Take what was held back, as part of the running or not."""
        held, self._notch = self._notch, []
        for part, stretch in held:
            self._take(part, replace(stretch, steady=steady))

    def finish(self) -> None:
        """Take what is still held back: nothing follows that would make a notch of it."""
        self._settle_notch(steady=False)

    def _take(self, part: Rows, stretch: Stretch) -> None:
        step = self._step_for(stretch.speed, int(part.t_ns[0]))
        self._last_ns = int(part.t_ns[-1])
        if step.was_steady and not stretch.steady:
            for held in step.steady:
                held.drop_last()
        step.was_steady = stretch.steady
        amps_ns, (amps,) = _read(part.t_ns, part.amps_new, part.amps)
        step.amps.add(amps)
        if stretch.steady:
            step.steady_amps.add(amps_ns, self._last_ns, amps)
        if part.feed is not None:
            self._take_volts(part, step, steady=stretch.steady)

    def _take_volts(self, part: Rows, step: _Gathering, *, steady: bool) -> None:
        assert part.feed is not None  # noqa: S101 - asked by the caller
        columns = (part.feed,) if part.back is None else (part.feed - part.back, part.feed)
        t_ns, read = _read(part.t_ns, part.volts_new, *columns)
        step.volts.add(read[0])
        if not steady:
            return
        step.steady_volts.add(t_ns, self._last_ns, *read)
        both = part.amps_new
        if both is not None and part.volts_new is not None:
            both = both & part.volts_new
        t_ns, (volts, amps) = _read(part.t_ns, both, columns[0], part.amps)
        t_ns, (amps, volts) = _read(t_ns, None, amps, volts)
        step.steady_pairs.add(t_ns, self._last_ns, volts, amps)

    def _step_for(self, speed: int | None, t_ns: int) -> _Gathering:
        known = self._open
        # A speed that was commanded and not read, as in a gap, belongs to neither step beside it.
        unread = [] if known is None else self._timeline.between(self._last_ns, t_ns)
        back = bool(unread) and unread[-1].speed == speed
        if known is not None and known.speed == speed and not back:
            return known
        asked_ns = self._timeline.asked_at(t_ns)
        start_ns = t_ns if asked_ns is None else asked_ns
        if known is not None:
            end_ns = unread[0].t_ns if unread else start_ns
            for held in known.steady:
                held.end(end_ns)
            self._ended.append(known.step(end_ns))
        self._open = _Gathering(speed, start_ns, self._lag_ns)
        return self._open

    def steps(self) -> tuple[Step, ...]:
        """Give the steps so far, without budgets; the last one ends at the last reading."""
        if self._open is None:
            return ()
        return *self._ended, self._open.step(self._last_ns)
