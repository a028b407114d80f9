"""The power goes: what had been synced is there, what is there is right, and what is lost is said.

The model of the disk is ``tests/rig/power_cut.py``.
"""

import random
import sys
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.evidence import verify_folder
from meterlog.model import Event, EventKind, RawBytes
from meterlog.model.errors import DiskFailed
from meterlog.recording import MovingRecorder, Recorder, Recording, join_parts, layout, seal
from meterlog.recording.append_file import write_aside

RIG = str(Path(__file__).resolve().parents[2] / "rig")
ROWS, LOTS, FRAME = 90, 60, 16 + 200


@pytest.fixture(scope="module")
def rig():
    sys.path.insert(0, RIG)
    try:
        import kill_models
        import power_cut
    finally:
        sys.path.remove(RIG)
    power_cut.models = kill_models
    return power_cut


class Story:
    """A recording as it was written, step by step, and what it held.

    No dataclass: Hypothesis would write all of it out.
    """

    def __init__(self, root, steps, marks, ends):
        self.root, self.steps, self.marks = root, steps, marks
        self.ends = ends  # bytes of the readings' file and rows in it, after each flush


def _record(rig, root, end):
    """Record in lots; sync every seventh; a mark every tenth. Then end as told."""
    noted, marks, ends = rig.Noted(), [], []
    with noted.watching():
        recorder = Recorder.create(root / "run", rig.models.ABOUT)
        recorder._now = lambda: 0  # so that nothing is synced but what is synced here
        file = next(recorder._files["meter"].files())
        for lot in range(LOTS):
            recorder.take(RawBytes("meter", lot, b"%5d" % lot * 40))
            recorder.take(rig.models.numbered(lot * ROWS, ROWS))
            recorder.flush()
            ends.append((file.written, (lot + 1) * ROWS))
            if lot % 7 == 6:
                recorder.sync()
            if lot % 10 == 9:
                marks.append(Event(lot * ROWS * 1_000_000, EventKind.NOTE, str(lot)))
                recorder.take(marks[-1])
        end(recorder)
    return Story(root, noted.steps, marks, ends)


def _closed(recorder):
    recorder.close()
    seal(recorder.folder)


def _killed(recorder):
    """The program dies with a lot that was never synced; somebody seals what it left."""
    recorder._lock.release()
    seal(recorder.folder, recovered=True)


@pytest.fixture(scope="module")
def closed(rig, tmp_path_factory):
    return _record(rig, tmp_path_factory.mktemp("closed"), _closed)


@pytest.fixture(scope="module")
def killed(rig, tmp_path_factory):
    return _record(rig, tmp_path_factory.mktemp("killed"), _killed)


def _left(rig, story, part, seed, out):
    """Give what a cut leaves, and what is there for sure."""
    cut = round(part * len(story.steps))
    return cut, rig.after_cut(story.steps, cut, story.root, out, random.Random(seed))


def _numbers(recording):
    """Give the numbers of all rows; none of them is wrong."""
    found = []
    for block in recording.blocks("meter"):
        number = block.t_ns // 1_000_000
        np.testing.assert_array_equal(block.t_ns, number * 1_000_000)
        np.testing.assert_array_equal(block.values[:, 0], number * 0.25)
        assert not block.flags.any()
        found += number.tolist()
    assert found == sorted(set(found))
    return found


def _check(story, left, sure):
    recording = Recording.open(left)
    found = _numbers(recording)
    bytes_sure = sure.get("run/data/meter.arrows", 0)
    rows_sure = max((rows for size, rows in story.ends if size <= bytes_sure), default=0)
    assert found[:rows_sure] == list(range(rows_sure))
    raw = [one.data for one in recording.raw("meter")]
    assert raw == [b"%5d" % lot * 40 for lot in range(len(raw))]
    assert len(raw) >= sure.get("run/data/meter.raw", 0) // FRAME
    notes = [event for event in recording.events if event.kind is EventKind.NOTE]
    lines = [one for one in story.marks if one in notes]
    assert notes == lines
    if found != list(range(LOTS * ROWS)):
        assert recording.damage or not recording.is_ended  # what is lost is said
    recording.check()
    return recording, notes


@given(st.floats(0, 1), st.integers(0, 2**32))
@settings(max_examples=150)
@pytest.mark.parametrize("how", ["closed", "killed"])
def test_whenever_the_power_goes_all_that_was_synced_is_there_and_right(
    rig, closed, killed, tmp_path_factory, how, part, seed
):
    story = {"closed": closed, "killed": killed}[how]
    out = tmp_path_factory.mktemp("left") / "out"
    cut, sure = _left(rig, story, part, seed, out)
    left = out / "run"
    if "run/data/about.json" not in sure:
        assert cut < 12  # before the first reading
        return
    _, notes = _check(story, left, sure)
    synced = [one for one in story.steps[:cut] if one.path.name == "events.jsonl"]
    marked = sum(b'"note"' in one.content for one in synced)
    whole = marked if synced and synced[-1].what == "sync" else marked - 1
    assert len(notes) >= whole  # a mark is on the disk as soon as it is taken
    if layout.is_sealed(left):
        assert verify_folder(left).intact
        assert len(_numbers(Recording.open(left))) == LOTS * ROWS
    else:
        seal(left, recovered=True)
        assert verify_folder(left).intact
        assert Recording.open(left).state == "recovered"


