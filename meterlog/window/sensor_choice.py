"""SensorChoice: what stands between the circuit and one channel, chosen in one line."""

from __future__ import annotations

from datetime import UTC, datetime

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from meterlog.model import Channel, Quantity, Role, Sensor, SensorKind, Zero
from meterlog.model.errors import UsageError
from meterlog.window.last_setup import ChannelSetup
from meterlog.window.steady_boxes import SteadyComboBox, SteadySpinBox
from meterlog.work import SensorWords
from meterlog.work.sensing import sensed
from meterlog.work.sensor_words import MOST_TURNS, sensors
from meterlog.work.zeros import age_words

DIRECT = "direct"
_OFFERED = (
    DIRECT,
    "clamp 1 mV/A",
    "clamp 10 mV/A",
    "clamp 100 mV/A",
    "shunt 100 A/60 mV",
    "shunt 50 A/75 mV",
    "divider 10",
)
_NOT_USED = "⚠ not used: say first what the channel is connected to"
_KINDS = ("clamp", "shunt", "divider")


def meaning(channel: Channel) -> str:
    """Say what a reading behind the sensor means, such as ``1 mV = 0.1 A``, and its own error."""
    worth = _worth(channel.sensor)
    return ", ".join(words for words in (worth, _own_words(channel)) if words)


def _worth(sensor: Sensor) -> str:
    if sensor.kind is SensorKind.DIRECT:
        return "" if sensor.factor == 1.0 else f"1 A shown = {sensor.factor:.4g} A"
    if sensor.kind is SensorKind.DIVIDER:
        return f"1 V shown = {sensor.factor:.4g} V"
    return f"1 mV = {sensor.factor / 1000.0:.4g} A"


def _own_words(channel: Channel) -> str:
    percent, floor = channel.sensor.own_percent, channel.sensor.own_floor
    if percent is None:
        return ""
    return f"its own ±({percent:g} % + {floor or 0.0:g} {channel.unit})"


