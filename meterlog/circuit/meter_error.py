"""Meter error: what a meter that nobody has named yet is taken to be wrong by."""

from __future__ import annotations

import numpy as np

from meterlog.circuit.figures import Floats
from meterlog.model import Circuit, PointKind

USUAL_V = (0.005, 0.02)
"""Part of the reading and volts, of a usual hand meter's limits of error. From memory."""
USUAL_A = (0.02, 0.3)
"""Part of the reading and amperes, of a usual clamp's limits of error. From memory."""
_COVERAGE = 2.0


def usual_standard_u(circuit: Circuit, value: Floats) -> Floats:
    """Give the usual standard uncertainty at each test point.

    Parameters
    ----------
    circuit : Circuit
    value : float64[..., points], volts or amperes

    Returns
    -------
    float64[..., points]
        Half the limits of error, which are taken for about 95 %.
    """
    table = [USUAL_A if p.kind is PointKind.CURRENT else USUAL_V for p in circuit.points]
    part, least = np.array(table).T
    found: Floats = (part * np.abs(value) + least) / _COVERAGE
    return found
