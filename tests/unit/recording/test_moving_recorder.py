"""A disk fails, and the recording goes on elsewhere: nothing is lost, and both parts say so."""

import errno
import os
import shutil
from pathlib import Path

import numpy as np
import pytest

from meterlog.evidence import verify_folder
from meterlog.model import Event as Happening
from meterlog.model import EventKind, RawBytes, join
from meterlog.model.errors import DiskFailed, RecordingExists, RecordingUnreadable, UsageError
from meterlog.recording import (
    MovingRecorder,
    Recording,
    find_unsealed,
    join_parts,
    layout,
    moving_recorder,
    seal,
)
from meterlog.recording import spill_places as where
from meterlog.recording.continuation import kept_continuation


class Disks:
    """Makes writes or syncs fail for files below a folder."""

    def __init__(self, monkeypatch):
        self._sick = {}
        self._paths = {}
        real_open, real_close = os.open, os.close
        real_writev, real_sync = os.writev, os.fsync

        def opened(path, *args, **kw):
            descriptor = real_open(path, *args, **kw)
            self._paths[descriptor] = str(path)
            return descriptor

        def close(descriptor):
            self._paths.pop(descriptor, None)
            real_close(descriptor)

        def writev(descriptor, views):
            self._refuse(descriptor, "write")
            return real_writev(descriptor, views)

        def fsync(descriptor):
            self._refuse(descriptor, "sync")
            return real_sync(descriptor)

        monkeypatch.setattr(os, "open", opened)
        monkeypatch.setattr(os, "close", close)
        monkeypatch.setattr(os, "writev", writev)
        monkeypatch.setattr(os, "fsync", fsync)

    def fail(self, folder, what, number):
        """From now on."""
        self._sick[str(folder)] = (what, number)

    def _refuse(self, descriptor, doing):
        path = self._paths.get(descriptor, "")
        for folder, (what, number) in self._sick.items():
            if path.startswith(folder) and what == doing:
                raise OSError(number, os.strerror(number))


@pytest.fixture
def disks(monkeypatch):
    return Disks(monkeypatch)


@pytest.fixture
def told():
    return []


@pytest.fixture
def recorder(maker, disks):
    places = [maker.folder / "first" / "elsewhere", maker.folder / "second"]
    made = MovingRecorder(maker.folder / "run", maker.about(maker.instrument()),
                          places=lambda: places)  # fmt: skip
    yield made
    made.close()


def feed(recorder, maker, first, last, told, *, every=20):
    """Take rows ``first`` to ``last`` with their bytes; flush after each lot."""
    for start in range(first, last, every):
        for item in (
            RawBytes("bench", start, b"%6d" % start),
            maker.block("bench", start, min(every, last - start)),
        ):
            _said(lambda item=item: recorder.take(item), told)
        _said(lambda: recorder._try(recorder._recorder.flush), told)


def _said(step, told):
    try:
        step()
    except DiskFailed as error:
        told.append(str(error))


def rows_of(folder):
    blocks = list(Recording.open(folder).blocks("bench"))
    return join(blocks) if blocks else None


