"""SearchRow: what is looked for: words, dates, verdict and kind."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QPushButton, QWidget

from meterlog.model.errors import UsageError
from meterlog.window.good_ones.beside_words import usual_told
from meterlog.window.recordings_page.hit_words import verdict_told
from meterlog.window.sentences import sentence
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say
from meterlog.work.library import Kind, Usual, Verdicts, Wanted, wanted_date

_KINDS = (
    (None, later("all kinds")),
    (Kind.RUN, later("recordings")),
    (Kind.CIRCUIT, later("circuit checks")),
    (Kind.JOB, later("jobs")),
)
_DATE = later("year-month-day")


class SearchRow(QWidget):
    """One line. ``changed`` is emitted at every letter, ``left`` when Enter ends the words."""

    changed = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.words = QLineEdit()
        self.words.setPlaceholderText(say("vehicle, part, work order, complaint…"))
        self.words.setAccessibleName(say("words to find: vehicle, part, work order, complaint"))
        self.words.setClearButtonEnabled(True)
        self.since, self.until = QLineEdit(), QLineEdit()
        for field, name in ((self.since, say("from date")), (self.until, say("to date"))):
            field.setPlaceholderText(say(_DATE))
            field.setAccessibleName(
                say("{name}, {date}, or only the year", name=name, date=say(_DATE))
            )
            field.textChanged.connect(self.changed)
            field.returnPressed.connect(self.left)
        self.verdict = SteadyComboBox()
        self.verdict.setAccessibleName(say("only this verdict"))
        self.verdict.addItem(say("all verdicts"), None)
        for verdict in Verdicts:
            self.verdict.addItem(verdict_told(verdict), verdict.value)
        self.kind = SteadyComboBox()
        self.kind.setAccessibleName(say("only of this kind"))
        for kind, words in _KINDS:
            self.kind.addItem(say(words), None if kind is None else kind.value)
        self.usual = SteadyComboBox()
        self.usual.setAccessibleName(say("only what lies so beside good ones"))
        self.usual.addItem(say("all currents"), None)
        for usual in Usual:
            self.usual.addItem(usual_told(usual), usual.value)
        self.usual.hide()
        self.clear = QPushButton(say("Clear (Q)"))
        self.clear.setAccessibleName(say("clear the search"))
        self.clear.clicked.connect(self.clear_all)
        self.words.textChanged.connect(self.changed)
        self.words.returnPressed.connect(self.left)
        self.verdict.currentIndexChanged.connect(self.changed)
        self.kind.currentIndexChanged.connect(self.changed)
        self.usual.currentIndexChanged.connect(self.changed)
        self._lay_out()

    def _lay_out(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        find = QLabel(say("Find (I)"))
        find.setProperty("rank", "title")
        row.addWidget(find)
        row.addWidget(self.words, 5)
        for words, field in ((say("from"), self.since), (say("to"), self.until)):
            row.addWidget(QLabel(words))
            row.addWidget(field, 2)
        for box in (self.verdict, self.kind, self.usual, self.clear):
            row.addWidget(box)

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return (
            self.words, self.since, self.until, self.verdict, self.kind, self.usual, self.clear,
        )  # fmt: skip

    def wanted(self) -> tuple[Wanted, str]:
        """Give what is looked for, and what is wrong with a date, which then does not count."""
        trouble = ""
        dates = {"since": "", "until": ""}
        for name, field in (("since", self.since), ("until", self.until)):
            try:
                dates[name] = wanted_date(field.text(), last=name == "until")
            except UsageError as error:
                trouble = sentence(str(error))
        verdict, kind = self.verdict.currentData(), self.kind.currentData()
        wanted = Wanted(
            self.words.text(),
            dates["since"],
            dates["until"],
            None if verdict is None else Verdicts(verdict),
            None if kind is None else Kind(kind),
        )
        return wanted, trouble

    def only_usual(self) -> Usual | None:
        """Give the only way to lie beside good ones that is looked for; None for any."""
        found = None if self.usual.isHidden() else self.usual.currentData()
        return None if found is None else Usual(found)

    def clear_all(self) -> None:
        """Look for everything again."""
        for field in (self.words, self.since, self.until):
            field.clear()
        self.verdict.setCurrentIndex(0)
        self.kind.setCurrentIndex(0)
        self.usual.setCurrentIndex(0)
