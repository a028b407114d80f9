"""LongWork: what takes longer than a blink, in a thread of its own, with its progress."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Generic, TypeVar

from meterlog.model.errors import MeterlogError
from meterlog.window.remedies_here import remedy_here
from meterlog.window.words import say

T = TypeVar("T")
Progress = Callable[[float], None]


class Cancelled(Exception):
    """The technician wants it no more."""


class LongWork(Generic[T]):
    """One piece of work at a time. The window asks for the outcome on its timer.

    Attributes
    ----------
    part : float
        Done, 0 to 1.
    """

    def __init__(self, name: str) -> None:
        self._name = name
        self.part = 0.0
        self._thread: threading.Thread | None = None
        self._cancel = threading.Event()
        self._made: T | None = None
        self._trouble = ""

    @property
    def busy(self) -> bool:
        """True from the beginning until the outcome has been fetched."""
        return self._thread is not None

    @property
    def cancelling(self) -> bool:
        """True once it was asked to stop and has not yet."""
        return self.busy and self._cancel.is_set()

    def begin(self, work: Callable[[Progress], T]) -> bool:
        """Begin; False where something is under way already.

        Parameters
        ----------
        work : callable
            Is given what tells its progress. That raises where the work is to stop, so whoever
            calls it must leave nothing half-made.
        """
        if self.busy:
            return False
        self.part, self._made, self._trouble = 0.0, None, ""
        self._cancel.clear()
        self._thread = threading.Thread(
            target=self._run, args=(work,), name=f"meterlog-{self._name}", daemon=True
        )
        self._thread.start()
        return True

    def cancel(self) -> None:
        """Ask it to stop at its next step."""
        self._cancel.set()

    def fetch(self) -> tuple[T | None, str] | None:
        """Give the outcome once: what was made, or why nothing was; None while it goes on.

        Returns
        -------
        tuple or None
            The second is for a person, and empty where all went well or it was cancelled.
        """
        if self._thread is None or self._thread.is_alive():
            return None
        self._thread.join()
        self._thread = None
        return self._made, self._trouble

    def wait(self) -> None:
        """Wait until it has stopped; for the end of the program and for tests."""
        if self._thread is not None:
            self._thread.join()

    def _run(self, work: Callable[[Progress], T]) -> None:
        try:
            self._made = work(self._tell)
        except Cancelled:
            pass
        # The top of a thread: whatever goes wrong must reach who waits for the outcome.
        except Exception as error:  # noqa: BLE001
            self._trouble = trouble_words(error)

    def _tell(self, part: float) -> None:
        self.part = min(max(part, self.part), 1.0)
        if self._cancel.is_set():
            raise Cancelled


def trouble_words(error: Exception) -> str:
    """Say what went wrong: an error meant for a person in its words, any other as a fault."""
    if isinstance(error, MeterlogError):
        return remedy_here(str(error))
    return fault_words(type(error).__name__, str(error))


def fault_words(name: str, text: str) -> str:
    """Say that the program itself is at fault: the kind of its error, and what that says."""
    return say(
        "{name}: {error} This is a fault of the program; please report it.", name=name, error=text
    )
