"""Keys page: what each key does, and which key of one's own shall do it too."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from meterlog.evidence.palette import Palette
from meterlog.model.errors import MeterlogError
from meterlog.window.acting_keys import where_words
from meterlog.window.circuit_keys import CIRCUIT_BINDINGS, CircuitAction
from meterlog.window.key_map import UNBOUND, Bound, KeyMap, key_name
from meterlog.window.keys import BINDINGS, Binding
from meterlog.window.remedies_here import remedy_here
from meterlog.window.tab_order import order_tabs
from meterlog.window.words import later, say
from meterlog.window.work_page import PageKey

HEADS = (later("what"), later("where"), later("keys"), later("your own"))
_HOW = later(
    "Choose what a foot pedal, a ring or a spare key shall do, press Bind, then press it. The keys"
    " that are always there stay; a key of your own goes before them. A page that needs a key"
    " itself takes it: see the key map at the bottom. While this page is open only the keys at the"
    " bottom act: nothing is marked."
)


class KeysDesk:
    """The page.

    Parameters
    ----------
    own : KeyMap
    leave : callable
        Turns back to the page before.
    """

    def __init__(self, own: KeyMap, leave: Callable[[], object]) -> None:
        self._own, self._leave = own, leave
        self.page = _KeysWidget(own)

    @property
    def widget(self) -> QWidget:
        """What stands in the stack of pages."""
        return self.page

    def begin(self) -> None:
        """Show the keys as they are."""
        self.page.show_keys()

    def tick(self) -> None:
        """Nothing is under way here."""

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take nothing: the style sheet says it all."""

    def keys(self) -> tuple[PageKey, ...]:
        """Give the keys of the page: those of its buttons."""
        return (
            PageKey((Qt.Key.Key_Insert,), "Ins", say("bind"), self.page.listen),
            PageKey((Qt.Key.Key_Delete,), "Del", say("free"), self.page.free),
            PageKey((Qt.Key.Key_Escape,), "Esc", say("back"), self._leave),
        )

    def may_close(self) -> bool:
        """Nothing is lost here."""
        return True

    def close(self) -> None:
        """Listen no more."""
        self.page.deafen()


