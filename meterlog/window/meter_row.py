"""MeterRow: one meter on the Meters page: which kind, which port, what each channel is on."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import replace

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.instruments import PortInfo
from meterlog.model import Channel, Quantity, Role
from meterlog.model.errors import ProfileError, UsageError
from meterlog.profile import load_meter
from meterlog.window.beside_box import BesideBox
from meterlog.window.last_setup import MeterSetup, moved_port
from meterlog.window.port_box import likely_port, port_box
from meterlog.window.port_presence import absent_words
from meterlog.window.sensor_choice import SensorChoice
from meterlog.window.sentences import sentence
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import later, say
from meterlog.work import KeptZeros, SensorWords
from meterlog.work.sensor_words import joined
from meterlog.work.zeros import ZeroKey, adapter_serial

_HINTS = (
    ("return", Role.MOTOR_RETURN),
    ("feed", Role.MOTOR_FEED),
    ("batt", Role.BATTERY),
    ("current", Role.MOTOR_CURRENT),
    ("clamp", Role.MOTOR_CURRENT),
)

_NO_PORT, _NO_PORT_WORDS = "typed:", later("no plug: typed by hand")
"""Stands where the port of a meter would that is typed by hand."""
_CHOOSE_PORT = later("Choose above the port that this meter is plugged into, then start again.")


def likely_role(channel: Channel, taken: Collection[Role]) -> Role:
    """Give the role that a channel's name or quantity suggests and that is still free."""
    named = [role for words, role in _HINTS if words in channel.name.lower()]
    for role in (*named, Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT):
        if role.quantity is channel.quantity and role not in taken:
            return role
    return Role.OTHER


def _role_text(role: Role) -> str:
    return say("other: only recorded") if role is Role.OTHER else say(role.value.replace("-", " "))


