"""Tracking: a window's current laid out ripple by ripple, however the speed wandered."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.line import Line, find_line, levelled, swinging
from meterlog.analysis.ripple.windows import Window

PLACES = 8
"""Places along one ripple."""
_BAND_HZ = 8.0
"""The line's wandering is followed up to here; the turn's own lines lie further off."""
_FINER = 8
_EDGE = 0.03
"""This part of a window is given up at either end."""


@dataclass(frozen=True, slots=True, eq=False)
class Tracked:
    """The ripples of one window.

    Attributes
    ----------
    start_ns : int, nanoseconds
        Of the window.
    rate_hz : float, readings per second
    mean_a : float, amperes
        Size of the mean current.
    hz : float, hertz
        Ripples per second, mean over the window.
    prominence : float
        Of the line.
    waves : ndarray, float64, shape (ripples, PLACES), amperes
        Current by size, averaged over each eighth of each ripple, without a straight trend.
    t_s, track_hz : ndarray, float64, shape (k,)
        Seconds since the recording's zero; ripples per second then.
    """

    start_ns: int
    rate_hz: float
    mean_a: float
    hz: float
    prominence: float
    waves: NDArray[np.float64]
    t_s: NDArray[np.float64]
    track_hz: NDArray[np.float64]


def track(
    window: Window, ratio: float = 1.0, *, notches: bool = False, later: float = 0.0
) -> Tracked | None:
    """Lay out a window ripple by ripple; None where it shows no line.

    Parameters
    ----------
    window : Window
    ratio : float
        Ripples for each wave of the strongest line, where that was found not to be the ripple.
    later : float, ripples
        Cut so much later between two ripples.
    notches : bool
        Follow deep notches, not the ripple between them.

    Source
    ------
    Computed order tracking: K. R. Fyfe, E. D. S. Munck, Mech. Syst. Signal Process. 11 (1997) 187;
    here the ripple itself gives the angle, by the phase of its analytic signal (D. Gabor, J. IEE
    93 (1946) 429). From memory.
    """
    mean = float(window.amps.mean())
    amps = window.amps if mean >= 0.0 else -window.amps
    y = (swinging if notches else levelled)(amps, window.rate_hz)
    line = find_line(y, window.rate_hz, notches=notches)
    if line is None:
        return None
    turned = ratio * _phase(y, window.rate_hz, line) - later
    edge = int(_EDGE * len(turned))
    inner = np.maximum.accumulate(turned[edge : len(turned) - edge])
    first, last = int(np.ceil(inner[0])), int(np.floor(inner[-1]))
    if last - first < 8:
        return None
    waves = _waves(amps, turned, edge, (first, last))
    places_s = np.linspace(
        0.0, (len(y) - 1) / window.rate_hz, 2 + len(y) // max(1, round(0.2 * window.rate_hz))
    )
    at = np.interp(places_s, np.arange(len(turned)) / window.rate_hz, turned)
    middle_s = 0.5 * (places_s[1:] + places_s[:-1])
    return Tracked(
        window.start_ns,
        window.rate_hz,
        abs(mean),
        float((turned[-edge - 1] - turned[edge]) / (len(turned) - 2 * edge - 1) * window.rate_hz),
        line.prominence,
        waves,
        window.start_ns / 1e9 + middle_s,
        np.diff(at) / np.diff(places_s),
    )


def _phase(y: NDArray[np.float64], rate_hz: float, line: Line) -> NDArray[np.float64]:
    """Give how many ripples have passed at each reading; whole numbers lie between two humps."""
    count = len(y)
    t = np.arange(count) / rate_hz
    coarse = _coarse(line, t, rate_hz)
    base = np.fft.fft(y * np.exp(-2j * np.pi * coarse))
    bins = max(2, int(np.ceil(_BAND_HZ * count / rate_hz)))
    taper = 0.5 + 0.5 * np.cos(np.pi * np.arange(bins + 1) / (bins + 1))
    keep = np.zeros(count)
    keep[: bins + 1], keep[-bins:] = taper, taper[:0:-1]
    fine = np.unwrap(np.angle(np.fft.ifft(base * keep))) / (2.0 * np.pi)
    turned: NDArray[np.float64] = coarse + fine + 0.5
    return turned


def _coarse(line: Line, t: NDArray[np.float64], rate_hz: float) -> NDArray[np.float64]:
    """Integrate a smooth curve through where the line was."""
    middle = np.median(line.track_hz)
    off = np.abs(line.track_hz - middle)
    sound = off <= max(0.02 * float(middle), 4.0 * float(np.median(off)))
    degree = min(3, max(0, int(sound.sum()) - 3))
    curve = np.polynomial.Polynomial.fit(line.t_s[sound], line.track_hz[sound], degree)
    # Outside the middles of the first and the last frame nothing holds a cubic down.
    inside = np.clip(t, line.t_s[0], line.t_s[-1])
    turned: NDArray[np.float64] = np.cumsum(curve(inside)) / rate_hz
    return turned


def _waves(
    amps: NDArray[np.float64], turned: NDArray[np.float64], edge: int, cells: tuple[int, int]
) -> NDArray[np.float64]:
    """Average the current over each eighth of each ripple.

    The current is first interpolated as its band limit allows (zeros added to its spectrum), so
    that five readings a bar do. The straight line between its ends is taken out before and put
    in again, as the spectrum takes the ends for neighbours.
    """
    count = len(amps)
    steps = np.arange(count)
    ramp = np.polynomial.Polynomial.fit(steps, amps, 1)
    ends = np.linspace(amps[0], amps[-1], count)
    spectrum = np.fft.rfft(amps - ends)
    fine = np.fft.irfft(spectrum, count * _FINER) * _FINER
    sums = np.concatenate(([0.0], np.cumsum(fine)))
    edges = np.arange(cells[0] * PLACES, cells[1] * PLACES + 1) / PLACES
    inner = slice(edge, count - edge)
    at = np.interp(edges, np.maximum.accumulate(turned[inner]), steps[inner].astype(np.float64))
    # A value of the finer series stands for the middle of its step.
    place = at * _FINER + 0.5
    whole = np.interp(place, np.arange(len(sums)), sums)
    means = np.diff(whole) / np.maximum(np.diff(place), 1e-9)
    middle = 0.5 * (at[1:] + at[:-1])
    slope = (amps[-1] - amps[0]) / max(count - 1, 1)
    means += amps[0] + slope * middle - (ramp(middle) - ramp(0.5 * (count - 1)))
    waves: NDArray[np.float64] = means.reshape(-1, PLACES)
    return waves
