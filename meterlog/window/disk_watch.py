"""DiskWatch: how much room there is where recordings go, also before one is made."""

from __future__ import annotations

import shutil
import time
from pathlib import Path

from meterlog.window.long_work import LongWork

EVERY_S = 5.0
STANDS_S = 1.0
"""Whoever types a path makes a folder of each letter, all of them on a disk that may hang."""


class DiskWatch:
    """Looks in a thread: a network folder that hangs must not hold up the window.

    Attributes
    ----------
    free : int, bytes
        Below 0: not known.
    """

    def __init__(self) -> None:
        self.free = -1
        self._work: LongWork[int] = LongWork("disk")
        self._due_s = 0.0
        self._folder: Path | None = None

    def tick(self, folder: Path) -> None:
        """Take what was found; look again where it is time, once a folder has stood a while."""
        now_s = time.monotonic()
        if folder != self._folder:
            # A look that hangs on the disk before is not waited for.
            self._work = LongWork("disk")
            self._folder, self.free, self._due_s = folder, -1, now_s + STANDS_S
        outcome = self._work.fetch()
        if outcome is not None:
            self.free = -1 if outcome[0] is None else outcome[0]
        if now_s >= self._due_s and self._work.begin(lambda _: free_bytes(folder)):
            self._due_s = now_s + EVERY_S


def free_bytes(folder: Path) -> int:
    """Give the free bytes on the disk of a folder, which need not be there yet; -1: not known."""
    for place in (folder, *folder.parents):
        try:
            return shutil.disk_usage(place).free
        except FileNotFoundError:
            continue
        except OSError:
            return -1
    return -1
