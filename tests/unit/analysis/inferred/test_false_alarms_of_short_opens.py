"""Noise, drift and outliers over ten hours: at most one false alarm."""

import numpy as np
import pytest
from scipy.signal import lfilter

from meterlog.analysis.inferred.short_opens import ShortOpens
from meterlog.analysis.judged import Judged

TEN_HOURS_S = 36_000.0


def noise(kind, count, rng):
    plain = rng.normal(0.0, 0.08, count)
    if kind == "reddened":
        return lfilter([0.44], [1.0, -0.9], plain) + 0.3 * plain
    if kind == "beat":
        return 0.5 * plain + 0.11 * np.sin(1.234 * np.arange(count))
    if kind == "drift":
        return plain + np.cumsum(rng.normal(0.0, 0.0016, count))
    if kind == "outliers":
        return rng.standard_t(4, count) * 0.05
    return plain


def alarms(bench, kind, interval_s, window_s, digit=0.01):
    count = int(TEN_HOURS_S / interval_s)
    rng = np.random.default_rng(11)
    amps = np.round((8.0 + noise(kind, count, rng)) / digit) * digit
    instruments = [bench.instrument(interval_s, window_s, digit=digit)]
    events = (bench.speed(0.0, 4),)
    block = bench.block(np.arange(count) * interval_s, [amps])
    follower = bench.follow(ShortOpens(instruments, bench.limits()), instruments, [*events, block])
    return follower.found(Judged(tuple(instruments), bench.limits(), events=events))


@pytest.mark.parametrize("kind", ["plain", "reddened", "beat", "drift"])
@pytest.mark.parametrize(("interval_s", "window_s"), [(0.4, 0.3), (0.1, 0.1)])
def test_ten_hours_of_noise_give_no_more_than_one_alarm(bench, kind, interval_s, window_s):
    assert len(alarms(bench, kind, interval_s, window_s).inferred) <= 1


def test_ten_hours_of_a_quick_meter_give_no_more_than_one_alarm(bench):
    assert len(alarms(bench, "plain", 0.02, 0.02).inferred) <= 1


def test_a_meter_with_outliers_is_found_out_and_said(bench):
    found = alarms(bench, "outliers", 0.4, 0.3)
    assert len(found.inferred) <= 2  # without a look at the tails it is over a hundred
    assert any("outliers" in note for note in found.notes)


def test_a_coarse_display_gives_no_alarm(bench):
    assert not alarms(bench, "plain", 0.4, 0.3, digit=0.1).inferred
