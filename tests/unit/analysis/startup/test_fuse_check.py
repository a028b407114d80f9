"""Verdicts on the fuse."""

import dataclasses

import numpy as np
import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.startup import StartWatch, TimeAbove, fuse_check
from meterlog.model import (
    Accuracy,
    Controller,
    Doubt,
    DoubtKind,
    Event,
    EventKind,
    FindingKind,
    Fuse,
    Limits,
    Role,
    Sensor,
    SensorKind,
    Source,
    SpanKind,
    SpeedLimits,
    Step,
    Verdict,
)

SPEEDS = {1: SpeedLimits(2.0, 5.0), 4: SpeedLimits(10.0, 18.0)}


def limits(rating=30.0, **changes):
    fuse = Fuse(rating, **{k: changes.pop(k) for k in ("kind", "max_load_percent") if k in changes})
    return Limits(inrush_window_s=1.0, fuse=fuse, speeds=SPEEDS, **changes)


def step(amps, u=0.1, speed=4, **changes):
    made = budget("motor current", amps, "A", (Source("meter", u, "A"),))
    base = {
        "start_ns": 3_000_000_000,
        "end_ns": 10_000_000_000,
        "steady_n": 500,
        "steady_mean_a": amps,
    }
    return Step(speed=speed, current=made, **(base | changes))


def checked(one, lim=None):
    lim = lim or one.limits
    starts = one.show(StartWatch(lim)).startups(one.judged())
    above = one.show(TimeAbove([one.instrument], lim)).exceedances()
    return fuse_check(one.judged(), starts, above)


@pytest.fixture
def fan(read, motor, off_then_on):
    def made(amps=None, steps=(), **how):
        base = {"spans": off_then_on, "limits": limits(), "steps": steps}
        return read(amps or (lambda t: motor(t, 2.0, 13.6, 50.0)), **(base | how))

    return made


def test_a_load_below_the_limit_by_more_than_its_uncertainty_passes(fan):
    check, (load, _) = checked(fan(steps=(step(13.6),)))
    assert check.load.value == pytest.approx(100.0 * 13.6 / 30.0)
    assert check.load.expanded == pytest.approx(check.load.coverage * 0.1 / 0.3)
    assert check.load_verdict is Verdict.PASS
    assert check.load_probability is None or check.load_probability > 0.999
    assert (load.kind, load.unit, load.limit, load.speed) == (FindingKind.FUSE_LOAD, "%", 80.0, 4)
    assert "45.3" in load.statement


@pytest.mark.parametrize(
    ("amps", "u", "verdict"),
    [
        (19.8, 0.05, Verdict.PASS),  # 19.8 A on 25 A is 79 %
        (20.2, 0.05, Verdict.FAIL),
        (19.8, 0.3, Verdict.CANT_TELL),
        (20.2, 0.3, Verdict.CANT_TELL),
    ],
)
def test_the_load_is_judged_with_its_uncertainty(fan, amps, u, verdict):
    assert checked(fan(steps=(step(amps, u),), limits=limits(25.0)))[0].load_verdict is verdict


def test_the_strongest_step_of_the_highest_speed_counts(fan):
    steps = (step(22.0, speed=1), step(13.0), step(14.0))
    check, _ = checked(fan(steps=steps))
    assert check.speed == 4
    assert check.load.value == pytest.approx(100.0 * 14.0 / 30.0)


def test_a_lower_speed_proves_nothing_of_the_highest_but_may_fail(fan):
    check, _ = checked(fan(steps=(step(3.6, speed=1),)))
    assert check.load_verdict is Verdict.CANT_TELL
    assert "can't tell, as speed 4 was not run. " in check.words
    assert checked(fan(steps=(step(28.0, speed=1),)))[0].load_verdict is Verdict.FAIL


def test_why_the_highest_speed_tells_nothing_is_said_as_it_was(fan):
    brief = step(13.6, steady_n=0, steady_mean_a=None, n=40)
    check, _ = checked(fan(steps=(step(3.6, speed=1), brief)))
    assert "can't tell, as speed 4 was not run long enough to be steady. " in check.words
    asked = (Event(9_000_000_000, EventKind.SPEED, "4"),)
    check, _ = checked(fan(steps=(step(3.6, speed=1),), events=asked))
    assert "can't tell, as speed 4 was commanded and not read. " in check.words


