"""Stamper: gives every reading its time."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments import Readings


class Stamper:
    """Tells when readings were taken, from when they arrived.

    A reading is the mean over the integration time that ended when it was sent, so its time is the
    arrival less half of that. Readings that arrive in one lump were taken one interval apart, the
    last one last. Where the instrument has a clock of its own, only the first arrival counts: it
    fixes the difference between the two clocks.

    Parameters
    ----------
    interval_s : float, seconds
        From one reading to the next.
    integration_s : float, seconds
        0 when unknown.
    """

    def __init__(self, interval_s: float, integration_s: float) -> None:
        self._interval_ns = round(interval_s * 1e9)
        self._lag_ns = round(integration_s * 1e9 / 2)
        self._own_offset_ns: int | None = None
        self._own_last_ns = 0
        self.last_ns = 0

    def forget_own_clock(self) -> None:
        """Tie the instrument's clock anew at the next reading: it may have been restarted."""
        self._own_offset_ns = None

    def stamp_now(self, now_ns: int) -> NDArray[np.int64]:
        """Give the time of one row that the instrument did not send, never before the last."""
        self.last_ns = max(self.last_ns, now_ns)
        return np.array([self.last_ns], np.int64)

    def stamp(
        self, readings: Readings, arrived_ns: int, asked_ns: int | None = None
    ) -> NDArray[np.int64]:
        """Give the times of readings that arrived together.

        Parameters
        ----------
        readings : Readings
            n rows, at least one.
        arrived_ns : int, nanoseconds since the recording's zero
            When the read returned that completed them.
        asked_ns : int or None, nanoseconds since the recording's zero
            When the query was sent that they answer. With an unknown integration time the middle
            between query and arrival is the best guess.

        Returns
        -------
        ndarray, int64, shape (n,), nanoseconds since the recording's zero
            Never decreasing, never before an earlier result, never after the arrival.
        """
        end_ns = arrived_ns - self._lag_ns
        if asked_ns is not None and not self._lag_ns:
            end_ns = (asked_ns + arrived_ns) // 2
        if readings.own_time_s is None:
            stamps = self._spread(len(readings), end_ns)
        else:
            stamps = self._own(readings.own_time_s, end_ns)
        np.maximum(stamps, self.last_ns, out=stamps)
        self.last_ns = int(stamps[-1])
        return stamps

    def _spread(self, count: int, end_ns: int) -> NDArray[np.int64]:
        free_ns = max(end_ns - self.last_ns, 0)
        step_ns = min(self._interval_ns, free_ns // count)
        return end_ns - step_ns * np.arange(count - 1, -1, -1, dtype=np.int64)

    def _own(self, own_time_s: NDArray[np.float64], end_ns: int) -> NDArray[np.int64]:
        own_ns = np.rint(own_time_s * 1e9).astype(np.int64)
        if self._own_offset_ns is not None and own_ns[0] < self._own_last_ns:
            self._own_offset_ns = None  # the clock was set back, ran over or was restarted
        turned = bool(np.any(np.diff(own_ns) < 0))
        if self._own_offset_ns is None or turned:
            self._own_offset_ns = end_ns - int(own_ns[-1])
        self._own_last_ns = int(own_ns[-1])
        if turned:
            return self._spread(len(own_ns), end_ns)
        # A clock that runs fast would put readings into the future.
        return np.minimum(own_ns + self._own_offset_ns, end_ns)
