"""Event: something that happened at one instant of a recording."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

TO_BEGIN_WITH = ", to begin with"


class EventKind(StrEnum):
    """What happened. The first five are the technician's; the rest the program's."""

    SPEED = "speed"
    """The commanded fan speed changed; value is the step, ``0`` for off."""
    TAP = "tap"
    """The motor was tapped."""
    WIGGLE = "wiggle"
    """Something was moved by hand; value says what: ``leads`` (the control: nothing may happen),
    ``motor plug``, ``relay``, ..."""
    NOTE = "note"
    """Free words."""
    WITHDRAWN = "withdrawn"
    """The technician took a mark back; value says which, see :mod:`meterlog.model.withdrawal`."""
    LINK = "link"
    """An instrument went silent, was lost or came back, bytes of it were lost, or its line speed
    seems wrong; value says which."""
    REFUSED = "refused"
    """Lines or answers that could not be understood; value is ``<count> <example>``."""
    DEVICE = "device"
    """The instrument reported an error of its own (SCPI error queue)."""
    UNIT = "unit"
    """The instrument shows another unit or kind than before: somebody turned its dial."""
    RANGE = "range"
    """The measuring range of the instrument, and each change of it; value says which. The first
    one said, which is no change, ends in :data:`TO_BEGIN_WITH`."""
    ZERO = "zero"
    """A zero was taken; value is ``<channel> <offset> <unit> scatter <s> n <count>``."""
    TIMING = "timing"
    """What is known of an instrument's clock and times; value says it in words."""
    CIRCUIT = "circuit"
    """Something was entered in a check of the circuit; value is its text, see
    :mod:`meterlog.model.circuit_entries`."""
    FAULT = "fault"
    """Something in this program failed, such as the disk; value says what."""
    END = "end"
    """The recording was ended; value is the outcome (``complete``, ``interrupted``, ...)."""


LEADS = "leads"
"""Value of a ``wiggle`` event: the leads of the probes alone, which must change nothing."""


@dataclass(frozen=True, slots=True)
class Event:
    """One happening.

    Attributes
    ----------
    t_ns : int, nanoseconds
        Monotonic time since the recording's zero.
    kind : EventKind
    value : str
        See :class:`EventKind`.
    source : str
        Key of the instrument concerned; empty for the technician and the program.
    """

    t_ns: int
    kind: EventKind
    value: str = ""
    source: str = ""

    @property
    def changes_range(self) -> bool:
        """True where an instrument went to another measuring range."""
        return self.kind is EventKind.RANGE and not self.value.endswith(TO_BEGIN_WITH)

    @property
    def speed(self) -> int:
        """The commanded speed of a ``speed`` event.

        Raises
        ------
        ValueError
            If this is no speed event or its value is no whole number of 0 or more.
        """
        if self.kind is not EventKind.SPEED:
            raise ValueError(f"a {self.kind} event has no speed")
        speed = int(self.value)
        if speed < 0:
            raise ValueError(f"speed {speed} is below 0")
        return speed
