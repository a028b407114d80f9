"""Aligner: Blocks of one or several instruments become Rows on one time axis.

With one instrument a reading is a row. With several, there is a row at each instant at which any
of them was read, and the others are held over from their last reading - never across a silence,
and always marked as held, so that no statistic counts a reading twice and no verdict rests on a
voltage that was read before the current changed.

Readings that are typed by hand come when somebody types one. Nobody waits for them, so the rows of
other instruments go on beside them, :data:`LATE_NS` of their own time later. A typed reading never
stands for moments before it, and after it for three of its profile's intervals and no longer,
whenever the next one is typed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows
from meterlog.model import UNUSABLE, Block, Instrument, Role

SILENCE_INTERVALS = 3
"""A pause longer than this many intervals is a gap in the data."""

LATE_NS = 250_000_000
"""A typed reading may come this much of recording time later than readings with later stamps."""

WATCHED = (Role.MOTOR_CURRENT, Role.MOTOR_FEED, Role.MOTOR_RETURN)


@dataclass(slots=True)
class _Source:
    """Readings of one instrument that wait for the others."""

    columns: dict[Role, int]
    gap_ns: int
    typed: bool = False
    t: list[NDArray[np.int64]] = field(default_factory=list)
    values: list[NDArray[np.float64]] = field(default_factory=list)
    last_ns: int | None = None
    first: tuple[int, NDArray[np.float64]] | None = None
    """The very first reading: it also stands for the moments before it, within three intervals."""
    carried: int = 0
    """1 when the first waiting reading was already given as a row and is kept to be held."""


def _column_values(block: Block, index: int) -> NDArray[np.float64]:
    """Give one column, NaN where a flag or the value itself says that there is none."""
    values = np.ascontiguousarray(block.values[:, index])
    bad = (block.flags[:, index] & int(UNUSABLE)) != 0
    if bad.any():
        values = values.copy()
        values[bad] = np.nan
    return values


def _finite(column: NDArray[np.float64] | None, rows: int) -> NDArray[np.bool_]:
    """Tell where a column has a value."""
    # One sum is far cheaper than a test of each value, and is finite only if all are.
    if column is None or np.isfinite(column.sum()):
        return np.ones(rows, np.bool_)
    return np.isfinite(column)


class Aligner:
    """Turns Blocks into Rows, however the Blocks are cut.

    Parameters
    ----------
    instruments : sequence of Instrument
        Those of the recording. Only channels with the roles motor-current, motor-feed and
        motor-return are watched; others do not disturb.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._sources: dict[str, _Source] = {}
        self._home: dict[Role, str] = {}
        for instrument in instruments:
            columns: dict[Role, int] = {}
            for role in WATCHED:
                index = instrument.column(role)
                if index is not None and role not in self._home:
                    columns[role] = index
                    self._home[role] = instrument.key
            if columns:
                interval = max(instrument.channels[i].interval_s for i in columns.values())
                gap_ns = round(SILENCE_INTERVALS * interval * 1e9)
                self._sources[instrument.key] = _Source(columns, gap_ns, instrument.typed)
        self._merged_ns = -(2**62)

    @property
    def silence_ns(self) -> int:
        """How long the current may pause before that is a gap."""
        home = self._home.get(Role.MOTOR_CURRENT)
        return self._sources[home].gap_ns if home else 0

    def has(self, role: Role) -> bool:
        """Tell whether a channel plays ``role``."""
        return role in self._home

    def feed(self, block: Block) -> Rows | None:
        """Take a Block.

        Parameters
        ----------
        block : Block
            Of any instrument; those that play no part are passed over.

        Returns
        -------
        Rows or None
            All rows that no later reading can change any more; None when there are none.
        """
        source = self._sources.get(block.source)
        if source is None or not len(block):
            return None
        if len(self._sources) == 1:
            return self._alone(source, block)
        values = np.array([_column_values(block, index) for index in source.columns.values()])
        # One that came too late all the same is as if typed when its rows were given.
        t_ns = np.maximum(block.t_ns, self._merged_ns) if source.typed else block.t_ns
        source.t.append(t_ns)
        source.values.append(values)
        if source.first is None:
            source.first = (int(block.t_ns[0]), values[:, 0])
        source.last_ns = int(t_ns[-1])
        limit = self._limit()
        return None if limit is None else self._merge(limit)

    def _limit(self) -> int | None:
        """Give the time before which nothing more can come; None while that is open."""
        sources = self._sources.values()
        awaited = [source.last_ns for source in sources if not source.typed]
        lasts = [last for last in awaited if last is not None]
        if len(lasts) < len(awaited):
            return None
        if len(awaited) == len(sources):
            return min(lasts)
        typed = (source.last_ns for source in sources if source.last_ns is not None)
        return (min(lasts) if lasts else max(typed)) - LATE_NS

    def finish(self) -> Rows | None:
        """Give the rows that were still waiting for another instrument."""
        if len(self._sources) < 2 or not any(s.t for s in self._sources.values()):
            return None
        return self._merge(None)

    def _alone(self, source: _Source, block: Block) -> Rows:
        columns = {role: _column_values(block, i) for role, i in source.columns.items()}
        t = np.ascontiguousarray(block.t_ns)
        gap = np.empty(len(t), np.bool_)
        gap[0] = source.last_ns is not None and int(t[0]) - source.last_ns > source.gap_ns
        np.greater(np.diff(t), source.gap_ns, out=gap[1:])
        source.last_ns = int(t[-1])
        feed, back = columns.get(Role.MOTOR_FEED), columns.get(Role.MOTOR_RETURN)
        amps = columns.get(Role.MOTOR_CURRENT)
        usable = _finite(amps, len(t))
        if amps is None:
            amps = np.full(len(t), np.nan)
        return Rows(t, amps, feed, back, usable, gap)

    def _merge(self, limit: int | None) -> Rows | None:
        """Merge what was read before ``limit`` (None: everything) on the union of all instants."""
        if limit is not None:
            self._merged_ns = max(self._merged_ns, limit)
        taken = {key: _take(source, limit) for key, source in self._sources.items()}
        union = np.unique(np.concatenate([t.fresh for t in taken.values()]))
        if not len(union):
            return None
        held = {key: part.hold(union, self._sources[key].gap_ns) for key, part in taken.items()}
        columns: dict[Role, NDArray[np.float64]] = {}
        for role, key in self._home.items():
            row = list(self._sources[key].columns).index(role)
            columns[role] = held[key].values[row]
        feed, back = columns.get(Role.MOTOR_FEED), columns.get(Role.MOTOR_RETURN)
        amps = columns.get(Role.MOTOR_CURRENT)
        usable = _finite(amps, len(union))
        if amps is None:
            amps = np.full(len(union), np.nan)
        volts = [held[self._home[r]] for r in WATCHED[1:] if r in self._home]
        amps_home = self._home.get(Role.MOTOR_CURRENT)
        return Rows(
            union,
            amps,
            feed,
            back,
            usable,
            held[amps_home].gap if amps_home else np.zeros(len(union), np.bool_),
            amps_new=held[amps_home].new if amps_home else None,
            volts_new=volts[0].new if volts else None,
            volts_ns=np.minimum.reduce([v.read_ns for v in volts]) if volts else None,
        )


