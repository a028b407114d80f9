"""Transfer: how long a reading was on its way over a serial line."""

from __future__ import annotations

_FORGET = 1.0 / 16.0


class Transfer:
    """Counts the bytes of the messages that readings come in.

    Parameters
    ----------
    byte_s : float, seconds
        Time that one byte takes: 0 where there is no wire.
    """

    def __init__(self, byte_s: float) -> None:
        self._byte_ns = byte_s * 1e9
        self._bytes = 0
        self._usual: float | None = None

    def restart(self) -> None:
        """Forget a message that has begun."""
        self._bytes = 0

    def heard(self, count: int) -> None:
        """Note that so many bytes came."""
        self._bytes += count

    def of(self, readings: int, *, whole: bool) -> int:
        """Give how long the last of the readings was on its way that came since the last call.

        Parameters
        ----------
        readings : int
            At least 1.
        whole : bool
            They came in one message, which an instrument begins to send when it has all of them;
            else each came in its own.

        Returns
        -------
        int, nanoseconds
        """
        count, self._bytes = self._bytes, 0
        if whole:
            return round(count * self._byte_ns)
        each = count / readings
        # Comments and lines not understood in between do not make a reading longer: never more
        # than twice the usual.
        self._usual = each if self._usual is None else self._usual
        each = min(each, 2.0 * self._usual)
        self._usual += _FORGET * (each - self._usual)
        return round(each * self._byte_ns)
