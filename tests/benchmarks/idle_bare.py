"""Let two bare pyqtgraph plots scroll ten times a second, and tell how busy a core is (by run.py).

What a picture of that pace costs on this machine without any program around it.
"""

import itertools
import os
import sys
import time

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

SECONDS = float(sys.argv[1]) if len(sys.argv) > 1 else 30.0
WARM_S = 3.0
SPAN_S = 30.0
application = QApplication([])
window = pg.GraphicsLayoutWidget()
window.resize(1920, 1080)
plots = [window.addPlot(row, 0) for row in range(2)]
curves = [plot.plot() for plot in plots]
window.show()
times = np.arange(0.0, SPAN_S, 0.1)
drawn = itertools.count(1)


def draw():
    now = times + next(drawn) * 0.1
    for plot, curve in zip(plots, curves, strict=True):
        curve.setData(now, 12.0 + np.sin(now))
        plot.setXRange(now[0], now[-1], padding=0.0)


begun = {}


def begin():
    begun.update(cpu=time.process_time(), wall=time.monotonic())


def end():
    share = (time.process_time() - begun["cpu"]) / (time.monotonic() - begun["wall"])
    print(share, 0.0, flush=True)
    os._exit(0)


timer = QTimer()
timer.timeout.connect(draw)
timer.start(100)
QTimer.singleShot(round(WARM_S * 1000), begin)
QTimer.singleShot(round((WARM_S + SECONDS) * 1000), end)
application.exec()
