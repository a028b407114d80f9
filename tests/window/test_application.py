"""The whole program in a process of its own, without a screen."""

import os
import subprocess
import sys

CHILD = """
import os
import signal
import sys
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

application = QApplication(["meterlog"])
from meterlog.window import open_window

def watch():
    window = next(w for w in application.topLevelWidgets() if hasattr(w, "desk"))
    session = window.desk.session if window.desk is not None else None
    if session is None or session.busy or not window.filled:
        return QTimer.singleShot(20, watch)
    if sys.argv[1] == "fault":
        def fail():
            raise KeyError("an invented fault")
        QTimer.singleShot(0, fail)
        QTimer.singleShot(400, lambda: (print("said", window.said.text()), window.close()))
        return
    if sys.argv[1] == "signal":
        print("still open")
        os.kill(os.getpid(), signal.SIGINT)
        return
    print("phase", session.phase.value, "said", session.trouble)
    window.close()

QTimer.singleShot(20, watch)
sys.argv[2:] or sys.argv.append("")
from meterlog.commands import window as command
command.has_screen = lambda: True
if sys.argv[1] == "signal":
    print("exit", command.run(type("Options", (), {"recording": None})))
else:
    print("exit", open_window(recording=Path(sys.argv[2]) if sys.argv[2] else None))
"""


def _child(*arguments):
    return subprocess.run(
        [sys.executable, "-c", CHILD, *arguments],
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )


def test_the_window_opens_and_closes_with_nothing_to_show():
    done = _child("plain")
    assert done.stdout.splitlines() == ["phase not recording said ", "exit 0"]
    assert done.stderr == ""


def test_a_folder_without_a_recording_is_told_in_the_window(tmp_path):
    done = _child("plain", str(tmp_path / "absent"))
    assert "absent" in done.stdout
    assert done.stdout.splitlines()[-1] == "exit 0"
    assert "Traceback" not in done.stderr


def test_a_fault_in_the_window_is_said_in_words_and_the_window_goes_on():
    done = _child("fault")
    assert "said A part of the window failed" in done.stdout
    assert "an invented fault" in done.stdout
    assert done.stdout.splitlines()[-1] == "exit 0"
    assert "Traceback" not in done.stderr


def test_ctrl_c_closes_the_window_as_its_button_does():
    done = _child("signal")
    assert done.stdout.splitlines() == ["still open", "exit 0"]
    assert done.stderr == ""
