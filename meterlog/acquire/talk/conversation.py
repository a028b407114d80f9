"""Conversation: one way of getting readings out of an instrument."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from meterlog.acquire.talk.open_port import OpenPort
from meterlog.instruments import Readings
from meterlog.model import Identity


@dataclass(frozen=True, slots=True, eq=False)
class Heard:
    """What one turn of listening gave.

    Attributes
    ----------
    data : bytes
        As they came; empty when nothing did.
    arrived_ns : int, nanoseconds since the recording's zero
        Directly after the read.
    asked_ns : int or None, nanoseconds since the recording's zero
        When the query was sent that is being answered.
    readings : Readings
        Those that ``data`` completed; often none.
    complaints : tuple of str
        What the instrument reports of itself, or of not answering.
    aside : bytes
        What came before ``data`` and is no part of it: introductions, late answers.
    """

    data: bytes
    arrived_ns: int
    readings: Readings
    asked_ns: int | None = None
    complaints: tuple[str, ...] = ()
    aside: bytes = b""


class Conversation(Protocol):
    """Opens a link, understands what comes, and asks where that is needed.

    Used by one thread at a time, if nothing else is said.

    Attributes
    ----------
    identity : Identity
        Empty for an instrument that does not say.
    simulated : bool
        True when the instrument says that it is a virtual one.
    watched : bool
        Whether silence means that something is wrong and the pace of the readings means anything;
        False where a person types what is to be kept, when there is something.
    """

    identity: Identity
    simulated: bool
    watched: bool

    @property
    def port(self) -> OpenPort | None:
        """Its port; None where there is none, as with readings typed by hand."""
        ...

    @property
    def byte_s(self) -> float:
        """Time that one byte takes on the way, seconds; 0 where there is no serial wire."""
        ...

    @property
    def refused(self) -> int:
        """Lines or answers not understood since :meth:`begin`."""
        ...

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        ...

    @property
    def repeated(self) -> int:
        """Answers that were understood, but gave the reading before once more; not kept."""
        ...

    def open(self) -> tuple[str, ...]:
        """Open the port, learn who is there, set it up; give its complaints.

        Raises
        ------
        LinkError
            If the port can't be opened.
        TalkError
            If the instrument does not answer as its profile says.
        """
        ...

    def reopen(self) -> tuple[str, ...]:
        """Do the same after the port went away, as fast as can be."""
        ...

    def begin(self) -> None:
        """Forget all that came before now.

        Raises
        ------
        LinkLost
            If the port went away.
        """
        ...

    def hear(self, wait_s: float) -> Heard:
        """Listen for at most about ``wait_s``.

        Raises
        ------
        LinkLost
            If the port went away.
        """
        ...

    def close(self) -> None:
        """Close the port. Never raises."""
        ...
