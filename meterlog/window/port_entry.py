"""PortEntry: one port on the Meters page: may it be asked, and what it answered."""

from __future__ import annotations

from collections.abc import Collection

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QGridLayout, QLabel, QPushButton, QWidget

from meterlog.acquire import Fit, Outcome, PortAnswer, PortProgress
from meterlog.instruments import PortInfo
from meterlog.window.numbers import in_numbers
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say

_USE, _USED = later("Use it"), later("✓ in use below")
_LONG = 30
"""Characters of an answer that still stand beside the port's name; more go under it."""
_NOT_ASKED, _MAY_BE_ASKED = later("not to be asked"), later("may be asked")


def answer_words(fit: Fit) -> str:
    """Give one profile that fits as it is shown, with its reading."""
    return say(
        "answers as {profile} · {fit}",
        profile=fit.profile,
        fit=in_numbers(fit.words) or say("no reading"),
    )


class PortEntry(QWidget):
    """A check box, words, and for each profile that fits a button.

    ``taken`` is emitted with the profile's name and the port.

    Parameters
    ----------
    port : PortInfo
    """

    taken = Signal(str, str)

    def __init__(self, port: PortInfo) -> None:
        super().__init__()
        self.port = port
        self.answer: PortAnswer | None = None
        self.may_ask = QCheckBox(
            " ".join(word for word in (port.device, sentence(port.text)) if word)
        )
        self.may_ask.setAccessibleName(say("port {device} may be asked", device=port.device))
        self.may_ask.setEnabled(port.usable)
        facts = [
            say("USB {vendor}:{product}", vendor=port.vendor, product=port.product)
            if port.vendor
            else "",
            port.serial,
        ]
        self.may_ask.setToolTip(" · ".join(fact for fact in facts if fact))
        self.words = QLabel(say(_NOT_ASKED) if port.usable else sentence(port.reason))
        self.words.setWordWrap(True)
        self.words.setAccessibleName(say("what {device} answered", device=port.device))
        self.words.setProperty("rank", "second" if port.usable else "caution")
        self.may_ask.toggled.connect(self._on_tick)
        self.buttons: list[QPushButton] = []
        self._lines: list[QLabel] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(1, 1)
        self._grid.addWidget(self.may_ask, 0, 0)
        self._say(self.words.text())

    def _say(self, words: str) -> None:
        """Show words beside the port's name, or under it where they are many."""
        self.words.setText(words)
        self._grid.removeWidget(self.words)
        if len(words) > _LONG:
            self._grid.addWidget(self.words, 1, 0, 1, 3)
        else:
            self._grid.addWidget(self.words, 0, 1, 1, 2)
        indent = 2 * self.words.fontMetrics().averageCharWidth() if len(words) > _LONG else -1
        self.words.setIndent(indent)

    @property
    def included(self) -> bool:
        """Whether the user lets this port be asked."""
        return self.may_ask.isEnabled() and self.may_ask.isChecked()

    def _on_tick(self, ticked: bool) -> None:  # noqa: FBT001 - the form of Qt's signal
        if self.answer is None and self.port.usable:
            self._say(say(_MAY_BE_ASKED if ticked else _NOT_ASKED))

    def show_progress(self, progress: PortProgress) -> None:
        """Show what is being done, and once it is there the answer."""
        if progress.answer is None:
            self._clear()
            self._say(f"{progress.doing}…")
        elif progress.answer is not self.answer:
            self._show_answer(progress.answer)

    def _clear(self) -> None:
        self.answer = None
        for widget in (*self._lines, *self.buttons):
            self._grid.removeWidget(widget)
            widget.deleteLater()
        self._lines, self.buttons = [], []

    def _show_answer(self, answer: PortAnswer) -> None:
        self._clear()
        self.answer = answer
        if not answer.fits:
            mild = answer.outcome in {Outcome.SILENT, Outcome.STOPPED}
            self._say(answer.reason if mild else f"⚠ {answer.reason}")
            return
        words = [answer.who] if answer.who else []
        if answer.simulated:
            words.append(say("a virtual meter: nothing is measured"))
        if len(answer.fits) > 1:
            words.append(
                say("{fits} profiles fit: choose by what is connected", fits=len(answer.fits))
            )
        self._say(" · ".join(words) or sentence(answer.fits[0].title))
        for fit in answer.fits:
            self._add_fit(fit)

    def _add_fit(self, fit: Fit) -> None:
        row = 2 + len(self.buttons)
        line = QLabel(
            f"{answer_words(fit)}\n{sentence(fit.note)}" if fit.note else answer_words(fit)
        )
        line.setWordWrap(True)
        line.setIndent(2 * line.fontMetrics().averageCharWidth())
        line.setToolTip(f"{sentence(fit.title)}: {sentence(fit.why)}")
        button = QPushButton(say(_USE))
        button.setAccessibleName(
            say("use {device} as {profile}", device=self.port.device, profile=fit.profile)
        )
        button.clicked.connect(lambda: self.taken.emit(fit.profile, self.port.device))
        self._grid.addWidget(line, row, 0, 1, 2)
        self._grid.addWidget(button, row, 2)
        self._lines.append(line)
        self.buttons.append(button)

    def show_used(self, profiles: Collection[str]) -> None:
        """Mark those of the answers that are chosen as meters."""
        fits = self.answer.fits if self.answer is not None else ()
        for fit, button in zip(fits, self.buttons, strict=True):
            button.setText(say(_USED if fit.profile in profiles else _USE))
