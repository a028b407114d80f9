"""The envelope equals numpy's nanmin and nanmax over the readings themselves."""

import warnings

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.recording import Envelope


def _direct(t_ns, values, t0, t1, pixels):
    edges = np.ceil(np.linspace(t0, t1, pixels + 1))
    low, high = np.full(pixels, np.nan), np.full(pixels, np.nan)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", RuntimeWarning)  # all-NaN pixels
        for k in range(pixels):
            inside = values[(t_ns >= edges[k]) & (t_ns < edges[k + 1])]
            if len(inside):
                low[k], high[k] = np.nanmin(inside), np.nanmax(inside)
    return low, high


def _fed(t_ns, values, sizes):
    envelope = Envelope()
    start = 0
    while start < len(t_ns):
        for size in sizes:
            envelope.append(t_ns[start : start + size], values[start : start + size])
            start += size
    return envelope


@given(
    st.integers(0, 5000),
    st.lists(st.integers(1, 700), min_size=1, max_size=4),
    st.integers(1, 60),
    st.floats(-0.2, 1.1),
    st.floats(0.001, 1.2),
    st.integers(0, 2**32),
)
def test_any_window_is_exact_however_the_readings_came(count, sizes, pixels, begin, part, seed):
    rng = np.random.default_rng(seed)
    t_ns = np.cumsum(rng.integers(0, 3, count)).astype(np.int64)
    values = rng.normal(0, 5, count)
    values[rng.random(count) < 0.1] = np.nan
    values[count // 3 : count // 2] = np.nan
    length = int(t_ns[-1]) if count else 100
    t0 = int(length * begin)
    t1 = t0 + max(1, int(length * part))
    columns = _fed(t_ns, values, sizes).query(t0, t1, pixels)
    low, high = _direct(t_ns, values, t0, t1, pixels)
    np.testing.assert_array_equal(columns.low, low)
    np.testing.assert_array_equal(columns.high, high)


def test_a_single_spike_among_a_million_readings_is_in_the_picture():
    values = np.zeros(1_000_000)
    values[654_321] = -3.0
    envelope = _fed(np.arange(1_000_000), values, [65_536])
    columns = envelope.query(0, 1_000_000, 1000)
    assert np.flatnonzero(columns.low < 0).tolist() == [654]
    assert columns.high.max() == 0.0


def test_the_pyramid_takes_less_than_four_percent_of_the_readings_room():
    envelope = _fed(np.arange(300_000), np.ones(300_000), [10_000])
    assert envelope.cells * 2 / len(envelope) < 0.04


def test_a_window_of_nothing_is_refused():
    with pytest.raises(ValueError, match="no window"):
        Envelope().query(5, 5, 10)
    with pytest.raises(ValueError, match="no window"):
        Envelope().query(0, 5, 0)
    assert np.isnan(Envelope().query(0, 5, 3).low).all()
