"""Belief against Bayes' theorem worked out elsewhere, and by hand.

Sources: D. J. C. MacKay, Information Theory, Inference, and Learning Algorithms (2003): example
2.3 (a test for a disease: 16 %) and example 2.6 with figure 2.6 (eleven urns, three black balls of
ten; the next one is black with probability 0.333). Values from memory of the book; both follow from
its text. The hand computation of a voltage is in the test. Conditioning: the joint density of
scipy.stats.multivariate_normal.
"""

import math
from dataclasses import dataclass, field

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from meterlog.circuit.belief import Belief
from meterlog.circuit.hypotheses import Cells, Hypothesis
from meterlog.circuit.joint import joint_of
from meterlog.circuit.predictions import Predicted
from meterlog.model import Circuit, Node, Place, PointKind, ProbePoint, Unit
from meterlog.model.circuit_check import METER_OHM, CircuitReading, CircuitSign, CircuitState, Sign

HIGH = CircuitState("on", 1)


@dataclass(frozen=True)
class Alternatives:
    """Hypotheses that stay, each with one cell, one point, and a table of signs of the wheel."""

    circuit: Circuit
    cells: Cells
    mean: tuple[float, ...]
    free: tuple[float, ...]
    points: tuple[str, ...] = field(default=("feed",))

    def at(self, state, meter_ohm=METER_OHM):
        free = np.array(self.free)
        return Predicted(
            np.array(self.mean)[:, None],
            np.zeros((len(self.mean), 1, 1)),
            {Sign.WHEEL: np.column_stack([free, 1.0 - free])},
        )


def _alternatives(prior, mean=None, free=None):
    count = len(prior)
    units = tuple(f"u{at}" for at in range(count))
    hypotheses = tuple(
        Hypothesis(frozenset({unit}), (), weight, False, unit, 0.0, 0.0)
        for unit, weight in zip(units, prior, strict=True)
    )
    circuit = Circuit(
        name="worked",
        title="worked",
        nominal_v=12.0,
        speeds=(0, 1),
        nodes=(Node("feed", "feed", (0.0, 0.0)),),
        elements=(),
        units=tuple(Unit(unit, unit, "") for unit in units),
        places=(Place("bench", "bench", 0.0),),
        points=(ProbePoint("feed", PointKind.VOLTAGE, ("feed",), "", "feed", "bench", "", 1.0),),
        sections=(),
    )
    nothing = np.full((count, 2), np.nan)
    at = np.arange(count)
    cells = Cells(hypotheses, at, np.log(np.array(prior)), nothing, np.zeros(count), at, count)
    return Alternatives(circuit, cells, mean or (0.0,) * count, free or (0.5,) * count)


def _signs(free, stiff):
    values = ["free"] * free + ["stiff"] * stiff
    return [CircuitSign(at, HIGH, Sign.WHEEL, one) for at, one in enumerate(values)]


def test_the_test_for_a_disease():
    source = _alternatives((0.01, 0.99), free=(0.95, 0.05))
    found = Belief(source).posterior([], _signs(1, 0)).unit_probabilities()
    assert found["u0"] == pytest.approx(0.16, abs=0.005)
    assert found["u0"] == pytest.approx(0.0095 / (0.0095 + 0.0495), rel=1e-12)


def test_the_eleven_urns():
    source = _alternatives((1.0 / 11.0,) * 11, free=tuple(at / 10.0 for at in range(11)))
    posterior = Belief(source).posterior([], _signs(3, 7))
    published = (0.0, 0.063, 0.22, 0.29, 0.24, 0.13, 0.047, 0.0099, 0.00086, 0.0000096, 0.0)
    for found, expected in zip(posterior.weights, published, strict=True):
        assert found == pytest.approx(expected, rel=0.03, abs=1e-9)
    black = posterior.predictive_sign(HIGH, Sign.WHEEL)[:, 0]
    assert float(posterior.weights @ black) == pytest.approx(0.333, abs=0.0005)


def test_two_faults_and_one_reading_by_hand():
    # 12 V or 2 V, equally likely; 2.1 V was read with u = 0.1 V. Model and scatter by the figures
    # of the house (20 mV + 0.5 %, 10 mV + 0.1 %): variances 0.01 + 0.03^2 + 0.012^2 = 0.011044
    # about 2 V, 0.01 + 0.08^2 + 0.022^2 = 0.016884 about 12 V. A slip has 0.45 N(0, 0.0125) at
    # 2.1 V: nothing; 0.05 N(0, 1.01) = 0.00225; 0.4 / 16 = 0.025; 0.1 / 30 = 0.00333: 0.03058 a
    # volt. The fault of 12 V must have slipped: 0.02 * 0.03058 = 0.000612; that of 2 V had not:
    # 0.98 * exp(-0.01 / 0.022088) / sqrt(2 pi 0.011044) = 2.3658, and slipped as well 0.000612.
    source = _alternatives((0.5, 0.5), mean=(12.0, 2.0))
    posterior = Belief(source).posterior([CircuitReading(1, HIGH, "feed", 2.1, 0.1)])
    assert posterior.weights[0] == pytest.approx(0.000612 / (0.000612 + 2.3664), rel=2e-3)
    assert posterior.slipped[1] == pytest.approx(2 * 0.000612 / 2.3670, rel=2e-3)
    assert posterior.log_evidence == pytest.approx(math.log(2.3670 / 2.0), abs=1e-3)


def test_the_joint_density_and_what_is_left_of_it_are_scipys():
    rng = np.random.default_rng(11)
    root = rng.normal(size=(5, 7, 9))
    covariance = root @ root.transpose(0, 2, 1) + 0.01 * np.eye(7)
    residual = rng.normal(size=(5, 7))
    joint = joint_of(residual, covariance)
    rest = np.array([0, 1, 2, 4, 5, 6])
    left = joint.without(3)
    for case in range(5):
        whole = multivariate_normal(np.zeros(7), covariance[case]).logpdf(residual[case])
        part = multivariate_normal(np.zeros(6), covariance[case][np.ix_(rest, rest)]).logpdf(
            residual[case, rest]
        )
        assert joint.log_density[case] == pytest.approx(whole, rel=1e-10)
        assert left.log_density[case] == pytest.approx(part, rel=1e-9)
        # Rasmussen and Williams 5.4.2: reading i given the others, by the inverse of the whole.
        own = joint.inverse[case, 3, 3]
        off = joint.pull[case, 3] / own
        given = multivariate_normal(0.0, 1.0 / own).logpdf(off)
        assert whole - part == pytest.approx(given, rel=1e-9)
