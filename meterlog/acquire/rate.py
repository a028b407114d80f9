"""RateCheck: learns how often an instrument sends, and tells when its profile is wrong."""

from __future__ import annotations

import statistics

READINGS = 10
ARRIVALS = 5
TOO_SLOW = 2.0


class RateCheck:
    """Compares the first readings' pace with the profile's interval.

    Parameters
    ----------
    interval_s : float, seconds
        As the profile says.

    Attributes
    ----------
    gap_s : float or None, seconds
        Median time from one arrival to the next, whether of one reading or of a lump of them;
        None before enough have come.
    """

    def __init__(self, interval_s: float) -> None:
        self._interval_s = interval_s
        self._arrived_ns: int | None = None
        self._gaps: list[float] = []
        self._paces: list[float] = []
        self._readings = 0
        self.gap_s: float | None = None

    def restart(self) -> None:
        """Let the time to the next arrival not count: the port was away."""
        self._arrived_ns = None

    def arrived(self, readings: int, now_ns: int) -> str:
        """Note that so many readings arrived together.

        Returns
        -------
        str
            What to report, once, when the median pace is more than twice the profile's interval;
            else empty.
        """
        if self.gap_s is not None:
            return ""
        if self._arrived_ns is not None:
            self._gaps.append((now_ns - self._arrived_ns) / 1e9)
            self._paces.append(self._gaps[-1] / readings)
            self._readings += readings
        self._arrived_ns = now_ns
        if self._readings < READINGS or len(self._gaps) < ARRIVALS:
            return ""
        self.gap_s = statistics.median(self._gaps)
        pace = statistics.median(self._paces)
        if pace <= TOO_SLOW * self._interval_s:
            return ""
        return (
            f"a reading comes every {pace:.3g} s, but the profile says interval_s = "
            f"{self._interval_s:g}: correct it, or short dropouts are judged wrongly"
        )
