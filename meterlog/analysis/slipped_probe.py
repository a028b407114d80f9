"""SlippedProbe: the voltage is gone, but the current flows."""

from __future__ import annotations

import numpy as np

from meterlog.analysis.levels import Levels, runs_of
from meterlog.model import Doubt, DoubtKind, Limits

LEAST_NS = 300_000_000
"""The windings keep a current up for milliseconds; a slow meter's averages for some tenths of a
second."""
LEAST_A = 1.0
MOST_V = 1.0
"""A motor needs more than its brushes' drop to draw an ampere; a held rotor on low has 2 V."""
MOST_TOLD = 3


def slipped_probe_doubts(levels: Levels, limits: Limits) -> list[Doubt]:
    """Tell where a current flows although the feed reads next to nothing.

    A motor can't draw an ampere at less than its brushes' drop: the probe has slipped, or its
    channel reads something else. Nothing is told against the vehicle.

    Parameters
    ----------
    levels : Levels
    limits : Limits
    """
    part = levels.all()
    least = max(LEAST_A, limits.open_current_a)
    with np.errstate(invalid="ignore"):
        denied = (np.abs(part.feed) < min(MOST_V, limits.driven_v)) & (np.abs(part.amps) >= least)
    told = []
    for start_ns, end_ns in runs_of(denied, part.t_ns):
        if end_ns - start_ns < LEAST_NS:
            continue
        inside = (part.t_ns >= start_ns) & (part.t_ns < end_ns)
        volts, amps = float(part.feed[inside].mean()), float(np.abs(part.amps[inside]).mean())
        text = (
            f"The feed reads {volts:.1f} V from {start_ns / 1e9:.1f} s to {end_ns / 1e9:.1f} s"
            f" while {amps:.1f} A flow: its probe has slipped, or sits in the wrong place. Fix the"
            f" probe and measure again before trusting that voltage."
        )
        told.append(Doubt(DoubtKind.PROBE, text, start_ns, end_ns))
    return told[:MOST_TOLD]
