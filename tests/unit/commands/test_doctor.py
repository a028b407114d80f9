"""``meterlog doctor``: exit codes, both forms of the report, no screen, parts that are missing."""

import json
import subprocess
import sys

import pytest

from meterlog.commands import doctor_screen
from meterlog.commands.doctor_screen import look_at_screen, screen_lines, sound_line
from meterlog.work.doctor import Line, State

GOOD = [Line("disk", State.OK, "enough")]
POOR = [*GOOD, Line("clock", State.LOOK, "not set", "Set it.")]


@pytest.fixture
def found(monkeypatch):
    asked = []

    def put(lines):
        def look(waiting, *, bench):
            asked.append((set(waiting), bench))
            return lines

        monkeypatch.setattr("meterlog.work.doctor.look_at_all", look)
        return asked

    return put


def test_all_well_is_0_and_what_needs_attention_1_with_what_to_do(run, found):
    asked = found(GOOD)
    assert "1 ok, 0 look, 0 bad" in run("doctor").out
    assert asked == [({"screen"}, True)]
    found(POOR)
    said = run("doctor", "--without-bench", code=1).out
    assert "look   clock  not set" in said
    assert "-> Set it." in said


def test_the_same_as_json(run, found):
    found(POOR)
    told = json.loads(run("doctor", "--json", code=1).out)
    assert told["state"] == "look"
    assert told["lines"][1] == {
        "about": "clock",
        "state": "look",
        "words": "not set",
        "do": "Set it.",
    }


def test_qt_is_asked_in_a_process_of_its_own_without_a_screen_too(monkeypatch):
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    # How fast it answers is not the matter here, and other tests may keep the computer busy.
    monkeypatch.setattr(doctor_screen, "_ASK_S", 120.0)
    lines = list(look_at_screen())
    assert [line.about for line in lines] == ["screen", "sound"]
    assert lines[0].state is State.LOOK
    assert "offscreen works" in lines[0].words


@pytest.mark.parametrize(
    ("out", "said"),
    [(b"", b"qt.qpa: could not load the plugin\n"), (b"half {", b""), (b"[1]", b"")],
)
def test_a_qt_that_ends_the_process_is_a_bad_line(monkeypatch, out, said):
    done = subprocess.CompletedProcess([], -6, out, said)
    monkeypatch.setattr(doctor_screen.subprocess, "run", lambda *_, **__: done)
    lines = list(look_at_screen())
    assert [line.state for line in lines] == [State.BAD]
    assert lines[0].do
    if said:
        assert "could not load the plugin" in lines[0].words


def _program(tmp_path, monkeypatch, text):
    """Have another program asked in Qt's place."""
    path = tmp_path / "python"
    path.write_text(f"#!/bin/sh\n{text}\n")
    path.chmod(0o755)
    monkeypatch.setattr(doctor_screen.sys, "executable", str(path))
    return path


@pytest.mark.skipif(sys.platform == "win32", reason="a script of the shell")
def test_one_that_does_not_answer_in_time_may_be_busy(monkeypatch, tmp_path):
    _program(tmp_path, monkeypatch, "exec sleep 60")
    monkeypatch.setattr(doctor_screen, "_ASK_S", 0.5)
    (line,) = look_at_screen()
    assert (line.state, line.words) == (State.LOOK, "did not answer within 0.5 s")
    assert "when the computer is idle" in line.do
    assert "install" not in line.do


@pytest.mark.skipif(sys.platform == "win32", reason="a script of the shell")
def test_one_that_can_not_be_started_is_a_bad_line_with_the_systems_reason(monkeypatch, tmp_path):
    _program(tmp_path, monkeypatch, "exit 0").chmod(0o644)
    (line,) = look_at_screen()
    assert (line.state, line.words) == (State.BAD, "Qt does not start: Permission denied")


def test_screens_and_sound_in_words():
    told = {"qt": "6.8", "platform": "xcb", "screens": [[1280, 800, 1.0], [640, 480, 2.0]]}
    large, small = screen_lines(told, shown=True)
    assert (large.state, small.state) == (State.OK, State.LOOK)
    assert large.words == "1280x800 at scale 1, Qt 6.8, platform xcb"
    assert [line.state for line in screen_lines({**told, "screens": []}, shown=True)] == [
        State.LOOK
    ]
    assert sound_line({"sound": 2}).words == "2 devices"
    for missing in ({"sound": 0}, {"sound": None, "why": "no QtMultimedia"}):
        line = sound_line(missing)
        assert line.state is State.OK
        assert line.words.startswith("none: ")
