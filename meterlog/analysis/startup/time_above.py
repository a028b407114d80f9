"""TimeAbove: how long the current stood unbroken at or above each multiple of a fuse's rating."""

from __future__ import annotations

import copy
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.analysis.startup.heating import Heating
from meterlog.model import Block, Channel, Event, Fuse, Instrument, Limits, Role, channel_of
from meterlog.model.opening_times import opening_table

UNSTATED_PART = 0.05
"""So much of a current may be wrong where nobody has stated the meter's accuracy (common practice,
no source)."""
_ROOT_3 = 3.0**0.5


@dataclass(frozen=True, slots=True)
class Exceedance:
    """The longest unbroken time at or above one multiple of the rating.

    Attributes
    ----------
    percent : float, percent of the rating
    amps : float, amperes
    longest_s : float, seconds
        By linear interpolation between readings; 0 where it was never reached.
    least_s, most_s : float, seconds
        From the first reading to the last, with the current taken as read too high by its
        uncertainty; and from the reading before to the reading after, taken as read too low.
    """

    percent: float
    amps: float
    longest_s: float
    least_s: float
    most_s: float


@dataclass(frozen=True, slots=True)
class Exceedances:
    """What a recording asked of its fuse.

    Attributes
    ----------
    rows : tuple of Exceedance
        One for each row of the fuse's table, by rising percent.
    highest_a : float, amperes
        The highest effective current, taken as read too low by its uncertainty; 0 of nothing.
    """

    rows: tuple[Exceedance, ...] = ()
    highest_a: float = 0.0


class _Longest:
    """The longest run at or above one threshold, over bins that come in parts."""

    def __init__(self, amps: float) -> None:
        self.amps = amps
        self._from_ns = (0, 0, 0)
        """Of the run that goes on: the reading before it, the crossing, its first reading."""
        self._runs = False
        self._best = np.zeros(3, np.int64)

    def take(
        self,
        before: tuple[int, float] | None,
        t: NDArray[np.int64],
        amps: NDArray[np.float64],
        fresh: NDArray[np.bool_],
    ) -> None:
        """Take bins that follow the one given as ``before``; None: these are the first."""
        if not self._runs and float(amps.max()) < self.amps:
            return
        if before is None:
            before = (int(t[0]), float(amps[0]))
        t = np.concatenate(([before[0]], t))
        amps = np.concatenate(([before[1]], amps))
        fresh = np.concatenate(([False], fresh))
        above = amps >= self.amps
        above[0] = self._runs
        begins = np.flatnonzero(above[1:] & (~above[:-1] | fresh[1:])) + 1
        ends = np.flatnonzero(above[:-1] & (~above[1:] | fresh[1:])) + 1
        first = np.stack((t[begins - 1], self._crossing(t, amps, fresh, begins), t[begins]))
        if self._runs:
            first = np.concatenate((np.array(self._from_ns)[:, None], first), axis=1)
        last = np.stack((t[ends], self._crossing(t, amps, fresh, ends, falling=True), t[ends - 1]))
        closed = last - first[:, : last.shape[1]]
        if closed.shape[1]:
            self._best = np.maximum(self._best, closed.max(axis=1))
        self._runs = bool(above[-1])
        if self._runs:
            outer, crossed, inner = (int(one) for one in first[:, -1])
            self._from_ns = (outer, crossed, inner)

    def _crossing(
        self,
        t: NDArray[np.int64],
        amps: NDArray[np.float64],
        fresh: NDArray[np.bool_],
        at: NDArray[np.intp],
        *,
        falling: bool = False,
    ) -> NDArray[np.int64]:
        """Give when the threshold was passed before each of ``at``; not across missing readings.

        What was above when the readings began, or went on above after some were missing, counts
        from (to) the reading itself.
        """
        left, right = amps[at - 1], amps[at]
        apart = right - left
        straddles = ((left - self.amps) * (right - self.amps) <= 0.0) & (apart != 0.0) & ~fresh[at]
        part = np.divide(self.amps - left, apart, out=np.zeros(len(at)), where=straddles)
        part = np.clip(part, 0.0, 1.0)  # next to nothing apart rounds to anything
        between = t[at - 1] + np.rint(part * (t[at] - t[at - 1])).astype(np.int64)
        crossed: NDArray[np.int64] = np.where(straddles, between, t[at - 1] if falling else t[at])
        return crossed

    def best_ns(self, end_ns: int) -> NDArray[np.int64]:
        """Give (outer, crossed, inner) if the last bin was at ``end_ns``."""
        if not self._runs:
            return self._best
        still: NDArray[np.int64] = end_ns - np.array(self._from_ns, np.int64)
        return np.maximum(self._best, still)


