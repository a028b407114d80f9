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
    QSizePolicy,
    QVBoxLayout,
)

from meterlog.instruments import PortInfo
from meterlog.model import Channel, Quantity, Role
from meterlog.model.errors import ProfileError, UsageError
from meterlog.profile import load_meter
from meterlog.window.sensor_choice import SensorChoice
from meterlog.work import KeptZeros, SensorWords
from meterlog.work.sensor_words import joined
from meterlog.work.zeros import ZeroKey

_HINTS = (
    ("return", Role.MOTOR_RETURN),
    ("feed", Role.MOTOR_FEED),
    ("batt", Role.BATTERY),
    ("current", Role.MOTOR_CURRENT),
    ("clamp", Role.MOTOR_CURRENT),
)

_NO_PORT = "typed:"
"""Stands where the port of a meter would that is typed by hand."""


def likely_role(channel: Channel, taken: Collection[Role]) -> Role:
    """Give the role that a channel's name or quantity suggests and that is still free."""
    named = [role for words, role in _HINTS if words in channel.name.lower()]
    for role in (*named, Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT):
        if role.quantity is channel.quantity and role not in taken:
            return role
    return Role.OTHER


def likely_port(ports: Sequence[PortInfo], used: Collection[str]) -> str:
    """Give the port a meter is most likely on: free, usable, and USB before built in."""
    free = [port for port in ports if port.usable and port.device not in used]
    usb = [port for port in free if port.vendor]
    return next((port.device for port in (*usb, *free)), "")


class MeterRow(QFrame):
    """One meter. ``removed`` is emitted when it is to go.

    Parameters
    ----------
    profiles : sequence of str
    ports : sequence of PortInfo
    taken : callable
        Gives the roles that the channels of other meters play.
    used : callable
        Gives the ports of the other meters.
    """

    removed = Signal()

    def __init__(
        self,
        profiles: Sequence[str],
        ports: Sequence[PortInfo],
        taken: Callable[[], set[Role]] = set,
        used: Callable[[], set[str]] = set,
    ) -> None:
        super().__init__()
        self._taken = taken
        self._used = used
        self._wrong = ""
        self._ports = tuple(ports)
        self.setProperty("rank", "panel")
        self.profile = QComboBox()
        self.profile.setAccessibleName("kind of meter")
        self.profile.addItems(list(profiles))
        self.port = QComboBox()
        self.port.setEditable(True)
        self.port.setAccessibleName("port, or an address such as socket://host:port")
        self.port.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.port.setMinimumContentsLength(12)
        edit = self.port.lineEdit()
        if edit is not None:
            edit.setPlaceholderText("port, or socket://host:port")
        self.gone = QPushButton("Remove")
        self.gone.setAccessibleName("remove this meter")
        self.gone.clicked.connect(self.removed)
        self.trouble = QLabel("")
        self.trouble.setProperty("rank", "caution")
        self.trouble.setWordWrap(True)
        self.roles: list[tuple[Channel, QComboBox]] = []
        self.sensors: list[SensorChoice] = []
        self._grid = QGridLayout()
        first = QHBoxLayout()
        first.addWidget(self.profile, 2)
        first.addWidget(self.port, 3)
        first.addWidget(self.gone)
        page = QVBoxLayout(self)
        page.setContentsMargins(8, 8, 8, 8)
        page.addLayout(first)
        page.addLayout(self._grid)
        page.addWidget(self.trouble)
        self.show_ports(ports)
        self.profile.currentTextChanged.connect(self._on_profile)
        self.port.currentTextChanged.connect(lambda _: self._show_trouble())
        self.port.currentTextChanged.connect(lambda _: self._show_kept())
        self._on_profile(self.profile.currentText())

    def show_ports(self, ports: Sequence[PortInfo]) -> None:
        """Offer these ports; what was typed or chosen stays."""
        typed = self.url()
        self._ports = tuple(ports)
        self.port.clear()
        for port in ports:
            self.port.addItem(f"{port.device}  {port.text}".strip(), port.device)
        self.set_url(typed or likely_port(ports, self._used()))

    def url(self) -> str:
        """Give the port chosen, or the address typed."""
        words = self.port.currentText().strip()
        at = self.port.findText(words)
        return str(self.port.itemData(at)) if at >= 0 else words

    def set_url(self, url: str) -> None:
        """Choose a port of the list, or type an address."""
        at = self.port.findData(url)
        if at >= 0:
            self.port.setCurrentIndex(at)
        else:
            self.port.setEditText(url)

    def _on_profile(self, name: str) -> None:
        while self._grid.count():
            item = self._grid.takeAt(0)
            widget = item.widget() if item is not None else None
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.roles, self.sensors = [], []
        self._wrong = ""
        if not name:
            return
        try:
            profile = load_meter(name)
        except ProfileError as error:
            self._wrong = str(error)
            self._show_trouble()
            return
        self.profile.setToolTip(profile.title)
        self._offer_port(typed=profile.dialect == "typed")
        for index, channel in enumerate(profile.channels):
            self._add_channel(index, channel)
        self._show_trouble()
        self._show_kept()

    def _offer_port(self, *, typed: bool) -> None:
        """Let a port be chosen, unless the meter has no plug and is typed by hand."""
        self.port.setEnabled(not typed)
        if typed:
            self.set_url(_NO_PORT)
        elif self.url() == _NO_PORT:
            self.set_url(likely_port(self._ports, self._used()))

    def _show_trouble(self) -> None:
        """Show what is wrong with the profile, or with the port chosen."""
        url = self.url()
        barred = next((p.reason for p in self._ports if p.device == url and not p.usable), "")
        words = self._wrong or (f"{url}: {barred}" if barred else "")
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))

    def _add_channel(self, index: int, channel: Channel) -> None:
        box = QComboBox()
        box.setAccessibleName(f"what channel {channel.name} is connected to")
        self._offer_roles(box, channel)
        label = QLabel(f"{channel.name} ({channel.unit})")
        label.setBuddy(box)
        label.setMinimumHeight(box.sizeHint().height())
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
                    box.addItem(role.value.replace("-", " "), role)
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
        serial = next((port.serial for port in self._ports if port.device == self.url()), "")
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
