"""OpenModel: what a meter shows of a short open, and of the restart after it."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

SHORTEST_WINDOW_S = 1e-4
"""A meter that does not average at all is taken to average this long."""


@dataclass(frozen=True, slots=True)
class RestartScale:
    """How a motor coasts and starts again.

    Attributes
    ----------
    ratio : float
        Current of the standing motor over its running current, 1 or more; 1 where something
        (a soft start, a current limit) lets no peak through.
    coast_per_s : float, 1/s
        With the current gone, the motor at first loses this part of its speed in a second.
    friction : float, 0 to 1
        Dry friction as a part of the whole load; the rest goes with the square of the speed.
    """

    ratio: float
    coast_per_s: float
    friction: float = 0.1

    @property
    def settling_s(self) -> float:
        """Time constant with which the restart current falls back, seconds."""
        return 1.0 / (self.coast_per_s * (self.ratio + 1.0 - 2.0 * self.friction))

    def speed_left(self, open_s: NDArray[np.float64]) -> NDArray[np.float64]:
        """Give which part of its speed the motor still has after an open.

        Parameters
        ----------
        open_s : ndarray, float64, seconds

        Source
        ------
        de/dt = -r (f + (1 - f) e^2) with e(0) = 1, solved: a fan's load on a shaft without
        torque; textbook dynamics.
        """
        turn = math.sqrt(self.friction * (1.0 - self.friction))
        steep = math.sqrt((1.0 - self.friction) / self.friction)
        angle = math.atan(steep) - self.coast_per_s * turn * open_s
        left: NDArray[np.float64] = np.tan(np.maximum(angle, 0.0)) / steep
        return left

    def peak(self, open_s: NDArray[np.float64]) -> NDArray[np.float64]:
        """Give the height of the restart peak above the running current, as a part of that.

        Parameters
        ----------
        open_s : ndarray, float64, seconds

        Source
        ------
        I = (V - Vb - E) / R with the voltage E that the turning motor still generates; any
        textbook of electrical machines. Held against a table of restart peaks in
        ``tests/reference/test_restart_peaks.py``.
        """
        return (self.ratio - 1.0) * (1.0 - self.speed_left(open_s))


def shown(
    scale: RestartScale,
    open_s: NDArray[np.float64],
    ended_s: NDArray[np.float64],
    at_s: NDArray[np.float64],
    window_s: float,
) -> NDArray[np.float64]:
    """Give by how much readings leave the running current, as a part of it.

    Parameters
    ----------
    scale : RestartScale
    open_s : ndarray, float64, shape (...), seconds
        Length of the open.
    ended_s : ndarray, float64, shape (...), seconds
        When the current came back.
    at_s : ndarray, float64, shape (k,), seconds
        Middles of the times over which the readings average.
    window_s : float, seconds
        Averaging time.

    Returns
    -------
    ndarray, float64, shape (..., k)
        -1 for a reading wholly inside the open, above 0 for one in the restart.

    Source
    ------
    The mean of the current over a boxcar, integrated in closed form: no current for the open,
    then the peak, falling back by an exponential. Averaging by a boxcar is what an integrating
    converter does (common practice, no source); held against a numeric convolution in
    ``tests/reference/test_averaging_meter.py``.
    """
    half_s = max(window_s, SHORTEST_WINDOW_S) / 2.0
    since = at_s - ended_s[..., None]
    height, length = scale.peak(open_s)[..., None], open_s[..., None]
    later = _missing(since + half_s, length, height, scale.settling_s)
    sooner = _missing(since - half_s, length, height, scale.settling_s)
    return (later - sooner) / (2.0 * half_s)


def _missing(
    since_s: NDArray[np.float64],
    open_s: NDArray[np.float64],
    height: NDArray[np.float64],
    settling_s: float,
) -> NDArray[np.float64]:
    """Integrate the departure from the running current up to a time since the return."""
    lost = -np.clip(since_s + open_s, 0.0, open_s)
    back = np.maximum(since_s, 0.0) / settling_s
    return lost - height * settling_s * np.expm1(-back)