class MeterRow(QFrame):
    """One meter. ``removed`` is emitted when it is to go, ``changed`` when it is another one.

    Parameters
    ----------
    profiles : sequence of str
    ports : sequence of PortInfo
    taken : callable
        Gives the roles that the channels of other meters play.
    used : callable
        Gives the ports of the other meters.
    ticked : callable
        Gives the ports that the user lets be asked. No other is ever proposed: what nobody chose
        or ticked is not opened.
    """

    removed = Signal()
    changed = Signal()

    def __init__(
        self,
        profiles: Sequence[str],
        ports: Sequence[PortInfo],
        taken: Callable[[], set[Role]] = set,
        used: Callable[[], set[str]] = set,
        ticked: Callable[[], Collection[str]] = set,
    ) -> None:
        super().__init__()
        self._taken = taken
        self._used = used
        self._ticked = ticked
        self._proposed = ""
        self._lacks_port = False
        self._wrong = ""
        self._ports = tuple(ports)
        self.setProperty("rank", "panel")
        self.profile = SteadyComboBox()
        self.profile.setAccessibleName(say("kind of meter"))
        self.profile.addItems(list(profiles))
        self.title = QLabel("")
        self.title.setProperty("rank", "second")
        self.title.setWordWrap(True)
        self.title.setAccessibleName(say("what kind of meter that is"))
        self._serial = ""
        self.port = port_box()
        self.gone = QPushButton(say("Remove"))
        self.gone.setAccessibleName(say("remove this meter"))
        self.gone.clicked.connect(self.removed)
        self.trouble = QLabel("")
        self.trouble.setProperty("rank", "caution")
        self.trouble.setWordWrap(True)
        self.roles: list[tuple[Channel, QComboBox]] = []
        self.sensors: list[SensorChoice] = []
        self._grid = QGridLayout()
        self._lay_out()
        self.show_ports(ports)
        self.profile.currentTextChanged.connect(self._on_profile)
        self.port.currentTextChanged.connect(lambda _: self._on_port())
        edit = self.port.lineEdit()
        if edit is not None:
            edit.editingFinished.connect(self._show_trouble)
        self._on_profile(self.profile.currentText())

    def _lay_out(self) -> None:
        first = QHBoxLayout()
        first.addWidget(self.profile, 2)
        first.addWidget(self.port, 3)
        first.addWidget(self.gone)
        page = QVBoxLayout(self)
        page.setContentsMargins(8, 8, 8, 8)
        page.addLayout(first)
        page.addWidget(self.title)
        page.addLayout(self._grid)
        page.addWidget(self.trouble)

    def show_ports(self, ports: Sequence[PortInfo]) -> None:
        """Offer these ports; what was typed or chosen stays."""
        serial = self._serial
        chosen = moved_port(self.url(), serial, ports)
        self._ports = tuple(ports)
        with QSignalBlocker(self.port):
            self.port.clear()
            for port in ports:
                self.port.addItem(f"{port.device}  {sentence(port.text)}".strip(), port.device)
            self.set_url(chosen)
        self._serial = serial
        self.propose_port()
        self._on_port()

    def propose_port(self) -> None:
        """Propose a ticked port where none was chosen; take it back once it is no longer ticked."""
        ticked = self._ticked()
        if self._proposed and self.url() == self._proposed and self._proposed not in ticked:
            self.set_url("")
        if not self.url():
            self._proposed = likely_port(self._ports, self._used(), ticked)
            self.set_url(self._proposed)

    def ask_port(self) -> bool:
        """Say in the row that its port is to be chosen; False where it is."""
        self._lacks_port = not self.url()
        self._show_trouble()
        return self._lacks_port

    def url(self) -> str:
        """Give the port chosen, or the address typed."""
        words = self.port.currentText().strip()
        if words == say(_NO_PORT_WORDS):
            return _NO_PORT
        at = self.port.findText(words)
        chosen = self.port.itemData(at) if at >= 0 else None
        return words if chosen is None else str(chosen)

    def set_url(self, url: str) -> None:
        """Choose a port of the list, or type an address."""
        at = self.port.findData(url) if url else -1
        if url != self.url():
            self._serial = ""
        if not url:
            self.port.setCurrentIndex(-1)
            self.port.setEditText("")
        elif at >= 0:
            self.port.setCurrentIndex(at)
        else:
            self.port.setEditText(say(_NO_PORT_WORDS) if url == _NO_PORT else url)
        edit = self.port.lineEdit()
        if edit is not None:
            edit.setCursorPosition(0)  # what a narrow box shows is the name, not the end

    def _on_port(self) -> None:
        here = next((port for port in self._ports if port.device == self.url()), None)
        if here is not None:
            self._serial = here.serial
        elif self._edited():
            self._serial = ""
        self._show_trouble()
        self._show_kept()
        self.changed.emit()

    def _edited(self) -> bool:
        edit = self.port.lineEdit()
        return edit is not None and edit.hasFocus()

    def _on_profile(self, name: str) -> None:
        while self._grid.count():
            item = self._grid.takeAt(0)
            widget = item.widget() if item is not None else None
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.roles, self.sensors = [], []
        self._wrong = ""
        self.title.setText("")
        if not name:
            return
        try:
            profile = load_meter(name)
        except ProfileError as error:
            self._wrong = str(error)
            self._show_trouble()
            self.changed.emit()
            return
        self.title.setText(sentence(profile.title))
        self._offer_port(typed=profile.typed)
        for index, channel in enumerate(profile.channels):
            self._add_channel(index, channel)
        self._show_trouble()
        self._show_kept()
        self.changed.emit()

    def _offer_port(self, *, typed: bool) -> None:
        """Let a port be chosen, unless the meter has no plug and is typed by hand."""
        self.port.setEnabled(not typed)
        if typed:
            self.set_url(_NO_PORT)
        elif self.url() == _NO_PORT:
            self.set_url("")
            self.propose_port()

    def _show_trouble(self) -> None:
        """Show what is wrong with the profile, or with the port chosen."""
        url = self.url()
        barred = next((p.reason for p in self._ports if p.device == url and not p.usable), "")
        words = sentence(self._wrong) or (f"{url}: {sentence(barred)}" if barred else "")
        if not words and not self._edited():
            words = absent_words(url, self._ports)
        self._lacks_port = self._lacks_port and not url
        if self._lacks_port:
            words = say(_CHOOSE_PORT)
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))

    def _add_channel(self, index: int, channel: Channel) -> None:
        box = SteadyComboBox()
        box.setAccessibleName(say("what channel {channel} is connected to", channel=channel.name))
        self._offer_roles(box, channel)
        label = BesideBox(f"{channel.name} ({channel.unit})", box)
        sensor = SensorChoice(channel)
        sensor.show_role(Role(box.currentData()))
        box.currentIndexChanged.connect(lambda _: self._on_role(sensor, box))
        sensor.changed.connect(lambda: self._on_sensor(sensor, channel, box))
        for column, widget in enumerate((label, box, sensor)):
            self._grid.addWidget(widget, index, column, Qt.AlignmentFlag.AlignTop)
        self._grid.setColumnStretch(1, 2)
        self._grid.setColumnStretch(2, 3)
        self.roles.append((channel, box))
        self.sensors.append(sensor)

    def _offer_roles(self, box: QComboBox, channel: Channel) -> None:
        """Offer the roles of the channel's quantity, the likeliest chosen."""
        taken = self._taken() | self.chosen_roles()
        with QSignalBlocker(box):
            box.clear()
            for role in Role:
                if role.quantity in {None, channel.quantity}:
                    box.addItem(_role_text(role), role)
            box.setCurrentIndex(box.findData(likely_role(channel, taken)))
        box.currentIndexChanged.emit(box.currentIndex())

    def _on_sensor(self, sensor: SensorChoice, channel: Channel, box: QComboBox) -> None:
        """Offer other roles when a clamp makes a current of a voltage, or no longer does."""
        offers_current = box.findData(Role.MOTOR_CURRENT) >= 0
        if offers_current is not (sensor.quantity is Quantity.CURRENT):
            self._offer_roles(box, replace(channel, quantity=sensor.quantity))
        self._show_kept()

    def _on_role(self, sensor: SensorChoice, box: QComboBox) -> None:
        sensor.show_role(Role(box.currentData()))
        self._show_kept()

    def _show_kept(self) -> None:
        """Offer the zeros kept of this meter, at this port, behind these sensors."""
        at_port = next((port.serial for port in self._ports if port.device == self.url()), "")
        serial = adapter_serial(self.url(), at_port)
        kept = KeptZeros()
        for sensor in self.sensors:
            try:
                channel = sensor.behind()
            except UsageError:
                sensor.show_kept(None)
                continue
            key = ZeroKey.of(self.profile.currentText(), serial, channel)
            has_role = channel.role is not Role.OTHER
            sensor.show_kept(kept.find(key) if has_role else None)

    def setup(self) -> MeterSetup:
        """Give what is chosen, to be kept for the next time."""
        return MeterSetup(
            self.profile.currentText(),
            self.url(),
            self._serial,
            tuple(sensor.setup() for sensor in self.sensors),
        )

    def recall(self, setup: MeterSetup) -> None:
        """Choose what was chosen the last time, at the port where the adapter is now.

        Channels that the profile no longer has are left out.
        """
        self.profile.setCurrentText(setup.profile)
        kept = {channel.name: channel for channel in setup.channels}
        for (channel, box), sensor in zip(self.roles, self.sensors, strict=True):
            if channel.name in kept:
                sensor.recall(kept[channel.name])
                roles = [Role(box.itemData(at)).value for at in range(box.count())]
                if kept[channel.name].role in roles:
                    box.setCurrentIndex(roles.index(kept[channel.name].role))
        self.set_url(setup.port_now(self._ports))
        self._serial = setup.port_serial
        self._on_port()

    def in_order(self) -> list[QWidget]:
        """Give what Tab goes through, in the order in which it is read."""
        channels = zip(self.roles, self.sensors, strict=True)
        parts = [part for (_, box), sensor in channels for part in (box, *sensor.in_order())]
        return [self.profile, self.port, self.gone, *parts]

    def chosen_roles(self) -> set[Role]:
        """Give the roles that the channels of this meter play."""
        roles = {Role(box.currentData()) for _, box in self.roles}
        return roles - {Role.OTHER}

    def meter_words(self) -> str:
        """Give ``PROFILE@PORT``."""
        return f"{self.profile.currentText()}@{self.url()}"

    def sensor_words(self) -> SensorWords:
        """Give what is said about the sensors of this meter's channels."""
        return joined(sensor.words() for sensor in self.sensors)

    def kept_zeros(self) -> list[Role]:
        """Give the roles whose kept zero is to be used."""
        pairs = zip(self.roles, self.sensors, strict=True)
        return [Role(box.currentData()) for (_, box), one in pairs if one.wants_kept()]

    def role_words(self, key: str) -> list[str]:
        """Give ``ROLE=KEY.CHANNEL`` for every channel that has a role."""
        words = []
        for channel, box in self.roles:
            role = Role(box.currentData())
            if role is not Role.OTHER:
                words.append(f"{role.value}={key}.{channel.name}")
        return words
