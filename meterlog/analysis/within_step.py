"""WithinStep: where the current left its level within one step, and what the voltages did then.

Speed commanded, current flowing, and for a while it is a tenth to a half less, or a fifth more.
What made it so (resistance ahead of the motor, behind it, drag) is told in ``resistive.py``.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import BIN_NS, runs_of
from meterlog.analysis.side_volts import SideLevel, SideVolts
from meterlog.model import Role, Step

BASE_NS = 3_000_000_000
"""The level at the beginning of a step, or right before a shift, is taken over so long."""
FELL, FELL_MOST = 0.9, 0.4
"""Common practice has it fall by 10 to 40 per cent; what falls further is a loss of its own."""
ROSE = 1.2
"""A fifth more, at the least: drag gives 20 to 300 per cent (common practice)."""
LEAST_NS = 300_000_000
SURE = 4.0
"""And by so many deviations of the tenths of a second before."""

_ROLES = (
    Role.MOTOR_CURRENT,
    Role.MOTOR_FEED,
    Role.MOTOR_RETURN,
    Role.BATTERY,
    Role.RELAY_OUT,
    Role.CONTROLLER_GROUND,
    Role.COMMAND,
)


@dataclass(frozen=True, slots=True)
class Shift:
    """One stretch in which the current stood off its level.

    Attributes
    ----------
    start_ns, end_ns : int, nanoseconds
        In whole tenths of a second.
    came_back : bool
        Within the same step.
    base, now : dict of Role to SideLevel
        Levels before and meanwhile; roles that were not read are left out.
    """

    start_ns: int
    end_ns: int
    came_back: bool
    base: dict[Role, SideLevel]
    now: dict[Role, SideLevel]
    base_ns: tuple[int, int]

    @property
    def part(self) -> float:
        """The current meanwhile as a part of that before."""
        return abs(self.now[Role.MOTOR_CURRENT].mean) / abs(self.base[Role.MOTOR_CURRENT].mean)

    def change(self, role: Role) -> float | None:
        """Give by how much a voltage moved; None where it was not read."""
        if role not in self.base or role not in self.now:
            return None
        return self.now[role].mean - self.base[role].mean


def shifts(side_volts: SideVolts, step: Step, late_ns: int) -> list[Shift]:
    """Find the stretches of a step in which the current stood off its level.

    Parameters
    ----------
    side_volts : SideVolts
    step : Step
        At a speed above 0.
    late_ns : int, nanoseconds
        So late the next command may have come: what was read right before it does not count.

    Returns
    -------
    list of Shift
        In time order; those downwards and those upwards.
    """
    known = _steady_amps(side_volts, step.start_ns, step.end_ns - late_ns)
    if known is None:
        return []
    t_ns, amps = known
    first = amps[t_ns < t_ns[0] + BASE_NS]
    base = float(np.median(first))
    noise = 1.4826 * float(np.median(np.abs(first - base)))
    away = SURE * noise
    found: list[Shift] = []
    down = (amps <= min(FELL * base, base - away)) & (amps >= FELL_MOST * base)
    up = amps >= max(ROSE * base, base + away)
    for mask in (down, up):
        found += _of_mask(side_volts, t_ns, mask, down | up)
    return sorted(found, key=lambda one: one.start_ns)


def _steady_amps(
    side_volts: SideVolts, start_ns: int, end_ns: int
) -> tuple[NDArray[np.int64], NDArray[np.float64]] | None:
    """Give the beginnings of the bins in which the motor ran steadily, and its current in them."""
    bins, amps = [], []
    for run in side_volts.steady_parts(start_ns, end_ns):
        series = side_volts.series(Role.MOTOR_CURRENT, *run)
        if series is not None:
            bins.append(series.bins)
            amps.append(np.abs(series.mean))
    if not bins:
        return None
    every, where = np.unique(np.concatenate(bins), return_index=True)
    return every * BIN_NS, np.concatenate(amps)[where]


def _of_mask(
    side_volts: SideVolts,
    t_ns: NDArray[np.int64],
    mask: NDArray[np.bool_],
    off: NDArray[np.bool_],
) -> Iterator[Shift]:
    # A slow meter leaves bins empty: what lies between two of its readings is not a break.
    gap_ns = int(np.median(np.diff(t_ns))) if len(t_ns) > 1 else BIN_NS
    for start_ns, end_ns in _runs(mask, t_ns, max(gap_ns, BIN_NS)):
        if end_ns - start_ns < LEAST_NS:
            continue
        before = t_ns[~off & (t_ns < start_ns) & (t_ns >= start_ns - BASE_NS)]
        after = t_ns[~off & (t_ns >= end_ns) & (t_ns < end_ns + BASE_NS)]
        beside = before if len(before) else after
        if not len(beside):
            continue
        # The first and the last bin hold some of both levels.
        base_ns = (int(beside[0]), int(beside[-1]) + BIN_NS)
        inner = (start_ns + gap_ns, end_ns - gap_ns)
        now_ns = inner if inner[1] - inner[0] >= BIN_NS else (start_ns, end_ns)
        base, now = _levels(side_volts, base_ns), _levels(side_volts, now_ns)
        if Role.MOTOR_CURRENT in base and Role.MOTOR_CURRENT in now:
            found = Shift(start_ns, end_ns, bool(len(after)), base, now, base_ns)
            # A level that had drifted to the threshold before is no shift.
            if found.part <= FELL or found.part >= ROSE:
                yield found


def _runs(
    mask: NDArray[np.bool_], t_ns: NDArray[np.int64], gap_ns: int
) -> Iterator[tuple[int, int]]:
    if gap_ns <= BIN_NS:
        yield from runs_of(mask, t_ns)
        return
    hits = np.flatnonzero(mask)
    if not len(hits):
        return
    for part in np.split(hits, np.flatnonzero(np.diff(hits) > 1) + 1):
        yield int(t_ns[part[0]]), int(t_ns[part[-1]]) + gap_ns


def _levels(side_volts: SideVolts, during: tuple[int, int]) -> dict[Role, SideLevel]:
    found = {role: side_volts.mean(role, *during) for role in _ROLES}
    return {role: level for role, level in found.items() if level is not None}
