"""PieceMean: the mean of readings that come in pieces, and nothing else."""

from __future__ import annotations

import copy
from typing import Self

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.moments import PIECE


class PieceMean:
    """Running mean, the same to the last bit however the readings come cut.

    Source
    ------
    As :class:`Moments`, without its other figures: for voltages of which only the mean is wanted.
    """

    def __init__(self) -> None:
        self._n, self._mean = 0, 0.0
        self._rest: NDArray[np.float64] = np.empty(0)

    def add(self, values: NDArray[np.float64]) -> None:
        """Take readings, shape (n,), all finite."""
        if not len(values):
            return
        whole = np.concatenate((self._rest, values)) if len(self._rest) else values
        full = len(whole) // PIECE * PIECE
        for mean in whole[:full].reshape(-1, PIECE).mean(axis=1).tolist():
            self._n, self._mean = self._n + PIECE, self._joined(mean, PIECE)
        self._rest = np.array(whole[full:])

    def copy(self) -> Self:
        """Give a mean that can go on by itself."""
        return copy.copy(self)

    def _with(self, piece: NDArray[np.float64]) -> tuple[int, float]:
        return self._n + len(piece), self._joined(float(piece.mean()), len(piece))

    def _joined(self, mean: float, count: int) -> float:
        return self._mean + (mean - self._mean) * count / (self._n + count)

    @property
    def mean(self) -> float | None:
        """Arithmetic mean; None of nothing."""
        n, mean = self._with(self._rest) if len(self._rest) else (self._n, self._mean)
        return mean if n else None
