"""TypedKeys: marks typed on a terminal while a recording runs, one line each."""

from __future__ import annotations

import os
import sys

from meterlog.model import LEADS, EventKind
from meterlog.model.speed_step import is_speed_step

KEYS = (
    "0-9 speed step, t tap, w leads moved (w WHAT: what was moved), z zero of the clamp,"
    " n WORDS note, u undo the last mark, q stop; each with Enter"
)
ZERO = "z"
"""Takes the zero of the motor current: clamp empty and shut."""

UNDO = "u"
"""Takes the last mark back."""

READING = "= NUMBER what a meter typed by hand shows (= KEY NUMBER where there are several)"


class TypedKeys:
    """Reads lines from the terminal without waiting for them.

    Only where standard input is a terminal of a POSIX system, and only while the program is in
    the foreground; elsewhere there are no lines.
    """

    def __init__(self) -> None:
        self._rest = ""
        self.open = os.name == "posix" and sys.stdin is not None and sys.stdin.isatty()

    def _in_foreground(self) -> bool:
        # A background job that reads its terminal is stopped by the system (SIGTTIN).
        try:
            return os.tcgetpgrp(sys.stdin.fileno()) == os.getpgrp()
        except OSError:
            return False

    def lines(self) -> list[str]:
        """Give the lines typed since the last call."""
        if not self.open or not self._in_foreground():
            return []
        import select

        while select.select([sys.stdin.fileno()], [], [], 0.0)[0]:
            data = os.read(sys.stdin.fileno(), 4096)
            if not data:
                self.open = False
                break
            self._rest += data.decode(errors="replace")
        *lines, self._rest = self._rest.split("\n")
        return [line.strip() for line in lines if line.strip()]


def reading_of(line: str) -> str | None:
    """Give the words of a reading that a typed line holds; None when it is something else."""
    return line[1:].strip() if line.startswith("=") else None


def mark_of(line: str) -> tuple[EventKind, str] | None:
    """Give the event that a typed line means; None when it means none."""
    word, _, rest = line.partition(" ")
    if is_speed_step(line):
        return EventKind.SPEED, line
    if word == "t" and not rest:
        return EventKind.TAP, ""
    if word == "w":
        return EventKind.WIGGLE, rest.strip() or LEADS
    if word == "n" and rest.strip():
        return EventKind.NOTE, rest.strip()
    return None
