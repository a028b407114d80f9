"""The sign by which a virtual meter of any dialect says what it is."""

from __future__ import annotations

from meterlog.model import Identity

BANNER = b"VIRTUAL BENCH"
_MAKER = "VIRTUAL"
_KEPT = 4_096


class VirtualSign:
    """Looks for the sign in what an instrument says when it is connected.

    A free-running one sends a line that holds ``VIRTUAL BENCH`` before its first reading; one
    that can be asked gives a maker that begins with ``VIRTUAL``.

    Attributes
    ----------
    seen : bool
    """

    def __init__(self) -> None:
        self.seen = False
        self._heard = b""

    def hear(self, data: bytes) -> None:
        """Take bytes as they came, cut anywhere; only the first few thousand count."""
        if self.seen or len(self._heard) >= _KEPT:
            return
        self._heard += data[:_KEPT]
        self.seen = BANNER in self._heard.upper()

    def meet(self, identity: Identity) -> None:
        """Take who the instrument says it is."""
        self.seen = self.seen or identity.maker.upper().startswith(_MAKER)
