"""Pulse: when the window looks whether there is anything to draw."""

from __future__ import annotations

import math

from PySide6.QtCore import QObject, Qt, QTimer, Signal


class Pulse(QObject):
    """Beats when something has come, when it was asked to, and now and then by itself.

    A timer that looked often enough to draw a lone reading at once would keep a core busy with
    looking.

    Parameters
    ----------
    parent : QObject or None
    period_ms : int
        From one beat to the next where nothing comes.

    Attributes
    ----------
    beat : Signal
        In the thread in which this was made.
    """

    beat = Signal()
    _called = Signal()

    def __init__(self, parent: QObject | None, period_ms: int) -> None:
        super().__init__(parent)
        self._on_its_way = False
        self._stopped = False
        self._called.connect(self._arrive, Qt.ConnectionType.QueuedConnection)
        self._timer = QTimer(self)
        self._timer.setInterval(period_ms)
        self._timer.timeout.connect(self.beat)
        self._timer.start()
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setTimerType(Qt.TimerType.PreciseTimer)
        self._rest.timeout.connect(self.beat)

    def wake(self) -> None:
        """Ask for a beat, from any thread; one beat answers all who ask before it."""
        # Two threads that ask at the same moment get two beats, which costs nothing.
        if not self._on_its_way:
            self._on_its_way = True
            self._called.emit()

    def again_in(self, seconds: float) -> None:
        """Ask for a beat after so long, unless one has been asked for so already."""
        if not self._rest.isActive():
            self._rest.start(math.ceil(seconds * 1e3))

    def stop(self) -> None:
        """Beat no more."""
        self._stopped = True
        self._timer.stop()
        self._rest.stop()

    def _arrive(self) -> None:
        self._on_its_way = False
        if not self._stopped:
            self.beat.emit()
