"""The self-test on a full disk: it says that it found no room, and leaves nothing anywhere."""

import errno
import os
import sys
from pathlib import Path

import pytest

from meterlog.recording import append_file
from meterlog.work.doctor import self_test
from meterlog.work.doctor.look import State

pytestmark = [
    pytest.mark.pty,
    pytest.mark.skipif(sys.platform != "linux", reason="asks which file a number stands for"),
]


@pytest.fixture
def full(tmp_path, monkeypatch):
    """A folder for things in passing whose disk takes no more after a while, and the user's own."""
    passing, own = tmp_path / "passing", tmp_path / "own"
    passing.mkdir()
    monkeypatch.setattr("tempfile.tempdir", str(passing))
    for name in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME"):
        monkeypatch.setenv(name, str(own))
    monkeypatch.setenv("METERLOG_ELSEWHERE", str(own / "elsewhere"))
    write, left = os.writev, [20_000]

    def limited(descriptor, pieces):
        if Path(f"/proc/self/fd/{descriptor}").readlink().is_relative_to(passing):
            left[0] -= sum(len(one) for one in pieces)
            if left[0] < 0:
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        return write(descriptor, pieces)

    monkeypatch.setattr(append_file.os, "writev", limited)
    return passing, own


def _files(folder):
    return [one.name for one in folder.rglob("*.arrows")]


@pytest.mark.parametrize(
    ("free", "state", "words", "do"),
    [
        (20_000, State.LOOK, "could not be done: its recording goes to ", "Free some space"),
        (10**12, State.BAD, "the virtual bench can't be recorded: ", "Send this report"),
    ],
)
def test_it_says_so_and_leaves_nothing(full, monkeypatch, free, state, words, do):
    passing, own = full
    monkeypatch.setattr(self_test, "disk_free", lambda _: free)
    monkeypatch.setattr(self_test, "SECONDS", 1.5)
    (line,) = self_test.look_at_bench()
    assert (line.state, line.about) == (state, "self-test")
    assert line.words.startswith(words)
    assert line.do.startswith(do)
    assert _files(passing) == _files(own) == []
    assert not (own / "elsewhere").exists()


def test_a_folder_that_can_not_be_made_is_a_line_too(tmp_path, monkeypatch):
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "none"))
    (line,) = self_test.look_at_bench()
    assert line.state in {State.BAD, State.LOOK}
    assert "No such file or directory" in line.words
