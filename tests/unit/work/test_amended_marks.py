"""Marks are relabelled and moved one by one, and found where they stand now."""

import pytest

from meterlog.model import Event, EventKind
from meterlog.model.errors import UsageError
from meterlog.work.amended_marks import AmendedMarks, parse_seconds, seconds_text

S = 1_000_000_000
WHO = ("N. N.", "reason")
EVENTS = (
    Event(0, EventKind.SPEED, "1"),
    Event(3 * S, EventKind.TAP),
    Event(3 * S + S // 5, EventKind.TAP),
    Event(10 * S, EventKind.SPEED, "3"),
    Event(12 * S, EventKind.NOTE, "words"),
    Event(20 * S, EventKind.END, "complete"),
)


@pytest.fixture
def marks():
    return AmendedMarks(EVENTS, 20 * S)


def move(marks, kind, old, new):
    edit = marks.moved(kind, round(old * S), round(new * S), *WHO)
    marks.apply(edit)
    return edit


def test_a_step_is_relabelled_and_nothing_else(marks):
    edit = marks.relabelled(round(9.8 * S), "02", *WHO)
    assert (edit.t_ns, edit.old, edit.new) == (10 * S, "3", "02")
    assert marks.events == EVENTS
    marks.apply(edit)
    assert marks.events == (*EVENTS[:3], Event(10 * S, EventKind.SPEED, "2"), *EVENTS[4:])
    assert marks.speeds == {1, 2}


def test_a_mark_that_was_moved_is_moved_again_and_back(marks):
    first = move(marks, EventKind.NOTE, 12, 1.5)
    assert [one.kind for one in marks.events][:2] == [EventKind.SPEED, EventKind.NOTE]
    second = move(marks, EventKind.NOTE, 1.5, 20)
    assert marks.events[-1].kind is EventKind.END
    assert (first.t_ns, second.t_ns, second.old) == (12 * S, 12 * S, "1.5")
    move(marks, EventKind.NOTE, 20, 12)
    assert marks.events == EVENTS


def test_of_two_that_are_near_the_one_that_is_named_in_full(marks):
    with pytest.raises(UsageError, match=r"more than one tap is marked there: 3 s, 3\.2 s"):
        marks.moved(EventKind.TAP, round(3.1 * S), S, *WHO)
    assert move(marks, EventKind.TAP, 3.2, 3.1).t_ns == 3 * S + S // 5


@pytest.mark.parametrize(
    ("kind", "old", "new", "words"),
    [
        (EventKind.TAP, 5, 6, r"no tap is marked there. There are: 3 s, 3.2 s"),
        (EventKind.WIGGLE, 3, 4, "No wiggle was marked"),
        (EventKind.TAP, 3, 20.1, "outside the recording, which goes from 0 to 20.000 s"),
        (EventKind.TAP, 3, -0.1, "outside the recording"),
        (EventKind.TAP, 3, 3.2, "another tap at that very time"),
        (EventKind.SPEED, 10, 0, "another speed at that very time"),
        (EventKind.SPEED, 0, 11, "would pass the command at 10 s"),
    ],
)
def test_what_does_not_fit_is_refused_and_nothing_is_moved(marks, kind, old, new, words):
    with pytest.raises(UsageError, match=words):
        move(marks, kind, old, new)
    assert marks.events == EVENTS


@pytest.mark.parametrize("speed", ["fast", "-1", "1.5", "1000", "²"])
def test_what_is_no_speed_is_refused(marks, speed):
    with pytest.raises(UsageError, match="is no speed"):
        marks.apply(marks.relabelled(0, speed, *WHO))


def test_an_edit_of_another_recording_does_not_fit(marks):
    edit = marks.relabelled(10 * S, "2", *WHO)
    other = AmendedMarks((Event(0, EventKind.SPEED, "3"),), 20 * S)
    with pytest.raises(UsageError, match="holds no speed at 10 s that was 3"):
        other.apply(edit)


def test_without_a_recorded_speed_it_is_said_what_helps():
    with pytest.raises(UsageError, match="--accept-steps"):
        AmendedMarks((), S).relabelled(0, "1", *WHO)


@pytest.mark.parametrize(
    ("t_ns", "text"), [(0, "0"), (12_300_000_001, "12.300000001"), (10 * S, "10")]
)
def test_times_are_written_in_full_and_read_back(t_ns, text):
    assert seconds_text(t_ns) == text
    assert parse_seconds(text) == parse_seconds(f" {text.replace('.', ',')} ") == t_ns


@pytest.mark.parametrize("text", ["", "x", "nan", "inf", "1e99", "1:20"])
def test_what_is_no_time_is_refused(text):
    with pytest.raises(UsageError, match="is no time"):
        parse_seconds(text)


def test_what_can_not_be_is_told_to_the_millisecond():
    tap, late = Event(3_123_456_789, EventKind.TAP), Event(9_123_456_789, EventKind.SPEED, "2")
    marks = AmendedMarks((Event(0, EventKind.SPEED, "1"), tap, late), 20 * S)
    with pytest.raises(UsageError, match=r"7\.988 s: no tap .* There are: 3\.123 s\."):
        marks.moved(EventKind.TAP, 7_987_654_321, S, *WHO)
    with pytest.raises(UsageError, match=r"pass the command at 9\.123 s"):
        marks.apply(marks.moved(EventKind.SPEED, 0, 10 * S, *WHO))
