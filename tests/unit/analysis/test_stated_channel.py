"""What is known of how well a channel was read: its ranges, its zeros, its sensor.

The figures are invented.
"""

from dataclasses import replace

import pytest

from meterlog.analysis.stated_channel import StatedChannel, without_own
from meterlog.model import (
    Accuracy,
    Channel,
    Event,
    EventKind,
    FindingKind,
    Instrument,
    Quantity,
    Range,
    Role,
    Sensor,
    SensorKind,
    Zero,
)
from meterlog.model.zero_text import zero_text

SECOND = 1_000_000_000
# The meter's 0.5 % + 3 and 2 digits, with the clamp's own 1 % + 0.1 A added.
NARROW, WIDE = Accuracy(1.5, 3, 0.01, 0.1, basis="n"), Accuracy(1.5, 2, 0.1, 0.1, basis="w")
RANGES = (Range(60.0, NARROW), Range(600.0, WIDE))
CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A", own_percent=1.0, own_floor=0.1)


def channel(**changes):
    plain = Channel(
        "amps", Quantity.CURRENT, Role.MOTOR_CURRENT, accuracy=WIDE, ranges=RANGES, sensor=CLAMP
    )
    return replace(plain, **changes)


def stated(*events, **changes):
    known = StatedChannel(Instrument("clamp", "test", "-", (channel(**changes),)), 0)
    for event in events:
        known.take(event)
    return known


def zero_taken(at_s, offset, scatter=0.06, count=9, source="clamp"):
    text = zero_text("amps", "A", Zero(offset, scatter, count))
    return Event(round(at_s * SECOND), EventKind.ZERO, text, source)


def range_said(at_s, words):
    return Event(round(at_s * SECOND), EventKind.RANGE, words, "clamp")


def at(known, value, start_s, end_s):
    return known.at(value, round(start_s * SECOND), round(end_s * SECOND))


def test_the_scatter_of_the_zero_is_known_with_its_degrees_of_freedom():
    found = at(stated(zero_taken(3.0, 0.2)), 5.0, 4.0, 9.0)
    assert found.zero_u == pytest.approx(0.06 / 3.0)
    assert found.zero_degrees == 8.0
    assert found.zero_offset == 0.2


def test_what_was_read_before_the_zero_was_taken_does_not_have_its_scatter():
    known = stated(zero_taken(3.0, 0.2))
    assert at(known, 5.0, 0.0, 3.0).zero_u == 0.0
    assert at(known, 5.0, 2.0, 4.0).zero_u > 0.0  # of several the worst


def test_the_zero_of_another_meter_or_channel_is_not_this_ones():
    assert at(stated(zero_taken(3.0, 0.2, source="volts")), 5.0, 4.0, 9.0).zero_u == 0.0
    other = zero_text("volts", "V", Zero(0.2, 0.06, 9))
    known = stated(Event(3 * SECOND, EventKind.ZERO, other, "clamp"))
    assert at(known, 5.0, 4.0, 9.0).zero_u == 0.0


def test_a_kept_zero_counts_from_the_beginning_and_a_typed_one_has_no_scatter():
    assert at(stated(zero=Zero(0.1, 0.06, 9)), 5.0, 0.0, 1.0).zero_u == pytest.approx(0.02)
    assert at(stated(zero=Zero(0.1), offset=0.1), 5.0, 0.0, 1.0).zero_u == 0.0


def test_a_clamp_that_drifted_is_unsure_by_so_much_in_between_and_only_there():
    known = stated(zero_taken(3.0, 0.1, 0.0), zero_taken(20.0, 0.4, 0.0))
    assert at(known, 5.0, 4.0, 9.0).drift == pytest.approx(0.3)
    assert at(known, 5.0, 21.0, 25.0).drift == 0.0
    assert at(known, 5.0, 0.0, 2.0).drift == 0.0  # nothing is known of before the first


def test_a_range_the_meter_named_holds_from_then_on_though_the_value_would_fit_a_narrower():
    known = stated(range_said(5.0, "range 6 V, steps of 0.001 V"))  # 600 A behind the clamp
    assert at(known, 5.0, 6.0, 9.0).range_top == 600.0
    assert at(known, 5.0, 0.0, 4.0).range_top == 60.0
    assert at(known, 5.0, 4.0, 6.0).range_top == 600.0  # the worst of both


def test_a_range_named_and_left_again_no_longer_counts():
    known = stated(range_said(5.0, "range 6 V, steps"), range_said(8.0, "range 0.6 V, steps"))
    assert at(known, 5.0, 9.0, 12.0).range_top == 60.0


