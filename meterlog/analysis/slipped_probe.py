"""SlippedProbe: the voltage is gone, or somewhere else, but the current flows as before."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import LevelPart, Levels, runs_of
from meterlog.analysis.moved_probe import Slip, moved_probes
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


def slipped_probe_doubts(
    levels: Levels, limits: Limits, changes: Sequence[SpeedChange] = ()
) -> list[Doubt]:
    """Tell where a current flows although the voltages say that it can't, or that it changed.

    A motor can't draw an ampere at less than its brushes' drop, nor the same current at another
    voltage: a probe has slipped, or its channel reads something else. Nothing is told against the
    vehicle.

    Parameters
    ----------
    levels : Levels
    limits : Limits
    changes : sequence of SpeedChange
        Commands, beside which a voltage may jump with its current's reading late.
    """
    part = levels.all()
    if not len(part):
        return []
    least = max(LEAST_A, limits.open_current_a)
    told = [*_gone(part, least, limits)]
    for slip in moved_probes(part, least, changes, round(limits.command_lag_s * 1e9)):
        if not any(one.start_ns < slip.end_ns and one.end_ns > slip.start_ns for one in told):
            told.append(_moved(slip))
    return _few(sorted(told, key=lambda one: one.start_ns))


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


def _moved(slip: Slip) -> Doubt:
    name = _NAMES[slip.role]
    until = f"to {slip.end_ns / 1e9:.1f} s" if slip.ended else "on"
    text = (
        f"The {name} reads {slip.now_v:.1f} V from {slip.start_ns / 1e9:.1f} s {until} instead of"
        f" {slip.was_v:.1f} V, but the current stayed at {slip.amps:.1f} A: its probe has moved,"
        f" not the circuit. Fix the probe and measure again before trusting that voltage."
    )
    return Doubt(DoubtKind.PROBE, text, slip.start_ns, slip.end_ns, role=slip.role)
