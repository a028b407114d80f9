"""Overhearing: a link that keeps a copy of what is read from it beside the readings."""

from __future__ import annotations

from types import TracebackType
from typing import Self

from meterlog.instruments import LineCounts, Link

MOST_BYTES = 2**20
"""More is not kept of what an instrument says between two turns of listening: it is no talk."""
_MOST_TURNS = 64


class Overhearing:
    """Hands everything on to a link, and keeps what is read: nothing that came is to be lost.

    Introductions, error queues and late answers are read by whoever asks for them. They belong
    into the recording all the same, with the bytes of the readings.

    Parameters
    ----------
    link : Link
    heard : bytes
        What was read from another link before and not yet taken.
    """

    def __init__(self, link: Link, heard: bytes = b"") -> None:
        self.link = link
        self.url = link.url
        self.byte_s = link.byte_s
        self.messages = link.messages
        self._heard = bytearray(heard)

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

    def taken(self) -> bytes:
        """Give what was read since the last call; at most 1 MiB."""
        heard = bytes(self._heard)
        self._heard.clear()
        return heard

    def read(self, wait_s: float) -> bytes:
        """Read as the link does."""
        data = self.link.read(wait_s)
        self._heard += data[: MOST_BYTES - len(self._heard)]
        return data

    def write(self, data: bytes) -> None:
        """Send as the link does."""
        self.link.write(data)

    def drop_input(self) -> None:
        """Forget what has come in, but for the copy."""
        for _ in range(_MOST_TURNS):
            if not self.read(0.0):
                break
        self.link.drop_input()

    def line_counts(self) -> LineCounts | None:
        """Give the link's."""
        return self.link.line_counts()

    def close(self) -> None:
        """Close the link."""
        self.link.close()
