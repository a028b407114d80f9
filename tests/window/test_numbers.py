"""Numbers: the decimal sign they are written with, and what is understood when they are typed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import Qt

from meterlog.model.condition_fields import CONDITION_FIELDS
from meterlog.model.errors import UsageError
from meterlog.window.circuit_typed import parse_value
from meterlog.window.compare_page.picks import percent_of
from meterlog.window.condition_line import NumberLine
from meterlog.window.digits import reading_text
from meterlog.window.numbers import (
    figure_words,
    in_numbers,
    number,
    set_decimal_sign,
    typed_number,
    with_points,
)


@pytest.fixture
def comma():
    """Write with a decimal comma while the test runs."""
    set_decimal_sign(",")
    yield
    set_decimal_sign(".")


def test_a_point_is_written_where_nothing_else_was_asked_for():
    assert (number(12.345, ".2f"), number(1234567, ",")) == ("12.35", "1,234,567")


def test_a_comma_is_written_with_no_point_between_thousands(comma):
    assert number(12.345, ".2f") == "12,35"
    assert number(1234567, ",") == "1\N{NARROW NO-BREAK SPACE}234\N{NARROW NO-BREAK SPACE}567"
    assert in_numbers("✓ 12.31 ± 0.08 V") == "✓ 12,31 ± 0,08 V"
    assert reading_text(-0.001) == "0,00"


def test_another_sign_than_a_comma_is_written_as_a_point():
    set_decimal_sign("٫")
    assert number(0.5, "g") == "0.5"


@pytest.mark.parametrize("words", ["12,5", "12.5", " 12,5 ", "+12.5"])
def test_both_signs_are_understood(comma, words):
    assert typed_number(words) == 12.5


@pytest.mark.parametrize("words", ["1.234,5", "1,234.5", "1.234.567", "1 234,5", "1'234.5"])
def test_two_signs_are_refused_and_never_guessed(comma, words):
    with pytest.raises(UsageError) as refused:
        typed_number(words)
    assert "more than one sign" in str(refused.value)
    assert "1234,5" in refused.value.remedy


@pytest.mark.parametrize("words", ["", "zwölf", "1e", "--1", ",", "nan", "inf", "0x10"])
def test_what_is_no_number_is_refused_with_words(comma, words):
    with pytest.raises(UsageError) as refused:
        typed_number(words)
    assert "is no number" in str(refused.value)


@given(st.floats(-1e6, 1e6).map(lambda value: round(value, 3)))
def test_what_is_written_is_read_back(value):
    for sign in (",", "."):
        set_decimal_sign(sign)
        try:
            assert typed_number(number(value, ".3f")) == value
        finally:
            set_decimal_sign(".")


def test_a_reading_at_a_test_point_with_a_comma(comma):
    assert parse_value("12,43 V", "V") == 12.43
    assert parse_value("85 mV", "V") == 0.085
    with pytest.raises(UsageError, match="more than one sign"):
        parse_value("1.234,5 V", "V")


def test_a_percentage_with_a_comma(comma):
    assert percent_of("7,5 %") == 7.5
    assert percent_of("1.234,5") is None


def test_a_sensor_is_read_with_a_comma_where_that_is_the_sign(comma):
    assert with_points("shunt 0,6 mOhm") == "shunt 0.6 mOhm"
    assert with_points("1,5+0,3") == "1.5+0.3"
    assert with_points("1.234,5") == "1.234,5", "left as it is, so that it is refused"


def test_a_sensor_is_left_as_typed_where_the_point_is_the_sign():
    assert with_points("clamp 1,5 mV/A") == "clamp 1,5 mV/A"


def test_a_condition_is_typed_and_shown_with_a_comma(comma, qtbot):
    field = next(one for one in CONDITION_FIELDS if one.name == "battery_v")
    line = NumberLine(field)
    qtbot.addWidget(line)
    said = []
    line.changed.connect(said.append)
    line.edit.setText("12,5")
    qtbot.keyClick(line.edit, Qt.Key.Key_Return)
    assert (said, line.edit.text(), line.text) == (["12.5"], "12,5", "12.5")
    line.edit.setText("1.234,5")
    qtbot.keyClick(line.edit, Qt.Key.Key_Return)
    assert said == ["12.5"], "what has two signs is not taken"
    assert not line.trouble.isHidden()
    assert line.trouble.text()


def test_a_limit_that_is_a_word_keeps_its_points(comma):
    assert (figure_words("12.5"), figure_words("blade-medium, v1.2")) == (
        "12,5",
        "blade-medium, v1.2",
    )
