"""A circuit of straight lines: what each hypothesis lets expect is drawn, no network behind it."""

import itertools
import math
from dataclasses import dataclass, field

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from meterlog.circuit.hypotheses import Cells, Hypothesis
from meterlog.circuit.predictions import Predicted
from meterlog.circuit.slipped import SLIP, log_slip_density
from meterlog.circuit.taken import MISFITS
from meterlog.model import Circuit, FaultMode, Node, Place, PointKind, ProbePoint, Unit
from meterlog.model.circuit_check import (
    METER_OHM,
    SIGN_VALUES,
    CircuitReading,
    CircuitSign,
    CircuitState,
    Sign,
)

POINTS = ("feed", "relay", "motor", "return", "clamp")
LOW, HIGH = CircuitState("on", 1), CircuitState("on", 4)
NUISANCES = 4


@dataclass(frozen=True)
class Bench:
    """Units a, b, c; row 0 in order; b's fault may come and go; c's has three severities."""

    circuit: Circuit
    cells: Cells
    points: tuple[str, ...]
    seed: int
    slope: float = 0.1
    made: dict = field(default_factory=dict)

    def at(self, state, meter_ohm=METER_OHM):
        key = (state, meter_ohm)
        if key not in self.made:
            rng = np.random.default_rng([self.seed, state.speed, len(state.key)])
            rows, points = self.cells.rows, len(self.points)
            mean = rng.choice([0.0, 2.0, 6.0, 12.0], (rows, points)) + rng.normal(
                0.0, 0.2, (rows, points)
            )
            slopes = rng.normal(0.0, self.slope, (rows, points, NUISANCES))
            slopes[0, :, -1] = 0.0
            signs = {}
            for sign, values in SIGN_VALUES.items():
                table = rng.dirichlet(np.ones(len(values)), rows)
                signs[sign] = 0.02 + (1.0 - 0.02 * len(values)) * table
            self.made[key] = Predicted(mean, slopes, signs)
        return self.made[key]


def _hypothesis(units, prior, words, *, wandering=False):
    faults = tuple((unit, FaultMode.OPEN) for unit in units)
    return Hypothesis(frozenset(units), faults, prior, wandering, words, 0.0, 0.0)


def _circuit(units):
    points = tuple(
        ProbePoint(
            name,
            PointKind.CURRENT if name == "clamp" else PointKind.VOLTAGE,
            (name,),
            "",
            f"{name} wire",
            "bench",
            "",
            1.0,
        )
        for name in POINTS
    )
    return Circuit(
        name="bench",
        title="bench",
        nominal_v=12.0,
        speeds=(0, 1, 4),
        nodes=tuple(Node(name, name, (0.0, 0.0)) for name in POINTS),
        elements=(),
        units=tuple(Unit(name, f"unit {name}", "") for name in units),
        places=(Place("bench", "bench", 0.0),),
        points=points,
        sections=(),
    )


def make_bench(seed=0, slope=0.1):
    hypotheses = (
        _hypothesis((), 0.1, "nothing"),
        _hypothesis(("a",), 0.3, "a open"),
        _hypothesis(("b",), 0.2, "b open"),
        _hypothesis(("b",), 0.1, "b open (comes and goes)", wandering=True),
        _hypothesis(("c",), 0.2, "c: too much"),
        _hypothesis(("a", "c"), 0.1, "a and c"),
    )
    hypothesis = np.array([0, 1, 2, 3, 4, 4, 4, 5])
    share = np.array([1.0, 1.0, 1.0, 1.0, 0.5, 0.3, 0.2, 1.0])
    prior = share * np.array([one.prior for one in hypotheses])[hypothesis]
    severity = np.full((8, 2), np.nan)
    severity[4:7, 0] = (0.1, 0.4, 1.6)
    cells = Cells(
        hypotheses,
        hypothesis,
        np.log(prior),
        severity,
        np.where(np.isfinite(severity[:, 0]), math.log(2.0), 0.0),
        np.array([0, 1, 2, 2, 3, 4, 5, 6]),
        7,
    )
    return Bench(_circuit("abc"), cells, POINTS, seed, slope)


def reading(number, point, value, state=HIGH, u=0.02, **more):
    return CircuitReading(number, state, point, value, u, **more)


