"""The judgement of levels written plainly: all of a recording side by side, looked at in one go.

What goes along with a recording that lasts for days is held against this.
"""

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
import pytest
from numpy.typing import NDArray

from meterlog.analysis.levels import BIN_NS, LevelPart, runs_of
from meterlog.analysis.moved_probe import COMMAND_NS, OPEN_V, Slip
from meterlog.analysis.probe_back import BACK_PART
from meterlog.analysis.probe_jumps import (
    ALONE_PART,
    ALONE_V,
    FOLLOWS,
    LEAST_PART,
    LEAST_V,
    PAUSE,
    REACH_NS,
    SETTLED,
    SHARP,
    STEADY,
    USUAL,
    WINDOW,
)
from meterlog.analysis.slipped_probe import LEAST_A, LEAST_NS, MOST_V, _few, _moved
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import Doubt, DoubtKind, Limits, Role


class MemoryAttic:
    """Takes what it is given; not every time where ``takes`` says so."""

    def __init__(self, takes=lambda number: True):
        self.asked = 0
        self.data = {}
        self._takes = takes

    def put(self, data):
        self.asked += 1
        if not self._takes(self.asked):
            return None
        self.data[len(self.data)] = data
        return len(self.data) - 1

    def get(self, place, size):
        assert len(self.data[place]) == size
        return self.data[place]


@pytest.fixture
def plain():
    return sys.modules[__name__]


_NAMES = {Role.MOTOR_FEED: "feed", Role.MOTOR_RETURN: "return"}


@dataclass(frozen=True, slots=True)
class _Jump:
    at_ns: int
    role: Role
    was_v: float
    now_v: float
    amps: float
    first_ns: int
    last_ns: int
    broken: bool
    sure: bool = True
    """No command between its two levels, nor near it."""

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
    found = [replace(jump, sure=not _beside(jump, changes, lag_ns)) for jump in found]
    slips = _slips(found, int(part.t_ns[0]), int(part.t_ns[-1]) + BIN_NS)
    told = [_as_read(part, least_a, slip, changes) for slip in slips]
    return [slip for slip in told if slip is not None]


def _beside(jump: _Jump, changes: Sequence[SpeedChange], lag_ns: int) -> bool:
    """Tell whether a command may have made a jump: one between the two levels, or near it."""
    first_ns = min(jump.first_ns, jump.at_ns - COMMAND_NS)
    last_ns = max(jump.last_ns, jump.at_ns + lag_ns + BIN_NS)
    return any(first_ns < change.t_ns < last_ns for change in changes)


def _as_read(
    part: LevelPart, least_a: float, slip: Slip, changes: Sequence[SpeedChange]
) -> Slip | None:
    """Give a slip as far as the readings say what it says, or those beside its jump."""
    column = part.feed if slip.role is Role.MOTOR_FEED else part.back

    def holds(start_ns: int, end_ns: int) -> bool:
        inside = (part.t_ns >= start_ns) & (part.t_ns + BIN_NS <= end_ns) & np.isfinite(column)
        volts = column[inside & (np.abs(part.amps) >= least_a)]
        near = np.abs(volts - slip.now_v) < np.abs(volts - slip.was_v)
        return bool(near.sum() > len(near) / 2)

    early = slip.start_ns == part.t_ns[0]
    inside = [one.t_ns for one in changes if slip.start_ns < one.t_ns < slip.end_ns]
    if early and not holds(slip.start_ns, slip.end_ns):
        if not inside:
            return None
        slip = replace(slip, start_ns=inside[-1])
    slip = _put_back(part, _touched(part, slip, changes))
    if holds(slip.start_ns, slip.end_ns):
        return slip
    if early or not inside:
        return None
    return slip if holds(slip.start_ns, min(slip.end_ns, inside[0])) else None


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
    apart = np.diff(t_ns)
    most = PAUSE * float(np.quantile(apart, USUAL, method="inverted_cdf"))
    if lag > 1:
        hits = np.array([at for at in hits if np.argmax(apart[at + WINDOW - 1 :][:lag]) == 1], int)
        if not len(hits):
            return
    size = jump if lag == 1 else apart[WINDOW:]
    for group in np.split(hits, np.flatnonzero(np.diff(hits) > WINDOW + lag) + 1):
        best = int(group[np.argmax(size[group])])
        end = best + 2 * WINDOW + lag - 1
        if lag == 1:
            unbroken = apart[max(best - SETTLED + 1, 0) : end].max() <= most
            at_ns = int(t_ns[best + WINDOW - 1]) + BIN_NS
        else:
            unbroken = np.delete(apart[best:end], WINDOW).max() <= most < apart[best + WINDOW]
            at_ns = int(t_ns[best + WINDOW + 1])
        if not unbroken:
            continue
        moves = {
            role: (float(windows.before[best]), float(windows.after[best]))
            for role, windows in sides.items()
        }
        role = max(moves, key=lambda one: abs(moves[one][1] - moves[one][0]))
        reach = int(t_ns[best]), int(t_ns[end]) + BIN_NS
        yield _Jump(at_ns, role, *moves[role], float(current.before[best]), *reach, lag > 1)


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
                early = replace(jump, at_ns=start_ns, was_v=jump.now_v, now_v=jump.was_v)
                slips.append(_slip(early, jump.at_ns, ended=True))
            elif away is None:
                away = jump
        if away is not None:
            slips.append(_slip(away, end_ns, ended=False))
    return sorted(slips, key=lambda one: one.start_ns)


