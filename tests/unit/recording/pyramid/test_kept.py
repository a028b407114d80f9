"""A pyramid that does not fit its readings is not used; it is never wrong."""

import os
import shutil
from dataclasses import replace

import numpy as np
import pytest

from meterlog.model import (
    Block,
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
from meterlog.recording.pyramid_head import PyramidHead
from meterlog.recording.pyramid_writer import PyramidWriter, pyramid_folder


def test_a_flipped_bit_anywhere_in_the_cache_is_never_a_wrong_value(pyramids, long_run):
    folder, about, t_ns, values = long_run
    files = sorted(pyramid_folder(folder, "bench").iterdir())
    assert len(files) >= 4
    assert pyramids.asked(folder, about, t_ns, values)
    rng = np.random.default_rng(5)
    refused = 0
    for number in range(300):
        path = files[number % len(files)]
        content = path.read_bytes()
        at, bit = int(rng.integers(0, len(content))), int(rng.integers(0, 8))
        path.write_bytes(content[:at] + bytes([content[at] ^ (1 << bit)]) + content[at + 1 :])
        refused += not pyramids.asked(folder, about, t_ns, values)
        path.write_bytes(content)
    assert refused > 200  # a bit in a record that no window needed is not seen


def test_a_cache_cut_at_any_byte_is_never_a_wrong_value(pyramids, long_run):
    folder, about, t_ns, values = long_run
    rng = np.random.default_rng(6)
    for path in sorted(pyramid_folder(folder, "bench").iterdir()):
        content = path.read_bytes()
        for length in sorted({0, 1, *rng.integers(0, len(content), 12).tolist()}):
            path.write_bytes(content[:length])
            assert not pyramids.asked(folder, about, t_ns, values)
        path.write_bytes(content)
    assert pyramids.asked(folder, about, t_ns, values)


def test_a_recorder_that_dies_leaves_no_pyramid_that_is_used(pyramids, short, tmp_path, about_two):
    t_ns, values = pyramids.readings(20_000, 4)
    recorder = Recorder.create(tmp_path / "run", about_two, keep_raw=False)
    flags = np.zeros(values.shape, np.uint8)
    recorder.take(Block("bench", t_ns, values, flags))
    recorder.sync()
    with pytest.raises(PyramidUnusable):
        kept_pyramid(tmp_path / "run", about_two, about_two.instruments[0])
    recorder.close()


def test_readings_that_were_changed_make_it_stale_even_where_their_times_of_change_are_not(
    pyramids,
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
        refused += not pyramids.asked(folder, about, t_ns, values)
    assert refused > 90


def test_of_another_recording_of_the_same_length_it_is_not_taken(pyramids, long_run, tmp_path):
    folder, about, t_ns, values = long_run
    other = pyramids.record(tmp_path / "other", about, t_ns, -values, [3000])
    shutil.rmtree(pyramid_folder(other, "bench"))
    shutil.copytree(pyramid_folder(folder, "bench"), pyramid_folder(other, "bench"))
    assert not pyramids.asked(other, about, t_ns, -values)


def test_a_copy_keeps_its_pyramid_though_its_time_of_change_differs(pyramids, long_run, tmp_path):
    folder, about, t_ns, values = long_run
    shutil.copytree(folder, tmp_path / "copy", copy_function=shutil.copyfile)
    assert pyramids.asked(tmp_path / "copy", about, t_ns, values)


def test_it_is_made_anew_from_the_readings_without_damaged_batches(pyramids, long_run):
    folder, about, t_ns, values = long_run
    shutil.rmtree(folder / layout.CACHE)
    made = make_pyramid(folder, about, about.instruments[0])
    assert made is not None
    assert made.rows == 20_000
    assert pyramids.asked(folder, about, t_ns, values)
    stream = folder / layout.arrows("bench")
    content = bytearray(stream.read_bytes())
    content[len(content) // 2] ^= 1
    stream.write_bytes(bytes(content))
    assert not pyramids.asked(folder, about, t_ns, values)
    made = make_pyramid(folder, about, about.instruments[0])
    assert made is not None
    assert made.head.left_out == 1
    bad = 20_000 - made.rows
    assert 0 < bad <= 3000
    first = next(
        k * 3000 for k in range(7) if made.read(k * 3000, k * 3000 + 1)[0] != t_ns[k * 3000]
    )
    kept = np.r_[0:first, first + bad : 20_000]
    assert pyramids.asked(folder, about, t_ns[kept], values[kept])


def test_what_a_killed_program_left_goes_when_it_is_made_anew(pyramids, long_run):
    folder, about, t_ns, values = long_run
    left = folder / layout.CACHE / ".bench-killed_1"
    left.mkdir()
    (left / layout.LOCK).touch()
    (left / "whole").mkdir()
    (left / "whole" / "level-0").write_bytes(bytes(4096))
    assert make_pyramid(folder, about, about.instruments[0]) is not None
    assert [path.name for path in (folder / layout.CACHE).iterdir()] == ["bench"]
    assert pyramids.asked(folder, about, t_ns, values)


def test_what_ends_the_making_leaves_the_old_one_and_nothing_else(pyramids, long_run):
    folder, about, t_ns, values = long_run

    def cancel(part):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        make_pyramid(folder, about, about.instruments[0], cancel)
    assert [path.name for path in (folder / layout.CACHE).iterdir()] == ["bench"]
    assert pyramids.asked(folder, about, t_ns, values)


def test_where_nothing_can_be_written_beside_the_readings_it_goes_to_the_users_cache(
    pyramids, long_run, monkeypatch, tmp_path
):
    folder, about, t_ns, values = long_run
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "own"))
    shutil.rmtree(folder / layout.CACHE)
    (folder / layout.CACHE).write_text("in the way")
    made = make_pyramid(folder, about, about.instruments[0])
    assert made is not None
    assert pyramids.asked(folder, about, t_ns, values)


def test_a_disk_that_takes_no_cache_leaves_the_recording_alone(
    pyramids, short, tmp_path, about_two, monkeypatch
):
    def full(self):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(PyramidWriter, "_write", full)
    t_ns, values = pyramids.readings(20_000, 4)
    folder = pyramids.record(tmp_path / "run", about_two, t_ns, values, [3000])
    with pytest.raises(PyramidUnusable):
        kept_pyramid(folder, about_two, about_two.instruments[0])
    monkeypatch.undo()
    recording = Recording.open(folder)
    assert recording.rows("bench") == 20_000
    assert recording.check() == ()


def test_a_short_recording_keeps_none(pyramids, tmp_path, about_two):
    t_ns, values = pyramids.readings(20_000, 4)
    folder = pyramids.record(tmp_path / "run", about_two, t_ns, values, [3000])
    assert not (folder / layout.CACHE).exists()
    assert make_pyramid(folder, about_two, about_two.instruments[0]) is None


def test_a_cache_that_another_user_made_is_none(pyramids, long_run, monkeypatch):
    folder, about, t_ns, values = long_run
    assert pyramids.asked(folder, about, t_ns, values)
    monkeypatch.setattr(pyramid_form, "own_secret", lambda: bytes(range(32)))
    pyramid_form._keys.cache_clear()
    try:
        assert not pyramids.asked(folder, about, t_ns, values)
        assert make_pyramid(folder, about, about.instruments[0]) is not None
        assert pyramids.asked(folder, about, t_ns, values)
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


def test_no_folder_is_made_anew_where_a_recording_was_taken_away(pyramids, short, tmp_path):
    writer = PyramidWriter(tmp_path / "stick" / "run" / "cache" / "bench", "id", "bench", 2)
    t_ns, values = pyramids.readings(20_000, 1)
    writer.take(t_ns, values, (0, 8, 16), 1)
    assert not writer.finish(tmp_path / "nothing")
    assert list(tmp_path.iterdir()) == []