@dataclass(frozen=True, slots=True, eq=False)
class _Held:
    values: NDArray[np.float64]
    new: NDArray[np.bool_]
    gap: NDArray[np.bool_]
    read_ns: NDArray[np.int64]


@dataclass(frozen=True, slots=True, eq=False)
class _Taken:
    """Readings up to a limit: one carried over, the fresh ones, and the time of the next."""

    t: NDArray[np.int64]
    values: NDArray[np.float64]
    carried: int
    next_ns: int | None
    typed: bool
    first: tuple[int, NDArray[np.float64]] | None

    @property
    def fresh(self) -> NDArray[np.int64]:
        return self.t[self.carried :]

    def hold(self, union: NDArray[np.int64], gap_ns: int) -> _Held:
        """Hold each reading until the next one, but not across a silence."""
        if not len(self.t):
            nothing = np.full((self.values.shape[0], len(union)), np.nan)
            none = np.zeros(len(union), np.bool_)
            held = _Held(nothing, none, none, np.full(len(union), -(2**62), np.int64))
            return self._begin(held, union, gap_ns)
        last = np.searchsorted(self.t, union, side="right") - 1
        index = np.maximum(last, 0)
        read_ns = self.t[index]
        after = np.append(self.t[1:], 2**62 if self.next_ns is None else self.next_ns)
        until = after[index]
        if self.next_ns is None:  # the instrument has ended: its last reading holds for a while
            until = np.where(index == len(self.t) - 1, union, until)
        if self.typed:  # nobody knows when the next one comes
            until = union
        silent = (until - read_ns > gap_ns) & (union > read_ns)
        values = self.values[:, index].copy()
        values[:, silent | (last < 0)] = np.nan
        new = (read_ns == union) & (last >= self.carried)
        before = np.concatenate((self.t[:1], self.t[:-1]))[index]
        held = _Held(values, new, new & (read_ns - before > gap_ns), read_ns)
        return self._begin(held, union, gap_ns) if last[0] < 0 else held

    def _begin(self, held: _Held, union: NDArray[np.int64], gap_ns: int) -> _Held:
        """Let the first reading stand for the moments just before it."""
        if self.first is not None and not self.typed:
            first_ns, values = self.first
            just_before = (union < first_ns) & (first_ns - union <= gap_ns)
            held.values[:, just_before] = values[:, None]
            held.read_ns[just_before] = first_ns
        return held


def _take(source: _Source, limit: int | None) -> _Taken:
    width = len(source.columns)
    t = np.concatenate(source.t) if source.t else np.empty(0, np.int64)
    values = np.concatenate(source.values, axis=1) if source.values else np.empty((width, 0))
    carried = source.carried
    count = len(t) if limit is None else int(np.searchsorted(t, limit, side="left"))
    count = max(count, carried)
    next_ns = int(t[count]) if count < len(t) else None
    keep = max(count - 1, 0)
    source.t, source.values = [t[keep:]], [values[:, keep:]]
    source.carried = 1 if count > 0 else 0
    return _Taken(t[:count], values[:, :count], carried, next_ns, source.typed, source.first)
