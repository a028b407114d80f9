"""The pyramid of a long recording equals numpy over the readings, or can't be used; never wrong."""

import os
import shutil
from dataclasses import replace
from datetime import UTC, datetime
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

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
    Recording,
    drop_pyramid,
    kept_pyramid,
    layout,
    make_pyramid,
    pyramid_form,
)
from meterlog.recording import pyramid_writer as writing
from meterlog.recording.pyramid_head import PyramidHead
from meterlog.recording.pyramid_level import PyramidLevel
from meterlog.recording.pyramid_maker import PyramidMaker
from meterlog.recording.pyramid_writer import PyramidWriter, pyramid_folder


def _readings(rows, seed, channels=2, pace_ns=None):
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


def _record(folder, about, t_ns, values, sizes):
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


def _expect(pyramid, t_ns, values, edges, channels):
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
    short, about_two, tmp_path_factory, rows, sizes, seed, pace_ns, windows
):
    place = tmp_path_factory.mktemp("pyramid")
    t_ns, values = _readings(rows, seed, pace_ns=pace_ns)
    sizes = [max(size, rows // 60 + 1) for size in sizes]
    folder = _record(place / "run", about_two, t_ns, values, sizes)
    pyramid = kept_pyramid(folder, about_two, about_two.instruments[0])
    assert pyramid.rows == rows
    length = int(t_ns[-1]) + 1
    for begin, part, pixels in windows:
        start = int(begin * length)
        edges = np.linspace(start, start + int(part * length), pixels + 1).astype(np.int64)
        _expect(pyramid, t_ns, values, edges, [0, 1])
        _expect(pyramid, t_ns, values, edges, [1])
        first, last = np.searchsorted(t_ns, edges[[0, -1]])
        times, found = pyramid.read(first, last)
        np.testing.assert_array_equal(times, t_ns[first:last])
        np.testing.assert_array_equal(found, values[first:last].T)
    shutil.rmtree(place)


@pytest.mark.parametrize("pace_ns", [None, 7, 100_000_000])
def test_rows_before_any_instant_are_counted_wherever_they_are_guessed(
    short, about_two, tmp_path, pace_ns
):
    t_ns, _ = _readings(70_000, 5, pace_ns=pace_ns)
    t_ns[30_000:33_000] = t_ns[30_000]  # many readings of one instant
    t_ns[50_000:] += int(t_ns[-1]) * 9  # what comes after lies far from an even pace
    folder = _record(tmp_path / "run", about_two, t_ns, np.zeros((len(t_ns), 2)), [5_000])
    pyramid = kept_pyramid(folder, about_two, about_two.instruments[0])
    rng = np.random.default_rng(6)
    near = rng.choice(t_ns, 500)[:, None] + np.array([-1, 0, 1])
    asked = np.concatenate((near.ravel(), rng.integers(-5, t_ns[-1] + 5, 500)))
    rng.shuffle(asked)
    found = [pyramid.rows_before(int(one)) for one in asked]
    np.testing.assert_array_equal(found, np.searchsorted(t_ns, asked))


def test_an_even_pace_needs_one_look_at_the_disk(short, about_two, tmp_path, monkeypatch):
    t_ns = np.arange(70_000) * 1_000
    folder = _record(tmp_path / "run", about_two, t_ns, np.zeros((len(t_ns), 2)), [5_000])
    pyramid = kept_pyramid(folder, about_two, about_two.instruments[0])
    assert pyramid.rows_before(1_000) == 1  # what all look at has been read now
    reads, read = [], PyramidLevel.read
    monkeypatch.setattr(
        PyramidLevel, "read", lambda level, a, b: reads.append((a, b)) or read(level, a, b)
    )
    asked = np.random.default_rng(7).integers(40_000_000, 69_000_000, 50)
    assert [pyramid.rows_before(int(one)) for one in asked] == [-(-one // 1_000) for one in asked]
    assert len(reads) == 50


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


@given(st.lists(st.integers(1, 30_000), min_size=1, max_size=8), st.integers(0, 2**32))
@settings(max_examples=30)
def test_records_are_the_same_however_the_rows_are_cut(sizes, seed):
    t_ns, values = _readings(sum(sizes), seed)

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


def _asked(folder, about, t_ns, values):
    """Ask for much; what comes back is right, or there is no pyramid. Tell which."""
    try:
        pyramid = kept_pyramid(folder, about, about.instruments[0])
        for begin, end, pixels in ((0.0, 1.0, 7), (0.1, 0.9, 40), (0.32, 0.35, 9), (0.97, 1.0, 3)):
            edges = np.linspace(begin * t_ns[-1], end * t_ns[-1], pixels + 1).astype(np.int64)
            _expect(pyramid, t_ns, values, edges, [0, 1])
        times, found = pyramid.read(0, pyramid.rows)
    except PyramidUnusable:
        return False
    np.testing.assert_array_equal(times, t_ns)
    np.testing.assert_array_equal(found, values.T)
    return True


@pytest.fixture
def long_run(short, tmp_path, about_two):
    t_ns, values = _readings(20_000, 3)
    folder = _record(tmp_path / "run", about_two, t_ns, values, [3000])
    return folder, about_two, t_ns, values


def test_a_flipped_bit_anywhere_in_the_cache_is_never_a_wrong_value(long_run):
    folder, about, t_ns, values = long_run
    files = sorted(pyramid_folder(folder, "bench").iterdir())
    assert len(files) >= 4
    assert _asked(folder, about, t_ns, values)
    rng = np.random.default_rng(5)
    refused = 0
    for number in range(300):
        path = files[number % len(files)]
        content = path.read_bytes()
        at, bit = int(rng.integers(0, len(content))), int(rng.integers(0, 8))
        path.write_bytes(content[:at] + bytes([content[at] ^ (1 << bit)]) + content[at + 1 :])
        refused += not _asked(folder, about, t_ns, values)
        path.write_bytes(content)
    assert refused > 200  # a bit in a record that no window needed is not seen


def test_a_cache_cut_at_any_byte_is_never_a_wrong_value(long_run):
    folder, about, t_ns, values = long_run
    rng = np.random.default_rng(6)
    for path in sorted(pyramid_folder(folder, "bench").iterdir()):
        content = path.read_bytes()
        for length in sorted({0, 1, *rng.integers(0, len(content), 12).tolist()}):
            path.write_bytes(content[:length])
            assert not _asked(folder, about, t_ns, values)
        path.write_bytes(content)
    assert _asked(folder, about, t_ns, values)


def test_a_recorder_that_dies_leaves_no_pyramid_that_is_used(short, tmp_path, about_two):
    t_ns, values = _readings(20_000, 4)
    recorder = Recorder.create(tmp_path / "run", about_two, keep_raw=False)
    flags = np.zeros(values.shape, np.uint8)
    recorder.take(Block("bench", t_ns, values, flags))
    recorder.sync()
    with pytest.raises(PyramidUnusable):
        kept_pyramid(tmp_path / "run", about_two, about_two.instruments[0])
    recorder.close()


def test_readings_that_were_changed_make_it_stale_even_where_their_times_of_change_are_not(
    long_run,
):
    folder, about, t_ns, values = long_run
    stream = folder / layout.arrows("bench")
    content, stamp = stream.read_bytes(), stream.stat()
    rng = np.random.default_rng(8)
    refused = 0
    for _ in range(100):
        at, bit = int(rng.integers(0, len(content))), int(rng.integers(0, 8))
        stream.write_bytes(content[:at] + bytes([content[at] ^ (1 << bit)]) + content[at + 1 :])
        os.utime(stream, ns=(stamp.st_atime_ns, stamp.st_mtime_ns))
        refused += not _asked(folder, about, t_ns, values)
    assert refused > 90


def test_of_another_recording_of_the_same_length_it_is_not_taken(long_run, tmp_path):
    folder, about, t_ns, values = long_run
    other = _record(tmp_path / "other", about, t_ns, -values, [3000])
    shutil.rmtree(pyramid_folder(other, "bench"))
    shutil.copytree(pyramid_folder(folder, "bench"), pyramid_folder(other, "bench"))
    assert not _asked(other, about, t_ns, -values)


def test_a_copy_keeps_its_pyramid_though_its_time_of_change_differs(long_run, tmp_path):
    folder, about, t_ns, values = long_run
    shutil.copytree(folder, tmp_path / "copy", copy_function=shutil.copyfile)
    assert _asked(tmp_path / "copy", about, t_ns, values)


def test_it_is_made_anew_from_the_readings_without_damaged_batches(long_run):
    folder, about, t_ns, values = long_run
    shutil.rmtree(folder / layout.CACHE)
    made = make_pyramid(folder, about, about.instruments[0])
    assert made is not None
    assert made.rows == 20_000
    assert _asked(folder, about, t_ns, values)
    stream = folder / layout.arrows("bench")
    content = bytearray(stream.read_bytes())
    content[len(content) // 2] ^= 1
    stream.write_bytes(bytes(content))
    assert not _asked(folder, about, t_ns, values)
    made = make_pyramid(folder, about, about.instruments[0])
    assert made is not None
    assert made.head.left_out == 1
    bad = 20_000 - made.rows
    assert 0 < bad <= 3000
    first = next(
        k * 3000 for k in range(7) if made.read(k * 3000, k * 3000 + 1)[0] != t_ns[k * 3000]
    )
    kept = np.r_[0:first, first + bad : 20_000]
    assert _asked(folder, about, t_ns[kept], values[kept])


def test_what_a_killed_program_left_goes_when_it_is_made_anew(long_run):
    folder, about, t_ns, values = long_run
    left = folder / layout.CACHE / ".bench-killed"
    left.mkdir()
    (left / layout.LOCK).touch()
    (left / "whole").mkdir()
    (left / "whole" / "level-0").write_bytes(bytes(4096))
    assert make_pyramid(folder, about, about.instruments[0]) is not None
    assert [path.name for path in (folder / layout.CACHE).iterdir()] == ["bench"]
    assert _asked(folder, about, t_ns, values)


def test_what_ends_the_making_leaves_the_old_one_and_nothing_else(long_run):
    folder, about, t_ns, values = long_run

    def cancel(part):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        make_pyramid(folder, about, about.instruments[0], cancel)
    assert [path.name for path in (folder / layout.CACHE).iterdir()] == ["bench"]
    assert _asked(folder, about, t_ns, values)


def test_where_nothing_can_be_written_beside_the_readings_it_goes_to_the_users_cache(
    long_run, monkeypatch, tmp_path
):
    folder, about, t_ns, values = long_run
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "own"))
    shutil.rmtree(folder / layout.CACHE)
    (folder / layout.CACHE).write_text("in the way")
    made = make_pyramid(folder, about, about.instruments[0])
    assert made is not None
    assert _asked(folder, about, t_ns, values)


def test_a_disk_that_takes_no_cache_leaves_the_recording_alone(
    short, tmp_path, about_two, monkeypatch
):
    def full(self):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(PyramidWriter, "_write", full)
    t_ns, values = _readings(20_000, 4)
    folder = _record(tmp_path / "run", about_two, t_ns, values, [3000])
    with pytest.raises(PyramidUnusable):
        kept_pyramid(folder, about_two, about_two.instruments[0])
    monkeypatch.undo()
    recording = Recording.open(folder)
    assert recording.rows("bench") == 20_000
    assert recording.check() == ()


def test_a_short_recording_keeps_none(tmp_path, about_two):
    t_ns, values = _readings(20_000, 4)
    folder = _record(tmp_path / "run", about_two, t_ns, values, [3000])
    assert not (folder / layout.CACHE).exists()
    assert make_pyramid(folder, about_two, about_two.instruments[0]) is None


def test_a_cache_that_another_user_made_is_none(long_run, monkeypatch):
    folder, about, t_ns, values = long_run
    assert _asked(folder, about, t_ns, values)
    monkeypatch.setattr(pyramid_form, "own_secret", lambda: bytes(range(32)))
    pyramid_form._keys.cache_clear()
    try:
        assert not _asked(folder, about, t_ns, values)
        assert make_pyramid(folder, about, about.instruments[0]) is not None
        assert _asked(folder, about, t_ns, values)
    finally:
        pyramid_form._keys.cache_clear()


def test_a_link_in_a_strangers_recording_leads_nowhere(long_run, tmp_path):
    folder, about, _, _ = long_run
    mine = tmp_path / "mine"
    (mine / "bench").mkdir(parents=True)
    (mine / "bench" / "head.json").write_text("mine")
    shutil.rmtree(folder / layout.CACHE)
    (folder / layout.CACHE).symlink_to(mine, target_is_directory=True)
    drop_pyramid(folder, about, "bench")
    assert make_pyramid(folder, about, about.instruments[0]) is not None
    assert (mine / "bench" / "head.json").read_text() == "mine"
    assert sorted(path.name for path in mine.iterdir()) == ["bench"]


@pytest.mark.parametrize("count", [10**15, -1, "7", 1.5, None])
def test_a_head_that_says_what_cant_be_is_refused(long_run, count):
    folder, about, _, _ = long_run
    place = pyramid_folder(folder, "bench")
    head = PyramidHead.read(place)
    for field in ("rows", "batches", "channels", "stream_bytes"):
        replace(head, **{field: count}).write(place)
        with pytest.raises(PyramidUnusable):
            kept_pyramid(folder, about, about.instruments[0])
    replace(head, records=(10**12, 10**11)).write(place)
    with pytest.raises(PyramidUnusable):
        kept_pyramid(folder, about, about.instruments[0])


def test_no_folder_is_made_anew_where_a_recording_was_taken_away(short, tmp_path):
    writer = PyramidWriter(tmp_path / "stick" / "run" / "cache" / "bench", "id", "bench", 2)
    t_ns, values = _readings(20_000, 1)
    writer.take(t_ns, values, (0, 8, 16), 1)
    assert not writer.finish(tmp_path / "nothing")
    assert list(tmp_path.iterdir()) == []
