"""The posterior against the sum over everything, one multivariate normal of scipy at a time."""

import numpy as np
import pytest

from meterlog.circuit.belief import Belief
from meterlog.circuit.joint import joint_of
from meterlog.circuit.slipped import sum_over_slips
from meterlog.model import Sign


def _sittings(readings):
    places, last = [], None
    for one in readings:
        places.append((places[-1] if places else -1) + (one.state != last))
        last = one.state
    return places


@pytest.mark.parametrize("seed", range(12))
def test_it_is_the_sum_over_all_slips_and_all_ways_of_coming_and_going(made, seed):
    rng = np.random.default_rng(seed)
    bench = made.bench(seed)
    readings = made.drawn(bench, rng, int(rng.integers(1, 6)))
    weights, slips, whole = made.by_hand(bench, readings, _sittings(readings))
    posterior = Belief(bench).posterior(readings)
    # Ways of coming and going that are 160,000 times less likely than others are passed over.
    assert posterior.weights == pytest.approx(weights, rel=1e-4, abs=1e-9)
    assert list(posterior.slipped.values()) == pytest.approx(list(slips), rel=1e-4, abs=1e-9)
    assert posterior.log_evidence == pytest.approx(whole, rel=1e-5, abs=1e-5)


@pytest.mark.parametrize("seed", range(6))
def test_third_slips_matter_to_nothing_that_two_can_explain(made, seed):
    rng = np.random.default_rng(100 + seed)
    bench = made.bench(seed)
    cell = int(rng.integers(1, 3))
    readings = [
        made.reading(at, point, float(bench.at(made.high).mean[bench.cells.row[cell], at]))
        for at, point in enumerate(made.points[:4])
    ]
    weights, *_ = made.by_hand(bench, readings, _sittings(readings), most=4)
    assert Belief(bench).posterior(readings).weights == pytest.approx(weights, abs=1e-4)


@pytest.mark.parametrize("seed", range(6))
def test_without_a_reading_is_what_it_would_have_been_without(made, seed):
    rng = np.random.default_rng(200 + seed)
    bench = made.bench(seed)
    # One state: with two, leaving a reading out can make one sitting of two.
    readings = made.drawn(bench, rng, 6, states=(made.high,))
    signs = [made.sign(77, "fan", "slow")]
    posterior = Belief(bench).posterior(readings, signs)
    least = posterior.unit_probabilities()
    for one in readings:
        rest = [other for other in readings if other is not one]
        afresh = Belief(bench).posterior(rest, signs).unit_probabilities()
        # Three slips count where one of them is left out, so it can't be exactly the same.
        assert posterior.without(one.id) == pytest.approx(afresh, abs=1e-4)
        least = {unit: min(least[unit], afresh[unit]) for unit in least}
    afresh = Belief(bench).posterior(readings).unit_probabilities()
    assert posterior.without(77) == pytest.approx(afresh, abs=1e-9)
    least = {unit: min(least[unit], afresh[unit]) for unit in least}
    assert posterior.least_without() == pytest.approx(least, abs=1e-4)


def test_leaving_out_and_silencing_are_the_same_as_never_having_read():
    rng = np.random.default_rng(3)
    root = rng.normal(size=(4, 6, 9))
    covariance = root @ root.transpose(0, 2, 1)
    residual = rng.normal(size=(4, 6))
    joint = joint_of(residual, covariance)
    rest = np.array([0, 1, 3, 5])
    afresh = joint_of(residual[:, rest], covariance[:, rest[:, None], rest])
    left = joint.without(4).without(2)
    assert left.log_density == pytest.approx(afresh.log_density)
    assert left.inverse == pytest.approx(afresh.inverse)
    assert left.pull == pytest.approx(afresh.pull)
    silent = joint.silenced(np.array([[2, 4]] * 4))
    assert silent.log_density == pytest.approx(afresh.log_density)
    assert silent.inverse[:, rest[:, None], rest] == pytest.approx(afresh.inverse)
    assert silent.pull[:, rest] == pytest.approx(afresh.pull)
    assert not silent.inverse[:, 2].any()
    assert not silent.pull[:, 4].any()
    assert joint.silenced(np.full((4, 2), -1)).pull == pytest.approx(joint.pull)


