"""What somebody put in the place of a seal or of edits stops nothing and fills no memory."""

import os
import threading
from types import SimpleNamespace

import fsspec
import pytest
from fsspec.implementations.dirfs import DirFileSystem

from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.recording import layout
from meterlog.work.amendments import add_amendment, amendments_path
from meterlog.work.screening import small_files
from meterlog.work.screening.fetching import FetchFailed, at_hand
from meterlog.work.screening.places import places_in
from meterlog.work.screening.small_files import read_small

_PIPES = (layout.MANIFEST, layout.BAG_INFO, layout.BAGIT, ".amendments.jsonl")


def within(seconds, work):
    """Do something that might wait for ever."""
    done = []
    doing = threading.Thread(target=lambda: done.append(work()), daemon=True)
    doing.start()
    doing.join(seconds)
    assert done, "it waits"
    return done[0]


@pytest.mark.parametrize("name", _PIPES)
def test_a_pipe_in_a_recording_is_a_row_and_the_others_are_judged(make, screened, of, name):
    bad, good = make("bad", 0), make("good", 1)
    path = bad.with_name(bad.name + name) if name.startswith(".") else bad / name
    path.unlink(missing_ok=True)
    os.mkfifo(path)
    said, rows = within(60.0, lambda: screened(bad.parent))
    assert of(rows, folder=str(good))[0]["outcome"] == "in order"
    (row,) = of(rows, folder=str(bad))
    assert row["outcome"] is None
    assert said.recordings == 2


def test_a_manifest_that_is_a_hole_is_a_row(make, screened, of):
    bad, good = make("bad", 0), make("good", 1)
    os.truncate(bad / layout.MANIFEST, 6 << 30)
    said, rows = screened(bad.parent)
    assert of(rows, folder=str(good))[0]["outcome"] == "in order"
    assert "hole of more than 1 GiB" in dict(said.not_judged)[str(bad)]


def test_one_that_nobody_thought_of_is_a_row(make, screened, of, monkeypatch):
    bad, good = make("bad", 0), make("good", 1)

    def read(files, path, *, local):
        if str(bad) in path:
            raise RuntimeError("nobody thought of it")
        return read_small(files, path, local=local)

    monkeypatch.setattr("meterlog.work.screening.places.read_small", read)
    said, rows = screened(bad.parent)
    assert of(rows, folder=str(good))[0]["outcome"] == "in order"
    assert "nobody thought of it" in dict(said.not_judged)[str(bad)]


def test_in_a_store_a_list_that_is_too_long_or_no_file_is_refused_unread(tmp_path, monkeypatch):
    monkeypatch.setattr(small_files, "MOST_TEXT_BYTES", 1000)
    files = DirFileSystem(str(tmp_path), fs=fsspec.filesystem("file"))
    (tmp_path / "long").write_bytes(bytes(1001))
    (tmp_path / "fits").write_bytes(bytes(1000))
    os.mkfifo(tmp_path / "pipe")
    assert read_small(files, "fits", local=False) == bytes(1000)
    with pytest.raises(OSError, match="it is longer than"):
        read_small(files, "long", local=False)
    assert "it is a pipe" in within(10.0, lambda: _why(files, "pipe"))


def _why(files, name):
    try:
        return read_small(files, name, local=False)
    except OSError as error:
        return str(error)


def test_a_pipe_in_a_store_is_not_fetched(make, monkeypatch):
    folder = make("run", 0)
    files = DirFileSystem(str(folder.parent), fs=fsspec.filesystem("file"))
    os.mkfifo(folder / "data" / "pipe")
    (place,) = places_in([str(folder.parent)], lambda: None)
    far = SimpleNamespace(url="run", local=False, key=place.key)
    monkeypatch.setattr("meterlog.work.screening.fetching.opened", lambda url: (files, url))

    def fetch():
        try:
            with at_hand(far):
                return ""
        except FetchFailed as error:
            return str(error)

    assert "it is a pipe" in within(30.0, fetch)


@pytest.mark.parametrize("name", [layout.MANIFEST, ".amendments.jsonl", ".amendments.count"])
def test_the_reason_names_the_file_that_is_a_pipe(make, screened, name):
    bad = make("bad", 0)
    path = bad.with_name(bad.name + name) if name.startswith(".") else bad / name
    path.unlink(missing_ok=True)
    os.mkfifo(path)
    said, _ = within(60.0, lambda: screened(bad.parent))
    ((_, why),) = said.not_judged
    assert f"{path}: " in why
    assert "it is a pipe or a device, not a file" in why


def test_the_reason_names_the_file_of_the_seal_that_is_a_pipe(make, screened):
    bad = make("bad", 0)
    (bad / layout.BAG_INFO).unlink()
    os.mkfifo(bad / layout.BAG_INFO)
    said, _ = within(60.0, lambda: screened(bad.parent))
    ((_, why),) = said.not_judged
    assert why.startswith(f"{bad / layout.BAG_INFO}: ")


def _cut_off(edits):
    edits.write_bytes(b"".join(edits.read_bytes().splitlines(keepends=True)[:-1]))


@pytest.mark.parametrize(
    ("harm", "told"),
    [
        (lambda edits: edits.write_text('{"edit":'), "line 1 is damaged and left out"),
        (_cut_off, "edits at its end are missing"),
        (lambda edits: edits.unlink(), "edits at its end are missing"),
    ],
    ids=["damaged", "cut off", "only their count is left"],
)
def test_edits_that_are_not_whole_are_the_reason_in_their_row(make, screened, of, harm, told):
    run, good = make("run", 1), make("good", 2)
    for old, new in (("3", "2"), ("2", "3")):
        add_amendment(run, Amendment(AmendmentKind.STEP, "", 0, old, new, "A. Test", "a test"))
    harm(amendments_path(run))
    _, rows = screened(run.parent)
    (row,) = of(rows, folder=str(run))
    assert row["reason"].startswith(f"EDITS NOT WHOLE: {run.name}.amendments.jsonl: ")
    assert told in row["reason"]
    assert row["not_good"]
    assert of(rows, folder=str(good))[0]["reason"] == ""
