"""RawBytes: what the port gave, before anybody understood it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class RawBytes:
    """Bytes as they came, with the time they were read.

    Attributes
    ----------
    source : str
        Key of the instrument.
    t_ns : int, nanoseconds since the recording's zero
    data : bytes
    """

    source: str
    t_ns: int
    data: bytes
