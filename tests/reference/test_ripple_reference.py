"""Ripple analysis against published rules and values, and against scipy.signal."""

import math

import numpy as np
import pytest
from scipy import signal, stats

from meterlog.analysis.ripple.counts import Count
from meterlog.analysis.ripple.flaws import Odd, bars_of
from meterlog.analysis.ripple.line import find_line, levelled
from meterlog.analysis.ripple.outliers import chance_beside, critical_ratio, outliers
from meterlog.analysis.ripple.plausible import may_be_image
from meterlog.analysis.ripple.tracking import track
from meterlog.analysis.ripple.windows import window_of

# B. Rosner's 54 values, Technometrics 25 (1983) 165, as printed in the NIST/SEMATECH e-Handbook of
# Statistical Methods, 1.3.5.17.3 (from memory): three outliers at 5 %, ten looked for.
ROSNER = """-0.25 0.68 0.94 1.15 1.20 1.26 1.26 1.34 1.38 1.43 1.49 1.49 1.55 1.56 1.58 1.65 1.69
1.70 1.76 1.77 1.81 1.91 1.94 1.96 1.99 2.06 2.09 2.10 2.14 2.15 2.23 2.24 2.26 2.35 2.37 2.40 2.47
2.54 2.62 2.64 2.90 2.92 2.92 2.93 3.21 3.26 3.30 3.59 3.68 4.30 4.64 5.34 5.42 6.01"""


@pytest.mark.parametrize(
    ("brushes", "bars", "ripples"),
    [(2, 3, 6), (2, 5, 10), (2, 7, 14), (2, 8, 8), (2, 10, 10), (2, 12, 12), (4, 12, 12),
     (4, 11, 44), (4, 14, 28)],
)  # fmt: skip
def test_ripples_a_turn_are_the_least_common_multiple(brushes, bars, ripples):
    # Rule in the header of a driver that counts a motor's ripples: least common multiple of
    # brushes and segments; six for three segments is a motor maker's own figure.
    assert Count(brushes, bars).ripples == ripples


@pytest.mark.parametrize(("bars", "hertz"), [(10, 500.0), (12, 600.0)])
def test_three_thousand_turns_a_minute_give_the_published_frequencies(bars, hertz):
    # Common practice, computed: ripples a turn times turns a minute over 60.
    assert Count(2, bars).ripples * 3000.0 / 60.0 == hertz


def test_the_three_outliers_of_rosner_are_found_and_no_fourth():
    values = np.array([float(word) for word in ROSNER.split()])
    assert len(values) == 54
    found = outliers(values, 10, 0.05)
    assert values[found].tolist() == [6.01, 5.42, 5.34]


@pytest.mark.parametrize(
    ("number", "printed"),
    [(1, 3.158), (2, 3.151), (3, 3.143), (4, 3.136), (5, 3.128), (6, 3.120), (7, 3.111),
     (8, 3.103), (9, 3.094), (10, 3.085)],
)  # fmt: skip
def test_critical_ratios_are_those_printed_for_54_values(number, printed):
    # The same page of the handbook (from memory).
    assert critical_ratio(54, number, 0.05) == pytest.approx(printed, abs=1.5e-3)


def test_the_chance_of_a_further_value_is_that_of_students_t():
    # scipy.stats as referee.
    others = np.array([1.0, 1.2, 0.9, 1.1, 1.3, 0.8])
    t = (2.5 - others.mean()) / (others.std(ddof=1) * math.sqrt(1.0 + 1.0 / 6.0))
    expected = 12 * 2.0 * stats.t.sf(t, 5)
    assert chance_beside(2.5, others, 12) == pytest.approx(expected, rel=1e-9)


def rectified(rate_hz, hertz, seconds=0.8, seed=1):
    """Humps of a full-wave rectified sine, made from their phase alone, with noise."""
    t = np.arange(round(seconds * rate_hz)) / rate_hz
    noise = np.random.default_rng(seed).normal(0.0, 0.05, len(t))
    return t, 14.0 + np.abs(np.sin(np.pi * hertz * t)) + noise


@pytest.mark.parametrize(("rate_hz", "hertz"), [(5e3, 137.3), (1e4, 612.7), (2e4, 2311.1)])
def test_the_frequency_is_that_of_scipys_periodogram(rate_hz, hertz):
    # scipy.signal.periodogram, padded sixteenfold; its highest peak above 100 Hz by find_peaks.
    t, amps = rectified(rate_hz, hertz)
    freq, power = signal.periodogram(amps, rate_hz, "hann", nfft=16 * len(amps))
    peaks, _ = signal.find_peaks(np.where(freq > 100.0, power, 0.0))
    scipy_hz = freq[peaks[np.argmax(power[peaks])]]
    window = window_of(np.round(t * 1e9).astype(np.int64), amps, None)
    tracked = track(window)
    assert scipy_hz == pytest.approx(hertz, abs=0.5)
    assert tracked.hz == pytest.approx(scipy_hz, abs=0.3)
    assert tracked.hz == pytest.approx(hertz, rel=5e-4)


def test_a_chirp_is_followed_as_its_phase_says():
    # scipy.signal.chirp: instantaneous frequency 600 to 640 Hz, linear.
    rate_hz = 1e4
    t = np.arange(8000) / rate_hz
    amps = 14.0 + 0.5 * signal.chirp(t, 600.0, 0.8, 640.0)
    tracked = track(window_of(np.round(t * 1e9).astype(np.int64), amps, None))
    expected = 600.0 + 50.0 * tracked.t_s
    inner = slice(1, -1)
    assert tracked.track_hz[inner] == pytest.approx(expected[inner], abs=1.5)
    assert tracked.track_hz[-2] > tracked.track_hz[1] + 10.0


def test_white_noise_has_no_line():
    rng = np.random.default_rng(5)
    for _ in range(20):
        amps = 14.0 + rng.normal(0.0, 0.3, 8000)
        assert find_line(levelled(amps, 1e4), 1e4) is None


def test_images_are_where_the_sampling_theorem_puts_them():
    # f and rate - f give the same samples; the fastest plausible ripple is 3450 Hz.
    assert may_be_image(2_600.0, 6_000.0)
    assert not may_be_image(1_000.0, 6_000.0)
    assert not may_be_image(2_600.0, 10_000.0)


@pytest.mark.parametrize(
    ("brushes", "bars", "bar"),
    [(2, 12, 0), (2, 12, 3), (2, 9, 0), (2, 9, 3), (2, 21, 4), (4, 11, 0), (4, 11, 5), (4, 14, 5)],
)
def test_every_passage_of_one_bar_is_that_bar(brushes, bars, bar):
    # Brush k of B stands k/B of a turn further on (geometry): bar b is under it at ripple
    # b N/Z + k N/B.
    count = Count(brushes, bars)
    turn, wide = count.ripples, count.ripples // count.bars
    places = {(bar * wide + k * turn // count.brushes) % turn for k in range(count.brushes)}
    assert {count.bar_at(place) for place in places} == {bar}
    first = [Odd(k * turn // count.brushes, 0.6, 1e-9) for k in range(count.brushes)]
    second = [Odd(place, 0.5, 1e-9) for place in sorted(places)]
    every = first if bar == 0 else first + second
    assert [flaw.bar for flaw in bars_of(every, turn, count)] == sorted({1, bar + 1})
