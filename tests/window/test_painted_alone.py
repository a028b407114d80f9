"""Only what came in is painted, and the plot on screen is then as if all had been painted."""

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QRegion

from meterlog.evidence.palette import DAY
from meterlog.model import Block
from meterlog.window.trace_view import TraceView
from tests.window import painted_trace
from tests.window.painted_trace import SECOND, draw, drawn_bit_by_bit, empty


class _Areas(QObject):
    """Keeps what is painted of a widget."""

    def __init__(self, widget):
        super().__init__(widget)
        self.region = QRegion()
        widget.installEventFilter(self)

    def eventFilter(self, _, event):  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.Paint:
            self.region = self.region.united(event.region())
        return False


@pytest.fixture
def view(qtbot):
    view = TraceView()
    qtbot.addWidget(view)
    view.set_palette(DAY, 14)
    view.resize(1003, 600)
    view.show()
    qtbot.waitExposed(view)
    return view


@pytest.mark.parametrize("interval_s", [0.7, 0.1, 0.004, 0.001])
@pytest.mark.parametrize("seed", range(2))
def test_what_is_on_screen_is_what_painting_all_of_it_shows(view, interval_s, seed):
    for alone, whole in drawn_bit_by_bit(view, interval_s, seed, 25):
        assert len(np.unique(whole)) > 4
        assert np.array_equal(alone, whole)


@pytest.mark.parametrize("scale", ["1.5", "2.0"])
def test_so_it_is_on_a_screen_that_is_scaled(tmp_path, scale):
    settings = {name: str(tmp_path) for name in ("HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME")}
    root = Path(__file__).parents[2]
    script = Path(painted_trace.__file__)
    done = subprocess.run(
        [sys.executable, str(script), "777", "400"],
        env={
            **os.environ,
            **settings,
            "QT_SCALE_FACTOR": scale,
            "PYTHONPATH": str(root),
            "QT_QPA_PLATFORM": "offscreen",
        },
        cwd=tmp_path,
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    assert done.stdout.split() == [scale, "0"], done.stderr[-2000:]


def test_between_two_jumps_a_few_columns_are_painted_and_without_news_nothing(view):
    shown = empty(0.1)
    values = np.tile([12.4, 0.1, 8.0], (200, 1)) + np.arange(200)[:, None] % 7 * 0.01

    def take(first, last):
        t_ns = np.arange(first, last) * (SECOND // 10)
        rows = values[first:last]
        shown.traces.take(Block("bench", t_ns, rows, np.zeros(rows.shape, np.uint8)))

    take(0, 150)
    for _ in range(2):  # bands and marks take the height of the axes at the second time
        draw(view, shown)
    areas = _Areas(view._surface.viewport())
    take(150, 151)
    draw(view, shown)
    painted = areas.region.boundingRect()
    assert 0 < painted.width() <= 80
    areas.region = QRegion()
    draw(view, shown)
    assert areas.region.isEmpty()
