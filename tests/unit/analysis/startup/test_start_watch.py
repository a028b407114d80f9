"""What is told of each start."""

import dataclasses
import math

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meterlog.analysis.startup import StartWatch, peak_words
from meterlog.analysis.startup import capture as capture_file
from meterlog.analysis.startup import start_watch as watch_file
from meterlog.model import Event, EventKind, Limits, Sensor, SensorKind, SpanKind, Step


def starts_of(read, cuts=()):
    return read.show(StartWatch(read.limits), cuts).startups(read.judged())


def test_peak_ratio_settling_and_heat_of_a_plain_start(read, motor, off_then_on):
    one = read(lambda t: motor(t, 2.0), spans=off_then_on)
    (start,) = starts_of(one)
    assert start.t_ns == 2_000_000_000
    assert start.peak_a == pytest.approx(60.0)
    assert start.peak_after_s <= 0.001
    assert start.steady_a == pytest.approx(13.6, rel=1e-4)
    assert start.ratio == pytest.approx(60.0 / 13.6, rel=1e-4)
    # 46.4 exp(-t / 0.1) falls to a tenth of 13.6 A.
    assert start.settle_s == pytest.approx(0.1 * math.log(46.4 / 1.36), abs=start.settle_edge_s)
    assert start.settle_edge_s <= 0.012
    assert start.i2t_s == pytest.approx(1.0, abs=0.002)
    assert not start.peak_floor


def test_the_peak_has_the_uncertainty_of_a_single_reading(read, motor, off_then_on):
    (start,) = starts_of(read(lambda t: motor(t, 2.0), spans=off_then_on))
    assert 0.9 * 0.62 <= start.peak_u_a <= 1.2 * 0.62  # 1 % of 60 A and two digits
    unsaid = read(lambda t: motor(t, 2.0), spans=off_then_on, accuracy=None)
    assert starts_of(unsaid)[0].peak_u_a is None


def test_the_steps_steady_current_is_what_a_start_settles_at(read, motor, off_then_on):
    step = Step(4, 2_000_000_000, 10_000_000_000, steady_n=100, steady_mean_a=-12.0)
    one = read(lambda t: motor(t, 2.0), spans=off_then_on, steps=(step,))
    (start,) = starts_of(one)
    assert start.steady_a == 12.0
    assert start.ratio == pytest.approx(5.0)
    assert start.settle_s is None  # 13.6 A never comes within 10 % of 12 A


def test_the_mean_of_a_step_without_a_speed_is_no_steady_current(read, motor, off_then_on):
    mixed = Step(None, 0, 10_000_000_000, steady_n=100, steady_mean_a=7.0)
    one = read(lambda t: motor(t, 2.0), spans=off_then_on, steps=(mixed,))
    assert starts_of(one)[0].steady_a == pytest.approx(13.6, rel=1e-3)
    found = dataclasses.replace(mixed, found=True)
    one = read(lambda t: motor(t, 2.0), spans=off_then_on, steps=(found,))
    assert starts_of(one)[0].steady_a == 7.0


@pytest.mark.parametrize(
    ("interval_s", "integration_s", "floor"),
    [(0.001, 0.0, False), (0.005, 0.0, False), (0.02, 0.0, True), (0.001, 0.1, True)],
)
def test_slow_or_averaged_readings_show_less_than_the_peak(
    read, motor, off_then_on, interval_s, integration_s, floor
):
    one = read(
        lambda t: motor(t, 2.0),
        spans=off_then_on,
        interval_s=interval_s,
        integration_s=integration_s,
    )
    assert starts_of(one)[0].peak_floor is floor


@pytest.mark.parametrize("times", [2, 3])
def test_rows_that_are_there_twice_are_no_faster_readings(read, motor, off_then_on, times):
    slow = read(lambda t: motor(t, 2.0), spans=off_then_on, interval_s=0.02)
    slow.t_ns, slow.values = np.repeat(slow.t_ns, times), np.repeat(slow.values, times)
    assert starts_of(slow)[0].peak_floor
    fast = read(lambda t: motor(t, 2.0), spans=off_then_on)
    fast.t_ns, fast.values = np.repeat(fast.t_ns, times), np.repeat(fast.values, times)
    assert not starts_of(fast)[0].peak_floor


def test_readings_that_share_coarse_times_are_as_fast_as_they_are(read, motor, off_then_on):
    one = read(lambda t: motor(t, 2.0), spans=off_then_on)
    one.t_ns = one.t_ns // 10_000_000 * 10_000_000
    assert not starts_of(one)[0].peak_floor


