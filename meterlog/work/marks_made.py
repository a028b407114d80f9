"""MarksMade: what the technician marked in a run in progress, and what of it was taken back."""

from __future__ import annotations

from meterlog.model import WITHDRAWABLE, Event, EventKind, withdrawal
from meterlog.model.errors import UsageError
from meterlog.model.speed_step import is_speed_step


class MarksMade:
    """The marks of one run that stand, in the order in which they were made."""

    def __init__(self) -> None:
        self._made: list[Event] = []

    def __len__(self) -> int:
        return len(self._made)

    @property
    def speed(self) -> int:
        """The speed commanded last; 0 where nobody said."""
        speeds = (one for one in reversed(self._made) if one.kind is EventKind.SPEED)
        return next((one.speed for one in speeds), 0)

    def make(self, t_ns: int, kind: EventKind, value: str) -> Event:
        """Give the event of a mark.

        Raises
        ------
        UsageError
            If a speed is no whole number of 0 or more, or above :data:`FASTEST_STEP`.
        """
        if kind is EventKind.SPEED and not is_speed_step(value):
            raise UsageError(
                "is no speed step.", subject=value, remedy="Expected 0 for off, or 1, 2, 3 ..."
            )
        event = Event(t_ns, kind, value)
        self._made.append(event)
        return event

    def take_back(self, t_ns: int) -> tuple[Event, Event]:
        """Take back the speed, tap, wiggle or note that was made last.

        Parameters
        ----------
        t_ns : int, nanoseconds since the recording's zero
            Now.

        Returns
        -------
        mark : Event
            That was taken back.
        entry : Event
            That does it.

        Raises
        ------
        UsageError
            If none is left.
        """
        for place in range(len(self._made) - 1, -1, -1):
            if self._made[place].kind in WITHDRAWABLE:
                mark = self._made.pop(place)
                return mark, withdrawal(mark, t_ns)
        raise UsageError("there is no mark to take back.", remedy="Mark something first.")
