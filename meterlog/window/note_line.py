"""NoteLine: free words at the instant the key was pressed. Enter keeps, Esc drops."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QWidget

from meterlog.window.words import later, say

_KEEPS = later("Enter keeps · Esc drops")
_KEEPS_HERE = later("Typed before this recording began · Enter keeps it in this one · Esc drops")


class NoteField(QLineEdit):
    """A line that tells when Esc was pressed."""

    dropped = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Drop on Esc; all else is typing."""
        if event.key() == Qt.Key.Key_Escape:
            self.dropped.emit()
            return
        super().keyPressEvent(event)
        # A line edit passes Enter on to what it stands in, where the same key stops a recording.
        event.accept()


class NoteLine(QWidget):
    """An inline field. ``kept`` is emitted with the words and the instant they belong to.

    Attributes
    ----------
    at_ns : int or None
        The instant; None: nothing can be kept now.
    typed_before : bool
        What stands in it was typed before the recording began that it would go into.
    """

    kept = Signal(str, object)

    def __init__(self) -> None:
        super().__init__()
        self.field = NoteField()
        self.field.setAccessibleName(say("note"))
        self.field.setPlaceholderText(say("what you see, hear or did"))
        self.field.setMaxLength(400)
        self.at_ns: int | None = None
        self._before: QWidget | None = None
        self.typed_before = False
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(QLabel(say("Note")))
        layout.addWidget(self.field, 1)
        self.hint = QLabel("")
        self.hint.setProperty("rank", "second")
        self.hint.setAccessibleName(say("what the keys do"))
        layout.addWidget(self.hint)
        self.field.returnPressed.connect(self.keep)
        self.field.dropped.connect(self.close_line)
        self.hide()

    def ask(self, at_ns: int) -> None:
        """Open the line for a note about the instant ``at_ns``; an open one is left as it is."""
        if not self.isVisible() or self.at_ns is None:
            self.typed_before = self.isVisible() and bool(self.field.text())
            self.at_ns = at_ns
        self._open(self._keeps())

    def explain(self, why: str) -> None:
        """Open the line though no note can be kept; it says why, until Esc.

        What is typed must not become commands, and Enter must not start anything.

        Parameters
        ----------
        why : str
        """
        self.at_ns = None
        self._open(_why(why))

    def follow(self, at_ns: int | None, why: str) -> None:
        """Let a line that is open belong to what is under way now; its words and the focus stay.

        Parameters
        ----------
        at_ns : int or None
            Its instant in the run that has begun; None: none can be kept now.
        why : str
            Why not.
        """
        if not self.isHidden():
            self.typed_before = self.at_ns is None and bool(self.field.text())
            self.at_ns = at_ns
            self.hint.setText(self._keeps() if at_ns is not None else _why(why))

    def _keeps(self) -> str:
        # What was typed of another recording, perhaps of the other part, is nothing to slip in.
        return say(_KEEPS_HERE if self.typed_before else _KEEPS)

    def _open(self, hint: str) -> None:
        self.hint.setText(hint)
        if not self.isVisible():
            self._before = self.window().focusWidget()
            self.field.clear()
        self.show()
        self.field.setFocus()

    def keep(self) -> None:
        """Keep what was typed, if anything was, and close."""
        words = " ".join(self.field.text().split())
        at_ns = self.at_ns
        if at_ns is None:
            return
        self.close_line()
        if words:
            self.kept.emit(words, at_ns)

    def close_line(self) -> None:
        """Close without keeping."""
        self.hide()
        self.field.clear()
        if self._before is not None:
            self._before.setFocus()


def _why(why: str) -> str:
    return f"⚠ {why} · {say('Esc ends')}"
