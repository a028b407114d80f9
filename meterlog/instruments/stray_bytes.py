"""StrayBytes: counts what belongs to no frame, and keeps an example of it."""

from __future__ import annotations

from meterlog.instruments.readings import EXAMPLE_BYTES


class StrayBytes:
    """Counts the bytes between frames.

    A stretch of them counts once for every frame that would have found room in it, from its first
    byte on: a byte that was lost counts once, a wrong line speed goes on counting.

    Parameters
    ----------
    frame_bytes : int
        Length of a frame.

    Attributes
    ----------
    count : int
        So many frames' worth so far.
    last : bytes
        The last of them, at most 200 bytes.
    """

    def __init__(self, frame_bytes: int) -> None:
        self.count = 0
        self.last = b""
        self._room = frame_bytes
        self._begun = b""

    def add(self, data: bytes) -> None:
        """Go on with the stretch that has begun, or begin one."""
        if not data:
            return
        whole = self._begun + data
        before = 1 if self._begun else 0
        frames = -(-len(whole) // self._room)
        self.count += frames - before
        self._begun = whole[(frames - 1) * self._room :]
        self.last = self._begun[:EXAMPLE_BYTES]

    def end(self) -> None:
        """End the stretch: a frame came, or the line was silent."""
        self._begun = b""

    def refuse(self, frame: bytes) -> None:
        """Count a whole frame that is not understood."""
        self.end()
        self.count += 1
        self.last = frame[:EXAMPLE_BYTES]
