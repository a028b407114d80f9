"""StepCollector: the figures of each stretch at one commanded speed."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.labels import Stretch
from meterlog.analysis.moments import Moments
from meterlog.analysis.rows import Rows
from meterlog.analysis.stated_current import StatedCurrent
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.uncertainty import Uncertainty, uncertainty_of_mean
from meterlog.model import Step


class _Delayed:
    """Moments of readings that are counted only when they are older than a delay.

    The last moments before a new command may already be the new speed's: a hand is late.
    """

    def __init__(self, delay_ns: int) -> None:
        self._delay_ns = delay_ns
        self._moments = Moments()
        self._t: NDArray[np.int64] = np.empty(0, np.int64)
        self._values: NDArray[np.float64] = np.empty(0)

    def add(self, t_ns: NDArray[np.int64], values: NDArray[np.float64], now_ns: int) -> None:
        """Take readings; count those that are old enough at ``now_ns``."""
        t = np.concatenate((self._t, t_ns))
        every = np.concatenate((self._values, values))
        count = int(np.searchsorted(t, now_ns - self._delay_ns, side="left"))
        count = min(count, max(len(t) - 1, 0))
        self._moments.add(every[:count])
        self._t, self._values = t[count:], every[count:]

    def drop_last(self) -> None:
        """Leave out the last reading: the current went, and it may be half-way down already."""
        self._t, self._values = self._t[:-1], self._values[:-1]

    def end(self, at_ns: int) -> None:
        """Leave out what is younger than the delay at ``at_ns``, when the new command came."""
        count = int(np.searchsorted(self._t, at_ns - self._delay_ns, side="left"))
        self._moments.add(self._values[:count])
        self._t, self._values = np.empty(0, np.int64), np.empty(0)

    def moments(self) -> Moments:
        """Give the moments as if the recording ended now."""
        if not len(self._values):
            return self._moments
        whole = self._moments.copy()
        whole.add(self._values)
        return whole


class _Gathering:
    """One step while its readings come in."""

    def __init__(self, speed: int | None, start_ns: int, delay_ns: int) -> None:
        self.speed = speed
        self.start_ns = start_ns
        self.volts = Moments()
        self.amps = Moments()
        self.was_steady = False
        self.steady_volts = _Delayed(delay_ns)
        self.steady_amps = _Delayed(delay_ns)

    def step(self, end_ns: int, current: StatedCurrent) -> Step:
        """Give the figures so far."""
        amps, steady = self.amps, self.steady_amps.moments()
        u: Uncertainty | None = None
        if steady.mean is not None:
            stated = current.at(steady.mean, self.start_ns, end_ns)
            u = uncertainty_of_mean(steady.mean, steady.n, steady.sd, steady.lag1, stated)
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
            steady_mean_v=self.steady_volts.moments().mean,
            steady_mean_a=steady.mean,
            steady_sd_a=steady.sd,
            steady_expanded_a=None if u is None else u.expanded,
            steady_coverage=None if u is None else u.coverage,
        )


def _read(
    t_ns: NDArray[np.int64], column: NDArray[np.float64], new: NDArray[np.bool_] | None
) -> tuple[NDArray[np.int64], NDArray[np.float64]]:
    """Leave out what was held over and what has no value."""
    if new is not None:
        t_ns, column = t_ns[new], column[new]
    # One sum is cheaper than a test of each value, and is finite only if all are.
    if np.isfinite(column.sum()):
        return t_ns, column
    there = np.isfinite(column)
    return t_ns[there], column[there]


class StepCollector:
    """Gathers the statistics of steps.

    Parameters
    ----------
    timeline : SpeedTimeline
        The same as the detector's.
    current : StatedCurrent
        May learn more meanwhile.
    lag_ns : int, nanoseconds
        So late a hand may be on the key: what was read in this time before a new command is not
        counted among the steady readings.
    """

    def __init__(self, timeline: SpeedTimeline, current: StatedCurrent, lag_ns: int) -> None:
        self._timeline = timeline
        self._current = current
        self._lag_ns = lag_ns
        self._steps: list[_Gathering] = []
        self._last_ns = 0

    def take(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows and the stretches that cover them, in order."""
        for stretch in stretches:
            part = rows.part(stretch.start, stretch.stop)
            step = self._step_for(stretch.speed, int(part.t_ns[0]))
            self._last_ns = int(part.t_ns[-1])
            t_ns, amps = _read(part.t_ns, part.amps, part.amps_new)
            step.amps.add(amps)
            if step.was_steady and not stretch.steady:
                step.steady_amps.drop_last()
                step.steady_volts.drop_last()
            step.was_steady = stretch.steady
            if stretch.steady:
                step.steady_amps.add(t_ns, amps, self._last_ns)
            if part.feed is not None:
                volts = part.feed if part.back is None else part.feed - part.back
                t_ns, volts = _read(part.t_ns, volts, part.volts_new)
                step.volts.add(volts)
                if stretch.steady:
                    step.steady_volts.add(t_ns, volts, self._last_ns)

    def _step_for(self, speed: int | None, t_ns: int) -> _Gathering:
        if self._steps and self._steps[-1].speed == speed:
            return self._steps[-1]
        changes = self._timeline.between(-(2**62), t_ns)
        start_ns = changes[-1].t_ns if changes else t_ns
        if self._steps:
            self._steps[-1].steady_amps.end(start_ns)
            self._steps[-1].steady_volts.end(start_ns)
        self._steps.append(_Gathering(speed, start_ns, self._lag_ns))
        return self._steps[-1]

    def steps(self) -> tuple[Step, ...]:
        """Give the steps so far; the last one ends at the last reading."""
        if not self._steps:
            return ()
        ends = [later.start_ns for later in self._steps[1:]] + [self._last_ns]
        return tuple(
            step.step(end_ns, self._current) for step, end_ns in zip(self._steps, ends, strict=True)
        )
