"""TypingLine: a reading typed off a meter without a plug. Enter keeps it as of then, Esc ends."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QWidget

from meterlog.model import Instrument
from meterlog.model.errors import UsageError
from meterlog.window.note_line import NoteField
from meterlog.window.numbers import in_numbers
from meterlog.window.sentences import sentence
from meterlog.window.words import say
from meterlog.work import parse_reading, reading_words
from meterlog.work.typed_reading import beyond_words


class TypingLine(QWidget):
    """An inline field for numbers.

    It stays open after Enter for the next reading. ``typed`` is emitted with the key of the meter
    and the numbers.
    """

    typed = Signal(str, object)

    def __init__(self) -> None:
        super().__init__()
        self.meter = QComboBox()
        self.meter.setAccessibleName(say("meter that is typed by hand"))
        self.name = QLabel("")
        self.field = NoteField()
        self.field.setAccessibleName(say("reading typed by hand"))
        self.field.setMaxLength(200)
        self.said = QLabel("")
        self.said.setProperty("rank", "second")
        self.said.setAccessibleName(say("what was taken"))
        self._instruments: tuple[Instrument, ...] = ()
        self._before: QWidget | None = None
        self._why = ""
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        for widget, stretch in (
            (QLabel(say("Typed by hand")), 0),
            (self.meter, 0),
            (self.name, 0),
            (self.field, 1),
            (self.said, 1),
        ):
            layout.addWidget(widget, stretch)
        self.said.setWordWrap(True)
        self.hint = QLabel("")
        self.hint.setProperty("rank", "second")
        layout.addWidget(self.hint)
        self.field.returnPressed.connect(self._on_keep)
        self.field.dropped.connect(self.close_line)
        self.meter.currentIndexChanged.connect(lambda _: self._on_meter())
        self.hide()

    def ask(self, instruments: Sequence[Instrument]) -> None:
        """Open the line for these meters, at least one; one open for them is left as it is."""
        if self.isVisible() and not self._why and self._instruments == tuple(instruments):
            self.field.setFocus()
            return
        self._why = ""
        if self._instruments != tuple(instruments):
            self._instruments = tuple(instruments)
            with QSignalBlocker(self.meter):  # what was typed already stays
                self.meter.clear()
                self.meter.addItems([instrument.key for instrument in instruments])
        self.meter.setVisible(len(instruments) > 1)
        self.name.setVisible(len(instruments) == 1)
        self._open("")
        self.hint.setText(say("Enter keeps · Esc ends"))
        self._show_meter()

    def explain(self, why: str) -> None:
        """Open the line though nothing can be taken; it says why, until Esc.

        What is typed off a meter must not become commands, and Enter must not start anything.

        Parameters
        ----------
        why : str
        """
        self._why = why
        self.meter.hide()
        self.name.hide()
        self._open(why)
        self.hint.setText(say("Esc ends"))
        self.field.setPlaceholderText("")

    def _open(self, words: str) -> None:
        if not self.isVisible():
            self._before = self.window().focusWidget()
            self.field.clear()
        self._say(words)
        self.show()
        self.field.setFocus()

    @property
    def instrument(self) -> Instrument:
        """The meter chosen."""
        return self._instruments[max(self.meter.currentIndex(), 0)]

    def _on_meter(self) -> None:
        self._show_meter()
        self.field.clear()

    def _show_meter(self) -> None:
        self.name.setText(self.instrument.key)
        channels = self.instrument.channels
        self.field.setPlaceholderText("  ".join(f"{c.name} ({c.unit})" for c in channels))

    def _say(self, words: str) -> None:
        self.said.setText(f"⚠ {words}" if words and words == self._why else words)

    def _on_keep(self) -> None:
        if self._why:
            self._say(self._why)
            return
        if not self.field.text().strip():
            self.close_line()
            return
        try:
            _, values = parse_reading(self.field.text(), [self.instrument])
        except UsageError as error:
            self._say(sentence(str(error)))
            return
        self._say("")
        self.typed.emit(self.instrument.key, values)

    def show_taken(self, values: Sequence[float], nominal_v: float | None = None) -> None:
        """Say what was taken, ask about it where it can't be, and be ready for the next reading.

        Parameters
        ----------
        values : sequence of float
        nominal_v : float or None
            Of the circuit, where that is known.
        """
        words = say("taken: {values}", values=in_numbers(reading_words(self.instrument, values)))
        doubt = "" if nominal_v is None else beyond_words(self.instrument, values, nominal_v)
        self._say(f"{words}. ⚠ {in_numbers(sentence(doubt))}" if doubt else words)
        self.field.clear()

    def refuse(self, words: str) -> None:
        """Say why nothing was taken; what was typed stays."""
        self._say(sentence(words))

    def close_line(self) -> None:
        """Close, if it is open."""
        if not self.isVisible():
            return
        self.hide()
        self.field.clear()
        if self._before is not None:
            self._before.setFocus()
