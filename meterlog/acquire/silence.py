"""SilenceWatch: notices that an instrument says nothing any more, and that it is back."""

from __future__ import annotations

from meterlog.model import link_text

SILENT_INTERVALS = 3
SHORTEST_SILENCE_NS = 250_000_000
SHORTEST_ROW_NS = 100_000_000


class SilenceWatch:
    """Tells when rows are due that say that nothing came.

    An instrument is silent when nothing came for three of its intervals, and for no less than
    0.25 s: a busy computer or a USB adapter that delivers in lumps is not a silent meter.

    Parameters
    ----------
    interval_s : float, seconds
        From one reading to the next.
    """

    def __init__(self, interval_s: float) -> None:
        self._heard_ns = 0
        self._row_ns: int | None = None
        self.set_interval(interval_s)

    def set_interval(self, interval_s: float) -> None:
        """Go by this interval from now on."""
        interval_ns = round(interval_s * 1e9)
        self._patience_ns = max(SILENT_INTERVALS * interval_ns, SHORTEST_SILENCE_NS)
        self._every_ns = max(interval_ns, SHORTEST_ROW_NS)

    @property
    def silent(self) -> bool:
        """True from the first row due until something is heard."""
        return self._row_ns is not None

    @property
    def heard_ns(self) -> int:
        """When something was heard last, nanoseconds since the recording's zero."""
        return self._heard_ns

    def begin(self, now_ns: int) -> None:
        """Count from now."""
        self._heard_ns = now_ns
        self._row_ns = None

    def heard(self, now_ns: int) -> str:
        """Note a reading.

        Returns
        -------
        str
            What to report when it ends a silence; else empty.
        """
        silent_ns = now_ns - self._heard_ns
        was_silent = self.silent
        self.begin(now_ns)
        return link_text.back_after(silent_ns / 1e9) if was_silent else ""

    def give_up(self, now_ns: int) -> None:
        """Be silent at once: the port is gone."""
        if not self.silent:
            self._row_ns = now_ns

    def check(self, now_ns: int) -> str:
        """Note the time.

        Returns
        -------
        str
            What to report when the silence begins now; else empty.
        """
        if self.silent or now_ns - self._heard_ns < self._patience_ns:
            return ""
        self._row_ns = now_ns
        return link_text.silent_since(self._heard_ns / 1e9)

    def row_due(self, now_ns: int) -> bool:
        """Tell whether a row is due now; at most one each time it is asked."""
        if self._row_ns is None or now_ns < self._row_ns:
            return False
        self._row_ns = now_ns + self._every_ns
        return True
