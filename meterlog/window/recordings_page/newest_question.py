"""NewestQuestion: something asked again and again; of what waits only the newest is answered."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

from meterlog.window.long_work import LongWork

T = TypeVar("T")


class NewestQuestion(Generic[T]):
    """Answers in a thread of its own; the window fetches on its timer.

    Parameters
    ----------
    name : str
        Of the thread.
    """

    def __init__(self, name: str) -> None:
        self._work: LongWork[T] = LongWork(name)
        self._waiting: Callable[[], T] | None = None

    @property
    def busy(self) -> bool:
        """True until the newest question has been answered and fetched."""
        return self._work.busy or self._waiting is not None

    def ask(self, question: Callable[[], T]) -> None:
        """Ask; what still waits for its turn is dropped."""
        self._waiting = question
        self._go_on()

    def fetch(self) -> tuple[T | None, str] | None:
        """Give an answer once, as :meth:`~.long_work.LongWork.fetch`; None while there is none."""
        answer = self._work.fetch()
        self._go_on()
        return answer

    def close(self) -> None:
        """Drop what waits, and wait for what is being answered."""
        self._waiting = None
        self._work.wait()

    def _go_on(self) -> None:
        question = self._waiting
        if question is not None and self._work.begin(lambda _: question()):
            self._waiting = None
