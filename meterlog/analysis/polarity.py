"""Polarity: a clamp or leads the wrong way round."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from meterlog.analysis.levels import BIN_NS, Levels, runs_of
from meterlog.model import Doubt, DoubtKind, Limits, Step

LEAST_NS = 1_000_000_000
"""Shorter than this a negative voltage may be a spike or a moved probe."""
LEAST_V = 1.0
"""A wire's own drop makes a ground point read some tenths of a volt below the battery's."""


def polarity_doubts(steps: Sequence[Step], levels: Levels, limits: Limits) -> list[Doubt]:
    """Tell what reads negative that can't be.

    Parameters
    ----------
    steps : sequence of Step
    levels : Levels
    limits : Limits
    """
    told = []
    amps = [s for s in steps if (s.steady_mean_a or 0.0) <= -limits.open_current_a]
    if amps:
        told.append(
            _doubt(
                amps,
                "The motor current reads negative: the clamp is on the wrong way round. Turn it,"
                " or say so (inverted); its size is judged all the same.",
            )
        )
    volts = [s for s in steps if (s.steady_mean_v or 0.0) < -limits.driven_v]
    if volts:
        told.append(
            _doubt(
                volts,
                "The motor voltage reads negative: feed and return are the wrong way round. Swap"
                " the two leads, or their roles.",
            )
        )
    part = levels.all()
    with np.errstate(invalid="ignore"):
        below = runs_of(part.feed < -LEAST_V, part.t_ns)
    long = [(a, b) for a, b in below if b - a >= max(LEAST_NS, BIN_NS)]
    if long:
        text = (
            f"The feed reads negative ({long[0][0] / 1e9:.1f} s to {long[-1][1] / 1e9:.1f} s): the"
            f" leads of that channel are the wrong way round. Swap them, or say so (inverted)."
        )
        told.append(Doubt(DoubtKind.SIGN, text, long[0][0], long[-1][1]))
    return told


def _doubt(steps: Sequence[Step], words: str) -> Doubt:
    start_ns, end_ns = steps[0].start_ns, steps[-1].end_ns
    text = f"{words} ({start_ns / 1e9:.1f} s to {end_ns / 1e9:.1f} s)"
    return Doubt(DoubtKind.SIGN, text, start_ns, end_ns)
