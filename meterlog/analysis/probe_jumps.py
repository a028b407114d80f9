"""ProbeJumps: where a voltage jumped under a steady current, found as the bins come.

What is looked at are the bins in which the current flows, one behind the other. Where none flowed
for a while (a dropout, off, silence) anything may have happened, and the motor starts anew: no
jump is looked for across it, but one between what had settled before and what has settled since.
Of the bins that have been looked at only the last few are kept, and what the whole says of them:
whether the current ever moves by less than its last digit, and how far its bins usually are apart.
"""

from __future__ import annotations

import copy
import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import BIN_NS, LevelPart
from meterlog.model import Role

WINDOW = 5
"""Tenths of a second on each side."""
SETTLED = 16
"""After a dropout the current takes so many to settle."""
PAUSE = 1.5
"""A break between two bins in which the current flows: longer than this many usual ones."""
USUAL = 0.9
"""So many of all distances of neighbouring bins are no longer than the usual one: a meter whose
pace is no multiple of a bin leaves one out now and then."""
REACH_NS = 30_000_000_000
LEAST_V, LEAST_PART = 1.0, 0.15
"""Across the motor: less than this moves the current too little to be missed for certain."""
ALONE_V, ALONE_PART = 3.0, 0.35
STEADY = 0.03
"""The current is steady within this part of itself, or within four deviations of its means."""
FOLLOWS = 0.5
"""A current that moved by this part of what the voltage did, each part of itself, followed it."""
SHARP = 0.2

_LAGS = (1, SETTLED)
_KEPT = 2 * WINDOW + SETTLED - 1
"""So many bins the longest look spans, less the one that comes."""
_EARLIER = SETTLED - 1
"""So many bins before its own a look over the shortest lag finds among those kept."""
_LEAST = 2 * WINDOW + SETTLED

Reals = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Jump:
    """From one level to another.

    ``at_ns`` is where the new level begins: after a break, the end of that. The two windows that
    were looked at reach from ``first_ns`` to ``last_ns``. ``role`` is the probe that moved the
    further. ``broken``: the current went in between. ``sure``: no command lies between them nor
    right beside the jump.
    """

    at_ns: int
    role: Role
    was_v: float
    now_v: float
    amps: float
    first_ns: int
    last_ns: int
    broken: bool
    sure: bool = True

    @property
    def size(self) -> float:
        """By how much it rose, in volts."""
        return self.now_v - self.was_v


class _Sums(NamedTuple):
    """Sums of a column and of its squares from the first bin of all to before each one kept."""

    plain: Reals
    squares: Reals

    @classmethod
    def onward(cls, before: _Sums | None, column: Reals) -> _Sums:
        """Go on adding up; what is kept already comes first."""
        if before is None:
            sums = (np.concatenate(([0.0], np.cumsum(one))) for one in (column, column * column))
            return cls(*sums)
        return cls(_onward(before.plain, column), _onward(before.squares, column * column))

    def last(self, count: int) -> _Sums:
        return _Sums(self.plain[-count - 1 :].copy(), self.squares[-count - 1 :].copy())


def _onward(sums: Reals, column: Reals) -> Reals:
    more = np.cumsum(np.concatenate((sums[-1:], column)))
    return np.concatenate((sums, more[1:]))


class _Windows:
    """Means and scatters of a column over the bins before and after each place."""

    def __init__(self, sums: _Sums, lag: int) -> None:
        mean = (sums.plain[WINDOW:] - sums.plain[:-WINDOW]) / WINDOW
        square = (sums.squares[WINDOW:] - sums.squares[:-WINDOW]) / WINDOW
        sd = np.sqrt(np.maximum(square - mean * mean, 0.0))
        apart = WINDOW + lag
        self.before, self.after = mean[:-apart], mean[apart:]
        self.sd = np.maximum(sd[:-apart], sd[apart:])


@dataclass(frozen=True, slots=True)
class _Kept:
    """The last bins looked at."""

    t_ns: NDArray[np.int64]
    amps: Reals
    volts: Reals
    across: _Sums
    current: _Sums
    sides: dict[Role, _Sums]

    def last(self, count: int) -> _Kept:
        return _Kept(
            self.t_ns[-count:].copy(),
            self.amps[-count:].copy(),
            self.volts[-count:].copy(),
            self.across.last(count),
            self.current.last(count),
            {role: sums.last(count) for role, sums in self.sides.items()},
        )


@dataclass(frozen=True, slots=True)
class _Best:
    """The largest jump of neighbouring ones, and the last of these.

    ``pause_ns`` is the break over which it is looked for, 0 for none; ``within_ns`` the longest
    distance of two other bins of the look.
    """

    size: float
    jump: Jump
    pause_ns: int
    within_ns: int
    last: int


