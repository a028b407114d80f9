"""Unit sets: which sets of units are bad under which cell, and how much is open between them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.circuit.figures import Floats
from meterlog.circuit.hypotheses import Cells

Ints = npt.NDArray[np.intp]
NO_FAULT = "no-fault"
"""The suspect that stands for nothing electrical."""


@dataclass(frozen=True, slots=True)
class UnitSets:
    """The sets of units that may be bad together.

    Attributes
    ----------
    sets : tuple of frozenset of str
        Each once; the empty one is nothing electrical.
    of_cell : int[cells]
        To which set a cell belongs.
    """

    sets: tuple[frozenset[str], ...]
    of_cell: Ints

    def shares(self, weights: Floats) -> Floats:
        """Give the probability of each set, float64[sets], from those of the cells."""
        found = np.bincount(self.of_cell, weights=weights, minlength=len(self.sets))
        return found.astype(np.float64)

    def has(self, unit: str) -> npt.NDArray[np.bool_]:
        """Tell for each cell whether this unit is bad in it (of ``no-fault``: whether none is)."""
        inside = [(not one) if unit == NO_FAULT else unit in one for one in self.sets]
        return np.array(inside, dtype=np.bool_)[self.of_cell]


def unit_sets(cells: Cells) -> UnitSets:
    """Give the sets of units of a circuit's cells, in the order in which they come."""
    numbers: dict[frozenset[str], int] = {}
    for hypothesis in cells.hypotheses:
        numbers.setdefault(hypothesis.units, len(numbers))
    by_hypothesis = np.array([numbers[one.units] for one in cells.hypotheses], dtype=np.intp)
    return UnitSets(tuple(numbers), by_hypothesis[cells.hypothesis])


def entropy_bits(shares: Floats) -> float:
    """Give the entropy of probabilities in bits: Shannon 1948; MacKay 2003, equation 2.35."""
    some = shares[shares > 0.0]
    return max(float(-(some * np.log2(some)).sum()), 0.0)
