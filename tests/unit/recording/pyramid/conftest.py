"""Recordings with a pyramid, and what must be true of one."""

import sys
from datetime import UTC, datetime
from itertools import pairwise

import numpy as np
import pytest

from meterlog.model import (
    About,
    Block,
    Channel,
    Instrument,
    Limits,
    Origin,
    Quantity,
    Role,
)
from meterlog.recording import (
    PyramidUnusable,
    Recorder,
    kept_pyramid,
)
from meterlog.recording import pyramid_writer as writing


@pytest.fixture(scope="session")
def pyramids():
    """Give the functions of this file."""
    return sys.modules[__name__]


def readings(rows, seed, channels=2, pace_ns=None):
    rng = np.random.default_rng(seed)
    t_ns = np.cumsum(rng.integers(0, 3, rows)).astype(np.int64)
    if pace_ns is not None:
        t_ns = np.arange(rows) * pace_ns
    for at in rng.integers(0, max(rows, 1), 3):
        t_ns[at:] += int(rng.integers(0, max(rows, 1)))  # silences
    values = np.asfortranarray(rng.normal(0, 5, (rows, channels)))
    values[rng.random(rows) < 0.05, 0] = np.nan
    values[rows // 3 : rows // 2, 1] = np.nan
    return t_ns, values


def record(folder, about, t_ns, values, sizes):
    recorder = Recorder.create(folder, about, keep_raw=False)
    start, number = 0, 0
    while start < len(t_ns):
        stop = min(start + sizes[number % len(sizes)], len(t_ns))
        flags = np.where(np.isnan(values[start:stop]), 2, 0).astype(np.uint8)
        recorder.take(Block("bench", t_ns[start:stop], values[start:stop], flags))
        recorder.flush()
        start, number = stop, number + 1
    recorder.close()
    return folder


def expect(pyramid, t_ns, values, edges, channels):
    bounds = np.searchsorted(t_ns, edges)
    found = [pyramid.rows_before(int(edges[k])) for k in (0, -1)]
    assert found == [bounds[0], bounds[-1]]
    pixels = pyramid.pixels(edges, *found, channels)
    by_rows = pyramid.pixels_by_rows(edges, *found, channels)
    np.testing.assert_array_equal(by_rows.low, pixels.low)
    np.testing.assert_array_equal(by_rows.high, pixels.high)
    np.testing.assert_array_equal(by_rows.has_rows, pixels.has_rows)
    for k, (first, last) in enumerate(pairwise(bounds)):
        assert pixels.has_rows[k] == (last > first)
        inside = values[first:last, channels]
        low = np.where(np.isnan(inside), np.inf, inside).min(axis=0, initial=np.inf)
        high = np.where(np.isnan(inside), -np.inf, inside).max(axis=0, initial=-np.inf)
        np.testing.assert_array_equal(pixels.low[:, k], low)
        np.testing.assert_array_equal(pixels.high[:, k], high)


@pytest.fixture(autouse=True)
def own_cache(monkeypatch, tmp_path_factory):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))


@pytest.fixture
def short(monkeypatch):
    monkeypatch.setattr(writing, "SHORT", 0)


@pytest.fixture(scope="module")
def about_two():
    channels = (
        Channel("ch0", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=1e-9),
        Channel("ch1", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=1e-9),
    )
    return About(
        recording_id="3f0a5a0e-9d5a-4d5e-8a43-0f5a3c0e9d11",
        started_utc=datetime(2026, 5, 4, tzinfo=UTC),
        local_offset_s=0,
        zero_ns=0,
        program="meterlog test",
        origin=Origin.MEASURED,
        instruments=(Instrument("bench", "invented", "-", channels),),
        limits=Limits(),
    )


def asked(folder, about, t_ns, values):
    """Ask for much; what comes back is right, or there is no pyramid. Tell which."""
    try:
        pyramid = kept_pyramid(folder, about, about.instruments[0])
        for begin, end, pixels in ((0.0, 1.0, 7), (0.1, 0.9, 40), (0.32, 0.35, 9), (0.97, 1.0, 3)):
            edges = np.linspace(begin * t_ns[-1], end * t_ns[-1], pixels + 1).astype(np.int64)
            expect(pyramid, t_ns, values, edges, [0, 1])
        times, found = pyramid.read(0, pyramid.rows)
    except PyramidUnusable:
        return False
    np.testing.assert_array_equal(times, t_ns)
    np.testing.assert_array_equal(found, values.T)
    return True


@pytest.fixture
def long_run(short, tmp_path, about_two):
    t_ns, values = readings(20_000, 3)
    folder = record(tmp_path / "run", about_two, t_ns, values, [3000])
    return folder, about_two, t_ns, values
