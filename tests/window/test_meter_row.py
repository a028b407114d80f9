"""A meter's row: what stands before each channel, in one line, and what it means."""

from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import Qt

from meterlog.model import Quantity, Role, Zero
from meterlog.window.meter_row import MeterRow
from meterlog.window.plan import Plan
from meterlog.work import KeptZeros, SensorWords, Wiring, choose_meters
from meterlog.work.zeros import ZeroKey


@pytest.fixture
def row(qtbot, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    row = MeterRow(["line-logger", "bench-scpi"], ())
    qtbot.addWidget(row)
    row.show()
    return row


def plan_of(row, tmp_path):
    return Plan(
        (row.meter_words(),),
        tuple(row.role_words(row.profile.currentText())),
        "linear-12v",
        tmp_path,
        sensors=row.sensor_words(),
        kept_zeros=tuple(row.kept_zeros()),
    )


def test_a_plain_meter_says_nothing_of_sensors(row):
    assert row.sensor_words() == SensorWords()
    assert row.kept_zeros() == []
    assert all(sensor.meaning.isHidden() for sensor in row.sensors)


def test_a_clamp_makes_a_current_of_a_voltage_and_offers_its_role(row):
    row.profile.setCurrentText("bench-scpi")
    (sensor,), ((_, box),) = row.sensors, row.roles
    assert box.findData(Role.MOTOR_CURRENT) < 0
    sensor.kind.setCurrentText("clamp 10 mV/A")
    assert Role(box.currentData()) is Role.MOTOR_CURRENT
    assert box.findData(Role.MOTOR_FEED) < 0
    assert sensor.meaning.text() == "1 mV = 0.1 A"
    assert row.sensor_words() == SensorWords(clamps=("motor-current=10 mV/A",))
    sensor.kind.setCurrentText("direct")
    assert Role(box.currentData()) is Role.MOTOR_FEED


@pytest.mark.parametrize(
    ("kind", "turns", "inverted", "words"),
    [
        ("clamp 1 mV/A", 1, False, "1 mV = 1 A"),
        ("clamp 100 mV/A", 1, False, "1 mV = 0.01 A"),
        ("clamp 10 mV/A", 5, False, "1 mV = 0.02 A"),
        ("clamp 10 mV/A", 1, True, "1 mV = -0.1 A"),
        ("shunt 100 A/60 mV", 1, False, "1 mV = 1.667 A"),
        ("shunt 0.6 mOhm", 1, False, "1 mV = 1.667 A"),
        ("divider 10", 1, False, "1 V shown = 10 V"),
    ],
)
def test_what_it_means_stands_in_one_line(row, kind, turns, inverted, words):
    row.profile.setCurrentText("bench-scpi")
    (sensor,) = row.sensors
    sensor.kind.setCurrentText(kind)
    sensor.turns.setValue(turns)
    sensor.inverted.setChecked(inverted)
    assert sensor.meaning.text() == words
    assert words in sensor.meaning.accessibleName()


def test_turns_are_offered_to_clamps_only(row):
    row.profile.setCurrentText("bench-scpi")
    (sensor,) = row.sensors
    assert sensor.turns.isHidden()
    sensor.kind.setCurrentText("clamp 10 mV/A")
    sensor.turns.setValue(3)
    assert not sensor.turns.isHidden()
    sensor.kind.setCurrentText("shunt 50 A/75 mV")
    assert sensor.turns.isHidden()
    assert row.sensor_words().turns == ()


def test_what_is_typed_wrong_is_said_beside_it_and_refused_at_the_start(row, tmp_path):
    row.profile.setCurrentText("bench-scpi")
    (sensor,) = row.sensors
    sensor.kind.setEditText("clamp 10")
    assert "such as 10mV/A" in sensor.meaning.text()
    row.set_url("/dev/pts/999")
    with pytest.raises(Exception, match="10mV/A"):
        plan_of(row, tmp_path).run()


def test_what_is_chosen_becomes_the_channels_of_the_run(row):
    row.profile.setCurrentText("bench-scpi")
    (sensor,) = row.sensors
    sensor.kind.setCurrentText("clamp 100 mV/A")
    sensor.turns.setValue(2)
    sensor.inverted.setChecked(True)
    row.set_url("/dev/pts/999")
    (choice,) = choose_meters(
        Wiring((row.meter_words(),), row.role_words("bench-scpi"), sensors=row.sensor_words())
    )
    (channel,) = choice.channels
    assert (channel.scale, channel.quantity) == (pytest.approx(-5.0), Quantity.CURRENT)


def test_a_kept_zero_is_offered_with_its_age_for_its_own_sensor_only(row, tmp_path):
    row.profile.setCurrentText("bench-scpi")
    (sensor,) = row.sensors
    sensor.kind.setCurrentText("clamp 10 mV/A")
    assert sensor.kept.isHidden()
    taken = datetime.now(UTC) - timedelta(minutes=12)
    key = ZeroKey.of("bench-scpi", "", sensor.behind())
    KeptZeros().keep(key, Zero(0.123, 0.01, 40, taken))
    sensor.kind.setCurrentText("clamp 1 mV/A")
    assert sensor.kept.isHidden()
    sensor.kind.setCurrentText("clamp 10 mV/A")
    assert not sensor.kept.isHidden()
    assert sensor.kept.text() == "kept zero 0.123 A, 12 min old"
    assert row.kept_zeros() == []
    sensor.kept.setChecked(True)
    assert row.kept_zeros() == [Role.MOTOR_CURRENT]
    assert plan_of(row, tmp_path).kept_zeros == (Role.MOTOR_CURRENT,)


def test_another_meter_takes_its_own_channels(row):
    row.profile.setCurrentText("bench-scpi")
    row.sensors[0].kind.setCurrentText("clamp 10 mV/A")
    row.profile.setCurrentText("line-logger")
    assert len(row.sensors) == len(row.roles) == 3
    assert row.sensor_words() == SensorWords()


def test_it_fits_a_small_window(row):
    row.profile.setCurrentText("bench-scpi")
    row.sensors[0].kind.setCurrentText("clamp 100 mV/A")
    row.sensors[0].inverted.setChecked(True)
    # At 1024 pixels the column of the meters has 600.
    assert row.minimumSizeHint().width() <= 590


def test_the_sensors_own_accuracy_is_asked_where_there_is_a_sensor(row, tmp_path):
    row.profile.setCurrentText("bench-scpi")
    (sensor,) = row.sensors
    assert sensor.own_error.isHidden()
    sensor.kind.setCurrentText("clamp 10 mV/A")
    assert not sensor.own_error.isHidden()
    sensor.own_error.setText("1.5+0.3")
    assert sensor.meaning.text() == "1 mV = 0.1 A, its own ±(1.5 % + 0.3 A)"
    row.set_url("/dev/pts/999")
    (choice,) = choose_meters(
        Wiring((row.meter_words(),), row.role_words("bench-scpi"), sensors=row.sensor_words())
    )
    (channel,) = choice.channels
    assert (channel.sensor.own_percent, channel.sensor.own_floor) == (1.5, 0.3)
    sensor.own_error.setText("1.5+0.3 up to 40")
    assert sensor.meaning.text() == "1 mV = 0.1 A, its own ±(1.5 % + 0.3 A) up to 40 A"
    (choice,) = choose_meters(
        Wiring((row.meter_words(),), row.role_words("bench-scpi"), sensors=row.sensor_words())
    )
    assert choice.channels[0].top == 40.0
    sensor.turns.setValue(4)  # of the current itself that is a quarter
    assert sensor.meaning.text().endswith("±(1.5 % + 0.3 A) up to 40 A through it")
    sensor.own_error.setText("much")
    assert "⚠ much is no accuracy" in sensor.meaning.text()
    sensor.kind.setCurrentText("direct")
    assert row.sensor_words() == SensorWords()


def test_what_kind_of_meter_it_is_stands_under_its_name(row):
    row.profile.setCurrentText("bench-scpi")
    assert "SCPI bench multimeter" in row.title.text()


def test_a_sensor_of_a_channel_without_a_place_is_said_to_be_unused(row):
    row.profile.setCurrentText("bench-scpi")
    ((_, box),), (sensor,) = row.roles, row.sensors
    sensor.kind.setCurrentText("divider 10")
    box.setCurrentIndex(box.findData(Role.OTHER))
    assert "not used" in sensor.meaning.text()
    assert row.sensor_words() == SensorWords()


def test_a_meter_typed_by_hand_shows_words_and_no_address(qtbot, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    row = MeterRow(["typed-volts"], ())
    qtbot.addWidget(row)
    assert "typed by hand" in row.port.currentText()
    assert row.meter_words() == "typed-volts@typed:"


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab])
def test_an_address_that_was_typed_is_the_port_however_it_is_left(row, qtbot, key):
    line = row.port.lineEdit()
    line.setFocus()
    line.selectAll()
    qtbot.keyClicks(line, "socket://127.0.0.1:5799")
    qtbot.keyClick(line, key)
    assert row.url() == "socket://127.0.0.1:5799"
    assert row.port.findText("socket://127.0.0.1:5799") == -1
