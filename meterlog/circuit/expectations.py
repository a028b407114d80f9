"""Expectations: what a circuit in order gives at a test point, beside what was found."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from meterlog.circuit.figures import Floats
from meterlog.circuit.predictions import FLOATS, Predictions
from meterlog.circuit.taken import misfit_table
from meterlog.model import CircuitReading, CircuitState, Expectation
from meterlog.model.circuit_check import METER_OHM

COVERAGE = 2.0
"""Standard deviations for about 95 %."""


def expected_in(
    predictions: Predictions, state: CircuitState, meter_ohm: float = METER_OHM
) -> tuple[Expectation, ...]:
    """Give what a circuit in order shows at every test point in one state.

    The band is that of the tolerances in the profile and of how well the model fits; of the meter
    it has only the load.
    """
    low, high = _bands(predictions, state, meter_ohm)
    return tuple(
        Expectation(point, state, float(low[at]), float(high[at]))
        for at, point in enumerate(predictions.points)
    )


def beside_found(
    predictions: Predictions, readings: Sequence[CircuitReading]
) -> tuple[Expectation, ...]:
    """Give what was expected where something was measured, in the order of the readings' ids."""
    found = []
    for one in sorted(readings, key=lambda reading: reading.id):
        low, high = _bands(predictions, one.state, one.meter_ohm)
        at = predictions.points.index(one.point)
        expanded = COVERAGE * one.standard_u
        fits = bool(low[at] - expanded <= one.value <= high[at] + expanded)
        found.append(
            Expectation(
                one.point, one.state, float(low[at]), float(high[at]), one.value, expanded, fits
            )
        )
    return tuple(found)


def _bands(
    predictions: Predictions, state: CircuitState, meter_ohm: float
) -> tuple[Floats, Floats]:
    predicted = predictions.at(state, meter_ohm)
    row = predictions.healthy_row
    mean, slopes = predicted.mean[row], predicted.slopes[row]
    kinds = [predictions.circuit.point(name).kind for name in predictions.points]
    misfit = misfit_table(kinds)
    model = misfit[0] + misfit[1] * np.abs(mean)
    ghost = predicted.ghost_sd(row, np.arange(len(mean)))
    half = COVERAGE * np.sqrt((slopes**2).sum(axis=1) + (model + ghost) ** 2)
    low, high = mean - half, mean + half
    # What floats lies between nothing and what would stand there without a meter; or anywhere.
    whole = np.where(
        predicted.left[row] < FLOATS, mean / predicted.left[row], predictions.circuit.nominal_v
    )
    floats = ghost > 0.0
    low[floats] = np.maximum(low, np.minimum(whole, 0.0) - COVERAGE * model)[floats]
    high[floats] = np.minimum(high, np.maximum(whole, 0.0) + COVERAGE * model)[floats]
    return low, high
