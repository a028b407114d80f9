"""Asker: what Polled needs to know of a dialect in which an instrument answers when asked."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Protocol

from meterlog.instruments import Link, Readings
from meterlog.model import Identity


class Progress(Enum):
    """How far an answer is after some bytes of it."""

    WAITING = "waiting"
    """Not whole yet."""
    MOVING = "moving"
    """Not whole yet, but there is reason to go on being patient: as if asked anew just now."""
    WHOLE = "whole"
    """Understood or refused: the next question may be asked."""
    GIVEN_UP = "given up"
    """No more is expected, though the answer may still come: first :meth:`Asker.settle`."""


@dataclass(frozen=True, slots=True, eq=False)
class Answer:
    """What some bytes made of an answer.

    Attributes
    ----------
    progress : Progress
    readings : Readings
        Those that became complete.
    complaints : tuple of str
        What the instrument reported of itself on the way.
    """

    progress: Progress
    readings: Readings
    complaints: tuple[str, ...] = ()


class Asker(Protocol):
    """Asks one instrument for one reading, or one block of readings, after the other.

    Attributes
    ----------
    question : str
        What is asked, for messages.
    poll_s : float, seconds
        From one question to the next; 0 asks again as soon as an answer is whole.
    answer_s : float, seconds
        How long to wait for an answer.
    timed_by_question : bool
        Whether a reading was taken between question and answer. False where the instrument
        gathers readings by itself and hands them over when asked.
    repeated : int
        Answers that gave a reading again which had been given before; not kept, not refused.
    """

    question: str
    poll_s: float
    answer_s: float
    timed_by_question: bool
    repeated: int

    @property
    def refused(self) -> int:
        """Answers not understood so far."""
        ...

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        ...

    def introduce(self, link: Link, answer_s: float) -> tuple[Identity, tuple[str, ...]]:
        """Learn who is there and set it up; give its complaints.

        Parameters
        ----------
        link : Link
        answer_s : float, seconds
            How long to wait for each answer.

        Raises
        ------
        TalkError
            If it does not answer as its profile says.
        LinkLost
            If the port went away.
        """
        ...

    def restart(self) -> None:
        """Forget the answer that has begun: the next byte begins a new one."""
        ...

    def ask(self, link: Link) -> None:
        """Send the question; of several that make one reading the first."""
        ...

    def take(self, link: Link, data: bytes, now_ns: int) -> Answer:
        """Take what came in one turn of listening, often nothing; may send a further question.

        Parameters
        ----------
        link : Link
        data : bytes
            Anything at all, cut anywhere.
        now_ns : int, nanoseconds since the recording's zero
            Directly after the read.
        """
        ...

    def settle(self, link: Link, answer_s: float, known: Identity) -> tuple[str, ...]:
        """Let come what is still owed after a question was given up, and pass it over.

        Answers do not say what they answer. A late one would be taken for the answer to the next
        question, with that one's time; so the instrument is first asked something whose answer
        can't be taken for a reading. Passed over is counted as refused.

        Parameters
        ----------
        link : Link
        answer_s : float, seconds
            How long to wait for each answer.
        known : Identity
            Who the instrument has said it is.

        Returns
        -------
        tuple of str
            Why there was no answer, as far as the instrument says.

        Raises
        ------
        TalkError
            If it does not answer that either.
        """
        ...

    def refuse(self, data: bytes) -> None:
        """Count what came without a question, or for one that was given up, as refused."""
        ...
