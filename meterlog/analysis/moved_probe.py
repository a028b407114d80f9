"""MovedProbe: a voltage jumped, but the current did not: the probe moved, not the circuit.

A motor's current follows its voltage: a tenth more volts, some fifteen per cent more amperes, and
at once even more than that. So a jump of the voltage across the motor under a steady current is the
probe's, however far it jumped: an open probe of a meter of 10 megohms reads anything.

A feed or return alone may move under a steady current where a controller makes up for it; there
only a jump too large for that counts.

Source: V = I R + Ke w (textbook), fan current by about the 1.7th power of the voltage; that voltage
and current must agree, common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import BIN_NS, LevelPart
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import Role

WINDOW = 5
"""Tenths of a second on each side."""
SETTLED = 16
"""After a dropout the current takes so many to settle."""
PAUSE = 1.5
"""A dropout between two readings of a current that flows: longer than this many usual ones."""
REACH_NS = 30_000_000_000
LEAST_V, LEAST_PART = 1.0, 0.15
"""Across the motor: less than this moves the current too little to be missed for certain."""
ALONE_V, ALONE_PART = 3.0, 0.35
STEADY = 0.03
"""The current is steady within this part of itself, or within four deviations of its means."""
FOLLOWS = 0.5
"""A current that moved by this part of what the voltage did, each part of itself, followed it."""
SHARP = 0.2
BACK_PART = 0.25
"""Back where it was: nearer than this part of how far it had moved."""
COMMAND_NS = 3_000_000_000
"""After a command the current's own meter may be the one that is late or on hold."""
OPEN_V = 0.1
"""What an open probe reads at most that reads nothing."""


@dataclass(frozen=True, slots=True)
class Slip:
    """A probe that read something else from one time to another.

    ``role`` is the probe that moved the further.
    """

    start_ns: int
    end_ns: int
    role: Role
    was_v: float
    now_v: float
    amps: float
    ended: bool


@dataclass(frozen=True, slots=True)
class _Jump:
    at_ns: int
    role: Role
    was_v: float
    now_v: float
    amps: float
    sure: bool = True
    """Not right beside a command."""

    @property
    def size(self) -> float:
        return self.now_v - self.was_v


class _Windows:
    """Means and scatters of a column over the bins before and after each place."""

    def __init__(self, column: NDArray[np.float64], lag: int) -> None:
        sums = np.concatenate(([0.0], np.cumsum(column)))
        squares = np.concatenate(([0.0], np.cumsum(column * column)))
        mean = (sums[WINDOW:] - sums[:-WINDOW]) / WINDOW
        square = (squares[WINDOW:] - squares[:-WINDOW]) / WINDOW
        sd = np.sqrt(np.maximum(square - mean * mean, 0.0))
        apart = WINDOW + lag
        self.before, self.after = mean[:-apart], mean[apart:]
        self.sd = np.maximum(sd[:-apart], sd[apart:])


def moved_probes(
    part: LevelPart,
    least_a: float,
    changes: Sequence[SpeedChange],
    lag_ns: int = COMMAND_NS,
) -> list[Slip]:
    """Find the stretches in which a probe read something else than before.

    Parameters
    ----------
    part : LevelPart
        Of the whole recording.
    least_a : float, amperes
        The current flows from here on.
    changes : sequence of SpeedChange
        Commands; a jump right beside one moves no probe, but may be where it was put back.
    lag_ns : int, nanoseconds
        A command may be given so long before its mark.
    """
    amps = np.abs(part.amps)
    feed_there, back_there = np.isfinite(part.feed).any(), np.isfinite(part.back).any()
    there = np.isfinite(amps) & (amps >= least_a)
    if feed_there:
        there &= np.isfinite(part.feed)
    if back_there:
        there &= np.isfinite(part.back)
    if not (feed_there or back_there) or there.sum() < 2 * WINDOW + SETTLED:
        return []
    columns = {
        role: column[there]
        for role, column, known in (
            (Role.MOTOR_FEED, part.feed, feed_there),
            (Role.MOTOR_RETURN, part.back, back_there),
        )
        if known
    }
    t_ns = part.t_ns[there]
    found = [jump for lag in (1, SETTLED) for jump in _jumps(t_ns, amps[there], columns, lag)]
    found = [replace(jump, sure=not _beside(jump.at_ns, changes, lag_ns)) for jump in found]
    slips = _slips(found, int(part.t_ns[0]), int(part.t_ns[-1]) + BIN_NS)
    return [_put_back(part, _touched(part, slip, changes)) for slip in slips]


def _beside(at_ns: int, changes: Sequence[SpeedChange], lag_ns: int) -> bool:
    """Tell whether a command may have made a jump, a bin this way or that."""
    before_ns = lag_ns + BIN_NS
    return any(change.t_ns - before_ns < at_ns < change.t_ns + COMMAND_NS for change in changes)


