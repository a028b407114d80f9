import math

import pytest

from meterlog.evidence.palette import DAY
from meterlog.model import SpanKind
from meterlog.window.digits import NOTHING, Digits, StatePanel, reading_text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (12.345, "12.35"),
        (0.0, "0.00"),
        (-0.004, "0.00"),
        (-0.006, "-0.01"),
        (99.99, "99.99"),
        (99.996, "100.0"),
        (math.nan, NOTHING),
        (math.inf, NOTHING),
    ],
)
def test_a_reading_has_four_digits_and_nothing_is_a_dash(value, text):
    assert reading_text(value) == text


@pytest.mark.parametrize(("width", "height"), [(1280, 800), (1024, 600), (1920, 1080)])
def test_digits_take_a_sixth_of_the_height_of_the_window(window, show, qtbot, width, height):
    window.resize(width, height)
    show(window)
    qtbot.waitUntil(lambda: window.height() == height)
    assert window.desk.run_page.volts.digit_pixels() >= height / 6
    assert window.desk.run_page.amperes.digit_pixels() >= height / 6


def test_what_the_digits_say_is_also_said_to_a_screen_reader(qtbot):
    digits = Digits("motor current", "A")
    qtbot.addWidget(digits)
    digits.show_reading("motor current", 3.807)
    assert digits.accessibleName() == "motor current: 3.81 A"


def test_the_state_is_told_by_a_word(qtbot):
    panel = StatePanel()
    qtbot.addWidget(panel)
    panel.resize(300, 100)
    panel.set_palette(DAY)
    panel.show_state(SpanKind.DEAD, "speed 1")
    panel.grab()
    assert "dead" in panel.accessibleName()
