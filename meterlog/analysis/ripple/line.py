"""Line: the commutation frequency in one window, and how it moved."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.ordered import medians, percentiles
from meterlog.analysis.ripple.plausible import LEAST_RIPPLE_HZ, MOST_RIPPLE_HZ

FRAME_S = 0.1
"""Within so long the speed is taken as constant when the line is first looked for."""
LEVEL_S = 0.025
"""The level is followed in stretches of this length: at least two ripples."""
_CLIP = 2.4
"""A sine reaches 1.1 times the distance between these percentiles, humps with sharp feet 2.1."""
_PROMINENCE = 6.0
"""A line must have this many times the power of its surroundings."""
_REACH = 0.07
"""The speed is looked for within this part around its mean."""


@dataclass(frozen=True, slots=True, eq=False)
class Line:
    """A spectral line that moves.

    Attributes
    ----------
    hz : float, hertz
        Mean over the window.
    prominence : float
        Its power over the median of its surroundings.
    t_s : ndarray, float64, shape (frames,), seconds since the window's beginning
    track_hz : ndarray, float64, shape (frames,), hertz
        Where the line was.
    """

    hz: float
    prominence: float
    t_s: NDArray[np.float64]
    track_hz: NDArray[np.float64]


def levelled(amps: NDArray[np.float64], rate_hz: float) -> NDArray[np.float64]:
    """Give the current without what changes slowly and without deep notches and high humps.

    Notches as deep as an open bar makes have stronger lines, at multiples of the turn, than the
    ripple itself; so what is far off the middle half of the values is blanked.
    """
    level = _level(amps, max(4, round(LEVEL_S * rate_hz)))
    spectrum = np.fft.rfft(blanked(amps - level))
    spectrum[: int(0.7 * LEAST_RIPPLE_HZ * len(amps) / rate_hz) + 1] = 0.0
    fast: NDArray[np.float64] = np.fft.irfft(spectrum, len(amps))
    return fast


def blanked(values: NDArray[np.float64]) -> NDArray[np.float64]:
    """Set to nothing what is far off the middle of the values."""
    low, middle, high = percentiles(values, 35.0, 50.0, 65.0)
    left: NDArray[np.float64] = values - middle
    left[np.abs(left) > _CLIP * (high - low)] = 0.0
    return left


def swinging(amps: NDArray[np.float64], rate_hz: float) -> NDArray[np.float64]:
    """Give the current without what changes slowly; notches are left in."""
    spectrum = np.fft.rfft(amps - _level(amps, max(4, round(LEVEL_S * rate_hz))))
    spectrum[: int(0.7 * LEAST_RIPPLE_HZ * len(amps) / rate_hz) + 1] = 0.0
    fast: NDArray[np.float64] = np.fft.irfft(spectrum, len(amps))
    return fast


def _level(amps: NDArray[np.float64], size: int) -> NDArray[np.float64]:
    """Give a slow level: medians of half-overlapping stretches, which notches do not pull."""
    if len(amps) < 3 * size:
        return np.full(len(amps), float(medians(amps)))
    parts = np.lib.stride_tricks.sliding_window_view(amps, size)[:: max(1, size // 2)]
    middles = np.arange(len(parts)) * max(1, size // 2) + 0.5 * (size - 1)
    return np.interp(np.arange(len(amps)), middles, medians(parts))


def find_line(y: NDArray[np.float64], rate_hz: float, *, notches: bool = False) -> Line | None:
    """Find the strongest line between the slowest and the fastest plausible ripple.

    Parameters
    ----------
    y : ndarray, float64, shape (n,)
        As :func:`levelled` gives it.
    rate_hz : float, readings per second
    notches : bool
        The line of deep notches is looked for, as :func:`swinging` leaves them in: the highest of
        all, at a low multiple of the turn.

    Returns
    -------
    Line or None
        None where no line stands out.

    Source
    ------
    Mean of windowed periodograms: P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70;
    vertex of a parabola through the logarithms of three bins: F. J. Harris, Proc. IEEE 66 (1978)
    51. From memory.
    """
    size = min(len(y), max(64, round(FRAME_S * rate_hz)))
    hop = max(1, size // 2)
    frames = np.lib.stride_tricks.sliding_window_view(y, size)[::hop]
    padded = 1 << int(np.ceil(np.log2(2 * size)))
    power = np.abs(np.fft.rfft(frames * np.hanning(size), padded, axis=1)) ** 2
    step_hz = rate_hz / padded
    low = int(LEAST_RIPPLE_HZ / step_hz)
    high = min(int(min(MOST_RIPPLE_HZ, 0.47 * rate_hz) / step_hz), power.shape[1] - 2)
    if high - low < 8:
        return None
    peak, prominence = _strongest(power.mean(axis=0), (low, high), 0.0 if notches else 2.0)
    if prominence < _PROMINENCE:
        return None
    reach = max(2, int(_REACH * peak))
    first, last = max(1, peak - reach), min(power.shape[1] - 1, peak + reach + 1)
    tops = first + np.argmax(power[:, first:last], axis=1)
    track = vertex(power, tops) * step_hz
    middles = np.arange(len(frames), dtype=np.float64) * hop + 0.5 * (size - 1)
    t_s: NDArray[np.float64] = middles / rate_hz
    return Line(float(np.median(track)), prominence, t_s, track)


def _strongest(
    mean: NDArray[np.float64], bins_of: tuple[int, int], rising: float
) -> tuple[int, float]:
    """Give the bin of the line and its power over the median of its surroundings; 0 for none.

    Powers are weighed by the frequency to the power of ``rising``.
    """
    low, high = bins_of
    edges = np.linspace(max(1, low // 2), min(len(mean), high + high // 8), 13).astype(np.intp)
    middles = 0.5 * (edges[1:] + edges[:-1])
    if not np.diff(edges).all():
        return low, 0.0  # too few bins to have surroundings
    floors = [float(medians(mean[a:b])) for a, b in pairwise(edges.tolist())]
    bins = np.arange(low, high)
    floor = np.interp(bins, middles, floors)
    if not floor.min() > 0.0:
        return low, 0.0
    prominence = mean[low:high] / floor
    # What blanking leaves of notches falls with frequency; so does the weight that finds them.
    weight = np.where(
        prominence >= _PROMINENCE, mean[low:high] * bins.astype(np.float64) ** rising, 0.0
    )
    best = int(np.argmax(weight))
    return low + best, float(prominence[best])


def vertex(power: NDArray[np.float64], tops: NDArray[np.intp]) -> NDArray[np.float64]:
    """Give the places, in bins, of the parabolas through each row's top and its neighbours."""
    rows = np.arange(len(tops))
    tops = np.clip(tops, 1, power.shape[1] - 2)
    with np.errstate(divide="ignore", invalid="ignore"):
        a, b, c = (np.log(power[rows, tops + k]) for k in (-1, 0, 1))
        shift = 0.5 * (a - c) / (a - 2.0 * b + c)
    places: NDArray[np.float64] = np.where(np.isfinite(shift), np.clip(shift, -0.5, 0.5), 0.0)
    return places + tops