@given(st.floats(0, 1), st.integers(0, 2**32))
@settings(max_examples=60)
def test_the_power_goes_while_a_recording_goes_on_elsewhere(
    rig, moved, tmp_path_factory, part, seed
):
    out = tmp_path_factory.mktemp("left") / "out"
    _, sure = _left(rig, moved, part, seed, out)
    spill = out / "elsewhere" / "run-goes-on-1"
    for folder in (out / "run", spill):
        if (folder / layout.ABOUT).exists() and layout.ABOUT in _within(sure, folder, out):
            _numbers(Recording.open(folder))
    if _within(sure, spill, out).get(layout.CONTINUES) and "data/meter.arrows" in _within(
        sure, spill, out
    ):
        joined = join_parts(spill, out / "whole", out / "run")
        found = _numbers(Recording.open(joined.folder))
        assert found[: moved.marks[0]] == list(range(moved.marks[0]))
        assert verify_folder(joined.folder).intact


def _within(sure, folder, out):
    start = f"{folder.relative_to(out).as_posix()}/"
    return {name.removeprefix(start): size for name, size in sure.items() if name.startswith(start)}


@pytest.fixture(scope="module")
def moved(rig, tmp_path_factory):
    """A recording whose disk fails in its middle; all before the last sync there is safe."""
    root = tmp_path_factory.mktemp("moved")
    noted = rig.Noted()
    with noted.watching():
        recorder = MovingRecorder(
            root / "run", rig.models.ABOUT, places=lambda: [root / "elsewhere"]
        )
        recorder.take(rig.models.numbered(0, 700))
        recorder._try(recorder._recorder.sync)
        recorder.take(rig.models.numbered(700, 300))
        recorder._recorder.flush()
        with pytest.raises(DiskFailed, match="goes on in"):
            recorder._move(DiskFailed("could not be written: invented.", subject="x"))
        recorder.take(rig.models.numbered(1000, 500))
        recorder.close()
    return Story(root, noted.steps, [700], [])


@given(
    st.sampled_from(["data/meter.arrows", "data/meter.raw", "data/events.jsonl"]),
    st.floats(0, 1),
    st.booleans(),
    st.sampled_from(["nothing", "zeros", "garbage"]),
)
@settings(max_examples=150)
def test_cut_at_any_byte_or_page_of_any_file_it_opens_and_nothing_in_it_is_wrong(
    rig, closed, tmp_path_factory, name, part, at_a_page, tail
):
    source = closed.root / "run"
    content = (source / name).read_bytes()
    at = round(part * len(content))
    at = at // rig.PAGE * rig.PAGE if at_a_page else at
    # Behind the cut the rest of its page: nothing, zeros or garbage.
    rest = min(rig.PAGE - at % rig.PAGE, len(content) - at)
    torn = {"nothing": b"", "zeros": bytes(rest), "garbage": random.Random(at).randbytes(rest)}[
        tail
    ]
    left = tmp_path_factory.mktemp("cut") / "run"
    (left / "data").mkdir(parents=True)
    for one in ("data/about.json", "data/meter.arrows", "data/meter.raw", "data/events.jsonl"):
        whole = (source / one).read_bytes()
        (left / one).write_bytes(content[:at] + torn if one == name else whole)
    sure = {f"run/{name}": at}
    recording, _ = _check(closed, left, sure)
    # Bytes as they came have no end mark: a cut between two frames is told by the seal alone.
    unseen = name.endswith(".raw") and at % FRAME == 0 and not torn
    if (left / name).read_bytes() != content and not unseen:
        assert recording.check()


def test_a_file_put_in_place_is_on_the_disk_before_it_has_its_name(tmp_path, monkeypatch):
    done = []
    monkeypatch.setattr(
        "meterlog.recording.append_file.sync_descriptor", lambda _: done.append("sync")
    )
    monkeypatch.setattr(
        "meterlog.recording.append_file.sync_folder", lambda _: done.append("names")
    )
    real = Path.replace

    def replace(self, target):
        done.append("rename")
        return real(self, target)

    monkeypatch.setattr(Path, "replace", replace)
    write_aside(tmp_path / "f", b"all of it")
    assert done == ["sync", "rename", "names"]
    assert (tmp_path / "f").read_bytes() == b"all of it"
