"""SignsRow: what is seen, heard or felt, one key or button each."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from meterlog.model import Sign
from meterlog.window.circuit_keys import SIGNS
from meterlog.window.words import later, say
from meterlog.window.wrapping_row import WrappingRow

_WORDS = {
    Sign.FAN: later("Fan"), Sign.TAP: later("Tap"), Sign.WHEEL: later("Wheel"),
    Sign.CLICK: later("Click"),
}  # fmt: skip


class SignsRow(QWidget):
    """Buttons. ``seen`` is emitted with the place in :data:`~circuit_keys.SIGNS`."""

    seen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.buttons: list[QPushButton] = []
        groups: dict[Sign, list[QPushButton]] = {sign: [] for sign in Sign}
        for at, (sign, value) in enumerate(SIGNS):
            button = QPushButton(f"{say(value, 'sign')} F{at + 1}")
            button.setAccessibleName(
                say(
                    "{words}: {value}, key F{at}",
                    words=say(_WORDS[sign]),
                    value=say(value, "sign"),
                    at=at + 1,
                )
            )
            button.clicked.connect(lambda _, at=at: self.seen.emit(at))
            self.buttons.append(button)
            groups[sign].append(button)
        row = WrappingRow(self)
        row.fill([(say(_WORDS[sign]), buttons) for sign, buttons in groups.items()])

    def in_order(self) -> list[QWidget]:
        """Give all controls as the eye goes."""
        return [*self.buttons]
