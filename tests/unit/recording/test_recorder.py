"""The recorder: what it writes when, and what it says when the disk refuses."""

import json
import threading

import numpy as np
import pytest

from meterlog.model import Block, Event, EventKind, RawBytes, join
from meterlog.model.errors import DiskFailed, RecordingError, RecordingExists
from meterlog.recording import Recorder, Recording
from meterlog.recording.append_file import AppendFile
from meterlog.recording.writer_lock import is_being_written


class HandClock:
    """Time that a test moves by hand, nanoseconds."""

    now = 0

    def __call__(self):
        return self.now


@pytest.fixture
def clocked(maker, monkeypatch):
    clock = HandClock()
    monkeypatch.setattr("time.monotonic_ns", clock)
    recorder = Recorder.create(maker.folder / "run", maker.about(maker.instrument()))
    yield recorder, clock
    recorder.close()


def test_about_is_on_the_disk_before_anything_else(maker, monkeypatch):
    made = []
    real = AppendFile.__init__

    def spy(self, path, name):
        made.append((name, (maker.folder / "run/data/about.json").is_file()))
        real(self, path, name)

    monkeypatch.setattr(AppendFile, "__init__", spy)
    Recorder.create(maker.folder / "run", maker.about(maker.instrument())).close()
    assert len(made) == 3
    assert all(there for _, there in made)


def test_everything_taken_can_be_read_after_close(maker, same):
    maker.small()
    recording = Recording.open(maker.folder / "run")
    same(join(list(recording.blocks("bench"))), maker.block("bench", 0, 11))
    kinds = [event.kind for event in recording.events]
    assert kinds == [EventKind.SPEED, EventKind.TAP, EventKind.NOTE, EventKind.END]
    assert recording.events[2].value == 'says "now", =runs\nagain'
    assert recording.events[3] == Event(10_000_037, EventKind.END, "complete")
    assert (recording.rows("bench"), recording.end_ns) == (11, 10_000_037)
    assert (recording.state, recording.damage) == ("unsealed", ())


def test_rows_are_flushed_within_100_ms_of_being_taken_when_the_bus_ticks(clocked, maker):
    recorder, clock = clocked
    recorder.take(maker.block("bench", 0, 2))
    assert recorder.rows == {"bench": 0}
    for clock.now in range(0, 100_000_001, 25_000_000):
        recorder.tick(clock.now)
    assert recorder.rows == {"bench": 2}
    assert Recording.open(recorder.folder).rows("bench") == 2


def test_ticked_only_when_its_rest_is_over_it_flushes_and_syncs_in_time(clocked, maker):
    recorder, clock = clocked
    ticks = flushed_ns = 0
    recorder.take(maker.block("bench", 0, 2))
    while clock.now < 2_000_000_000:
        rest_ns = recorder.rest_ns(0)
        assert rest_ns > 0  # else it would be asked again at once
        clock.now += rest_ns
        recorder.tick(clock.now)
        recorder._settle_sync(wait=True)
        ticks += 1
        if recorder.rows["bench"] and not flushed_ns:
            flushed_ns = clock.now
        if clock.now >= 1_000_000_000:
            assert recorder.safe == 1
    assert 0 < flushed_ns <= 75_000_000
    assert ticks <= 4


def test_a_disk_that_takes_its_time_is_not_asked_again_at_once(clocked, maker, monkeypatch):
    recorder, clock = clocked
    done = threading.Event()
    monkeypatch.setattr("meterlog.recording.append_file.sync_descriptor", lambda _: done.wait(60))
    recorder.take(maker.block("bench", 0, 1))
    for _ in range(30):
        clock.now += recorder.rest_ns(0)
        recorder.tick(clock.now)
    done.set()
    assert clock.now >= 2_000_000_000


def test_slow_readings_do_not_wait_for_the_next_one(clocked, maker):
    recorder, clock = clocked
    for k in range(3):
        clock.now = k * 1_000_000_000
        recorder.take(maker.block("bench", k, 1))
        clock.now += 75_000_000
        recorder.tick(clock.now)
        assert recorder.rows == {"bench": k + 1}


