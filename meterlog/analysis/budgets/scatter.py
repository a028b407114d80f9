"""Scatter: what the readings themselves say of how well their mean is known."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.analysis.budgets.simultaneous import covariance_lines
from meterlog.analysis.uncertainty import effective_count
from meterlog.model import Source


@dataclass(frozen=True, slots=True)
class Scatter:
    """How readings scatter.

    Attributes
    ----------
    n : int
    sd : float or None, unit of the channel
        Experimental standard deviation; None of a single reading, or where nobody kept it.
    lag1 : float or None
        Lag-1 autocorrelation; None counts as 0.
    """

    n: int
    sd: float | None = None
    lag1: float | None = None

    @property
    def count(self) -> float:
        """How many independent readings they are worth."""
        return effective_count(self.n, self.lag1)

    @property
    def u(self) -> float:
        """Standard uncertainty of the mean by the readings alone; 0 where not known."""
        return 0.0 if self.sd is None else self.sd / math.sqrt(self.count)

    @property
    def degrees(self) -> float:
        """Degrees of freedom of that."""
        return max(self.count - 1.0, 1.0)

    @property
    def words(self) -> str:
        """How the line of a budget is called."""
        worth = "" if self.count > 0.995 * self.n else f" worth {self.count:.3g}"
        return f"scatter of {self.n} readings{worth}"


def scatter_lines(
    lots: Sequence[tuple[Scatter, str]], correlation: float | None, key: str
) -> list[list[Source]]:
    """Give the lines of the scatter of one quantity, or of two that were read together.

    Parameters
    ----------
    lots : sequence of (Scatter, str), length 1 or 2
        Each with its unit.
    correlation : float or None
        Between simultaneous readings of the two; that of their means is taken to be the same.
    key : str
        Names this lot of readings.

    Returns
    -------
    list of list of Source
        One list a quantity; empty where nothing is known.

    Source
    ------
    Type A: JCGM 100:2008, 4.2.3; covariance of the means: 5.2.3.
    """
    if len(lots) == 2 and correlation is not None and all(lot.u > 0.0 for lot, _ in lots):
        (first, _), (second, _) = lots
        shared = min(max(correlation, -1.0), 1.0) * first.u * second.u
        matrix = np.array([[first.u**2, shared], [shared, second.u**2]])
        degrees = min(first.degrees, second.degrees)
        return covariance_lines(matrix, [unit for _, unit in lots], key, degrees, first.words)
    return [_alone(lot, unit, f"{key}/{place}") for place, (lot, unit) in enumerate(lots)]


def _alone(lot: Scatter, unit: str, key: str) -> list[Source]:
    if lot.sd is None:
        return []
    return [
        Source(
            name=lot.words,
            standard_u=lot.u,
            unit=unit,
            degrees=lot.degrees,
            key=key,
            basis="experimental standard deviation of the mean",
        )
    ]