def test_without_recorded_speeds_a_low_load_is_not_passed(fan):
    check, _ = checked(fan(steps=(step(13.6, speed=None, found=True, proposed_speed=1),)))
    assert check.load_verdict is Verdict.CANT_TELL
    assert "nobody recorded" in check.words


def test_a_mean_over_unknown_speeds_is_no_load(fan):
    check, _ = checked(fan(steps=(step(13.6, speed=None),)))
    assert check.load is None
    assert check.load_verdict is Verdict.CANT_TELL


def test_a_doubted_current_is_not_judged(fan):
    doubt = Doubt(DoubtKind.DECADE, "ten", role=Role.MOTOR_CURRENT, factor=10.0)
    check, _ = checked(fan(steps=(step(28.0),), doubts=(doubt,)))
    assert check.load_verdict is check.nuisance is Verdict.CANT_TELL
    assert "factor of ten" in check.words


def test_without_steady_running_nothing_is_said_of_the_load(fan):
    check, findings = checked(fan())
    assert check.load is None
    assert check.load_verdict is Verdict.CANT_TELL
    assert [one.kind for one in findings] == [FindingKind.FUSE_OPENING]


def test_a_step_without_a_budget_gets_one(fan):
    bare = dataclasses.replace(step(13.6), current=None, steady_sd_a=0.1, steady_lag1_a=0.0)
    check, _ = checked(fan(steps=(bare,)))
    assert check.load.value == pytest.approx(100.0 * 13.6 / 30.0)
    assert check.load.expanded > 0.0


def test_a_healthy_start_cannot_open_a_fuse_that_fits(fan):
    check, (_, opening) = checked(fan(steps=(step(13.6),)))
    assert check.nuisance is Verdict.PASS
    assert opening.kind is FindingKind.FUSE_OPENING
    assert opening.verdict is Verdict.PASS
    by_percent = {row.percent: row for row in check.margins}
    # 36.4 exp(-t / 0.1) + 13.6 A stays at or above 40.5 A (135 % of 30 A) for 30 ms.
    assert by_percent[135.0].longest_s == pytest.approx(0.1 * np.log(36.4 / 26.9), abs=0.006)
    assert by_percent[135.0].margin == pytest.approx(0.75 / by_percent[135.0].longest_s)
    assert by_percent[200.0].margin is None


def test_the_same_start_may_open_a_small_fuse(fan):
    check, _ = checked(fan(steps=(step(13.6),), limits=limits(15.0)))
    assert check.nuisance is Verdict.CANT_TELL
    assert "A sound 15 A blade-medium fuse may open" in check.words
    assert "0.15 to 5 s" in check.words


def test_a_held_rotor_for_longer_than_the_window_proves_another_fuse_or_a_wrong_clamp(fan):
    def held(t):
        return np.where(t < 2.0, 0.0, 62.0)

    check, findings = checked(fan(held))
    assert check.nuisance is Verdict.FAIL
    assert findings[-1].limit == 5.0
    assert findings[-1].value == pytest.approx(8.0, abs=0.05)
    assert "not of that rating or kind" in check.words
    assert "clamp" in check.words


def test_a_held_rotor_that_was_let_go_in_time_is_undecided(fan):
    def held(t):
        return np.where((t < 2.0) | (t > 4.0), 0.0, 62.0)

    spans = ((SpanKind.OFF, 0, 2), (SpanKind.LOCKED, 2, 4), (SpanKind.OFF, 4, 10))
    check, _ = checked(fan(held, spans=spans))
    assert check.nuisance is Verdict.CANT_TELL


def test_a_meter_that_may_read_too_high_proves_no_wrong_fuse(fan):
    def held(t):
        return np.where(t < 2.0, 0.0, 62.0)

    loose = Accuracy(5.0, 0, 0.1, basis="invented")
    assert checked(fan(held, accuracy=loose))[0].nuisance is Verdict.CANT_TELL
    assert checked(fan(held, accuracy=None))[0].nuisance is Verdict.CANT_TELL


def test_behind_a_pulsing_controller_the_motors_current_proves_no_wrong_fuse(fan):
    def held(t):
        return np.where(t < 2.0, 0.0, 62.0)

    check, _ = checked(fan(held, limits=limits(controller=Controller("pulsed"))))
    assert check.nuisance is Verdict.CANT_TELL
    assert "pulses" in check.words


