"""Write lines to a meter's port and tell when the window has painted each (run by pixel.py)."""

import os
import pty
import tempfile
import threading
import time
import tty
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication, QWidget

from meterlog.model import Limits
from meterlog.window.main_window import MainWindow
from meterlog.work import Run, Wiring, choose_meters

COUNT, EVERY_S = 300, 0.05
ours, theirs = pty.openpty()
tty.setraw(theirs)
application = QApplication([])
window = MainWindow()
window.resize(1280, 800)
window.show()
choices = choose_meters(
    Wiring(
        ["line-logger@" + os.ttyname(theirs)],
        [
            "motor-feed=line-logger.feed",
            "motor-return=line-logger.return",
            "motor-current=line-logger.current",
        ],
    )
)
place = tempfile.TemporaryDirectory()
run = Run(choices, Limits(), Path(place.name) / "run")
window.fill(run, None)
page = window.desk.run_page
show = page.show_session
sent, seen, drawn = {}, {}, []


class Painted(QObject):
    def eventFilter(self, thing, event):  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.Paint and drawn:
            QTimer.singleShot(0, told)  # comes when the paint event has been dealt with
        return False


painted = Painted()


def shown(session):
    show(session)
    line = next(x for x in session.shown.traces.lines if x.channel.name == "feed")
    if line.last == line.last:
        drawn.append(round(line.last))
    if not watched:
        watched.extend(page.trace.findChildren(QWidget))
        for thing in watched:
            thing.installEventFilter(painted)


watched = []
page.show_session = shown


def told():
    now = time.monotonic()
    while drawn:
        number = drawn.pop(0)
        for n in [n for n in sent if n <= number and n not in seen]:
            seen[n] = now


def write():
    time.sleep(1.0)
    os.write(ours, b"\n")
    for n in range(1, COUNT + 1):
        sent[n + 10] = time.monotonic()
        os.write(ours, b"%d.0,0.5,1.6\n" % (n + 10))
        time.sleep(EVERY_S * (1.0 + 0.37 * ((n * 7919 % 101) / 101.0)))
    time.sleep(0.5)
    done.append(True)


done = []
threading.Thread(target=write, daemon=True).start()


def quit_when_done():
    if done:
        application.quit()


watch = QTimer(interval=50)
watch.timeout.connect(quit_when_done)
watch.start()
application.exec()
run.stop()
late = sorted((seen[n] - sent[n]) * 1e3 for n in sent if n in seen)
print(len(late), late[len(late) // 2], late[int(len(late) * 0.95)], flush=True)
os._exit(0)  # a window that is still open is not taken down in good order
