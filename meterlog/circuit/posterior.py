"""Posterior: what follows for cells, hypotheses and units, and what rests on which entry."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
import numpy.typing as npt

from meterlog.circuit.figures import Floats
from meterlog.circuit.forecast import Forecaster
from meterlog.circuit.left_out import weights_left_out
from meterlog.circuit.severities import Severity, severity_of
from meterlog.circuit.slipped import sum_over_slips
from meterlog.circuit.unit_sets import NO_FAULT
from meterlog.circuit.weighed import Weighed
from meterlog.model.circuit_check import METER_OHM, CircuitState, Sign


@dataclass(frozen=True)
class Posterior:
    """What is believed after some readings and signs.

    Attributes
    ----------
    weighed : Weighed
        All cases with their probabilities.
    """

    weighed: Weighed

    @property
    def log_evidence(self) -> float:
        """Natural logarithm of the density of all that was found."""
        return self.weighed.log_evidence

    @cached_property
    def weights(self) -> Floats:
        """Probability of each cell, shape (cells,), sum 1."""
        return self._by_cell(self.weighed.case_weights)

    @cached_property
    def hypothesis_weights(self) -> Floats:
        """Probability of each hypothesis, shape (hypotheses,), sum 1."""
        return self._by_hypothesis(self.weights)

    @cached_property
    def slipped(self) -> dict[int, float]:
        """Probability that each reading slipped, by its id."""
        found = np.minimum(self.weighed.case_weights @ self.weighed.sums.slipped, 1.0)
        return {
            number: float(one) for number, one in zip(self.weighed.taken.ids, found, strict=True)
        }

    @cached_property
    def sign_wrong(self) -> dict[int, float]:
        """Probability that each sign was mistaken, by its id."""
        found = self.weighed.case_weights @ self.weighed.seen.mistaken(self.weighed.log_signs)
        return {
            number: float(one) for number, one in zip(self.weighed.seen.ids, found, strict=True)
        }

    def unit_probabilities(self) -> dict[str, float]:
        """Give the probability that each unit is bad.

        Returns
        -------
        dict of str to float
            All units of the circuit, and ``no-fault``. Both units of a pair count.
        """
        return self._units(self.weights)

    def without(self, number: int) -> dict[str, float]:
        """Give the same with one reading or sign left out.

        Parameters
        ----------
        number : int
            Its id; KeyError if there is none.
        """
        return dict(self._without[number])

    def left(self, number: int) -> Posterior:
        """Give what is believed without one entry; KeyError if there is none.

        Unlike :meth:`without` it can forecast. The ways in which faults may have come and gone stay
        those of the whole check, and so does :attr:`log_evidence`.
        """
        weighed, weights = self.weighed, self.weights_without(number)
        if number not in weighed.taken.ids:
            rest = [at for at, other in enumerate(weighed.seen.ids) if other != number]
            cases = replace(weighed.cases, sign_rows=weighed.cases.sign_rows[:, rest])
            seen = weighed.seen.only([weighed.seen.ids[at] for at in rest])
            signs = weighed.log_signs[:, rest]
            return Posterior(
                replace(weighed, seen=seen, cases=cases, log_signs=signs, case_weights=weights)
            )
        at = weighed.taken.ids.index(number)
        rest = [place for place in range(len(weighed.taken)) if place != at]
        taken = weighed.taken.only([weighed.taken.ids[place] for place in rest])
        joint = weighed.joint.without(at)
        return Posterior(
            replace(
                weighed,
                taken=taken,
                cases=replace(weighed.cases, reading_rows=weighed.cases.reading_rows[:, rest]),
                expected=weighed.expected.only(rest),
                joint=joint,
                sums=sum_over_slips(joint, taken.log_slip),
                case_weights=weights,
            )
        )

    def least_without(self) -> dict[str, float]:
        """Give the least that each unit's probability falls to when any one entry is left out."""
        least = self.unit_probabilities()
        for one in self._without.values():
            least = {unit: min(least[unit], one[unit]) for unit in least}
        return least

    def resting_on(self, unit: str) -> int | None:
        """Give the id of the entry without which a unit's probability falls lowest, if any."""
        if not self._without:
            return None
        return min(self._without, key=lambda number: (self._without[number][unit], number))

    def severity(self, hypothesis: int) -> Severity | None:
        """Give how bad the first fault of a hypothesis is; None where it has no severity."""
        return severity_of(
            self.weighed.source.cells, hypothesis, self.weights, *self.forecaster.places
        )

    def presence(self, state: CircuitState) -> Floats:
        """Give the probability that the fault of each cell would be there in a next entry.

        Returns
        -------
        float64[cells]
            1 for those that stay.
        """
        return self.forecaster.presence(state)

    def predictive(
        self,
        state: CircuitState,
        meter_ohm: float = METER_OHM,
        *,
        cells: npt.NDArray[np.intp] | None = None,
        there: bool = True,
    ) -> tuple[Floats, Floats]:
        """Give what a new reading would show in each cell, given those taken.

        Parameters
        ----------
        state : CircuitState
        meter_ohm : float, ohms
        cells : int[some] or None
            Only these; None: all.
        there : bool
            With the fault there; False: as it would be while a fault that comes and goes is away
            (:meth:`presence` says how probable that is), the same as True for those that stay.

        Returns
        -------
        mean, variance : float64[cells, points]
            Of a normal distribution; without the new meter's own uncertainty.
        """
        return self.forecaster.reading(state, meter_ohm, cells=cells, there=there)

    def predictive_sign(
        self, state: CircuitState, sign: Sign, *, cells: npt.NDArray[np.intp] | None = None
    ) -> Floats | None:
        """Give the probability of each value of a sign in each cell; None if there is no such sign.

        Returns
        -------
        float64[cells, values] or None
            Faults that come and go weighed by :meth:`presence`.
        """
        return self.forecaster.sign(state, sign, cells=cells)

    @cached_property
    def forecaster(self) -> Forecaster:
        """What forecasts new readings."""
        return Forecaster(self.weighed)

    def weights_without(self, number: int) -> Floats:
        """Give the probability of each case with one reading or sign left out; KeyError if none.

        Returns
        -------
        float64[cases]
        """
        return self._cases_without[number]

    @cached_property
    def _cases_without(self) -> dict[int, Floats]:
        return weights_left_out(self.weighed)

    @cached_property
    def _without(self) -> dict[int, dict[str, float]]:
        return {
            number: self._units(self._by_cell(weights))
            for number, weights in self._cases_without.items()
        }

    def _by_cell(self, case_weights: Floats) -> Floats:
        cells = len(self.weighed.source.cells.hypothesis)
        found: Floats = np.bincount(self.weighed.cases.cell, case_weights, minlength=cells).astype(
            np.float64
        )
        return found

    def _by_hypothesis(self, weights: Floats) -> Floats:
        cells = self.weighed.source.cells
        found: Floats = np.bincount(
            cells.hypothesis, weights, minlength=len(cells.hypotheses)
        ).astype(np.float64)
        return found

    def _units(self, weights: Floats) -> dict[str, float]:
        found = {unit.name: 0.0 for unit in self.weighed.source.circuit.units}
        found[NO_FAULT] = 0.0
        by_hypothesis = self._by_hypothesis(weights)
        for one, weight in zip(self.weighed.source.cells.hypotheses, by_hypothesis, strict=True):
            for unit in sorted(one.units) or (NO_FAULT,):
                found[unit] = min(found.get(unit, 0.0) + float(weight), 1.0)
        return found