@pytest.mark.parametrize(
    ("what", "number"),
    [("write", errno.ENOSPC), ("write", errno.EIO), ("sync", errno.EIO), ("write", errno.EROFS)],
)
def test_it_goes_on_elsewhere_and_is_put_together_without_a_loss(
    recorder, maker, disks, told, same, what, number
):
    recorder.take(Happening(0, EventKind.SPEED, "2"))
    feed(recorder, maker, 0, 100, told)
    recorder._try(recorder._recorder.sync)
    feed(recorder, maker, 100, 200, told)
    disks.fail(recorder.parts[0], what, number)
    feed(recorder, maker, 200, 300, told)
    _said(lambda: recorder._try(recorder._recorder.sync), told)
    feed(recorder, maker, 300, 400, told)
    recorder.take(Happening(1, EventKind.TAP))
    recorder.close()
    first, spill = recorder.parts
    assert len(told) == 1
    assert os.strerror(number) in told[0]
    assert f"The recording goes on in {spill}" in told[0]
    assert recorder.moved.endswith(f"The recording goes on in {spill}.")
    assert (recorder.failed, recorder.lost_rows, recorder.rows) == ("", 0, {"bench": 400})
    begun = kept_continuation(spill)
    assert (begun.folder, begun.rows, begun.frames) == (first, {"bench": 100}, {"bench": 5})
    # each part stands by itself, and knows the other; the commanded speed is in both
    same(rows_of(spill), maker.block("bench", 100, 300))
    speeds = [one.value for one in Recording.open(spill).events if one.kind is EventKind.SPEED]
    faults = [one.value for one in Recording.open(spill).events if one.kind is EventKind.FAULT]
    assert speeds == ["2"]
    assert faults[0].startswith(f"goes on from {first}: ")
    assert find_unsealed(maker.folder) == (first,)
    joined = join_parts(spill, maker.folder / "whole")
    whole = Recording.open(joined.folder)
    assert (joined.missing, whole.check(), whole.state) == ({}, (), "sealed")
    assert verify_folder(joined.folder).intact
    same(join(list(whole.blocks("bench"))), maker.block("bench", 0, 400))
    raw = [one.data for one in whole.raw("bench")]
    assert raw == [b"%6d" % start for start in range(0, 400, 20)]
    kinds = [one.kind for one in whole.events if one.kind is not EventKind.FAULT]
    assert kinds == [EventKind.SPEED, EventKind.TAP, EventKind.END]
    assert any(one.value.startswith("put together of 2 parts") for one in whole.events)


def test_a_folder_that_is_moved_away_is_noticed_at_the_next_sync(recorder, maker, told, same):
    feed(recorder, maker, 0, 60, told)
    recorder.parts[0].rename(maker.folder / "taken out")
    feed(recorder, maker, 60, 100, told)
    assert told == []
    _said(lambda: recorder._try(recorder._recorder.sync), told)
    assert "its folder was moved away, or its disk was taken out" in told[0]
    recorder.close()
    with pytest.raises(RecordingUnreadable, match="the part before it is not there"):
        join_parts(recorder.parts[1], maker.folder / "whole")
    assert not (maker.folder / "whole").exists()
    joined = join_parts(recorder.parts[1], maker.folder / "whole", maker.folder / "taken out")
    same(rows_of(joined.folder), maker.block("bench", 0, 100))


def test_the_folder_one_is_in_goes_and_nothing_is_lost(maker, told, same, monkeypatch):
    here = maker.folder / "here"
    here.mkdir()
    monkeypatch.chdir(here)
    about = maker.about(maker.instrument())
    recorder = MovingRecorder(Path("run"), about, places=lambda: [maker.folder / "elsewhere"])
    feed(recorder, maker, 0, 60, told)
    shutil.rmtree(here)
    _said(lambda: recorder._try(recorder._recorder.sync), told)
    feed(recorder, maker, 60, 100, told)
    recorder.close()
    first, spill = recorder.parts
    assert (first, spill.parent) == (here / "run", maker.folder / "elsewhere")
    assert (recorder.failed, recorder.lost_rows) == ("", 0)
    assert kept_continuation(spill).folder == first
    same(rows_of(spill), maker.block("bench", 0, 100))


def test_places_are_meant_from_where_it_was_begun(maker, told, same, monkeypatch):
    monkeypatch.chdir(maker.folder)
    about = maker.about(maker.instrument())
    recorder = MovingRecorder(Path("run"), about, places=lambda: [Path("elsewhere")])
    feed(recorder, maker, 0, 60, told)
    monkeypatch.chdir("/")
    recorder.parts[0].rename(maker.folder / "taken out")
    _said(lambda: recorder._try(recorder._recorder.sync), told)
    recorder.close()
    assert recorder.parts[1] == maker.folder / "elsewhere" / "run-goes-on-1"
    same(rows_of(recorder.parts[1]), maker.block("bench", 0, 60))


