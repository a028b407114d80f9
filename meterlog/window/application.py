"""Opening the window: the frame is painted first, everything else is loaded beside it."""

from __future__ import annotations

import gc
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from meterlog.window.language import speak
from meterlog.window.load_ahead import (
    FOR_THE_PAGES,
    FOR_THE_WINDOW,
    LoadAhead,
    make_all_of_qt,
    read_circuits,
)
from meterlog.window.main_window import MainWindow
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.model import Event
    from meterlog.work import Run


_SWEEPS_MS = ((1, 2_000), (2, 60_000))
"""How often it is looked for what can be let go: among the young, and among all."""


def open_window(
    run: Run | None = None,
    recording: Path | None = None,
    on_mark: Callable[[Event], None] | None = None,
    guide: Sequence[str] = (),
    next_run: Callable[[], Run] | None = None,
    job: Path | None = None,
    language: str | None = None,
) -> int:
    """Open the window and stay until it is closed.

    Parameters
    ----------
    run : Run or None
        A run to show, started or not. Closing the window seals it.
    recording : Path or None
        A recording to show instead.
    on_mark : callable or None
        Called on the main thread with every event the technician marks.
    guide : sequence of str
        Sentences of a walk-through, shown one after the other.
    next_run : callable or None
        Makes the run that the start key begins when the first one is sealed, once; called in a
        thread of its own.
    job : Path or None
        Folder of the job that the runs belong to, for this time only.
    language : str or None
        That the window speaks; None: the system's, where it knows it.

    Returns
    -------
    int
        Exit code: 0, or 1 when not everything could be kept.

    Raises
    ------
    UsageError
        If the window does not speak the language.
    """
    running = QApplication.instance()
    application = running if isinstance(running, QApplication) else QApplication(["meterlog"])
    application.setApplicationName("meterlog")
    application.setStyle("Fusion")
    speak(language)
    window = MainWindow(on_mark, guide, next_run)
    _show_faults_in(window)
    window.fit_screen()
    window.show()

    def fill() -> None:
        from meterlog.window.window_thread import wait_for_nobody

        wait_for_nobody()
        # Only in this thread: widgets that are let go of by another one lock up Qt.
        gc.disable()
        in_turns(window, window.filling(run, recording, job), settle)

    def settle() -> None:
        # What was loaded stays: looking through it even once for what could be let go costs up to
        # a tenth of a second, and no picture comes meanwhile.
        gc.freeze()
        for generation, every_ms in _SWEEPS_MS:
            sweep = QTimer(window)
            sweep.setInterval(every_ms)
            sweep.timeout.connect(partial(gc.collect, generation))
            sweep.start()
        LoadAhead(window, FOR_THE_PAGES, make_pages, also=read_circuits)

    def make_pages() -> None:
        # Whoever turns to one then finds it there, and need not wait while it is made.
        if window.desk is not None:
            in_turns(window, window.desk.parts.making(), gc.freeze)

    def load() -> None:
        make_all_of_qt()
        LoadAhead(window, FOR_THE_WINDOW, fill)

    # After the first paint: the threads of one process take turns.
    QTimer.singleShot(0, window, load)
    application.exec()
    if window.desk is None and run is not None and run.about is not None:
        run.stop("stopped")  # closed before there was anything that could have done so
    failed = window.desk.session.status.failed if window.desk is not None else ""
    if failed:
        sys.stderr.write(f"meterlog: not everything could be kept: {failed}\n")
    return 1 if failed else 0


def in_turns(window: MainWindow, work: Iterator[None], then: Callable[[], None]) -> None:
    """Do a piece of work each time the window has nothing to paint, then something else."""
    try:
        next(work)
    except StopIteration:
        then()
    else:
        # A timer, not zero: what is only queued comes before keys, clicks and other timers.
        QTimer.singleShot(1, window, lambda: in_turns(window, work, then))


def _show_faults_in(window: MainWindow) -> None:
    """Let a fault of the program be seen in the window, in words, while the rest goes on."""

    def tell(error: BaseException | None) -> None:
        words = f"{type(error).__name__}: {error}"
        sys.stderr.write(f"meterlog: fault in the window: {words}\n")
        if window.desk is not None:
            going_on = say("; recording goes on") if window.desk.session.recording else ""
            window.desk.session.trouble = say(
                "A part of the window failed{going_on}. Please report: {words}",
                going_on=going_on,
                words=words,
            )
        else:
            window.say(say("The window could not be filled. Please report: {words}", words=words))

    def on_error(
        kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        if issubclass(kind, KeyboardInterrupt):
            window.close_at_once()
            return
        del trace
        tell(error)

    def on_thread_error(fault: threading.ExceptHookArgs) -> None:
        tell(fault.exc_value)

    sys.excepthook = on_error
    threading.excepthook = on_thread_error
