"""Which readings are doubted, what the others let expect there, and what is said of it."""

import numpy as np
import pytest

from meterlog.circuit.belief import Belief
from meterlog.circuit.contradictions import contradictions, expected_by_others, opponent


@pytest.fixture
def plain(made):
    """The circuit with far and plain values: in order all points have 12 V, b open 0 V at two."""
    bench = made.bench(0, slope=0.05)
    mean = bench.at(made.high).mean
    mean[:, :4] = 12.0
    mean[:, 4] = 10.0
    mean[1, :4] = 0.0
    mean[2, 2:4] = 0.0
    return bench


def _readings(made, *values):
    return [made.reading(at + 1, made.points[at], one) for at, one in enumerate(values)]


def test_readings_that_go_together_are_not_doubted(made, plain):
    assert not contradictions(Belief(plain).posterior(_readings(made, 12.0, 12.1, 0.02, 0.0)))


def test_the_odd_one_of_several_is_named_with_what_the_others_let_expect(made, plain):
    posterior = Belief(plain).posterior(_readings(made, 12.0, 5.0, 12.0, 12.0))
    (doubt,) = contradictions(posterior)
    assert (doubt.id, doubt.point) == (2, "relay")
    assert doubt.probability > 0.99
    assert 11.5 < doubt.expected_low < 12.0 < doubt.expected_high < 12.5
    assert doubt.words.startswith("Reading 2 (relay wire, 5.00 V) does not go with the other")
    assert "Repeat reading 2 first" in doubt.words


def test_two_that_contradict_each_other_name_each_other(made, plain):
    posterior = Belief(plain).posterior(
        [
            made.reading(1, "feed", 12.0),
            made.reading(2, "relay", 3.0),
            made.reading(3, "relay", 9.0, source="another"),
        ]
    )
    # The relay's point has 0 or 12 V in every hypothesis: both are doubted.
    assert {one.id for one in contradictions(posterior)} == {2, 3}
    plain.at(made.high).mean[1, 0] = 3.0
    split = Belief(plain).posterior(
        [made.reading(2, "feed", 12.0), made.reading(7, "feed", 3.0, source="another")]
    )
    doubts = contradictions(split, floor=0.05)
    assert {one.id for one in doubts} == {2, 7}
    assert sum(one.probability for one in doubts) == pytest.approx(1.0, abs=0.05)
    for one in doubts:
        other, left = opponent(split, one.id)
        assert other == 9 - one.id
        assert left < 0.1
        assert f"does not go with reading {9 - one.id} (feed wire" in one.words


def test_a_reading_that_only_contradicts_a_sign_says_so(made, plain):
    for row in range(7):
        plain.at(made.high).signs["fan"][row] = (0.94, 0.02, 0.02, 0.02)
    plain.at(made.high).signs["fan"][1] = (0.001, 0.001, 0.997, 0.001)
    prior = np.exp(plain.cells.log_prior)
    prior[2:4] = 1e-9
    plain.cells.log_prior[:] = np.log(prior / prior.sum())
    readings = [made.reading(1, "feed", 0.02)]
    signs = [made.sign(5 + at, "fan", "runs") for at in range(2)]
    posterior = Belief(plain).posterior(readings, signs)
    (doubt,) = contradictions(posterior)
    assert "what was seen" in doubt.words
    assert opponent(posterior, 1)[0] in {5, 6}


def test_what_the_others_let_expect_is_their_mixture(made, plain):
    prior = np.full(8, 1e-12)
    prior[[0, 2]] = (0.6, 0.4)
    plain.cells.log_prior[:] = np.log(prior / prior.sum())
    posterior = Belief(plain).posterior(_readings(made, 12.0, 12.0, 7.0))
    low, high = expected_by_others(posterior, 3)
    # 0 V with 0.4 and 12 V with 0.6.
    assert low == pytest.approx(0.0, abs=0.3)
    assert high == pytest.approx(12.0, abs=0.3)


def test_more_than_two_odd_ones_are_doubted_although_only_two_may_slip(made, plain):
    posterior = Belief(plain).posterior(_readings(made, 5.0, 7.0, 5.0, 7.0))
    assert len(contradictions(posterior)) == 4
    assert sum(posterior.slipped.values()) == pytest.approx(2.0)
