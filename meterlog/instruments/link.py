"""Link: an open way to an instrument, that gives bytes and takes bytes."""

from __future__ import annotations

from dataclasses import dataclass
from types import TracebackType
from typing import Protocol, Self


@dataclass(frozen=True, slots=True)
class LineCounts:
    """What the system has counted of a serial line since it was opened.

    Attributes
    ----------
    framing, parity : int
        Bytes that were no bytes: a wrong speed or form, or a bad cable.
    lost : int
        Bytes that came faster than they were fetched, in the chip or in the system.
    """

    framing: int = 0
    parity: int = 0
    lost: int = 0


class Link(Protocol):
    """An open way to an instrument. One thread may read while others write or close.

    A context manager that closes. Every method but :meth:`close` raises LinkLost when the other
    end went away or the link was closed.

    Attributes
    ----------
    url : str
        As it was opened.
    byte_s : float, seconds
        Time that one byte takes on the way: 0 where there is no serial wire.
    messages : bool
        Whether it keeps the instrument's messages apart, so that the bytes of one :meth:`read`
        end where a message ends (USBTMC); False for a stream.
    """

    url: str
    byte_s: float
    messages: bool

    def __enter__(self) -> Self:
        """Give the link itself."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Close."""
        self.close()

    def read(self, wait_s: float) -> bytes:
        """Give what waits, or else what comes first within ``wait_s``; empty when nothing came."""
        ...

    def write(self, data: bytes) -> None:
        """Send all of ``data``."""
        ...

    def drop_input(self) -> None:
        """Forget what has come in so far."""
        ...

    def line_counts(self) -> LineCounts | None:
        """Give the system's own counts; None where it keeps none."""
        ...

    def close(self) -> None:
        """Close; a read in another thread ends. Never raises; may be called again."""
        ...
