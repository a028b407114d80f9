"""The folder one is in has gone: that is said, with what to do, and whole paths still work."""

import os
import sys
from pathlib import Path

import pytest

from meterlog.commands.terminal import short

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="there such a folder stays")


@pytest.fixture
def gone(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    place = tmp_path / "gone"
    place.mkdir()
    os.chdir(place)
    place.rmdir()
    return place


COMMANDS = {
    "find": (1, "find", "x", "--folder", "."),
    "screen": (1, "screen", "."),
    # Where something is to be put there is no place: that is said of what was given.
    "export": (2, "export", "{small}", "--out", "out"),
    "import": (2, "import", "{small}", "--out", "out"),
}


@pytest.mark.parametrize("words", COMMANDS.values(), ids=COMMANDS)
def test_it_is_said_with_what_to_do(run, small, gone, words):
    code, *given = words
    said = run(*(one.format(small=small) for one in given), code=code)
    assert said.err.count("the folder you are in is gone") == 1
    assert "Go to another folder (cd)" in said.err


def test_what_lies_elsewhere_is_told_by_its_whole_path(run, small, gone, tmp_path):
    assert "Every file agrees with the seal" in run("verify", small).out
    assert str(tmp_path / "out") in "".join(run("export", small, "--out", tmp_path / "out"))
    assert short(tmp_path / "x") == str(tmp_path / "x")
    assert short(Path("x")) == "x"
