"""The probability that taps at random times would do as well."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.taps.chance import DRAWS, Returns, chance_of, returns_of
from meterlog.analysis.taps.gone_stretches import GoneStretch
from meterlog.model import SpanKind

REACH = 2_000_000_000


def ns(*seconds):
    return [round(one * 1e9) for one in seconds]


def stretch(start, end, *, kind=SpanKind.DEAD, edge=0.01, running=True, returned=True):
    first, last, wide = ns(start, end, edge)
    return GoneStretch(first, last, wide, (kind,), running, True, returned)


def chance(attempts, stretches):
    return chance_of([ns(*one) for one in attempts], returns_of(stretches, REACH))


def test_dropouts_that_end_by_themselves_after_a_moment_prove_nothing():
    # Whenever such a dropout is tapped, the current comes back soon after.
    brief = [stretch(start, start + 1.0) for start in (10.0, 20.0, 30.0)]
    p, _ = chance([(10.7,), (20.7,), (30.6,)], brief)
    assert p > 0.2


def test_answers_at_once_after_long_dropouts_are_no_chance():
    long = [stretch(start, start + 6.0) for start in (10.0, 20.0, 30.0)]
    p, arrangements = chance([(15.9,), (25.9,), (35.9,)], long)
    assert p <= 0.001
    assert arrangements == DRAWS


def test_slow_answers_are_more_likely_chance_than_quick_ones():
    long = [stretch(start, start + 6.0) for start in (10.0, 20.0, 30.0)]
    quick, _ = chance([(15.9,), (25.9,), (35.9,)], long)
    slow, _ = chance([(14.4,), (24.4,), (34.4,)], long)
    assert quick < slow / 10


def test_one_answer_in_five_is_weak():
    five = [stretch(start, start + 6.0) for start in (10.0, 20.0, 30.0, 40.0, 50.0)]
    p, _ = chance([(15.9,), (23.0,), (33.0,), (43.0,), (53.0,)], five)
    assert p > 0.1


def test_attempts_that_nothing_answers_are_as_likely_as_can_be():
    never = [stretch(10.0, 40.0, returned=False)]
    assert chance([(20.0,), (25.0,)], never)[0] == 1.0


def test_few_arrangements_are_all_tried():
    one = [stretch(10.0, 14.5, edge=0.05, running=False)]
    p, arrangements = chance([(14.4,)], one)
    assert arrangements == 100  # 5 s, a late hand included, by 0.05 s
    assert p == pytest.approx(2 * 0.1 / 5.0, abs=0.02)


def test_the_answer_is_the_same_each_time():
    long = [stretch(start, start + 6.0) for start in (10.0, 20.0, 30.0)]
    attempts = [(15.8,), (25.7,), (35.8,)]
    assert chance(attempts, long) == chance(attempts, long)


def test_a_slow_meter_can_not_prove_as_much_as_a_quick_one():
    taps = [(15.98,), (25.98,), (35.98,)]
    quick = [stretch(start, start + 6.0, edge=0.01) for start in (10.0, 20.0, 30.0)]
    slow = [stretch(start, start + 6.0, edge=0.5) for start in (10.0, 20.0, 30.0)]
    assert chance(taps, quick)[0] < chance(taps, slow)[0] / 5


def test_a_group_of_taps_is_moved_as_one():
    long = [stretch(10.0, 20.0), stretch(30.0, 40.0)]
    single, _ = chance([(19.9,)], long)
    grouped, _ = chance([(19.0, 19.3, 19.6, 19.9)], long)
    assert grouped > 2 * single, "four taps have four chances"


def test_returns_of_the_feed_are_not_the_motors():
    mixed = [stretch(10.0, 16.0), stretch(20.0, 26.0, kind=SpanKind.FEED_LOST)]
    returns = returns_of(mixed, REACH)
    assert returns.ends_ns.tolist() == ns(16.0)


def test_without_an_attempt_there_is_no_probability():
    assert chance([], [stretch(1.0, 5.0)]) == (None, 0)
    assert chance([(3.0,)], []) == (None, 0)


def test_random_taps_are_rarely_called_improbable():
    """Under the hypothesis of chance, p <= a must come no oftener than a."""
    dice = np.random.default_rng(7)
    found = []
    for _ in range(300):
        starts = np.cumsum(dice.uniform(8.0, 15.0, 4))
        ends = starts + dice.uniform(1.0, 7.0, 4)
        stretches = [stretch(a, b, edge=0.05) for a, b in zip(starts, ends, strict=True)]
        returns = returns_of(stretches, REACH)
        spans = returns.open_ns
        weights = (spans[:, 1] - spans[:, 0]) / (spans[:, 1] - spans[:, 0]).sum()
        taps = []
        for _ in range(3):
            a, b = spans[dice.choice(len(spans), p=weights)]
            taps.append([int(dice.integers(a, b))])
        found.append(chance_of(taps, returns)[0])
    for level in (0.05, 0.2, 0.5):
        # 300 draws: three deviations of a binomial count above the level.
        most = level + 3.0 * (level * (1.0 - level) / 300) ** 0.5
        assert np.mean(np.array(found) <= level) <= most


@given(
    st.lists(st.floats(0.6, 8.0), min_size=1, max_size=5),
    st.lists(st.floats(0.0, 1.0), min_size=1, max_size=4),
    st.floats(0.001, 0.5),
)
def test_the_probability_is_one(lengths, places, edge):
    """Between 1 / (m + 1) and 1, whatever is tapped."""
    stretches = [
        stretch(20.0 * i, 20.0 * i + length, edge=edge) for i, length in enumerate(lengths, 1)
    ]
    attempts = [
        (20.0 * (1 + i % len(lengths)) + place * lengths[i % len(lengths)],)
        for i, place in enumerate(places)
    ]
    p, arrangements = chance(attempts, stretches)
    assert 1.0 / (arrangements + 1) <= p <= 1.0


def test_scores_are_the_distance_to_the_nearest_return_that_may_be_meant():
    returns = Returns(
        np.array(ns(10.0, 20.0)), np.array(ns(0.05, 0.05)), np.array([ns(5.0, 10.5)]), REACH
    )
    taps = np.array(ns(7.0, 8.5, 9.99, 10.3, 10.6, 19.0, 21.0))
    assert returns.scores(taps).tolist() == ns(2.0, 1.5, 0.05, 0.3, 2.0, 1.0, 2.0)
