"""How much memory a process has in use, watched by a thread of its own."""

import threading
import time
from pathlib import Path


def resident_mb() -> float:
    """Give the resident memory of this process."""
    lines = Path("/proc/self/status").read_text().splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmRSS")) / 1024.0


class Watch:
    """The most memory in use since :meth:`begin`, against what was in use then."""

    def __init__(self) -> None:
        self._begun = self._most = 0.0

    def begin(self) -> None:
        """Take what is in use now for the beginning; call it once."""
        self._begun = self._most = resident_mb()
        threading.Thread(target=self._look, daemon=True).start()

    def _look(self) -> None:
        while True:
            self._most = max(self._most, resident_mb())
            time.sleep(0.02)

    @property
    def grew_mb(self) -> float:
        """By how much it grew at most."""
        return max(self._most, resident_mb()) - self._begun
