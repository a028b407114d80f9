"""A long recording is drawn from its pyramid as it would be from all its readings."""

import shutil

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.evidence.trace_store import TraceLine, TraceStore
from meterlog.model import Block, Channel, Instrument, Quantity, Role
from meterlog.recording import pyramid_writer as writing
from meterlog.recording.append_file import AppendFile
from meterlog.recording.pyramid import Pyramid
from meterlog.recording.pyramid_head import PyramidHead
from meterlog.recording.pyramid_writer import PyramidWriter
from meterlog.recording.stream_writer import StreamWriter

METER = Instrument(
    "bench",
    "invented",
    "-",
    (
        Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=1e-6),
        Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=1e-6),
    ),
)


def _written(place, t_ns, values):
    stream = place / "bench.arrows"
    writer = StreamWriter(AppendFile(stream, "bench.arrows"), METER)
    pyramid = PyramidWriter(place / "cache", "id", "bench", 2)
    for start in range(0, len(t_ns), 5_000):
        part = slice(start, start + 5_000)
        flags = np.zeros(values[part].shape, np.uint8)
        writer.append(Block("bench", t_ns[part], values[part], flags))
        pyramid.take(t_ns[part], values[part], writer.place, writer.crc)
    writer.finish()
    assert pyramid.finish(stream)
    return Pyramid(place / "cache", stream, PyramidHead.read(place / "cache"))


@pytest.fixture
def short(monkeypatch):
    monkeypatch.setattr(writing, "SHORT", 0)


@settings(max_examples=25)
@given(
    rows=st.integers(2_000, 60_000),
    seed=st.integers(0, 2**32),
    silences=st.integers(0, 4),
    windows=st.lists(
        st.tuples(st.floats(-0.1, 1.0), st.floats(0.001, 1.1), st.integers(5, 90)),
        min_size=1,
        max_size=5,
    ),
)
def test_it_gives_the_points_that_all_readings_would_give(
    short, tmp_path_factory, rows, seed, silences, windows
):
    place = tmp_path_factory.mktemp("kept")
    rng = np.random.default_rng(seed)
    t_ns = np.cumsum(rng.integers(900, 1_100, rows)).astype(np.int64)
    for at in rng.integers(1, rows, silences):
        t_ns[at:] += int(rng.integers(4_000, 700 * rows))
    values = rng.normal(0, 1, (rows, 2))
    values[rng.random(rows) < 0.02, 1] = np.nan
    traces = TraceStore((METER,), pyramids={"bench": _written(place, t_ns, values)})
    for column, line in enumerate(traces.lines):
        whole = TraceLine(line.label, line.channel, tail=8 * (rows + silences + 8))
        whole.append(t_ns, values[:, column])
        assert (line.last_ns, line.low, line.high) == (whole.last_ns, whole.low, whole.high)
        for begin, part, pixels in windows:
            start = int(begin * t_ns[-1])
            end = start + max(int(part * t_ns[-1]), 1)
            expected = whole.shown(start, end, pixels)
            found = line.shown(start, end, pixels)
            if len(expected[0]) < 2 * pixels and len(expected[0]) != len(found[0]):
                # Few readings: those just outside may differ by the sign of a silence.
                inside = [(t >= start) & (t <= end) & ~np.isnan(v) for t, v in (expected, found)]
                expected = tuple(one[inside[0]] for one in expected)
                found = tuple(one[inside[1]] for one in found)
            np.testing.assert_array_equal(found[0], expected[0])
            np.testing.assert_array_equal(found[1], expected[1])
    shutil.rmtree(place)


@settings(max_examples=15)
@given(
    seed=st.integers(0, 2**32),
    silences=st.integers(0, 3),
    moves=st.lists(
        st.tuples(st.integers(-30, 30), st.sampled_from([40, 400, 4_000])), min_size=2, max_size=8
    ),
)
def test_a_picture_that_is_moved_is_the_one_that_would_be_drawn_anew(
    short, tmp_path_factory, seed, silences, moves
):
    place = tmp_path_factory.mktemp("moved")
    rng = np.random.default_rng(seed)
    rows, columns = 40_000, 33
    t_ns = np.arange(rows) * 1_000
    for at in rng.integers(1, rows, silences):
        t_ns[at:] += int(rng.integers(4_000, 300_000))
    values = rng.normal(0, 1, (rows, 2))
    pyramid = _written(place, t_ns, values)
    moved = TraceStore((METER,), pyramids={"bench": pyramid})
    start = int(t_ns[-1]) // 2
    for by, rows_a_column in moves:
        step = rows_a_column * 1_000
        start = (start // step + by) * step
        anew = TraceStore((METER,), pyramids={"bench": pyramid})
        for one, other in zip(moved.lines, anew.lines, strict=True):
            asked = start, start + columns * step, columns
            for found, expected in zip(one.shown(*asked), other.shown(*asked), strict=True):
                np.testing.assert_array_equal(found, expected)
    shutil.rmtree(place)
