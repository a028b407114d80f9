"""Forecast: what a new reading or sign would be in each cell, given those taken."""

from __future__ import annotations

from functools import cached_property

import numpy as np
import numpy.typing as npt

from meterlog.circuit.cases import comes_and_goes
from meterlog.circuit.figures import Floats
from meterlog.circuit.sittings import HERE
from meterlog.circuit.taken import misfit_table
from meterlog.circuit.weighed import Weighed
from meterlog.model.circuit_check import CircuitState, Sign


class Forecaster:
    """What is to come, by the likeliest case of each cell and its likeliest set of slips.

    Parameters
    ----------
    weighed : Weighed

    Source
    ------
    Conditioning of a normal distribution: C. E. Rasmussen and C. K. I. Williams, Gaussian
    Processes for Machine Learning (2006), appendix A.2, equation A.6 (number from memory).
    """

    def __init__(self, weighed: Weighed) -> None:
        self._weighed = weighed
        self._source = weighed.source
        self._wandering = comes_and_goes(weighed.source.cells)
        case = _likeliest(weighed.cases.cell, weighed.case_weights, len(self._wandering))
        held = weighed.joint.of(case).silenced(weighed.sums.likeliest[case])
        self._slopes = weighed.expected.slopes[case]
        self._model_sd = weighed.expected.model_sd[case]
        self._inverse, self._pull = held.inverse, held.pull
        self._there = weighed.cases.there[case]

    @cached_property
    def _moved(self) -> Floats:
        """Mean of the nuisances given the readings, shape (cells, nuisances)."""
        moved: Floats = (self._pull[:, None, :] @ self._slopes)[:, 0, :]
        return moved

    @property
    def places(self) -> tuple[Floats, Floats]:
        """Mean and variance of the severity's place within each cell, given the readings."""
        by = self._slopes[:, :, -1]
        variance = 1.0 - np.einsum("ci,cij,cj->c", by, self._inverse, by)
        return np.einsum("ci,ci->c", by, self._pull), np.clip(variance, 0.0, 1.0)

    def presence(self, state: CircuitState) -> Floats:
        """Give the probability that the fault of each cell would be there, shape (cells,)."""
        presence = np.where(self._wandering, HERE, 1.0)
        sittings = self._weighed.cases.sittings
        last = sittings[-1] if sittings else None
        if last is None or last.ended or last.state != state:
            return presence
        cases, weights = self._weighed.cases, self._weighed.case_weights
        whole = np.bincount(cases.cell, weights, minlength=len(presence))
        here = np.bincount(cases.cell, weights * cases.there[:, -1], minlength=len(presence))
        known = self._wandering & (whole > 0.0)
        presence[known] = here[known] / whole[known]
        return presence

    def reading(
        self,
        state: CircuitState,
        meter_ohm: float,
        *,
        cells: npt.NDArray[np.intp] | None,
        there: bool,
    ) -> tuple[Floats, Floats]:
        """Give mean and variance of a new reading, each float64[cells, points]."""
        some = np.arange(len(self._wandering)) if cells is None else cells
        predicted = self._source.at(state, meter_ohm)
        row = self._source.cells.row[some]
        if not there:
            row = np.where(self._wandering[some], 0, row)
        mean = predicted.mean[row]
        slopes = predicted.slopes[row]
        misfit = self._misfit
        model_sd = misfit[0] + misfit[1] * np.abs(mean)
        model_sd += predicted.ghost_sd(row[:, None], np.arange(mean.shape[1]))
        variance = np.einsum("cpk,cpk->cp", slopes, slopes) + model_sd**2
        variance += (misfit[2] + misfit[3] * np.abs(mean)) ** 2
        taken = self._weighed.taken
        if not len(taken):
            return mean, variance
        own, pull, inverse = self._slopes, self._pull, self._inverse
        if cells is not None:
            own, pull, inverse = own[some], pull[some], inverse[some]
        cross = slopes @ own.transpose(0, 2, 1)
        same = taken.of_the_same(self._source, state, meter_ohm)
        if same.any():
            cross += same * (model_sd[:, :, None] * self._model_sd[some][:, None, :])
        mean = mean + (cross @ pull[:, :, None])[:, :, 0]
        variance -= ((cross @ inverse) * cross).sum(axis=2)
        return mean, np.maximum(variance, 0.0)

    @cached_property
    def _misfit(self) -> Floats:
        circuit = self._source.circuit
        return misfit_table([circuit.point(name).kind for name in self._source.points])

    def sign(
        self, state: CircuitState, sign: Sign, *, cells: npt.NDArray[np.intp] | None
    ) -> Floats | None:
        """Give the probability of each value of a sign, float64[cells, values]; None if none."""
        table = self._source.at(state).signs.get(sign)
        if table is None:
            return None
        some = np.arange(len(self._wandering)) if cells is None else cells
        here = self.presence(state)[some, None]
        found: Floats = here * table[self._source.cells.row[some]] + (1.0 - here) * table[0]
        return found


def _likeliest(cell: npt.NDArray[np.intp], weights: Floats, cells: int) -> npt.NDArray[np.intp]:
    """Give the likeliest case of each cell; of equals the first."""
    order = np.lexsort((np.arange(len(cell)), -weights, cell))
    first = np.searchsorted(cell[order], np.arange(cells))
    return order[first]
