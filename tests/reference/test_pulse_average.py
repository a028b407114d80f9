"""Average, duty and frequency of pulses, against a published bench test of meters.

Square pulses between 0 and 10 V read as DC 5.00, 1.00 and 9.00 V at 50, 10 and 90 % duty (bench
test of hand-held meters, restated).
"""

import numpy as np
import pytest
from scipy import signal

from meterlog.analysis.inferred.page import Page
from meterlog.analysis.inferred.pulses import pulses

RATE_HZ = 20_011.0


def page(volts, rate_hz=RATE_HZ):
    count = len(volts)
    t_ns = np.round(np.arange(count) / rate_hz * 1e9).astype(np.int64)
    none, yes = np.full(count, np.nan), np.ones(count, bool)
    return Page(t_ns, np.full(count, 4.0), volts, none, np.full(count, 2.0), ~yes, yes, 0, count)


@pytest.mark.parametrize(("duty", "average_v"), [(0.5, 5.00), (0.1, 1.00), (0.9, 9.00)])
@pytest.mark.parametrize("frequency_hz", [20.0, 100.0, 400.0])
def test_the_average_is_what_a_dc_meter_shows(frequency_hz, duty, average_v):
    t = np.arange(24_000) / RATE_HZ
    wave = 5.0 + 5.0 * signal.square(2.0 * np.pi * frequency_hz * t + 1.0, duty)
    told = pulses(page(wave))
    assert told.sum_v / told.n == pytest.approx(average_v, abs=0.02 + 10.0 * frequency_hz / RATE_HZ)
    assert told.on_s / told.time_s == pytest.approx(duty, abs=frequency_hz / RATE_HZ)
    assert told.periods / told.time_s == pytest.approx(frequency_hz, rel=2e-3)
    assert told.sum_on_v / told.n_on == pytest.approx(10.0)


def test_a_steady_voltage_with_hum_is_no_pulse():
    t = np.arange(24_000) / RATE_HZ
    assert pulses(page(12.0 + 0.4 * np.sin(2.0 * np.pi * 100.0 * t))) is None


def test_a_sine_however_large_is_no_pulse():
    t = np.arange(24_000) / RATE_HZ
    assert pulses(page(6.0 + 6.0 * np.sin(2.0 * np.pi * 100.0 * t))) is None
