"""The age of the clamp's zero stands with the digits, and Z takes a new one."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt

from meterlog.model import Event, EventKind, Sensor, SensorKind, Zero
from meterlog.model.zero_text import zero_text
from meterlog.window.session import Phase
from meterlog.window.zero_age import zero_age
from meterlog.work.live_tail import LiveTail

CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
MINUTE = 60_000_000_000


def behind_a_clamp(about, zero=None, sensor=CLAMP):
    (meter,) = about.instruments
    amps = replace(meter.channels[2], sensor=sensor, zero=zero)
    return replace(about, instruments=(replace(meter, channels=(*meter.channels[:2], amps)),))


def taken(at_ns, channel="current"):
    text = zero_text(channel, "A", Zero(0.1, 0.01, 30))
    return Event(at_ns, EventKind.ZERO, text, "line-logger")


def test_a_plain_channel_needs_none_and_a_clamp_does(about_of):
    assert zero_age(about_of(), (), MINUTE) == ""
    assert zero_age(behind_a_clamp(about_of()), (), MINUTE) == "⚠ no zero: press Z"


@pytest.mark.parametrize(
    ("before", "words"),
    [(2, "zero 3 min old"), (10, "⚠ zero 11 min old")],
)
def test_a_kept_zero_is_as_old_as_it_is(about_of, before, words):
    about = about_of()
    zero = Zero(0.1, 0.01, 30, about.started_utc - timedelta(minutes=before))
    assert zero_age(behind_a_clamp(about, zero), (), MINUTE) == words


def test_the_newest_zero_of_this_channel_counts(about_of):
    about = behind_a_clamp(about_of())
    events = (taken(0), taken(3 * MINUTE), taken(4 * MINUTE, "feed"))
    assert zero_age(about, events, 5 * MINUTE) == "zero 2 min old"


def test_a_typed_zero_says_so(about_of):
    assert zero_age(behind_a_clamp(about_of(), Zero(0.1)), (), MINUTE) == "zero typed"


def test_the_digits_show_it_while_recording(window, show):
    shown = show(window, live=True)
    shown.about = behind_a_clamp(shown.about)
    window.desk.run_page.show_judgement(window.desk.session)
    assert window.desk.run_page.amperes.note == "⚠ no zero: press Z"


def test_z_without_a_recording_says_what_to_do(window, qtbot):
    window.show_page(1)
    qtbot.keyClick(window, Qt.Key.Key_Z)
    assert "Nothing is being recorded" in window.desk.session.trouble


def test_z_asks_the_run_and_tells_how_it_went(window, show, qtbot):
    class Taking:
        done = False
        words = "Taking the zero."

        refused = ""

        def __str__(self):
            return self.words

    class Stand:
        folder = window.desk.session.folder

        def __init__(self):
            self.asked = []
            self.tail = LiveTail()

        def take_zero(self, role):
            self.asked.append(role.value)
            return taking

        def status(self):
            return window.desk.session.status

        def review(self):
            return window.desk.session.review

        def now_ns(self):
            return 0

    taking, stand = Taking(), Stand()
    show(window, live=True)
    session = window.desk.session
    session._run, session.phase = stand, Phase.RECORDING
    session.pull = lambda: False
    try:
        qtbot.keyClick(window, Qt.Key.Key_Z)
        assert stand.asked == ["motor-current"]
        assert session.trouble == "Taking the zero."
        taking.done, taking.words = True, "Zero taken."
        session.glance()
        assert session.trouble == "Zero taken."
    finally:
        session._run, session.phase = None, Phase.SHOWING
