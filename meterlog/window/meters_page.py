"""MetersPage: which meters, on what, under which conditions, by which limits, kept where."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from meterlog.instruments import PortInfo, list_ports
from meterlog.model import Conditions, Job, Role
from meterlog.model.errors import UsageError
from meterlog.profile import names
from meterlog.profile.full_path import typed_path
from meterlog.window.before_second import BeforeSecondBox, BeforeSecondWatch
from meterlog.window.cautions import Cautions
from meterlog.window.conditions_view import ConditionsView
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.last_setup import LastSetup, Setup
from meterlog.window.meter_row import MeterRow
from meterlog.window.plan import Plan
from meterlog.window.port_entry import PortEntry
from meterlog.window.ports_panel import PortsPanel
from meterlog.window.recordings_list import RecordingsList
from meterlog.window.run_place import RunPlace
from meterlog.window.tab_order import order_tabs
from meterlog.window.words import later, say
from meterlog.work import recordings_folder
from meterlog.work.job_folder import Side
from meterlog.work.sensor_words import joined

_FITTED = {Side.OLD: later("the old part is in"), Side.NEW: later("the new part is in")}
_LIST_LINES = 12
"""How high the recordings may stand, in lines of text: they are at hand on a page of their own."""
_NO_JOB = later("no job yet: fill in its card on the Job page")


class MetersPage(QWidget):
    """The page before measuring. ``start`` and ``browse`` are emitted by its buttons.

    Parameters
    ----------
    ports : callable
        Gives the ports that are there.
    last : LastSetup or None
        What was chosen the last time; None: that in the user's settings folder.
    at_hand : JobAtHand or None
        The job that the window works on; None: one of its own, of which nothing is known yet.
    """

    start = Signal()
    browse = Signal()

    def __init__(
        self,
        ports: Callable[[], Sequence[PortInfo]] = list_ports,
        last: LastSetup | None = None,
        at_hand: JobAtHand | None = None,
    ) -> None:
        super().__init__()
        self._list_ports = ports
        self._ports: tuple[PortInfo, ...] = tuple(ports())
        self.rows: list[MeterRow] = []
        self._untouched: MeterRow | None = None
        self._watched: tuple[PortEntry, ...] = ()
        self.ports = PortsPanel(ports)
        self.recordings = RecordingsList()
        self.place = RunPlace(recordings_folder())
        self.limits, self.folder = self.place.limits, self.place.folder
        self.at_hand = at_hand or JobAtHand(self.recordings_parent)
        self.job = QLabel("")
        self.job.setAccessibleName(say("job"))
        self.job.setWordWrap(True)
        self.conditions = ConditionsView()
        self.at_hand.conditions = self.conditions.conditions
        self.before_second = BeforeSecondWatch(self.at_hand, self._reads_voltage, self)
        self._made = len(self.at_hand.work.recordings)
        self.cautions = Cautions()
        self.more = QPushButton(say("Add a meter"))
        self.begin = QPushButton(say("Connect and record  (S)"))
        self.other = QPushButton(say("Open another folder…  (O)"))
        self._rows_place = QVBoxLayout()
        page = QHBoxLayout(self)
        page.setContentsMargins(8, 4, 8, 4)
        page.setSpacing(10)
        self._area = self._scrolled(self._left())
        page.addWidget(self._area, 5)
        page.addWidget(self._right(), 2)
        self._last = last or LastSetup()
        self._recall(self._last.load())
        self._connect()
        self.show_recordings()
        self._order_tabs()

    def _connect(self) -> None:
        self.ports.taken.connect(self.take_meter)
        self.ports.again.clicked.connect(self.find_ports)
        self.folder.editingFinished.connect(self.show_recordings)
        self.recordings.looked.connect(self.place.bar)
        self.ports.asking_began.connect(self.keep)
        self.ports.listed.connect(self._order_tabs)
        self.ports.listed.connect(self._watch_ticks)
        self._watch_ticks()
        self._on_tick()
        self.conditions.changed.connect(self._on_conditions)
        self.at_hand.listeners.append(self._on_job)
        self._on_job()

    def _recall(self, setup: Setup) -> None:
        """Choose what was chosen the last time; what is no longer there is left out."""
        known = names("meters")
        for meter in setup.meters:
            if meter.profile in known:
                self.add_row().recall(meter)
        if not self.rows:
            self._untouched = self.add_row()
        self.limits.setCurrentText(setup.limits)
        self.ports.recall(setup.may_ask, setup.addresses)
        self._cautions_read = setup.cautions_read
        self.cautions.fold.setChecked(not setup.cautions_read)

    def keep(self) -> None:
        """Keep what is chosen for the next time; cautions that were on show are read by then."""
        self._cautions_read = self._cautions_read or self.cautions.words.isVisible()
        may_ask, addresses = self.ports.ticked()
        meters = tuple(row.setup() for row in self.rows)
        circuit = self._last.load().circuit
        self._last.keep(
            Setup(
                meters,
                self.limits.currentText(),
                may_ask,
                addresses,
                circuit,
                cautions_read=self._cautions_read or not self.cautions.fold.isChecked(),
            )
        )

    def _order_tabs(self) -> None:
        """Let Tab go as the eye goes: ports, meters, the run, the button, recordings."""
        rows = (widget for row in self.rows for widget in row.in_order())
        run = (self.limits, self.folder, *self.conditions.in_order(), self.warned, self.begin)
        right = (*self.recordings.in_order(), self.other, self.cautions.fold)
        order_tabs((*self.ports.in_order(), *rows, self.more, *run, *right))

    def _left(self) -> QWidget:
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 6, 0)
        column.addWidget(self._title(say("Ports")))
        column.addWidget(self.ports)
        column.addWidget(self._title(say("Meters")))
        column.addLayout(self._rows_place)
        buttons = QHBoxLayout()
        self.more.setAccessibleName(say("add a meter"))
        self.more.clicked.connect(self._on_more)
        buttons.addWidget(self.more)
        buttons.addStretch(1)
        column.addLayout(buttons)
        column.addWidget(self.place)
        column.addWidget(self._title(say("Conditions of the next run")))
        column.addWidget(self.job)
        column.addWidget(self.conditions)
        # Under the lines: what comes and goes with them may not move them under the hand.
        self.warned = BeforeSecondBox(self.before_second, body)
        self.differs = self.warned.line
        column.addWidget(self.warned)
        self.begin.setAccessibleName(say("connect and record"))
        self.begin.setProperty("rank", "first")
        self.begin.clicked.connect(self.start)
        column.addWidget(self.begin)
        column.addStretch(1)
        return body

    @staticmethod
    def _title(words: str) -> QLabel:
        title = QLabel(words)
        title.setProperty("rank", "title")
        return title

    def _right(self) -> QWidget:
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        self.recordings.setMaximumHeight(_LIST_LINES * self.fontMetrics().height())
        column.addWidget(self.recordings, 1)
        self.other.setAccessibleName(say("open a recording in another folder"))
        self.other.clicked.connect(self.browse)
        column.addWidget(self.other)
        column.addWidget(self._scrolled(self.cautions), 2)
        return body

    @staticmethod
    def _scrolled(body: QWidget) -> QScrollArea:
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(body)
        return area

    def add_row(self) -> MeterRow:
        """Add a meter."""
        row = MeterRow(names("meters"), self._ports, self._taken, self._used, self._ticked)
        row.removed.connect(lambda: self.remove_row(row))
        for box in (row.profile, row.port):
            box.activated.connect(lambda _: self._touch(row))
            box.editTextChanged.connect(lambda _: self._touch(row))
        row.changed.connect(self._on_rows)
        self.rows.append(row)
        self._rows_place.addWidget(row)
        self._on_rows()
        return row

    def _on_more(self) -> None:
        self.add_row().profile.setFocus()

    def _on_rows(self) -> None:
        self._order_tabs()
        self.before_second.look()
        self.ports.show_used({(row.profile.currentText(), row.url()) for row in self.rows})

    def _touch(self, row: MeterRow) -> None:
        if row is self._untouched:
            self._untouched = None

    def take_meter(self, profile: str, port: str) -> None:
        """Take what answered at ``port`` as a meter: in its row, a row nobody has filled, or anew.

        Parameters
        ----------
        profile : str
            Name of a meter profile.
        port : str
        """
        here = [row for row in self.rows if row.url() == port]
        empty = [row for row in self.rows if row is self._untouched or not row.url()]
        row = next(iter((*here, *empty)), None) or self.add_row()
        row.profile.setCurrentText(profile)
        row.set_url(port)
        self._touch(row)

    def _taken(self) -> set[Role]:
        return {role for row in self.rows for role in row.chosen_roles()}

    def _ticked(self) -> set[str]:
        return {entry.port.device for entry in self.ports.entries if entry.included}

    def _watch_ticks(self) -> None:
        """Let a row without a port follow what is ticked, also of ports that came later."""
        for entry in self.ports.entries:
            if entry not in self._watched:
                entry.may_ask.toggled.connect(self._on_tick)
        self._watched = tuple(self.ports.entries)

    def _on_tick(self) -> None:
        for row in self.rows:
            untouched = self._untouched
            row.propose_port()
            self._untouched = untouched

    def _used(self) -> set[str]:
        return {row.url() for row in self.rows}

    def remove_row(self, row: MeterRow) -> None:
        """Take a meter away."""
        self.rows.remove(row)
        self._rows_place.removeWidget(row)
        row.deleteLater()
        self._on_rows()

    def find_ports(self) -> None:
        """Look for ports again; what was chosen stays."""
        self._ports = tuple(self._list_ports())
        self.ports.show_ports(self._ports)
        untouched = self._untouched
        for row in self.rows:
            row.show_ports(self._ports)
        self._untouched = untouched

    def bar(self, *, recording: bool) -> None:
        """Let no port be asked, and nothing be started, while a recording is in progress."""
        self.ports.bar(recording=recording)
        self.begin.setDisabled(recording)
        self.before_second.bar(recording=recording)

    def show_recordings(self) -> None:
        """Read the list of recordings again."""
        self.recordings.show_folder(self.recordings_parent())

    def job_words(self) -> Job:
        """Give what a recording made now says about its job, conditions included."""
        return self.at_hand.job()

    def _reads_voltage(self) -> bool:
        return Role.MOTOR_FEED in self._taken()

    def _on_conditions(self, conditions: Conditions) -> None:
        self.at_hand.conditions = conditions
        self.before_second.look()

    def _on_job(self) -> None:
        """Say which job is at hand; after a run its numbers are those of the last time."""
        card, work = self.at_hand.card, self.at_hand.work
        known = " · ".join(words for words in (card.work_order, card.vehicle) if words)
        self.job.setText(
            say(
                "Job: {known} · {fitted}",
                known=known or say(_NO_JOB),
                fitted=say(_FITTED[work.fitted]),
            )
        )
        made, self._made = self._made, len(work.recordings)
        if self._made > made:
            self.conditions.let_age()

    def recordings_parent(self) -> Path:
        """Give the folder in which recordings are made."""
        return typed_path(self.folder.text())

    def _bring_into_sight(self, place: QWidget) -> None:
        # Words that have just come up have a height only when they have been laid out.
        QTimer.singleShot(0, place, lambda: self._area.ensureWidgetVisible(place, 0, 4))

    def plan(self) -> Plan:
        """Give what the page says. Ports that are being asked are closed before.

        A row without a port, or a folder that takes nothing, says so in its place.

        Raises
        ------
        UsageError
            If what was typed of a condition can't be: it would be missing in the recording.
        """
        self.ports.stop()
        lacking = [row for row in self.rows if row.ask_port()]
        barred = self.place.barred
        wrong, why = self.conditions.settle() or (None, "")
        place = lacking[0] if lacking else barred if barred.text() else wrong
        if place is not None:
            self._bring_into_sight(place)
        if wrong is not None and place is wrong:
            raise UsageError(
                say("a condition can't be taken: {why}", why=why.rstrip(".")),
                remedy=say("Put it right on the Meters page, or empty its line; then start."),
            )
        used: list[str] = []
        roles: list[str] = []
        for row in self.rows:
            name = row.profile.currentText()
            count = used.count(name) + 1
            used.append(name)
            roles.extend(row.role_words(name if count == 1 else f"{name}-{count}"))
        return Plan(
            meters=tuple(row.meter_words() for row in self.rows),
            roles=tuple(roles),
            sensors=joined(row.sensor_words() for row in self.rows),
            kept_zeros=tuple(role for row in self.rows for role in row.kept_zeros()),
            limits=self.limits.currentText(),
            parent=self.recordings_parent(),
            job=self.job_words(),
        )
