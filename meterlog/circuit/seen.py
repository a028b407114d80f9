"""Seen: the signs of a check, laid beside how probable they are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.circuit.fan_signs import SLIP
from meterlog.circuit.figures import Floats
from meterlog.circuit.taken import PredictionSource, Rows
from meterlog.model.circuit_check import SIGN_VALUES, CircuitSign

_NOTHING = 1e-6


@dataclass(frozen=True, slots=True)
class Seen:
    """The signs of a check, in the order of their ids.

    Attributes
    ----------
    signs : tuple of CircuitSign
    log_by_row : tuple of float64[rows]
        Logarithm of the probability of each, by the row of the predictions.
    """

    signs: tuple[CircuitSign, ...]
    log_by_row: tuple[Floats, ...]

    @property
    def ids(self) -> tuple[int, ...]:
        """Ids of the signs."""
        return tuple(one.id for one in self.signs)

    def __len__(self) -> int:
        """How many signs there are."""
        return len(self.signs)

    def only(self, ids: Sequence[int]) -> Seen:
        """Give those signs that have one of these ids."""
        at = [place for place, number in enumerate(self.ids) if number in ids]
        return Seen(
            tuple(self.signs[place] for place in at), tuple(self.log_by_row[place] for place in at)
        )

    def log_probability(self, rows: Rows) -> Floats:
        """Give the logarithm of the probability of each sign.

        Parameters
        ----------
        rows : int[cases, n]
            The row of the predictions that holds for each sign.

        Returns
        -------
        float64[cases, n]
        """
        log = np.zeros(rows.shape)
        for at, by_row in enumerate(self.log_by_row):
            log[:, at] = by_row[rows[:, at]]
        return log

    def same_in(self, rows: Rows) -> npt.NDArray[np.bool_]:
        """Tell in which rows all signs are as probable as in a circuit in order.

        Returns
        -------
        bool[rows]
        """
        same = np.ones(len(rows), dtype=np.bool_)
        for log in self.log_by_row:
            same &= np.abs(log[rows] - log[0]) < _NOTHING
        return same

    def mistaken(self, log_probability: Floats) -> Floats:
        """Give the probability that each sign was mistaken: the part that is there for that.

        Parameters
        ----------
        log_probability : float64[cases, n]

        Returns
        -------
        float64[cases, n]
        """
        share: Floats = np.minimum(SLIP / np.exp(log_probability), 1.0)
        return share


def seen_of(source: PredictionSource, signs: Sequence[CircuitSign]) -> Seen:
    """Lay signs beside how probable they are.

    Parameters
    ----------
    source : PredictionSource
    signs : sequence of CircuitSign
        In any order.

    Raises
    ------
    ValueError
        For a value that the sign hasn't.
    """
    told = tuple(sorted(signs, key=lambda one: one.id))
    return Seen(told, tuple(_log_by_row(source, one) for one in told))


def _log_by_row(source: PredictionSource, one: CircuitSign) -> Floats:
    values = SIGN_VALUES[one.sign]
    if one.value not in values:
        raise ValueError(f"sign {one.id}: {one.sign} can't be {one.value!r}; {', '.join(values)}")
    table = source.at(one.state).signs.get(one.sign)
    if table is None:
        return np.zeros(source.cells.rows)
    return np.log(np.maximum(table[:, values.index(one.value)], 1e-12))