def test_a_slow_meter_does_not_pass_a_peak_it_could_not_see(fan, motor):
    def later(t):
        return np.where(t < 2.2, 0.0, motor(t, 2.0, 13.6, 50.0))

    slow = fan(later, interval_s=0.5, steps=(step(13.6),))
    check, _ = checked(slow)
    assert check.nuisance is Verdict.CANT_TELL
    assert "too slow" in check.words
    assert "5 ms" in check.words
    # Of a fuse that bears five times the steady current for half a second, it may.
    large = fan(later, interval_s=0.5, steps=(step(13.6),), limits=limits(60.0, kind="blade-large"))
    assert checked(large)[0].nuisance is Verdict.PASS


def test_a_peak_at_the_end_of_a_range_passes_no_fuse_it_might_open(fan, motor):
    small = limits(15.0, max_load_percent=95.0)
    cut = fan(
        lambda t: np.minimum(motor(t, 2.0, 13.6, 50.0), 20.0), steps=(step(13.6),), limits=small
    )
    check, _ = checked(cut)
    assert check.nuisance is Verdict.CANT_TELL
    assert "end of a range" in check.words
    assert "too slow" not in check.words


def test_limits_without_a_fuse_and_recordings_without_current(fan):
    assert checked(fan(limits=Limits())) == (None, ())
    check, _ = checked(fan(lambda t: np.full(len(t), np.nan)))
    assert check.nuisance is Verdict.CANT_TELL


def test_the_reader_is_told_which_rows_nobody_compared(fan):
    assert "not all of them compared" in checked(fan())[0].words
    large = fan(limits=limits(40.0, kind="blade-large"))
    assert "not all of them compared" not in checked(large)[0].words
    assert all(row.basis[:2] in ("C:", "M:") for row in checked(fan())[0].margins)


def _behind_a_clamp(one, sensor):
    meter = one.instrument
    channel = dataclasses.replace(meter.channels[0], sensor=sensor)
    judged = dataclasses.replace(
        one.judged(), instruments=(dataclasses.replace(meter, channels=(channel,)),)
    )
    above = one.show(TimeAbove([meter], one.limits)).exceedances()
    return fuse_check(judged, (), above)[0]


def test_a_clamp_of_which_nobody_said_how_good_it_is_passes_no_load_beside_its_limit(fan):
    """2 % + 0.3 A, as usual clamps have, turn 79 % of 30 A into more than 80 %."""
    high, low = fan(steps=(step(23.7, u=0.01),)), fan(steps=(step(13.6, u=0.01),))
    bare = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    check = _behind_a_clamp(high, bare)
    assert check.load_verdict is Verdict.CANT_TELL
    assert "could turn the verdict over" in check.words
    assert check.load_probability < 0.9
    assert _behind_a_clamp(high, Sensor()).load_verdict is Verdict.PASS
    assert _behind_a_clamp(low, bare).load_verdict is Verdict.PASS


def test_starts_one_after_another_add_up_in_the_fuse(fan, motor):
    """Each by itself is carried; what is left of the heat of several is nobody's pass."""

    def twice(t):
        return np.where(t < 6.0, motor(t, 2.0, 13.6, 50.0), motor(t, 6.5, 13.6, 50.0))

    def spans(*starts):
        kinds = []
        for begin, end in starts:
            kinds += [(SpanKind.OFF, begin - 0.5, begin), (SpanKind.RUNNING, begin, end)]
        return tuple(kinds)

    rating = 25.0
    alone, _ = checked(fan(spans=spans((2.0, 10.0)), limits=limits(rating)))
    assert alone.nuisance is Verdict.PASS, alone.words
    both, _ = checked(fan(twice, spans=spans((2.0, 6.0), (6.5, 10.0)), limits=limits(rating)))
    assert both.nuisance is Verdict.CANT_TELL
    assert "2 starts" in both.words
    larger, _ = checked(fan(twice, spans=spans((2.0, 6.0), (6.5, 10.0)), limits=limits(40.0)))
    assert larger.nuisance is Verdict.PASS


def test_a_step_of_several_levels_is_no_load(fan):
    rippled = step(13.6, steady_sd_a=3.0, steady_lag1_a=0.5)
    assert checked(fan(steps=(rippled,)))[0].load_verdict is Verdict.PASS
    check, _ = checked(fan(steps=(step(13.6, steady_sd_a=3.0, steady_lag1_a=0.995),)))
    assert check.load_verdict is Verdict.CANT_TELL
    assert "several speeds" in check.words
