"""Stuck: a value that repeats to the last digit while it should move.

A meter on hold, one that smooths, or one that repeats its last reading after it has lost touch
looks like a very steady circuit. A run of equal readings is told only where something else shows
that the value must have moved, or where it is far longer than the channel ever repeated before
while the motor ran.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import Levels
from meterlog.analysis.run_levels import RunLevels
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Block, Channel, Doubt, DoubtKind, Flag, Instrument, Limits, Role

LEAST_N = 8
LEAST_NS = 2_000_000_000
"""A hand-held meter of 3 readings/s shows the same value for a second often enough."""
FAR_N = 50
FAR_NS = 5_000_000_000
FAR_TIMES = 20
"""So many times the channel's own longest repeat before: equal readings of a noisy channel come in
runs whose lengths fall off exponentially, so that chance does not do this."""
FAR_SEEN = 200
LIVELY = 5
"""Only a channel whose last digit never stood still for longer than this while so many readings
came has noise enough for that; with less, a steady motor may well read the same for a minute."""
COUNTS = 20.0
"""A value of fewer counts may well stand still; so may one that is next to nothing."""
STEP_UNKNOWN = 0.01
"""Volts or amperes taken for the last digit where nobody has stated it."""
LEAST_OHM = 0.015
"""Half of what fuse, relay and wires ahead of a motor commonly have together: the feed must move
by at least this for each ampere. Common practice, no source."""
LEAST_DIGITS = 5.0
LEAST_A = 1.0
LEAST_V = 1.0
"""A motor whose voltage changes by this changes its current; a return of this much hangs on the
controller and moves with the current."""
MOST_TOLD = 3

_ROLES = (Role.MOTOR_CURRENT, Role.MOTOR_FEED, Role.MOTOR_RETURN)


@dataclass(frozen=True, slots=True)
class _Run:
    """Equal readings, one after the other, and what was before them."""

    value: float
    start_ns: int
    end_ns: int
    n: int
    longest_before: int
    seen_before: int

    @property
    def lasts(self) -> bool:
        return self.n >= LEAST_N and self.end_ns - self.start_ns >= LEAST_NS


class _Runs:
    """Finds the long runs of equal readings in one column, however the blocks are cut."""

    def __init__(self, column: int) -> None:
        self._column = column
        self._long: list[_Run] = []
        self._open: _Run | None = None
        self._longest = 0
        self._seen = 0
        self.beside: dict[int, RunLevels] = {}
        """What the other channels did during each long run, by its start."""

    def take(self, block: Block) -> None:
        """Take the next block."""
        if len(block) == 1:  # the usual case of a slow meter, at a fraction of the cost
            is_typed = int(block.flags[0, self._column]) & int(Flag.TYPED)
            only = np.full(1, np.nan) if is_typed else block.values[:, self._column]
            self._join(only, block.t_ns, 1)
            return
        values, t_ns = np.ascontiguousarray(block.values[:, self._column]), block.t_ns
        typed = (block.flags[:, self._column] & int(Flag.TYPED)) != 0
        if typed.any():
            values = np.where(typed, np.nan, values)  # typed twice is no stuck meter
        # NaN is unequal to itself, so that every missing reading ends a run.
        cuts = np.flatnonzero(values[1:] != values[:-1]) + 1
        first = int(cuts[0]) if len(cuts) else len(values)
        self._join(values, t_ns, first)
        if not len(cuts):
            return
        self._end()
        starts, stops = cuts[:-1], cuts[1:]
        self._between(values, t_ns, starts, stops)
        last = int(cuts[-1])
        self._begin(float(values[last]), int(t_ns[last]), int(t_ns[-1]), len(values) - last)

    def _join(self, values: NDArray[np.float64], t_ns: NDArray[np.int64], count: int) -> None:
        """Continue the open run by the first ``count`` readings, or begin another."""
        known = self._open
        end_ns = int(t_ns[count - 1])
        if known is not None and known.value == values[0]:
            self._open = replace(known, end_ns=end_ns, n=known.n + count)
            return
        self._end()
        self._begin(float(values[0]), int(t_ns[0]), end_ns, count)

    def _begin(self, value: float, start_ns: int, end_ns: int, n: int) -> None:
        self._open = _Run(value, start_ns, end_ns, n, self._longest, self._seen)

    def _end(self) -> None:
        run, self._open = self._open, None
        if run is not None:
            self._pass(run.n, run.n)
            if run.lasts:
                self._long.append(run)

    def _pass(self, longest: int, seen: int) -> None:
        self._longest = max(self._longest, longest)
        self._seen += seen

    def _between(
        self,
        values: NDArray[np.float64],
        t_ns: NDArray[np.int64],
        starts: NDArray[np.intp],
        stops: NDArray[np.intp],
    ) -> None:
        """Take the runs that begin and end within one block."""
        lengths = stops - starts
        begun = 0
        for hit in np.flatnonzero(lengths >= LEAST_N).tolist():
            self._pass_all(lengths[begun:hit])
            start, stop = int(starts[hit]), int(stops[hit])
            self._begin(float(values[start]), int(t_ns[start]), int(t_ns[stop - 1]), stop - start)
            self._end()
            begun = hit + 1
        self._pass_all(lengths[begun:])

    def _pass_all(self, lengths: NDArray[np.intp]) -> None:
        if len(lengths):
            self._pass(int(lengths.max()), int(lengths.sum()))

    def lasting(self) -> list[_Run]:
        """Give the long runs so far, the open one too."""
        if self._open is not None and self._open.lasts:
            return [*self._long, self._open]
        return list(self._long)


class StuckWatch:
    """Watches the motor's current, feed and return for values that repeat exactly.

    Parameters
    ----------
    instruments : sequence of Instrument
    limits : Limits
    """

    def __init__(self, instruments: Sequence[Instrument], limits: Limits) -> None:
        self._limits = limits
        self._slack_ns = round((limits.command_lag_s + 0.5) * 1e9)
        self._watched: list[tuple[str, Channel, _Runs]] = []
        for instrument in instruments:
            for column, channel in enumerate(instrument.channels):
                if channel.role in _ROLES:
                    self._watched.append((instrument.key, channel, _Runs(column)))
        roles = [channel.role for _, channel, _ in self._watched]
        self._no_volts = not {Role.MOTOR_FEED, Role.MOTOR_RETURN} & set(roles)

    def take(self, block: Block) -> None:
        """Take the next block of any instrument."""
        for key, _, runs in self._watched:
            if key == block.source and len(block):
                runs.take(block)

    def doubts(self, levels: Levels, timeline: SpeedTimeline) -> list[Doubt]:
        """Give what repeats although it must have moved; of each channel a few at most."""
        told = []
        for key, channel, runs in self._watched:
            found = [
                self._doubt(key, channel, run, why)
                for run in runs.lasting()
                if (why := self._why(channel, runs, run, levels, timeline))
            ]
            told += found[:MOST_TOLD]
        return told

    def _why(
        self, channel: Channel, runs: _Runs, run: _Run, levels: Levels, timeline: SpeedTimeline
    ) -> str:
        stated = channel.accuracy_at(run.value)
        step = (stated.resolution if stated else 0.0) or STEP_UNKNOWN
        if abs(run.value) < COUNTS * step:
            return ""
        beside = runs.beside.setdefault(run.start_ns, RunLevels(levels))
        beside = beside.over(run.start_ns, run.end_ns)
        swing_a = beside.swing_a
        if channel.role is Role.MOTOR_CURRENT:
            why = self._why_current(run, beside.swing_v, timeline)
        elif channel.role is Role.MOTOR_FEED:
            moved = swing_a >= LEAST_A and swing_a * LEAST_OHM >= LEAST_DIGITS * step
            why = f"the current moved by {swing_a:.1f} A" if moved else ""
        else:
            moved = swing_a >= LEAST_A and abs(run.value) >= LEAST_V
            why = f"the current moved by {swing_a:.1f} A" if moved else ""
        return why or self._far(run, beside)

    def _why_current(self, run: _Run, swing_v: float, timeline: SpeedTimeline) -> str:
        if swing_v >= LEAST_V:
            return f"the voltage across the motor moved by {swing_v:.1f} V"
        early, late = run.start_ns + self._slack_ns, run.end_ns - self._slack_ns
        changes = timeline.between(early, late) if late > early else []
        if changes and self._no_volts:
            return f"speed {changes[0].speed} was commanded at {changes[0].t_ns / 1e9:.1f} s"
        return ""

    def _far(self, run: _Run, beside: RunLevels) -> str:
        lively = 0 < run.longest_before <= LIVELY and run.seen_before >= FAR_SEEN
        long = run.n >= FAR_N and run.end_ns - run.start_ns >= FAR_NS
        if not (lively and long and run.n >= FAR_TIMES * run.longest_before):
            return ""
        amps = beside.mean_a(run.start_ns, run.end_ns)
        if amps is None or abs(amps) < self._limits.open_current_a:
            return ""
        return f"it never repeated more than {run.longest_before} times before"

    @staticmethod
    def _doubt(key: str, channel: Channel, run: _Run, why: str) -> Doubt:
        text = (
            f"{channel.role.value} ({key}) read exactly {run.value:.6g} {channel.unit} from"
            f" {run.start_ns / 1e9:.1f} s to {run.end_ns / 1e9:.1f} s, {run.n} times, while {why}:"
            f" is the meter on hold, smoothing, repeating its last reading, or at the end of its"
            f" range? Don't rely on it there; take the hold off, choose the next range and measure"
            f" again."
        )
        return Doubt(DoubtKind.STUCK, text, run.start_ns, run.end_ns, key, channel.role)
