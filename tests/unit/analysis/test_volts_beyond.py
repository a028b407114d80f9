"""Voltages that can't be on the circuit are told, and prove nothing."""

import dataclasses

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis import Reviewer
from meterlog.analysis.volts_beyond import beyond_doubts
from meterlog.model import (
    DoubtKind,
    FindingKind,
    Instrument,
    Limits,
    Outcome,
    Role,
    SpeedLimits,
    Step,
    Verdict,
)

ROLES = {
    "steady_battery_v": Role.BATTERY,
    "steady_feed_v": Role.MOTOR_FEED,
    "steady_back_v": Role.MOTOR_RETURN,
    "steady_command_v": Role.COMMAND,
}


def step(at_s=2.0, **volts):
    return Step(4, round(at_s * 1e9), round((at_s + 8.0) * 1e9), **volts)


@pytest.mark.parametrize("name", ROLES)
def test_a_decimal_point_left_out_is_told_with_its_channel_and_time(name):
    (doubt,) = beyond_doubts([step(**{name: 126.0}), step(10.0)], Limits())
    assert (doubt.kind, doubt.role) == (DoubtKind.BEYOND, ROLES[name])
    assert (doubt.start_ns, doubt.end_ns) == (2_000_000_000, 10_000_000_000)
    for words in ("126 V", "2.0 s to 10.0 s", "at most 18 V", "decimal point"):
        assert words in doubt.text


@given(st.floats(-300.0, 300.0), st.sampled_from([12.0, 24.0]), st.sampled_from(sorted(ROLES)))
def test_just_what_lies_beyond_half_as_much_again_is_told(volts, nominal_v, name):
    limits = dataclasses.replace(Limits(), nominal_v=nominal_v)
    told = beyond_doubts([step(**{name: volts})], limits)
    assert bool(told) is (abs(volts) > 1.5 * nominal_v)


@pytest.mark.parametrize("feed_v", [20.0, 25.1, 28.4, 32.0])
@pytest.mark.parametrize("name", ["steady_feed_v", "steady_battery_v"])
def test_a_supply_of_24_v_under_limits_of_12_is_asked_about_as_such(name, feed_v):
    (doubt,) = beyond_doubts([step(**{name: feed_v})], Limits())
    assert doubt.kind is DoubtKind.NOMINAL
    assert "Is it a 24 V vehicle?" in doubt.text
    assert "decimal point" in doubt.text


@pytest.mark.parametrize(
    ("nominal_v", "volts"),
    [
        (12.0, {"steady_feed_v": 19.0}),
        (12.0, {"steady_feed_v": 33.0}),
        (12.0, {"steady_feed_v": 126.0}),
        # The battery has 12 V: it is the feed's divider.
        (12.0, {"steady_feed_v": 25.0, "steady_battery_v": 12.6}),
        # Nobody read the supply.
        (12.0, {"steady_back_v": 25.0}),
        (24.0, {"steady_feed_v": 37.0}),
    ],
)
def test_what_is_no_supply_of_24_v_is_not(nominal_v, volts):
    limits = dataclasses.replace(Limits(), nominal_v=nominal_v)
    (doubt,) = beyond_doubts([step(**volts)], limits)
    assert doubt.kind is DoubtKind.BEYOND
    assert "24 V vehicle" not in doubt.text


def test_thousands_of_volts_are_written_to_be_read():
    (doubt,) = beyond_doubts([step(steady_feed_v=12_563.4)], Limits())
    assert "read 12563 V" in doubt.text


def under_24_v(trace):
    """A sound fan of a truck, under limits of a car: half the current at twice the voltage."""
    made = trace.Fan()
    made.values[:, :2] *= 2.0
    made.values[:, 2] /= 2.0
    return made


def test_limits_of_another_vehicle_prove_nothing(trace):
    review = under_24_v(trace).review()
    assert {one.kind for one in review.doubts} == {DoubtKind.NOMINAL}
    judged = [f for f in review.findings if f.kind in (FindingKind.STEP_CURRENT, FindingKind.UNDER)]
    assert {f.kind for f in judged} == {FindingKind.STEP_CURRENT, FindingKind.UNDER}
    assert {f.verdict for f in judged} == {Verdict.CANT_TELL}
    assert all("a 24 V vehicle" in f.statement for f in judged)
    assert review.verdict.outcome is Outcome.CANT_TELL
    assert review.verdict.ranked[0].part == "measuring"
    assert "Is it a 24 V vehicle?" in review.verdict.paragraph


def test_under_its_own_limits_the_same_fan_is_judged(trace):
    made = under_24_v(trace)
    speeds = {4: SpeedLimits(5.0, 9.0), 1: SpeedLimits(1.0, 2.5)}
    made.limits = dataclasses.replace(made.limits, nominal_v=24.0, speeds=speeds)
    review = made.review()
    assert review.doubts == ()
    assert review.verdict.outcome is Outcome.IN_ORDER


@pytest.mark.parametrize("cut", [3, 17])
def test_a_live_review_asks_the_same_however_the_readings_come(trace, cut):
    made = under_24_v(trace)
    whole = made.review()
    *events, block = made.items()
    reviewer = Reviewer([Instrument("meter", "test", "-", made.channels)], made.limits, None)
    for event in events:
        reviewer.feed(event)
    live = []
    for first in range(0, len(block), cut):
        reviewer.feed(block.rows(first, min(first + cut, len(block))))
        live = reviewer.live().doubts
    assert [one.kind for one in live] == [one.kind for one in whole.doubts]
    finished = reviewer.finish()
    assert finished.doubts == whole.doubts
    said = [(one.verdict, one.statement) for one in whole.findings]
    assert [(one.verdict, one.statement) for one in finished.findings] == said
    assert finished.verdict == whole.verdict


def test_nothing_is_in_order_beside_volts_that_can_not_be(trace):
    """Millivolts taken for volts: the currents pass; what else was stated wrong nobody knows."""
    made = trace.Fan()
    made.values[:, :2] *= 1000.0
    review = made.review()
    assert DoubtKind.BEYOND in {one.kind for one in review.doubts}
    assert review.verdict.outcome is Outcome.CANT_TELL
    assert "Nothing was found wrong" not in review.verdict.paragraph


def test_each_channel_is_told_once_with_its_largest():
    steps = [step(2.0, steady_feed_v=120.0), step(10.0, steady_feed_v=125.0, steady_battery_v=12.6)]
    (doubt,) = beyond_doubts(steps, Limits())
    assert "125 V" in doubt.text
    assert doubt.end_ns == 18_000_000_000
