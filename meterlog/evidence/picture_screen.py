"""PictureScreen: what a picture needs of Qt where there is no screen."""

from __future__ import annotations

import sys
from pathlib import Path

from PySide6.QtGui import QFontDatabase, QGuiApplication

from meterlog.model.errors import EvidenceError


def need_fonts(path: Path) -> None:
    """Make sure that a picture can be painted, without a screen too.

    Raises
    ------
    EvidenceError
        If there are no fonts on this machine.
    """
    _application()
    if not QFontDatabase.families():
        raise EvidenceError(
            "there are no fonts on this machine, so the picture would have no words.",
            subject=str(path),
            remedy="Install a font, such as the package fonts-dejavu-core.",
        )


_KEPT: list[QGuiApplication] = []


def _application() -> QGuiApplication:
    """Give the running application, or start one that needs no screen."""
    running = QGuiApplication.instance()
    if isinstance(running, QGuiApplication):
        return running
    # A picture is painted in memory: a screen that is there but can't be used must not stop it.
    quiet = ["-platform", "offscreen"] if sys.platform.startswith("linux") else []
    _KEPT.append(QGuiApplication(["meterlog", *quiet]))
    return _KEPT[-1]
