"""The window's thread: it waits for nobody for long, so that it can paint."""

from __future__ import annotations

import sys

from meterlog.work.file_lock import PATIENCE_S

LOCK_S = 0.03
"""To wait for a file that another program changes; then it is told, and can be tried again."""
TURN_S = 0.001
"""How long another thread may run before the window's gets its turn. In one painting it waits for
its turn dozens of times: with the interpreter's own 5 ms beside a thread that judges, one in ten
paintings took 75 ms and longer; with 1 ms, 50 ms (2 cores, no other load)."""


def wait_for_nobody() -> None:
    """Say that the thread that calls this is the window's."""
    PATIENCE_S.set(LOCK_S)
    sys.setswitchinterval(min(TURN_S, sys.getswitchinterval()))
