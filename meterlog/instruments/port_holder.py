"""Which program holds a port, as far as the system tells."""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path

LONGEST_S = 0.2
"""No longer is looked: a message about a port must not take its time."""
_PROC = Path("/proc")


def holders(device: str) -> tuple[str, ...]:
    """Give the programs that have ``device`` open, such as ``logger (process 4711)``.

    Other users' programs can't be looked into, so some may be missing; on other systems than
    Linux all are. This program itself is left out. Never raises.
    """
    if not sys.platform.startswith("linux"):
        return ()
    until = time.monotonic() + LONGEST_S
    found = []
    try:
        wanted = os.path.realpath(device)
        for process in _PROC.iterdir():
            if time.monotonic() > until:
                break
            other = process.name.isdecimal() and int(process.name) != os.getpid()
            if other and _holds(process, wanted):
                found.append(_named(process))
    except OSError:
        pass  # what was found so far is true
    return tuple(found)


def _holds(process: Path, wanted: str) -> bool:
    try:
        return any(str(handle.readlink()) == wanted for handle in (process / "fd").iterdir())
    except OSError:
        return False  # another user's, or it has just ended


def _named(process: Path) -> str:
    try:
        name = (process / "comm").read_text(encoding="utf-8", errors="replace").strip()
    except OSError:
        return f"process {process.name}"
    return f"{name} (process {process.name})"
