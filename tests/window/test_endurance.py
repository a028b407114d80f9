"""Thousands of redraws: some versions of the bindings lose a reference at every one, and abort."""

import os
import subprocess
import sys
import textwrap

import pytest

REDRAWS = 1000

CHILD = """
import sys
import numpy as np
from datetime import datetime, UTC
from PySide6.QtWidgets import QApplication
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import About, Block, Channel, Instrument, Origin, Quantity, Role
from meterlog.window.main_window import MainWindow
from meterlog.window.session import Phase
from meterlog.window.shown import Shown

application = QApplication(["meterlog"])
window = MainWindow()
window.setMinimumSize(200, 150)
window.resize(420, 320)
window.show()
window.fill()
channels = (
    Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
    Channel("return", Quantity.VOLTAGE, Role.MOTOR_RETURN),
    Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT),
)
meter = Instrument("m", "m", "invented", channels, simulated=True)
about = About("x", datetime(2030, 1, 1, tzinfo=UTC), 0, 0, "t", Origin.SIMULATED, (meter,))
shown = Shown(about, TraceStore(about.instruments), live=True)
desk = window.desk
desk._pulse.stop()
desk.session.shown, desk.session.phase = shown, Phase.SHOWING
window.show_page(1)
desk.run_page.show_session(desk.session)
noise = np.random.default_rng(1)
counts = []
for redraw in range({redraws}):
    values = np.array([[12.0, 4.0, 3.0]]) + noise.normal(0, 0.3, (1, 3))
    t_ns = np.array([redraw * 100_000_000])
    shown.traces.take(Block("m", t_ns, values, np.zeros((1, 3), np.uint8)))
    desk.run_page.redraw()
    application.processEvents()
    if redraw in (200, {redraws} - 1):
        counts.append((sys.getrefcount(None), sys.getrefcount(True), sys.getrefcount(False)))
assert desk.run_page.trace.frames >= {redraws}, desk.run_page.trace.frames
for first, last in zip(*counts):
    assert last > first - 200, counts
print("redrawn", counts)
"""


@pytest.mark.slow
def test_a_thousand_redraws_leave_the_interpreter_whole():
    script = textwrap.dedent(CHILD).replace("{redraws}", str(REDRAWS))
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
        env=environment,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    assert "redrawn" in done.stdout
