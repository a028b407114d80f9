"""Record ten readings a second with the window open, and tell how busy a core is (run by run.py).

Prints the share of one core that the window's process took, by its CPU time, and the resident
growth in MB, over ``SECONDS`` after a warm-up.
"""

import os
import pty
import resource
import sys
import tempfile
import threading
import time
import tty
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from meterlog.model import Limits
from meterlog.window.main_window import MainWindow
from meterlog.work import Run, Wiring, choose_meters

SECONDS = float(sys.argv[1]) if len(sys.argv) > 1 else 30.0
SIZE = (1920, 1080)
WARM_S = 3.0
ours, theirs = pty.openpty()
tty.setraw(theirs)
application = QApplication([])
application.setStyle("Fusion")
window = MainWindow()
window.resize(*SIZE)
window.show()
roles = [
    f"{role}=line-logger.{name}"
    for role, name in (
        ("motor-feed", "feed"),
        ("motor-return", "return"),
        ("motor-current", "current"),
    )
]
(choice,) = choose_meters(Wiring(["line-logger@" + os.ttyname(theirs)], roles))
# A logger that is set to ten lines a second, as its profile would say then.
channels = tuple(replace(one, interval_s=0.1, integration_s=0.1) for one in choice.channels)
choices = [replace(choice, channels=channels, profile=replace(choice.profile, channels=channels))]
place = tempfile.TemporaryDirectory()
run = Run(choices, Limits(), Path(place.name) / "run")
window.fill(run, None)


def write():
    os.write(ours, b"\n")
    begun, n = time.monotonic(), 0
    while True:
        n += 1
        time.sleep(max(begun + n * 0.1 - time.monotonic(), 0.0))
        os.write(ours, b"%.2f,0.12,%.2f\n" % (12.4 + n % 7 * 0.01, 8.1 + n % 5 * 0.02))


def resident_mb():
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * resource.getpagesize() / 1e6


begun = {}


def begin():
    begun.update(cpu=time.process_time(), wall=time.monotonic(), mb=resident_mb())


def end():
    share = (time.process_time() - begun["cpu"]) / (time.monotonic() - begun["wall"])
    print(share, resident_mb() - begun["mb"], flush=True)
    run.stop()
    os._exit(0)  # a window that is still open is not taken down in good order


threading.Thread(target=write, daemon=True).start()
QTimer.singleShot(round(WARM_S * 1000), begin)
QTimer.singleShot(round((WARM_S + SECONDS) * 1000), end)
application.exec()
