"""Tab order: Tab goes as the eye goes, also through what was added later."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QWidget


def order_tabs(widgets: Sequence[QWidget]) -> None:
    """Let Tab go through these widgets of one window in this order; Enter presses a button.

    A click with the mouse leaves the focus where it was: else the Enter that starts a recording
    would press the button clicked last.
    """
    for widget in widgets:
        if isinstance(widget, QPushButton):
            widget.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            widget.setAutoDefault(True)
    for first, second in pairwise(widgets):
        QWidget.setTabOrder(first, second)
