"""LoadDrop: current is gone, but did the load go? The supply's own drop says so.

A current that really goes takes its drop over source, fuse and wires with it: the feed rises by
what that current had cost it. A clamp whose battery dies, or that switches itself off, reads a
quiet zero while the feed stays down where it was. How much the feed moves for an ampere is taken
from the same recording, from the changes of the commanded speed.

Source: Ohm's law on the series circuit source, feed, motor; the slope is the ordinary
least-squares estimate (NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1). The thresholds
are common practice, no source.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import BIN_NS, LevelPart, Levels
from meterlog.analysis.lost_load import SURE, LostLoad, lost_load, moved
from meterlog.analysis.pieces import Group, Piece
from meterlog.analysis.settled_runs import SettledRun, SettledRuns
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import Channel, Limits, SpanKind

BEFORE_NS, AFTER_NS = 2_500_000_000, 3_000_000_000
"""Around a command the current changes within this time: late hand, start-up, settling."""
LEAST_SWING_A = 1.0
"""A change of current smaller than this says nothing about the supply."""
LEAST_BINS = 8
COMMON_OHM = 0.015
"""Half of what battery, fuse, relay and wires ahead of a motor have together at the least: for a
recording in which the current never changed on command. Common practice, no source."""
CLOSE_FIT = -0.8
"""Correlation of feed and current at least this close to -1, or something else moved the feed."""
LEAST_OHM = 0.001
"""Below this the feed is regulated or measured at the source's own sense point: no evidence."""
LEAST_DROP_V = 0.03
"""What must be seen to have stayed: a few digits of a hand-held meter of 6000 counts."""
LOOK_NS = 2_000_000_000
"""So far from the edge the levels are taken: longer, the battery itself drifts."""
LOOK_BACK_NS = 1_000_000_000
LEAST_FAN_A = 2.0
"""What the smallest fan draws on low (memory of the trade)."""
OTHER_LOAD_V = 0.2
"""What switches on together with the fan (relay coil, clutch: up to some 5 A over some 40
milliohm) lowers the feed by no more than this without the motor."""
DRIFT_NS = 30_000_000_000
"""So long two commands may be apart: longer, the battery itself sags by as much."""
ANSWER_V = 0.05
"""Less than this is no answer to a command, however quiet the feed."""

_GONE = (SpanKind.DEAD, SpanKind.NO_CURRENT, SpanKind.FEED_LOST, SpanKind.GROUND_LOST)


@dataclass(frozen=True, slots=True)
class Contradiction:
    """A missing current that the voltages deny.

    Attributes
    ----------
    words : str
        Why, as the rest of a sentence.
    """

    words: str


@dataclass(frozen=True, slots=True)
class _Base:
    """A commanded speed, from when to when."""

    speed: int
    start_ns: int
    end_ns: int


@dataclass(frozen=True, slots=True)
class _Source:
    """What is known of the resistance ahead of the motor.

    ``mute``: the current changed, but the feed did not answer, so that it can tell nothing.
    """

    ohm: float | None
    mute: bool

    @property
    def due_ohm(self) -> float:
        """What a drop is reckoned with; less than nothing where nothing is due."""
        if self.mute:
            return -1.0
        return COMMON_OHM if self.ohm is None else self.ohm


def _finite(part: LevelPart) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    both = np.isfinite(part.amps) & np.isfinite(part.feed)
    return np.abs(part.amps[both]), part.feed[both]


def _around(levels: Levels, change: SpeedChange) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    return _finite(levels.within(change.t_ns - BEFORE_NS, change.t_ns + AFTER_NS))


def _swings(amps: NDArray[np.float64]) -> bool:
    return len(amps) >= LEAST_BINS and float(np.ptp(amps)) >= LEAST_SWING_A


def slope_ohm(levels: Levels, change: SpeedChange) -> float | None:
    """Give by how much the feed falls for an ampere, as seen around one command.

    Returns
    -------
    float or None, ohms
        None where the current hardly changed, or the feed moved by something else.
    """
    amps, feed = _around(levels, change)
    if not _swings(amps):
        return None
    x, y = amps - amps.mean(), feed - feed.mean()
    xx, yy, xy = float(x @ x), float(y @ y), float(x @ y)
    if yy <= 0.0 or xy / math.sqrt(xx * yy) > CLOSE_FIT:
        return None
    ohm = -xy / xx
    return ohm if ohm >= LEAST_OHM else None


def _time(change: SpeedChange) -> int:
    return change.t_ns


