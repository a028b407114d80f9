"""What is said to be probable comes true as often as that: drawn from what is believed."""

import math

import numpy as np
import pytest

from meterlog.circuit.belief import Belief
from meterlog.circuit.slipped import SLIP
from meterlog.circuit.taken import MISFITS

DRAWS = 500


def _drawn(made, bench, rng):
    """Draw a cell, its nuisances and readings of it, some slipped; all in one sitting."""
    prior = np.exp(bench.cells.log_prior)
    cell = int(rng.choice(len(prior), p=prior / prior.sum()))
    hypothesis = bench.cells.hypotheses[bench.cells.hypothesis[cell]]
    away = hypothesis.comes_and_goes and rng.random() < 0.5
    row = 0 if away else int(bench.cells.row[cell])
    predicted = bench.at(made.high)
    nuisance = rng.normal(size=predicted.slopes.shape[2])
    readings, slipped = [], []
    for at in rng.permutation(4)[: int(rng.integers(1, 5))]:
        mean, misfit = predicted.mean[row, at], MISFITS[False]
        value = mean + predicted.slopes[row, at] @ nuisance
        value += rng.normal(0.0, misfit.model + misfit.model_part * abs(mean))
        value += rng.normal(0.0, misfit.scatter + misfit.scatter_part * abs(mean))
        value += rng.normal(0.0, 0.1)
        slipped.append(rng.random() < SLIP)
        if slipped[-1]:
            value = rng.normal(0.0, 0.05) if rng.random() < 0.5 else rng.uniform(-1.0, 15.0)
        readings.append(made.reading(len(readings), made.points[at], float(value), u=0.1))
    return hypothesis.units or {"no-fault"}, readings, slipped


@pytest.fixture(scope="module")
def outcomes(made):
    """Said and seen, of units and of slips, on benches whose hypotheses lie close together."""
    rng = np.random.default_rng(31)
    units, slips = [], []
    for number in range(DRAWS):
        bench = made.bench(number % 10, slope=0.3)
        table = bench.at(made.high).mean
        table[:] = 12.0 + 0.2 * (table - 12.0)
        bad, readings, slipped = _drawn(made, bench, rng)
        posterior = Belief(bench).posterior(readings)
        found = posterior.unit_probabilities()
        units += [(found[unit], unit in bad) for unit in found]
        slips += zip(posterior.slipped.values(), slipped, strict=True)
    return np.array(units, dtype=float), np.array(slips, dtype=float)


@pytest.mark.parametrize(("low", "high"), [(0.0, 0.1), (0.1, 0.5), (0.5, 0.9), (0.9, 1.01)])
def test_units_are_as_often_bad_as_is_said(outcomes, low, high):
    said, seen = outcomes[0][(outcomes[0][:, 0] >= low) & (outcomes[0][:, 0] < high)].T
    assert len(said) > 50
    spread = math.sqrt(float((said * (1.0 - said)).sum()))
    assert abs(seen.sum() - said.sum()) < 3.5 * spread + 0.5


@pytest.mark.parametrize(("low", "high"), [(0.0, 0.1), (0.1, 1.01)])
def test_readings_have_slipped_as_often_as_is_said(outcomes, low, high):
    said, seen = outcomes[1][(outcomes[1][:, 0] >= low) & (outcomes[1][:, 0] < high)].T
    assert len(said) > 10
    spread = math.sqrt(float((said * (1.0 - said)).sum()))
    assert abs(seen.sum() - said.sum()) < 3.5 * spread + 0.5
