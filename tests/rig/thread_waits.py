"""ThreadWaits: how long each thread of this process has waited for a processor.

Whoever watches may not hold up what it watches: each file that is opened, read and closed lets go
of the interpreter's lock some eight times, and beside a busy thread each time costs a turn of
that thread. So the files stay open, and one call reads each.
"""

import os
from pathlib import Path

_TASKS = Path("/proc/self/task")


class ThreadWaits:
    """Reads the waits; :meth:`close` lets go of the files."""

    def __init__(self) -> None:
        self._files: dict[str, int] = {}

    def read(self) -> dict[str, float]:
        """Give the wait of each thread by its number, in seconds, since it began.

        Empty where the system does not tell.
        """
        try:
            threads = [one.name for one in _TASKS.iterdir()]
        except OSError:
            return {}
        for gone in self._files.keys() - set(threads):
            self._let_go(gone)
        waits = {}
        for thread in threads:
            try:
                if thread not in self._files:
                    self._files[thread] = os.open(_TASKS / thread / "schedstat", os.O_RDONLY)
                waits[thread] = int(os.pread(self._files[thread], 96, 0).split()[1]) / 1e9
            except (OSError, ValueError, IndexError):
                self._let_go(thread)
        return waits

    def close(self) -> None:
        """Close the files."""
        for thread in list(self._files):
            self._let_go(thread)

    def _let_go(self, thread: str) -> None:
        file = self._files.pop(thread, None)
        if file is not None:
            os.close(file)
