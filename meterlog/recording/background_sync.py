"""BackgroundSync: puts files on the disk itself while others go on writing them."""

from __future__ import annotations

import threading
from collections.abc import Sequence

from meterlog.model.errors import DiskFailed
from meterlog.recording.append_file import AppendFile


class BackgroundSync:
    """Syncs some files on a thread of its own, one lot at a time.

    A disk may take a tenth of a second for it, a stick or a busy disk much longer. What comes in
    meanwhile must be handed to the system all the same: else it would be lost with the program.
    """

    def __init__(self) -> None:
        self._thread: threading.Thread | None = None
        self._failures: list[DiskFailed] = []

    @property
    def busy(self) -> bool:
        """True from :meth:`begin` until :meth:`outcome` has given what came of it."""
        return self._thread is not None

    def begin(self, files: Sequence[AppendFile]) -> None:
        """Sync these files; only when not busy."""
        self._failures = []
        self._thread = threading.Thread(target=self._run, args=(tuple(files),), name="sync")
        self._thread.start()

    def outcome(self, *, wait: bool = False) -> tuple[DiskFailed, ...] | None:
        """Give what came of it.

        Parameters
        ----------
        wait : bool
            Until it is done.

        Returns
        -------
        tuple of DiskFailed or None
            Empty when all is on the disk; None while it is under way or nothing was begun.
        """
        thread = self._thread
        if thread is None or (thread.is_alive() and not wait):
            return None
        thread.join()
        self._thread = None
        return tuple(self._failures)

    def _run(self, files: Sequence[AppendFile]) -> None:
        for file in files:
            try:
                file.sync()
            except DiskFailed as error:
                self._failures.append(error)