def sign(number, kind, value, state=HIGH):
    return CircuitSign(number, state, Sign(kind), value)


def drawn_check(bench, rng, count, cell=None, states=(LOW, HIGH)):
    """Readings of one hypothesis, each in a sitting of its own kind of state, some slipped."""
    cell = int(rng.integers(len(bench.cells.hypothesis))) if cell is None else cell
    nuisance = rng.normal(size=NUISANCES)
    readings = []
    for number in range(count):
        state = states[int(rng.integers(len(states)))]
        point = str(rng.choice(POINTS))
        row = bench.cells.row[cell]
        if bench.cells.hypotheses[bench.cells.hypothesis[cell]].comes_and_goes:
            row *= int(rng.integers(2))
        at = POINTS.index(point)
        predicted = bench.at(state)
        value = predicted.mean[row, at] + predicted.slopes[row, at] @ nuisance
        value += rng.normal(0.0, 0.05)
        if rng.random() < 0.2:
            value = rng.uniform(0.0, 12.0)
        readings.append(reading(number, point, float(value), state))
    return readings


def by_hand(bench, readings, sittings, most=2):
    """Weights of the cells by summing everything there is, one multivariate normal at a time."""
    log = np.full(len(bench.cells.hypothesis), -np.inf)
    slips = np.zeros(len(readings))
    terms = []
    for cell, hypothesis in enumerate(bench.cells.hypothesis):
        wandering = bench.cells.hypotheses[hypothesis].comes_and_goes
        patterns = (
            itertools.product((0, 1), repeat=max(sittings, default=-1) + 1)
            if wandering
            else [(1,) * (max(sittings, default=-1) + 1)]
        )
        for pattern in patterns:
            share = bench.cells.log_prior[cell]
            share += math.log(0.5) * len(pattern) * wandering
            rows = [bench.cells.row[cell] * pattern[place] for place in sittings]
            for size in range(most + 1):
                for out in itertools.combinations(range(len(readings)), size):
                    one = share + _density(bench, readings, rows, out)
                    terms.append((cell, out, one))
    whole = np.logaddexp.reduce([one for *_, one in terms])
    for cell, out, one in terms:
        log[cell] = np.logaddexp(log[cell], one - whole)
        for place in out:
            slips[place] += math.exp(one - whole)
    return np.exp(log), slips, float(whole)


def _density(bench, readings, rows, out):
    kept = [place for place in range(len(readings)) if place not in out]
    log = len(kept) * math.log(1.0 - SLIP) + len(out) * math.log(SLIP)
    for place in out:
        one = readings[place]
        kind = bench.circuit.point(one.point).kind
        log += log_slip_density(kind, bench.circuit.nominal_v, one.value, one.standard_u)
    if not kept:
        return log
    mean, slopes, own, model = [], [], [], []
    for place in kept:
        one = readings[place]
        predicted, at = bench.at(one.state, one.meter_ohm), POINTS.index(one.point)
        mean.append(predicted.mean[rows[place], at])
        slopes.append(predicted.slopes[rows[place], at])
        misfit = MISFITS[one.point == "clamp"]
        model.append(misfit.model + misfit.model_part * abs(mean[-1]))
        own.append(misfit.scatter + misfit.scatter_part * abs(mean[-1]))
    covariance = np.array(slopes) @ np.array(slopes).T + np.diag(np.square(own))
    for i, j in itertools.product(range(len(kept)), repeat=2):
        a, b = readings[kept[i]], readings[kept[j]]
        if (a.point, a.state) == (b.point, b.state):
            covariance[i, j] += model[i] * model[j]
            covariance[i, j] += a.standard_u * b.standard_u * (a.source == b.source)
    values = [readings[place].value for place in kept]
    return log + multivariate_normal(mean, covariance).logpdf(values)


@dataclass(frozen=True)
class Made:
    """What the tests of belief use."""

    bench: object = staticmethod(make_bench)
    reading: object = staticmethod(reading)
    sign: object = staticmethod(sign)
    drawn: object = staticmethod(drawn_check)
    by_hand: object = staticmethod(by_hand)
    points = POINTS
    low = LOW
    high = HIGH


@pytest.fixture(scope="session")
def made():
    return Made()
