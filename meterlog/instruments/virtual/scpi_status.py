"""ScpiStatus: the error queue and the event register of a SCPI instrument."""

from __future__ import annotations

from collections import deque

_LENGTH = 20
_TEXTS = {
    -104: "Data type error",
    -113: "Undefined header",
    -224: "Illegal parameter value",
    -230: "Data corrupt or stale",
    -350: "Queue overflow",
    -363: "Input buffer overrun",
}
_POWER_ON = 128
_COMPLETE = 1
_BITS = {1: 32, 2: 16, 3: 8, 4: 4}


class ScpiStatus:
    """What has gone wrong since somebody last asked.

    Source
    ------
    Numbers, texts and register bits: SCPI-1999, volume 2, 21.8, and IEEE 488.2-1992, 11.5
    (clauses from memory).
    """

    def __init__(self) -> None:
        self._errors: deque[str] = deque()
        self._register = _POWER_ON

    def add(self, number: int, about: str = "") -> None:
        """Put an error into the queue; the last place of a full one says that it overflowed."""
        self._register |= _BITS[-number // 100]
        if len(self._errors) >= _LENGTH:
            number, about = -350, ""
            self._errors.pop()
        clean = "".join(sign for sign in about if sign.isprintable()).replace('"', '""')[:60]
        tail = f";{clean}" if clean else ""
        self._errors.append(f'{number},"{_TEXTS[number]}{tail}"')

    def next_error(self) -> str:
        """Take the oldest error out of the queue."""
        return self._errors.popleft() if self._errors else '0,"No error"'

    def complete(self) -> None:
        """Set the bit of ``*OPC``."""
        self._register |= _COMPLETE

    def events(self) -> int:
        """Read the event register, which clears it."""
        register, self._register = self._register, 0
        return register

    def summary(self) -> int:
        """Give the status byte: bit 2 when there are errors, bit 5 when there are events."""
        return 4 * bool(self._errors) + 32 * bool(self._register)

    def clear(self) -> None:
        """Forget everything, as ``*CLS`` does."""
        self._errors.clear()
        self._register = 0
