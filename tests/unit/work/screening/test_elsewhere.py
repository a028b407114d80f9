"""Recordings that lie in object stores are fetched, reviewed and removed."""

import shutil
import tempfile
import threading

import fsspec
import pytest

from meterlog.work.screening.places import places_in

_SAME = ("row", "state", "outcome", "statement", "current_a", "kind", "number", "not_good")


@pytest.fixture
def store(made_shelf):
    files = fsspec.filesystem("memory")
    files.put(str(made_shelf), "/archive/shelf", recursive=True)
    yield files
    files.rm("/archive", recursive=True)


def test_the_rows_are_those_of_the_same_recordings_on_a_disk(
    made_shelf, store, screened, tmp_path, monkeypatch
):
    scratch = tmp_path / "scratch"
    scratch.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(scratch))
    said, rows = screened("memory://archive/shelf", out="far")
    _, here = screened(made_shelf, out="here")
    assert [[row[name] for name in _SAME] for row in rows] == [
        [row[name] for name in _SAME] for row in here
    ]
    assert rows[0]["folder"] == "memory:///archive/shelf/2026-01/run-000000"
    assert not list(scratch.iterdir())
    again, _ = screened("memory://archive/shelf", out="far")
    assert again.reviewed == 0
    assert said.reviewed == 15


def test_one_at_a_time_lies_in_the_temporary_folder(store, screened, tmp_path, monkeypatch):
    scratch = tmp_path / "scratch"
    scratch.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(scratch))
    most, stop = [0], threading.Event()

    def watch():
        while not stop.is_set():
            most[0] = max(most[0], sum(one.is_dir() for one in scratch.iterdir()))

    watcher = threading.Thread(target=watch)
    watcher.start()
    screened("memory://archive/shelf")
    stop.set()
    watcher.join()
    assert most[0] == 1


def test_an_edit_and_another_seal_there_are_seen(store, screened):
    screened("memory://archive/shelf")
    place = "/archive/shelf/2026-01/run-000000"
    store.pipe(f"{place}.amendments.jsonl", b"{}\n")
    store.pipe("/archive/shelf/2026-02/run-000001/data/extra.txt", b"x")
    said, rows = screened("memory://archive/shelf")
    assert said.reviewed == 2
    heads = {row["folder"].rpartition("-")[2]: row for row in rows if row["number"] == 0}
    assert heads["000000"]["edits"] == 1
    assert heads["000001"]["state"] == "changed"


def test_what_goes_away_meanwhile_is_a_row(store, screened):
    def gone(done, whole):
        if whole and done == 0:
            store.rm("/archive/shelf/2026-01/run-000000", recursive=True)

    said, _ = screened("memory://archive/shelf", progress=gone)
    reasons = dict(said.not_judged)
    assert "is not there any more" in reasons["memory:///archive/shelf/2026-01/run-000000"]


def test_a_mounted_archive_by_its_file_address_is_local(made_shelf):
    plain = places_in([str(made_shelf)], lambda: None)
    told = places_in([f"file://{made_shelf}"], lambda: None)
    assert told == plain
    assert all(one.local for one in told)


def test_zip_archives_are_read_in_place(made_shelf, tmp_path, screened):
    archive = shutil.make_archive(str(tmp_path / "shelf"), "zip", made_shelf)
    said, rows = screened(f"zip://::file://{archive}")
    assert said.recordings == 15
    assert said.outcomes["in order"] >= 10
    assert rows[0]["folder"]
