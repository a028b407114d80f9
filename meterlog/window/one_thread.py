"""OneThread: what takes seconds, one at a time, in a plain thread; the window pulls."""

from __future__ import annotations

import threading
from collections.abc import Callable

from meterlog.window.judging import JudgingStopped

Step = Callable[[], None]


class OneThread:
    """At most one piece of work, and the steps that the window takes because of it."""

    def __init__(self) -> None:
        self._thread: threading.Thread | None = None
        self._early: Step | None = None
        self._outcome: Step | None = None

    @property
    def busy(self) -> bool:
        """True while there is work, or its outcome has not been taken."""
        return self._thread is not None

    @property
    def has_news(self) -> bool:
        """True if :meth:`settle` would do anything."""
        return self._outcome is not None or self._early is not None

    def begin(
        self,
        work: Callable[[], Step],
        name: str,
        failed: Callable[[Exception], Step],
        stopped: Step,
    ) -> None:
        """Begin work that gives its last step.

        Parameters
        ----------
        work : callable
        name : str
            Of the thread.
        failed : callable
            Gives the last step where work raised something.
        stopped : callable
            The last step where it was asked to stop.
        """

        def body() -> None:
            try:
                self._outcome = work()
            except JudgingStopped:
                self._outcome = stopped
            except Exception as error:  # noqa: BLE001 - top of a thread: whatever it is must be seen
                self._outcome = failed(error)

        self._thread = threading.Thread(target=body, name=name, daemon=False)
        self._thread.start()

    def meanwhile(self, step: Step) -> None:
        """Have the window take a step before the work is done; for the thread."""
        self._early = step

    def settle(self) -> bool:
        """Take the steps there are; True if there was one."""
        # Looked at first: whatever was to be taken before it is there by then.
        outcome, early = self._outcome, self._early
        if early is not None:
            self._early = None
            early()
        if outcome is None or self._thread is None:
            return early is not None
        self._thread.join()
        self._outcome, self._thread = None, None
        outcome()
        return True

    def join(self, seconds: float) -> None:
        """Wait for the work to be done."""
        if self._thread is not None:
            self._thread.join(seconds)