def test_readings_are_synced_within_a_second_and_marks_at_once(clocked, maker, monkeypatch):
    recorder, clock = clocked
    synced = []
    monkeypatch.setattr("meterlog.recording.append_file.sync_descriptor", synced.append)
    recorder.take(Event(0, EventKind.REFUSED, "1 x"))
    assert synced == []
    recorder.take(Event(0, EventKind.TAP))
    assert len(synced) == 1
    recorder.take(maker.block("bench", 0, 1))
    for clock.now in range(0, 1_000_000_001, 25_000_000):
        recorder.tick(clock.now)
    recorder._settle_sync(wait=True)
    assert len(synced) == 2
    assert recorder.safe == 1


def test_a_disk_that_takes_its_time_keeps_nothing_waiting(clocked, maker, monkeypatch):
    recorder, clock = clocked
    going, done = threading.Event(), threading.Event()

    def slow(_):
        going.set()
        assert done.wait(60)

    recorder.take(maker.block("bench", 0, 1))
    monkeypatch.setattr("meterlog.recording.append_file.sync_descriptor", slow)
    clock.now = 1_000_000_000
    recorder.tick(clock.now)
    assert going.wait(60)
    for k in range(1, 5):  # more than a second in which the disk does not answer
        recorder.take(maker.block("bench", k, 1))
        clock.now += 300_000_000
        recorder.tick(clock.now)
        assert recorder.rows == {"bench": k + 1}
    assert recorder.safe == 0
    done.set()
    recorder._settle_sync(wait=True)
    assert recorder.safe == 1  # what came meanwhile was not in it
    recorder.sync()
    assert recorder.safe == 5


def test_what_the_disk_refuses_in_the_background_is_told_once(clocked, maker, monkeypatch):
    recorder, clock = clocked

    def broken(_):
        raise OSError(5, "Input/output error")

    recorder.take(maker.block("bench", 0, 1))
    monkeypatch.setattr("meterlog.recording.append_file.sync_descriptor", broken)
    clock.now = 1_000_000_000
    recorder.tick(clock.now)
    recorder._background._thread.join()
    with pytest.raises(DiskFailed, match="could not be kept on the disk: Input/output error"):
        recorder.tick(clock.now)
    recorder.tick(clock.now + 2_000_000_000)
    assert "Input/output error" in recorder.failed
    assert recorder.safe == 0


def test_fast_readings_go_out_in_batches_of_at_most_65536_rows(clocked, maker):
    recorder, _ = clocked
    rows = 150_000
    values = np.zeros((rows, 2))
    recorder.take(Block("bench", np.arange(rows), values, np.zeros(values.shape, np.uint8)))
    assert recorder.rows == {"bench": rows}
    sizes = [len(block) for block in Recording.open(recorder.folder).blocks("bench")]
    assert sizes == [65_536, 65_536, rows - 2 * 65_536]


def test_many_small_blocks_are_joined_into_one_batch(clocked, maker, same):
    recorder, _ = clocked
    for k in range(50):
        recorder.take(maker.block("bench", k * 2, 2))
    recorder.flush()
    path = recorder.folder / "data/bench.arrows"
    assert path.read_bytes().count(b"\xff\xff\xff\xff") == 2  # schema, one batch
    same(next(Recording.open(recorder.folder).blocks("bench")), maker.block("bench", 0, 100))


def test_a_healthy_flag_column_takes_a_few_bytes_and_a_row_no_more_than_its_numbers(maker):
    one = maker.instrument(channels=3)
    recorder = Recorder.create(maker.folder / "run", maker.about(one))
    rows = 60_000
    zeros = np.zeros((rows, 3), np.uint8)
    recorder.take(Block("bench", np.arange(rows), np.ones((rows, 3)), zeros))
    recorder.close()
    size = (maker.folder / "run/data/bench.arrows").stat().st_size
    assert size < rows * (8 + 3 * 8) * 1.001 + 2000


