"""Ctrl-C, a request to end, a crash, a pulled plug: what was recorded is kept."""

import os
import signal

import pytest

from meterlog.recording import Recording

pytestmark = [pytest.mark.pty, pytest.mark.kill]


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_stopped_by_hand_it_is_sealed_all_the_same(number, shell, fan, grows, tmp_path):
    folder = tmp_path / "run"
    recorder = shell.record(fan("healthy-old").address(), folder)
    grows(folder)
    recorder.send_signal(number)
    out, err = recorder.communicate(timeout=240)
    assert recorder.returncode == 0, err
    assert out.startswith("stopped: ")
    assert "Traceback" not in err
    shell.run("verify", folder)
    recording = Recording.open(folder)
    assert recording.state == "sealed"
    assert recording.events[-1].value == "stopped"
    assert recording.rows("line-logger") > 10


def test_killed_in_the_middle_it_can_be_judged_and_says_that_it_is_not_sealed(
    shell, fan, grows, tmp_path
):
    folder = tmp_path / "run"
    recorder = shell.record(fan("healthy-old").address(), folder)
    grows(folder, 12_000)
    os.kill(recorder.pid, signal.SIGKILL)
    recorder.wait()
    rows = Recording.open(folder).rows("line-logger")
    assert rows > 20
    said = shell.json("review", folder)
    assert said["recording"]["state"] == "unsealed"
    assert said["spans"]
    problems = shell.json("verify", folder, code=1)["problems"]
    assert any("not sealed" in problem for problem in problems)
    # Reading it has changed nothing.
    assert Recording.open(folder).rows("line-logger") == rows


def test_a_meter_that_goes_away_leaves_a_recording_that_says_so(shell, fan, grows, tmp_path):
    folder = tmp_path / "run"
    bench = fan("healthy-old")
    recorder = shell.record(bench.address(), folder, "--seconds", "3")
    grows(folder)
    bench.stop()
    out, err = recorder.communicate(timeout=240)
    assert recorder.returncode == 1, err
    assert "silent at the end: line-logger" in err
    shell.run("verify", folder)
    said = shell.json("review", folder)
    assert said["spans"][-1]["kind"] == "no-data"
    assert any(event.kind == "link" for event in Recording.open(folder).events)
    assert "line-logger" in out


def test_a_folder_that_holds_something_is_never_written_to(shell, fan, tmp_path):
    (tmp_path / "letter.txt").write_text("mine")
    recorder = shell.record(fan("healthy-old").address(), tmp_path)
    _, err = recorder.communicate(timeout=240)
    assert recorder.returncode == 2
    assert str(tmp_path) in err
    assert "Choose another folder" in err
    assert [path.name for path in tmp_path.iterdir()] == ["letter.txt"]