class SensorChoice(QWidget):
    """Sensor, turns, polarity and the kept zero of one channel. ``changed`` tells of any change.

    Parameters
    ----------
    channel : Channel
        As the meter's profile has it.
    """

    changed = Signal()

    def __init__(self, channel: Channel) -> None:
        super().__init__()
        self._channel = channel
        self._role = Role.OTHER
        name = channel.name
        self.kind = SteadyComboBox()
        self.kind.setAccessibleName(f"sensor before channel {name}; others may be typed")
        self.kind.setMinimumContentsLength(9)
        self.kind.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        if channel.quantity is Quantity.VOLTAGE:
            self.kind.addItems(list(_OFFERED))
            self.kind.setEditable(True)
            self.kind.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
            self.kind.setToolTip("Others may be typed: clamp 20 mV/A, shunt 0.6 mOhm, divider 20")
        else:
            self.kind.addItem(DIRECT)
        self.turns = _turns(name)
        self.inverted = QCheckBox("inverted")
        self.inverted.setAccessibleName(f"channel {name} is the other way round")
        self.inverted.setToolTip("the leads or the clamp's arrow are the other way round")
        self.own_error = _own_error(name)
        self.kept = QCheckBox("")
        self.kept.setAccessibleName(f"use the kept zero for channel {name}")
        self.kept.setVisible(False)
        self.meaning = QLabel("")
        self.meaning.setProperty("rank", "second")
        self.meaning.setWordWrap(True)
        self._lay_out()
        self.kind.currentTextChanged.connect(self._on_change)
        self.turns.valueChanged.connect(self._on_change)
        self.inverted.toggled.connect(self._on_change)
        self.own_error.textChanged.connect(self._on_change)
        self.show_role(Role.OTHER)

    def _lay_out(self) -> None:
        first = QHBoxLayout()
        first.setContentsMargins(0, 0, 0, 0)
        first.addWidget(self.kind, 1)
        first.addWidget(self.turns)
        first.addWidget(self.inverted)
        second = QHBoxLayout()
        second.setContentsMargins(0, 0, 0, 0)
        second.addWidget(self.meaning, 1)
        second.addWidget(self.own_error)
        second.addWidget(self.kept)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(1)
        column.addLayout(first)
        column.addLayout(second)

    @property
    def quantity(self) -> Quantity:
        """What the channel reads behind the sensor chosen."""
        kind = self.kind.currentText().strip().partition(" ")[0]
        return Quantity.CURRENT if kind in {"clamp", "shunt"} else self._channel.quantity

    def show_role(self, role: Role) -> None:
        """Go by the role that the channel plays now."""
        self._role = role
        clamped = self.kind.currentText().startswith("clamp")
        self.turns.setVisible(clamped or self._channel.quantity is Quantity.CURRENT)
        self.own_error.setVisible(self.kind.currentText().strip() != DIRECT)
        self._show_meaning()

    def show_kept(self, zero: Zero | None) -> None:
        """Offer the zero kept from an earlier recording, with its age; None: there is none."""
        self.kept.setVisible(zero is not None)
        if zero is None or zero.taken_utc is None:
            self.kept.setChecked(False)
            return
        age = age_words(datetime.now(UTC) - zero.taken_utc)
        words = f"kept zero {zero.offset:.3g} {self._role_unit()}, {age} old"
        self.kept.setText(words)
        self.kept.setAccessibleName(f"use the {words}, for channel {self._channel.name}")

    def _role_unit(self) -> str:
        return (self._role.quantity or self._channel.quantity).unit

    def _on_change(self) -> None:
        self.show_role(self._role)
        self.changed.emit()

    def behind(self) -> Channel:
        """Give the channel behind the sensor chosen.

        Raises
        ------
        UsageError
            If the sensor typed does not read as one, or does not fit role and meter.
        """
        said: Sensor | None = sensors(self.words(), {}).get(self._role)
        return sensed(self._channel, self._role, said)

    def _show_meaning(self) -> None:
        plain = self.kind.currentText().strip() == DIRECT
        try:
            if self._role is Role.OTHER:
                words = "" if plain else _NOT_USED
            else:
                words = meaning(self.behind())
        except UsageError as error:
            said = error.subject.rpartition("=")[2]
            words = f"⚠ {said} {error.message} {error.remedy}"
        self.meaning.setText(words)
        self.meaning.setAccessibleName(f"what channel {self._channel.name} means: {words}")
        self.meaning.setVisible(bool(words))

    def words(self) -> SensorWords:
        """Give what is chosen, as words for the role; nothing for a channel without one."""
        if self._role is Role.OTHER:
            return SensorWords()
        role = self._role.value
        kind, _, rest = self.kind.currentText().strip().partition(" ")
        said = (f"{role}={rest.strip()}",)
        if kind and kind != DIRECT and kind not in _KINDS:
            # Said in full, so that whoever reads it can name what is wrong with it.
            kind, said = "clamp", (f"{role}={self.kind.currentText().strip()}",)
        own_error = "" if self.own_error.isHidden() else self.own_error.text().strip()
        current = not self.turns.isHidden() and self.turns.value() != 1
        return SensorWords(
            clamps=said if kind == "clamp" else (),
            shunts=said if kind == "shunt" else (),
            dividers=said if kind == "divider" else (),
            turns=(f"{role}={self.turns.value()}",) if current else (),
            inverted=(role,) if self.inverted.isChecked() else (),
            accuracies=(f"{role}={own_error}",) if own_error else (),
        )

    def in_order(self) -> tuple[QWidget, ...]:
        """Give what Tab goes through, in the order in which it is read."""
        return self.kind, self.turns, self.inverted, self.own_error, self.kept

    def setup(self) -> ChannelSetup:
        """Give what is chosen, to be kept for the next time."""
        return ChannelSetup(
            self._channel.name,
            self._role.value,
            self.kind.currentText().strip(),
            self.turns.value(),
            self.inverted.isChecked(),
            self.own_error.text().strip(),
        )

    def recall(self, setup: ChannelSetup) -> None:
        """Choose what was chosen the last time; the role is the row's affair."""
        if self.kind.isEditable():
            self.kind.setCurrentText(setup.sensor)
        self.turns.setValue(setup.turns)
        self.inverted.setChecked(setup.inverted)
        self.own_error.setText(setup.own_error)

    def wants_kept(self) -> bool:
        """Tell whether the kept zero is to be used."""
        return not self.kept.isHidden() and self.kept.isChecked()


def _own_error(name: str) -> QLineEdit:
    field = QLineEdit()
    field.setAccessibleName(f"own accuracy of the sensor before channel {name}")
    field.setPlaceholderText("own ±, e.g. 1.5+0.3")
    field.setToolTip(
        "The sensor's accuracy from its data sheet: percent of the reading, + volts or amperes."
        " It widens the uncertainty of every figure; left empty, the report says that it is"
        " not in."
    )
    field.setMaxLength(40)
    return field


def _turns(name: str) -> SteadySpinBox:
    box = SteadySpinBox()
    box.setRange(1, MOST_TURNS)
    box.setSuffix("×")
    box.setAccessibleName(f"turns through the clamp of channel {name}")
    edit = box.lineEdit()
    if edit is not None:
        edit.setAccessibleName(f"turns through the clamp of channel {name}, as a number")
    box.setToolTip("how often the wire goes through the clamp")
    return box
