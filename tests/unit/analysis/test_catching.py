"""The chance that a short dropout is told, against the detector itself and against closed forms."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.catching import Pace, Threshold, caught
from meterlog.analysis.detector import SpanDetector
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.visibility import (
    PaceSeen,
    catch_chances,
    read_beside,
    running_levels,
    shortest_visible_s,
)
from meterlog.model import Block, Channel, Instrument, Quantity, Role, SpanKind, Step

NOTHING_KNOWN = Threshold()


def chance(length_s, interval_s, window_s, dwell_s, threshold=NOTHING_KNOWN):
    return float(caught((length_s,), Pace((interval_s,)), window_s, dwell_s, threshold)[0])


def meter(interval_s, integration_s=0.0):
    return Channel(
        "amps",
        Quantity.CURRENT,
        Role.MOTOR_CURRENT,
        interval_s=interval_s,
        integration_s=integration_s,
    )


@pytest.mark.parametrize("part", [0.1, 0.45, 0.8, 1.0, 1.3])
def test_without_averaging_a_reading_falls_into_a_dropout_by_the_part_of_the_interval(part):
    assert chance(part * 0.1, 0.1, 0.0, 0.05) == pytest.approx(min(part, 1.0), abs=0.01)


@pytest.mark.parametrize("length", [0.08, 0.12, 0.15, 0.25])
def test_of_an_averaging_meter_a_whole_averaging_time_must_lie_inside(length):
    expected = min(max((length - 0.1) / 0.1, 0.0), 1.0)
    assert chance(length, 0.1, 0.1, 0.05) == pytest.approx(expected, abs=0.01)


def test_a_threshold_above_nothing_is_reached_sooner():
    # Gone below a fifth: four fifths of the averaging time inside are enough, at both ends.
    expected = (0.12 + 0.1 - 2.0 * 0.8 * 0.1) / 0.1
    assert chance(0.12, 0.1, 0.1, 0.0, Threshold(0.2, 0.21)) == pytest.approx(expected, abs=0.01)
    assert chance(0.079, 0.1, 0.1, 0.0, Threshold(0.2, 0.21)) == 0.0


def test_readings_left_out_lower_the_chance_by_the_time_they_leave_unseen():
    # Half of the gaps are double: a third of the time is sure to be seen, the rest half the time.
    pace = Pace((0.1, 0.2), (1.0, 1.0))
    told = caught((0.1,), pace, 0.0, 0.0, NOTHING_KNOWN)[0]
    assert told == pytest.approx(2.0 / 3.0, abs=0.02)


@settings(max_examples=40)
@given(
    interval_s=st.floats(0.002, 0.6),
    part=st.floats(0.0, 1.0),
    dwell_s=st.floats(0.0, 0.5),
    threshold=st.floats(0.0, 0.4),
)
def test_the_shortest_that_is_sure_is_sure_and_shorter_ones_are_no_likelier(
    interval_s, part, dwell_s, threshold
):
    channel = meter(interval_s, part * interval_s)
    sure = shortest_visible_s(channel, dwell_s)
    lengths = tuple(np.linspace(0.05, 1.0, 8) * sure)
    window_s = part * interval_s
    found = caught(lengths, Pace((interval_s,)), window_s, dwell_s, Threshold(threshold, threshold))
    assert found[-1] == 1.0
    assert (np.diff(found) >= -0.01).all()
    assert ((found >= 0.0) & (found <= 1.0)).all()


CASES = {
    "one reading is as long as the dwell": (0.1, 0.0, 0.04, 0.06, 4),
    "three readings make the dwell": (0.02, 0.0, 0.05, 0.05, 4),
    "averaging all the time": (0.1, 0.1, 0.04, 0.15, 4),
    "averaging all the time, a low current": (0.1, 0.1, 0.04, 0.13, 1),
    "averaging for half the time, dwell in between": (0.02, 0.01, 0.04, 0.045, 4),
    "the dwell longer than the dropout": (0.02, 0.004, 0.08, 0.07, 4),
    "never": (0.3, 0.3, 0.04, 0.2, 4),
}


@pytest.mark.parametrize("case", CASES.values(), ids=CASES.keys())
def test_the_chance_is_the_detectors_own(trace, case):
    interval, window, dwell, length, speed = case
    count, apart = 120, 2.5
    rng = np.random.default_rng(5)
    legs = []
    for number in range(count):
        start = 2.0 + number * apart + float(rng.uniform(0.0, 0.5))
        legs += [
            trace.Leg(start, *trace.NORMAL[speed]),
            trace.Leg(start + length, *trace.DEAD),
        ]
    legs.append(trace.Leg(3.0 + count * apart, *trace.NORMAL[speed]))
    lim = trace.limits(min_dwell_s=dwell)
    instrument = Instrument("meter", "test", "-", trace.channels(interval))
    detector = SpanDetector([instrument], lim, SpeedTimeline())
    detector.feed(trace.speed(0.0, speed))
    detector.feed(trace.block_of(*trace.sample(legs, interval, window_s=window)))
    detector.finish()
    told = sum(piece.kind is SpanKind.DEAD for piece in detector.pieces()) / count
    amps = trace.NORMAL[speed][2]
    open_a = lim.open_current_a
    threshold = Threshold(open_a / amps, open_a * (1.0 + lim.hysteresis) / amps)
    said = chance(length, interval, window, dwell, threshold)
    deviation = np.sqrt(max(said * (1.0 - said), 0.01) / count)
    assert told == pytest.approx(said, abs=3.0 * deviation)


def test_where_another_meter_reads_the_voltage_the_chance_is_the_detectors_too(trace):
    """The current's return is then told by two readings alone: some spans come out shorter."""
    interval, window, dwell, length, count = 0.0187, 0.0175, 0.04, 0.05, 120
    rng = np.random.default_rng(5)
    legs = []
    for number in range(count):
        start = 2.0 + number * 2.5 + float(rng.uniform(0.0, 0.5))
        legs += [trace.Leg(start, *trace.NORMAL[4]), trace.Leg(start + length, *trace.DEAD)]
    legs.append(trace.Leg(3.0 + count * 2.5, *trace.NORMAL[4]))
    lim = trace.limits(min_dwell_s=dwell)
    channels = trace.channels(interval)
    (place,) = [k for k, one in enumerate(channels) if one.role is Role.MOTOR_CURRENT]
    rest = [k for k in range(len(channels)) if k != place]
    amps = Instrument("amps", "test", "-", (channels[place],))
    volts = Instrument("volts", "test", "-", tuple(channels[k] for k in rest))
    assert read_beside([amps, volts], "amps")
    assert not read_beside([Instrument("one", "test", "-", channels)], "one")
    whole = trace.block_of(*trace.sample(legs, interval, window_s=window))
    other = trace.block_of(*trace.sample(legs, 0.0141, window_s=0.0026))
    detector = SpanDetector([amps, volts], lim, SpeedTimeline())
    detector.feed(trace.speed(0.0, 4))
    detector.feed(Block("amps", whole.t_ns, whole.values[:, [place]], whole.flags[:, [place]]))
    detector.feed(Block("volts", other.t_ns, other.values[:, rest], other.flags[:, rest]))
    detector.finish()
    gone = (SpanKind.DEAD, SpanKind.NO_CURRENT)
    starts = [piece.start_ns for piece in detector.pieces() if piece.kind in gone]
    told = len({round(start / 2.5e9) for start in starts}) / count
    open_a = lim.open_current_a
    back = open_a * (1.0 + lim.hysteresis)
    threshold = Threshold(open_a / trace.NORMAL[4][2], back / trace.NORMAL[4][2])
    chances = [
        float(caught((length,), Pace((interval,), (1.0,), beside), window, dwell, threshold)[0])
        for beside in (False, True)
    ]
    assert chances[0] > 0.99
    assert told == pytest.approx(chances[1], abs=3.0 * np.sqrt(0.25 / count))
    assert told < 0.9


