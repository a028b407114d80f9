"""QtRefusal: why Qt opens no window here, in words.

Where Qt can't use the screen it raises no error but ends the process (SIGABRT), with words that do
not help whoever wants the window; where a library of the system is missing it can't be imported.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from meterlog.commands.qt_libraries import missing_libraries, packages_words
from meterlog.commands.terminal import remark
from meterlog.model.errors import MeterlogError

REMEDY = (
    "See that the screen is there and lets this user in (DISPLAY, WAYLAND_DISPLAY); else install"
    " Qt's system libraries (make setup names them), or meterlog again."
)
_SAYS_NO_MORE = "Could not load the Qt platform plugin"
_ALWAYS_SAID = "is needed to load the Qt xcb platform plugin."
"""Of a library that may be there: whenever X11 can't be used, for whatever reason."""
_LONGEST = 300
_FAILED = 1


def why(said: Sequence[str]) -> str:
    """Give what tells why among what Qt said.

    Parameters
    ----------
    said : sequence of str
        Lines, those of Qt's own parts with the part in front (``qt.qpa.xcb: ...``). Where none is
        of Qt, as with an error of an import, the last one tells.

    Returns
    -------
    str
        What was said, at most 300 letters, and the libraries that are missing; without a full
        stop.
    """
    lines = [line.strip() for text in said for line in text.splitlines() if line.strip()]
    of_qt = [line.partition(": ")[2] for line in lines if line.startswith("qt.")]
    no_more = [line for line in of_qt if line.startswith(_SAYS_NO_MORE)]
    telling = [line for line in of_qt if line not in no_more and not line.endswith(_ALWAYS_SAID)]
    words = "; ".join(dict.fromkeys(telling or no_more or of_qt or lines[-1:]))
    said_of_it = words[:_LONGEST].rstrip(".") or "it says nothing"
    lacking = [name for name in missing_libraries(said) if name not in said_of_it]
    return f"{said_of_it}; missing here: {', '.join(lacking)}" if lacking else said_of_it


def remedy(said: Sequence[str]) -> str:
    """Give what to do, by the same lines: the packages of what is missing, if anything is.

    Parameters
    ----------
    said : sequence of str
    """
    lacking = missing_libraries(said)
    return packages_words(lacking) if lacking else REMEDY


@contextmanager
def qt_started() -> Iterator[None]:
    """Start Qt for a window; while entered it stays. Ends the program where Qt opens none.

    The exit code is then 1, and standard error says why. To be entered before anything is imported
    that imports Qt itself.

    Raises
    ------
    MeterlogError
        If Qt can't be imported.
    """
    try:
        from PySide6.QtCore import QMessageLogContext, QtMsgType, qInstallMessageHandler
        from PySide6.QtWidgets import QApplication
    except ImportError as error:
        said_of_it = [str(error)]
        raise MeterlogError(
            f"no window opens: {why(said_of_it)}.", remedy=remedy(said_of_it)
        ) from error

    said: list[str] = []

    def hear(kind: QtMsgType, context: QMessageLogContext, text: str) -> None:
        said.append(f"{context.category}: {text}")
        if kind is QtMsgType.QtFatalMsg:
            remark(f"meterlog: no window opens: {why(said)}. {remedy(said)}")
            os._exit(_FAILED)  # Qt would end the process as soon as this is left

    running = QApplication.instance()
    if running is None:
        before = qInstallMessageHandler(hear)
        try:
            running = QApplication(["meterlog"])
        finally:
            qInstallMessageHandler(before)
        for text in said:
            remark(text)
    yield
    del running
