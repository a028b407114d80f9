"""What a pyramid's writer keeps in memory is bounded, however small the batches are."""

import numpy as np
import pytest

from meterlog.recording import pyramid_writer
from meterlog.recording.pyramid_writer import SHORT, PyramidWriter

MOST = 1 << 18


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "run").mkdir()
    return tmp_path / "run" / "cache" / "meter"


def fed(folder, batches, rows=1):
    """Give a writer that took so many batches, and the most that ever waited."""
    writer, most = PyramidWriter(folder, "id", "meter", 1), 0
    for at in range(batches):
        t_ns = np.arange(at * rows, (at + 1) * rows, dtype=np.int64)
        writer.take(t_ns, np.ones((rows, 1)), (at * 100, at * 100 + 10, at * 100 + 90), at)
        most = max(most, sum(len(one) for pieces in writer._waiting.values() for one in pieces))
    return writer, most


def test_little_waits_although_every_reading_is_a_batch(folder):
    writer, most = fed(folder, 30_000)
    assert MOST // 2 < most <= MOST
    assert folder.exists()
    writer.drop("the test is over")
    assert not folder.exists()


def test_of_a_recording_that_was_too_short_nothing_is_left(folder, tmp_path):
    writer, _ = fed(folder, 30_000)
    stream = tmp_path / "stream"
    stream.write_bytes(b"")
    assert not writer.finish(stream)
    assert not writer.failed
    assert not folder.exists()
    assert not folder.parent.exists()


def test_what_others_keep_beside_it_stays(folder, tmp_path):
    writer, _ = fed(folder, 30_000)
    (folder.parent / "other").mkdir()
    assert not writer.finish(tmp_path / "stream")
    assert [one.name for one in folder.parent.iterdir()] == ["other"]


def test_nothing_is_written_of_a_short_recording_in_usual_batches(folder, tmp_path):
    writer, _ = fed(folder, 60, rows=4_000)
    assert not folder.parent.exists()
    assert writer.rows <= SHORT
    assert not writer.finish(tmp_path / "stream")
    assert not folder.parent.exists()


def test_written_early_or_late_the_files_are_the_same(folder, tmp_path, monkeypatch):
    (tmp_path / "stream").write_bytes(b"x")
    made = []
    for number, most in enumerate((1 << 12, 1 << 30)):
        monkeypatch.setattr(pyramid_writer, "_PIECE", most)
        place = folder.with_name(f"meter-{number}")
        writer, _ = fed(place, 90, rows=3_000)
        assert writer.finish(tmp_path / "stream")
        made.append({one.name: one.read_bytes() for one in place.iterdir()})
    assert made[0] == made[1]
    assert len(made[0]) > 3
