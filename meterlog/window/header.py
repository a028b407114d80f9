"""Header: the pages, what is on show, and the buttons that are always at hand."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QFontMetricsF, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from meterlog.window.elided_label import ElidedLabel
from meterlog.window.pages import TITLES
from meterlog.window.words import say


class Header(QWidget):
    """One row at the top of the window."""

    page_asked = Signal(int)
    start_asked = Signal()
    open_asked = Signal()
    looks_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        name = QLabel("meterlog")
        name.setProperty("rank", "title")
        self.pages = {
            one.page: self._button(say(one.words), say(one.name), checkable=True) for one in TITLES
        }
        self.start = self._button(say("Start"), say("start or stop recording"))
        self.start.setProperty("rank", "start")
        self.open = self._button(say("Open…"), say("open a recording"))
        self.looks = self._button(
            say("Colours"), say("next colours: day, dark footwell, high contrast")
        )
        self.what = ElidedLabel()
        self.what.setAccessibleName(say("recording on show"))
        self.what.setProperty("rank", "second")
        self.what.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.mark = QLabel("")
        self.mark.setProperty("rank", "mark")
        self.mark.setAccessibleName(say("origin of the readings"))
        self.mark.hide()
        self._left, self._right = QWidget(), QWidget()
        for place, widgets in (
            (self._left, (name, *self.pages.values())),
            (self._right, (self.what, self.mark, self.start, self.open, self.looks)),
        ):
            row = QHBoxLayout(place)
            row.setContentsMargins(0, 0, 0, 0)
            row.setSpacing(4)
            for widget in widgets:
                row.addWidget(widget, 1 if widget is self.what else 0)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(8, 4, 8, 0)
        self._grid.setSpacing(4)
        self._grid.addWidget(self._left, 0, 0)
        self._grid.addWidget(self._right, 0, 1)
        self._grid.setColumnStretch(1, 1)
        self._row = 0
        for page, button in self.pages.items():
            button.clicked.connect(lambda _=False, to=page: self.page_asked.emit(to))
        self.start.clicked.connect(self.start_asked)
        self.open.clicked.connect(self.open_asked)
        self.looks.clicked.connect(self.looks_asked)

    @staticmethod
    def _button(words: str, name: str, *, checkable: bool = False) -> QPushButton:
        button = QPushButton(words)
        button.setAccessibleName(name)
        button.setCheckable(checkable)
        return button

    def show_page(self, index: int) -> None:
        """Mark the button of the page on show."""
        for page, button in self.pages.items():
            button.setChecked(index == page)

    def show_start(self, *, recording: bool, asked: bool) -> None:
        """Say what the start button does now.

        Parameters
        ----------
        recording : bool
        asked : bool
            It was pressed once to stop.
        """
        self.start.setText(_start_words()[1 + asked if recording else 0])
        self._widen_start()
        rank = "stop" if recording else "start"
        if self.start.property("rank") != rank:
            self.start.setProperty("rank", rank)
            # A style sheet looks at properties only when it is put on.
            self.start.style().unpolish(self.start)
            self.start.style().polish(self.start)

    def _widen_start(self) -> None:
        """Make it as wide as its longest words: what stands beside it must not move with them."""
        metrics = QFontMetricsF(self.start.font())
        longest = max(metrics.horizontalAdvance(one) for one in _start_words())
        wide = round(longest + metrics.height() * 1.6)
        if wide != self.start.minimumWidth():
            self.start.setMinimumWidth(wide)

    def show_origin(self, words: str) -> None:
        """Show the mark of readings that were not measured; empty for measured ones."""
        self.mark.setText(words)
        self.mark.setVisible(bool(words))
        self._lay()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand in one row, or in two where the words of a language are too long for one."""
        super().resizeEvent(event)
        self._lay()

    def event(self, event: QEvent) -> bool:
        """Lay it anew where letters have grown or shrunk: the window has its size by then."""
        if event.type() == QEvent.Type.LayoutRequest:
            self._widen_start()
            self._lay()
        return super().event(event)

    def _lay(self) -> None:
        needed = self._left.sizeHint().width() + self._right.sizeHint().width() + 24
        row = 0 if needed <= self.width() else 1
        if row != self._row:
            self._row = row
            self._grid.addWidget(self._right, row, 1 - row)


def _start_words() -> tuple[str, str, str]:
    return say("● Start"), say("■ Stop"), say("■ Stop?")
