"""OwnEnter: controls that keep Enter for themselves, whatever else it would do on their page."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

_KEPT = "keepsEnter"


def keep_enter(*widgets: QWidget) -> None:
    """Let Enter be these controls' own affair: where it confirms it may not start a recording."""
    for widget in widgets:
        widget.setProperty(_KEPT, "yes")


def keeps_enter(watched: QObject | None) -> bool:
    """Tell whether Enter is a control's own affair."""
    return watched is not None and watched.property(_KEPT) is not None
