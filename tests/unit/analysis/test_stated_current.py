"""What the uncertainty of a current is made of, worked by hand.

Source of the rules: JCGM 100:2008, 4.2.3 (mean of n readings: s / sqrt(n)), 4.3.7 (half-width a
of a rectangle: a / sqrt(3)), 5.1.2 (root of the sum of squares), G.4.1 (effective degrees of
freedom). The figures are invented.
"""

import math
from dataclasses import replace

import pytest
from scipy import stats

from meterlog.analysis import uncertainty_of_mean
from meterlog.analysis.stated_current import StatedCurrent
from meterlog.analysis.uncertainty import Stated
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
NARROW, WIDE = Accuracy(0.5, 3, 0.01, basis="n"), Accuracy(0.5, 2, 0.1, basis="w")
RANGES = (Range(60.0, NARROW), Range(600.0, WIDE))
CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A", own_percent=1.0, own_floor=0.1)


def channel(**changes):
    plain = Channel(
        "amps", Quantity.CURRENT, Role.MOTOR_CURRENT, accuracy=WIDE, ranges=RANGES, sensor=CLAMP
    )
    return replace(plain, **changes)


def current(*events, **changes):
    known = StatedCurrent([Instrument("clamp", "test", "-", (channel(**changes),))])
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


def test_the_scatter_of_the_zero_is_part_of_it():
    stated = at(current(zero_taken(3.0, 0.2)), 5.0, 4.0, 9.0)
    assert stated.zero_u == pytest.approx(0.06 / 3.0)
    u = uncertainty_of_mean(5.0, 4, 0.02, None, stated)
    # a = 0.5 % of 5 A + 3 x 0.01 A = 0.055 A
    by_hand = math.sqrt(0.055**2 / 3 + 0.02**2 / 4 + 0.06**2 / 9)
    assert u.expanded / u.coverage == pytest.approx(by_hand, rel=1e-12)
    degrees = by_hand**4 / (0.01**4 / 3 + 0.02**4 / 8)
    assert u.coverage == pytest.approx(stats.t.ppf(0.97725, degrees), rel=0.006)


def test_a_zero_of_three_wild_readings_widens_more_than_its_share():
    few = uncertainty_of_mean(0.0, 100, 0.001, None, Stated(None, 0.1, 2.0))
    assert few.coverage == pytest.approx(stats.t.ppf(0.97725, 2), rel=0.006)


def test_what_was_read_before_the_zero_was_taken_does_not_have_its_scatter():
    known = current(zero_taken(3.0, 0.2))
    assert at(known, 5.0, 0.0, 3.0).zero_u == 0.0
    assert at(known, 5.0, 2.0, 4.0).zero_u > 0.0  # of several the worst


def test_the_zero_of_another_meter_is_not_this_ones():
    assert at(current(zero_taken(3.0, 0.2, source="volts")), 5.0, 4.0, 9.0).zero_u == 0.0


def test_a_kept_zero_counts_from_the_beginning_and_a_typed_one_has_no_scatter():
    assert at(current(zero=Zero(0.1, 0.06, 9)), 5.0, 0.0, 1.0).zero_u == pytest.approx(0.02)
    assert at(current(zero=Zero(0.1), offset=0.1), 5.0, 0.0, 1.0).zero_u == 0.0


def test_a_clamp_that_drifted_is_unsure_by_a_rectangle_of_that_half_width_in_between():
    known = current(zero_taken(3.0, 0.1, 0.0), zero_taken(20.0, 0.4, 0.0))
    stated = at(known, 5.0, 4.0, 9.0)
    assert stated.drift == pytest.approx(0.3)
    u = uncertainty_of_mean(5.0, 4, 0.0, None, stated)
    assert u.expanded == pytest.approx(2.0 * math.sqrt((0.055**2 + 0.3**2) / 3), rel=1e-9)
    assert at(known, 5.0, 21.0, 25.0).drift == 0.0
    assert at(known, 5.0, 0.0, 2.0).drift == 0.0  # nothing is known of before the first


def test_a_range_the_meter_named_holds_from_then_on_though_the_value_would_fit_a_narrower():
    known = current(range_said(5.0, "range 6 V, steps of 0.001 V"))  # 600 A behind the clamp
    assert at(known, 5.0, 6.0, 9.0).accuracy is WIDE
    assert at(known, 5.0, 0.0, 4.0).accuracy is NARROW
    assert at(known, 5.0, 4.0, 6.0).accuracy is WIDE  # the worst of both


def test_a_range_named_and_left_again_no_longer_counts():
    known = current(range_said(5.0, "range 6 V, steps"), range_said(8.0, "range 0.6 V, steps"))
    assert at(known, 5.0, 9.0, 12.0).accuracy is NARROW


def test_the_range_is_chosen_by_what_the_meter_shows_not_by_what_is_left_after_the_zero():
    assert at(current(offset=0.5, zero=Zero(0.5)), 59.8, 0.0, 1.0).accuracy is WIDE
    assert at(current(), 59.8, 0.0, 1.0).accuracy is NARROW


def test_without_a_current_channel_nothing_is_stated():
    assert StatedCurrent([]).at(1.0, 0, 1) == Stated(None)


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
    assert after.expanded_uncertainty**2 == pytest.approx(
        before.expanded_uncertainty**2 + (2.0 * 0.15) ** 2 / 3, rel=0.01
    )


@pytest.mark.parametrize("own", [None, 1.0])
def test_a_figure_behind_a_clamp_of_unknown_accuracy_says_so_beside_the_figure(trace, own):
    fan = trace.Fan()
    sensor = replace(CLAMP, own_percent=own)
    fan.channels = (*fan.channels[:2], replace(fan.channels[2], sensor=sensor))
    words = [f.statement for f in fan.review().findings if f.kind is FindingKind.STEP_CURRENT]
    assert all(("(the clamp's own error not in)" in text) is (own is None) for text in words)
