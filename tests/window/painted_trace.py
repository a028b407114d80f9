"""A trace drawn bit by bit; run by itself it counts wrong pixels, at a scale that Qt is told."""

import sys
from datetime import UTC, datetime

import numpy as np
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from meterlog.evidence.palette import DAY
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import About, Block, Channel, Instrument, Job, Limits, Origin, Quantity, Role
from meterlog.window.shown import Shown
from meterlog.window.trace_view import TraceView

SECOND = 1_000_000_000
END = 30 * SECOND
ROLES = (
    (Role.MOTOR_FEED, Quantity.VOLTAGE),
    (Role.MOTOR_RETURN, Quantity.VOLTAGE),
    (Role.MOTOR_CURRENT, Quantity.CURRENT),
)


def leaping(rows, seed):
    """Make readings that leap, ripple, fall silent (NaN) and cross: feed, return, current."""
    noise = np.random.default_rng(seed)
    values = noise.normal([12.0, 0.4, 6.0], [0.2, 0.3, 1.5], (rows, 3))
    for column in range(3):
        for at in noise.integers(0, rows, 4):
            values[at : at + rows // 50 + 1, column] = noise.choice([np.nan, 0.0, 9.0])
    values[:, 2] = np.clip(values[:, 2], 0.0, 10.0)
    return values


def empty(interval_s):
    """Give a recording of one invented meter into which nothing has come yet."""
    channels = tuple(
        Channel(role.value, quantity, role, interval_s=interval_s) for role, quantity in ROLES
    )
    meter = Instrument("bench", "invented", "-", channels)
    began = datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC)
    number = "00000000-0000-4000-8000-000000000000"
    about = About(number, began, 0, 0, "meterlog test", Origin.SIMULATED, (meter,), Limits(), Job())
    return Shown(about, TraceStore((meter,)))


def on_screen(view):
    """Give what is on screen of a window: nothing is painted for it."""
    image = view.screen().grabWindow(view.winId()).toImage()
    image = image.convertToFormat(QImage.Format.Format_RGB32)
    words = np.frombuffer(image.constBits(), np.uint32).reshape(image.height(), -1)
    return words[:, : image.width()].copy()


def draw(view, shown):
    """Draw all of it and let the loop paint what is to be painted."""
    view.draw(shown, 0, END)
    QTest.qWait(1)


def drawn_bit_by_bit(view, interval_s, seed, cuts):
    """Draw a recording in so many steps; give after each the screen, and it painted as a whole."""
    shown = empty(interval_s)
    rows = round(29.0 / interval_s)
    t_ns = np.arange(rows) * round(interval_s * SECOND)
    for late in np.random.default_rng(seed).integers(6, rows, 5):
        t_ns[late:] += 300_000_000  # nothing comes, and the line leads on to what does
    values = leaping(rows, seed)
    # Readings of all heights come first, so that the axes stand still from then on.
    values[:6] = [[12.9, 0.0, 9.5]] * 6
    begun = 0
    for cut in [*sorted(np.random.default_rng(seed).integers(5, rows, cuts)), rows]:
        rest = slice(begun, cut)
        block = Block("bench", t_ns[rest], values[rest], np.zeros(values[rest].shape, np.uint8))
        shown.traces.take(block)
        begun = cut
        draw(view, shown)
        alone = on_screen(view)
        view._surface.viewport().repaint()
        yield alone, on_screen(view)


def main():
    """Say how many device pixels there are of one, and how many pixels were wrong at most."""
    application = QApplication([])
    view = TraceView()
    view.set_palette(DAY, 14)
    view.resize(*map(int, sys.argv[1:3]))
    view.show()
    QTest.qWaitForWindowExposed(view)
    wrong = 0
    for interval_s in (0.1, 0.004):
        for alone, whole in drawn_bit_by_bit(view, interval_s, 1, 12):
            assert len(np.unique(whole)) > 4
            wrong = max(wrong, np.count_nonzero(alone != whole))
    sys.stdout.write(f"{view.devicePixelRatioF()} {wrong}\n")
    view.close()
    del application


if __name__ == "__main__":
    main()
