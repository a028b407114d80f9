"""Whether a recording is being written is told rightly: to other users, to many at once."""

import errno
import os
import threading

import pytest

from meterlog.evidence import verify_folder
from meterlog.model.errors import DiskFailed, EvidenceError, RecordingUnreadable
from meterlog.recording import Recorder, find_unsealed, layout, seal
from meterlog.recording import recorder as recorder_module
from meterlog.recording.writer_lock import WriterLock, is_being_written
from meterlog.work.file_lock import alone_with

fcntl = pytest.importorskip("fcntl")


def test_a_running_recording_is_not_sealed_by_another_user(running, as_another_user, shared):
    folder = running.folder
    assert as_another_user(lambda: is_being_written(folder))
    assert as_another_user(lambda: len(find_unsealed(shared))) == 0
    told = as_another_user(lambda: seal(folder, recovered=True))
    assert told.startswith(f"EvidenceError: {folder}: is being recorded or sealed")
    running.close()
    seal(folder)
    assert verify_folder(folder).intact


def test_one_that_was_cut_off_is_sealed_by_another_user(running, as_another_user):
    folder = running.folder
    running.close()
    (folder / layout.LOCK).touch(0o644)
    assert as_another_user(lambda: seal(folder, recovered=True)) is None
    assert verify_folder(folder).intact
    assert not (folder / layout.LOCK).exists()


def test_a_lock_that_may_not_be_looked_at_counts_and_is_named(running, as_another_user):
    folder = running.folder
    running.close()
    (folder / layout.LOCK).touch(0o600)
    assert as_another_user(lambda: is_being_written(folder))
    told = as_another_user(lambda: seal(folder, recovered=True))
    assert f"EvidenceError: {folder / layout.LOCK}: can't be used as a lock: Permission" in told
    assert "take it away" in told
    assert not layout.is_sealed(folder)


def test_another_users_lock_of_a_file_is_named_and_what_to_do(shared, as_another_user):
    card = shared / "card.json"
    lock = shared / ".card.json.lock"
    lock.touch(0o600)

    def change():
        with alone_with(card):
            return "changed"

    told = as_another_user(change)
    assert told.startswith(f"DiskFailed: {lock}: can't be used as a lock: Permission denied.")
    assert "take it away" in told
    lock.unlink()
    assert as_another_user(change) == "changed"


def test_those_who_look_at_once_are_not_in_each_others_way(maker):
    folder = maker.small().folder
    (folder / layout.LOCK).touch()
    looking = os.open(folder / layout.LOCK, os.O_RDONLY)
    fcntl.flock(looking, fcntl.LOCK_SH)
    try:
        assert not is_being_written(folder)
        assert find_unsealed(folder) == (folder,)
    finally:
        os.close(looking)


def test_who_looks_just_as_a_recording_begins_does_not_keep_it_from_its_lock(tmp_path, monkeypatch):
    real, looking = os.open, []

    def opened(path, flags, *args, **options):
        descriptor = real(path, flags, *args, **options)
        if flags & os.O_EXCL:
            looking.append(real(path, os.O_RDONLY))
            fcntl.flock(looking[0], fcntl.LOCK_SH)
            threading.Timer(0.1, os.close, looking).start()
        return descriptor

    monkeypatch.setattr(os, "open", opened)
    lock = WriterLock(tmp_path)
    assert looking
    assert is_being_written(tmp_path)
    lock.release()
    lock.release()
    assert list(tmp_path.iterdir()) == []


def test_where_there_are_no_locks_nothing_counts_as_being_recorded_for_ever(maker, monkeypatch):
    def flock(descriptor, operation):
        raise OSError(errno.EOPNOTSUPP, os.strerror(errno.EOPNOTSUPP))

    monkeypatch.setattr(fcntl, "flock", flock)
    recorder = maker.small()
    (recorder.folder / layout.LOCK).touch()  # its program was killed
    assert not is_being_written(recorder.folder)
    assert find_unsealed(recorder.folder) == (recorder.folder,)
    seal(recorder.folder, recovered=True)
    assert verify_folder(recorder.folder).intact


@pytest.mark.parametrize("kind", ["link", "dangling", "pipe", "folder"])
def test_what_is_no_file_is_no_lock_and_is_not_opened(maker, tmp_path, kind):
    folder, target = maker.small().folder, tmp_path / "target"
    lock = folder / layout.LOCK
    if kind == "link":
        target.write_text("another's")
        held = os.open(target, os.O_RDONLY)
        fcntl.flock(held, fcntl.LOCK_EX)
    if kind in {"link", "dangling"}:
        lock.symlink_to(target)
    elif kind == "pipe":
        os.mkfifo(lock)
    else:
        lock.mkdir()
    assert not is_being_written(folder)
    with pytest.raises(EvidenceError, match="it is a ") as caught:
        seal(folder, recovered=True)
    assert caught.value.subject == str(lock)
    assert "take it away" in caught.value.remedy
    assert target.exists() == (kind == "link")
    if kind == "link":
        os.close(held)


def test_one_that_is_being_begun_is_never_found_as_cut_off(maker, monkeypatch):
    real, seen = recorder_module.write_aside, []

    def written(path, content):
        real(path, content)
        seen.append((is_being_written(path.parent.parent), find_unsealed(maker.folder)))

    monkeypatch.setattr(recorder_module, "write_aside", written)
    maker.small()
    assert seen == [(True, ())]


@pytest.mark.parametrize("there", [False, True])
def test_one_that_could_not_be_begun_leaves_nothing_and_can_be_begun_again(
    maker, monkeypatch, there
):
    def refused(path, content):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    folder = maker.folder / "run"
    if there:
        folder.mkdir()
    about = maker.about(maker.instrument())
    with monkeypatch.context() as full:
        full.setattr(recorder_module, "write_aside", refused)
        with pytest.raises(DiskFailed):
            Recorder.create(folder, about)
    assert folder.exists() == there
    assert not there or list(folder.iterdir()) == []
    Recorder.create(folder, about).close()


def test_what_is_no_recording_gets_no_lock(tmp_path):
    with pytest.raises(RecordingUnreadable):
        seal(tmp_path)
    assert list(tmp_path.iterdir()) == []
