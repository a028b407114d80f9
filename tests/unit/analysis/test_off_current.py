"""A current that is read while none can flow is the clamp's, and taken for nothing else."""

import pytest

from meterlog.analysis import Reviewer
from meterlog.model import DoubtKind, Instrument


def zero_seen(review):
    return [one for one in review.doubts if one.kind is DoubtKind.ZERO_SEEN]


@pytest.fixture
def fan(trace):
    """A fan whose clamp has a zero of its own."""

    def of(off_a):
        made = trace.Fan()
        made.values[:, 2] += off_a
        return made

    return of


@pytest.mark.parametrize("off_a", [0.5, 1.2, -0.8])
def test_it_is_told_with_its_size_and_what_to_do(fan, off_a):
    review = fan(off_a).review()
    (doubt,) = zero_seen(review)
    assert doubt.offset_a == pytest.approx(abs(off_a), abs=0.05)
    assert f"the current reads {off_a - 0.01:.2f}" in doubt.text
    assert "take its zero and measure again" in doubt.text
    # Nothing else: no probe slipped, no clamp the wrong way round.
    assert review.doubts == (doubt,)
    # A relay that sticks is not ruled out, and no more.
    assert review.verdict.outcome in ("can't tell", "suspicion")
    assert review.verdict.ranked[0].part == "measuring"


@pytest.mark.parametrize("off_a", [0.0, 0.2])
def test_what_is_below_the_least_current_is_not(fan, off_a):
    assert zero_seen(fan(off_a).review()) == []


def test_a_relay_that_sticks_leaves_a_voltage_and_is_no_zero(trace):
    made = trace.Fan()
    first = made.t_s < 4.0
    made.values[first, 1] = 0.2
    made.values[first, 2] = 9.0
    review = made.review()
    assert zero_seen(review) == []
    assert review.verdict.outcome == "fault found"


def test_without_a_return_nobody_knows(fan, trace):
    made = fan(1.2)
    made.values[:, 1] = float("nan")
    assert zero_seen(made.review()) == []


@pytest.mark.parametrize("cut", [1, 7, 13])
def test_a_live_review_says_the_same_however_the_readings_come(fan, cut):
    made = fan(1.2)
    whole = made.review()
    *events, block = made.items()
    reviewer = Reviewer([Instrument("meter", "test", "-", made.channels)], made.limits, None)
    for event in events:
        reviewer.feed(event)
    for first in range(0, len(block), cut):
        reviewer.feed(block.rows(first, min(first + cut, len(block))))
        reviewer.live()
    assert zero_seen(reviewer.finish()) == zero_seen(whole)


def test_of_a_long_stretch_its_last_minute_tells_how_large_it_is(trace):
    """The clamp drifts while the fan is off for ten minutes."""
    legs = [trace.Leg(600.0, *trace.NORMAL[0]), trace.Leg(620.0, *trace.NORMAL[4])]
    made = trace.Fan()
    made.t_ns, made.values = trace.sample(legs, 0.1)
    made.values[:, 2] += 0.5 + made.t_ns / 600e9
    made.events = [trace.speed(0.0, 0), trace.speed(600.0, 4)]
    (doubt,) = zero_seen(made.review())
    assert doubt.offset_a == pytest.approx(1.45, abs=0.02)
