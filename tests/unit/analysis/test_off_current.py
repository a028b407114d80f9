"""A current that is read while none can flow is the clamp's, and taken for nothing else."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.model import (
    DoubtKind,
    FindingKind,
    Fuse,
    Instrument,
    Outcome,
    SpeedLimits,
    Verdict,
)


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


def slowed(made, constant_s):
    """Read the current through a clamp that follows with a time constant."""
    out, level = [], made.values[0, 2]
    step_s = made.t_s[1] - made.t_s[0]
    share = 1.0 - np.exp(-step_s / constant_s)
    for amps in made.values[:, 2]:
        level += share * (amps - level)
        out.append(level)
    made.values[:, 2] = np.round(out, 2)
    return made


def switched_off(trace, off_s, interval_s=0.02, off_a=0.0):
    """A sound fan on high, and off for so long at the end."""
    made = trace.Fan(interval_s)
    legs = [
        trace.Leg(4.0, *trace.NORMAL[0]),
        trace.Leg(14.0, *trace.NORMAL[4]),
        trace.Leg(14.0 + off_s, *trace.NORMAL[0]),
    ]
    made.t_ns, made.values = trace.sample(legs, interval_s)
    noise = np.random.default_rng(5).normal(0.0, 0.02, made.values.shape)
    made.values = made.values + noise
    made.values[:, 2] += off_a
    made.events = [trace.speed(0.0, 0), trace.speed(4.0, 4), trace.speed(14.0, 0)]
    return made


@pytest.mark.parametrize("interval_s", [0.02, 0.1])
@pytest.mark.parametrize("constant_s", [0.4, 1.5])
@pytest.mark.parametrize("off_s", [1.5, 3.0, 10.0])
def test_what_a_slow_clamp_still_shows_is_no_zero(trace, constant_s, interval_s, off_s):
    made = slowed(switched_off(trace, off_s, interval_s), constant_s)
    assert zero_seen(made.review()) == []


@pytest.mark.parametrize("constant_s", [0.3, 0.4])
def test_a_sound_fan_read_by_a_slow_clamp_is_in_order(trace, constant_s):
    made = slowed(switched_off(trace, 3.0), constant_s)
    made.limits = trace.limits(speeds={4: made.limits.at(4)}, inrush_window_s=2.5)
    review = made.review()
    assert review.verdict.outcome is Outcome.IN_ORDER, review.verdict.paragraph


@pytest.mark.parametrize("constant_s", [0.01, 0.4, 0.8])
@pytest.mark.parametrize("off_a", [0.5, 1.2, -0.8])
def test_a_zero_that_is_off_is_told_of_a_slow_clamp_too(trace, constant_s, off_a):
    review = slowed(switched_off(trace, 10.0, off_a=off_a), constant_s).review()
    (doubt,) = zero_seen(review)
    assert review.verdict.outcome is not Outcome.IN_ORDER
    assert doubt.offset_a >= 0.9 * abs(off_a)


@pytest.mark.parametrize("cut", [25, 64])
def test_of_a_slow_clamp_nothing_is_told_live_either(trace, cut):
    made = slowed(switched_off(trace, 3.0), 0.4)
    *events, block = made.items()
    reviewer = Reviewer([Instrument("meter", "test", "-", made.channels)], made.limits, None)
    for event in events:
        reviewer.feed(event)
    for first in range(0, len(block), cut):
        reviewer.feed(block.rows(first, min(first + cut, len(block))))
        assert zero_seen(reviewer.live()) == []
    assert zero_seen(reviewer.finish()) == []


def test_a_median_that_stands_just_at_the_least_current_is_still_told(trace):
    """Read as off all along, as the threshold has a hysteresis: nothing fell."""
    made = switched_off(trace, 10.0, off_a=0.31)
    made.values[:, 1] = float("nan")  # no return: nobody knows that nothing drives it
    assert made.review().verdict.outcome is not Outcome.IN_ORDER


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


def step_verdicts(review):
    return {
        one.speed: one.verdict for one in review.findings if one.kind is FindingKind.STEP_CURRENT
    }


@pytest.mark.parametrize("off_a", [1.2, -1.2])
def test_what_a_zero_may_turn_over_is_neither_passed_nor_failed(fan, off_a):
    """Speed 1 draws 3.6 A and may draw 2 to 5 A, speed 4 draws 13.6 A and may draw 10 to 18 A."""
    sure = step_verdicts(fan(0.0).review())
    assert set(sure.values()) == {Verdict.PASS}
    review = fan(off_a).review()
    unsure = step_verdicts(review)
    assert unsure[1] is Verdict.CANT_TELL
    assert unsure[4] is Verdict.PASS
    (said,) = (
        one.statement
        for one in review.findings
        if (one.kind, one.speed) == (FindingKind.STEP_CURRENT, 1)
    )
    assert "can't tell, as the zero of the clamp is off by 1." in said
    off = [one for one in review.findings if one.kind is FindingKind.OVER]
    assert {one.verdict for one in off} <= {Verdict.CANT_TELL}
    assert not [one for one in review.findings if one.verdict is Verdict.FAIL]


def test_what_is_further_off_than_the_zero_fails_all_the_same(fan):
    made = fan(1.2)
    made.limits = replace(made.limits, speeds={**made.limits.speeds, 4: SpeedLimits(2.0, 10.0)})
    assert step_verdicts(made.review())[4] is Verdict.FAIL


def test_a_limit_at_another_voltage_is_held_against_what_it_may_be_brought_to(fan):
    """14.8 A are 3.2 A below their limit as read, and may be 18.5 A where they count."""
    made = fan(1.2)
    assert step_verdicts(made.review())[4] is Verdict.PASS
    made.limits = replace(made.limits, at_reference=True, reference_v=12.0)
    assert step_verdicts(made.review())[4] is Verdict.CANT_TELL


@pytest.mark.parametrize(
    ("most", "verdict"), [(80.0, "pass"), (50.0, "can't tell"), (40.0, "fail")]
)
def test_no_fuse_passes_on_a_zero_that_is_off(fan, most, verdict):
    """14.8 A of a fuse of 30 A: 49 %, and 4 points more or less."""
    made = fan(1.2)
    made.limits = replace(made.limits, fuse=Fuse(30.0, max_load_percent=most))
    (load,) = (one for one in made.review().findings if one.kind is FindingKind.FUSE_LOAD)
    assert load.verdict == verdict


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
