"""How well the times of several meters agree, in words."""

import dataclasses
import math

import pytest

from meterlog.analysis import Reviewer
from meterlog.analysis.time_notes import TimeNotes
from meterlog.model import IMPORTED, Channel, Event, EventKind, Instrument, Limits, Quantity, Role
from meterlog.model.timing_text import TimingFound, span_words, time_u_of

AMPS = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT)
FEED = Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED)
CLAMP = Instrument("clamp", "p", "-", (AMPS,), time_u_s=0.003)
VOLTS = Instrument("volts", "q", "-", (FEED,), time_u_s=0.004)


def test_two_meters_agree_to_twice_the_root_of_their_squares():
    (note,) = TimeNotes([CLAMP, VOLTS]).notes()
    assert note.startswith("The times of clamp and volts agree to ±10 ms (k=2)")


def test_columns_of_one_trace_have_one_time():
    volts = Instrument("imported", IMPORTED, "a.csv", (FEED,))
    amps = Instrument("imported-2", IMPORTED, "a.csv", (dataclasses.replace(AMPS, interval_s=0.5),))
    notes = TimeNotes([volts, amps])
    assert notes.agreement_s(volts, amps) == 0.0
    (note,) = notes.notes()
    assert note.startswith("feed (a reading every 0.1 s) and amps (a reading every 0.5 s) are")
    live = dataclasses.replace(amps, time_u_s=0.003)
    assert TimeNotes([volts, live]).agreement_s(volts, live) is None
    assert TimeNotes([CLAMP, amps]).agreement_s(CLAMP, amps) is None


def test_what_was_found_while_recording_counts_more_than_what_was_known_before():
    notes = TimeNotes([CLAMP, VOLTS])
    notes.take(Event(1, EventKind.TIMING, str(TimingFound(time_u_s=0.3)), "volts"))
    notes.take(Event(2, EventKind.NOTE, "standard uncertainty 9 s", "clamp"))
    assert notes.agreement_s(CLAMP, VOLTS) == pytest.approx(math.hypot(0.003, 0.3), rel=1e-2)
    assert "0.6 s (k=2)" in notes.notes()[0]


def test_a_measured_skew_is_the_uncertainty_between_the_two_and_is_told():
    volts = dataclasses.replace(VOLTS, time_u_s=0.5, skew_s=0.12, skew_u_s=0.01)
    (note,) = TimeNotes([CLAMP, volts]).notes()
    assert "agree to ±20 ms (k=2)" in note
    assert "volts was 120.0 ms later than clamp, which is subtracted" in note
    clamp = dataclasses.replace(CLAMP, skew_s=0.05)
    (note,) = TimeNotes([clamp, dataclasses.replace(volts, skew_s=0.0)]).notes()
    assert "clamp was 50.0 ms later than volts, which is subtracted" in note


def test_of_three_meters_each_pair_is_told_and_a_skew_counts_only_where_it_was_measured():
    third = Instrument("third", "r", "-", (FEED,), time_u_s=0.04)
    volts = dataclasses.replace(VOLTS, skew_s=0.12, skew_u_s=0.01)
    notes = TimeNotes([CLAMP, volts, third])
    assert len(notes.notes()) == 3
    assert notes.agreement_s(CLAMP, volts) == 0.01
    assert notes.agreement_s(volts, third) == pytest.approx(math.hypot(0.004, 0.04))


def test_what_is_not_known_is_said():
    (note,) = TimeNotes([CLAMP, dataclasses.replace(VOLTS, time_u_s=None)]).notes()
    assert "is not known" in note


def test_one_meter_or_one_without_a_role_needs_no_note():
    other = Instrument("other", "r", "-", (dataclasses.replace(FEED, role=Role.OTHER),))
    assert TimeNotes([CLAMP]).notes() == []
    assert TimeNotes([CLAMP, other]).notes() == []


def test_the_review_carries_the_note():
    review = Reviewer([CLAMP, VOLTS], Limits()).finish()
    assert any("agree to ±10 ms" in note for note in review.notes)


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(0.00204, "2 ms"), (0.0994, "99 ms"), (0.0996, "0.1 s"), (0.6, "0.6 s"), (123.4, "123 s")],
)
def test_a_short_time_is_written_in_the_unit_that_suits_it(seconds, words):
    assert span_words(seconds) == words


@pytest.mark.parametrize("u_s", [0.00589, 1.5, 0.0577, 2.5e-5, 12.0, 1e-7])
def test_the_uncertainty_in_a_timing_event_is_read_back(u_s):
    text = str(TimingFound(time_u_s=u_s, ppm=-200.16, ppm_u=0.1, points=150, scatter_s=0.001))
    assert time_u_of(text) == pytest.approx(u_s, rel=6e-3)
    assert "200.2 +-0.2 (k=2) ppm slow, from 150 points, scatter 1 ms" in text
    assert time_u_of(str(TimingFound())) is None
