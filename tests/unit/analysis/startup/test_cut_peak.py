"""A peak that is cut off at the end of a range is told from one that only looks flat."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.startup.cut_peak import is_cut


def start(step_a=0.01, *, interval_s=0.001, peak=60.0, steady=13.6, tau_s=0.1, rise_s=0.004):
    """Give the current of a start as a meter with so large a last digit reads it."""
    t = np.arange(0.0, 2.0, interval_s)
    amps = steady + (peak - steady) * np.exp(-t / tau_s) * (1.0 - np.exp(-t / rise_s))
    return np.round((amps + 0.3) / step_a) * step_a


def cut_at(amps, top_a):
    return np.minimum(amps, top_a)


@given(
    st.sampled_from([0.001, 0.01, 0.1]),
    st.floats(0.0002, 0.005),
    st.floats(0.02, 0.5),
    st.floats(0.001, 0.02),
)
def test_a_peak_that_was_seen_is_none(step_a, interval_s, tau_s, rise_s):
    assert not is_cut(start(step_a, interval_s=interval_s, tau_s=tau_s, rise_s=rise_s))


@given(
    st.sampled_from([0.001, 0.01, 0.1]),
    st.floats(0.0002, 0.002),
    st.floats(0.1, 0.5),
    st.floats(0.5, 0.8),
)
def test_one_that_was_cut_off_is(step_a, interval_s, tau_s, part):
    amps = start(step_a, interval_s=interval_s, tau_s=tau_s)
    assert is_cut(cut_at(amps, part * float(amps.max())))


@given(st.integers(1, 400), st.sampled_from([0.001, 0.01, 0.1]))
def test_a_round_peak_that_a_coarse_meter_reads_flat_is_none(half, step_a):
    """However many readings it is flat for: a parabola, rounded to the meter's last digit."""
    at = np.arange(-20 * half, 20 * half + 1)
    amps = np.round((100.0 - 0.45 * step_a * (at / half) ** 2) / step_a) * step_a
    assert not is_cut(amps)


@pytest.mark.parametrize("times", [4, 10, 100])
def test_readings_of_a_slow_clamp_that_are_passed_on_several_times_are_not(times):
    assert not is_cut(np.repeat(start()[::times], times))


@pytest.mark.parametrize("count", [6, 8, 10])
def test_one_of_few_readings_with_a_slow_fall_behind_it_is_told_too(count):
    """Fifty readings a second: the eight after the top are a slope, with no small step in it."""
    t = np.arange(0.0, 5.0, 0.02)
    noise = np.random.default_rng(3).normal(0.0, 0.01, len(t))
    amps = np.round(3.7 * (1.0 + 2.2 * np.exp(-t / 0.6)) + noise, 3)
    assert is_cut(cut_at(amps, amps[count - 1]))
    assert not is_cut(amps)


def test_the_finer_digits_of_a_lower_range_cut_no_peak_that_is_round():
    at = np.arange(-400, 401)
    peak = np.round(60.0 - 0.045 * (at / 20) ** 2, 1)
    after = np.round(5.0 + 0.001 * np.arange(200), 2)
    assert not is_cut(np.concatenate((peak, after)))


def test_a_soft_start_that_ends_at_its_highest_is_none():
    t = np.arange(0.0, 6.0, 0.001)
    assert not is_cut(np.round(0.5 + 13.1 * np.clip(t / 4.5, 0.0, 1.0), 2))
    noisy = np.random.default_rng(1).normal(13.6, 0.02, 5000)
    assert not is_cut(np.round(noisy, 2))


@pytest.mark.parametrize("amps", [[5.0], [5.0, 5.0], [5.0] * 50, [1.0, 2.0, 1.0]])
def test_too_little_tells_nothing(amps):
    assert not is_cut(np.array(amps))
