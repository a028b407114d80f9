"""Taps where nothing, little or too much was read."""

import numpy as np
import pytest

from meterlog.analysis.judged import Judged
from meterlog.analysis.levels import Levels
from meterlog.analysis.taps import TapWatch
from meterlog.analysis.taps.gone_readings import GoneReadings
from meterlog.model import Event, EventKind, Instrument, Role

THREE = [(16.0, 20.1), (24.0, 28.1), (31.0, 35.2)]
TAPS = (20.0, 28.0, 35.1)


def test_taps_before_the_first_and_after_the_last_reading_are_told_without_levels(tapped, script):
    legs, events = script([], end=10.0)
    evidence = tapped(legs, (0.0, 60.0), events=events).evidence
    assert [tap.after_a for tap in evidence.taps][1] is None
    assert evidence.tried == 0


def test_a_recording_without_a_reading_gives_evidence_of_nothing(trace):
    meter = Instrument("meter", "test", "-", trace.channels(0.1))
    taps = tuple(Event(t, EventKind.TAP) for t in (1_000_000_000, 5_000_000_000))
    judged = Judged((meter,), trace.limits(), events=taps)
    evidence = TapWatch(trace.limits()).evidence(judged)
    assert (evidence.attempts, evidence.tried, evidence.chance) == (2, 0, None)
    assert evidence.accepted == "can't tell"


def test_without_a_current_channel_there_is_no_evidence(trace):
    meter = Instrument("meter", "test", "-", trace.channels(0.1, ("feed", "return")))
    assert meter.column(Role.MOTOR_CURRENT) is None
    judged = Judged((meter,), trace.limits(), events=(Event(5, EventKind.TAP),))
    assert TapWatch(trace.limits()).evidence(judged) is None


@pytest.mark.parametrize(("interval_s", "window_s"), [(0.33, 0.3), (0.001, 0.0)])
def test_slow_and_fast_meters_say_how_well_the_return_is_known(
    tapped, script, interval_s, window_s
):
    legs, events = script(THREE, end=50.0)
    evidence = tapped(
        legs, TAPS, events=events, interval_s=interval_s, window_s=window_s, leads=(14.0,)
    ).evidence
    assert (evidence.tried, evidence.answered) == (3, 3)
    assert evidence.slowest_edge_s == pytest.approx(interval_s, rel=0.35)
    assert evidence.slowest_s == pytest.approx(0.1, abs=2 * interval_s)
    checks = {check.name: check.verdict.value for check in evidence.checks}
    assert set(checks.values()) - {checks["clamp zero"]} == {"pass"}


def test_taps_far_from_random_on_a_quick_meter_are_less_likely_chance_than_on_a_slow_one(
    tapped, script
):
    legs, events = script(THREE[:2], end=40.0)
    slow = tapped(legs, TAPS[:2], events=events, interval_s=0.5).evidence
    quick = tapped(legs, TAPS[:2], events=events, interval_s=0.02).evidence
    assert quick.chance < slow.chance / 2


def test_missing_readings_beside_a_tap_are_no_return(tapped, trace, script):
    legs, events = script([(10.0, 14.0)], end=30.0)
    legs[-1:] = [trace.Leg(17.0, None, None, None), trace.Leg(30.0, 12.0, 0.16, 13.6)]
    evidence = tapped(legs, (13.9,), events=events).evidence
    assert (evidence.tried, evidence.answered) == (1, 0)


def test_levels_filled_by_somebody_else_are_used_and_not_filled_twice(trace):
    shared = Levels()
    watch = TapWatch(trace.limits(), shared)
    watch.take_rows(None, ())
    assert watch._levels is shared
    assert len(shared) == 0


def test_noise_about_the_limit_takes_no_more_room_than_time(trace):
    from meterlog.analysis.rows import Rows

    readings = GoneReadings(0.3)
    count = 200_000
    t_ns = np.arange(count) * 50_000  # 20,000 readings a second, ten seconds
    amps = np.where(np.arange(count) % 2, 0.29, 0.31)
    everywhere = np.ones(count, np.bool_)
    readings.take(Rows(t_ns, amps, None, None, everywhere, ~everywhere))
    assert readings._count == 100
    assert readings.within(0, 10**10, across=False).n == count // 2