def test_an_overload_during_the_start_hides_the_peak(read, motor, off_then_on):
    hidden = read(lambda t: motor(t, 2.0), spans=off_then_on, missing=((2.01, 2.05),))
    assert starts_of(hidden)[0].peak_floor
    before = (
        (SpanKind.OFF, 0.0, 1.95),
        (SpanKind.NO_DATA, 1.95, 2.05),
        (SpanKind.RUNNING, 2.05, 10.0),
    )
    over_it = read(lambda t: motor(t, 2.0), spans=before, missing=((1.95, 2.05),))
    (start,) = starts_of(over_it)
    assert start.peak_floor
    assert start.edge_ns >= 100_000_000
    later = read(lambda t: motor(t, 2.0), spans=off_then_on, missing=((9.0, 9.1),))
    assert not starts_of(later)[0].peak_floor


def test_a_peak_at_the_end_of_a_range_is_a_floor(read, motor, off_then_on):
    whole = starts_of(read(lambda t: motor(t, 2.0), spans=off_then_on))[0]
    cut = starts_of(read(lambda t: np.minimum(motor(t, 2.0), 40.0), spans=off_then_on))[0]
    assert not whole.peak_cut
    assert cut.peak_cut
    assert cut.peak_floor
    assert cut.peak_a == 40.0
    assert cut.steady_a == pytest.approx(whole.steady_a)


def test_a_soft_start_has_no_peak_and_settles_late(read, off_then_on):
    def ramp(t):
        return np.where(t < 2.0, 0.0, 0.5 + 13.1 * np.clip((t - 2.0) / 4.5, 0.0, 1.0))

    (start,) = starts_of(read(ramp, spans=off_then_on))
    assert start.ratio == pytest.approx(1.0, abs=0.01)
    assert start.settle_s == pytest.approx(4.5 * (0.9 * 13.6 - 0.5) / 13.1, abs=0.03)


def test_ripple_and_noise_do_not_keep_a_start_from_settling(read, motor, off_then_on):
    rng = np.random.default_rng(4)

    def rippled(t):
        ripple = 1.0 + 0.25 * np.sin(2.0 * np.pi * 600.0 * t)
        return motor(t, 2.0) * ripple + rng.normal(0.0, 0.05, len(t))

    (start,) = starts_of(read(rippled, spans=off_then_on, interval_s=1e-4))
    assert start.settle_s == pytest.approx(0.1 * math.log(46.4 / 1.36), abs=0.03)


def test_the_cause_is_the_command_the_dropout_or_nothing_known(read, motor):
    dead = ((SpanKind.RUNNING, 0.0, 1.0), (SpanKind.DEAD, 1.0, 2.0), (SpanKind.RUNNING, 2.0, 10.0))

    def dropped(t):
        return np.where(t < 1.0, 13.6, motor(t, 2.0))

    (start,) = starts_of(read(dropped, spans=dead))
    assert (start.cause, start.speed) == ("after a dropout", None)
    command = Event(2_300_000_000, EventKind.SPEED, "3")
    off = ((SpanKind.OFF, 0.0, 2.0), (SpanKind.RUNNING, 2.0, 10.0))
    (start,) = starts_of(read(lambda t: motor(t, 2.0), spans=off, events=(command,)))
    assert (start.cause, start.speed) == ("command", 3)
    (start,) = starts_of(read(lambda t: motor(t, 2.0), spans=off))
    assert start.cause == "not commanded"


def test_a_motor_that_ran_already_and_a_pause_in_the_data_are_no_starts(read):
    spans = (
        (SpanKind.RUNNING, 0.0, 3.0),
        (SpanKind.NO_DATA, 3.0, 4.0),
        (SpanKind.RUNNING, 4.0, 10.0),
    )
    one = read(lambda t: np.full(len(t), 13.6), spans=spans, missing=((3.0, 4.0),))
    assert starts_of(one) == ()


def test_what_comes_after_the_next_command_is_not_this_starts(read, motor, off_then_on):
    def twice(t):
        return np.where(t < 4.0, motor(t, 2.0, 3.6, 9.0), motor(t, 4.0, 13.6, 40.0))

    events = (
        Event(2_000_000_000, EventKind.SPEED, "1"),
        Event(4_000_000_000, EventKind.SPEED, "4"),
    )
    (start,) = starts_of(read(twice, spans=off_then_on, events=events))
    assert start.peak_a == pytest.approx(9.0)
    assert start.steady_a == pytest.approx(3.6, rel=1e-3)


def test_what_comes_after_a_found_change_is_not_this_starts(read, motor, off_then_on):
    def twice(t):
        return np.where(t < 4.5, motor(t, 2.0, 3.6, 9.0), motor(t, 4.5, 13.6, 40.0))

    steps = (
        Step(None, 2_000_000_000, 4_500_000_000, steady_n=9, steady_mean_a=3.6, found=True),
        Step(None, 4_500_000_000, 10_000_000_000, steady_n=9, steady_mean_a=13.6, found=True),
    )
    (start,) = starts_of(read(twice, spans=off_then_on, steps=steps))
    assert start.peak_a == pytest.approx(9.0)
    assert start.settle_s is not None