def test_nothing_is_said_to_be_lost_while_it_moves(maker, told):
    seen = []

    def places():
        seen.append((recorder.failed, recorder._recorder.failed != ""))
        return [maker.folder / "elsewhere"]

    recorder = MovingRecorder(maker.folder / "run", maker.about(maker.instrument()), places=places)
    feed(recorder, maker, 0, 60, told)
    recorder.parts[0].rename(maker.folder / "taken out")
    _said(lambda: recorder._try(recorder._recorder.sync), told)
    assert seen == [("", True)]
    assert recorder.failed == ""
    recorder.close()
    assert recorder.failed == ""


def test_a_move_that_breaks_off_is_told(maker, told):
    def places():
        raise FileNotFoundError(2, "No usable temporary directory found")

    recorder = MovingRecorder(maker.folder / "run", maker.about(maker.instrument()), places=places)
    feed(recorder, maker, 0, 60, told)
    recorder.parts[0].rename(maker.folder / "taken out")
    with pytest.raises(FileNotFoundError):
        recorder._try(recorder._recorder.sync)
    assert "is no longer where it was made" in recorder.failed
    recorder.close()


def test_a_move_that_hangs_is_told_after_a_moment(maker, told, monkeypatch):
    seen, now = [], [100.0]
    monkeypatch.setattr(moving_recorder.time, "monotonic", lambda: now[0])

    def places():
        for later_s in (0.0, 1.9, 2.1):
            now[0] = 100.0 + later_s
            seen.append(bool(recorder.failed))
        return [maker.folder / "elsewhere"]

    recorder = MovingRecorder(maker.folder / "run", maker.about(maker.instrument()), places=places)
    feed(recorder, maker, 0, 60, told)
    recorder.parts[0].rename(maker.folder / "taken out")
    _said(lambda: recorder._try(recorder._recorder.sync), told)
    assert seen == [False, False, True]
    assert recorder.failed == ""
    recorder.close()


def test_the_next_place_is_taken_where_one_fails_and_so_are_three_parts_joined(
    recorder, maker, disks, told, same
):
    feed(recorder, maker, 0, 100, told)
    disks.fail(recorder.parts[0], "write", errno.ENOSPC)
    feed(recorder, maker, 100, 160, told)
    recorder._try(recorder._recorder.sync)
    disks.fail(maker.folder / "first", "write", errno.ENOSPC)
    feed(recorder, maker, 160, 240, told)
    recorder.close()
    assert [part.parent.name for part in recorder.parts[1:]] == ["elsewhere", "second"]
    assert len(told) == 2
    assert recorder.rows == {"bench": 240}
    joined = join_parts(recorder.parts[-1], maker.folder / "whole")
    assert len(joined.parts) == 3
    same(rows_of(joined.folder), maker.block("bench", 0, 240))
    assert sum(1 for _ in Recording.open(joined.folder).raw("bench")) == 12


def test_where_no_place_takes_it_all_of_them_are_named_and_what_is_lost_is_counted(
    recorder, maker, disks, told
):
    feed(recorder, maker, 0, 100, told)
    disks.fail(maker.folder, "write", errno.ENOSPC)
    feed(recorder, maker, 100, 200, told)
    assert len(told) == 1
    assert "could not go on elsewhere either" in told[0]
    assert str(maker.folder / "second") in told[0]
    assert recorder.failed
    assert (recorder.moved, recorder.lost_rows, len(recorder.parts)) == ("", 100, 1)
    assert recorder._since == []  # kept for nobody
    # nothing half made is left where it was tried
    assert list((maker.folder / "second").iterdir()) == []


