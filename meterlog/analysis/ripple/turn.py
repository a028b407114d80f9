"""Turn: all windows of a stretch laid over each other, ripple by ripple of the pattern."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.tracking import PLACES

_STANDARD_ERRORS = 6.0
_REPEATED = 6
"""So many repetitions a window must hold for its halves to be told apart."""


@dataclass(frozen=True, slots=True, eq=False)
class Turn:
    """The mean pattern.

    Attributes
    ----------
    waves : ndarray, float64, shape (ripples, PLACES)
        Mean current at each place of each ripple, as part of the overall mean, less 1.
    errors : ndarray, float64, shape (ripples,)
        Standard error of each ripple's mean, from repetition to repetition.
    repeats : int
        How often the pattern was seen at least.
    left_rms : float
        What single ripples leave of the pattern, rms, as part of the mean.
    """

    waves: NDArray[np.float64]
    errors: NDArray[np.float64]
    repeats: int
    left_rms: float

    @property
    def heights(self) -> NDArray[np.float64]:
        """Mean of each ripple, shape (ripples,)."""
        means: NDArray[np.float64] = self.waves.mean(axis=1)
        return means

    @property
    def typical(self) -> NDArray[np.float64]:
        """The ordinary ripple: the median at each place, shape (PLACES,)."""
        level = self.heights
        median: NDArray[np.float64] = np.median(self.waves - (level - np.median(level))[:, None], 0)
        return median


def lay_over(windows: list[NDArray[np.float64]], length: int) -> Turn:
    """Average the pattern over all windows.

    Parameters
    ----------
    windows : list of ndarray, float64, shape (ripples, PLACES)
        Each begins anywhere in the pattern; they are turned to fit those before by their largest
        circular correlation.
    length : int, ripples

    Source
    ------
    Time-synchronous averaging: P. D. McFadden, Mech. Syst. Signal Process. 1 (1987) 83. From
    memory.
    """
    sums = np.zeros((length, PLACES))
    squares, counts = np.zeros(length), np.zeros(length)
    left = 0.0
    for waves in sorted(windows, key=len, reverse=True):
        place = np.arange(len(waves)) % length
        count = np.bincount(place, minlength=length).astype(np.float64)
        mean = np.array([np.bincount(place, waves[:, k], length) for k in range(PLACES)]).T
        mean /= count[:, None]
        heights = waves.mean(axis=1)
        square = np.bincount(place, (heights - mean.mean(axis=1)[place]) ** 2, length)
        left += float(((waves - mean[place]) ** 2).sum())
        turn = _turned(sums, counts, mean) if counts.any() else 0
        sums += np.roll(mean * count[:, None], turn, axis=0)
        squares += np.roll(square, turn)
        counts += np.roll(count, turn)
    total = sum(waves.size for waves in windows)
    deviation = np.sqrt(squares / np.maximum(counts - 1.0, 1.0))
    return Turn(
        sums / counts[:, None],
        deviation / np.sqrt(counts),
        int(counts.min()),
        float(np.sqrt(left / total)),
    )


def differs_by_halves(windows: list[NDArray[np.float64]], length: int) -> bool:
    """Tell whether every second repetition of a pattern differs from the others at some ripple.

    Then the pattern is twice as long. The two brushes under which a dead bar passes may differ
    at its notch alone, which a criterion that charges for every ripple of the pattern misses.

    Source
    ------
    Difference of two means over its standard error; at 6 of them, so that the number of ripples
    tried does not matter. Any textbook of statistics.
    """
    if min(map(len, windows)) < _REPEATED * length:
        return False
    double = lay_over(windows, 2 * length)
    one, other = double.heights[:length], double.heights[length:]
    error = np.hypot(double.errors[:length], double.errors[length:])
    return bool((np.abs(one - other) > _STANDARD_ERRORS * error).any())


def _turned(
    sums: NDArray[np.float64], counts: NDArray[np.float64], mean: NDArray[np.float64]
) -> int:
    """Give by how many ripples ``mean`` must be turned to fit what is there."""
    known = sums / np.maximum(counts, 1.0)[:, None]
    product = np.fft.fft(known, axis=0) * np.conj(np.fft.fft(mean, axis=0))
    product[0] = 0.0
    return int(np.argmax(np.fft.ifft(product.sum(axis=1)).real))