def test_raw_bytes_are_kept_with_their_times_unless_switched_off(maker):
    frames = [RawBytes("bench", 5, b"+1.0E+01\r\n"), RawBytes("bench", 9, b"")]
    for keep in (True, False):
        folder = maker.folder / f"keep-{keep}"
        recorder = Recorder.create(folder, maker.about(maker.instrument()), keep)
        for frame in frames:
            recorder.take(frame)
        recorder.close()
        assert list(Recording.open(folder).raw("bench")) == (frames if keep else [])


def test_a_folder_that_holds_anything_is_refused_and_left_alone(maker):
    (maker.folder / "run").mkdir()
    (maker.folder / "run/mine.txt").write_text("x")
    with pytest.raises(RecordingExists, match="not empty"):
        Recorder.create(maker.folder / "run", maker.about(maker.instrument()))
    assert [path.name for path in (maker.folder / "run").iterdir()] == ["mine.txt"]
    (maker.folder / "file").write_text("x")
    with pytest.raises(RecordingExists):
        Recorder.create(maker.folder / "file", maker.about(maker.instrument()))


@pytest.mark.parametrize("keys", [("../up",), ("a/b",), ("",), ("x", "X")])
def test_keys_that_are_no_file_names_are_refused(maker, keys):
    about = maker.about(*(maker.instrument(key) for key in keys))
    with pytest.raises(RecordingError):
        Recorder.create(maker.folder / "run", about)
    assert not (maker.folder / "run").exists()


def test_an_item_of_an_unknown_instrument_or_shape_is_refused_and_the_rest_goes_on(maker):
    recorder = Recorder.create(maker.folder / "run", maker.about(maker.instrument()))
    with pytest.raises(ValueError, match="other"):
        recorder.take(maker.block("other", 0, 1))
    with pytest.raises(ValueError, match="channels"):
        recorder.take(maker.block("bench", 0, 1, 3))
    recorder.take(maker.block("bench", 0, 4))
    recorder.close()
    assert Recording.open(recorder.folder).rows("bench") == 4


def test_the_lock_is_held_while_recording_and_gone_afterwards(maker):
    recorder = maker.small(close=False)
    assert is_being_written(recorder.folder)
    recorder.close()
    assert not is_being_written(recorder.folder)
    assert sorted(path.name for path in recorder.folder.iterdir()) == ["data"]


def test_one_failed_file_is_told_once_and_the_others_go_on(maker, monkeypatch, same):
    about = maker.about(maker.instrument("a"), maker.instrument("b"))
    recorder = Recorder.create(maker.folder / "run", about)
    for key in "ab":
        recorder.take(maker.block(key, 0, 3))
    recorder.flush()
    real = AppendFile._write_some

    def full(self, views):
        if self.name == "data/a.arrows":
            raise self._fail("could not be written: No space left on device.")
        return real(self, views)

    monkeypatch.setattr(AppendFile, "_write_some", full)
    for key in "ab":
        recorder.take(maker.block(key, 3, 4))
    with pytest.raises(DiskFailed, match=r"a\.arrows"):
        recorder.flush()
    for key in "ab":
        recorder.take(maker.block(key, 7, 2))
    recorder.flush()
    assert "No space left" in recorder.failed
    assert recorder.lost_rows == 6
    assert recorder.rows == {"a": 3, "b": 9}
    recorder.close()
    recording = Recording.open(recorder.folder)
    same(join(list(recording.blocks("b"))), maker.block("b", 0, 9))
    assert recording.rows("a") == 3
    faults = [event.value for event in recording.events if event.kind is EventKind.FAULT]
    assert len(faults) == 1
    assert "a.arrows" in faults[0]


def test_close_can_be_called_twice_and_says_how_it_ended(maker):
    recorder = maker.small(close=False)
    recorder.close("interrupted")
    recorder.close()
    lines = (recorder.folder / "data/events.jsonl").read_bytes().splitlines()
    assert json.loads(lines[-1])["value"] == "interrupted"
    assert len(lines) == 4
