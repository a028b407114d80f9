"""ClockFit: the line between an instrument's time and the arrival of what it sends."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.acquire.times.line_fit import LineFit, fit_line

CLOCK_PRIOR = 200e-6
"""Quartz clocks are good to some 100 ppm with temperature and age. Common practice, no source."""
_FAR = 4.0
"""A window whose least delay lies this many usual distances above the line was late as a whole."""
_FINEST_S = 1e-6
_ROUNDS = 3


@dataclass(frozen=True, slots=True)
class ClockLine:
    """What is known of an instrument's clock.

    Attributes
    ----------
    slope : float, host seconds per instrument second
    slope_u : float or None
        Standard uncertainty; None before it can be told.
    scatter_s : float or None, seconds
        Residual standard deviation of the points about the line.
    points : int
        Windows whose least late arrival carries the line.
    """

    slope: float
    slope_u: float | None
    scatter_s: float | None
    points: int

    @property
    def ppm(self) -> float:
        """By how much the instrument's clock runs fast, parts per million; negative: slow."""
        return (1.0 / self.slope - 1.0) * 1e6

    @property
    def ppm_u(self) -> float | None:
        """Standard uncertainty of :attr:`ppm`."""
        return None if self.slope_u is None else self.slope_u / self.slope**2 * 1e6


class ClockFit:
    """Fits arrival = offset + slope x instrument time, point by point, in constant memory.

    Nothing arrives before it was sent, but anything may arrive late: delays have one side. So of
    each window only the least late arrival is kept, and the line of least squares is laid through
    those of the last windows. A window that was late as a whole stands out and is left out.

    Parameters
    ----------
    window_s : float, seconds of instrument time
    windows : int
        How many are remembered.
    fewest : int
        Windows before the slope is fitted, at least 3; until then it is 1.
    prior : float, host seconds per instrument second
        Standard uncertainty of the slope's being 1 before anything was measured.

    Source
    ------
    Least delay per window, then a line through these: the way in which V. Paxson measured clocks
    by packets ("On calibrating measurements of packet transit times", 1998; from memory); the
    least delayed of the last samples is also what the clock filter of RFC 5905, section 10,
    takes. The line: :func:`meterlog.acquire.times.line_fit.fit_line`; its slope is weighed against
    the nominal one by the inverse variances. Leaving out the windows that stand out, and the
    figures of this file, are our own.
    """

    def __init__(
        self, window_s: float, windows: int, fewest: int = 5, prior: float = CLOCK_PRIOR
    ) -> None:
        self._window_s = window_s
        self._fewest = fewest
        self._least: deque[tuple[float, float]] = deque(maxlen=windows)
        self._nominal = self._slope = 1.0
        self._prior = prior
        self._x0 = 0.0
        self._y0_ns = 0
        self._offset = 0.0
        self._begun_x = 0.0
        self._best: tuple[float, float] | None = None
        self._any = False
        self._line = ClockLine(1.0, None, None, 0)

    @property
    def tied(self) -> bool:
        """Tell whether there is a first point to hold on to."""
        return self._any

    @property
    def line(self) -> ClockLine:
        """What has been fitted so far."""
        return self._line

    def at(self, x_s: float) -> int:
        """Give the instant of instrument time ``x_s``, nanoseconds since the recording's zero."""
        return self._y0_ns + round((self._offset + self._slope * (x_s - self._x0)) * 1e9)

    def many(self, x_s: NDArray[np.float64]) -> NDArray[np.int64]:
        """Give the instants of many instrument times, nanoseconds since the recording's zero."""
        since = self._offset + self._slope * (x_s - self._x0)
        return self._y0_ns + np.rint(since * 1e9).astype(np.int64)

    @property
    def slope(self) -> float:
        """Host seconds per instrument second, as used now."""
        return self._slope

    def add(self, x_s: float, y_ns: int) -> None:
        """Take a point: what was sent at ``x_s`` (instrument) arrived at ``y_ns`` (host)."""
        if not self._any:
            self._any, self._x0, self._y0_ns, self._begun_x = True, x_s, y_ns, x_s
        point = (x_s - self._x0, (y_ns - self._y0_ns) / 1e9)
        if x_s - self._begun_x >= self._window_s:
            self._close_window()
            self._begun_x = x_s
        if self._best is None or self._delay(point) <= self._delay(self._best):
            self._best = point
            if len(self._least) < self._fewest:
                # Until there is a line, the least late arrival of all is the best there is.
                self._offset = min(self._delay(one) for one in (*self._least, point))

    def _delay(self, point: tuple[float, float]) -> float:
        return point[1] - self._slope * point[0]

    def _close_window(self) -> None:
        if self._best is None:
            return
        self._least.append(self._best)
        self._best = None
        if len(self._least) < self._fewest:
            return
        found = _line_of(np.array(self._least), self._fewest - 1)
        if found is None:
            return
        fit, middle = found
        slope = self._nominal + self._believed(fit) * (fit.slope - self._nominal)
        self._offset = fit.intercept + (fit.slope - slope) * middle
        self._slope = slope
        self._line = ClockLine(fit.slope, fit.slope_u, fit.scatter, fit.points)

    def _believed(self, fit: LineFit) -> float:
        """Give which part of the fitted slope's difference from the nominal one is believed.

        A few points that scatter widely say less of a clock than its being one. The slope is
        drawn to the nominal one as if that had been measured with the uncertainty ``prior``.
        """
        if not fit.slope_u:
            return 1.0
        return self._prior**2 / (self._prior**2 + fit.slope_u**2)


def _line_of(points: NDArray[np.float64], fewest: int) -> tuple[LineFit, float] | None:
    """Fit a line, leaving out windows that were late as a whole; give the mean x, too."""
    fit = fit_line(points[:, 0], points[:, 1])
    for _ in range(_ROUNDS):
        if fit is None:
            return None
        left = points[:, 1] - fit.intercept - fit.slope * points[:, 0]
        left -= _middle(left)
        kept = points[left <= _FAR * _middle(np.abs(left)) + _FINEST_S]
        if len(kept) == fit.points or len(kept) < fewest:
            break
        points = kept
        fit = fit_line(points[:, 0], points[:, 1])
    return None if fit is None else (fit, float(points[:, 0].mean()))


def _middle(values: NDArray[np.float64]) -> float:
    """Give the median, the upper one of two: numpy's own costs ten times as much for a few."""
    return float(np.sort(values)[len(values) // 2])
