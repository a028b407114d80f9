"""Each trap of a meter is told where it is, and nowhere else; none of them blames the vehicle."""

from dataclasses import replace
from datetime import UTC, datetime
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis import Reviewer
from meterlog.model import (
    Block,
    Channel,
    DoubtKind,
    Event,
    EventKind,
    FindingKind,
    Flag,
    Instrument,
    Limits,
    Quantity,
    Role,
    Sensor,
    SensorKind,
    SpanKind,
    Verdict,
    Zero,
)
from meterlog.model.zero_text import zero_text

STARTED = datetime(2030, 1, 2, tzinfo=UTC)
ON_HIGH = ((0.0, 0), (3.0, 4))


def doubts(review, kind):
    return [doubt for doubt in review.doubts if doubt.kind is kind]


@pytest.fixture
def fan(trace):
    return trace.Fan()


@pytest.mark.parametrize("seed", range(5))
@pytest.mark.parametrize(("interval_s", "digit"), [(0.02, 0.001), (0.1, 0.01), (0.33, 0.1)])
def test_a_healthy_fan_is_doubted_by_nobody(trace, seed, interval_s, digit):
    review = trace.Fan(interval_s, seed, digit).review()
    assert review.doubts == ()
    assert [f.verdict for f in review.findings] == [Verdict.PASS] * 2


# -- a value that repeats exactly ------------------------------------------------------------------


def test_a_current_on_hold_while_the_motors_voltage_moves_is_told(fan):
    review = fan.hold(2, 10.0, 18.0).review()
    (doubt,) = doubts(review, DoubtKind.STUCK)
    assert "motor-current (meter) read exactly 13." in doubt.text
    assert "the voltage across the motor moved by" in doubt.text
    assert doubt.start_ns == pytest.approx(9.9e9, abs=2e8)
    assert doubt.end_ns == pytest.approx(17.9e9, abs=2e8)


def test_a_feed_on_hold_while_the_current_moves_is_told(fan):
    (doubt,) = doubts(fan.hold(0, 2.0, 8.0).review(), DoubtKind.STUCK)
    assert "motor-feed" in doubt.text
    assert "the current moved by 13" in doubt.text


def test_a_return_on_hold_while_the_current_moves_is_told(fan):
    (doubt,) = doubts(fan.hold(1, 2.0, 8.0).review(), DoubtKind.STUCK)
    assert "motor-return" in doubt.text


def test_a_hold_while_nothing_moves_is_no_trap_that_could_be_seen(fan):
    fan.values[:, 2] = np.round(fan.values[:, 2], 0)  # a coarse clamp that repeats anyhow
    assert not doubts(fan.hold(0, 6.0, 13.0).review(), DoubtKind.STUCK)


def test_a_lively_channel_that_stands_still_far_too_long_is_told_without_any_change(trace):
    fan = trace.Fan(0.02, digit=0.001)
    review = fan.hold(2, 7.0, 13.0).review()
    (doubt,) = doubts(review, DoubtKind.STUCK)
    assert "never repeated more than" in doubt.text
    assert not doubts(trace.Fan(0.02, digit=0.001).hold(2, 7.0, 11.0).review(), DoubtKind.STUCK)


def test_a_coarse_channel_may_repeat_for_long_as_it_always_did(trace):
    fan = trace.Fan(0.02, digit=0.1)
    high = (fan.t_s >= 4.0) & (fan.t_s < 14.0)
    # Another digit once a second; then the same for seven.
    fan.values[high, 2] = 13.5 + 0.1 * np.minimum(np.floor(fan.t_s[high]), 7.0)
    assert not doubts(fan.review(), DoubtKind.STUCK)


def test_a_hold_too_short_to_be_one_is_not_told(fan):
    assert not doubts(fan.hold(2, 13.2, 14.8).review(), DoubtKind.STUCK)


def test_zeros_that_repeat_while_the_fan_is_off_are_as_they_should_be(fan):
    fan.values[fan.t_s < 4.0, 2] = 0.0
    assert fan.review().doubts == ()


def test_with_a_current_alone_the_commands_tell(trace):
    fan = trace.Fan()
    fan.hold(2, 10.0, 18.0)
    fan.channels = fan.channels[2:]
    block = trace.block_of(fan.t_ns, fan.values, columns=(2,))
    (doubt,) = doubts(fan.review([*fan.events, block]), DoubtKind.STUCK)
    assert "speed 1 was commanded at 14.0 s" in doubt.text
    near = trace.Fan()
    near.hold(2, 13.5, 18.0)  # the hand may have been late
    near.channels = near.channels[2:]
    block = trace.block_of(near.t_ns, near.values, columns=(2,))
    assert not doubts(near.review([*near.events, block]), DoubtKind.STUCK)


def test_typed_readings_may_repeat(fan):
    fan.hold(2, 10.0, 18.0)
    block = fan.items()[-1]
    flags = np.asfortranarray(block.flags | np.uint8(Flag.TYPED))
    typed = Block(block.source, block.t_ns, block.values, flags)
    assert not doubts(fan.review([*fan.events, typed]), DoubtKind.STUCK)


