"""Moments: mean, spread and lag-1 correlation of readings that come in pieces."""

from __future__ import annotations

import copy
import math
from dataclasses import dataclass
from typing import Self

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.readings_kept import ReadingsKept

PIECE = 4096
"""Readings are always reduced in pieces of this size counted from the first, so that the result
is the same to the last bit however they were cut on the way."""

AT_ONCE = 8 * PIECE
"""So many readings go through numpy in one call: more would leave the processor's cache."""

MEDIAN_LIMIT = 1_000_000
"""Beyond this many readings no median is kept, so that memory stays flat."""


@dataclass(frozen=True, slots=True)
class Sums:
    """What is kept of readings that have been reduced.

    ``square`` is the sum of squares about the mean; ``product`` the sum of products of
    neighbours, both taken from ``first``, which keeps the numbers small.
    """

    n: int = 0
    mean: float = 0.0
    square: float = 0.0
    low: float = math.inf
    high: float = -math.inf
    product: float = 0.0
    first: float = 0.0
    last: float = 0.0

    def plus(self, piece: NDArray[np.float64]) -> Sums:
        """Add readings, shape (n,), n at least 1."""
        return self.plus_all(piece[None, :])

    def plus_all(self, pieces: NDArray[np.float64]) -> Sums:
        """Add pieces of one length, shape (pieces, n), one after the other."""
        first = self.first if self.n else float(pieces[0, 0])
        means = pieces.mean(axis=1)
        around = pieces - means[:, None]
        squares = np.square(around, out=around).sum(axis=1)
        shifted = np.subtract(pieces, first, out=around)
        products = (shifted[:, :-1] * shifted[:, 1:]).sum(axis=1)
        count, n = pieces.shape[1], self.n
        mean, square, product = self.mean, self.square, self.product
        begins, ends = shifted[:, 0].tolist(), shifted[:, -1].tolist()
        before = self.last - first if self.n else 0.0
        figures = zip(means.tolist(), squares.tolist(), products.tolist(), strict=True)
        for place, (one, about, inner) in enumerate(figures):
            apart, total = one - mean, n + count
            mean += apart * count / total
            square += about + apart * apart * n * count / total
            product += before * begins[place] + inner
            n, before = total, ends[place]
        return Sums(
            n=n,
            mean=mean,
            square=square,
            low=min(self.low, float(pieces.min())),
            high=max(self.high, float(pieces.max())),
            product=product,
            first=first,
            last=float(pieces[-1, -1]),
        )

    @property
    def lag1(self) -> float | None:
        """Lag-1 autocorrelation about the overall mean."""
        if self.n < 3 or self.square <= 0.0:
            return None
        off = self.mean - self.first
        ends = 2.0 * self.n * off - (self.last - self.first)
        return (self.product - off * ends + (self.n - 1) * off * off) / self.square


class Moments:
    """Running statistics of one quantity.

    Parameters
    ----------
    median : bool
        False: no readings are kept, and there is no median.

    Source
    ------
    Pairwise combination of mean and sum of squares: T. F. Chan, G. H. Golub, R. J. LeVeque,
    "Algorithms for computing the sample variance", The American Statistician 37 (1983), 242-247.
    The one-pass formula with sum of x^2 fails on NIST StRD NumAcc4;
    ``tests/reference/test_nist_univariate.py`` holds this one against the certified values.
    """

    def __init__(self, *, median: bool = True) -> None:
        self._sums = Sums()
        self._rest: NDArray[np.float64] = np.empty(0)
        self._kept = ReadingsKept() if median else None
        self._settled: Sums | None = None

    def add(self, values: NDArray[np.float64]) -> None:
        """Take readings, shape (n,), all finite."""
        if not len(values):
            return
        self._settled = None
        if self._kept is not None:
            self._kept.add(values)
            if self.n + len(values) > MEDIAN_LIMIT:
                self._kept = None
        whole = np.concatenate((self._rest, values)) if len(self._rest) else values
        full = len(whole) // PIECE * PIECE
        for start in range(0, full, AT_ONCE):
            part = whole[start : min(start + AT_ONCE, full)]
            self._sums = self._sums.plus_all(part.reshape(-1, PIECE))
        self._rest = np.array(whole[full:])

    def copy(self) -> Self:
        """Give moments that can go on by themselves."""
        other = copy.copy(self)
        other.detach()
        return other

    def detach(self) -> None:
        """Share nothing that changes with the moments that these were copied from."""
        if self._kept is not None:
            self._kept = self._kept.copy()

    def _all(self) -> Sums:
        """Give the sums with the unreduced rest included, without disturbing them."""
        if not len(self._rest):
            return self._sums
        if self._settled is None:
            self._settled = self._sums.plus(self._rest)
        return self._settled

    @property
    def n(self) -> int:
        """Number of readings."""
        return self._sums.n + len(self._rest)

    @property
    def mean(self) -> float | None:
        """Arithmetic mean; None of nothing."""
        return self._all().mean if self.n else None

    @property
    def sd(self) -> float | None:
        """Experimental standard deviation with n - 1 (JCGM 100:2008, 4.2.2); None below two."""
        if self.n < 2:
            return None
        return math.sqrt(max(self._all().square, 0.0) / (self.n - 1))

    @property
    def low(self) -> float | None:
        """Smallest reading; None of nothing."""
        return self._all().low if self.n else None

    @property
    def high(self) -> float | None:
        """Largest reading; None of nothing."""
        return self._all().high if self.n else None

    @property
    def median(self) -> float | None:
        """Median; None of nothing and beyond :data:`MEDIAN_LIMIT` readings."""
        if not self.n or self._kept is None:
            return None
        return self._kept.median()

    @property
    def lag1(self) -> float | None:
        """Lag-1 autocorrelation about the overall mean; None below three or without scatter.

        Source
        ------
        NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.12:
        sum of d[i] d[i+1] over sum of d[i]^2.
        """
        return self._all().lag1
