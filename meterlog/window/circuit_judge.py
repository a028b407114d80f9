"""CircuitJudge: works out verdicts in a thread of its own; the window pulls them on its timer."""

from __future__ import annotations

import threading
import time
from dataclasses import dataclass
from typing import Protocol

from meterlog.model import Circuit, CircuitCheck, CircuitState, CircuitVerdict, Expectation
from meterlog.model.errors import MeterlogError
from meterlog.window.words import say

_PAINT_S = 0.05
"""So long it leaves the window alone, which paints what was entered: threads take turns."""


class Judge(Protocol):
    """What is asked of an isolation."""

    def verdict(self, check: CircuitCheck) -> CircuitVerdict: ...  # noqa: D102
    def expected(self, state: CircuitState) -> tuple[Expectation, ...]: ...  # noqa: D102


@dataclass(frozen=True, slots=True)
class Asked:
    """One question: a check, and the state whose expected values are shown.

    Attributes
    ----------
    circuit : Circuit
    check : CircuitCheck
    state : CircuitState
    """

    circuit: Circuit
    check: CircuitCheck
    state: CircuitState


@dataclass(frozen=True, slots=True)
class Answer:
    """What was worked out.

    Attributes
    ----------
    asked : Asked
    verdict : CircuitVerdict or None
        None where it could not be worked out.
    expected : tuple of Expectation
    trouble : str
        Why not; empty when all is well.
    """

    asked: Asked
    verdict: CircuitVerdict | None
    expected: tuple[Expectation, ...] = ()
    trouble: str = ""


class CircuitJudge:
    """One question at a time; of those that wait only the newest is answered.

    Of another circuit than the newest question is about, no answer is given any more.
    """

    def __init__(self) -> None:
        self._thread: threading.Thread | None = None
        self._waiting: Asked | None = None
        self._newest: Asked | None = None
        self._answer: Answer | None = None
        self._isolations: dict[str, Judge] = {}

    @property
    def busy(self) -> bool:
        """True while something is being worked out or waits for it."""
        return self._thread is not None or self._waiting is not None

    def ask(self, asked: Asked) -> None:
        """Work out an answer, in the background."""
        self._waiting = self._newest = asked
        self._go_on()

    def pull(self) -> Answer | None:
        """Give the answer that has come in since the last call; None while there is none."""
        if self._thread is not None and not self._thread.is_alive():
            self._thread.join()
            self._thread = None
        answer, self._answer = (
            (self._answer, None) if self._thread is None else (None, self._answer)
        )
        self._go_on()
        newest = self._newest
        if answer is None or newest is None or answer.asked.circuit is not newest.circuit:
            return None
        return answer

    def wait(self, seconds: float) -> None:
        """Wait for the thread at work."""
        if self._thread is not None:
            self._thread.join(seconds)

    def _go_on(self) -> None:
        if self._thread is not None or self._waiting is None:
            return
        asked, self._waiting = self._waiting, None
        # It writes nothing: closing the window need not wait for it.
        self._thread = threading.Thread(
            target=self._work, args=(asked,), name="meterlog-circuit", daemon=True
        )
        self._thread.start()

    def _work(self, asked: Asked) -> None:
        time.sleep(_PAINT_S)
        try:
            isolation = self._isolation(asked.circuit)
            verdict = isolation.verdict(asked.check)
            self._answer = Answer(asked, verdict, isolation.expected(asked.state))
        except MeterlogError as error:
            self._answer = Answer(asked, None, trouble=str(error))
        except Exception as error:  # noqa: BLE001 - top of a thread: whatever it is must be seen
            words = say(
                "{name}: {error} This is a fault of the program.",
                name=type(error).__name__,
                error=error,
            )
            self._answer = Answer(
                asked, None, trouble=say("{words} Please report it.", words=words)
            )

    def _isolation(self, circuit: Circuit) -> Judge:
        if circuit.text not in self._isolations:
            from meterlog.circuit import Isolation

            self._isolations = {circuit.text: Isolation(circuit)}
        return self._isolations[circuit.text]
