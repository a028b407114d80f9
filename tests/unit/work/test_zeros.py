"""Zeros are kept from one recording to the next, each with what it belongs to."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from meterlog.model import Channel, Quantity, Role, Sensor, SensorKind, Zero
from meterlog.model.zero_text import parse_zero, zero_text
from meterlog.work.zeros import KeptZeros, ZeroKey, adapter_serial, age_words

CLAMP = Channel(
    "in1",
    Quantity.CURRENT,
    Role.MOTOR_CURRENT,
    sensor=Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A"),
)
KEY = ZeroKey.of("meter", "A1", CLAMP)
ODD = (
    '"offset": {}, "scatter": 0.1, "count": {}, "taken_utc": "2030-01-02T03:04:05+00:00",'
    ' "range_top": null'
)
ZERO = Zero(0.123456789, 0.01, 60, datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC), 6.0)


def test_a_zero_is_found_again_to_the_last_digit(tmp_path):
    assert KeptZeros(tmp_path / "new").keep(KEY, ZERO)
    assert KeptZeros(tmp_path / "new").find(KEY) == ZERO


@pytest.mark.parametrize(
    "other",
    [
        ZeroKey.of("meter", "A2", CLAMP),
        ZeroKey.of("other", "A1", CLAMP),
        ZeroKey.of("meter", "A1", replace(CLAMP, name="in2")),
        ZeroKey.of(
            "meter", "A1", replace(CLAMP, sensor=Sensor(SensorKind.CLAMP, 1000.0, words="1 mV/A"))
        ),
        ZeroKey.of("meter", "A1", replace(CLAMP, sensor=replace(CLAMP.sensor, turns=2))),
    ],
)
def test_another_adapter_meter_channel_or_clamp_setting_has_another_zero(tmp_path, other):
    kept = KeptZeros(tmp_path)
    kept.keep(KEY, ZERO)
    assert kept.find(other) is None


def test_the_sensors_own_accuracy_makes_no_other_zero(tmp_path):
    kept = KeptZeros(tmp_path)
    kept.keep(KEY, ZERO)
    stated = replace(CLAMP, sensor=replace(CLAMP.sensor, own_percent=1.5, own_floor=0.3))
    assert kept.find(ZeroKey.of("meter", "A1", stated)) == ZERO


def test_the_newest_takes_the_place_of_the_one_before(tmp_path):
    kept = KeptZeros(tmp_path)
    kept.keep(KEY, ZERO)
    kept.keep(KEY, replace(ZERO, offset=-0.5))
    assert kept.find(KEY).offset == -0.5


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{",
        b"[1]",
        b"\xff\xfe",
        b'{"x": 3}',
        str.encode('{"' + str(KEY).replace('"', '\\"') + '": {"offset": "NaN"}}'),
        str.encode('{"' + str(KEY).replace('"', '\\"') + '": 7}'),
        *(
            str.encode('{"' + str(KEY).replace('"', '\\"') + f'": {{{ODD.format(*odd)}}}}}')
            for odd in (("1", "1e999999"), ("1" * 400, "1"), ("1e999999", "1"))
        ),
    ],
)
def test_a_damaged_file_costs_the_kept_zero_and_nothing_else(tmp_path, content):
    (tmp_path / "zeros.json").write_bytes(content)
    kept = KeptZeros(tmp_path)
    assert kept.find(KEY) is None
    assert kept.keep(KEY, ZERO)
    assert kept.find(KEY) == ZERO


def test_a_folder_that_can_not_be_written_is_said_and_no_error(tmp_path):
    (tmp_path / "file").write_text("in the way")
    assert not KeptZeros(tmp_path / "file").keep(KEY, ZERO)


def test_no_temporary_file_is_left_behind(tmp_path):
    KeptZeros(tmp_path).keep(KEY, ZERO)
    assert [path.name for path in tmp_path.iterdir()] == ["zeros.json"]


@pytest.mark.parametrize(
    ("age", "words"),
    [
        (timedelta(seconds=20), "less than a minute"),
        (timedelta(minutes=12), "12 min"),
        (timedelta(hours=5), "5 h"),
        (timedelta(days=9), "9 days"),
    ],
)
def test_an_age_is_told_in_the_coarsest_unit_that_says_enough(age, words):
    assert age_words(age) == words


def test_a_network_address_has_no_adapter():
    assert adapter_serial("socket://localhost:1") == ""


@pytest.mark.parametrize("url", ["hid://1234:abcd/S7", "usbtmc://1234:5678/S7"])
@pytest.mark.parametrize("at_port", [None, "", "S7"])
def test_a_usb_address_has_the_serial_number_it_names_before_and_after_opening(url, at_port):
    assert adapter_serial(url, at_port) == "S7"


@pytest.mark.parametrize("at_port", [None, "", "S7"])
def test_a_usb_address_without_a_serial_number_keeps_without_one_whatever_opening_tells(at_port):
    assert adapter_serial("hid://1234:abcd", at_port) == ""


def test_what_is_known_of_a_serial_port_is_not_looked_up_again(monkeypatch):
    monkeypatch.setattr("meterlog.work.zeros.remember", None)
    assert adapter_serial("COM7", "A1") == "A1"


@pytest.mark.parametrize("top", [None, 6.0])
def test_a_zero_event_gives_back_the_very_numbers(top):
    zero = replace(ZERO, offset=-1.5e-7, taken_utc=None, range_top=top)
    assert parse_zero(zero_text("a b", "A", zero)) == ("a b", zero)


@pytest.mark.parametrize(
    "text", ["", "current", "current x A scatter 0.1 n 3", "current 1 A scatter 1e999 n 3", "c 1 A"]
)
def test_a_text_that_is_no_zero_is_none(text):
    assert parse_zero(text) is None
