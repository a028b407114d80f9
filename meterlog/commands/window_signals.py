"""Ctrl-C and a request to end close an open window, as its close button does."""

from __future__ import annotations

import signal
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType


def _close(number: int, frame: FrameType | None) -> None:
    del number, frame
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    from meterlog.window.main_window import MainWindow

    def close_all() -> None:
        for one in QApplication.topLevelWidgets():
            if isinstance(one, MainWindow):
                one.close_at_once()  # nobody can be asked
        QApplication.closeAllWindows()

    # Not here and now: this runs in the middle of whatever the window was doing.
    QTimer.singleShot(0, close_all)


@contextmanager
def closed_by_signals() -> Iterator[None]:
    """While entered, a signal to end closes the window, which seals what is being recorded.

    An exception out of a signal would be raised inside Qt's own calls, which do not survive it.
    """
    wanted = [signal.SIGINT, signal.SIGTERM]
    if hasattr(signal, "SIGHUP"):
        wanted.append(signal.SIGHUP)
    before = {number: signal.signal(number, _close) for number in wanted}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
