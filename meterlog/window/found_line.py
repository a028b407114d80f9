"""FoundLine: says that the speeds were found, not recorded, and takes them for commands or back."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from meterlog.window.shown import Shown
from meterlog.window.words import say


class FoundLine(QWidget):
    """A line with a button, there only where speeds were found in the current.

    ``turned`` is emitted when the button is pressed.
    """

    turned = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.words = QLabel("")
        self.words.setWordWrap(True)
        self.words.setAccessibleName(say("speeds found"))
        self.turn = QPushButton("")
        self.turn.setAccessibleName(say("take the found speeds as commanded, or give them back"))
        self.turn.clicked.connect(self.turned)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.words, 1)
        row.addWidget(self.turn)
        self.hide()

    def show_found(self, shown: Shown, *, busy: bool = False) -> None:
        """Show what there is to take or to take back; hidden where there is nothing.

        Parameters
        ----------
        shown : Shown
        busy : bool
            The recording is being judged anew: the button waits.
        """
        found = sum(step.found for step in shown.review.steps)
        self.setVisible(shown.has_found_steps)
        self.turn.setDisabled(busy)
        if shown.accepted:
            self.words.setText(
                say(
                    "Judged by speeds that were found in the current and taken as commanded: nobody"
                    " recorded them."
                )
            )
            self.turn.setText(say("Show as found again (C)"))
        else:
            self.words.setText(
                say(
                    "No speed was recorded. {found} speed steps were found in the current; their"
                    " numbers are proposals, by order of current.",
                    found=found,
                )
            )
            self.turn.setText(say("Take them as commanded (C)"))
