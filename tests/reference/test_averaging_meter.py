"""An averaging meter beside a known open, against a numeric convolution by scipy.

A trade figure beside it: an open of 50 ms in 16.4 A reads 13.7 A at worst in a 0.3 s average.
"""

import numpy as np
import pytest
from scipy import signal

from meterlog.analysis.inferred.open_model import RestartScale, shown

STEP_S = 1e-4
NO_PEAK = RestartScale(1.0, 1.5)


def convolved(open_s, scale, window_s, at_s):
    t = np.arange(-1.0, 2.0, STEP_S) + STEP_S / 2
    away = np.where((t >= -open_s) & (t < 0.0), -1.0, 0.0)
    height = scale.peak(np.array([open_s]))[0]
    away += np.where(t >= 0.0, height * np.exp(-t / scale.settling_s), 0.0)
    box = signal.windows.boxcar(round(window_s / STEP_S))
    return np.interp(at_s, t, signal.fftconvolve(away, box / box.sum(), mode="same"))


@pytest.mark.parametrize("window_s", [0.02, 0.1, 0.3])
@pytest.mark.parametrize("open_s", [0.005, 0.05, 0.4])
@pytest.mark.parametrize("scale", [NO_PEAK, RestartScale(3.8, 1.5), RestartScale(7.0, 3.0)])
def test_the_mean_over_a_window_is_the_convolution_with_a_boxcar(window_s, open_s, scale):
    at_s = np.linspace(-0.5, 1.0, 31)
    told = shown(scale, np.array(open_s), np.array(0.0), at_s, window_s)
    assert told == pytest.approx(convolved(open_s, scale, window_s, at_s), abs=0.01)


def test_fifty_milliseconds_in_a_third_of_a_second_read_as_the_trade_says():
    part = shown(NO_PEAK, np.array(0.05), np.array(0.05), np.array([0.0]), 0.3)[0]
    assert 16.4 * (1.0 + part) == pytest.approx(13.7, abs=0.05)