def test_a_start_cut_short_by_a_dropout_has_a_peak_but_nothing_steady(read, motor):
    spans = (
        (SpanKind.OFF, 0.0, 2.0),
        (SpanKind.RUNNING, 2.0, 2.3),
        (SpanKind.DEAD, 2.3, 5.0),
        (SpanKind.RUNNING, 5.0, 10.0),
    )

    def broken(t):
        return np.where(t < 2.3, motor(t, 2.0), motor(t, 5.0))

    first, second = starts_of(read(broken, spans=spans))
    assert first.peak_a == pytest.approx(60.0)
    assert (first.steady_a, first.ratio, first.settle_s) == (None, None, None)
    assert first.i2t_s == pytest.approx(0.3, abs=0.002)
    assert second.steady_a == pytest.approx(13.6, rel=1e-3)


def test_a_pulsed_feed_is_one_start_not_thousands(read, off_then_on):
    def pulsed(t):
        return np.where((t > 2.0) & (t % 0.0025 < 0.0015), 20.0, 0.0)

    watch = read(pulsed, spans=off_then_on, interval_s=1e-4)
    (start,) = starts_of(watch)
    assert start.steady_a == pytest.approx(12.0, rel=0.02)


def test_of_starts_beyond_the_room_the_figures_are_kept(read, motor, monkeypatch, off_then_on):
    monkeypatch.setattr(watch_file, "MOST_ROWS_KEPT", 10)
    step = Step(4, 2_000_000_000, 10_000_000_000, steady_n=100, steady_mean_a=12.0)
    one = read(lambda t: motor(t, 2.0), end_s=10.0, spans=off_then_on, steps=(step,))
    (start,) = starts_of(one)
    assert start.peak_a == pytest.approx(60.0)
    assert start.settle_s is not None
    assert start.steady_a == pytest.approx(13.6, rel=1e-3)  # its own: the readings are gone


def test_no_more_readings_are_kept_than_stated(read, motor, monkeypatch, off_then_on):
    monkeypatch.setattr(capture_file, "MOST_ROWS", 1500)
    (start,) = starts_of(read(lambda t: motor(t, 2.0), spans=off_then_on))
    assert start.steady_a == pytest.approx(13.6, rel=1e-2)
    assert start.i2t_s == pytest.approx(1.0, abs=0.002)


def test_the_sign_of_the_clamp_does_not_matter(read, motor, off_then_on):
    forward = starts_of(read(lambda t: motor(t, 2.0), spans=off_then_on))
    assert starts_of(read(lambda t: -motor(t, 2.0), spans=off_then_on)) == forward


CHATTER = (
    (SpanKind.OFF, 0.0, 2.0),
    (SpanKind.RUNNING, 2.0, 3.0),
    (SpanKind.DEAD, 3.0, 3.5),
    (SpanKind.RUNNING, 3.5, 10.0),
)


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(cuts=st.lists(st.integers(1, 999), max_size=15))
def test_however_the_rows_are_cut_the_starts_are_the_same(read, motor, cuts):
    def chatter(t):
        again = np.where(t < 3.5, 0.0, motor(t, 3.5))
        return np.where(t < 3.0, motor(t, 2.0), again)

    one = read(
        chatter, interval_s=0.01, spans=CHATTER, missing=((1.97, 2.02), (3.2, 3.25), (4.0, 4.05))
    )
    whole = starts_of(one)
    assert len(whole) == 2
    assert starts_of(one, cuts) == whole


def test_without_limits_of_its_own_the_window_is_that_of_the_profile(read, motor, off_then_on):
    limits = Limits(inrush_window_s=0.5)
    (start,) = starts_of(read(lambda t: motor(t, 2.0), spans=off_then_on, limits=limits))
    assert start.i2t_s == pytest.approx(0.5, abs=0.002)


def test_a_peak_behind_a_clamp_without_a_statement_has_no_uncertainty(read, motor, off_then_on):
    """The meter's alone, 0.04 A of 31 A, would be far too small, with nothing to say so."""
    one = read(lambda t: motor(t, 2.0), spans=off_then_on)
    watch = one.show(StartWatch(one.limits))
    meter = one.instrument
    clamp = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    channel = dataclasses.replace(meter.channels[0], sensor=clamp)
    behind = dataclasses.replace(meter, channels=(channel,))
    (start,) = watch.startups(dataclasses.replace(one.judged(), instruments=(behind,)))
    assert start.peak_u_a is None
    assert peak_words(start).endswith(" A (uncertainty not known)")
    assert peak_words(start).startswith("59.") or peak_words(start).startswith("60.")
