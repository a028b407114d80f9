"""ClaimOptions: how a pack is made, and where it goes."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.window.claim_page.claim_plan import A4, LETTER
from meterlog.window.words import say


class PlainLine(QLineEdit):
    """A line that Esc leaves."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Esc; all else is typed."""
        if event.key() == Qt.Key.Key_Escape:
            self.clearFocus()
        else:
            super().keyPressEvent(event)


class ClaimOptions(QFrame):
    """``changed`` is emitted when one is turned, ``browse`` to choose a folder."""

    changed = Signal()
    browse = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "panel")
        self.papers = {A4: QPushButton("A4"), LETTER: QPushButton(say("Letter"))}
        for key, button in self.papers.items():
            button.setCheckable(True)
            button.setAccessibleName(say("paper of the PDF: {it}", it=button.text()))
            button.clicked.connect(lambda _, key=key: self.set_paper(key))
        self.papers[A4].setChecked(True)
        self.without_customer = QCheckBox(say("Without customer data"))
        self.signed = QCheckBox(say("Signed with the key of this machine"))
        self.signed.setChecked(True)
        self.comma = QCheckBox(say("Decimal comma in tables"))
        self.passphrase = PlainLine()
        self.passphrase.setAccessibleName(say("passphrase of the signing key"))
        self._key_words: bool | None = False
        self.out = PlainLine()
        self.out.setAccessibleName(say("folder of the pack"))
        self.choose = QPushButton(say("Choose…"))
        self.choose.setAccessibleName(say("choose where the pack goes"))
        self.choose.clicked.connect(self.browse)
        for tick in (self.without_customer, self.signed, self.comma):
            tick.toggled.connect(lambda _: self._on_change())
        self._lay_out()
        self.show_key(wants_words=False)

    def _lay_out(self) -> None:
        heading = QLabel(say("How it is made"))
        heading.setProperty("rank", "title")
        paper = QHBoxLayout()
        paper.setSpacing(6)  # not the grid's own, in which it lies
        paper.addWidget(_second(say("Paper")))
        for button in self.papers.values():
            paper.addWidget(button)
        paper.addStretch(1)
        grid = QGridLayout()
        grid.setVerticalSpacing(3)
        grid.addLayout(paper, 0, 0)
        grid.addWidget(self.comma, 0, 1)
        grid.addWidget(self.without_customer, 1, 0)
        grid.addWidget(self.signed, 1, 1)
        where = QHBoxLayout()
        where.addWidget(_second(say("Goes to")))
        where.addWidget(self.out, 1)
        where.addWidget(self.choose)
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(4)
        column.addWidget(heading)
        column.addLayout(grid)
        column.addWidget(self.passphrase)
        column.addLayout(where)

    def set_paper(self, paper: str) -> None:
        """Choose ``a4`` or ``letter``."""
        for key, button in self.papers.items():
            button.setChecked(key == paper)

    @property
    def paper(self) -> str:
        """``a4`` or ``letter``."""
        return LETTER if self.papers[LETTER].isChecked() else A4

    def show_key(self, *, wants_words: bool | None) -> None:
        """Ask for a passphrase where the key has one, or may get one.

        Parameters
        ----------
        wants_words : bool or None
            None: there is no key yet; it is made with the first pack.
        """
        self._key_words = wants_words
        new = say("Passphrase for the key that is made now; empty for none")
        self.passphrase.setPlaceholderText(say("Passphrase of the key") if wants_words else new)
        # A new one is seen: nobody could ever find out what was mistyped unseen.
        echo = QLineEdit.EchoMode
        self.passphrase.setEchoMode(echo.Normal if wants_words is None else echo.Password)
        self._show_passphrase()

    def _show_passphrase(self) -> None:
        self.passphrase.setVisible(self.signed.isChecked() and self._key_words is not False)

    def _on_change(self) -> None:
        self._show_passphrase()
        self.changed.emit()

    def show_out(self, folder: Path) -> None:
        """Show where the pack goes."""
        self.out.setText(str(folder))
        self.out.setToolTip(str(folder))

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return (
            *self.papers.values(),
            self.comma,
            self.without_customer,
            self.signed,
            self.passphrase,
            self.out,
            self.choose,
        )


def _second(words: str) -> QLabel:
    label = QLabel(words)
    label.setProperty("rank", "second")
    return label
