"""Opening recordings: closed, broken off, cut anywhere, sealed, damaged."""

import shutil

import pytest

from meterlog.model import Block, Event, EventKind, join
from meterlog.model.errors import EvidenceError, RecordingUnreadable
from meterlog.recording import Recorder, Recording, find_unsealed, seal


@pytest.fixture
def run(maker):
    return maker.small().folder


def test_a_folder_without_a_recording_is_refused_in_words(tmp_path):
    for folder in (tmp_path, tmp_path / "none"):
        with pytest.raises(RecordingUnreadable, match=r"no recording.*about\.json"):
            Recording.open(folder)


def test_events_cut_at_any_byte_give_the_whole_lines(run):
    path = run / "data/events.jsonl"
    content = path.read_bytes()
    every = Recording.open(run).events
    for cut in range(len(content) + 1):
        path.write_bytes(content[:cut])
        recording = Recording.open(run)
        whole = content[:cut].count(b"\n")
        assert len(recording.events) == whole
        assert set(recording.events) <= set(every)
        torn = [text for text in recording.damage if "events.jsonl" in text]
        # Between two lines a cut leaves whole lines, but the readings were closed: the end lacks.
        assert bool(torn) == (cut < len(content))


def test_about_cut_at_any_byte_is_refused_or_told_but_never_a_crash(run):
    path = run / "data/about.json"
    content = path.read_bytes()
    for cut in range(0, len(content) - 1, 7):
        path.write_bytes(content[:cut])
        with pytest.raises(RecordingUnreadable, match="JSON"):
            Recording.open(run)


@pytest.mark.parametrize("name", ["data/events.jsonl", "data/bench.arrows"])
def test_a_missing_file_is_damage_and_the_rest_can_be_read(run, name):
    (run / name).unlink()
    recording = Recording.open(run)
    assert f"{name}: is missing." in recording.damage
    expected = 0 if "bench" in name else 11
    assert recording.rows("bench") == expected
    assert sum(len(block) for block in recording.blocks("bench")) == expected


def test_a_closed_recording_whose_end_was_cut_off_between_two_batches_is_told(run):
    path = run / "data/bench.arrows"
    path.write_bytes(path.read_bytes()[:-8])
    assert Recording.open(run).damage == ("data/bench.arrows: its end is missing.",)


def test_items_of_two_instruments_come_merged_with_the_events(maker):
    about = maker.about(maker.instrument("a"), maker.instrument("b"))
    recorder = Recorder.create(maker.folder / "two", about)
    for first in range(0, 40, 10):
        recorder.take(maker.block("a", first, 10))
        recorder.flush()
        recorder.take(maker.block("b", first, 10))
    recorder.take(Event(12_000_000, EventKind.SPEED, "3"))
    recorder.close()
    items = list(Recording.open(recorder.folder).items())
    at = items.index(Event(12_000_000, EventKind.SPEED, "3"))
    for key in "ab":
        before = [i for i in items[:at] if isinstance(i, Block) and i.source == key]
        assert max(int(block.t_ns[-1]) for block in before) < 12_000_000
        assert sum(map(len, before)) == 12
        every = [i for i in items if isinstance(i, Block) and i.source == key]
        assert len(join(every)) == 40


def test_an_unknown_source_is_a_key_error(run):
    recording = Recording.open(run)
    for ask in (recording.rows, recording.blocks):
        with pytest.raises(KeyError):
            ask("other")


def test_a_recording_can_be_read_while_it_grows(maker):
    recorder = maker.small(close=False)
    recording = Recording.open(recorder.folder)
    assert recording.rows("bench") == 11
    recorder.take(maker.block("bench", 11, 5))
    recorder.flush()
    assert Recording.open(recorder.folder).rows("bench") == 16
    assert sum(map(len, recording.blocks("bench"))) == 11
    recorder.close()


def test_sealing_changes_nothing_that_was_recorded_and_is_seen_on_opening(run):
    before = {path.name: path.read_bytes() for path in (run / "data").iterdir()}
    seal(run)
    assert {path.name: path.read_bytes() for path in (run / "data").iterdir()} == before
    recording = Recording.open(run)
    assert (recording.state, recording.damage) == ("sealed", ())
    info = (run / "bag-info.txt").read_text()
    assert "Meterlog-Outcome: complete\n" in info
    assert f"External-Identifier: {recording.about.recording_id}\n" in info
    assert "Meterlog-Recovered" not in info


def test_a_torn_recording_is_sealed_as_recovered_with_its_tail_as_it_is(maker):
    recorder = maker.small(close=False)
    path = recorder.folder / "data/bench.arrows"
    torn = path.read_bytes()[:-100]
    other = maker.folder / "torn"
    shutil.copytree(recorder.folder, other)
    recorder.close()
    (other / "data/bench.arrows").write_bytes(torn)
    seal(other, recovered=True)
    recording = Recording.open(other)
    assert recording.state == "recovered"
    assert recording.rows("bench") == 9
    assert "torn off" in recording.damage[0]
    assert (other / "data/bench.arrows").read_bytes() == torn
    assert "Meterlog-Outcome: broken off\n" in (other / "bag-info.txt").read_text()
    assert not (other / "writing.lock").exists()


def test_a_seal_is_made_once_and_never_on_a_recording_in_progress(maker):
    recorder = maker.small(close=False)
    with pytest.raises(EvidenceError, match="being recorded"):
        seal(recorder.folder)
    recorder.close()
    seal(recorder.folder)
    with pytest.raises(EvidenceError, match="sealed already"):
        seal(recorder.folder)


def test_a_seal_that_was_broken_off_can_be_made_again(run, monkeypatch):
    written = []

    def fails_at_the_third(path, content):
        written.append(path.name)
        if len(written) == 3:
            raise OSError(28, "No space left on device")
        path.write_bytes(content)

    monkeypatch.setattr("meterlog.recording.sealing.write_aside", fails_at_the_third)
    with pytest.raises(EvidenceError, match="No space left"):
        seal(run)
    monkeypatch.undo()
    assert Recording.open(run).state == "unsealed"
    seal(run)
    assert Recording.open(run).state == "sealed"


def test_unsealed_recordings_are_found_but_not_those_in_progress(maker, tmp_path):
    maker.small("b-left")
    maker.small("a-left")
    seal(maker.small("sealed").folder)
    busy = maker.small("busy", close=False)
    (tmp_path / "else").mkdir()
    assert find_unsealed(tmp_path) == (tmp_path / "a-left", tmp_path / "b-left")
    assert find_unsealed(tmp_path / "a-left") == (tmp_path / "a-left",)
    assert find_unsealed(tmp_path / "none") == ()
    busy.close()
    assert tmp_path / "busy" in find_unsealed(tmp_path)
