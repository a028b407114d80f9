"""NominalVolts: how much there can be on a circuit of a nominal voltage."""

from __future__ import annotations

_MOST = 1.5
"""No voltage of a sound meter lies further out: a charging system gone wrong gives about 1.3 times
the nominal voltage (from memory)."""


def most_volts(nominal_v: float) -> float:
    """Give the largest voltage that can be on a circuit of so many nominal volts."""
    return _MOST * nominal_v
