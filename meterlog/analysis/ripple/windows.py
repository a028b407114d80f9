"""Windows: stretches of uniform current kept for a look at the ripple, a bounded number of them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.ordered import percentiles

WINDOW_S = 0.8
LEAST_S = 0.25
"""A shorter end of a stretch is not kept."""
KEPT_RATE_HZ = 60_000.0
"""Readings that come faster are averaged in groups down to at least half of this rate."""
PER_SEGMENT = 16
"""When so many windows of a segment are kept, every second one is given up."""
ALTOGETHER = 320
"""Windows of a whole recording; beyond that, new segments keep none."""
_UNEVEN = 0.25
"""An interval may differ from the mean by this part of it."""


@dataclass(frozen=True, slots=True, eq=False)
class Window:
    """Motor current, evenly read.

    Attributes
    ----------
    start_ns, end_ns : int, nanoseconds
        Of the first and the last reading.
    rate_hz : float, readings per second
    amps : ndarray, float64, shape (n,), amperes
    pulsing : float
        How far the motor voltage swings at the same rate, as part of its highest; 0 where no
        voltage was read with the current.
    """

    start_ns: int
    end_ns: int
    rate_hz: float
    amps: NDArray[np.float64]
    pulsing: float = 0.0


def window_of(
    t_ns: NDArray[np.int64], amps: NDArray[np.float64], volts: NDArray[np.float64] | None
) -> Window | None:
    """Make a Window; None where readings are missing or unevenly spaced.

    Parameters
    ----------
    t_ns : ndarray, int64, shape (n,), nanoseconds
    amps : ndarray, float64, shape (n,), amperes
    volts : ndarray or None, float64, shape (n,), volts
        Across the motor.
    """
    if len(t_ns) < 16 or not np.isfinite(amps.sum()):
        return None
    gaps = np.diff(t_ns)
    mean_ns = float(t_ns[-1] - t_ns[0]) / (len(t_ns) - 1)
    if mean_ns <= 0.0 or np.abs(gaps - mean_ns).max() > _UNEVEN * mean_ns + 1.0:
        return None
    rate = 1e9 / mean_ns
    group = max(1, int(rate // KEPT_RATE_HZ) + 1) if rate > KEPT_RATE_HZ else 1
    if group > 1:
        whole = len(amps) // group * group
        amps = amps[:whole].reshape(-1, group).mean(axis=1)
    return Window(int(t_ns[0]), int(t_ns[-1]), rate / group, amps.copy(), _swing(volts))


def _swing(volts: NDArray[np.float64] | None) -> float:
    """Give how far a voltage swings between its 2nd and 98th percentile, as part of the latter."""
    if volts is None or not np.isfinite(volts.sum()):
        return 0.0
    low, high = percentiles(np.abs(volts), 2.0, 98.0)
    return (high - low) / high if high > 1.0 else 0.0


class WindowKeeper:
    """Cuts the readings of one segment into windows and keeps some, spread over all of it.

    Windows begin at whole multiples of their length from the segment's first reading, however
    the readings come. When too many are kept every second one is given up and from then on only
    every second one is taken.

    Parameters
    ----------
    room : int
        Windows that may be kept.
    """

    def __init__(self, room: int = PER_SEGMENT) -> None:
        self.windows: list[Window] = []
        self._room = room
        self._t: list[NDArray[np.int64]] = []
        self._amps: list[NDArray[np.float64]] = []
        self._volts: list[NDArray[np.float64]] = []
        self._gathered = 0
        self._size = 0
        self._every, self._index = 1, 0
        self.count = 0
        self._first_ns = self._last_ns = 0

    @property
    def rate_hz(self) -> float:
        """Readings per second of the segment so far; 0 below two readings."""
        span = self._last_ns - self._first_ns
        return (self.count - 1) * 1e9 / span if self.count > 1 and span > 0 else 0.0

    def take(
        self,
        t_ns: NDArray[np.int64],
        amps: NDArray[np.float64],
        volts: NDArray[np.float64] | None,
    ) -> None:
        """Take readings that follow the ones before without a break."""
        if not len(t_ns):
            return
        if not self.count:
            self._first_ns = int(t_ns[0])
        self.count += len(t_ns)
        self._last_ns = int(t_ns[-1])
        at = 0
        while at < len(t_ns):
            size = self._window_size(t_ns[at:])
            part = slice(at, min(len(t_ns), at + max(size - self._gathered, 1)))
            self._gather(t_ns[part], amps[part], None if volts is None else volts[part])
            at = part.stop
            size = self._window_size(t_ns[:0])
            if size and self._gathered >= size:
                self._close()

    def _window_size(self, ahead: NDArray[np.int64]) -> int:
        """Give the window's length in readings; 0 until the first 16 readings have told it."""
        if not self._size:
            waiting = np.concatenate([*self._t, ahead[:16]])
            if len(waiting) < 16:
                return 16
            step_ns = float(waiting[15] - waiting[0]) / 15.0
            self._size = 16 if step_ns <= 0.0 else max(16, round(WINDOW_S * 1e9 / step_ns))
        return self._size

    def _gather(
        self,
        t_ns: NDArray[np.int64],
        amps: NDArray[np.float64],
        volts: NDArray[np.float64] | None,
    ) -> None:
        self._gathered += len(t_ns)
        if self._index % self._every and self._size:
            return
        self._t.append(t_ns)
        self._amps.append(amps)
        if volts is not None:
            self._volts.append(volts)

    def _close(self) -> None:
        if not self._index % self._every and self._t:
            self._keep()
        self._index += 1
        self._forget()

    def _keep(self) -> None:
        volts = np.concatenate(self._volts) if self._volts else None
        t_ns = np.concatenate(self._t)
        if volts is not None and len(volts) != len(t_ns):
            volts = None
        made = window_of(t_ns, np.concatenate(self._amps), volts)
        if made is None or not self._room:
            return
        self.windows.append(made)
        if len(self.windows) >= self._room:
            self.windows = self.windows[::2]
            self._every *= 2

    def _forget(self) -> None:
        self._t, self._amps, self._volts, self._gathered = [], [], [], 0

    def end(self, without: int = 0) -> None:
        """End the segment; the last ``without`` readings are left out.

        What remains of the last window is kept if it is long enough.
        """
        taken = sum(len(part) for part in self._t)
        keep = taken - without
        if keep > 0 and self._size and keep >= LEAST_S / WINDOW_S * self._size:
            cut = slice(0, keep)
            self._t = [np.concatenate(self._t)[cut]]
            self._amps = [np.concatenate(self._amps)[cut]]
            self._volts = [np.concatenate(self._volts)[cut]] if self._volts else []
            self._keep()
        self._forget()
