"""What lies beyond the range of a clamp or meter is told, and neither passes nor blames a motor."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.past_range import PastRange
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    DoubtKind,
    FindingKind,
    Flag,
    Instrument,
    Quantity,
    Range,
    Role,
    Sensor,
    SensorKind,
    SpeedLimits,
    Verdict,
)

STATED = Accuracy(0.5, 2, 0.01, basis="invented")
CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A", own_percent=1.5, own_floor=0.1)


def clamped(top, turns=1, ranges=(), role=Role.MOTOR_CURRENT):
    sensor = replace(CLAMP, own_top=top, turns=turns)
    return Channel("amps", Quantity.CURRENT, role, accuracy=STATED, sensor=sensor, ranges=ranges)


def told(channel, blocks):
    watch = PastRange([Instrument("meter", "test", "-", (channel,))])
    for one in blocks:
        watch.take(one)
    return watch.doubts()


def block(values, start=0, flags=None, source="meter"):
    values = np.asarray(values, float).reshape(-1, 1)
    t_ns = (start + np.arange(len(values), dtype=np.int64)) * 100_000_000
    flags = np.zeros(values.shape, np.uint8) if flags is None else flags
    return Block(source, t_ns, values, flags)


def test_readings_beyond_the_clamp_are_told_with_how_many_when_and_how_high():
    (doubt,) = told(clamped(40.0), [block([1.0, 39.9, 44.0, np.nan, 52.5, 40.0])])
    assert (doubt.kind, doubt.role) == (DoubtKind.PAST_RANGE, Role.MOTOR_CURRENT)
    assert (doubt.start_ns, doubt.end_ns) == (200_000_000, 400_000_000)
    for words in ("up to 52.5 A", "2 readings", "0.2 s to 0.4 s", "clamp's", "up to 40 A"):
        assert words in doubt.text


def test_the_top_itself_is_within_and_a_reversed_clamp_is_beyond_too():
    assert not told(clamped(40.0), [block([40.0, -40.0])])
    (doubt,) = told(clamped(40.0), [block([-41.0])])
    assert "-41 A" in doubt.text
    assert "one reading beyond, at 0.0 s" in doubt.text


def test_a_clamp_is_full_sooner_where_the_wire_goes_through_several_times():
    assert clamped(40.0, turns=4).top == 10.0
    (doubt,) = told(clamped(40.0, turns=4), [block([9.9, 12.0])])
    assert "up to 10 A with 4 turns through it" in doubt.text


def test_the_meters_widest_range_counts_where_it_is_the_narrower():
    ranges = (Range(6.0, STATED), Range(60.0, STATED))
    (doubt,) = told(clamped(400.0, ranges=ranges), [block([61.0])])
    assert "the meter's widest range ends at 60 A" in doubt.text
    assert not told(clamped(400.0, ranges=ranges), [block([59.0])])


def test_nothing_is_told_of_what_has_no_role_no_top_or_was_typed():
    assert not told(clamped(40.0, role=Role.OTHER), [block([99.0])])
    assert not told(replace(clamped(40.0), sensor=CLAMP), [block([99.0])])
    typed = np.full((2, 1), int(Flag.TYPED), np.uint8)
    assert not told(clamped(40.0), [block([99.0, 98.0], flags=typed)])
    assert not told(clamped(40.0), [block([99.0], source="other")])


@given(
    st.lists(st.one_of(st.floats(-80.0, 80.0), st.just(np.nan)), min_size=1, max_size=60),
    st.data(),
)
def test_the_same_is_told_however_the_blocks_are_cut(values, data):
    cuts = sorted(data.draw(st.sets(st.integers(0, len(values)))) | {0, len(values)})
    parts = [block(values[a:b], start=a) for a, b in pairwise(cuts) if b > a]
    whole = told(clamped(40.0), [block(values)])
    assert told(clamped(40.0), parts) == whole
    assert bool(whole) is any(abs(one) > 40.0 for one in values)


class Behind:
    """The healthy fan read through a clamp that ends somewhere: 13.6 A on high, 3.6 A on low."""

    def __init__(self, fan, top):
        self.fan = fan
        *volts, amps = fan.channels
        fan.channels = (*volts, replace(amps, sensor=replace(CLAMP, own_top=top)))

    def on_high(self, most_a):
        speeds = {**self.fan.limits.speeds, 4: SpeedLimits(2.0, most_a)}
        self.fan.limits = replace(self.fan.limits, speeds=speeds)
        review = self.fan.review()
        (found,) = (
            one for one in review.findings if (one.kind, one.speed) == (FindingKind.STEP_CURRENT, 4)
        )
        return review, found


@pytest.fixture
def behind(trace):
    return lambda top: Behind(trace.Fan(), top)


def test_within_the_clamp_all_is_judged_as_ever(behind):
    review, found = behind(20.0).on_high(18.0)
    assert DoubtKind.PAST_RANGE not in {one.kind for one in review.doubts}
    assert found.verdict is Verdict.PASS


def test_a_motor_is_not_passed_on_what_a_full_clamp_shows(behind):
    review, found = behind(12.0).on_high(18.0)
    assert DoubtKind.PAST_RANGE in {one.kind for one in review.doubts}
    assert found.verdict is Verdict.CANT_TELL
    assert "more than the meter or the clamp is stated for" in found.statement
    low = next(
        one for one in review.findings if (one.kind, one.speed) == (FindingKind.STEP_CURRENT, 1)
    )
    assert low.verdict is Verdict.PASS  # it lies within


def test_a_limit_that_lies_within_the_clamp_is_passed_for_certain(behind):
    # However far off 13.6 A are: more than 12 A flowed, and 9 A are allowed.
    _, found = behind(12.0).on_high(9.0)
    assert found.verdict is Verdict.FAIL


def test_a_limit_beyond_the_clamp_blames_nobody(behind):
    review, found = behind(12.0).on_high(12.5)
    assert found.verdict is Verdict.CANT_TELL
    assert Verdict.FAIL not in {one.verdict for one in review.findings}