class _Groups:
    """Jumps that lie next to each other are one: of each the largest counts."""

    def __init__(self, lag: int) -> None:
        self._lag = lag
        self._ended: list[_Best] = []
        self._open: _Best | None = None

    def __copy__(self) -> _Groups:
        other = _Groups(self._lag)
        other._ended, other._open = self._ended.copy(), self._open
        return other

    def take(self, group: Sequence[int], best: _Best) -> None:
        """Take neighbouring ones, numbered from the first bin of all, with their largest."""
        known = self._open
        if known is not None and group[0] - known.last <= WINDOW + self._lag:
            larger = best if best.size > known.size else known
            self._open = replace(larger, last=group[-1])
            return
        if known is not None:
            self._ended.append(known)
        self._open = best

    def jumps(self, usual_ns: int) -> Iterator[Jump]:
        """Give the jumps within which the current never went; over the longer lag but once."""
        most_ns = PAUSE * usual_ns
        for one in (*self._ended, *([] if self._open is None else [self._open])):
            if one.within_ns <= most_ns and (self._lag == 1 or one.pause_ns > most_ns):
                yield one.jump


class ProbeJumps:
    """Looks for voltages that jump under a steady current.

    Parameters
    ----------
    least_a : float, amperes
        The current flows from here on.
    roles : sequence of Role
        Which of feed and return are there to be looked at; one of them or both.
    """

    def __init__(self, least_a: float, roles: Sequence[Role]) -> None:
        self._least_a = least_a
        self._roles = tuple(roles)
        self._kept: _Kept | None = None
        self._count = 0
        self._still = 0
        self._gaps: Counter[int] = Counter()
        self._next = dict.fromkeys(_LAGS, 0)
        # Whether those count whose current does not move at all only the whole can tell.
        self._groups = {(lag, lively): _Groups(lag) for lag in _LAGS for lively in (True, False)}

    def __copy__(self) -> ProbeJumps:
        other = ProbeJumps(self._least_a, self._roles)
        other._kept, other._count, other._still = self._kept, self._count, self._still
        other._gaps, other._next = self._gaps.copy(), self._next.copy()
        other._groups = {key: copy.copy(groups) for key, groups in self._groups.items()}
        return other

    def take(self, part: LevelPart) -> None:
        """Take the next bins."""
        amps = np.abs(part.amps)
        sides = {Role.MOTOR_FEED: part.feed, Role.MOTOR_RETURN: part.back}
        there = np.isfinite(amps) & (amps >= self._least_a)
        for role in self._roles:
            there &= np.isfinite(sides[role])
        if not there.any():
            return
        columns = {role: sides[role][there] for role in self._roles}
        kept = self._with(part.t_ns[there], amps[there], columns)
        for lag in _LAGS:
            self._look(kept, lag)
        self._kept = kept.last(_KEPT)

    def _with(self, t_ns: NDArray[np.int64], amps: Reals, columns: dict[Role, Reals]) -> _Kept:
        """Put new bins behind those kept, and count what the whole must tell."""
        volts = columns[self._roles[0]]
        if len(columns) == 2:
            volts = columns[Role.MOTOR_FEED] - columns[Role.MOTOR_RETURN]
        old = self._kept
        sums = {
            role: _Sums.onward(None if old is None else old.sides[role], column)
            for role, column in columns.items()
        }
        across = _Sums.onward(None if old is None else old.across, volts)
        current = _Sums.onward(None if old is None else old.current, amps)
        self._count += len(t_ns)
        new = len(t_ns)
        if old is not None:
            t_ns = np.concatenate((old.t_ns, t_ns))
            amps, volts = np.concatenate((old.amps, amps)), np.concatenate((old.volts, volts))
            new += 1
        self._still += int(np.count_nonzero(np.diff(amps[-new:]) == 0.0))
        gaps, times = np.unique(np.diff(t_ns[-new:]), return_counts=True)
        for gap, count in zip(gaps.tolist(), times.tolist(), strict=True):
            self._gaps[gap] += count
        return _Kept(t_ns, amps, volts, across, current, sums)

    def _look(self, kept: _Kept, lag: int) -> None:
        """Look at the places at which enough bins follow by now."""
        base = self._count - len(kept.t_ns)
        start, stop = self._next[lag] - base, len(kept.t_ns) - 2 * WINDOW - lag + 1
        if stop <= start:
            return
        self._next[lag] = base + stop
        across, current = _Windows(kept.across, lag), _Windows(kept.current, lag)
        jump = np.abs(across.after - across.before)
        most = np.maximum(np.abs(across.after), np.abs(across.before))
        both = len(kept.sides) == 2
        least_v, least_part = (LEAST_V, LEAST_PART) if both else (ALONE_V, ALONE_PART)
        least = np.maximum(least_v, least_part * most)
        away = np.abs(current.after - current.before)
        steady = away <= np.maximum(STEADY * current.before, 4.0 * current.sd / WINDOW**0.5)
        # A motor that gathers speed scatters, too: what follows the voltage half-way is not steady.
        with np.errstate(invalid="ignore", divide="ignore"):
            steady &= away <= FOLLOWS * current.before * jump / most
        near = kept.t_ns[2 * WINDOW + lag - 1 :] - kept.t_ns[: len(jump)] <= REACH_NS
        found = (jump >= least) & steady & near & (across.sd <= SHARP * jump)
        found[:start] = False
        apart = np.diff(kept.t_ns)
        if lag > 1:
            found &= _just_before(apart, len(found), lag)
        if not found.any():
            return
        lively = (current.sd > 0.0) | (away > 0.0)
        for only_lively in (True, False):
            hits = np.flatnonzero(found & lively) if only_lively else np.flatnonzero(found)
            self._gather(hits, jump, kept, current, (lag, only_lively))

    def _gather(
        self,
        hits: NDArray[np.intp],
        jump: Reals,
        kept: _Kept,
        current: _Windows,
        key: tuple[int, bool],
    ) -> None:
        if not len(hits):
            return
        lag = key[0]
        base = self._count - len(kept.t_ns)
        sides = {role: _Windows(sums, lag) for role, sums in kept.sides.items()}
        apart = np.diff(kept.t_ns)
        # Over a break the longest one counts, else the largest jump.
        size = jump if lag == 1 else apart[WINDOW : WINDOW + len(jump)].astype(np.float64)
        for group in np.split(hits, np.flatnonzero(np.diff(hits) > WINDOW + lag) + 1):
            at = int(group[np.argmax(size[group])])
            moves = {
                role: (float(windows.before[at]), float(windows.after[at]))
                for role, windows in sides.items()
            }
            role = max(moves, key=lambda one: abs(moves[one][1] - moves[one][0]))
            end = at + 2 * WINDOW + lag - 1
            if lag == 1:
                at_ns, pause_ns = int(kept.t_ns[at + WINDOW - 1]) + BIN_NS, 0
                others = apart[max(at - _EARLIER, 0) : end]
            else:
                at_ns, pause_ns = int(kept.t_ns[at + WINDOW + 1]), int(apart[at + WINDOW])
                others = np.delete(apart[at:end], WINDOW)
            reach = int(kept.t_ns[at]), int(kept.t_ns[end]) + BIN_NS
            one = Jump(at_ns, role, *moves[role], float(current.before[at]), *reach, lag > 1)
            numbers = (base + group).tolist()
            best = _Best(float(size[at]), one, pause_ns, int(others.max()), numbers[-1])
            self._groups[key].take(numbers, best)

    def found(self) -> list[Jump]:
        """Give the jumps so far; none where the current flowed for too short."""
        if self._count < _LEAST:
            return []
        # A current meter on hold is steady as well: it repeats to the last digit. Not so where it
        # does so more often than not.
        lively = self._still <= (self._count - 1) // 2
        usual_ns = self._usual_ns()
        return [one for lag in _LAGS for one in self._groups[lag, lively].jumps(usual_ns)]

    def _usual_ns(self) -> int:
        """Give how far apart neighbouring bins usually are at most."""
        wanted = math.ceil(USUAL * (self._count - 1))
        seen = 0
        for gap in sorted(self._gaps):
            seen += self._gaps[gap]
            if seen >= wanted:
                return gap
        return 0


def _just_before(apart: NDArray[np.int64], count: int, lag: int) -> NDArray[np.bool_]:
    """Tell of each place whether the longest distance over the lag is that one bin behind it.

    That bin holds the moment at which the current went, and belongs to neither level; those behind
    are left for it to settle.

    Not by windows of numpy's: each of these has Python keep a name (``typestr``) and let it go, and
    the table of such names, which never forgets a place, doubles after two hours of live judging.
    """
    first = WINDOW - 1
    places = max(min(count, len(apart) - first - lag + 1), 0)
    if lag < 2:
        return np.zeros(places, bool)
    behind = apart[first + 1 : first + 1 + places]
    there: NDArray[np.bool_] = behind > apart[first : first + places]
    for step in range(2, lag):
        there &= behind >= apart[first + step : first + step + places]
    return there