class _KeysWidget(QWidget):
    def __init__(self, own: KeyMap) -> None:
        super().__init__()
        self._own = own
        self._listening: Bound | None = None
        self._rows = _rows()
        title = QLabel(say("Keys"))
        title.setProperty("rank", "title")
        how = QLabel(say(_HOW))
        how.setWordWrap(True)
        self.said = QLabel("")
        self.said.setWordWrap(True)
        self.said.setAccessibleName(say("what became of it"))
        self.table = QTableWidget(len(self._rows), len(HEADS))
        self.table.setAccessibleName(say("what each key does"))
        self.table.setHorizontalHeaderLabels(list(map(say, HEADS)))
        self.table.verticalHeader().hide()
        self.table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        self.table.setSelectionMode(QTableWidget.SelectionMode.SingleSelection)
        self.table.setTabKeyNavigation(False)
        head = self.table.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        self.bind = QPushButton(say("Bind: then press the key or pedal"))
        self.bind.setAccessibleName(say("bind a key of your own to what is chosen"))
        self.bind.clicked.connect(self.listen)
        self.loosen = QPushButton(say("Free"))
        self.loosen.setAccessibleName(say("take the keys of your own from what is chosen"))
        self.loosen.clicked.connect(self.free)
        buttons = QHBoxLayout()
        for button in (self.bind, self.loosen):
            buttons.addWidget(button)
        buttons.addStretch(1)
        page = QVBoxLayout(self)
        for widget in (title, how, self.table):
            page.addWidget(widget, 1 if widget is self.table else 0)
        page.addLayout(buttons)
        page.addWidget(self.said)
        order_tabs((self.table, self.bind, self.loosen))
        if own.trouble:
            self.said.setText(own.trouble)
        self.show_keys()
        self.table.selectRow(0)

    def show_keys(self) -> None:
        """Write the table."""
        for row, (action, where, words, keys) in enumerate(self._rows):
            for column, text in enumerate(
                (words, where, keys, " / ".join(map(say, self._own.keys(action))))
            ):
                self.table.setItem(row, column, QTableWidgetItem(text))

    def chosen(self) -> Bound:
        """Give the action of the row that is chosen."""
        return self._rows[max(self.table.currentRow(), 0)][0]

    def listen(self) -> None:
        """Take the next key that is pressed, whatever it is."""
        self._listening = self.chosen()
        self.said.setText(
            say(
                "Press the key or pedal for: {listening}. Esc: none.",
                listening=say(self._listening.value),
            )
        )
        application = QApplication.instance()
        if application is not None:
            application.installEventFilter(self)

    def deafen(self) -> None:
        """Wait for no key any more."""
        self._listening = None
        application = QApplication.instance()
        if application is not None:
            application.removeEventFilter(self)

    def free(self) -> None:
        """Take the technician's own keys from what is chosen."""
        action = self.chosen()
        try:
            self._own.free(action)
        except MeterlogError as error:
            self.said.setText(remedy_here(str(error)))
            return
        self.said.setText(say("No key of your own for: {action}.", action=say(action.value)))
        self.show_keys()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Bind the key that is pressed."""
        action = self._listening
        if action is None or event.type() != QEvent.Type.KeyPress:
            return super().eventFilter(watched, event)
        if not isinstance(event, QKeyEvent) or event.isAutoRepeat():
            return True
        key = Qt.Key(event.key())
        if key in {Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt, Qt.Key.Key_Meta}:
            return True  # the key that goes with it is yet to come
        self.deafen()
        if key is Qt.Key.Key_Escape:
            self.said.setText(say("Nothing was bound."))
            return True
        self._bind(key, action)
        return True

    def _bind(self, key: Qt.Key, action: Bound) -> None:
        try:
            before = self._own.bind(key, action)
        except MeterlogError as error:
            self.said.setText(remedy_here(str(error)))
            return
        instead = (
            say(" It did: {before}.", before=say(before.value))
            if before not in {None, action}
            else ""
        )
        usual = _usual(key, circuit=isinstance(action, CircuitAction))
        over = (
            say(" There it goes before: {usual}.", usual=say(usual))
            if usual and usual != action.value
            else ""
        )
        self.said.setText(
            say(
                "{key} now does: {action}.{instead}{over}",
                key=say(key_name(key)),
                action=say(action.value),
                instead=instead,
                over=over,
            )
        )
        self.show_keys()


def _rows() -> tuple[tuple[Bound, str, str, str], ...]:
    """Give action, where it acts, what it does and its usual keys, for all that can be bound."""
    rows: list[tuple[Bound, str, str, str]] = [
        (
            one.action,
            _where(one),
            _what(one.action, one.words),
            " / ".join(filter(None, (_names(one.keys), say(one.held)))),
        )
        for one in BINDINGS
        if one.action not in UNBOUND
    ]
    rows += [
        (one.action, say("Circuit"), _what(one.action, one.words), _names(one.keys))
        for one in CIRCUIT_BINDINGS
        if isinstance(one.action, CircuitAction) and one.action not in UNBOUND
    ]
    return tuple(rows)


def _where(binding: Binding) -> str:
    """Say where an action's keys do it; those held together do it everywhere."""
    held = say("{keys}: all pages", keys=say(binding.held)) if binding.held else ""
    return "; ".join(filter(None, (where_words(binding.action), held)))


def _what(action: Bound, words: str) -> str:
    """Give what an action does: its name, and what the key map says of it where that says more."""
    return (
        say(action.value)
        if not words or words == action.value
        else f"{say(action.value)}: {say(words)}"
    )


def _names(keys: tuple[Qt.Key, ...]) -> str:
    return " / ".join(dict.fromkeys(say(key_name(key)) for key in keys))


def _usual(key: Qt.Key, *, circuit: bool) -> str:
    """Give what a key does there if nobody binds it; empty for nothing."""
    bindings = CIRCUIT_BINDINGS if circuit else BINDINGS
    return next((one.action.value for one in bindings if key in one.keys), "")
