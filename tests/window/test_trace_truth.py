"""What is painted of a trace with many readings in a pixel is what all its readings would paint."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage

from meterlog.evidence.palette import DAY
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Block, Channel, Instrument, Quantity, Role
from meterlog.window.shown import Shown
from meterlog.window.trace_view import TraceView

ROWS, INTERVAL_NS = 60_000, 1_000_000
RNG = np.random.default_rng(7)


def _steps():
    levels = np.repeat(RNG.uniform(1.0, 12.0, 300), ROWS // 300)
    return levels + RNG.normal(0.0, 0.02, ROWS)


def _spikes():
    values = np.full(ROWS, 3.8)
    values[RNG.integers(0, ROWS, 40)] = 11.0
    return values


def _slow():
    return 6.0 + 5.0 * np.sin(np.linspace(0.0, 40.0, ROWS))


def _ramps():
    return np.tile(np.linspace(0.5, 12.0, 3_000), ROWS // 3_000)


SIGNALS = {
    "noise": lambda: 6.0 + RNG.normal(0.0, 1.0, ROWS),
    "steps": _steps,
    "spikes": _spikes,
    "slow": _slow,
    "ramps": _ramps,
    "flat": lambda: np.full(ROWS, 7.31),
}


@pytest.fixture
def view(qtbot):
    view = TraceView()
    qtbot.addWidget(view)
    view.set_palette(DAY, 14)
    view.resize(1111, 640)
    view.show()
    return view


def _shown(about_of, channels, values):
    about = about_of()
    instrument = Instrument("bench", "invented", "-", channels)
    traces = TraceStore((instrument,))
    t_ns = np.arange(len(values), dtype=np.int64) * INTERVAL_NS
    traces.take(Block("bench", t_ns, values, np.zeros(values.shape, np.uint8)))
    return Shown(about, traces), t_ns


def _is(image, colour):
    """Tell which pixels have a colour, shape (height, width)."""
    image = image.convertToFormat(QImage.Format.Format_RGB32)
    words = np.frombuffer(image.constBits(), np.uint32).reshape(image.height(), -1)
    return (words[:, : image.width()] & 0xFFFFFF) == (QColor(colour).rgb() & 0xFFFFFF)


def _truth(plot, view, t_ns, values, shape):
    """Give the pixels that a line through all readings touches, cut where columns meet."""
    box, surface = plot.item.getViewBox(), view._surface
    a, b = (box.mapViewToScene(QPointF(x, y)) for x, y in ((0.0, 0.0), (1.0, 1.0)))
    x = a.x() + t_ns / 1e9 * (b.x() - a.x())
    y = a.y() + values * (b.y() - a.y())
    crossed = np.flatnonzero(np.floor(x[1:]) > np.floor(x[:-1]))
    borders = np.floor(x[crossed + 1])
    at = np.interp(borders, x, y)
    # On a border the line is in both columns.
    x = np.insert(x, np.repeat(crossed + 1, 2), np.stack([borders - 1e-9, borders], 1).ravel())
    y = np.insert(y, np.repeat(crossed + 1, 2), np.repeat(at, 2))
    first, last = (round(surface.mapFromScene(p).x()) for p in _corners(box))
    pixels = np.zeros(shape, np.bool_)
    for column in range(first + 1, last - 1):
        here = y[(x >= column) & (x < column + 1)]
        pixels[int(here.min()) : int(here.max()) + 1, column] = True
    return pixels, slice(first + 1, last - 1)


def _corners(box):
    rect = box.mapRectToScene(box.rect())
    return rect.topLeft(), rect.topRight()


def _beside(pixels):
    """Give these pixels and their neighbours."""
    wide = np.pad(pixels, 1)
    rows, columns = pixels.shape
    return np.any([wide[i : i + rows, j : j + columns] for i in range(3) for j in range(3)], axis=0)


def _pixels(view, about_of, values, stretch):
    """Give which pixels a line through all readings touches, and which are painted."""
    channel = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=1e-3)
    shown, t_ns = _shown(about_of, (channel,), values[:, None])
    view.draw(shown, *(round(edge * 1e9) for edge in stretch))
    plot = view._amperes
    assert plot.curves[0][1]._columns is not None
    for hidden in (plot.grid, plot.edges, plot.steps, plot.bands):
        hidden.hide()
    painted = _is(view._surface.grab().toImage(), DAY.line(Role.MOTOR_CURRENT))
    read = shown.traces.lines[0].shown(0, t_ns[-1], 10**9)[1]
    # Columns at the edges of the plot are there in part.
    true, inside = _truth(plot, view, t_ns, read, painted.shape)
    return true[:, inside], painted[:, inside]


@pytest.mark.parametrize("stretch", [(0.0, 60.0), (7.3, 22.9)])
def test_the_pixels_painted_are_those_that_all_readings_would_paint(view, about_of, stretch):
    missed, wrong, count = 0, 0, 0
    for values in SIGNALS.values():
        true, painted = _pixels(view, about_of, values(), stretch)
        assert true.sum() > 500
        assert not (true & ~_beside(painted)).any()
        assert not (painted & ~_beside(true)).any()
        missed += (true & ~painted).sum()
        wrong += (painted & ~true).sum()
        count += true.sum()
    assert missed <= 0.01 * count
    assert wrong <= 0.01 * count
