"""SidesRow: what is set side by side, and by what it is held."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QLabel, QLineEdit, QPushButton, QVBoxLayout
from PySide6.QtWidgets import QWidget as _Widget

from meterlog.window.compare_page.picks import Offer, Picks, percent_of
from meterlog.window.numbers import number
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say
from meterlog.window.wrapping_row import WrappingRow

_NONE = later("none chosen")


class SidesRow(_Widget):
    """Two lists of recordings and what goes with them.

    ``picked`` is emitted after a change by hand; ``browse`` with ``before`` or ``after`` where a
    folder is to be chosen; ``again`` to compare once more.
    """

    picked = Signal()
    browse = Signal(str)
    again = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._picks = Picks()
        self.before, self.after = _box(say("recording before")), _box(say("recording after"))
        self.before_folder = _button(
            say("Folder…"), say("choose the folder of the recording before")
        )
        self.after_folder = _button(say("Folder…"), say("choose the folder of the recording after"))
        self.swap = _button(say("⇄ Swap"), say("exchange before and after"))
        self.good = QCheckBox(say("several good ones"))
        self.good.setAccessibleName(say("before: several motors known to be good"))
        self.take_in = _button(say("Take in"), say("take the chosen recording in as a good one"))
        self.take_out = _button(say("Take out"), say("take the last good one out"))
        self.most = QLineEdit()
        self.most.setPlaceholderText(say("none"))
        self.most.setAccessibleName(say("largest difference allowed, percent; empty: none is set"))
        self.by_current = QCheckBox(say("pair by order of current"))
        self.compare = _button(say("Compare again"), say("compare again"))
        self.good_ones = QLabel("")
        self.good_ones.setWordWrap(True)
        self.good_ones.setAccessibleName(say("the good ones"))
        self.wrong = QLabel("")
        self.wrong.setProperty("rank", "caution")
        self.wrong.setWordWrap(True)
        self.wrong.setAccessibleName(say("what is wrong with what was entered"))
        self.wrong.hide()
        top = _Widget()
        self._row = WrappingRow(top)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        for widget in (top, self.good_ones, self.wrong):
            layout.addWidget(widget)
        self._row.fill(
            (
                (say("Before"), (self.before, self.before_folder, self.take_in, self.take_out)),
                ("", (self.swap,)),
                (say("After"), (self.after, self.after_folder)),
                ("", (self.good,)),
                (say("allowed difference, %"), (self.most,)),
                ("", (self.by_current,)),
                ("", (self.compare,)),
            )
        )
        self._connect()
        self.show_picks(Picks())

    def _connect(self) -> None:
        self.before.activated.connect(lambda _: self._on_change())
        self.after.activated.connect(lambda _: self._on_change())
        self.before_folder.clicked.connect(lambda: self.browse.emit("before"))
        self.after_folder.clicked.connect(lambda: self.browse.emit("after"))
        self.good.toggled.connect(lambda _: self._on_change())
        self.by_current.toggled.connect(lambda _: self._on_change())
        self.most.editingFinished.connect(self._on_change)
        self.compare.clicked.connect(self.again)

    def in_order(self) -> tuple[_Widget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return (
            self.before, self.before_folder, self.take_in, self.take_out, self.swap,
            self.after, self.after_folder, self.good, self.most, self.by_current, self.compare,
        )  # fmt: skip

    def set_pixels(self, pixels: int) -> None:
        """Take text of ``pixels`` height."""
        self.most.setFixedWidth(pixels * 5)
        for box in (self.before, self.after):
            box.setFixedWidth(pixels * 19)
        # All of one height, so that their words stand on one line.
        high = self.swap.sizeHint().height()
        for widget in (self.before, self.after, self.good, self.most, self.by_current):
            widget.setFixedHeight(high)

    def offer(self, before: Sequence[Offer], after: Sequence[Offer]) -> None:
        """Offer these recordings on each side."""
        for box, offers in ((self.before, before), (self.after, after)):
            box.clear()
            for one in offers:
                box.addItem(one.words, one.folder)
                box.setItemData(box.count() - 1, str(one.folder), Qt.ItemDataRole.ToolTipRole)
            box.setPlaceholderText(say(_NONE))
        self.show_picks(self._picks)

    def show_picks(self, picks: Picks) -> None:
        """Show what is chosen."""
        self._picks = picks
        for box, folder in ((self.before, picks.before), (self.after, picks.after)):
            places = (place for place in range(box.count()) if box.itemData(place) == folder)
            box.setCurrentIndex(next(places, -1))
            box.setToolTip("" if folder is None else str(folder))
        for check, on in ((self.good, picks.against_good), (self.by_current, picks.by_current)):
            with QSignalBlocker(check):
                check.setChecked(on)
        entered = percent_of(self.most.text())
        if entered != picks.most_percent and not self.most.hasFocus():
            self.most.setText("" if picks.most_percent is None else number(picks.most_percent, "g"))
        self.take_in.setVisible(picks.against_good)
        self.take_out.setVisible(picks.against_good)
        self.take_out.setEnabled(bool(picks.good))
        self.swap.setDisabled(picks.against_good)
        self.most.setDisabled(picks.against_good)
        names = ", ".join(one.name for one in picks.good) or say("none yet")
        self.good_ones.setText(
            say("Good ones ({good}): {names}", good=len(picks.good), names=names)
        )
        self.good_ones.setVisible(picks.against_good)
        self._row.invalidate()

    def chosen(self, picks: Picks) -> Picks:
        """Give ``picks`` with what the controls say now."""
        text = self.most.text().strip()
        return Picks(
            before=_folder(self.before),
            after=_folder(self.after),
            good=picks.good,
            against_good=self.good.isChecked(),
            by_current=self.by_current.isChecked(),
            most_percent=percent_of(text) if text else None,
        )

    def tell(self, words: str) -> None:
        """Say what is wrong with what was entered; empty takes it away."""
        self.wrong.setText(words)
        self.wrong.setVisible(bool(words))

    def step(self, box: QComboBox) -> None:
        """Choose the next of a list that is not on the other side; the first behind the last."""
        other = _folder(self.after if box is self.before else self.before)
        places = [(box.currentIndex() + by) % box.count() for by in range(1, box.count() + 1)]
        free = (place for place in places if box.itemData(place) != other)
        place = next(free, -1)
        if place >= 0:
            box.setCurrentIndex(place)
            self._on_change()

    def _on_change(self) -> None:
        text = self.most.text().strip()
        none = text and percent_of(text) is None and self.most.isEnabled()
        self.tell(
            say(
                "'{text}' is no percentage: enter a number above 0, such as 10, or leave it empty.",
                text=text,
            )
            if none
            else ""
        )
        if not none:
            self.picked.emit()


def _box(name: str) -> SteadyComboBox:
    box = SteadyComboBox()
    box.setAccessibleName(name)
    box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    return box


def _button(words: str, name: str) -> QPushButton:
    button = QPushButton(words)
    button.setAccessibleName(name)
    return button


def _folder(box: QComboBox) -> Path | None:
    found = box.currentData()
    return found if isinstance(found, Path) else None
