"""MainWindow: the frame. It shows itself first and loads what it needs right after."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QKeyCombination, QObject, QSize, Qt, QTimer, Slot
from PySide6.QtGui import QCloseEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QMainWindow,
    QPlainTextEdit,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from shiboken6 import isValid

from meterlog.window.guide_strip import GuideStrip
from meterlog.window.header import Header
from meterlog.window.key_strip import KeyStrip
from meterlog.window.keys import action_anywhere
from meterlog.window.own_enter import keeps_enter
from meterlog.window.pages import Page, page_by_place
from meterlog.window.reading_distance import FULL_SCREEN_MM, pixels_per_mm
from meterlog.window.scrolled import LEAST, Scrolled
from meterlog.window.theme import (
    first_sheet,
    qt_palette,
    space_out,
    style_sheet,
    text_pixels,
)
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.evidence.palette import Palette
    from meterlog.model import Event
    from meterlog.window.desk import Desk
    from meterlog.work import Run

_TYPING = (QLineEdit, QPlainTextEdit, QAbstractSpinBox)
_ENTER = {Qt.Key.Key_Return, Qt.Key.Key_Enter}
_EDGES = {
    Qt.Key.Key_Left: {"start": -1},
    Qt.Key.Key_Right: {"start": 1},
    Qt.Key.Key_Down: {"end": -1},
    Qt.Key.Key_Up: {"end": 1},
}
"""With Shift: which edge of the measured stretch goes where."""
_UP_DOWN = {Qt.Key.Key_Up, Qt.Key.Key_Down}


_FIRST, _TITLE_BAR = QSize(1280, 800), 40
"""How large it is at first, in pixels, where there is room."""


class MainWindow(QMainWindow):
    """Header, pages, banners, status and key map.

    Parameters
    ----------
    on_mark : callable or None
        Called with every event the technician marks.
    guide : sequence of str
        Sentences of a walk-through.
    """

    def __init__(
        self,
        on_mark: Callable[[Event], None] | None = None,
        guide: Sequence[str] = (),
        next_run: Callable[[], Run] | None = None,
    ) -> None:
        super().__init__()
        self._next_run = next_run
        self.setWindowTitle("meterlog")
        self.setMinimumSize(QSize(480, 320))
        self.resize(_FIRST)
        self.look: Palette | None = None
        self.header = Header()
        self.guide = GuideStrip(guide)
        self.alarm = QLabel("")
        self.said = QLabel("")
        self.pages = QStackedWidget()
        self.foot = QVBoxLayout()
        self.keys = KeyStrip()
        self.desk: Desk | None = None
        self.filled = False
        self._at_once = self._takes_keys = False
        self._on_mark = on_mark
        self._pixels = text_pixels(self.width(), self.height())
        self._lay_out()
        self.setStyleSheet(first_sheet(self._pixels))

    def _lay_out(self) -> None:
        for label, rank in ((self.alarm, "alert"), (self.said, "caution")):
            label.setProperty("rank", rank)
            label.setWordWrap(True)
            label.hide()
        self.alarm.setAccessibleName(say("alarm"))
        self.said.setAccessibleName(say("message"))
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 4)
        column.setSpacing(3)
        column.addWidget(self.header)
        for strip in (self.guide, self.alarm):
            column.addWidget(strip)
        column.addWidget(self.pages, 1)
        # Below: it comes and goes with keys, and what is clicked at may not move meanwhile.
        column.addWidget(self.said)
        self.foot.setContentsMargins(8, 0, 8, 0)
        column.addLayout(self.foot)
        column.addWidget(self.keys)
        self.setCentralWidget(Scrolled(body))
        self.keys.pressed.connect(self._press)

    def fill(
        self, run: Run | None = None, recording: Path | None = None, job: Path | None = None
    ) -> None:
        """Load the pages, and show what was handed over; after the first paint.

        Parameters
        ----------
        run : Run or None
        recording : Path or None
        job : Path or None
            Folder of the job that they belong to.
        """
        for _ in self.filling(run, recording, job):
            pass

    def filling(
        self, run: Run | None = None, recording: Path | None = None, job: Path | None = None
    ) -> Iterator[None]:
        """Do what :meth:`fill` does, in turns between which the window can be painted."""
        from meterlog.evidence.palette import DAY
        from meterlog.window.desk import Desk
        from meterlog.window.meters_page import MetersPage

        yield
        if self.desk is None:
            # The sheet first, while there is little: what comes later takes it when it is shown.
            self.look = DAY
            self._restyle()
            yield
            meters_page = MetersPage()
            yield
            self.pages.addWidget(meters_page)
            yield
            self.desk = Desk(self, meters_page, self._on_mark, self._next_run)
            yield
            self._restyle_pages()
            yield
        self.desk.run_page.fill()
        yield
        yield from self.desk.beginning(run, recording, job)
        self.filled = True
        self.installEventFilter(self)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            self._on_focus(None, application.focusWidget())
            application.focusChanged.connect(self._on_focus)
            self._takes_keys = True
            # The session ends: the system waits some seconds at most, and asks nobody.
            application.commitDataRequest.connect(self.close_at_once)

    def _on_focus(self, before: QWidget | None, now: QWidget | None) -> None:
        """Take the keys of the control that has the focus now, and name them.

        Keys come to it, or to the window where nothing has the focus. A filter of the whole
        application would see every event there is: a third of what making a page took.
        """
        if before is not None and before is not self and isValid(before):
            before.removeEventFilter(self)
        if now is not None and now.window() is self:
            now.installEventFilter(self)
        if self.desk is not None and self.filled:
            self.desk.show_keys()

    def toggle_looks(self) -> None:
        """Turn to the next palette: day, dark footwell, high contrast."""
        from meterlog.evidence.palette import DAY, PALETTES

        now = PALETTES.index(self.look or DAY)
        self.look = PALETTES[(now + 1) % len(PALETTES)]
        self._restyle()

    def _restyle(self) -> None:
        self._pixels = text_pixels(self.width(), self.height())
        if self.look is None:
            self.setStyleSheet(first_sheet(self._pixels))
            return
        from meterlog.window.spoken_palette import in_language

        look = in_language(self.look)
        self.setPalette(qt_palette(look))
        self.setStyleSheet(style_sheet(look, self._pixels))
        self.keys.set_palette(look)
        self._restyle_pages()

    def _restyle_pages(self) -> None:
        if self.look is None or self.desk is None:
            return
        from meterlog.window.spoken_palette import in_language

        look = in_language(self.look)
        self.desk.run_page.set_palette(look, self._pixels)
        self.desk.circuit.page.set_palette(look, self._pixels)
        self.desk.parts.set_palette(look, self._pixels)
        space_out(self, self._pixels)
        self._size_digits()

    def _size_digits(self) -> None:
        """Let the digits grow with the window; at full screen they can be read from afar."""
        if self.desk is None:
            return
        least = FULL_SCREEN_MM * pixels_per_mm(self.screen()) if self.isFullScreen() else 0.0
        room = self.desk.run_page.set_digit_height(self.size().expandedTo(LEAST), least)
        self.keys.setVisible(room or self.pages.currentIndex() != Page.RUN)

    def fit_screen(self) -> None:
        """Take the whole of a screen that is too small for more."""
        room = self.screen().availableSize()
        if room.width() < _FIRST.width() or room.height() < _FIRST.height() + _TITLE_BAR:
            self.setWindowState(self.windowState() | Qt.WindowState.WindowMaximized)

    def turn_full_screen(self) -> None:
        """Take the whole screen, or give it back."""
        # The other bits stay: who had it maximized gets it back so.
        self.setWindowState(self.windowState() ^ Qt.WindowState.WindowFullScreen)
        self._size_digits()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let text and digits grow with the window."""
        super().resizeEvent(event)
        if text_pixels(self.width(), self.height()) != self._pixels:
            self._restyle()
        else:
            self._size_digits()

    def say(self, words: str, *, plain: bool = False) -> None:
        """Show a message in place, ``plain`` where it warns of nothing; empty takes it away."""
        rank = "note" if plain else "caution"
        if words and rank != self.said.property("rank"):
            self.said.setProperty("rank", rank)
            # A style sheet looks at properties only when it is put on.
            self.said.style().unpolish(self.said)
            self.said.style().polish(self.said)
        if words != self.said.text():
            self.said.setText(words)
        self.said.setVisible(bool(words))

    def sound_alarm(self, words: str) -> None:
        """Show the red banner, with a sound when it comes up; empty takes it away.

        Whoever measures looks at the fan, not at the screen.
        """
        if words and not self.alarm.text():
            QApplication.beep()
        if words != self.alarm.text():
            self.alarm.setText(words)
        self.alarm.setVisible(bool(words))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take the keys of the key map, wherever the focus is but in a text field."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            mine = isinstance(watched, QWidget) and watched.window() is self
            # Keys that a text field did not want come to what it stands in: those aren't ours.
            typing = self.is_typing(watched) or self.is_typing(self.focusWidget())
            if mine and self.desk is not None and self._frame_takes(event):
                return True
            if mine and self.desk is not None and not typing:
                # A list passes Enter on to what it stands in, too.
                taken = self._presses(watched, event) or self._presses(self.focusWidget(), event)
                found = None if taken else self.desk.keys.wanted(event, self.desk.page)
                if found is not None and self.desk.keys.acts(found[0], self.desk.page):
                    if not event.isAutoRepeat() or self.desk.keys.repeats(found[0]):
                        self.desk.do(*found)
                    return True
        return super().eventFilter(watched, event)

    def _press(self, key: int) -> None:
        """Do what a key of the key map does that was clicked."""
        pressed, desk = QKeyCombination.fromCombined(key), self.desk
        event = QKeyEvent(QEvent.Type.KeyPress, pressed.key(), pressed.keyboardModifiers())
        if desk is None or self._frame_takes(event):
            return
        if event.key() in _ENTER and keeps_enter(self.focusWidget()):
            QApplication.sendEvent(self.focusWidget(), event)
            return
        found = desk.keys.wanted(event, desk.page)
        if found is not None and desk.keys.acts(found[0], desk.page):
            desk.do(*found)

    def _frame_takes(self, event: QKeyEvent) -> bool:
        """Take the keys that act in a text field too: those with Ctrl, and Esc to leave it."""
        place, action = page_by_place(event), action_anywhere(event)
        if place is not None and self.desk is not None:
            self.desk.go_to(place)
            return True
        if action is not None and self.desk is not None:
            self.desk.do(action)
            return True
        edge = _EDGES.get(Qt.Key(event.key())) if _shifted(event) else None
        traced = self.desk if self.desk is not None and self.desk.page is Page.RUN else None
        if edge is not None and traced is not None and not self.is_typing(self.focusWidget()):
            traced.run_page.move_edge(**edge)
            return True
        if event.key() == Qt.Key.Key_Escape and self.is_typing(self.focusWidget()):
            self.pages.setFocus(Qt.FocusReason.OtherFocusReason)
        return False

    def _presses(self, watched: QObject | None, event: QKeyEvent) -> bool:
        """Tell whether a key is for the button or the list that Tab went to."""
        if isinstance(watched, QAbstractItemView) and event.key() in _UP_DOWN:
            return True
        if event.key() in _ENTER and keeps_enter(watched):
            return True
        if event.key() not in _ENTER or self.desk is None or self.desk.session.recording:
            return False
        if isinstance(watched, QAbstractItemView):
            return watched.currentIndex().isValid()
        return isinstance(watched, QPushButton) and watched.autoDefault()

    @staticmethod
    def is_typing(watched: QObject | None) -> bool:
        """Tell whether a control takes letters for itself."""
        if isinstance(watched, QComboBox):
            return watched.isEditable()
        return isinstance(watched, _TYPING)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Seal what is being recorded before the window goes; nothing is lost."""
        if self.desk is not None and not self.desk.may_close(at_once=self._at_once):
            event.ignore()
            return
        application = QApplication.instance()
        if self._takes_keys and isinstance(application, QApplication):
            self._takes_keys = False
            application.focusChanged.disconnect(self._on_focus)
            self.removeEventFilter(self)
            self._on_focus(application.focusWidget(), None)
        super().closeEvent(event)

    @Slot()
    def close_at_once(self) -> None:
        """Close without asking again: the system shuts down, or the terminal was told to."""
        self._at_once = True
        self.close()

    def close_soon(self) -> None:
        """Close once the event in hand is done."""
        QTimer.singleShot(0, self, self.close)

    def show_page(self, index: int) -> None:
        """Turn to a :class:`~meterlog.window.pages.Page`."""
        self.pages.setCurrentIndex(index)
        self.header.show_page(index)
        self._size_digits()
        self.pages.setFocus(Qt.FocusReason.OtherFocusReason)


def _shifted(event: QKeyEvent) -> bool:
    held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
    return held == Qt.KeyboardModifier.ShiftModifier