def _slip(away: _Jump, end_ns: int, *, ended: bool) -> Slip:
    levels = away.was_v, away.now_v, away.amps
    return Slip(away.at_ns, end_ns, away.role, *levels, ended, away.broken)


def slipped_probe_doubts(
    part: LevelPart, limits: Limits, changes: Sequence[SpeedChange] = ()
) -> list[Doubt]:
    if not len(part):
        return []
    least = max(LEAST_A, limits.open_current_a)
    told = [*_gone(part, least, limits)]
    for slip in moved_probes(part, least, changes, round(limits.command_lag_s * 1e9)):
        if not any(one.start_ns < slip.end_ns and one.end_ns > slip.start_ns for one in told):
            told.append(_moved(slip))
    return _few(sorted(told, key=lambda one: one.start_ns))


def _gone(part: LevelPart, least: float, limits: Limits) -> list[Doubt]:
    """Tell where next to no voltage drives a current."""
    most = min(MOST_V, limits.driven_v)
    with np.errstate(invalid="ignore"):
        flows = np.abs(part.amps) >= least
        no_feed = flows & (np.abs(part.feed) < most)
        no_across = (
            flows & ~no_feed & (part.feed - part.back < most) & (part.back < part.feed + most)
        )
    return [
        *_runs(part, no_feed, Role.MOTOR_FEED),
        *_runs(part, no_across, Role.MOTOR_RETURN),
    ]


def _runs(part: LevelPart, denied: NDArray[np.bool_], role: Role) -> list[Doubt]:
    column = part.feed if role is Role.MOTOR_FEED else part.back
    told = []
    for start_ns, end_ns in runs_of(denied, part.t_ns):
        if end_ns - start_ns < LEAST_NS:
            continue
        inside = (part.t_ns >= start_ns) & (part.t_ns < end_ns)
        volts, amps = float(column[inside].mean()), float(np.abs(part.amps[inside]).mean())
        text = (
            f"The {_NAMES[role]} reads {volts:.1f} V from {start_ns / 1e9:.1f} s to"
            f" {end_ns / 1e9:.1f} s while {amps:.1f} A flow: its probe has slipped, or sits in the"
            f" wrong place. Fix the probe and measure again before trusting that voltage."
        )
        told.append(Doubt(DoubtKind.PROBE, text, start_ns, end_ns, role=role))
    return told


def negative(part: LevelPart, least_v: float, least_ns: int) -> list[tuple[int, int]]:
    with np.errstate(invalid="ignore"):
        below = runs_of(part.feed < -least_v, part.t_ns)
    return [(a, b) for a, b in below if b - a >= least_ns]