def test_the_range_is_chosen_by_what_the_meter_shows_not_by_what_is_left_after_the_zero():
    assert at(stated(offset=0.5, zero=Zero(0.5)), 59.8, 0.0, 1.0).range_top == 600.0
    assert at(stated(), 59.8, 0.0, 1.0).range_top == 60.0


def test_beyond_the_widest_range_the_widest_holds_and_without_ranges_the_one_statement():
    assert at(stated(), 900.0, 0.0, 1.0).range_top == 600.0
    plain = at(stated(ranges=()), 5.0, 0.0, 1.0)
    assert (plain.range_top, plain.meter.resolution) == (None, 0.1)
    assert at(stated(ranges=(), accuracy=None), 5.0, 0.0, 1.0).meter is None


def test_the_meters_own_statement_is_what_is_left_without_the_sensors():
    meter = at(stated(), 5.0, 0.0, 1.0).meter
    assert (meter.percent_of_reading, meter.floor, meter.digits) == (0.5, 0.0, 3)
    assert without_own(NARROW, replace(CLAMP, own_percent=None)) is NARROW
    # 2.7 - 2.2 leaves a trace of binary fractions
    odd = without_own(Accuracy(2.7, 3, 0.01, 0.3), replace(CLAMP, own_percent=2.2, own_floor=0.1))
    assert (odd.percent_of_reading, odd.floor) == (0.5, 0.2)


def test_what_lacks_is_told_until_it_is_known():
    unsaid = replace(CLAMP, own_percent=None, own_floor=None)
    known = stated(sensor=unsaid)
    assert known.lacking == " (the clamp's own error and zero not in)"
    known.take(zero_taken(1.0, 0.1))
    assert known.lacking == " (the clamp's own error not in)"
    assert stated().lacking == " (the clamp's zero not in)"
    assert stated(zero=Zero(0.0, 0.01, 9)).lacking == ""
    assert stated(zero=Zero(0.2), offset=0.2).lacking == ""
    assert stated(sensor=Sensor()).lacking == ""
    shunt = Sensor(SensorKind.SHUNT, 1000.0, words="100 A/100 mV")
    assert stated(sensor=shunt).lacking == " (the shunt's own error not in)"


def test_the_version_grows_with_what_is_learnt_and_only_then():
    known = stated()
    known.take(Event(0, EventKind.NOTE, "range 6 V, steps"))
    known.take(range_said(1.0, "range 7 V, steps"))  # the channel has no such range
    assert known.version == 0
    known.take(range_said(1.0, "range 6 V, steps"))
    known.take(zero_taken(2.0, 0.1))
    assert known.version == 2


def test_a_zero_taken_at_the_end_widens_what_a_live_look_told_before(trace):
    fan = trace.Fan()
    fan.values[(fan.t_s >= 8.0) & (fan.t_s < 10.0)] = (12.4, 0.02, 0.0)
    first = zero_text("current", "A", Zero(0.0, 0.0, 9))
    last = zero_text("current", "A", Zero(0.15, 0.0, 9))
    items = [Event(0, EventKind.ZERO, first, "meter"), *fan.items()]
    end = Event(23 * SECOND, EventKind.ZERO, last, "meter")
    reviewer = trace.Reviewer([trace.Instrument("meter", "test", "-", fan.channels)], fan.limits)
    for item in items:
        reviewer.feed(item)
    before = next(f for f in reviewer.live().findings if f.kind is FindingKind.DEAD)
    reviewer.feed(end)
    reviewer.live()
    after = next(f for f in reviewer.finish().findings if f.kind is FindingKind.DEAD)
    assert before.expanded_uncertainty == pytest.approx(0.95 * 0.02, rel=0.01)
    # Two rectangles of 0.02 A and 0.15 A: the drift dominates.
    wide = 0.95 * (0.15**2 + 0.02**2) ** 0.5
    assert after.expanded_uncertainty == pytest.approx(wide, rel=0.01)


@pytest.mark.parametrize("own", [None, 1.0])
def test_a_figure_behind_a_clamp_of_unknown_accuracy_says_so_beside_the_figure(trace, own):
    fan = trace.Fan()
    sensor = replace(CLAMP, own_percent=own)
    fan.channels = (
        *fan.channels[:2],
        replace(fan.channels[2], sensor=sensor, zero=Zero(0.0, 0.01, 9)),
    )
    words = [f.statement for f in fan.review().findings if f.kind is FindingKind.STEP_CURRENT]
    assert len(words) == 2
    assert all(("(the clamp's own error not in)" in text) is (own is None) for text in words)
