"""SampleField: where a mark stands, moved by one sample with the arrow keys, or typed."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit


class PlainField(QLineEdit):
    """A line that keeps Enter to itself and tells of Esc."""

    dropped = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Drop on Esc; all else is typing."""
        if event.key() == Qt.Key.Key_Escape:
            self.dropped.emit()
            event.accept()
            return
        super().keyPressEvent(event)
        # A line edit passes Enter on to what it stands in, where it would start a recording.
        event.accept()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Mark what stands there, so that typing takes its place."""
        super().focusInEvent(event)
        if event.reason() is not Qt.FocusReason.ActiveWindowFocusReason:
            self.selectAll()


class SampleField(PlainField):
    """Seconds. ``moved`` is emitted with -1 or 1 for the left or right key: one sample."""

    moved = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move by one sample with left and right; the cursor goes by Home and End."""
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if step is not None and held == Qt.KeyboardModifier.NoModifier:
            self.moved.emit(step)
            event.accept()
            return
        super().keyPressEvent(event)
