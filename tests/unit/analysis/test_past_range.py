"""What lies beyond the range of a clamp or meter is told, and neither passes nor blames a motor."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis import Reviewer
from meterlog.analysis.past_range import least_mean_a
from meterlog.analysis.past_range_watch import PastRangeWatch
from meterlog.analysis.taken_back import TakenBack
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Doubt,
    DoubtKind,
    FindingKind,
    Instrument,
    Outcome,
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
    watch = PastRangeWatch([Instrument("meter", "test", "-", (channel,))])
    for one in blocks:
        watch.take(one)
    return watch.doubts()


def block(values, start=0, source="meter"):
    values = np.asarray(values, float).reshape(-1, 1)
    t_ns = (start + np.arange(len(values), dtype=np.int64)) * 100_000_000
    return Block(source, t_ns, values, np.zeros(values.shape, np.uint8))


def test_readings_beyond_the_clamp_are_told_with_how_many_when_and_how_high():
    (doubt,) = told(clamped(40.0), [block([1.0, 39.9, 44.0, np.nan, 52.5, 40.0])])
    assert (doubt.kind, doubt.role) == (DoubtKind.PAST_RANGE, Role.MOTOR_CURRENT)
    assert (doubt.start_ns, doubt.end_ns) == (200_000_000, 400_000_000)
    for words in (
        "up to 52.5 A",
        "2 readings",
        "0.2 s to 0.4 s",
        "accuracy of the clamp is stated up to 40 A",
    ):
        assert words in doubt.text


def test_the_top_itself_is_within_and_a_reversed_clamp_is_beyond_too():
    assert not told(clamped(40.0), [block([40.0, -40.0])])
    (doubt,) = told(clamped(40.0), [block([-41.0])])
    assert "-41 A" in doubt.text
    assert "one reading beyond" in doubt.text


def test_a_clamp_is_full_sooner_where_the_wire_goes_through_several_times():
    assert clamped(40.0, turns=4).top == 10.0
    (doubt,) = told(clamped(40.0, turns=4), [block([9.9, 12.0])])
    assert "with 4 turns the accuracy of the clamp is stated up to 10 A" in doubt.text


def test_the_meters_widest_range_counts_where_it_is_the_narrower():
    ranges = (Range(6.0, STATED), Range(60.0, STATED))
    (doubt,) = told(clamped(400.0, ranges=ranges), [block([61.0])])
    assert "the meter's widest range ends at 60 A behind the clamp" in doubt.text
    assert not told(clamped(400.0, ranges=ranges), [block([59.0])])


def test_nothing_is_told_of_what_has_no_role_or_no_top():
    assert not told(clamped(40.0, role=Role.OTHER), [block([99.0])])
    assert not told(replace(clamped(40.0), sensor=CLAMP), [block([99.0])])
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


def test_a_limit_less_than_the_stated_error_below_the_top_is_not_passed_for_certain(behind):
    # 12 A ± 0.08 A of the meter are stated: 11.95 A may be all that flows where more is read.
    _, found = behind(12.0).on_high(11.95)
    assert found.verdict is Verdict.CANT_TELL
    _, found = behind(12.0).on_high(11.9)
    assert found.verdict is Verdict.FAIL


def test_a_pulsed_current_whose_tops_lie_beyond_is_not_passed_by_its_mean(trace):
    """Its mean of 13.6 A lies within; the half of the readings of which it is made does not."""
    behind = Behind(trace.Fan(interval_s=0.004, digit=0.001), 20.0)
    on = behind.fan.values[:, 2] > 10.0
    behind.fan.values[on, 2] += np.where(np.arange(on.sum()) % 2, 10.9, -10.9)
    review, found = behind.on_high(18.0)
    assert found.value == pytest.approx(13.6, abs=0.1)
    assert found.verdict is Verdict.CANT_TELL
    assert review.verdict.outcome is not Outcome.IN_ORDER


def test_what_is_brought_to_another_voltage_passes_no_motor_either(behind):
    """Read beyond the clamp, and by the reference voltage within the limit."""
    one = behind(13.0)
    one.fan.limits = replace(one.fan.limits, at_reference=True, reference_v=9.0)
    _, found = one.on_high(12.9)
    assert found.verdict is Verdict.CANT_TELL


def test_a_current_with_off_commanded_is_an_excess_whatever_the_clamp_shows(trace):
    one = Behind(trace.Fan(), 10.0)
    one.fan.events = [trace.speed(0.0, 0)]  # and never anything else
    review = one.fan.review()
    over = [f for f in review.findings if f.kind is FindingKind.OVER]
    assert over
    assert {f.verdict for f in over} == {Verdict.FAIL}, [f.statement for f in over]


@pytest.mark.parametrize(("held_from_a", "verdict"), [(10.0, Verdict.FAIL), (13.0, None)])
def test_a_held_rotor_is_told_where_it_is_held_within_the_clamps_range(trace, held_from_a, verdict):
    """12 A of clamp, 13.6 A read: more than 10 A for sure, but perhaps not 13 A."""
    one = Behind(trace.Fan(), 12.0)
    one.fan.events = []
    one.fan.limits = replace(one.fan.limits, locked_current_a=held_from_a, speeds={})
    held = [f for f in one.fan.review().findings if f.kind is FindingKind.LOCKED]
    assert held
    assert {f.verdict for f in held} == {verdict or Verdict.CANT_TELL}


def test_the_budget_of_a_reading_beyond_says_what_is_not_in_it(behind):
    review, _ = behind(12.0).on_high(18.0)
    high, low = (next(one for one in review.steps if one.speed == n) for n in (4, 1))
    assert "more than the meter or the sensor is stated for" in high.current.lacking
    assert "stated for" not in low.current.lacking


@given(st.lists(st.integers(0, 3_000_000_000), min_size=1, max_size=40, unique=True))
def test_when_it_was_so_is_told_in_stretches(times):
    """Readings beyond that are a tenth of a second apart at most are one stretch."""
    t_ns = np.array(sorted(times), np.int64)
    values = np.full((len(t_ns), 1), 50.0)
    flags = np.zeros(values.shape, np.uint8)
    (doubt,) = told(clamped(40.0), [Block("meter", t_ns, values, flags)])
    inside = sum(int(((t_ns >= a) & (t_ns <= b)).sum()) for a, b in doubt.parts)
    assert inside == len(t_ns)
    for (_, end), (start, _) in pairwise(doubt.parts):
        assert start - end > 100_000_000
    assert (doubt.parts[0][0], doubt.parts[-1][1]) == (doubt.start_ns, doubt.end_ns)


@given(st.lists(st.floats(0.0, 90.0), min_size=2, max_size=50), st.floats(1.0, 60.0))
def test_the_least_that_flowed_is_never_above_what_did(flowed, top):
    """What lies beyond the range may be read as anything beyond it, up to what flowed."""
    channel = clamped(top)
    surely = top - STATED.half_width(top)
    read = np.array(flowed)
    counted = np.minimum(read, surely)
    least = least_mean_a(channel, float(read.mean()), float(read.std(ddof=1)))
    assert least <= counted.mean() + 1e-9
    if read.std() == 0.0 and read[0] >= top:
        assert least == pytest.approx(surely, abs=1e-9)  # and no less than that, either


@given(st.lists(st.floats(0.0, 90.0), min_size=2, max_size=50), st.floats(1.0, 60.0))
def test_nor_is_it_where_what_lies_within_reads_too_much(flowed, top):
    """Within the range a reading may be off by what is stated, at its top the most."""
    channel = clamped(top)
    off = STATED.half_width(top)
    read = np.array([one + off if one + off < top else 2.0 * top for one in flowed])
    least = least_mean_a(channel, float(read.mean()), float(read.std(ddof=1)))
    assert least <= np.mean(flowed) + 1e-9


@pytest.mark.parametrize("duty", [2, 4, 8])
def test_tops_of_a_pulsed_current_count_however_short_they_are(trace, duty):
    """44 A in one reading of so many, 40 A of clamp: no mean of them passes a motor."""
    behind = Behind(trace.Fan(interval_s=0.004, digit=0.001), 40.0)
    on = behind.fan.values[:, 2] > 10.0
    low = (13.6 * duty - 44.0) / (duty - 1)
    behind.fan.values[on, 2] = np.where(np.arange(on.sum()) % duty, max(low, 1.0), 44.0)
    _, found = behind.on_high(30.0)
    assert found.verdict is Verdict.CANT_TELL


def test_one_stray_reading_beyond_the_range_takes_no_step_back(trace):
    behind = Behind(trace.Fan(interval_s=0.01), 40.0)
    behind.fan.values[np.searchsorted(behind.fan.t_ns, 8_000_000_000), 2] = 41.0
    review, found = behind.on_high(18.0)
    assert DoubtKind.PAST_RANGE in {one.kind for one in review.doubts}
    assert found.verdict is Verdict.PASS


def test_a_fail_that_stands_says_that_its_figure_is_a_floor(behind):
    review, found = behind(12.0).on_high(9.0)
    over = next(one for one in review.findings if one.kind is FindingKind.OVER)
    for one in (found, over):
        assert one.verdict is Verdict.FAIL
        assert "at the least: the reading is more than" in one.statement


def test_a_current_is_brought_to_no_voltage_by_volts_beyond_their_meters_range(trace):
    """A feed meter that is full at 10 V: by it 13.6 A at 12 V would be 18 A, and no motor's."""
    fan = trace.Fan()
    feed, *others = fan.channels
    full = Sensor(own_percent=0.5, own_floor=0.01, own_top=10.0)
    fan.channels = (replace(feed, sensor=full), *others)
    fan.values[:, 0] = np.minimum(fan.values[:, 0], 10.2)
    speeds = {**fan.limits.speeds, 4: SpeedLimits(10.0, 15.0)}
    fan.limits = replace(fan.limits, at_reference=True, reference_v=12.0, speeds=speeds)
    review = fan.review()
    (found,) = (
        one for one in review.findings if (one.kind, one.speed) == (FindingKind.STEP_CURRENT, 4)
    )
    assert found.verdict is Verdict.CANT_TELL
    assert "voltage to bring it to another by" in found.statement


