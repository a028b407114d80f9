"""SampleField: where a mark stands, moved by one sample with the arrow keys, or typed."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit

from meterlog.window.numbers import number, typed_number
from meterlog.window.words import later, say

_HELP = later("← → one sample; or type seconds")


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

    def __init__(self) -> None:
        super().__init__()
        self._full = ""

    def show_seconds(self, full: str) -> None:
        """Show a time: in full while it is edited and in the tip, else to the millisecond."""
        self._full = full
        self.setText(full if self.hasFocus() else self._short())
        self.setToolTip("\n".join(one for one in (f"{full} s" if full else "", say(_HELP)) if one))

    def _short(self) -> str:
        return number(typed_number(self._full), ".3f") if self._full else ""

    def _turn(self, before: str, after: str) -> None:
        """Show the same time in the other form; what was typed stays as it is."""
        if self._full and self.text() == before != after:
            modified = self.isModified()
            self.setText(after)
            self.setModified(modified)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the time in full, to be edited."""
        self._turn(self._short(), self._full)
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Show the time to the millisecond again, unless another was typed."""
        super().focusOutEvent(event)
        self._turn(self._full, self._short())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move by one sample with left and right; the cursor goes by Home and End."""
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if step is not None and held == Qt.KeyboardModifier.NoModifier:
            self.moved.emit(step)
            event.accept()
            return
        super().keyPressEvent(event)
