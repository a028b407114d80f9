"""A clamp off by ten is asked about also where a dead spot leaves no steady running."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis.clamp_decade import decade_doubts
from meterlog.model import DoubtKind, FindingKind, Fuse, Limits, SpeedLimits, Step, Verdict

LIMITS = Limits(speeds={4: SpeedLimits(10.0, 18.0)})


def step_of(amps, interval_s=0.02, **changes):
    told = {
        "start_ns": 2_000_000_000,
        "end_ns": 2_000_000_000 + round(len(amps) * interval_s * 1e9),
        "n": len(amps),
        "mean_a": float(np.mean(amps)),
        "sd_a": float(np.std(amps, ddof=1)),
        "median_a": float(np.median(amps)),
        "max_a": float(np.max(amps)),
    }
    return Step(speed=4, **(told | changes))


def dying(factor, gone_s, peak=50.0, tau_s=0.1, of_s=2.0):
    """Give a fan that is dead for a part of every two seconds and starts anew each time."""
    t = np.arange(0.0, 18.0, 0.02) % of_s
    running = 13.6 + (peak - 13.6) * np.exp(-t / tau_s)
    return factor * np.where(t < of_s - gone_s, running, 0.0)


@pytest.mark.parametrize("gone_s", [0.3, 1.0, 1.2])
@pytest.mark.parametrize("sign", [1.0, -1.0])
def test_ten_times_the_current_is_asked_about_without_steady_running(gone_s, sign):
    (doubt,) = decade_doubts([step_of(dying(sign * 10.0, gone_s))], LIMITS)
    assert doubt.kind is DoubtKind.DECADE
    assert doubt.factor == 0.1
    assert "1, 10 or 100 mV/A" in doubt.text


@pytest.mark.parametrize("gone_s", [0.3, 1.0, 1.8])
def test_one_start_after_another_is_no_clamp_off_by_ten(gone_s):
    assert not decade_doubts([step_of(dying(1.0, gone_s, peak=110.0, tau_s=0.2))], LIMITS)


def test_a_rotor_that_is_held_again_and_again_is_none():
    assert not decade_doubts([step_of(dying(1.0, 0.3, peak=65.0, tau_s=50.0))], LIMITS)


@pytest.mark.parametrize("speeds", [LIMITS.speeds, {}])
@pytest.mark.parametrize(
    ("times", "words"),
    [
        (10.0, "136 A or 13.6 A? The running current at speed 4 is about ten times"),
        (100.0, "1360 A or 13.6 A? The running current at speed 4 is about a hundred times"),
        (1000.0, "13600 A or 13.6 A? The running current at speed 4 is about a thousand times"),
    ],
)
def test_the_factor_at_which_a_current_fits_is_told_in_numbers_that_are_read(speeds, times, words):
    high = step_of(np.full(100, 13.6 * times), steady_n=100, steady_mean_a=13.6 * times)
    (doubt,) = decade_doubts([high], replace(LIMITS, speeds=speeds))
    assert doubt.text.startswith(words)
    assert doubt.factor == pytest.approx(1.0 / times)
    assert ("milliamperes" in doubt.text) is (times == 1000.0)
    assert ("1, 10 or 100 mV/A" in doubt.text) is (times != 1000.0)
    assert "e+" not in doubt.text


def test_speeds_that_fit_at_several_factors_are_no_clamp_off_by_one():
    steps = [
        step_of(np.full(100, amps), steady_n=100, steady_mean_a=amps) for amps in (40.0, 136.0)
    ]
    limits = Limits(speeds={4: SpeedLimits(3.0, 13.0), 3: SpeedLimits(1.2, 2.0)})
    steps[1] = replace(steps[1], speed=3)
    # 40 A is ten times of what speed 4 may draw, 136 A a hundred times of what speed 3 may.
    (doubt,) = decade_doubts(steps, limits)
    assert doubt.start_ns == steps[1].start_ns
    assert "136 A or 13.6 A" in doubt.text


def test_what_is_as_short_as_a_start_is_none():
    assert not decade_doubts([step_of(np.full(40, 120.0))], LIMITS)
    assert decade_doubts([step_of(np.full(60, 120.0))], LIMITS)


def test_where_it_ran_steadily_that_alone_counts():
    high = step_of(dying(10.0, 0.3), steady_n=200, steady_mean_a=13.6)
    assert not decade_doubts([high], LIMITS)


def test_a_step_without_readings_is_none():
    assert not decade_doubts([Step(speed=4, start_ns=0, end_ns=9_000_000_000)], LIMITS)


@pytest.mark.parametrize("factor", [1.0, 10.0])
def test_such_a_clamp_goes_first_and_proves_no_wrong_fuse(trace, factor):
    fan = trace.Fan(0.02, digit=0.001)
    on = (fan.t_s >= 4.0) & (fan.t_s < 14.0)
    dead = on & (fan.t_s % 2.0 >= 1.7)
    fan.values[on, 2] *= factor
    noise = np.random.default_rng(2).normal(0.0, 0.01, (int(dead.sum()), 2))
    fan.values[dead, 1:] = np.round(noise, 3)
    fan.values[dead, 0] += 0.36  # without a load the feed rises
    fan.limits = replace(fan.limits, fuse=Fuse(30.0), inrush_window_s=2.5)
    review = fan.review()
    (opening,) = (one for one in review.findings if one.kind is FindingKind.FUSE_OPENING)
    assert opening.verdict is not Verdict.FAIL, opening.statement
    first = review.verdict.ranked[0]
    assert (first.part == "measuring" and "mV/A" in first.what) is (factor == 10.0)
