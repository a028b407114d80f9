"""RefusalReport: says what was not understood, at most once a second."""

from __future__ import annotations

EVERY_NS = 1_000_000_000


class RefusalReport:
    """Puts refused lines together, so that a wrong baud rate does not flood the recording."""

    def __init__(self) -> None:
        self._told = 0
        self._next_ns = 0

    def check(self, refused: int, example: bytes, now_ns: int, *, last: bool = False) -> str:
        r"""Note how many lines have been refused so far.

        Parameters
        ----------
        refused : int
            In all.
        example : bytes
            The last one.
        now_ns : int, nanoseconds since the recording's zero
        last : bool
            True at the end of the recording: report what is left at once.

        Returns
        -------
        str
            ``<count since the last report> <example>`` when a report is due; else empty. The
            example is printable: quoted, other bytes as ``\x..``.
        """
        fresh = refused - self._told
        if fresh <= 0 or (now_ns < self._next_ns and not last):
            return ""
        self._told = refused
        self._next_ns = now_ns + EVERY_NS
        return f"{fresh} {repr(example)[1:]}"
