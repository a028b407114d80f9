"""LoadAhead: modules loaded in a thread, so that the window goes on painting meanwhile."""

from __future__ import annotations

import importlib
import threading
from collections.abc import Callable, Sequence

from PySide6 import QtCore, QtGui, QtWidgets
from PySide6.QtCore import QObject, QTimer

FOR_THE_WINDOW = (
    "meterlog.window.job_page",
    "meterlog.window.desk",
    "meterlog.window.window_thread",
    "meterlog.window.trace_view",
    "jsonschema",
)
"""What :meth:`~meterlog.window.main_window.MainWindow.fill` needs, its libraries included."""
FOR_THE_PAGES = (
    "meterlog.window.compare_page",
    "meterlog.window.claim_page",
    "meterlog.window.recordings_page",
    "meterlog.window.keys_page",
)
"""What the pages need that are made once the window is filled."""
_LOOK_MS = 4


class LoadAhead(QObject):
    """Loads modules and calls what waits for them, in the thread of its parent.

    A module that can't be loaded is left: whoever needs it finds out, and can say so.

    Parameters
    ----------
    parent : QObject
        With it goes what waits.
    modules : sequence of str
    then : callable or None
        Called when all are there.
    also : callable or None
        Called after the modules, in the thread.
    """

    def __init__(
        self,
        parent: QObject,
        modules: Sequence[str],
        then: Callable[[], object] | None = None,
        also: Callable[[], object] | None = None,
    ) -> None:
        super().__init__(parent)
        self._then = then
        self._thread = threading.Thread(
            target=_load, args=(modules, also), name="meterlog-load", daemon=True
        )
        self._timer = QTimer(self)
        self._timer.setInterval(_LOOK_MS)
        self._timer.timeout.connect(self._look)
        self._thread.start()
        self._timer.start()

    def _look(self) -> None:
        if not self._thread.is_alive():
            self._timer.stop()
            if self._then is not None:
                self._then()


def make_all_of_qt() -> None:
    """Make every class of Qt's modules, in the thread of the window; takes some 65 ms.

    PySide makes a class when it is first asked for, and pyqtgraph asks for all of them as it is
    loaded. In another thread, while this one is handed objects of Qt, that ended the program: in 2
    of 250 starts on a loaded machine.
    """
    for module in (QtCore, QtGui, QtWidgets):
        for name in dir(module):
            getattr(module, name, None)


def read_circuits() -> None:
    """Read what the Circuit page begins with: the titles of all, and the one chosen last."""
    from meterlog.profile import load_circuit
    from meterlog.window.circuit_choice import circuit_titles
    from meterlog.window.last_setup import LastSetup

    circuit_titles()
    name = LastSetup().load().circuit
    if name:
        load_circuit(name)


def _load(modules: Sequence[str], also: Callable[[], object] | None) -> None:
    try:
        for name in modules:
            importlib.import_module(name)
        if also is not None:
            also()
    # What is wrong with it is told where it is needed.
    except Exception:  # noqa: BLE001
        return