class TimeAbove:
    """Follows the current against the multiples of a fuse's rating.

    A held rotor counts as everything else does. Readings closer than some eight milliseconds count
    as their effective value. Where readings are missing a run is broken, and its length uncertain
    by the time that is missing.

    Parameters
    ----------
    instruments : sequence of Instrument
        For what the meter's readings may be off by.
    limits : Limits
        Without a fuse nothing is followed.
    """

    def __init__(self, instruments: Sequence[Instrument], limits: Limits) -> None:
        self._fuse: Fuse | None = limits.fuse
        self._heating = Heating()
        self._before: tuple[int, float] | None = None
        self._highest_a = 0.0
        self._channel = channel_of(instruments, Role.MOTOR_CURRENT)
        self._levels: list[tuple[float, float]] = []
        self._runs: list[tuple[_Longest, _Longest, _Longest]] = []
        if limits.fuse is None:
            return
        rows = opening_table(limits.fuse.kind, limits.fuse.rating_a).rows
        for row in rows:
            amps = row.percent / 100.0 * limits.fuse.rating_a
            off = _off_by(self._channel, amps)
            self._levels.append((row.percent, amps))
            self._runs.append((_Longest(amps - off), _Longest(amps), _Longest(amps + off)))

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event; all that is needed comes by rows."""

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows and the stretches that cover them, in order."""
        if self._fuse is None or not stretches:
            return
        bins = self._heating.take(rows.part(stretches[0].start, stretches[-1].stop))
        self._before, self._highest_a = self._follow(self._runs, *bins)

    def _follow(
        self,
        runs: Sequence[tuple[_Longest, _Longest, _Longest]],
        t: NDArray[np.int64],
        amps: NDArray[np.float64],
        fresh: NDArray[np.bool_],
    ) -> tuple[tuple[int, float] | None, float]:
        if not len(t):
            return self._before, self._highest_a
        for three in runs:
            for one in three:
                one.take(self._before, t, amps, fresh)
        highest = max(self._highest_a, float(amps.max()))
        return (int(t[-1]), float(amps[-1])), highest

    def exceedances(self) -> Exceedances:
        """Give the times at or above each row of the fuse's table; empty without a fuse.

        Source
        ------
        Common practice, no source: a fuse's table bounds the time at a constant current; time at
        or above it is what may be held against its latest opening.
        """
        runs = copy.deepcopy(self._runs)
        before, highest = self._follow(runs, *self._heating.rest())
        end_ns = 0 if before is None else before[0]
        told = []
        for (percent, amps), (low, exact, high) in zip(self._levels, runs, strict=True):
            most, longest, least = (
                float(one.best_ns(end_ns)[k]) / 1e9 for k, one in enumerate((low, exact, high))
            )
            told.append(Exceedance(percent, amps, longest, least, most))
        off = _off_by(self._channel, highest) if highest > 0.0 else 0.0
        return Exceedances(tuple(told), highest + off)


def _off_by(channel: Channel | None, amps: float) -> float:
    """Give the expanded uncertainty of one reading, amperes."""
    stated = None if channel is None else channel.accuracy_at(amps)
    if stated is None:
        return UNSTATED_PART * amps
    return 2.0 / _ROOT_3 * stated.half_width(amps)