def _touched(part: LevelPart, slip: Slip, changes: Sequence[SpeedChange]) -> Slip:
    """End a slip where its voltage was back for a while under the same command.

    One shorter than the means that it is looked for with shows only where it begins.
    """
    later = [change.t_ns for change in changes if change.t_ns > slip.start_ns]
    until_ns = min([slip.end_ns, *(t_ns - COMMAND_NS for t_ns in later)])
    column = part.feed if slip.role is Role.MOTOR_FEED else part.back
    inside = (part.t_ns > slip.start_ns) & (part.t_ns < until_ns) & np.isfinite(column)
    near = np.abs(column[inside] - slip.was_v) <= BACK_PART * abs(slip.now_v - slip.was_v)
    if len(near) < WINDOW:
        return slip
    stays = np.flatnonzero(np.convolve(near, np.ones(WINDOW), "valid") > WINDOW - 0.5)
    if not len(stays):
        return slip
    return replace(slip, end_ns=int(part.t_ns[inside][stays[0]]), ended=True)


def _put_back(part: LevelPart, slip: Slip) -> Slip:
    """End a slip where its voltage was back for good, whatever the current did just then.

    After one that read nothing any voltage is back, whatever the speed is by then.
    """
    column = part.feed if slip.role is Role.MOTOR_FEED else part.back
    inside = (part.t_ns > slip.start_ns) & (part.t_ns < slip.end_ns) & np.isfinite(column)
    near = np.abs(column[inside] - slip.was_v) <= BACK_PART * abs(slip.now_v - slip.was_v)
    if abs(slip.now_v) <= OPEN_V:
        near |= column[inside] >= LEAST_V
    if len(near) <= WINDOW or not near[-WINDOW:].all():
        return slip
    away = np.flatnonzero(~near)
    first = int(away[-1]) + 1 if len(away) else 0
    return replace(slip, end_ns=int(part.t_ns[inside][first]), ended=True)


def _jumps(
    t_ns: NDArray[np.int64],
    amps: NDArray[np.float64],
    columns: dict[Role, NDArray[np.float64]],
    lag: int,
) -> Iterator[_Jump]:
    both = len(columns) == 2
    volts = (
        columns[Role.MOTOR_FEED] - columns[Role.MOTOR_RETURN]
        if both
        else next(iter(columns.values()))
    )
    across, current = _Windows(volts, lag), _Windows(amps, lag)
    jump = np.abs(across.after - across.before)
    most = np.maximum(np.abs(across.after), np.abs(across.before))
    least = (
        np.maximum(LEAST_V, LEAST_PART * most) if both else np.maximum(ALONE_V, ALONE_PART * most)
    )
    away = np.abs(current.after - current.before)
    steady = away <= np.maximum(STEADY * current.before, 4.0 * current.sd / WINDOW**0.5)
    # A motor that gathers speed scatters, too: what follows the voltage half-way is not steady.
    with np.errstate(invalid="ignore", divide="ignore"):
        steady &= away <= FOLLOWS * current.before * jump / most
    # A current meter on hold is steady as well: it repeats to the last digit.
    lively = (current.sd > 0.0) | (away > 0.0) | (float(np.median(np.abs(np.diff(amps)))) == 0.0)
    near = t_ns[2 * WINDOW + lag - 1 :] - t_ns[: len(jump)] <= REACH_NS
    hits = np.flatnonzero((jump >= least) & steady & lively & near & (across.sd <= SHARP * jump))
    if not len(hits):
        return
    sides = {role: _Windows(column, lag) for role, column in columns.items()}
    usual = float(np.median(np.diff(t_ns)))
    for group in np.split(hits, np.flatnonzero(np.diff(hits) > WINDOW + lag) + 1):
        best = int(group[np.argmax(jump[group])])
        moves = {
            role: (float(windows.before[best]), float(windows.after[best]))
            for role, windows in sides.items()
        }
        role = max(moves, key=lambda one: abs(moves[one][1] - moves[one][0]))
        place: int | None = best + WINDOW - 1
        if lag > 1:
            place = _pause(t_ns, best + WINDOW - 1, lag, usual)
        if place is None:
            continue
        at_ns = int(t_ns[place]) + BIN_NS
        yield _Jump(at_ns, role, *moves[role], float(current.before[best]))


def _pause(t_ns: NDArray[np.int64], first: int, lag: int, usual: float) -> int | None:
    """Give the last bin before the current went within ``lag`` bins; None where it flowed on."""
    apart = np.diff(t_ns[first : first + lag + 1])
    place = int(np.argmax(apart))
    return first + place if apart[place] > PAUSE * usual else None


def _slips(jumps: Sequence[_Jump], start_ns: int, end_ns: int) -> list[Slip]:
    """Pair the jumps away with those back; one that never came back lasts to the end."""
    slips: list[Slip] = []
    for role in (Role.MOTOR_FEED, Role.MOTOR_RETURN):
        away: _Jump | None = None
        for jump in sorted((j for j in jumps if j.role is role), key=lambda one: one.at_ns):
            if away is not None and away.size * jump.size < 0.0:
                slips.append(_slip(away, jump.at_ns, ended=True))
                away = None
            elif not jump.sure:
                continue
            elif away is None and role is Role.MOTOR_FEED and jump.size > 0.0:
                # An open probe reads less: here it was put back on.
                early = _Jump(start_ns, role, jump.now_v, jump.was_v, jump.amps)
                slips.append(_slip(early, jump.at_ns, ended=True))
            elif away is None:
                away = jump
        if away is not None:
            slips.append(_slip(away, end_ns, ended=False))
    return sorted(slips, key=lambda one: one.start_ns)


def _slip(away: _Jump, end_ns: int, *, ended: bool) -> Slip:
    return Slip(away.at_ns, end_ns, away.role, away.was_v, away.now_v, away.amps, ended)