class LoadDrop:
    """Asks of each stretch without current whether the voltages deny it.

    Parameters
    ----------
    levels : Levels
    limits : Limits
    feed : Channel or None
        The motor feed's; None without one, and then nothing is ever denied.
    lag_s : float, seconds
        So much later than the current the feed may tell of a change: where it is read by another
        meter, the time over which that averages.
    """

    def __init__(
        self, levels: Levels, limits: Limits, feed: Channel | None, lag_s: float = 0.0
    ) -> None:
        self._levels = levels
        self._limits = limits
        self._feed = feed
        stated = feed.accuracy_at(limits.nominal_v) if feed else None
        step_v = stated.resolution if stated else 0.0
        self._least_v = max(LEAST_DROP_V, 3.0 * step_v)
        self._edges: dict[int, tuple[Piece, int | None, LostLoad | None]] = {}
        self._settled: SettledRuns[Contradiction] = SettledRuns()
        self._slopes: dict[SpeedChange, float | None] = {}
        self._swings: dict[SpeedChange, bool] = {}
        self._hand_ns = round(limits.command_lag_s * 1e9)
        self._lag_ns = round(lag_s * 1e9)

    def denied(
        self, pieces: Sequence[Piece], changes: Sequence[SpeedChange]
    ) -> dict[int, Contradiction]:
        """Give the pieces, by index, whose missing current the voltages deny.

        Once denied, a current that still reads nothing is not believed until it flows again; and
        where the feed answers to commands while it reads nothing, it was not from the start.
        """
        if self._feed is None or not any(piece.kind in _GONE for piece in pieces):
            return {}
        ohm = self._source_ohm(changes)
        source = _Source(ohm, mute=ohm is None and self._swung(changes))
        start, found, again = self._settled.resume(pieces, changes, source, source.due_ohm)
        for known in again:
            self._ask(known.first, known.last, pieces, changes, source, found)
        settled = []
        for first, last in _quiet_runs(pieces, start):
            run = self._ask(first, last, pieces, changes, source, found)
            if self._levels.end_ns >= pieces[last - 1].end_ns + BIN_NS:
                settled.append(run)
        self._settled.settle(pieces, changes, settled, found)
        return found

    def _ask(
        self,
        first: int,
        last: int,
        pieces: Sequence[Piece],
        changes: Sequence[SpeedChange],
        source: _Source,
        found: dict[int, Contradiction],
    ) -> SettledRun:
        """Add to ``found`` what denies one run without current; give what that hangs on."""
        run = pieces[first:last]
        inside = _inside(run, changes)
        answered = self._answered(run, changes, inside, source.ohm) if inside else None
        edge = self._edge(first, pieces, changes)
        held = answered if edge is None else self._denied(edge, source) or answered
        if held is not None:
            gone = (index for index in range(first, last) if pieces[index].kind in _GONE)
            found.update(dict.fromkeys(gone, held))
        if inside:
            return SettledRun(first, last, -math.inf)
        return SettledRun(first, last, math.inf if edge is None else edge.from_ohm(self._least_v))

    def _source_ohm(self, changes: Sequence[SpeedChange]) -> float | None:
        """Give the resistance ahead of the motor, as seen at the changes of speed; the median."""
        found = []
        for change in changes:
            if change not in self._slopes:
                slope = slope_ohm(self._levels, change)
                if not self._is_past(change):
                    found.append(slope)
                    continue
                self._slopes[change] = slope
            found.append(self._slopes[change])
        known = [ohm for ohm in found if ohm is not None]
        return float(np.median(known)) if known else None

    def _swung(self, changes: Sequence[SpeedChange]) -> bool:
        """Tell whether the current ever changed on command, so that the feed could answer."""
        for change in changes:
            swung = self._swings.get(change)
            if swung is None:
                swung = _swings(_around(self._levels, change)[0])
                if self._is_past(change):
                    self._swings[change] = swung
            if swung:
                return True
        return False

    def _is_past(self, change: SpeedChange) -> bool:
        return self._levels.end_ns >= change.t_ns + AFTER_NS + BIN_NS

    def _edge(
        self, index: int, pieces: Sequence[Piece], changes: Sequence[SpeedChange]
    ) -> LostLoad | None:
        """Look once at how the current went: a piece that has not changed keeps its edge."""
        piece = pieces[index]
        if piece.kind not in _GONE or not index or pieces[index - 1].group is not Group.FLOWING:
            return None
        after = bisect_right(changes, piece.start_ns, key=_time)
        later = changes[after].t_ns if after < len(changes) else None
        memo = self._edges.get(index)
        if memo is None or memo[0] is not piece or memo[1] != later:
            memo = self._edges[index] = piece, later, self._lost_load(piece, later)
        return memo[2]

    def _lost_load(self, piece: Piece, later_ns: int | None) -> LostLoad | None:
        # The last reading with current may be on its way down; the first without is there.
        was_ns = piece.start_ns - piece.start_edge_ns - self._lag_ns
        now_ns = piece.start_ns + self._lag_ns
        ends_ns = [piece.end_ns, now_ns + LOOK_NS]
        if later_ns is not None:
            ends_ns.append(later_ns)
        was = self._levels.within(was_ns - LOOK_BACK_NS, was_ns)
        now = self._levels.within(now_ns, min(ends_ns))
        return lost_load(was, now, self._limits.open_current_a)

    def _denied(self, edge: LostLoad, source: _Source) -> Contradiction | None:
        """Deny a current that went without the feed rising."""
        if source.mute or not edge.denied(source.due_ohm, self._least_v):
            return None
        due_v = edge.due_v(source.due_ohm)
        due = f"about {due_v:.2f} V, as the changes of speed show"
        if source.ohm is None:
            due = (
                f"some {due_v:.2f} V at least, by what battery, fuse and wires commonly have (no"
                f" change of speed is there that would tell)"
            )
        return Contradiction(
            f"the {edge.lost_a:.1f} A that went must have raised the feed by {due}, but it moved by"
            f" {abs(edge.rise_v):.2f} V"
        )

    def _answered(
        self,
        run: Sequence[Piece],
        changes: Sequence[SpeedChange],
        inside: Sequence[SpeedChange],
        ohm: float | None,
    ) -> Contradiction | None:
        """Deny a run without current in which the feed answers to commands as under a load."""
        start_ns, end_ns = run[0].start_ns, run[-1].end_ns
        first = bisect_right(changes, start_ns, key=_time)
        ends_ns = [*(change.t_ns for change in inside[1:]), end_ns]
        speed, began_ns = changes[first - 1].speed if first else run[0].speed, start_ns
        base: _Base | None = None
        for change, next_ns in zip(inside, ends_ns, strict=False):
            before, speed = speed, change.speed
            if before is not None and before != speed:
                here = _Base(before, began_ns, change.t_ns)
                if base is None or before == 0 or change.t_ns - base.end_ns > DRIFT_NS:
                    base = here
                for one in (here, base):
                    why = self._answer(one, change, next_ns, ohm)
                    if why is not None:
                        return why
            began_ns = change.t_ns
        return None

    def _answer(
        self, base: _Base, change: SpeedChange, end_ns: int, ohm: float | None
    ) -> Contradiction | None:
        """Tell what the feed did from one commanded speed to another."""
        if base.speed == change.speed:
            return None
        was_ns = base.end_ns - self._hand_ns
        now_ns = change.t_ns + self._hand_ns + self._lag_ns
        was = self._levels.within(max(base.start_ns, was_ns - LOOK_BACK_NS), was_ns)
        now = self._levels.within(now_ns, min(end_ns, now_ns + LOOK_NS))
        known = moved(was.feed, now.feed)
        if known is None:
            return None
        up = change.speed > base.speed
        move_v, error_v = (-known[0] if up else known[0]), known[1]
        there_v = min(float(np.nanmin(was.feed)), float(np.nanmin(now.feed)))
        least_v = self._answer_v(base.speed, change.speed, ohm) + SURE * error_v
        if there_v < self._limits.supply_present_v or move_v < least_v:
            return None
        way = "gave way" if up else "recovered"
        return Contradiction(
            f"the feed {way} by {move_v:.2f} V from speed {base.speed} to {change.speed} up to"
            f" {change.t_ns / 1e9:.1f} s, as under a load"
        )

    def _answer_v(self, one: int, other: int, ohm: float | None) -> float:
        """Give by how much the feed must move to be an answer, volts."""
        if ohm is None:
            return max(OTHER_LOAD_V, self._least_v)
        whole = self._limits.at(max(one, other)).min_a if 0 in (one, other) else None
        return max(0.5 * (whole or LEAST_FAN_A) * ohm, self._least_v, ANSWER_V)


