"""CircuitStateRow: which circuit, and what it is set to just now."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from meterlog.model import Circuit, CircuitState
from meterlog.model.circuit_check import KEYS
from meterlog.window.circuit_names import know_circuit
from meterlog.window.sentences import sentence
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say
from meterlog.window.wrapping_row import WrappingRow

_CHOOSE = later("choose the circuit…")
_COMPLAINT = {True: later("yes"), False: later("no"), None: later("not said")}


class CircuitStateRow(QWidget):
    """Buttons for the state.

    ``chosen`` is emitted with a circuit's name, ``changed`` with a state, ``speed_asked`` with the
    speed of the button that was clicked: the row shows it once it is told to.
    """

    chosen = Signal(str)
    speed_asked = Signal(int)
    changed = Signal(object)
    listed = Signal()
    undo = Signal()
    redo = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.state = CircuitState()
        self.circuit: Circuit | None = None
        self.box = SteadyComboBox()
        self.box.setAccessibleName(say("circuit"))
        self.box.setMinimumContentsLength(33)
        self.box.setSizeAdjustPolicy(
            SteadyComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.keys = {key: self._button(say(key), say("key {key}", key=say(key))) for key in KEYS}
        self.keys["engine"].setAccessibleName(say("engine running"))
        self.speeds: dict[int, QPushButton] = {}
        self.plugs: dict[str, QPushButton] = {}
        self.fuses: dict[str, QPushButton] = {}
        self.bare = QPushButton("")
        self.bare.setAccessibleName(say("take the jumpers out"))
        self.bare.clicked.connect(lambda: self.set_state(replace(self.state, jumpers=frozenset())))
        self.complaint_now: bool | None = None
        self.complaint = QPushButton("")
        self.complaint.clicked.connect(self.turn_complaint)
        self.undo_button = QPushButton(say("Undo"))
        self.undo_button.setAccessibleName(say("take back the newest entry"))
        self.redo_button = QPushButton(say("Redo"))
        self.redo_button.setAccessibleName(say("put in again what was taken back"))
        self.undo_button.clicked.connect(self.undo)
        self.redo_button.clicked.connect(self.redo)
        self.show_turns(can_undo=False, can_redo=False)
        self._show_complaint()
        self._row = WrappingRow(self)
        for key, button in self.keys.items():
            button.clicked.connect(lambda _, key=key: self.set_state(replace(self.state, key=key)))
        self.box.activated.connect(self._on_box)
        self._fill()

    @staticmethod
    def _button(words: str, name: str) -> QPushButton:
        button = QPushButton(words)
        button.setCheckable(True)
        button.setAccessibleName(name)
        return button

    def show_list(self, circuits: Sequence[tuple[str, str]], chosen: str) -> None:
        """Offer circuits, (name, title) each."""
        self.box.clear()
        self.box.addItem(say(_CHOOSE), "")
        for name, title in circuits:
            self.box.addItem(title, name)
        self.box.setCurrentIndex(max(self.box.findData(chosen), 0))

    def show_circuit(self, circuit: Circuit) -> None:
        """Offer the speeds, plugs and fuses of a circuit; key on, fan off."""
        self.circuit = circuit
        know_circuit(circuit)
        self.box.setCurrentIndex(max(self.box.findData(circuit.name), 0))
        self.box.setToolTip(sentence(circuit.title))
        for old in (*self.speeds.values(), *self.plugs.values(), *self.fuses.values()):
            old.deleteLater()
        self.speeds = {n: self._button(str(n), say("speed {n}", n=n)) for n in circuit.speeds}
        self.plugs = {
            name: self._button(_plain(name), say("plug {plain} off", plain=_plain(name)))
            for name in circuit.plugs
        }
        self.fuses = {
            name: self._button(_plain(name), say("{plain} out", plain=_plain(name)))
            for name in circuit.fuses
        }
        for speed, button in self.speeds.items():
            button.clicked.connect(lambda _, speed=speed: self.speed_asked.emit(speed))
        for name, button in self.plugs.items():
            button.clicked.connect(lambda _, name=name: self._toggle("unplugged", name))
        for name, button in self.fuses.items():
            button.clicked.connect(lambda _, name=name: self._toggle("pulled", name))
        self._fill()
        self.set_state(CircuitState())

    def _fill(self) -> None:
        groups: list[tuple[str, Sequence[QWidget]]] = [
            ("", [self.box]),
            (say("Key"), list(self.keys.values())),
            (say("Speed"), list(self.speeds.values())),
            (say("Plug off"), list(self.plugs.values())),
            (say("Fuse out"), list(self.fuses.values())),
            ("", [self.bare]),
            (say("Complaint now"), [self.complaint]),
            ("", [self.undo_button, self.redo_button]),
        ]
        self._row.fill([(words, widgets) for words, widgets in groups if widgets])
        self.bare.hide()
        self.listed.emit()

    def in_order(self) -> list[QWidget]:
        """Give all controls as the eye goes."""
        return [self.box, *self.keys.values(), *self.speeds.values(), *self.plugs.values(),
                *self.fuses.values(), self.bare, self.complaint,
                self.undo_button, self.redo_button]  # fmt: skip

    def turn_complaint(self) -> None:
        """Say whether the complaint is there now: yes, no, not said."""
        turn = {None: True, True: False, False: None}
        self.complaint_now = turn[self.complaint_now]
        self._show_complaint()

    def _show_complaint(self) -> None:
        words = say(_COMPLAINT[self.complaint_now])
        self.complaint.setText(words)
        self.complaint.setAccessibleName(
            say("the complaint is there now: {words}, key H", words=words)
        )

    def show_turns(self, *, can_undo: bool, can_redo: bool) -> None:
        """Show whether there is anything to take back or to put in again."""
        self.undo_button.setEnabled(can_undo)
        self.redo_button.setEnabled(can_redo)

    def _on_box(self, at: int) -> None:
        name = str(self.box.itemData(at) or "")
        if name:
            self.chosen.emit(name)

    def set_speed(self, speed: int) -> bool:
        """Choose a speed; False if the circuit has none of this number."""
        if self.circuit is None or speed not in self.circuit.speeds:
            return False
        self.set_state(replace(self.state, speed=speed))
        return True

    def next_key(self) -> None:
        """Turn the key on."""
        after = KEYS[(KEYS.index(self.state.key) + 1) % len(KEYS)]
        self.set_state(replace(self.state, key=after))

    def next_plug(self) -> None:
        """Take the next plug off, the one before put back; after the last one all are in."""
        self.set_state(replace(self.state, unplugged=_next(self.state.unplugged, list(self.plugs))))

    def next_fuse(self) -> None:
        """Pull the next fuse, the one before put back; after the last one all are in."""
        self.set_state(replace(self.state, pulled=_next(self.state.pulled, list(self.fuses))))

    def _toggle(self, what: str, name: str) -> None:
        now: frozenset[str] = getattr(self.state, what)
        after = now ^ {name}
        if what == "unplugged":
            self.set_state(replace(self.state, unplugged=after))
        else:
            self.set_state(replace(self.state, pulled=after))

    def set_state(self, state: CircuitState) -> None:
        """Show a state, and tell that it changed."""
        self.state = state
        for key, button in self.keys.items():
            button.setChecked(key == state.key)
        for speed, button in self.speeds.items():
            button.setChecked(speed == state.speed)
        for name, button in self.plugs.items():
            button.setChecked(name in state.unplugged)
        for name, button in self.fuses.items():
            button.setChecked(name in state.pulled)
        self.bare.setVisible(bool(state.jumpers))
        self.bare.setText(say("Jumper out ({jumpers})", jumpers=len(state.jumpers)))
        self.changed.emit(state)


def _next(now: frozenset[str], names: Sequence[str]) -> frozenset[str]:
    if not names:
        return frozenset()
    if len(now) != 1:
        return frozenset() if now else frozenset(names[:1])
    at = names.index(next(iter(now))) + 1
    return frozenset(names[at : at + 1])


def _plain(name: str) -> str:
    return sentence(name.replace("-", " "))
