"""What kept a recording from being judged and may be gone is tried again; nothing else is."""

import ctypes
import errno
import os
import signal
import subprocess
import sys
import tempfile
from pathlib import Path

import pyarrow.parquet as pq
import pytest

from meterlog.model.errors import EvidenceError, RecordingUnreadable
from meterlog.work.screening.columns import FINDINGS
from meterlog.work.screening.passing import may_pass
from meterlog.work.screening.places import Place
from meterlog.work.screening.reviewing import Asked, as_table, bare_row
from meterlog.work.screening.store import Store
from meterlog.work.screening.workers import review_lots

RIG = Path(__file__).resolve().parents[3] / "rig"
_DROP, _DAC_OVERRIDE, _DAC_READ_SEARCH = 24, 1, 2
_RECORD = """\
import sys, time
from pathlib import Path
sys.path.insert(0, sys.argv[1])
import shelf
from meterlog.recording import Recorder
recorder = Recorder.create(Path(sys.argv[2]), shelf.about(99))
print("on", flush=True)
time.sleep(300)
"""


def _bound_by_rights():
    """Make the program to come obey rights of files though root starts it."""
    if os.geteuid() == 0:
        system = ctypes.CDLL(None, use_errno=True)
        for one in (_DAC_OVERRIDE, _DAC_READ_SEARCH):
            if system.prctl(_DROP, one, 0, 0, 0):
                raise OSError(ctypes.get_errno(), "prctl")


@pytest.fixture
def screened_by_a_program(tmp_path):
    """Screen in a program of its own, which rights of files bind."""
    if not sys.platform.startswith("linux"):
        pytest.skip("rights are told otherwise here")

    def work(folder):
        command = [sys.executable, "-m", "meterlog", "screen", str(folder)]
        command += ["--out", str(tmp_path / "out"), "--threads", "--workers", "1"]
        done = subprocess.run(
            command,
            capture_output=True,
            text=True,
            timeout=240,
            check=True,
            preexec_fn=_bound_by_rights,
        )
        return done, pq.read_table(tmp_path / "out" / "findings.parquet").to_pylist()

    return work


@pytest.mark.parametrize("name", ["data/line-logger.arrows", "data", "manifest-sha256.txt"])
def test_rights_that_were_given_are_seen(make, screened_by_a_program, of, name):
    folder = make("run", 0)
    make("run-2", 1)
    mode = (folder / name).stat().st_mode
    (folder / name).chmod(0)
    try:
        done, rows = screened_by_a_program(folder.parent)
    finally:
        (folder / name).chmod(mode)
    assert "Permission denied" in done.stderr
    assert not [row for row in of(rows, folder=str(folder)) if row["outcome"]]
    done, rows = screened_by_a_program(folder.parent)
    assert "2 recordings, 1 of them known from earlier" in done.stdout
    assert of(rows, folder=str(folder))[0]["outcome"] == "in order"
    assert len(of(rows)) == 2


def test_what_could_not_be_fetched_is_fetched_the_next_time(
    make, screened, tmp_path, monkeypatch, of
):
    import fsspec

    folder = make("run", 0)
    files = fsspec.filesystem("memory")
    files.put(str(folder), "/tried/run", recursive=True)
    try:
        monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "scratch"))
        said, _ = screened("memory://tried")
        ((_, why),) = said.not_judged
        assert "can't be fetched" in why
        assert "screen once more" in why
        (tmp_path / "scratch").mkdir()
        said, rows = screened("memory://tried")
    finally:
        files.rm("/tried", recursive=True)
    assert said.reviewed == 1
    assert [row["outcome"] for row in of(rows)] == ["in order"]


def test_a_recording_whose_program_was_killed_is_no_longer_being_recorded(tmp_path, screened, of):
    (tmp_path / "own").mkdir()
    with subprocess.Popen(
        [sys.executable, "-c", _RECORD, str(RIG), str(tmp_path / "own" / "now")],
        stdout=subprocess.PIPE,
    ) as child:
        assert child.stdout.readline() == b"on\n"
        _, rows = screened(tmp_path / "own")
        assert [row["state"] for row in of(rows)] == ["being recorded"]
        child.send_signal(signal.SIGKILL)
    said, rows = screened(tmp_path / "own")
    assert said.reviewed == 1
    assert [row["state"] for row in of(rows)] != ["being recorded"]
    assert len(of(rows)) == 1


class Deadly(Place):
    """Ends the worker that is given it, as running out of memory does."""

    def __reduce__(self):
        return os._exit, (3,)


@pytest.mark.slow
def test_one_at_which_the_worker_died_is_tried_again(tmp_path):
    store = Store(tmp_path / "out")
    deadly = Deadly("deadly", local=True, key="k")
    with store.alone():
        review_lots([(deadly,)], Asked("a"), _one(), lambda lot, rows: store.keep(rows))
        assert store.gather({"deadly": "k"}, "a").num_rows == 1
        assert store.done() == {}


def _one():
    from meterlog.work.screening import Workers

    return Workers(1)


def test_what_lies_in_the_recording_is_not_tried_again(make, screened):
    for name, spoil in (
        ("no-head", lambda folder: (folder / "data" / "about.json").write_text("{")),
        ("no-readings", lambda folder: (folder / "data" / "line-logger.arrows").unlink()),
        ("no-manifest", lambda folder: os.truncate(folder / "manifest-sha256.txt", 2 << 30)),
    ):
        spoil(folder := make(name, 0))
    screened(folder.parent)
    assert screened(folder.parent)[0].reviewed == 0


@pytest.mark.parametrize(
    ("error", "passing"),
    [
        (PermissionError(errno.EACCES, "no"), True),
        (OSError(errno.EIO, "no"), True),
        (MemoryError(), True),
        (FileNotFoundError(errno.ENOENT, "no"), False),
        (OSError(errno.EFBIG, "no"), False),
        (ValueError("no"), False),
        (RecordingUnreadable("is none."), False),
    ],
)
def test_what_may_pass_is_told_by_what_it_came_from(error, passing):
    assert may_pass(error) is passing
    told = EvidenceError("can't be read.")
    told.__cause__ = error
    assert may_pass(told) is passing


def test_of_several_tries_what_stands_counts_else_the_newest(tmp_path):
    store, asked = Store(tmp_path / "out"), Asked("a")

    def row(name, reason, *, passing):
        place = Place(name, local=True, key="k")
        return as_table([bare_row(place, asked, reason, passing=passing)])

    with store.alone():
        store.keep(row("b", "stands", passing=False))
        for reason in ("first", "second"):
            store.keep(row("a", reason, passing=True))
            store.keep(row("b", reason, passing=True))
        rows = store.gather({"a": "k", "b": "k"}, "a")
        assert rows["reason"].to_pylist() == ["second", "stands"]
        assert store.done() == {"b": ("k", "a")}
        assert rows.schema.equals(FINDINGS)
