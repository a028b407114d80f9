"""Doubt: a reason not to take a meter's readings at their face value."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from meterlog.model.channel import Role


class DoubtKind(StrEnum):
    """What is to be doubted. The value is what stands in files."""

    ZERO_MISSING = "zero-missing"
    """A clamp was used whose zero nobody took."""
    ZERO_OLD = "zero-old"
    ZERO_RANGE = "zero-range"
    """The meter is on another range than when its zero was taken."""
    ZERO_DRIFT = "zero-drift"
    """Two zeros of one recording differ."""
    ZERO_SEEN = "zero-seen"
    """A current is read while none can flow."""
    ACCURACY = "accuracy"
    """The sensor's own accuracy is not stated."""
    STUCK = "stuck"
    """A value repeats exactly while it should move."""
    DECADE = "decade"
    """The current is off by about a factor of ten, a hundred or a thousand."""
    BEYOND = "beyond-nominal"
    """A voltage is more than such a circuit can have."""
    NOMINAL = "other-nominal"
    """The supply is that of a vehicle of another nominal voltage than the limits are for."""
    SIGN = "sign"
    CLAMP_QUIET = "clamp-quiet"
    """The current reads nothing, but the voltages say that it flows."""
    PROBE = "probe"
    """The voltage is gone, but the current flows."""
    RANGE = "range"
    """The meter changed its range by itself."""
    PAST_RANGE = "past-range"
    """More was read than meter or sensor are stated for."""
    UNIT = "unit"
    """Somebody turned the meter's dial."""
    BATTERY = "battery"
    """The meter reports that its own battery is low."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """Something about the measuring, not about the vehicle. Never a fault of the motor.

    Attributes
    ----------
    kind : DoubtKind
    text : str
        What, where (from when to when) and what to do: one or two plain sentences.
    start_ns, end_ns : int, nanoseconds since the recording's zero
        Both 0 where it is so from the beginning on.
    source : str
        Key of the instrument; empty when it is not one's own.
    role : Role or None
        What the channel in doubt reads; None where it is not one channel's.
    factor : float
        The readings may have to be multiplied by so much; 1 for nothing of the kind.
    offset_a : float, amperes
        Currents may be off by so much; 0 for nothing of the kind.
    parts : tuple of (int, int), nanoseconds since the recording's zero
        When in between it was so, of what comes and goes; empty where that is not kept.
    """

    kind: DoubtKind
    text: str
    start_ns: int = 0
    end_ns: int = 0
    source: str = ""
    role: Role | None = None
    factor: float = 1.0
    offset_a: float = 0.0
    parts: tuple[tuple[int, int], ...] = ()