def test_a_place_that_is_another_users_is_passed_over(recorder, maker, disks, told, monkeypatch):
    monkeypatch.setattr(
        "meterlog.recording.moving_recorder.is_own", lambda place: place.name != "elsewhere"
    )
    feed(recorder, maker, 0, 20, told)
    disks.fail(recorder.parts[0], "write", errno.ENOSPC)
    feed(recorder, maker, 20, 40, told)
    assert recorder.parts[1].parent.name == "second"


def test_what_the_disk_has_kept_is_let_go(recorder, maker, told):
    feed(recorder, maker, 0, 100, told)
    assert len(recorder._since) == 10
    recorder._try(recorder._recorder.sync)
    assert recorder._since == []
    assert recorder._rows == {"bench": 100}


def test_a_recording_that_goes_on_is_offered_with_the_folder_it_was_begun_in(
    recorder, maker, disks, told, monkeypatch
):
    monkeypatch.setenv(where.PLACE, str(maker.folder / "first" / "elsewhere"))
    feed(recorder, maker, 0, 20, told)
    disks.fail(recorder.parts[0], "write", errno.ENOSPC)
    feed(recorder, maker, 20, 40, told)
    recorder._recorder._lock.release()  # as if the program had died
    assert find_unsealed(maker.folder) == (recorder.parts[1], recorder.parts[0])
    assert find_unsealed(maker.folder / "other") == ()
    seal(recorder.parts[1], recovered=True)
    joined = join_parts(recorder.parts[1], maker.folder / "whole")
    assert Recording.open(joined.folder).state == "recovered"  # nobody ended it


def test_rows_that_are_in_no_part_are_counted(recorder, maker, disks, told):
    feed(recorder, maker, 0, 100, told)
    recorder._try(recorder._recorder.sync)
    disks.fail(recorder.parts[0], "write", errno.ENOSPC)
    feed(recorder, maker, 100, 140, told)
    recorder.close()
    # the disk had lied: of what it was said to have kept, half is gone
    path = recorder.parts[0] / layout.arrows("bench")
    path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])
    joined = join_parts(recorder.parts[1], maker.folder / "whole")
    number = np.concatenate([one.t_ns for one in Recording.open(joined.folder).blocks("bench")])
    assert 0 < joined.missing["bench"] == 140 - len(number)
    assert any("are in none of them" in one.value for one in Recording.open(joined.folder).events)


def test_only_parts_of_one_recording_are_joined(recorder, maker, disks, told):
    feed(recorder, maker, 0, 20, told)
    disks.fail(recorder.parts[0], "write", errno.ENOSPC)
    feed(recorder, maker, 20, 40, told)
    recorder.close()
    maker.small("other", channels=1)
    with pytest.raises(RecordingUnreadable, match="part of another recording"):
        join_parts(recorder.parts[1], maker.folder / "whole", maker.folder / "other")
    with pytest.raises(UsageError, match="goes on with no other recording"):
        join_parts(maker.folder / "other", maker.folder / "whole")
    with pytest.raises(RecordingExists):
        join_parts(recorder.parts[1], maker.folder / "other")
    note = recorder.parts[1] / layout.CONTINUES
    note.write_bytes(note.read_bytes().replace(b"run", b"rum"))
    with pytest.raises(RecordingUnreadable, match="nobody knows what this recording goes on with"):
        join_parts(recorder.parts[1], maker.folder / "whole")
    assert find_unsealed(maker.folder)  # and a damaged note hides nothing else


def test_where_it_goes_on_is_the_named_folder_then_the_users_own(monkeypatch, tmp_path):
    monkeypatch.setenv(where.PLACE, str(tmp_path))
    places = where.spill_places()
    assert places[0] == tmp_path
    assert len(places) == 3
    monkeypatch.delenv(where.PLACE)
    assert where.spill_places() == places[1:]
    assert where.is_own(tmp_path)
    (tmp_path / "link").symlink_to(tmp_path)
    assert not where.is_own(tmp_path / "link")
