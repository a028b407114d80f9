"""DropLevels: where a voltage drop stood at more than one level within one step.

The mean of 0.3 V and 3.5 V is a drop that never was, and its scatter makes it look well known. What
counts is the worse level, if it was of this speed: on a low speed a controller in the return holds
most of the supply.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.side_volts import SideLevel, SideVolts
from meterlog.analysis.within_step import FELL
from meterlog.model import Role

LASTS_NS = 1_000_000_000
"""Means over so long are held against each other. Chosen: a contact that is bad for less is told
by the dropouts and dips it makes."""
SURE = 6.0
"""They stand apart beyond chance by so many deviations: the largest and the smallest of some
hundred are four to five apart by noise alone. Chosen."""
_NOISE = 1.4826 / np.sqrt(2.0)
"""From the median difference of neighbours to the deviation of one (normal noise)."""

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class WorseLevel:
    """The worse of the levels of a drop.

    Attributes
    ----------
    levels : tuple of SideLevel
        Of each role, volts, while the drop stood at it.
    amps : float, amperes
        The current meanwhile.
    least_v : float, volts
        The least that the drop was for a second.
    part : float
        For which part of the steady running it lasted.
    same_current : bool
        The current was that of the rest, or more: it was this speed.
    """

    levels: tuple[SideLevel, ...]
    amps: float
    least_v: float
    part: float
    same_current: bool


def worse_level(
    side_volts: SideVolts,
    roles: Sequence[tuple[Role, float]],
    during: tuple[int, int],
    apart_v: float,
) -> WorseLevel | None:
    """Give the worse level of a drop; None where it stood at one.

    Parameters
    ----------
    side_volts : SideVolts
    roles : sequence of (Role, float)
        What the drop is made of, each with its sign.
    during : tuple of int, nanoseconds
        From when to when; steady running counts.
    apart_v : float, volts
        Levels that are no further apart are one.
    """
    known = _series(side_volts, [role for role, _ in roles], during)
    if known is None:
        return None
    t_ns, volts, amps = known
    drop = sum(
        (sign * one for (_, sign), one in zip(roles, volts, strict=True)), np.zeros(len(t_ns))
    )
    blocks = (t_ns - t_ns[0]) // LASTS_NS
    _, where, counts = np.unique(blocks, return_inverse=True, return_counts=True)
    means = np.bincount(where, drop) / counts
    low, high = int(np.argmin(means)), int(np.argmax(means))
    noise = float(_NOISE * np.median(np.abs(np.diff(drop)))) if len(drop) > 1 else 0.0
    chance = SURE * noise / float(np.sqrt(min(counts[low], counts[high])))
    if means[high] - means[low] <= max(apart_v, chance):
        return None
    worse = drop > (means[low] + means[high]) / 2.0
    levels = tuple(_level(one[worse]) for one in volts)
    meanwhile, rest = float(amps[worse].mean()), float(amps[~worse].mean())
    return WorseLevel(
        levels, meanwhile, float(means[low]), float(worse.mean()), meanwhile >= FELL * rest
    )


def _level(values: Floats) -> SideLevel:
    sd = float(values.std(ddof=1)) if len(values) > 1 else 0.0
    return SideLevel(float(values.mean()), sd, len(values))


def _series(
    side_volts: SideVolts, roles: Sequence[Role], during: tuple[int, int]
) -> tuple[NDArray[np.int64], list[Floats], Floats] | None:
    """Give times, voltages and current side by side, at the times of the first voltage."""
    times, rows = [], []
    for run in side_volts.steady_parts(*during):
        found = [side_volts.series(role, *run) for role in (*roles, Role.MOTOR_CURRENT)]
        there = [one for one in found if one is not None]
        if len(there) < len(found):
            continue
        t_ns = there[0].t_ns
        times.append(t_ns)
        rows.append([np.interp(t_ns, one.t_ns, one.mean) for one in there])
    if not times:
        return None
    together = [np.concatenate(parts) for parts in zip(*rows, strict=True)]
    return np.concatenate(times), together[:-1], np.abs(together[-1])
