"""What is loaded when: the frame must be on screen before the plot's library is."""

import os
import subprocess
import sys

CHILD = """
import sys
from PySide6.QtWidgets import QApplication
application = QApplication(["meterlog"])
from meterlog.window.main_window import MainWindow
window = MainWindow()
window.show()
application.processEvents()
late = ("pyqtgraph", "pyarrow", "numpy", "serial", "scipy", "meterlog.work")
print(sorted(set(sys.modules) & set(late)))
window.fill()
application.processEvents()
print("pyqtgraph" in sys.modules)
"""


def test_the_frame_is_shown_before_anything_heavy_is_loaded():
    done = subprocess.run(
        [sys.executable, "-c", CHILD],
        capture_output=True,
        text=True,
        timeout=240,
        check=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )
    assert done.stdout.split("\n")[:2] == ["[]", "True"]


def test_without_a_screen_the_command_says_what_to_do_instead():
    environment = {
        k: v
        for k, v in os.environ.items()
        if k not in {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}
    }
    done = subprocess.run(
        [sys.executable, "-m", "meterlog", "window"],
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
        env=environment,
    )
    assert done.returncode == 2
    assert "no screen" in done.stderr
    assert "Traceback" not in done.stderr
