"""SlippedProbe: the voltage is gone, or somewhere else, but the current flows as before."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.level_walk import LevelWalk, LongRuns
from meterlog.analysis.levels import LevelPart, Levels
from meterlog.analysis.long_table import sums_of
from meterlog.analysis.moved_probe import MovedProbes, Slip
from meterlog.analysis.off_current import is_off
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import Doubt, DoubtKind, Limits, Role

LEAST_NS = 300_000_000
"""The windings keep a current up for milliseconds; a slow meter's averages for some tenths of a
second."""
LEAST_A = 1.0
MOST_V = 1.0
"""A motor needs more than its brushes' drop to draw an ampere; a held rotor on low has 2 V."""
MOST_TOLD = 3
"""So many are told one by one."""

_NAMES = {Role.MOTOR_FEED: "feed", Role.MOTOR_RETURN: "return"}


class SlippedProbes:
    """Tells where a current flows although the voltages say that it can't, or that it changed.

    A motor can't draw an ampere at less than its brushes' drop, nor the same current at another
    voltage: a probe has slipped, or its channel reads something else. Nothing is told against the
    vehicle.

    Parameters
    ----------
    levels : Levels
        Filled by somebody else.
    limits : Limits
    """

    def __init__(self, levels: Levels, limits: Limits) -> None:
        self._levels = levels
        self._least_a = max(LEAST_A, limits.open_current_a)
        self._most_v = min(MOST_V, limits.driven_v)
        self._walk = LevelWalk(levels)
        self._gone = {role: LongRuns(LEAST_NS) for role in _NAMES}
        self._told: dict[Role, list[Doubt]] = {role: [] for role in _NAMES}
        self._moved = MovedProbes(levels, self._least_a, round(limits.command_lag_s * 1e9))

    def doubts(self, changes: Sequence[SpeedChange] = ()) -> list[Doubt]:
        """Give what is to be told so far.

        Parameters
        ----------
        changes : sequence of SpeedChange
            Commands, beside which a voltage may jump with its current's reading late.
        """
        if not len(self._levels):
            return []
        told = [one for one in self._gone_so_far() if not _while_off(one, changes)]
        for slip in self._moved.slips(changes):
            if not any(one.start_ns < slip.end_ns and one.end_ns > slip.start_ns for one in told):
                told.append(_moved(slip))
        return _few(sorted(told, key=lambda one: one.start_ns))

    def _gone_so_far(self) -> list[Doubt]:
        """Tell where next to no voltage drives a current."""
        for part in self._walk.settled():
            for role, denied in self._denied(part).items():
                self._gone[role].take(denied, part.t_ns)
        newest = self._walk.newest()
        told = []
        for role, denied in self._denied(newest).items():
            known, runs = self._told[role], self._gone[role]
            known += [self._doubt(role, *run) for run in runs.ended[len(known) :]]
            told += known
            told += [self._doubt(role, *run) for run in runs.still_open(denied, newest.t_ns)]
        return told

    def _denied(self, part: LevelPart) -> dict[Role, NDArray[np.bool_]]:
        most = self._most_v
        with np.errstate(invalid="ignore"):
            flows = np.abs(part.amps) >= self._least_a
            no_feed = flows & (np.abs(part.feed) < most)
            no_across = (
                flows & ~no_feed & (part.feed - part.back < most) & (part.back < part.feed + most)
            )
        return {Role.MOTOR_FEED: no_feed, Role.MOTOR_RETURN: no_across}

    def _doubt(self, role: Role, start_ns: int, end_ns: int) -> Doubt:
        volts, amps = self._means(role, start_ns, end_ns)
        text = (
            f"The {_NAMES[role]} reads {volts:.1f} V from {start_ns / 1e9:.1f} s to"
            f" {end_ns / 1e9:.1f} s while {amps:.1f} A flow: its probe has slipped, or sits in the"
            f" wrong place. Fix the probe and measure again before trusting that voltage."
        )
        return Doubt(DoubtKind.PROBE, text, start_ns, end_ns, role=role)

    def _means(self, role: Role, start_ns: int, end_ns: int) -> tuple[float, float]:
        """Give the means of a voltage and of the current over neighbouring bins."""
        first, last = self._levels.places(start_ns, end_ns)
        columns = (
            np.array((part.feed if role is Role.MOTOR_FEED else part.back, np.abs(part.amps)))
            for part in self._levels.lots(first, last)
        )
        volts, amps = (sums_of(columns, last - first) / (last - first)).tolist()
        return volts, amps


def _while_off(doubt: Doubt, changes: Sequence[SpeedChange]) -> bool:
    """Tell whether it is of a return at the feed's level with off commanded: there it belongs.

    That a current is read beside it is the clamp's doing, see ``off_current``.
    """
    return doubt.role is Role.MOTOR_RETURN and is_off(changes, doubt.start_ns, doubt.end_ns)


def _few(told: list[Doubt]) -> list[Doubt]:
    """Tell the first ones each, and all others together: none of their times is to be believed."""
    rest = told[MOST_TOLD:]
    if len(rest) < 2:
        return told
    first, last = rest[0], max(rest, key=lambda one: one.end_ns)
    text = (
        f"A probe slipped {len(rest)} more times from {first.start_ns / 1e9:.1f} s to"
        f" {last.end_ns / 1e9:.1f} s: no voltage of that time is to be trusted."
    )
    return [*told[:MOST_TOLD], replace(first, text=text, end_ns=last.end_ns)]


def _moved(slip: Slip) -> Doubt:
    name = _NAMES[slip.role]
    until = f"to {slip.end_ns / 1e9:.1f} s" if slip.ended else "on"
    text = (
        f"The {name} reads {slip.now_v:.1f} V from {slip.start_ns / 1e9:.1f} s {until} instead of"
        f" {slip.was_v:.1f} V, but the current stayed at {slip.amps:.1f} A: its probe has moved,"
        f" not the circuit. Fix the probe and measure again before trusting that voltage."
    )
    if slip.broken:
        text = (
            f"The {name} reads {slip.now_v:.1f} V from {slip.start_ns / 1e9:.1f} s {until} instead"
            f" of {slip.was_v:.1f} V, but the current came back to {slip.amps:.1f} A: its probe has"
            f" moved, not the circuit. Fix the probe and measure again before trusting that"
            f" voltage."
        )
    return Doubt(DoubtKind.PROBE, text, slip.start_ns, slip.end_ns, role=slip.role)
