"""Only what came in is painted, and the plot on screen is then as if all had been painted."""

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QImage, QRegion

from meterlog.evidence.palette import DAY
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Block, Channel, Instrument, Quantity, Role
from meterlog.window.shown import Shown
from meterlog.window.trace_view import TraceView

SECOND = 1_000_000_000
END = 30 * SECOND
ROLES = (
    (Role.MOTOR_FEED, Quantity.VOLTAGE),
    (Role.MOTOR_RETURN, Quantity.VOLTAGE),
    (Role.MOTOR_CURRENT, Quantity.CURRENT),
)


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


def _values(rows, seed):
    """Make readings that leap, ripple, fall silent (NaN) and cross: feed, return, current."""
    noise = np.random.default_rng(seed)
    values = noise.normal([12.0, 0.4, 6.0], [0.2, 0.3, 1.5], (rows, 3))
    for column in range(3):
        for at in noise.integers(0, rows, 4):
            values[at : at + rows // 50 + 1, column] = noise.choice([np.nan, 0.0, 9.0])
    values[:, 2] = np.clip(values[:, 2], 0.0, 10.0)
    return values


@pytest.fixture
def view(qtbot):
    view = TraceView()
    qtbot.addWidget(view)
    view.set_palette(DAY, 14)
    view.resize(1003, 600)
    view.show()
    qtbot.waitExposed(view)
    return view


def _shown(about_of, interval_s):
    channels = tuple(
        Channel(role.value, quantity, role, interval_s=interval_s) for role, quantity in ROLES
    )
    return Shown(about_of(), TraceStore((Instrument("bench", "invented", "-", channels),)))


def _screen(view):
    """Give what is on screen of a window: nothing is painted for it."""
    image = view.screen().grabWindow(view.winId()).toImage()
    image = image.convertToFormat(QImage.Format.Format_RGB32)
    words = np.frombuffer(image.constBits(), np.uint32).reshape(image.height(), -1)
    return words[:, : image.width()].copy()


def _draw(view, shown, qtbot):
    view.draw(shown, 0, END)
    qtbot.wait(1)  # what is asked to be painted is painted by the loop


@pytest.mark.parametrize("interval_s", [0.7, 0.1, 0.004, 0.001])
@pytest.mark.parametrize("seed", range(3))
def test_what_is_on_screen_is_what_painting_all_of_it_shows(
    view, about_of, qtbot, interval_s, seed
):
    shown = _shown(about_of, interval_s)
    rows = round(29.0 / interval_s)
    t_ns = np.arange(rows) * round(interval_s * SECOND)
    for late in np.random.default_rng(seed).integers(6, rows, 5):
        t_ns[late:] += 300_000_000  # nothing comes, and the line leads on to what does
    values = _values(rows, seed)
    # Readings of all heights come first, so that the axes stand still from then on.
    values[:6] = [[12.9, 0.0, 9.5]] * 6
    cuts = np.random.default_rng(seed).integers(5, rows, 25)
    begun = 0
    for cut in [*sorted(cuts), rows]:
        rest = slice(begun, cut)
        block = Block("bench", t_ns[rest], values[rest], np.zeros(values[rest].shape, np.uint8))
        shown.traces.take(block)
        begun = cut
        _draw(view, shown, qtbot)
        alone = _screen(view)
        view._surface.viewport().repaint()
        whole = _screen(view)
        assert len(np.unique(whole)) > 4
        assert np.array_equal(alone, whole)


def test_between_two_jumps_a_few_columns_are_painted_and_without_news_nothing(
    view, about_of, qtbot
):
    shown = _shown(about_of, 0.1)
    values = np.tile([12.4, 0.1, 8.0], (200, 1)) + np.arange(200)[:, None] % 7 * 0.01

    def take(first, last):
        t_ns = np.arange(first, last) * (SECOND // 10)
        rows = values[first:last]
        shown.traces.take(Block("bench", t_ns, rows, np.zeros(rows.shape, np.uint8)))

    take(0, 150)
    for _ in range(2):  # bands and marks take the height of the axes at the second time
        _draw(view, shown, qtbot)
    areas = _Areas(view._surface.viewport())
    take(150, 151)
    _draw(view, shown, qtbot)
    painted = areas.region.boundingRect()
    assert 0 < painted.width() <= 80
    areas.region = QRegion()
    _draw(view, shown, qtbot)
    assert areas.region.isEmpty()
