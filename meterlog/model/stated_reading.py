"""StatedReading: the standard uncertainty of a reading that somebody read off a meter."""

from __future__ import annotations

import math
from dataclasses import dataclass

USUAL_PERCENT = 0.5
USUAL_V = 0.02
"""A usual hand meter: 0.5 % of the reading and 2 digits of 10 mV. Common practice, no source."""
USUAL_CLAMP_PERCENT = 2.0
USUAL_A = 0.1
"""A usual clamp: 2 % of the reading and 0.1 A. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class StatedAccuracy:
    """±(percent of the reading + an amount), as a data sheet states it.

    Attributes
    ----------
    percent : float
    absolute : float, volts or amperes
    basis : str
        Who stated it.
    """

    percent: float
    absolute: float
    basis: str

    def standard_u(self, value: float) -> tuple[float, float]:
        """Give the standard uncertainty at ``value``, and the part of it that is the gain's.

        Returns
        -------
        tuple of float
            Both in the unit of the value.

        Source
        ------
        JCGM 100:2008, 4.3.7: limits without more are a rectangle, u = a / sqrt(3).
        """
        gain = self.percent / 100.0 * abs(value)
        return (gain + self.absolute) / math.sqrt(3.0), gain / math.sqrt(3.0)


def usual_accuracy(*, clamp: bool) -> StatedAccuracy:
    """Give the accuracy that is taken where nobody states one."""
    if clamp:
        basis = f"a usual clamp, ±({USUAL_CLAMP_PERCENT:g} % + {USUAL_A:g} A), as none was stated"
        return StatedAccuracy(USUAL_CLAMP_PERCENT, USUAL_A, basis)
    basis = f"a usual hand meter, ±({USUAL_PERCENT:g} % + {USUAL_V:g} V), as none was stated"
    return StatedAccuracy(USUAL_PERCENT, USUAL_V, basis)
