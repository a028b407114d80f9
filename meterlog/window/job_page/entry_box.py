"""EntryBox: one field of the card: its name, a place to type, and what is told beside it."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QPlainTextEdit, QVBoxLayout, QWidget

from meterlog.window.wrapped_label import WrappedLabel

PAUSE_MS = 1200
"""After so long without a key what is typed is kept, though the cursor still stands there."""
_ENTER = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class _Line(QLineEdit):
    """One line. Enter goes on to the next field, Esc leaves it."""

    left = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Enter and Esc; all else is typed."""
        if event.key() == Qt.Key.Key_Escape:
            self.clearFocus()
        elif event.key() in _ENTER:
            self.focusNextChild()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Tell that it was left."""
        super().focusOutEvent(event)
        self.left.emit()


class _Sentences(QPlainTextEdit):
    """Some lines. Tab goes on to the next field, Esc leaves it."""

    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setTabChangesFocus(True)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Esc; all else is typed."""
        if event.key() == Qt.Key.Key_Escape:
            self.clearFocus()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Tell that it was left."""
        super().focusOutEvent(event)
        self.left.emit()


class EntryBox(QWidget):
    """``entered`` is emitted with the text when the field is left, or after a pause in typing.

    Parameters
    ----------
    label : str
        Above the field.
    name : str
        For who can't see it.
    hint : str
        What belongs there; shown while it is empty.
    long : bool
        Whole sentences go there.

    Attributes
    ----------
    doubt : QLabel
        What is told of the field. It stands in no layout here: sentences need more width than a
        field has.
    """

    entered = Signal(str)

    def __init__(self, label: str, name: str, hint: str = "", *, long: bool = False) -> None:
        super().__init__()
        self.label = QLabel(label)
        self.label.setProperty("rank", "second")
        self.edit: _Line | _Sentences = _Sentences() if long else _Line()
        self.edit.setAccessibleName(name)
        self.edit.setPlaceholderText(hint)
        self.label.setBuddy(self.edit)
        self.doubt = WrappedLabel()
        self.doubt.hide()
        self._kept = self._said = ""
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._pause.timeout.connect(self.commit)
        self.edit.textChanged.connect(lambda *_: self._pause.start())
        self.edit.left.connect(self.commit)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(1)
        column.addWidget(self.label)
        column.addWidget(self.edit)

    @property
    def text(self) -> str:
        """What stands in the field."""
        edit = self.edit
        return edit.text() if isinstance(edit, QLineEdit) else edit.toPlainText()

    @property
    def waiting(self) -> bool:
        """True while something stands there that is not kept."""
        return self.text.strip() != self._kept

    def show_kept(self, text: str) -> None:
        """Show what is kept; something else that is being typed stays."""
        text = text.strip()
        typed = self.text.strip()
        if typed not in {self._kept, text}:
            self._kept = text
        elif typed == text:
            self._kept = text
            self._pause.stop()
        elif text != self._said:
            self._put(text)
        self._said = text

    def take_over(self, text: str) -> None:
        """Show what is kept in the place of whatever stands there."""
        self._said = text.strip()
        self._put(self._said)

    def _put(self, text: str) -> None:
        if isinstance(self.edit, QLineEdit):
            self.edit.setText(text)
            self.edit.setCursorPosition(0)  # what a narrow box shows is the beginning
        else:
            self.edit.setPlainText(text)
        # As the field gives it back: it has no hard blanks, and that is no entry.
        self._kept = self.text.strip()
        self._pause.stop()

    def commit(self) -> None:
        """Tell what is typed, where it is not kept yet."""
        self._pause.stop()
        if self.waiting:
            self.entered.emit(self.text)

    def tell(self, words: str, rank: str = "caution") -> None:
        """Say something beside the field; empty takes it away.

        Parameters
        ----------
        words : str
        rank : str
            ``caution`` for what looks wrong, ``alert`` for what could not be kept.
        """
        if self.doubt.property("rank") != rank:
            self.doubt.setProperty("rank", rank)
            self.doubt.style().polish(self.doubt)
        self.doubt.setText(words)
        self.doubt.setVisible(bool(words))
        self.edit.setAccessibleDescription(words)

    def set_line_height(self, pixels: int) -> None:
        """Take text of another height: sentences get three lines."""
        if isinstance(self.edit, QPlainTextEdit):
            self.edit.setFixedHeight(round(pixels * 4.4) + 8)
