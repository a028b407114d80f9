"""ReaderState: one glance at one instrument."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ReaderState:
    """How one instrument is doing.

    Attributes
    ----------
    key : str
    alive : bool
        Readings come; False while it is silent, lost, or not being read.
    last_ns : int or None, nanoseconds since the recording's zero
        Time of the last reading; None before the first.
    readings : int
        Rows read so far, without those that only say that nothing came.
    refused : int
        Lines or answers not understood so far.
    message : str
        What is wrong, or was last reported; empty when there is nothing to say.
    lost : int
        Bytes lost or damaged on the line so far, as far as the system counts them.
    repeated : int
        Answers that gave the reading before once more and were not kept.
    typed : bool
        Its readings are typed by hand: it is alive as long as somebody may type.
    """

    key: str
    alive: bool = False
    last_ns: int | None = None
    readings: int = 0
    refused: int = 0
    message: str = ""
    lost: int = 0
    repeated: int = 0
    typed: bool = False
