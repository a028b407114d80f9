"""Links and what other users left at the lock of a file: all is told, nothing goes elsewhere."""

import os

import pytest

from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import DiskFailed, EvidenceError
from meterlog.recording import layout
from meterlog.work.amendments import add_amendment, amendments_of, amendments_path
from meterlog.work.file_lock import alone_with

fcntl = pytest.importorskip("fcntl")
LIMIT = Amendment(AmendmentKind.LIMIT, "speed.1.max_a", None, "12", "10", "N. N.", "data sheet")


@pytest.fixture
def run(tmp_path):
    """As much of a recording as edits need."""
    folder = tmp_path / "run"
    (folder / layout.ABOUT).parent.mkdir(parents=True)
    (folder / layout.ABOUT).write_text("{}")
    return folder


def lock_of(path):
    return path.with_name(f".{path.name}.lock")


@pytest.mark.parametrize("there", [True, False])
def test_a_link_in_the_place_of_the_lock_is_not_followed(run, tmp_path, there):
    target, lock = tmp_path / "target", lock_of(amendments_path(run))
    if there:
        target.write_text("another's")
    lock.symlink_to(target)
    with pytest.raises(DiskFailed, match="it is a link") as caught:
        add_amendment(run, LIMIT)
    assert caught.value.subject == str(lock)
    assert "take it away" in caught.value.remedy
    assert target.exists() == there
    assert not amendments_path(run).exists()
    lock.unlink()
    add_amendment(run, LIMIT)
    assert not lock.exists()


@pytest.mark.parametrize("there", [True, False])
def test_edits_are_not_written_through_a_link(run, tmp_path, there):
    target = tmp_path / "target"
    if there:
        target.write_bytes(b"")
    amendments_path(run).symlink_to(target)
    with pytest.raises(EvidenceError, match="is a link") as caught:
        add_amendment(run, LIMIT)
    assert caught.value.subject == str(amendments_path(run))
    assert target.exists() == there
    assert not there or target.read_bytes() == b""
    amendments_path(run).unlink()
    made = add_amendment(run, LIMIT)
    assert amendments_of(run) == ((made,), ())


@pytest.mark.parametrize("make", [os.mkfifo, os.mkdir])
def test_a_pipe_or_a_folder_is_no_lock(tmp_path, make):
    path = tmp_path / "card.json"
    make(lock_of(path))
    with pytest.raises(DiskFailed, match="it is a ") as caught, alone_with(path):
        pass
    assert caught.value.subject == str(lock_of(path))


@pytest.mark.parametrize("number", [1, 13])
def test_another_users_lock_is_named_and_what_to_do(tmp_path, monkeypatch, number):
    path, real = tmp_path / "card.json", os.open
    lock_of(path).touch()

    def opened(name, *args, **options):
        if str(name) == str(lock_of(path)):
            raise PermissionError(number, os.strerror(number))
        return real(name, *args, **options)

    monkeypatch.setattr(os, "open", opened)
    with pytest.raises(DiskFailed) as caught, alone_with(path):
        pass
    assert caught.value.subject == str(lock_of(path))
    assert "of another user perhaps" in caught.value.remedy


def test_where_the_folder_takes_nothing_the_lock_is_not_blamed(tmp_path):
    with pytest.raises(FileNotFoundError), alone_with(tmp_path / "absent" / "card.json"):
        pass