def test_readings_all_at_one_instant_have_no_pace():
    seen = PaceSeen("meter", 0, meter(0.1))
    seen.take(Block("meter", np.zeros(9, np.int64), np.ones((9, 1)), np.zeros((9, 1), np.uint8)))
    assert seen.pace is None


def test_the_pace_is_what_came_however_it_was_cut():
    rng = np.random.default_rng(3)
    t_ns = np.cumsum(rng.choice((100_000_000, 104_000_000, 200_000_000), 300, p=(0.7, 0.2, 0.1)))
    values = np.ones((300, 1), order="F")
    block = Block("meter", t_ns, values, np.zeros((300, 1), np.uint8, order="F"))

    def pace(*cuts):
        seen = PaceSeen("meter", 0, meter(0.1))
        for first, last in zip((0, *cuts), (*cuts, 300), strict=True):
            seen.take(block.rows(first, last))
        return seen.pace

    whole = pace()
    assert whole.gaps_s == pytest.approx((0.1, 0.104, 0.2))
    assert sum(whole.shares) == 299
    assert pace(1, 2, 77, 200) == whole


def test_before_the_second_reading_there_is_no_pace():
    assert PaceSeen("meter", 0, meter(0.1)).pace is None


def test_the_levels_are_of_steps_that_ran_and_the_chance_is_their_mean(trace):
    lim = trace.limits()
    fast, slow = (
        Step(4, 0, 1, steady_n=30, steady_mean_a=-15.0),
        Step(1, 1, 2, steady_n=10, steady_mean_a=3.0),
    )
    levels = running_levels(lim, [slow, Step(0, 2, 3, steady_n=9, steady_mean_a=0.01), fast])
    assert [(one.gone, count) for one, count in levels] == [
        (pytest.approx(0.02), 30.0),
        (pytest.approx(0.1), 10.0),
    ]
    channel = meter(0.18, 0.18)
    both, first, last = (
        {one.duration_s: one.chance for one in catch_chances(channel, 0.04, part)}
        for part in (levels, levels[:1], levels[1:])
    )
    assert first[0.2] < last[0.2]
    assert both[0.2] == pytest.approx(0.75 * first[0.2] + 0.25 * last[0.2])


def test_without_any_step_only_readings_without_current_count():
    found = {one.duration_s: one.chance for one in catch_chances(meter(0.18, 0.18), 0.04)}
    assert found[0.2] == pytest.approx(0.02 / 0.18, abs=0.01)
