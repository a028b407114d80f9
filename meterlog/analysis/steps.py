"""StepCollector: the figures of each stretch at one commanded speed."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.labels import Stretch
from meterlog.analysis.moments import Moments
from meterlog.analysis.rows import Rows
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.uncertainty import expanded
from meterlog.model import Accuracy, Step


class _Gathering:
    """One step while its readings come in."""

    def __init__(self, speed: int | None, start_ns: int) -> None:
        self.speed = speed
        self.start_ns = start_ns
        self.volts = Moments()
        self.amps = Moments()
        self.steady_volts = Moments()
        self.steady_amps = Moments()

    def step(self, end_ns: int, accuracy: Accuracy | None) -> Step:
        """Give the figures so far."""
        amps, steady = self.amps, self.steady_amps
        steady_u = None
        if steady.mean is not None:
            steady_u = expanded(steady.mean, steady.n, steady.sd, steady.lag1, accuracy)
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
            steady_mean_v=self.steady_volts.mean,
            steady_mean_a=steady.mean,
            steady_sd_a=steady.sd,
            steady_expanded_a=steady_u,
        )


def _finite(column: NDArray[np.float64], new: NDArray[np.bool_] | None) -> NDArray[np.float64]:
    """Leave out what was held over and what has no value."""
    if new is not None:
        column = column[new]
    # One sum is cheaper than a test of each value, and is finite only if all are.
    return column if np.isfinite(column.sum()) else column[np.isfinite(column)]


class StepCollector:
    """Gathers the statistics of steps.

    Parameters
    ----------
    timeline : SpeedTimeline
        The same as the detector's.
    accuracy : Accuracy or None
        Of the motor current channel.
    """

    def __init__(self, timeline: SpeedTimeline, accuracy: Accuracy | None) -> None:
        self._timeline = timeline
        self._accuracy = accuracy
        self._steps: list[_Gathering] = []
        self._last_ns = 0

    def take(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows and the stretches that cover them, in order."""
        for stretch in stretches:
            part = rows.part(stretch.start, stretch.stop)
            step = self._step_for(stretch.speed, int(part.t_ns[0]))
            amps = _finite(part.amps, part.amps_new)
            step.amps.add(amps)
            if stretch.steady:
                step.steady_amps.add(amps)
            if part.feed is not None:
                volts = part.feed if part.back is None else part.feed - part.back
                volts = _finite(volts, part.volts_new)
                step.volts.add(volts)
                if stretch.steady:
                    step.steady_volts.add(volts)
            self._last_ns = int(part.t_ns[-1])

    def _step_for(self, speed: int | None, t_ns: int) -> _Gathering:
        if self._steps and self._steps[-1].speed == speed:
            return self._steps[-1]
        changes = self._timeline.between(-(2**62), t_ns)
        start_ns = changes[-1].t_ns if changes else t_ns
        self._steps.append(_Gathering(speed, start_ns))
        return self._steps[-1]

    def steps(self) -> tuple[Step, ...]:
        """Give the steps so far; the last one ends at the last reading."""
        if not self._steps:
            return ()
        ends = [later.start_ns for later in self._steps[1:]] + [self._last_ns]
        return tuple(
            step.step(end_ns, self._accuracy)
            for step, end_ns in zip(self._steps, ends, strict=True)
        )
