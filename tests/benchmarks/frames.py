"""Paint frames of the trace and bare frames by turns (run by picture.py).

Prints the median and the 95th percentile of a frame, and the median of a bare one, in seconds: a
pyqtgraph surface of the same size with two curves of 2,000 points each.
"""

import os
import sys
import time
from pathlib import Path

import numpy as np
import pyqtgraph as pg
from PySide6.QtWidgets import QApplication
from traces import about

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import About, Block, Channel, Instrument, Quantity, Role
from meterlog.recording import Recording, kept_pyramid
from meterlog.window.shown import Shown
from meterlog.window.trace_view import TraceView

SIZE, FRAMES, WARM = (1920, 1080), 200, 20
INTERVAL_NS, A_FRAME = 100_000, 167
application = QApplication([])
application.setStyle("Fusion")
rng = np.random.default_rng(1)


def bare():
    surface = pg.GraphicsLayoutWidget()
    surface.resize(*SIZE)
    curves = [surface.addPlot(row=row, col=0).plot(pen="w") for row in (0, 1)]
    surface.show()
    x = np.arange(2_000.0)

    def frame():
        for curve in curves:
            curve.setData(x, rng.normal(size=2_000))
        surface.viewport().repaint()

    return frame


def live(on_screen_ns):
    """Fifty million rows of two channels behind; each frame brings 167 more."""
    channels = (
        Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=1e-4),
        Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=1e-4),
    )
    meter = Instrument("meter", "benchmark", "-", channels)
    traces = TraceStore((meter,))
    head = about(1e-4, 4)
    head = About(
        **{name: getattr(head, name) for name in head.__slots__} | {"instruments": (meter,)}
    )
    values = rng.normal((12.0, 13.6), 0.05, (1_000_000, 2))
    rows = [0]

    def take(count):
        t_ns = (np.arange(count) + rows[0]) * INTERVAL_NS
        rows[0] += count
        traces.take(Block("meter", t_ns, values[:count], np.zeros((count, 2), np.uint8)))

    for _ in range(50):
        take(1_000_000)
    shown = Shown(head, traces, live=True)

    def step(view, _):
        take(A_FRAME)
        end = traces.end_ns
        view.draw(shown, max(end - on_screen_ns, 0), end)

    return step


def look(folder):
    """Move by a hundredth of what is shown; after every tenth frame show more or less."""
    head = Recording.without_readings(folder).about
    pyramid = kept_pyramid(folder, head, head.instruments[0])
    traces = TraceStore(head.instruments, pyramids={"meter": pyramid})
    shown = Shown(head, traces)
    end = traces.end_ns
    widths = [end * part for part in (1.0, 0.3, 0.1, 0.03, 0.01, 0.003, 0.001, 0.0003, 0.0001)]

    def step(view, number):
        width = int(widths[number // 10 % len(widths)])
        start = int((end - width) * 0.37) + (number % 10) * (width // 100)
        view.draw(shown, start, start + width)

    return step


mode = sys.argv[1]
if mode == "look":
    step = look(Path(sys.argv[2]))
else:
    step = live(30_000_000_000 if mode == "live" else 10**18)
view = TraceView()
view.resize(*SIZE)
view.show()
application.processEvents()
frame, times, bares = bare(), [], []
application.processEvents()  # both are laid out and on screen
for number in range(-WARM, FRAMES):
    begun = time.perf_counter()
    step(view, max(number, 0))
    view._surface.viewport().repaint()
    between = time.perf_counter()
    frame()
    if number >= 0:
        times.append(between - begun)
        bares.append(time.perf_counter() - between)
times.sort()
bares.sort()
print(times[len(times) // 2], times[int(0.95 * len(times))], bares[len(bares) // 2], flush=True)
os._exit(0)  # a window that is still open is not taken down in good order
