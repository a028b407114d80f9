"""ReadingsKept: the readings of which a median is wanted, in little memory while they repeat.

A meter has few digits: of a day's readings of one step there are some hundred different ones. So
what is asked for again and again, while it grows, is kept as each value with its count.
"""

from __future__ import annotations

import copy
from typing import Self

import numpy as np
from numpy.typing import NDArray

FOLD = 4_096
"""So many readings are kept one by one before it is looked at how many of them differ."""

Reals = NDArray[np.float64]


class ReadingsKept:
    """Readings of one quantity, for their median."""

    def __init__(self) -> None:
        self._plain: list[Reals] = []
        self._values: Reals = np.empty(0)
        self._counts: NDArray[np.int64] = np.empty(0, np.int64)
        self._asked = False
        self._differ = False
        """Most do: folding them would only cost."""

    def add(self, values: Reals) -> None:
        """Take readings, shape (n,), all finite; they are copied."""
        self._plain.append(np.array(values))

    def copy(self) -> Self:
        """Give readings that can go on by themselves."""
        other = copy.copy(self)
        other.detach()
        return other

    def detach(self) -> None:
        """Share nothing that changes with those that these were copied from."""
        self._plain = list(self._plain)

    def median(self) -> float:
        """Give the median of one reading or more."""
        plain = np.concatenate(self._plain) if self._plain else np.empty(0)
        # Who asks once, at the end, need not pay for it.
        if self._asked and len(plain) >= FOLD and not self._differ:
            plain = self._fold(plain)
        self._plain, self._asked = [plain], True
        if not len(self._values):
            return float(np.median(plain))
        values, counts = self._joined(plain)
        ends, many = np.cumsum(counts), int(counts.sum())
        middle = np.searchsorted(ends, [(many - 1) // 2, many // 2], side="right")
        return float(values[middle].mean())

    def _fold(self, plain: Reals) -> Reals:
        """Put readings to those counted; give those that stay as they are."""
        values, counts = self._joined(plain)
        if 2 * (len(values) - len(self._values)) > len(plain):
            self._differ = True
            return plain
        self._values, self._counts = values, counts
        return np.empty(0)

    def _joined(self, plain: Reals) -> tuple[Reals, NDArray[np.int64]]:
        """Give each value with its count, the plain readings counted too."""
        new, counts = np.unique(plain, return_counts=True)
        if not len(self._values):
            return new, counts.astype(np.int64)
        values, places = np.unique(np.concatenate((self._values, new)), return_inverse=True)
        total = np.zeros(len(values), np.int64)
        np.add.at(total, places, np.concatenate((self._counts, counts)))
        return values, total
