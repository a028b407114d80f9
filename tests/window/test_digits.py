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


def test_digits_that_flicker_hold_still_and_those_that_leap_change_at_once(qtbot, monkeypatch):
    now = [100.0]
    monkeypatch.setattr("meterlog.window.digits.time.monotonic", lambda: now[0])
    digits = Digits("motor current", "A")
    qtbot.addWidget(digits)

    def shown(value, after_s):
        now[0] += after_s
        digits.show_reading("motor current", value)
        return digits.text

    assert shown(8.10, 0.0) == "8.10"
    assert shown(8.16, 0.1) == "8.10"
    assert shown(8.13, 0.1) == "8.10"
    assert shown(8.13, 0.2) == "8.13"
    assert shown(0.02, 0.01) == "0.02"
    assert shown(0.09, 0.01) == "0.02"
    assert shown(math.nan, 0.01) == NOTHING
    assert shown(8.0, 0.01) == "8.00"


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


@pytest.mark.parametrize(
    ("width", "height", "per_mm"),
    [(1024, 600, 4.6), (1280, 800, 3.78), (1366, 768, 4.65), (1920, 1080, 5.5), (3840, 2160, 7.2)],
)
def test_at_full_screen_digits_are_forty_millimetres_high(
    window, show, qtbot, monkeypatch, width, height, per_mm
):
    """Screens from 10 inches up, by their pixels and pixels per mm (invented, of usual sizes)."""
    monkeypatch.setattr("meterlog.window.main_window.pixels_per_mm", lambda _: per_mm)
    monkeypatch.setattr(window, "isFullScreen", lambda: True)
    show(window)
    window.resize(width, height)
    qtbot.waitUntil(lambda: window.height() == height)
    window._size_digits()
    page = window.desk.run_page
    qtbot.waitUntil(lambda: page.volts.digit_height() >= 40.0 * per_mm)
    assert page.amperes.digit_height() >= 40.0 * per_mm
    assert page.trace.width() > 100
    assert window.desk.status.isVisible()
