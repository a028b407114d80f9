"""The accuracy printed is the one the uncertainty was made with."""

from dataclasses import replace

import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.budgets.reading_lines import reading_lines
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.evidence.accuracy_text import accuracy_of
from meterlog.model import (
    Accuracy,
    Channel,
    Instrument,
    Quantity,
    Range,
    Role,
    Sensor,
    SensorKind,
)
from meterlog.profile import load_meter
from meterlog.work.sensing import sensed

CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A", own_percent=1.0, own_floor=0.1)


def text(channel):
    return " ".join(" ".join(accuracy_of(channel)).split())


@pytest.fixture
def clamped():
    (volts,) = load_meter("hand-meter").channels
    return sensed(volts, Role.MOTOR_CURRENT, CLAMP)


def test_every_range_is_printed_with_the_accuracy_that_holds_in_it(clamped):
    words = text(clamped)
    # 0.6 V and 0.1 mV behind 100 A/V: the meter's alone
    assert "up to 60 A: +-(0.5 % of reading + 3 x 0.01 A + 0 A)" in words
    assert "up to 60000 A: +-(0.8 % of reading + 3 x 10 A + 0 A)" in words
    assert "If the range was fixed by hand, that one holds" in words
    for one in clamped.ranges:
        assert one.accuracy.half_width(0.0) == pytest.approx(
            one.accuracy.digits * one.accuracy.resolution + 0.1
        )


def test_a_sensor_stands_by_itself_with_its_unit_as_its_error_is_not_the_meters(clamped):
    words = text(clamped)
    own = "the sensor's own accuracy, an error besides the meter's: +-(1 % of reading + 0.1 A)"
    assert words.count(own) == 1
    assert "linear sum" not in words


@pytest.mark.parametrize(("turns", "words"), [(1, "up to 40 A;"), (3, "up to 40 A through it;")])
def test_it_says_how_far_the_sensor_is_stated(clamped, turns, words):
    sensor = replace(clamped.sensor, own_top=40.0, turns=turns)
    assert f"(1 % of reading + 0.1 A), {words}" in text(replace(clamped, sensor=sensor))


def test_from_what_is_printed_the_told_uncertainty_can_be_made():
    """2 % + 2 x 0.005 A + 0.05 A behind a sensor of 1 % + 0.1 A, one reading of 3.75 A.

    Computed apart from the program: 0.135 A and 0.1375 A as two rectangles give u = 0.1113 A; as
    one sum, which was printed before, 0.2725 A and u = 0.1573 A.
    """
    amps = Channel("a", Quantity.CURRENT, accuracy=Accuracy(2.0, 2, 0.005, 0.05, basis="typical"))
    channel = sensed(amps, Role.MOTOR_CURRENT, Sensor(own_percent=1.0, own_floor=0.1))
    assert text(channel) == (
        "accuracy +-(2 % of reading + 2 x 0.005 A + 0.05 A); typical the sensor's own accuracy, an"
        " error besides the meter's: +-(1 % of reading + 0.1 A); as stated for it"
    )
    home = StatedChannel(Instrument("meter", "test", "-", (channel,)), 0)
    lines = reading_lines(home, home.at(3.75, 0, 1), 3.75, "", None)
    assert budget("current", 3.75, "A", lines).combined_u == pytest.approx(0.11126, abs=1e-5)
    assert not any("linear sum" in line.basis for line in lines)


def test_the_temperature_coefficient_is_told_and_when_the_uncertainties_hold_it(clamped):
    words = text(clamped)
    assert "stated for 18 to 28 degrees C" in words
    assert "by 0.1 of itself a degree, which the uncertainties hold where" in words
    plain = replace(
        clamped, ranges=(Range(60.0, Accuracy(1.0, 1, 0.1)),), accuracy=Accuracy(1.0, 1, 0.1)
    )
    assert "degrees" not in text(plain)


def test_a_channel_of_one_range_says_it_on_a_line_and_one_without_says_so():
    one = Channel("a", Quantity.CURRENT, accuracy=Accuracy(2.0, 2, 0.005, 0.05))
    assert text(one) == "accuracy +-(2 % of reading + 2 x 0.005 A + 0.05 A); no source stated"
    assert text(replace(one, accuracy=None)) == "accuracy not stated"