def test_the_likeliest_set_of_slips_is_the_one_with_the_far_readings():
    residual = np.array([[0.1, 9.0, 0.0, -7.0], [0.1, 0.2, 0.0, 0.1]])
    joint = joint_of(residual, np.broadcast_to(0.04 * np.eye(4), (2, 4, 4)))
    sums = sum_over_slips(joint, np.full(4, -2.5))
    assert sums.likeliest.tolist() == [[1, 3], [-1, -1]]
    assert sums.slipped[0, [1, 3]] == pytest.approx([1.0, 1.0])
    assert sums.both[0, 1, 3] == pytest.approx(1.0)
    assert sums.slipped[1].max() < 0.02


def test_nothing_found_leaves_the_prior(made):
    bench = made.bench()
    posterior = Belief(bench).posterior([], [])
    assert posterior.weights == pytest.approx(np.exp(bench.cells.log_prior))
    assert posterior.unit_probabilities() == pytest.approx(
        {"a": 0.4, "b": 0.3, "c": 0.3, "no-fault": 0.1}
    )
    assert posterior.least_without() == posterior.unit_probabilities()
    assert posterior.resting_on("a") is None


def test_signs_multiply(made):
    bench = made.bench()
    table = bench.at(made.high).signs
    fan, wheel = table[Sign.FAN][:, 2], table[Sign.WHEEL][:, 1]
    row = bench.cells.row
    there, away = fan[row] * wheel[row], fan[0] * wheel[0]
    wandering = bench.cells.hypothesis == 3
    expected = np.exp(bench.cells.log_prior) * np.where(wandering, (there + away) / 2.0, there)
    posterior = Belief(bench).posterior(
        [], [made.sign(1, "fan", "dead"), made.sign(2, "wheel", "stiff")]
    )
    assert posterior.weights == pytest.approx(expected / expected.sum())
    wrong = posterior.sign_wrong
    assert set(wrong) == {1, 2}
    assert all(0.0 < one < 1.0 for one in wrong.values())


def test_what_cannot_be_is_refused(made):
    belief = Belief(made.bench())
    with pytest.raises(ValueError, match="two entries have the id 3"):
        belief.posterior([made.reading(3, "feed", 1.0)], [made.sign(3, "fan", "dead")])
    with pytest.raises(ValueError, match="no point 'nowhere'"):
        belief.posterior([made.reading(3, "nowhere", 1.0)])
    with pytest.raises(ValueError, match="no number"):
        belief.posterior([made.reading(3, "feed", float("nan"))])
    with pytest.raises(ValueError, match="uncertainty"):
        belief.posterior([made.reading(3, "feed", 1.0, u=-1.0)])
    with pytest.raises(ValueError, match="can't be 'sad'"):
        belief.posterior([], [made.sign(3, "fan", "sad")])
    with pytest.raises(KeyError):
        belief.posterior([]).without(9)


@pytest.mark.parametrize("seed", range(4))
def test_what_is_left_forecasts_as_if_the_entry_had_never_been_made(made, seed):
    rng = np.random.default_rng(200 + seed)
    bench = made.bench(seed)
    readings = made.drawn(bench, rng, 6, states=(made.high,))
    signs = [made.sign(77, "fan", "slow")]
    posterior = Belief(bench).posterior(readings, signs)
    for gone in (readings[2].id, 77):
        left = posterior.left(gone)
        afresh = Belief(bench).posterior(
            [one for one in readings if one.id != gone], [one for one in signs if one.id != gone]
        )
        assert left.unit_probabilities() == pytest.approx(afresh.unit_probabilities(), abs=1e-3)
        likely = np.flatnonzero(afresh.weights > 0.01)
        for told, wanted in zip(
            left.predictive(made.high, cells=likely),
            afresh.predictive(made.high, cells=likely),
            strict=True,
        ):
            np.testing.assert_allclose(told, wanted, rtol=1e-6, atol=1e-9)
        assert set(left.slipped) == set(afresh.slipped)
    with pytest.raises(KeyError):
        posterior.left(9)
