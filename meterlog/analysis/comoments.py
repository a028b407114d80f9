"""Comoments: how two quantities that are read together move together."""

from __future__ import annotations

import copy
import math
from dataclasses import dataclass
from typing import Self

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.moments import AT_ONCE, PIECE


@dataclass(frozen=True, slots=True)
class _Sums:
    n: int = 0
    first: float = 0.0
    second: float = 0.0
    square_first: float = 0.0
    square_second: float = 0.0
    product: float = 0.0

    def plus(self, first: NDArray[np.float64], second: NDArray[np.float64]) -> _Sums:
        """Add readings of both, shape (n,) each, n at least 1."""
        return self.plus_all(first[None, :], second[None, :])

    def plus_all(self, firsts: NDArray[np.float64], seconds: NDArray[np.float64]) -> _Sums:
        """Add pieces of one length, shape (pieces, n) each, one after the other."""
        ours, theirs = firsts.mean(axis=1), seconds.mean(axis=1)
        around, about = firsts - ours[:, None], seconds - theirs[:, None]
        products = (around * about).sum(axis=1)
        squares = np.square(around, out=around).sum(axis=1)
        others = np.square(about, out=about).sum(axis=1)
        sums, count = self, firsts.shape[1]
        for mean, other, square, second, product in zip(
            ours.tolist(),
            theirs.tolist(),
            squares.tolist(),
            others.tolist(),
            products.tolist(),
            strict=True,
        ):
            sums = sums.then(_Sums(count, mean, other, square, second, product))
        return sums

    def then(self, later: _Sums) -> _Sums:
        """Add the sums of later readings."""
        total = self.n + later.n
        apart, off = later.first - self.first, later.second - self.second
        share = self.n * later.n / total
        return _Sums(
            n=total,
            first=self.first + apart * later.n / total,
            second=self.second + off * later.n / total,
            square_first=self.square_first + later.square_first + apart * apart * share,
            square_second=self.square_second + later.square_second + off * off * share,
            product=self.product + later.product + apart * off * share,
        )


class Comoments:
    """Running correlation of two quantities, the same however the readings come cut.

    Source
    ------
    Pairwise combination of sums of products about the means: T. F. Chan, G. H. Golub, R. J.
    LeVeque, "Algorithms for computing the sample variance", The American Statistician 37 (1983),
    242-247, written for two quantities.
    """

    def __init__(self) -> None:
        self._sums = _Sums()
        self._rest = (np.empty(0), np.empty(0))

    def add(self, first: NDArray[np.float64], second: NDArray[np.float64]) -> None:
        """Take readings of both, each shape (n,), all finite."""
        if not len(first):
            return
        one, other = self._rest
        if len(one):
            first, second = np.concatenate((one, first)), np.concatenate((other, second))
        full = len(first) // PIECE * PIECE
        for start in range(0, full, AT_ONCE):
            cut = slice(start, min(start + AT_ONCE, full))
            pieces = first[cut].reshape(-1, PIECE), second[cut].reshape(-1, PIECE)
            self._sums = self._sums.plus_all(*pieces)
        self._rest = (np.array(first[full:]), np.array(second[full:]))

    def copy(self) -> Self:
        """Give comoments that can go on by themselves."""
        return copy.copy(self)

    def _all(self) -> _Sums:
        return self._sums.plus(*self._rest) if len(self._rest[0]) else self._sums

    @property
    def n(self) -> int:
        """Number of pairs."""
        return self._sums.n + len(self._rest[0])

    @property
    def first_mean(self) -> float | None:
        """Mean of the first quantity; None of nothing."""
        return self._all().first if self.n else None

    @property
    def second_mean(self) -> float | None:
        """Mean of the second quantity; None of nothing."""
        return self._all().second if self.n else None

    @property
    def correlation(self) -> float | None:
        """Correlation coefficient, -1 to 1; None below three pairs or without scatter."""
        sums = self._all()
        scale = math.sqrt(sums.square_first) * math.sqrt(sums.square_second)
        if sums.n < 3 or scale <= 0.0:
            return None
        return min(max(sums.product / scale, -1.0), 1.0)