# -- factor ten ------------------------------------------------------------------------------------


@pytest.mark.parametrize(("factor", "words"), [(10.0, "ten times"), (0.1, "a tenth of")])
def test_a_clamp_on_the_wrong_decade_is_asked_about(fan, factor, words):
    fan.values[:, 2] *= factor
    fan.limits = replace(fan.limits, locked_current_a=4000.0)
    (doubt,) = doubts(fan.review(), DoubtKind.DECADE)
    assert words in doubt.text
    right = 13.6 * factor
    assert doubt.text.startswith(f"{right:.3g} A or 13.6 A?")


@pytest.mark.parametrize("factor", [0.4, 0.5, 2.0, 2.5, 0.03])
def test_worn_and_odd_motors_are_not_put_down_to_the_clamp(fan, factor):
    fan.values[:, 2] *= factor
    fan.limits = replace(fan.limits, locked_current_a=4000.0, open_current_a=0.05)
    assert not doubts(fan.review(), DoubtKind.DECADE)


def test_one_speed_that_is_right_clears_the_clamp(fan):
    high = (fan.t_s >= 4.0) & (fan.t_s < 14.0)
    fan.values[high, 2] *= 0.1
    assert not doubts(fan.review(), DoubtKind.DECADE)


def test_a_current_that_no_cabin_fan_draws_is_asked_about_without_limits(fan, trace):
    fan.values[:, 2] *= 10.0
    fan.limits = replace(fan.limits, speeds={}, locked_current_a=4000.0)
    assert doubts(fan.review(), DoubtKind.DECADE)
    held = trace.Fan()
    held.values[:, 2] *= 4.5  # 61 A: a held rotor
    held.limits = replace(held.limits, speeds={})
    assert not doubts(held.review(), DoubtKind.DECADE)


# -- signs -----------------------------------------------------------------------------------------


def test_a_clamp_the_wrong_way_round_is_told_with_times_and_judged_all_the_same(fan):
    fan.values[:, 2] *= -1.0
    review = fan.review()
    (doubt,) = doubts(review, DoubtKind.SIGN)
    assert "the clamp is on the wrong way round" in doubt.text
    assert "(4.0 s to 23.9 s)" in doubt.text
    assert [f.verdict for f in review.findings] == [Verdict.PASS] * 2


def test_feed_and_return_swapped_are_told(fan):
    fan.values[:, [0, 1]] = fan.values[:, [1, 0]]
    assert ["feed and return" in d.text for d in doubts(fan.review(), DoubtKind.SIGN)] == [True]


def test_a_feed_that_reads_negative_is_told(fan):
    fan.values[:, 0] *= -1.0
    texts = [d.text for d in doubts(fan.review(), DoubtKind.SIGN)]
    assert any("The feed reads negative" in text for text in texts)


def test_a_clamps_small_negative_zero_is_no_reversed_sign(fan):
    fan.values[:, 2] -= 0.25
    fan.values[fan.t_s < 4.0, 2] = -0.25
    fan.values[:, 1][fan.t_s > 4.0] -= 0.3
    assert not doubts(fan.review(), DoubtKind.SIGN)


# -- a probe that slipped --------------------------------------------------------------------------


def test_a_voltage_that_is_gone_while_the_current_flows_is_the_probes(fan):
    fan.values[(fan.t_s >= 8.0) & (fan.t_s < 10.0), 0] = 0.02
    review = fan.review()
    (doubt,) = doubts(review, DoubtKind.PROBE)
    assert "from 8.0 s to 10.0 s" in doubt.text
    assert "13.6 A flow" in doubt.text
    assert not [f for f in review.findings if f.kind is not FindingKind.STEP_CURRENT]


def test_a_feed_that_is_really_lost_is_not_the_probes(trace):
    legs = [
        trace.Leg(5.0, *trace.NORMAL[4]),
        trace.Leg(6.0, 5.0, 0.0, 0.0),
        trace.Leg(9.0, 0.5, 0.0, 0.0),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert result.spans[-1].kind is SpanKind.FEED_LOST
    assert not doubts(result, DoubtKind.PROBE)


def test_a_sagging_feed_under_a_held_rotor_is_not_the_probes(trace):
    legs = [trace.Leg(4.0, *trace.NORMAL[0]), trace.Leg(9.0, 2.1, 0.2, 40.0)]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(4.0, 4)])
    assert not doubts(result, DoubtKind.PROBE)


# -- what the meters say of themselves -------------------------------------------------------------


def said(kind, at_s, text):
    return Event(round(at_s * 1e9), kind, text, "meter")


