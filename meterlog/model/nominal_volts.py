"""NominalVolts: how much there can be on a circuit of a nominal voltage."""

from __future__ import annotations

MOST_OF_NOMINAL = 1.5
"""No voltage of a sound meter lies further out: a charging system gone wrong gives about 1.3 times
the nominal voltage (from memory)."""


def is_beyond_nominal(volts: float, nominal_v: float) -> bool:
    """Tell whether a voltage can't be on a circuit of so many nominal volts."""
    return abs(volts) > MOST_OF_NOMINAL * nominal_v
