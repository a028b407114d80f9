"""Cue: short patterns of pulses for what has just happened, each told apart without words.

They differ in number, direction and length of their pulses, not in pitch alone. Their energy lies
between 500 and 2,500 Hz (ISO 7731:2003, from the shared table of references; figures there from
memory); the patterns themselves are our own.
"""

from __future__ import annotations

from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

EDGE_S = 0.004
"""A pulse swells and fades so long: a hard edge clicks, and a click says something else."""


class Cue(StrEnum):
    """What is told."""

    DEAD = "dead"
    OVER = "over"
    RETURNED = "returned"
    LOST = "no readings"


PATTERNS: dict[Cue, tuple[tuple[float, float, float], ...]] = {
    Cue.DEAD: ((900.0, 0.16, 0.05), (600.0, 0.28, 0.0)),
    Cue.OVER: ((1500.0, 0.06, 0.04),) * 4,
    Cue.RETURNED: ((600.0, 0.08, 0.03), (900.0, 0.08, 0.03), (1350.0, 0.14, 0.0)),
    Cue.LOST: ((500.0, 0.05, 0.15), (500.0, 0.05, 0.0)),
}
"""Of each cue its pulses: frequency in Hz, length and the pause after it in seconds."""


def cue_samples(cue: Cue, rate: int) -> NDArray[np.float64]:
    """Give a cue as samples between -1 and 1, shape (n,).

    Parameters
    ----------
    cue : Cue
    rate : int, samples per second
    """
    parts = []
    for frequency, length_s, pause_s in PATTERNS[cue]:
        t = np.arange(round(length_s * rate)) / rate
        edge = np.clip(np.minimum(t, length_s - t) / EDGE_S, 0.0, 1.0)
        parts += [np.sin(2.0 * np.pi * frequency * t) * edge, np.zeros(round(pause_s * rate))]
    return np.concatenate(parts)
