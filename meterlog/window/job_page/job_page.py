"""JobPage: the card, what is missing on it, its photos, and which part is in the vehicle."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QSplitter, QVBoxLayout, QWidget

from meterlog.evidence.palette import Palette
from meterlog.window.job_page.card_form import CardForm
from meterlog.window.job_page.missing_list import MissingList
from meterlog.window.job_page.photo_list import PhotoList
from meterlog.window.job_page.template_row import TemplateRow
from meterlog.window.tab_order import order_tabs
from meterlog.window.words import say
from meterlog.window.wrapped_label import WrappedLabel
from meterlog.window.wrapping_row import WrappingRow
from meterlog.work.job_folder import Side


class JobPage(QWidget):
    """The page; what it shows is put there by the job desk."""

    def __init__(self) -> None:
        super().__init__()
        self.new = _button(say("New job"), say("begin a new job"))
        self.open = _button(say("Open job…"), say("open a job: choose its folder"))
        self.last = _button(say("Continue"), say("continue the job of the last time"))
        self.sides = {
            Side.OLD: _button(say("Old part"), say("the old part is in the vehicle now")),
            Side.NEW: _button(say("New part"), say("the new part is in the vehicle now")),
        }
        for button in self.sides.values():
            button.setCheckable(True)
        self.undo = _button(say("Undo"), say("take back the newest entry"))
        self.redo = _button(say("Redo"), say("put in again what was taken back"))
        self.templates = TemplateRow()
        self.kept = WrappedLabel()
        self.kept.setAccessibleName(say("where the job is kept"))
        self.kept.setProperty("rank", "second")
        self.said = WrappedLabel()
        self.said.setAccessibleName(say("message about the job"))
        self.said.setProperty("rank", "caution")
        self.said.hide()
        self.form = CardForm()
        self.missing = MissingList()
        self.photos = PhotoList()
        self.meters = WrappedLabel()
        self.meters.setAccessibleName(say("calibration of meters that are known"))
        self._row = QWidget()
        self._lay_out()
        order_tabs(
            [
                *(self.new, self.open, self.last, *self.sides.values(), self.undo, self.redo),
                *self.templates.in_order(),
                *self.form.in_order(),
                self.missing.list,
                *self.photos.in_order(),
            ]
        )

    def _lay_out(self) -> None:
        row = WrappingRow(self._row)
        row.fill(
            [
                ("", [self.new, self.open, self.last]),
                (say("In the vehicle now"), list(self.sides.values())),
                ("", [self.undo, self.redo]),
                *self.templates.groups(),
            ]
        )
        beside = QSplitter(Qt.Orientation.Vertical)
        beside.addWidget(self.missing)
        beside.addWidget(self.photos)
        beside.setSizes([550, 450])
        beside.setChildrenCollapsible(False)
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(4, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(beside, 1)
        column.addWidget(self.meters)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(self.form)
        split.addWidget(right)
        split.setStretchFactor(0, 7)
        split.setStretchFactor(1, 3)
        split.setSizes([700, 300])
        split.setChildrenCollapsible(False)
        page = QVBoxLayout(self)
        page.setContentsMargins(6, 4, 6, 2)
        page.setSpacing(4)
        for widget in (self._row, self.kept):
            page.addWidget(widget)
        page.addWidget(split, 1)
        # Below: it comes and goes while somebody types, and may not move the fields.
        page.addWidget(self.said)

    def tell(self, words: str) -> None:
        """Say something about the job; empty takes it away."""
        self.said.setText(words)
        self.said.setVisible(bool(words))

    def show_meters(self, words: str, *, overdue: bool) -> None:
        """Say how it stands with the calibration of the meters that are known."""
        rank = "caution" if overdue else "second"
        if self.meters.property("rank") != rank:
            self.meters.setProperty("rank", rank)
            self.meters.style().polish(self.meters)
        self.meters.setText(words)
        self.meters.setVisible(bool(words))

    def show_fitted(self, fitted: Side) -> None:
        """Mark which part is in the vehicle now."""
        for side, button in self.sides.items():
            button.setChecked(side is fitted)

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take text of ``pixels`` height; colours come with the style sheet."""
        del palette
        self.form.set_text_height(pixels)
        self.photos.set_text_height(pixels)


def _button(words: str, name: str) -> QPushButton:
    button = QPushButton(words)
    button.setAccessibleName(name)
    return button