def test_of_a_clamp_of_which_no_error_is_stated_nothing_is_known_for_sure():
    assert least_mean_a(replace(clamped(40.0), accuracy=None), 50.0, 0.1) <= 0.0
    ranges = (Range(40.0, STATED),)
    unsaid = replace(clamped(40.0, ranges=ranges), sensor=Sensor(SensorKind.CLAMP, 100.0))
    assert least_mean_a(unsaid, 50.0, 0.1) <= 0.0


@pytest.mark.parametrize("top", [13.5, 13.6])
def test_looked_at_all_the_while_it_ends_as_when_judged_at_once(trace, top, monkeypatch):
    """Noise crosses the range up and down: there are more stretches than are kept apart."""
    monkeypatch.setattr("meterlog.analysis.past_range_watch._MOST_PARTS", 3)
    fan = Behind(trace.Fan(interval_s=0.1), top).fan
    fan.values[60:64, 2] = 20.0
    fan.values[90:93, 2] = 19.0
    at_once = fan.review()
    assert len(next(d for d in at_once.doubts if d.kind is DoubtKind.PAST_RANGE).parts) == 3
    reviewer = Reviewer([Instrument("meter", "test", "-", fan.channels)], fan.limits)
    events = list(fan.events)
    for first in range(0, len(fan.t_ns), 3):
        rows = slice(first, first + 3)
        while events and events[0].t_ns <= fan.t_ns[rows][-1]:
            reviewer.feed(events.pop(0))
        reviewer.feed(trace.block_of(fan.t_ns[rows], fan.values[rows]))
        reviewer.live()
    assert reviewer.finish() == at_once


@pytest.mark.parametrize("later", [((0, 5), (9, 12)), ((0, 7),)])
def test_what_was_told_before_is_looked_at_again_when_more_lies_beyond(later):
    """A stretch that grows may reach into what was judged before it did."""

    def back(parts):
        doubt = Doubt(DoubtKind.PAST_RANGE, "", 0, 5, "meter", Role.MOTOR_CURRENT, parts=parts)
        return TakenBack([Instrument("meter", "test", "-", (clamped(40.0),))], [doubt])

    assert back(((0, 5),)) == back(((0, 5),))
    assert back(((0, 5),)) != back(later)
