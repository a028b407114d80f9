"""NominalVolts: how much there can be on a circuit of a nominal voltage."""

from __future__ import annotations

_MOST = 1.5
"""No voltage of a sound meter lies further out: a charging system gone wrong gives about 1.3 times
the nominal voltage (from memory)."""

_TRUCK_V = (20.0, 32.0)
"""Supply of a nominal 24 V vehicle that runs: at most 32 V by ISO 16750-2 (from memory), which has
10 to 22 V for the least, by the code of the device; 20 V is chosen, as a 12 V one can have 18 V."""


def most_volts(nominal_v: float) -> float:
    """Give the largest voltage that can be on a circuit of so many nominal volts."""
    return _MOST * nominal_v


def is_of_24_v(volts: float, nominal_v: float) -> bool:
    """Tell whether a supply that is too much for so many nominal volts is that of a 24 V one."""
    low, high = _TRUCK_V
    return most_volts(nominal_v) <= low <= volts <= high
