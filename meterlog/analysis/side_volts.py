"""SideVolts: every channel with a role, in tenths of a second, to look back at.

What the span detector needs row by row are current, feed and return. Battery, relay, controller
ground, command and drop tell the rest once a span or a step is known: they are kept as one mean a
tenth of a second (some 2 MB an hour and channel, most of it laid aside), however many readings
that were.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.labels import Stretch
from meterlog.analysis.levels import BIN_NS
from meterlog.analysis.long_table import BLOCK, Attic, LongTable, sums_of
from meterlog.analysis.rows import Rows
from meterlog.model import UNUSABLE, Block, Channel, Event, Instrument, Limits, Role, Step

_FIRST, _LAST = 1, 2
_SUM, _SQUARE, _COUNT = 0, 1, 2


class SideLevel(NamedTuple):
    """Mean, standard deviation of the readings (0 for one) and their count."""

    mean: float
    sd: float
    n: int


@dataclass(frozen=True, slots=True, eq=False)
class SideSeries:
    """Bins in which something was read, shape (n,) each.

    ``t_ns`` is the middle of the readings of a bin: with one reading its own time.
    """

    bins: NDArray[np.int64]
    t_ns: NDArray[np.int64]
    mean: NDArray[np.float64]
    n: NDArray[np.float64]

    def __len__(self) -> int:
        """Count the bins."""
        return len(self.t_ns)


class _Run(NamedTuple):
    """From when to when the motor ran steadily; while it still does so it has not ended."""

    start_ns: int
    end_ns: int
    ended: bool


def _begun(t_ns: NDArray[np.int64]) -> tuple[NDArray[np.int64], NDArray[np.intp]]:
    """Give the bin of each reading, and which readings begin one."""
    bins = t_ns // BIN_NS
    return bins, np.concatenate(([0], np.flatnonzero(bins[1:] != bins[:-1]) + 1))


class _Bins:
    """Sums of one channel, bin by bin; a bin may come in several parts."""

    def __init__(self, attic: Attic | None) -> None:
        self._table = LongTable(3, 3, attic)  # number, first and last time; sums
        self._known: dict[_Run, NDArray[np.float64]] = {}
        """Sums over runs that can't change any more: a live review asks for all of them again."""

    def take(
        self,
        t_ns: NDArray[np.int64],
        values: NDArray[np.float64],
        begun: tuple[NDArray[np.int64], NDArray[np.intp]] | None = None,
    ) -> None:
        """Take readings, all finite, in order of time; ``begun``: what :func:`_begun` gives."""
        if len(t_ns) == 1:
            self._take_one(int(t_ns[0]), float(values[0]))
            return
        bins, starts = _begun(t_ns) if begun is None else begun
        ends = np.append(starts[1:], len(t_ns))
        wholes = np.array((bins[starts], t_ns[starts], t_ns[ends - 1]))
        sums = np.array(
            (
                np.add.reduceat(values, starts),
                np.add.reduceat(values * values, starts),
                (ends - starts).astype(np.float64),
            )
        )
        table, last = self._table, self._table.held - 1
        if table.held and wholes[0, 0] == table.wholes[0, last]:
            table.reals[:, last] += sums[:, 0]
            table.wholes[_LAST, last] = wholes[_LAST, 0]
            wholes, sums = wholes[:, 1:], sums[:, 1:]
        table.append(wholes, sums)

    def _take_one(self, t_ns: int, value: float) -> None:
        """Take one reading at a fraction of the cost: that is how slow meters send them."""
        table, number, last = self._table, t_ns // BIN_NS, self._table.held - 1
        if last < 0 or table.wholes[0, last] != number:
            table.make_room(1)
            last = table.held
            table.wholes[:, last] = number, t_ns, t_ns
            table.reals[:, last] = value, value * value, 1.0
            table.held += 1
            return
        table.wholes[_LAST, last] = t_ns
        table.reals[:, last] += (value, value * value, 1.0)

    def part(self, start_ns: int, end_ns: int) -> slice:
        """Give the bins whose readings all lie within two times."""
        table = self._table
        first = table.find(start_ns // BIN_NS, "left")
        last = table.find(end_ns // BIN_NS, "right")
        while first < last and table.rows(first, first + 1)[0][_FIRST, 0] < start_ns:
            first += 1
        while last > first and table.rows(last - 1, last)[0][_LAST, 0] > end_ns:
            last -= 1
        return slice(first, last)

    def level(self, runs: Iterable[_Run]) -> SideLevel | None:
        """Give mean, scatter and count over some runs."""
        total = np.zeros(3)
        for run in runs:
            total += self._sums(run)
        n = float(total[_COUNT])
        if not n:
            return None
        mean = float(total[_SUM]) / n
        spread = max(float(total[_SQUARE]) - n * mean * mean, 0.0)
        return SideLevel(mean, (spread / (n - 1.0)) ** 0.5 if n > 1.0 else 0.0, int(n))

    def _sums(self, run: _Run) -> NDArray[np.float64]:
        known = self._known.get(run)
        if known is None:
            part = self.part(run.start_ns, run.end_ns)
            known = self._added_up(part.start, part.stop)
            if run.ended and run.end_ns // BIN_NS < self._newest:
                self._known[run] = known
        return known

    @property
    def _newest(self) -> int:
        """The number of the newest bin, the only one that may still change."""
        table = self._table
        return int(table.wholes[0, table.held - 1]) if table.held else -1

    def _added_up(self, first: int, last: int) -> NDArray[np.float64]:
        if last - first > BLOCK:
            return sums_of((sums for _, sums in self._table.lots(first, last)), last - first)
        few: NDArray[np.float64] = self._table.rows(first, last)[1].sum(axis=1)
        return few

    def series(self, part: slice) -> SideSeries:
        """Give the bins of a part."""
        wholes, sums = self._table.rows(part.start, part.stop)
        first, last = wholes[_FIRST], wholes[_LAST]
        middle = first + (last - first) // 2
        return SideSeries(wholes[0].copy(), middle, sums[_SUM] / sums[_COUNT], sums[_COUNT].copy())


class SideVolts:
    """Keeps every channel with a role, coarse enough to be kept to the recording's end.

    Parameters
    ----------
    instruments : sequence of Instrument
        With roles assigned; where two channels play one role, the first counts.
    limits : Limits
        For ``command_lag_s``: the last moments before a command may be the next speed's already.
    attic : Attic or None
        Where is laid aside what is too much for memory; None: it stays in memory.
    """

    def __init__(
        self, instruments: Sequence[Instrument], limits: Limits, attic: Attic | None = None
    ) -> None:
        self._lag_ns = round(limits.command_lag_s * 1e9)
        self._columns: dict[str, list[tuple[int, Role]]] = {}
        self._homes: dict[Role, tuple[Instrument, Channel]] = {}
        self._bins: dict[Role, _Bins] = {}
        self._steady: list[tuple[int, int]] = []
        self._open: tuple[int | None, int, int] | None = None
        for instrument in instruments:
            for column, channel in enumerate(instrument.channels):
                if channel.role is Role.OTHER or channel.role in self._homes:
                    continue
                self._homes[channel.role] = instrument, channel
                self._bins[channel.role] = _Bins(attic)
                self._columns.setdefault(instrument.key, []).append((column, channel.role))
        widest_s = max(
            (c.interval_s + c.integration_s for _, c in self._homes.values()), default=0.0
        )
        self._ramp_ns = round(widest_s * 1e9)

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event, as it came."""
        if isinstance(item, Event) or not len(item):
            return
        columns = self._columns.get(item.source, ())
        begun = _begun(item.t_ns) if len(columns) > 1 and len(item) > 1 else None
        for column, role in columns:
            values = np.ascontiguousarray(item.values[:, column])
            t_ns = item.t_ns
            flags = item.flags[:, column]
            # A flag without NaN would be a reading that is none.
            if not np.isfinite(values.sum()) or (flags & int(UNUSABLE)).any():
                there = np.isfinite(values) & ((flags & int(UNUSABLE)) == 0)
                t_ns, values = t_ns[there], values[there]
            if len(values):
                self._bins[role].take(t_ns, values, begun if t_ns is item.t_ns else None)

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Note when the motor ran steadily."""
        for stretch in stretches:
            first, last = int(rows.t_ns[stretch.start]), int(rows.t_ns[stretch.stop - 1])
            known = self._open
            if stretch.steady and known is not None and known[0] == stretch.speed:
                self._open = stretch.speed, known[1], last
                continue
            self._close(0 if stretch.steady else self._ramp_ns)
            if stretch.steady:
                self._open = stretch.speed, first, last

    def _close(self, ramp_ns: int) -> None:
        """End the open run; where the current went, its last reading may be half-way already."""
        if self._open is not None:
            first, last = self._open[1], self._open[2] - ramp_ns
            if last - first >= BIN_NS:
                self._steady.append((first, last))
        self._open = None

    def has(self, role: Role) -> bool:
        """Tell whether a channel plays ``role``."""
        return role in self._homes

    def home(self, role: Role) -> tuple[Instrument, Channel] | None:
        """Give the channel that plays ``role`` with its instrument."""
        return self._homes.get(role)

    def mean(self, role: Role, start_ns: int, end_ns: int) -> SideLevel | None:
        """Give mean, standard deviation and count of what was read between two times.

        Parameters
        ----------
        role : Role
        start_ns, end_ns : int, nanoseconds since the recording's zero
            Tenths of a second whose readings lie wholly between them count.

        Returns
        -------
        SideLevel or None, in volts (amperes for the current)
            None without such a channel, or where nothing was read.
        """
        bins = self._bins.get(role)
        return None if bins is None else bins.level([_Run(start_ns, end_ns, ended=False)])

    def series(self, role: Role, start_ns: int, end_ns: int) -> SideSeries | None:
        """Give the same bin by bin; None without such a channel, or where nothing was read."""
        bins = self._bins.get(role)
        if bins is None:
            return None
        found = bins.series(bins.part(start_ns, end_ns))
        return found if len(found) else None

    def steady_parts(self, start_ns: int, end_ns: int) -> Iterator[tuple[int, int]]:
        """Give (start, end) of each steady run of the motor between two times."""
        for run in self._runs(start_ns, end_ns):
            yield run.start_ns, run.end_ns

    def _runs(self, start_ns: int, end_ns: int) -> Iterator[_Run]:
        for place in range(bisect_right(self._steady, start_ns, key=_end), len(self._steady)):
            first, last = self._steady[place]
            if first >= end_ns:
                return
            yield _Run(max(first, start_ns), min(last, end_ns), ended=True)
        if self._open is not None and self._open[1] < end_ns and self._open[2] > start_ns:
            first, last = self._open[1], self._open[2]
            yield _Run(max(first, start_ns), min(last, end_ns), ended=False)

    def steady(self, role: Role, step: Step) -> SideLevel | None:
        """Give mean, scatter and count while the motor ran steadily in ``step``.

        What was read within ``command_lag_s`` before its end is left out, as in the step's own
        steady figures.
        """
        bins = self._bins.get(role)
        if bins is None:
            return None
        until_ns = step.end_ns - self._lag_ns
        return bins.level(self._runs(step.start_ns, until_ns))

    def with_side_volts(self, steps: Sequence[Step]) -> tuple[Step, ...]:
        """Give the steps with their steady battery and command voltages."""
        if Role.BATTERY not in self._bins and Role.COMMAND not in self._bins:
            return tuple(steps)
        return tuple(
            replace(
                step,
                steady_battery_v=_mean_of(self.steady(Role.BATTERY, step)),
                steady_command_v=_mean_of(self.steady(Role.COMMAND, step)),
            )
            for step in steps
        )


def _end(run: tuple[int, int]) -> int:
    return run[1]


def _mean_of(level: SideLevel | None) -> float | None:
    return None if level is None else level.mean
