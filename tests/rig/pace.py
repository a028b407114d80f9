"""Pace: how slow this machine is at work of a window, against the machine the limits were set on.

A limit in milliseconds says nothing of the program where the machine is three times slower than
the one it was set on. So a fixed piece of the same sort of work, bare Qt and bare Python with
nothing of meterlog, is done beside what is measured, and the limit is held in its time.
"""

import time
from statistics import median

from PySide6.QtWidgets import QApplication, QGridLayout, QLabel, QLineEdit, QWidget

_ROWS, _LOOPS = 24, 60_000
_SHEET = "QLabel { color: #222; padding: 1px } QLineEdit { border: 1px solid #888; padding: 2px }"
REFERENCE_S = 0.010
"""Processor time of the piece of work where the limits were set. Not measured there: it takes
21.5 ms on a machine on which the whole suite takes 2.2 times as long as there (833 s for 375).
"""


def work_s() -> float:
    """Do the piece of work once; give the processor time it took this thread, in seconds."""
    begun_s = time.thread_time()
    total = 0
    for number in range(_LOOPS):
        total += number * number % 7
    widget = QWidget()
    widget.setStyleSheet(_SHEET)
    grid = QGridLayout(widget)
    for row in range(_ROWS):
        grid.addWidget(QLabel(f"row {row} of {total}"), row, 0)
        grid.addWidget(QLineEdit(f"{row}"), row, 1)
    widget.resize(500, 700)
    widget.grab()
    took_s = time.thread_time() - begun_s
    widget.deleteLater()
    QApplication.processEvents()
    return took_s


def pace(times: int = 5) -> float:
    """Give how many times slower this machine is now than that where the limits were set."""
    return median(work_s() for _ in range(times)) / REFERENCE_S