def without(fan, start_s, end_s):
    fan.values[(fan.t_s >= start_s) & (fan.t_s < end_s), :] = np.nan
    return fan


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        (EventKind.UNIT, "the meter shows ohm, expected V: was its dial turned?"),
        (EventKind.RANGE, "range 60 V, steps of 0.01 V"),
        (EventKind.DEVICE, "HOLD is on: what it shows is no measurement"),
    ],
)
def test_missing_data_is_put_down_to_what_the_meter_said(fan, kind, text):
    without(fan, 8.0, 10.0)
    review = fan.review([said(kind, 8.0, text), *fan.items()])
    faults = [f for f in review.findings if f.kind is not FindingKind.STEP_CURRENT]
    assert [(f.kind, f.verdict) for f in faults] == [(FindingKind.NO_DATA, Verdict.CANT_TELL)]
    assert text in faults[0].statement
    (span,) = [s for s in review.spans if s.kind is SpanKind.NO_DATA]
    assert text in span.detail


def test_words_from_long_before_explain_no_gap(fan):
    without(fan, 8.0, 10.0)
    early = said(EventKind.RANGE, 5.0, "range 60 V")
    review = fan.review([early, *fan.items()])
    (finding,) = [f for f in review.findings if f.kind is FindingKind.NO_DATA]
    assert "silence, overload or a lost instrument" in finding.statement


def test_blanks_after_a_range_change_are_no_dropouts(fan):
    blank = (fan.t_s >= 4.2) & (fan.t_s < 5.0)
    fan.values[blank, 2] = np.nan
    review = fan.review([said(EventKind.RANGE, 4.1, "range 60 A"), *fan.items()])
    kinds = {s.kind for s in review.spans}
    assert kinds == {SpanKind.OFF, SpanKind.RUNNING, SpanKind.NO_DATA}
    (doubt,) = doubts(review, DoubtKind.RANGE)
    assert "Fix the range" in doubt.text


def test_a_dial_turned_and_turned_back_is_one_doubt(fan):
    events = [
        said(EventKind.UNIT, 6.0, "the meter shows V DC, expected A: was its dial turned?"),
        said(EventKind.UNIT, 8.0, "shows A DC again"),
    ]
    (doubt,) = doubts(fan.review([*events, *fan.items()]), DoubtKind.UNIT)
    assert "meter (at 6.0 s) showed another unit" in doubt.text


def test_a_low_battery_is_told_once_with_its_first_time(fan):
    low = "low battery: its readings can't be trusted much longer"
    events = [
        said(EventKind.DEVICE, 6.0, low),
        said(EventKind.DEVICE, 8.0, "battery is good"),
        said(EventKind.DEVICE, 9.0, low),
    ]
    (doubt,) = doubts(fan.review([*events, *fan.items()]), DoubtKind.BATTERY)
    assert "2 times, first at 6.0 s" in doubt.text
    good = [said(EventKind.DEVICE, 8.0, "battery is good")]
    assert not fan.review([*good, *fan.items()]).doubts


def clamped(fan):
    sensor = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A", own_percent=1.5, own_floor=0.3)
    fan.channels = (*fan.channels[:2], replace(fan.channels[2], sensor=sensor))
    return fan


def zero_event(at_s, offset):
    return said(EventKind.ZERO, at_s, zero_text("current", "A", Zero(offset, 0.01, 30)))


# -- however it is cut -----------------------------------------------------------------------------


@settings(max_examples=40)
@given(data=st.data())
def test_doubts_are_the_same_however_the_data_is_cut(trace, data):
    fan = clamped(trace.Fan()).hold(2, 10.0, 18.0)
    fan.values[(fan.t_s >= 20.0) & (fan.t_s < 21.0), 0] = 0.02
    events = [*fan.events, said(EventKind.RANGE, 6.0, "range 60 A"), zero_event(2.0, 0.1)]
    block = fan.items()[-1]
    whole = fan.review([*events, block], STARTED)
    places = sorted({0, len(block), *data.draw(st.lists(st.integers(0, len(block)), max_size=30))})
    parts = [block.rows(a, b) for a, b in pairwise(places)]
    mixed = []
    for part in parts:
        while events and len(part) and events[0].t_ns <= int(part.t_ns[-1]):
            mixed.append(events.pop(0))
        mixed.append(part)
    instrument = Instrument("meter", "test", "-", fan.channels)
    reviewer = Reviewer([instrument], fan.limits, STARTED)
    for item in [*mixed, *events]:
        reviewer.feed(item)
        reviewer.live()
    cut = reviewer.finish()
    assert {d.kind for d in whole.doubts} == {
        DoubtKind.STUCK,
        DoubtKind.PROBE,
        DoubtKind.ZERO_RANGE,
        DoubtKind.RANGE,
    }
    assert cut.doubts == whole.doubts


def test_a_current_of_no_finite_value_disturbs_nothing():
    channel = Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT)
    reviewer = Reviewer([Instrument("meter", "t", "-", (channel,))], Limits())
    values = np.full((5, 1), np.nan, order="F")
    flags = np.full((5, 1), int(Flag.NO_DATA), np.uint8, order="F")
    reviewer.feed(Block("meter", np.arange(5, dtype=np.int64) * 10**8, values, flags))
    assert reviewer.finish().doubts == ()
