"""What a pyramid tells of any window equals numpy over the readings."""

import shutil
import tracemalloc

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.recording import (
    kept_pyramid,
)
from meterlog.recording.pyramid_level import PyramidLevel
from meterlog.recording.pyramid_maker import PyramidMaker


@settings(max_examples=40)
@given(
    rows=st.integers(1, 40_000),
    sizes=st.lists(st.integers(1, 9000), min_size=1, max_size=4),
    seed=st.integers(0, 2**32),
    pace_ns=st.sampled_from([None, 1, 7, 100_000_000]),
    windows=st.lists(
        st.tuples(st.floats(-0.1, 1.1), st.floats(0.0, 1.2), st.integers(1, 50)), max_size=6
    ),
)
def test_any_window_is_exact_however_the_readings_came(
    pyramids, short, about_two, tmp_path_factory, rows, sizes, seed, pace_ns, windows
):
    place = tmp_path_factory.mktemp("pyramid")
    t_ns, values = pyramids.readings(rows, seed, pace_ns=pace_ns)
    sizes = [max(size, rows // 60 + 1) for size in sizes]
    folder = pyramids.record(place / "run", about_two, t_ns, values, sizes)
    pyramid = kept_pyramid(folder, about_two, about_two.instruments[0])
    assert pyramid.rows == rows
    length = int(t_ns[-1]) + 1
    for begin, part, pixels in windows:
        start = int(begin * length)
        edges = np.linspace(start, start + int(part * length), pixels + 1).astype(np.int64)
        pyramids.expect(pyramid, t_ns, values, edges, [0, 1])
        pyramids.expect(pyramid, t_ns, values, edges, [1])
        first, last = np.searchsorted(t_ns, edges[[0, -1]])
        times, found = pyramid.read(first, last)
        np.testing.assert_array_equal(times, t_ns[first:last])
        np.testing.assert_array_equal(found, values[first:last].T)
    shutil.rmtree(place)


@pytest.mark.parametrize("pace_ns", [None, 7, 100_000_000])
def test_rows_before_any_instant_are_counted_wherever_they_are_guessed(
    pyramids, short, about_two, tmp_path, pace_ns
):
    t_ns, _ = pyramids.readings(70_000, 5, pace_ns=pace_ns)
    t_ns[30_000:33_000] = t_ns[30_000]  # many readings of one instant
    t_ns[50_000:] += int(t_ns[-1]) * 9  # what comes after lies far from an even pace
    folder = pyramids.record(tmp_path / "run", about_two, t_ns, np.zeros((len(t_ns), 2)), [5_000])
    pyramid = kept_pyramid(folder, about_two, about_two.instruments[0])
    rng = np.random.default_rng(6)
    near = rng.choice(t_ns, 500)[:, None] + np.array([-1, 0, 1])
    asked = np.concatenate((near.ravel(), rng.integers(-5, t_ns[-1] + 5, 500)))
    rng.shuffle(asked)
    found = [pyramid.rows_before(int(one)) for one in asked]
    np.testing.assert_array_equal(found, np.searchsorted(t_ns, asked))


def test_an_even_pace_needs_one_look_at_the_disk(pyramids, short, about_two, tmp_path, monkeypatch):
    t_ns = np.arange(70_000) * 1_000
    folder = pyramids.record(tmp_path / "run", about_two, t_ns, np.zeros((len(t_ns), 2)), [5_000])
    pyramid = kept_pyramid(folder, about_two, about_two.instruments[0])
    assert pyramid.rows_before(1_000) == 1  # what all look at has been read now
    reads, read = [], PyramidLevel.read
    monkeypatch.setattr(
        PyramidLevel, "read", lambda level, a, b: reads.append((a, b)) or read(level, a, b)
    )
    asked = np.random.default_rng(7).integers(40_000_000, 69_000_000, 50)
    assert [pyramid.rows_before(int(one)) for one in asked] == [-(-one // 1_000) for one in asked]
    assert len(reads) == 50


@given(st.lists(st.integers(1, 30_000), min_size=1, max_size=8), st.integers(0, 2**32))
@settings(max_examples=30)
def test_records_are_the_same_however_the_rows_are_cut(pyramids, sizes, seed):
    t_ns, values = pyramids.readings(sum(sizes), seed)

    def made(cuts):
        maker, by_level, start = PyramidMaker(2, 7), {}, 0
        for size in cuts:
            for level, records in maker.take(
                t_ns[start : start + size], values[start : start + size]
            ):
                by_level.setdefault(level, []).append(records)
            start += size
        for level, records in maker.rest():
            by_level.setdefault(level, []).append(records)
        return {level: np.concatenate(parts) for level, parts in by_level.items()}

    whole, cut = made([sum(sizes)]), made(sizes)
    assert whole.keys() == cut.keys()
    for level, records in whole.items():
        np.testing.assert_array_equal(records, cut[level])


def test_rows_that_come_slowly_are_not_gathered_for_hours(pyramids):
    t_ns, values = pyramids.readings(40_000, 1)
    maker = PyramidMaker(2, 7)
    tracemalloc.start()
    try:
        for start in range(0, len(t_ns), 4):
            for _ in maker.take(t_ns[start : start + 4], values[start : start + 4]):
                pass
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert most < 200_000  # a whole lot of 32,768 rows alone takes 786,000
