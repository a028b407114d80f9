"""What a next reading would show, how bad a fault is, when one that comes and goes was there."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.circuit.belief import Belief
from meterlog.model import Sign
from meterlog.model.circuit_check import CircuitState


def test_a_new_reading_is_what_the_joint_normal_of_all_lets_expect(made):
    bench = made.bench(2)
    rng = np.random.default_rng(5)
    readings = made.drawn(bench, rng, 4, cell=1, states=(made.high,))
    posterior = Belief(bench).posterior(readings)
    mean, variance = posterior.predictive(made.low)
    assert mean.shape == variance.shape == (8, 5)
    for cell in (0, 1, 4, 7):
        # The density of one more, over that of those taken, in the same cell, without slips.
        held = posterior.weighed.sums.likeliest[
            posterior.weighed.cases.cell.tolist().index(cell)
        ].tolist()
        kept = [one for at, one in enumerate(readings) if at not in held]
        for at, point in enumerate(made.points):
            for value in (mean[cell, at], mean[cell, at] + 0.3):
                new = made.reading(99, point, float(value), made.low, u=0.0)
                whole, part = (_density(bench, entries, cell) for entries in ([*kept, new], kept))
                off = (value - mean[cell, at]) ** 2 / variance[cell, at]
                expected = -0.5 * (off + np.log(2.0 * np.pi * variance[cell, at]))
                # The scatter of the stand-in is that of what is expected before, not after.
                assert whole - part == pytest.approx(expected, abs=1e-6)


def _density(bench, readings, cell):
    weighed = Belief(bench).posterior(readings).weighed
    return weighed.joint.log_density[weighed.cases.cell.tolist().index(cell)]


def test_some_cells_are_the_same_as_all(made):
    bench = made.bench(2)
    readings = made.drawn(bench, np.random.default_rng(5), 4)
    posterior = Belief(bench).posterior(readings)
    some = np.array([1, 4, 6])
    for there in (True, False):
        mean, variance = posterior.predictive(made.high, there=there)
        part = posterior.predictive(made.high, cells=some, there=there)
        assert part[0].tolist() == mean[some].tolist()
        assert part[1].tolist() == variance[some].tolist()


def test_a_slipped_reading_teaches_a_cell_nothing(made):
    bench = made.bench(2)
    mean = bench.at(made.high).mean[1]
    good = [made.reading(1, "feed", float(mean[0])), made.reading(2, "relay", float(mean[1]))]
    belief = Belief(bench)
    without = belief.posterior(good).predictive(made.low)
    with_it = belief.posterior([*good, made.reading(3, "motor", float(mean[2]) + 3.0)])
    assert with_it.predictive(made.low)[0][1] == pytest.approx(without[0][1], abs=1e-9)
    assert with_it.predictive(made.low)[1][1] == pytest.approx(without[1][1], abs=1e-9)


def test_a_repeat_is_foreseen_more_exactly_than_another_point_can_be(made):
    bench = made.bench(2)
    mean = float(bench.at(made.high).mean[1, 0])
    before = Belief(bench).posterior([]).predictive(made.high)[1][1, 0]
    posterior = Belief(bench).posterior([made.reading(1, "feed", mean, u=0.001)])
    after = posterior.predictive(made.high)
    assert after[0][1, 0] == pytest.approx(mean, abs=0.01)
    # Only the scatter of the two readings is left.
    scatter = 0.01 + 0.001 * abs(mean)
    assert after[1][1, 0] == pytest.approx(2.0 * scatter**2, rel=0.1)
    assert after[1][1, 0] < 0.2 * before


@pytest.fixture
def wandering(made):
    """A circuit in which b comes and goes, nothing else is likely, and it shows at once."""
    bench = made.bench(0, slope=0.01)
    prior = np.full(8, 1e-6)
    prior[3] = 1.0
    for state in (made.low, made.high):
        predicted = bench.at(state)
        predicted.mean[0], predicted.mean[2] = 12.0, 2.0
        predicted.signs[Sign.FAN][0] = (0.94, 0.02, 0.02, 0.02)
        predicted.signs[Sign.FAN][2] = (0.02, 0.02, 0.94, 0.02)
    return replace(bench, cells=replace(bench.cells, log_prior=np.log(prior / prior.sum())))


def test_presence_goes_on_as_long_as_the_sitting(made, wandering):
    posterior = Belief(wandering).posterior([made.reading(1, "feed", 2.0)])
    assert posterior.presence(made.high)[3] == pytest.approx(1.0, abs=1e-3)
    assert posterior.presence(made.low)[3] == 0.5
    assert posterior.presence(made.high)[[0, 1, 2]].tolist() == [1.0, 1.0, 1.0]
    there, away = (posterior.predictive(made.high, there=one)[0] for one in (True, False))
    assert there[3, 1] == pytest.approx(2.0, abs=0.1)
    assert away[3, 1] == pytest.approx(12.0, abs=0.1)
    assert there[2, 1] == away[2, 1]


def test_a_tap_that_starts_the_fan_ends_the_sitting(made, wandering):
    entries = [made.reading(1, "feed", 2.0)], [made.sign(2, "tap", "starts")]
    posterior = Belief(wandering).posterior(*entries)
    assert posterior.presence(made.high)[3] == 0.5
    more = [*entries[0], made.reading(3, "feed", 12.0)]
    assert Belief(wandering).posterior(more, entries[1]).slipped[3] < 0.01
    # Without the tap the two contradict each other, and one of them must have slipped.
    assert sum(Belief(wandering).posterior(more).slipped.values()) > 0.9


def test_what_is_said_of_the_complaint_is_believed(made, wandering):
    readings = [
        made.reading(1, "feed", 2.0, complaint=True),
        made.reading(2, "feed", 12.0, complaint=False),
        made.reading(3, "relay", 12.0),
        made.reading(4, "relay", 2.0, complaint=True),
    ]
    posterior = Belief(wandering).posterior(readings)
    assert max(posterior.slipped.values()) < 0.01
    assert [one.ids for one in posterior.weighed.cases.sittings] == [(1,), (2, 3), (4,)]


def test_a_sign_tells_that_the_fault_is_there(made, wandering):
    posterior = Belief(wandering).posterior([], [made.sign(1, "fan", "dead")])
    assert posterior.presence(made.high)[3] == pytest.approx(0.94 / 0.96, rel=1e-4)
    chances = posterior.predictive_sign(made.high, Sign.FAN)
    assert chances[3, 2] == pytest.approx((0.94 * 0.94 + 0.02 * 0.02) / 0.96, rel=1e-4)
    assert posterior.predictive_sign(made.high, Sign.FAN, cells=np.array([3])).shape == (1, 4)


def test_many_sittings_are_counted_as_if_all_ways_had_been(made, wandering):
    states = [(made.low, made.high)[at % 2] for at in range(9)]
    there = [2.0, 12.0, 12.0, 2.0, 12.0, 2.0, 2.0, 12.0, 12.0]
    readings = [
        made.reading(at, "feed", value, state)
        for at, (value, state) in enumerate(zip(there, states, strict=True))
    ]
    posterior = Belief(wandering).posterior(readings)
    best = posterior.weighed.case_weights.argmax()
    assert posterior.weighed.cases.there[best].tolist() == [float(one < 6.0) for one in there]
    # As sure as four sittings make it, and each of the nine costs a factor of two.
    few = Belief(wandering).posterior(readings[:4])
    assert posterior.weighed.cases.log_prior[best] == pytest.approx(
        few.weighed.cases.log_prior[few.weighed.case_weights.argmax()] - 5.0 * np.log(2.0), abs=0.02
    )


def test_sittings_that_tell_nothing_cost_nothing(made, wandering):
    idle = [CircuitState("off", 0), CircuitState("off", 1)] * 5
    for state in idle:
        predicted = wandering.at(state)
        predicted.mean[:] = predicted.mean[0]
        predicted.slopes[:] = predicted.slopes[0]
    readings = [made.reading(at, "feed", 5.0, state) for at, state in enumerate(idle)]
    posterior = Belief(wandering).posterior(readings)
    assert posterior.weights == pytest.approx(np.exp(wandering.cells.log_prior), rel=1e-6)


def test_the_severity_is_that_of_the_cells_and_of_where_in_them(made):
    bench = made.bench(0, slope=0.001)
    predicted = bench.at(made.high)
    # c: 12 V less 2 V for each e-fold of the severity, in three cells that join.
    half = np.log(2.0)
    for row, middle in ((3, 0.1), (4, 0.4), (5, 1.6)):
        predicted.mean[row] = 12.0 - 2.0 * np.log(middle / 0.05)
        predicted.slopes[row] = 0.0
        predicted.slopes[row, :, -1] = -2.0 * half / np.sqrt(3.0)
    for severity in (0.06, 0.15, 0.35, 1.0, 2.5):
        value = 12.0 - 2.0 * np.log(severity / 0.05)
        readings = [made.reading(at, made.points[at], value) for at in range(4)]
        found = Belief(bench).posterior(readings).severity(4)
        assert found.median == pytest.approx(severity, rel=0.05)
        assert found.low <= found.median <= found.high
        assert found.high / found.low < 1.25
    prior = Belief(bench).posterior([]).severity(4)
    assert prior.low == pytest.approx(0.05 * np.exp(0.025 * 2.0 * half / 0.5), rel=0.05)
    assert prior.high == pytest.approx(3.2 * np.exp(-0.025 * 2.0 * half / 0.2), rel=0.05)
    assert Belief(bench).posterior([]).severity(1) is None
