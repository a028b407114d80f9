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
from meterlog.window.numbers import in_numbers, number, with_points
from meterlog.window.sentences import sentence
from meterlog.window.steady_boxes import SteadyComboBox, SteadySpinBox
from meterlog.window.words import later, say
from meterlog.work import SensorWords
from meterlog.work.sensing import sensed
from meterlog.work.sensor_words import MOST_TURNS, sensors
from meterlog.work.zeros import age_words

DIRECT = later("direct")
_OFFERED = (
    DIRECT,
    "clamp 1 mV/A",
    "clamp 10 mV/A",
    "clamp 100 mV/A",
    "shunt 100 A/60 mV",
    "shunt 50 A/75 mV",
    "divider 10",
)
_NOT_USED = later("⚠ not used: say first what the channel is connected to")
_KINDS = (later("clamp"), later("shunt"), later("divider"))


def meaning(channel: Channel) -> str:
    """Say what a reading behind the sensor means, such as ``1 mV = 0.1 A``, and its own error."""
    worth = _worth(channel.sensor)
    return ", ".join(words for words in (worth, _own_words(channel)) if words)


def _shown(words: str) -> str:
    """Give a sensor as the list shows it, in the language of the window."""
    kind, blank, rest = words.partition(" ")
    return f"{say(kind)}{blank}{in_numbers(rest)}" if kind in {DIRECT, *_KINDS} else words


def _worth(sensor: Sensor) -> str:
    if sensor.kind is SensorKind.DIRECT:
        return (
            ""
            if sensor.factor == 1.0
            else say("1 A shown = {factor} A", factor=number(sensor.factor, ".4g"))
        )
    if sensor.kind is SensorKind.DIVIDER:
        return say("1 V shown = {factor} V", factor=number(sensor.factor, ".4g"))
    return say("1 mV = {factor} A", factor=number(sensor.factor / 1e3, ".4g"))


