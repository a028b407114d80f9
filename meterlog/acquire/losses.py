"""LossWatch: bytes lost or damaged on the line, from the system's counts."""

from __future__ import annotations

from meterlog.instruments import LineCounts

EVERY_NS = 1_000_000_000


class LossWatch:
    """Tells each loss once, with its count.

    Where bytes can be lost between a meter and the disk, and who counts them:

    ==========================================  ==============================================
    on the wire: no valid byte (framing,        the system, where its driver counts
    parity)                                     (:class:`LineCounts`)
    the chip's and the driver's buffers:        the same
    fetched too late
    a network                                   nothing is lost: the sender waits
    a USB bridge's reports, messages kept       the link's own buffer counts what it drops
    apart
    lines and frames not understood             the decoder (``refused``)
    the bus                                     nothing is lost: it has no limit; ``waiting``
    the disk                                    the recorder (``lost_rows``)
    ==========================================  ==============================================

    Attributes
    ----------
    lost : int
        Bytes lost or damaged so far.
    """

    def __init__(self) -> None:
        self._base = LineCounts()
        self._due_ns = 0
        self.lost = 0

    def reopened(self) -> None:
        """Note that the line is a new one, whose counts begin at zero."""
        self._base = LineCounts()

    def is_due(self, now_ns: int) -> bool:
        """Tell whether the counts are to be looked at now; about once a second."""
        if now_ns < self._due_ns:
            return False
        self._due_ns = now_ns + EVERY_NS
        return True

    def check(self, counts: LineCounts) -> str:
        """Note the counts.

        Parameters
        ----------
        counts : LineCounts
            Since the line was opened.

        Returns
        -------
        str
            What to report; empty when nothing was lost since the last time.
        """
        base, self._base = self._base, counts
        gone = counts.lost - base.lost
        bad = counts.framing + counts.parity - base.framing - base.parity
        if gone <= 0 and bad <= 0:
            return ""
        self.lost += max(gone, 0) + max(bad, 0)
        parts = []
        if gone > 0:
            parts.append(f"{gone} byte(s) lost: they came faster than they were fetched")
        if bad > 0:
            parts.append(f"{bad} byte(s) damaged on the line (framing or parity)")
        return "; ".join(parts)
