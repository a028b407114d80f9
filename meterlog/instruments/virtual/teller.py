"""Teller: writes lines to a pipe whose reader may be slow, stuck or gone."""

from __future__ import annotations

import os
import queue
import threading


class Teller:
    """Writes lines in order on a thread of its own, so that the bench never waits for a reader.

    Parameters
    ----------
    end : int
        File descriptor to write to.
    """

    def __init__(self, end: int) -> None:
        self._end = end
        self._lines: queue.SimpleQueue[str | None] = queue.SimpleQueue()
        self._thread = threading.Thread(target=self._run, name="teller", daemon=True)
        self._thread.start()

    def tell(self, line: str) -> None:
        """Write one line, soon."""
        self._lines.put(line)

    def close(self, wait_s: float = 1.0) -> None:
        """Wait until everything is written, at most ``wait_s``."""
        self._lines.put(None)
        self._thread.join(wait_s)

    def _run(self) -> None:
        # os.write and not a buffered file: a thread left waiting in one aborts the interpreter.
        try:
            while (line := self._lines.get()) is not None:
                rest = (line + "\n").encode()
                while rest:
                    rest = rest[os.write(self._end, rest) :]
        except OSError:
            # The reader has gone. The bench goes on for whoever has the port.
            return