def _own_words(channel: Channel) -> str:
    percent, floor = channel.sensor.own_percent, channel.sensor.own_floor
    if percent is None:
        return ""
    own = say(
        "its own ±({percent} % + {floor} {unit})",
        percent=number(percent, "g"),
        floor=number(floor or 0.0, "g"),
        unit=channel.unit,
    )
    top = channel.sensor.own_top
    if top is None:
        return own
    how_far = {"own": own, "top": number(top, "g"), "unit": channel.unit}
    if channel.sensor.turns > 1:
        return say("{own} up to {top} {unit} through it", **how_far)
    return say("{own} up to {top} {unit}", **how_far)


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
        self.kind.setAccessibleName(
            say("sensor before channel {name}; others may be typed", name=name)
        )
        self.kind.setMinimumContentsLength(9)
        self.kind.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        if channel.quantity is Quantity.VOLTAGE:
            self.kind.addItems(list(map(_shown, _OFFERED)))
            self.kind.setEditable(True)
            self.kind.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
            self.kind.setToolTip(
                say("Others may be typed: clamp 20 mV/A, shunt 0.6 mOhm, divider 20")
            )
        else:
            self.kind.addItem(_shown(DIRECT))
        self.turns = _turns(name)
        self.inverted = QCheckBox(say("inverted"))
        self.inverted.setAccessibleName(say("channel {name} is the other way round", name=name))
        self.inverted.setToolTip(say("the leads or the clamp's arrow are the other way round"))
        self.own_error = _own_error(name)
        self.kept = QCheckBox("")
        self.kept.setAccessibleName(say("use the kept zero for channel {name}", name=name))
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
        kind = self._typed().partition(" ")[0]
        return Quantity.CURRENT if kind in {"clamp", "shunt"} else self._channel.quantity

    def show_role(self, role: Role) -> None:
        """Go by the role that the channel plays now."""
        self._role = role
        clamped = self._typed().startswith("clamp")
        self.turns.setVisible(clamped or self._channel.quantity is Quantity.CURRENT)
        self.own_error.setVisible(self._typed() != DIRECT)
        self._show_meaning()

    def show_kept(self, zero: Zero | None) -> None:
        """Offer the zero kept from an earlier recording, with its age; None: there is none."""
        self.kept.setVisible(zero is not None)
        if zero is None or zero.taken_utc is None:
            self.kept.setChecked(False)
            return
        age = sentence(age_words(datetime.now(UTC) - zero.taken_utc))
        words = say(
            "kept zero {offset} {unit}, {age} old",
            offset=number(zero.offset, ".3g"),
            unit=self._role_unit(),
            age=age,
        )
        self.kept.setText(words)
        self.kept.setAccessibleName(
            say("use the {words}, for channel {channel}", words=words, channel=self._channel.name)
        )

    def _typed(self) -> str:
        """Give the sensor chosen or typed, in the words of the engine."""
        words = with_points(self.kind.currentText().strip())
        kind, blank, rest = words.partition(" ")
        known = {say(one).casefold(): one for one in (DIRECT, *_KINDS)}
        return f"{known.get(kind.casefold(), kind)}{blank}{rest}"

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
        plain = self._typed() == DIRECT
        try:
            if self._role is Role.OTHER:
                words = "" if plain else say(_NOT_USED)
            else:
                words = meaning(self.behind())
        except UsageError as error:
            said = error.subject.rpartition("=")[2]
            words = f"⚠ {said} {sentence(error.message)} {sentence(error.remedy)}"
        self.meaning.setText(words)
        self.meaning.setAccessibleName(
            say("what channel {channel} means: {words}", channel=self._channel.name, words=words)
        )
        self.meaning.setVisible(bool(words))

    def words(self) -> SensorWords:
        """Give what is chosen, as words for the role; nothing for a channel without one."""
        if self._role is Role.OTHER:
            return SensorWords()
        role = self._role.value
        kind, _, rest = self._typed().partition(" ")
        said = (f"{role}={rest.strip()}",)
        if kind and kind != DIRECT and kind not in _KINDS:
            # Said in full, so that whoever reads it can name what is wrong with it.
            kind, said = "clamp", (f"{role}={self._typed()}",)
        own_error = "" if self.own_error.isHidden() else with_points(self.own_error.text().strip())
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
            self._typed(),
            self.turns.value(),
            self.inverted.isChecked(),
            with_points(self.own_error.text().strip()),
        )

    def recall(self, setup: ChannelSetup) -> None:
        """Choose what was chosen the last time; the role is the row's affair."""
        if self.kind.isEditable():
            self.kind.setCurrentText(_shown(setup.sensor))
        self.turns.setValue(setup.turns)
        self.inverted.setChecked(setup.inverted)
        self.own_error.setText(in_numbers(setup.own_error))

    def wants_kept(self) -> bool:
        """Tell whether the kept zero is to be used."""
        return not self.kept.isHidden() and self.kept.isChecked()


def _own_error(name: str) -> QLineEdit:
    field = QLineEdit()
    field.setAccessibleName(say("own accuracy of the sensor before channel {name}", name=name))
    field.setPlaceholderText(say("own ±, e.g. {numbers}", numbers=in_numbers("1.5+0.3")))
    field.setToolTip(
        say(
            "The sensor's accuracy from its data sheet: percent of the reading, + volts or amperes."
            " It widens the uncertainty of every figure; left empty, the report says that it is"
            " not in. With how far the sensor goes, where that is stated: {numbers}. What is read"
            " beyond is told, and passes no motor.",
            numbers=in_numbers(say("1.5+0.3 up to 40")),
        )
    )
    field.setMaxLength(40)
    return field


def _turns(name: str) -> SteadySpinBox:
    box = SteadySpinBox()
    box.setRange(1, MOST_TURNS)
    box.setSuffix("×")
    box.setAccessibleName(say("turns through the clamp of channel {name}", name=name))
    edit = box.lineEdit()
    if edit is not None:
        edit.setAccessibleName(
            say("turns through the clamp of channel {name}, as a number", name=name)
        )
    box.setToolTip(say("how often the wire goes through the clamp"))
    return box
