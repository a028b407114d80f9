"""Figures of starting: the command line, the window, the demo."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from figure import Figure, interleaved_s, median_s

OFFSCREEN = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}

_BARE = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
import pyqtgraph
application = QApplication([])
plot = pyqtgraph.PlotWidget()
plot.plot([0, 1], [0, 1])
plot.resize(1280, 800)
plot.show()
application.processEvents()
plot.grab()
"""

_OURS = """
from PySide6.QtWidgets import QApplication
from meterlog.window.main_window import MainWindow
application = QApplication([])
window = MainWindow()
window.resize(1280, 800)
window.show()
application.processEvents()
window.grab()
"""


def _child(*arguments: str) -> None:
    subprocess.run([sys.executable, *arguments], check=True, env=OFFSCREEN, capture_output=True)


def help_text() -> Figure:
    """``meterlog --help`` against an interpreter that does nothing."""
    ours, bare = interleaved_s(
        lambda: _child("-m", "meterlog", "--help"), lambda: _child("-c", "pass"), 9
    )
    return Figure(
        "start",
        "meterlog --help",
        f"{ours * 1000:.0f} ms",
        f"python -c pass {bare * 1000:.0f} ms",
        ours / bare,
        "<= 4x",
        ours / bare <= 4.0,
    )


def first_window() -> Figure:
    """Process start to the first painted window against a bare window with a plot."""
    ours, bare = interleaved_s(lambda: _child("-c", _OURS), lambda: _child("-c", _BARE))
    return Figure(
        "start",
        "first window painted",
        f"{ours * 1000:.0f} ms",
        f"bare PySide6 + pyqtgraph {bare * 1000:.0f} ms",
        ours / bare,
        "<= 1.3x",
        ours / bare <= 1.3,
    )


def demo_first_reading() -> Figure:
    """``meterlog demo`` from its start to the first reading in a file."""

    def until_first_reading() -> None:
        with tempfile.TemporaryDirectory() as place:
            out = Path(place) / "demo"
            command = [sys.executable, "-m", "meterlog", "demo", "--headless", "--seconds", "5"]
            child = subprocess.Popen(
                [*command, "--out", str(out)],
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
            )
            end = time.monotonic() + 30.0
            while not any(p.stat().st_size > 2000 for p in out.glob("**/*.arrows")):
                if time.monotonic() > end or child.poll() is not None:
                    raise RuntimeError("the demo gave no reading")
                time.sleep(0.005)
            child.terminate()
            child.wait()

    seconds = median_s(until_first_reading, 3)
    return Figure(
        "set-up",
        "demo to first reading on disk (includes its end)",
        f"{seconds:.2f} s",
        "-",
        None,
        "<= 5 s",
        seconds <= 5.0,
    )


FIGURES = (help_text, first_window, demo_first_reading)
