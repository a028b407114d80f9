"""DiskWatch: how much room there is where recordings go, also before one is made."""

from __future__ import annotations

import shutil
import time
from pathlib import Path

from meterlog.window.long_work import LongWork

EVERY_S = 5.0


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
        self._looked_s = float("-inf")
        self._folder: Path | None = None

    def tick(self, folder: Path) -> None:
        """Take what was found, and look again where it is time or the folder is another one."""
        if folder != self._folder:
            # A look that hangs on the disk before is not waited for.
            self._work = LongWork("disk")
            self._folder, self.free, self._looked_s = folder, -1, float("-inf")
        outcome = self._work.fetch()
        if outcome is not None:
            self.free = -1 if outcome[0] is None else outcome[0]
        now_s = time.monotonic()
        if now_s - self._looked_s >= EVERY_S and self._work.begin(lambda _: free_bytes(folder)):
            self._looked_s = now_s


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
