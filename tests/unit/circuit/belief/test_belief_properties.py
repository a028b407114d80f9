"""What must hold of any belief: order, cuts, readings that tell nothing, repeats, one reading."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.circuit.belief import Belief


def _mixed(made, seed, count):
    bench = made.bench(seed)
    rng = np.random.default_rng(1000 + seed)
    readings = made.drawn(bench, rng, count)
    signs = [made.sign(50, "fan", "dead"), made.sign(51, "tap", "starts", made.low)]
    return bench, readings, signs


@settings(max_examples=15)
@given(st.integers(0, 40), st.randoms(use_true_random=False))
def test_the_order_of_entries_makes_no_difference(made, seed, dice):
    bench, readings, signs = _mixed(made, seed, 6)
    first = Belief(bench).posterior(readings, signs)
    dice.shuffle(readings)
    dice.shuffle(signs)
    second = Belief(bench).posterior(readings, signs)
    assert first.weights.tolist() == second.weights.tolist()
    assert first.slipped == second.slipped
    assert first.least_without() == second.least_without()


@settings(max_examples=15)
@given(st.integers(0, 40), st.permutations(range(5)))
def test_readings_of_one_sitting_may_have_been_taken_in_any_order(made, seed, order):
    bench = made.bench(seed)
    readings = made.drawn(bench, np.random.default_rng(seed), 5, states=(made.high,))
    taken_otherwise = [replace(readings[at], id=number) for number, at in enumerate(order)]
    first = Belief(bench).posterior(readings)
    second = Belief(bench).posterior(taken_otherwise)
    assert first.weights == pytest.approx(second.weights, rel=1e-6, abs=1e-12)


@settings(max_examples=10)
@given(st.integers(0, 40), st.integers(0, 6))
def test_a_check_cut_in_two_and_joined_is_the_same(made, seed, at):
    bench, readings, signs = _mixed(made, seed, 6)
    belief = Belief(bench)
    belief.posterior(readings[:at], signs[:1])
    joined = belief.posterior(readings[:at] + readings[at:], signs[:1] + signs[1:])
    assert joined.weights.tolist() == Belief(bench).posterior(readings, signs).weights.tolist()


def _joined_by_bayes(bench, readings, first, second):
    """Weights after both sets, by the prior that the first leaves: signs, which are independent."""
    between = Belief(bench).posterior(readings, first).weights
    cells = replace(bench.cells, log_prior=np.log(np.maximum(between, 1e-300)))
    return Belief(replace(bench, cells=cells)).posterior([], second).weights


@given(st.integers(0, 40))
@settings(max_examples=10)
def test_what_the_first_half_leaves_is_the_prior_of_the_second(made, seed):
    bench = made.bench(seed)
    # Faults that come and go carry more than a weight from one half to the other.
    stays = np.where(bench.cells.hypothesis == 3, 1e-30, np.exp(bench.cells.log_prior))
    bench = replace(bench, cells=replace(bench.cells, log_prior=np.log(stays / stays.sum())))
    readings = made.drawn(bench, np.random.default_rng(seed), 4, cell=2)
    first, second = [made.sign(50, "fan", "dead")], [made.sign(51, "wheel", "stiff")]
    whole = Belief(bench).posterior(readings, first + second).weights
    halves = _joined_by_bayes(bench, readings, first, second)
    assert whole == pytest.approx(halves, rel=1e-6, abs=1e-12)


@settings(max_examples=10)
@given(st.integers(0, 40), st.sampled_from(["feed", "clamp"]), st.floats(-5.0, 20.0))
def test_a_reading_of_infinite_uncertainty_changes_nothing(made, seed, point, value):
    bench, readings, signs = _mixed(made, seed, 4)
    vague = made.reading(90, point, value, u=float("inf"))
    with_it = Belief(bench).posterior([*readings, vague], signs)
    assert with_it.weights.tolist() == Belief(bench).posterior(readings, signs).weights.tolist()
    assert 90 not in with_it.slipped


@settings(max_examples=10)
@given(st.integers(0, 40), st.floats(-1.0, 15.0))
def test_a_reading_of_enormous_uncertainty_changes_next_to_nothing(made, seed, value):
    bench = made.bench(seed)
    vague = Belief(bench).posterior([made.reading(1, "feed", value, u=1e6)])
    assert vague.weights == pytest.approx(np.exp(bench.cells.log_prior), rel=1e-6)


@settings(max_examples=20)
@given(
    st.integers(0, 40),
    st.sampled_from(["feed", "relay", "motor", "return", "clamp"]),
    st.floats(-2.0, 14.0),
)
def test_one_reading_alone_carries_nothing(made, seed, point, value):
    bench = made.bench(seed)
    prior = Belief(bench).posterior([]).unit_probabilities()
    posterior = Belief(bench).posterior([made.reading(1, point, value)])
    assert posterior.without(1) == pytest.approx(prior, rel=1e-9)
    after = posterior.unit_probabilities()
    for unit, least in posterior.least_without().items():
        assert least == pytest.approx(min(prior[unit], after[unit]), rel=1e-9)


@settings(max_examples=20)
@given(st.integers(0, 40), st.floats(-2.0, 14.0))
def test_a_slip_bounds_what_one_reading_can_do(made, seed, value):
    bench = made.bench(seed)
    prior = Belief(bench).posterior([]).unit_probabilities()
    after = Belief(bench).posterior([made.reading(1, "feed", value)]).unit_probabilities()
    # A slip has 0.02 times 0.4 / 16 V at least against 1 / (0.03 V times the root of 2 pi)
    # against 1 / (0.03 V times the root of 2 pi), so the odds grow less than 27,000 fold.
    for unit, probability in after.items():
        odds = probability / max(1.0 - probability, 1e-300)
        assert odds <= 27_000.0 * prior[unit] / (1.0 - prior[unit])


def test_repeats_with_the_same_meter_do_not_shrink_its_error(made):
    bench = made.bench(4, slope=1.0)
    value = float(bench.at(made.high).mean[1, 0])
    once = Belief(bench).posterior([made.reading(1, "feed", value, u=0.5)])
    often = Belief(bench).posterior(
        [made.reading(number, "feed", value, u=0.5) for number in range(1, 9)]
    )
    others = Belief(bench).posterior(
        [
            made.reading(number, "feed", value, u=0.5, source=f"meter {number}")
            for number in range(1, 9)
        ]
    )
    spread = [one.predictive(made.high)[1][1, 0] for one in (once, often, others)]
    # A little is gained: the scatter of the single one.
    assert spread[1] == pytest.approx(spread[0], rel=0.02)
    assert spread[2] < 0.5 * spread[0]


def test_a_repeat_takes_the_doubt_of_a_slip_away(made):
    bench = made.bench(4)
    mean = bench.at(made.high).mean
    held = [made.reading(1, "relay", float(mean[1, 1]))]
    odd = float(mean[1, 0]) + 0.6
    once = Belief(bench).posterior([*held, made.reading(2, "feed", odd)])
    again = [made.reading(2, "feed", odd), made.reading(3, "feed", odd + 0.01)]
    twice = Belief(bench).posterior([*held, *again])
    assert twice.slipped[2] < 0.5 * once.slipped[2]


def test_the_gain_of_one_meter_is_one_error_at_all_points(made):
    bench = made.bench(4, slope=1e-3)
    table = bench.at(made.high).mean[:, :4]
    row = int(np.flatnonzero((table > 5.0).sum(axis=1) >= 2)[0])
    high = np.flatnonzero(table[row] > 5.0)[:2]
    # Both read 4 % too much: far for two meters, one and the same gain for one.
    one = [
        made.reading(
            int(at),
            made.points[at],
            float(1.04 * table[row, at]),
            u=float(0.02 * table[row, at]),
            shared_u=float(0.02 * table[row, at]),
        )
        for at in high
    ]
    two = [replace(each, source=f"meter {each.id}") for each in one]
    cell = int(np.flatnonzero(bench.cells.row == row)[0])
    density = [Belief(bench).posterior(each).weighed.joint.log_density[cell] for each in (one, two)]
    assert density[0] > density[1] + 1.0