def believed(
    pieces: Sequence[Piece], denied: Mapping[int, Contradiction]
) -> list[tuple[Piece, str]]:
    """Give the pieces as they are to be told, each with why its missing current is denied.

    A denied one names no side; neighbours that say the same become one. The words are empty for
    what is not denied.
    """
    result: list[tuple[Piece, str]] = []
    for index, piece in enumerate(pieces):
        if index not in denied:
            result.append((piece, ""))
            continue
        plain = replace(piece, kind=SpanKind.NO_CURRENT)
        before = result[-1] if result else None
        if before is not None and before[1]:
            result[-1] = before[0].joined(plain), before[1]
        else:
            result.append((plain, denied[index].words))
    return result


def _inside(run: Sequence[Piece], changes: Sequence[SpeedChange]) -> Sequence[SpeedChange]:
    """Give the commands within a run."""
    first = bisect_right(changes, run[0].start_ns, key=_time)
    return changes[first : bisect_left(changes, run[-1].end_ns, key=_time)]


def _quiet_runs(pieces: Sequence[Piece], start: int) -> list[tuple[int, int]]:
    """Give (first, after the last) of each run of pieces from ``start`` in which none flows."""
    runs, first = [], None
    for index in range(start, len(pieces)):
        if pieces[index].group is Group.GONE:
            first = index if first is None else first
        elif first is not None:
            runs.append((first, index))
            first = None
    if first is not None:
        runs.append((first, len(pieces)))
    return runs
