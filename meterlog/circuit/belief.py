"""Belief: how probable each hypothesis is, given what was read and seen at the circuit."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from meterlog.circuit.cases import cases_of
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.seen import seen_of
from meterlog.circuit.slipped import sum_over_slips
from meterlog.circuit.taken import PredictionSource, taken_of
from meterlog.circuit.weighed import Weighed
from meterlog.model.circuit_check import CircuitReading, CircuitSign


class Belief:
    """What is believed of one circuit.

    Parameters
    ----------
    predictions : PredictionSource
        Such as :class:`~meterlog.circuit.predictions.Predictions`.
    """

    def __init__(self, predictions: PredictionSource) -> None:
        self.predictions = predictions

    def posterior(
        self, readings: Sequence[CircuitReading], signs: Sequence[CircuitSign] = ()
    ) -> Posterior:
        """Weigh all hypotheses by what was found.

        In each cell the readings together are normal, as they are linear in the nuisances, which
        all of them share; at most two of them slipped (:mod:`meterlog.circuit.slipped`); the signs
        are independent of each other given the cell. A fault that comes and goes is there in some
        sittings and not in others (:mod:`meterlog.circuit.sittings`). The order of the readings
        makes no difference; that of their ids tells which were taken in one sitting.

        Parameters
        ----------
        readings : sequence of CircuitReading
            One whose standard uncertainty is infinite changes nothing.
        signs : sequence of CircuitSign

        Returns
        -------
        Posterior

        Raises
        ------
        ValueError
            For two entries with the same id, a point or a value that there isn't.

        Source
        ------
        Bayes' theorem over all hypotheses: D. J. C. MacKay, Information Theory, Inference, and
        Learning Algorithms (2003), chapters 2 and 28 (from memory); the joint normal density:
        :class:`~meterlog.circuit.joint.Joint`.
        """
        _check_ids(readings, signs)
        cells = self.predictions.cells
        taken, seen = taken_of(self.predictions, readings), seen_of(self.predictions, signs)
        cases = cases_of(cells, taken, seen)
        expected = taken.expected(cases.reading_rows)
        joint = taken.joint(expected)
        sums = sum_over_slips(joint, taken.log_slip)
        log_signs = seen.log_probability(cases.sign_rows)
        log_weight = cases.log_prior + sums.log_total + log_signs.sum(axis=1)
        log_evidence = float(np.logaddexp.reduce(log_weight))
        weighed = Weighed(
            source=self.predictions,
            taken=taken,
            seen=seen,
            cases=cases,
            expected=expected,
            joint=joint,
            sums=sums,
            log_signs=log_signs,
            log_evidence=log_evidence,
            case_weights=np.exp(log_weight - log_evidence),
        )
        return Posterior(weighed)


def _check_ids(readings: Sequence[CircuitReading], signs: Sequence[CircuitSign]) -> None:
    met: set[int] = set()
    for number in (*(one.id for one in readings), *(one.id for one in signs)):
        if number in met:
            raise ValueError(f"two entries have the id {number}")
        met.add(number)
