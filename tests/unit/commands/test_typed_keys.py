"""Marks typed while recording."""

import pytest

from meterlog.commands.typed_keys import TypedKeys, mark_of, reading_of
from meterlog.model import Event, EventKind
from meterlog.recording.checked_text import with_crc
from meterlog.recording.event_lines import event_text, parse_event_lines


@pytest.mark.parametrize(
    ("line", "mark"),
    [
        ("0", (EventKind.SPEED, "0")),
        ("4", (EventKind.SPEED, "4")),
        ("999", (EventKind.SPEED, "999")),
        ("1000", None),
        ("t", (EventKind.TAP, "")),
        ("w", (EventKind.WIGGLE, "leads")),
        ("w motor plug", (EventKind.WIGGLE, "motor plug")),
        ("wiggle", None),
        ("n grille off, hit it", (EventKind.NOTE, "grille off, hit it")),
        ("n", None),
        ("t t", None),
        ("-1", None),
        ("speed", None),
        ("²", None),
    ],
)
def test_a_typed_line_is_a_mark_or_none(line, mark):
    assert mark_of(line) == mark


@pytest.mark.parametrize("line", ["0", "9", "12", "999", "1000", "12431243"])
def test_what_is_taken_for_a_speed_can_be_read_back(line):
    mark = mark_of(line)
    if mark is not None:
        written = with_crc(event_text(Event(0, *mark)))
        assert parse_event_lines(written, "events.jsonl") == ((Event(0, *mark),), ())


def test_without_a_terminal_nothing_is_read():
    assert TypedKeys().lines() == []


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("= 12.43", "12.43"),
        ("=12,4", "12,4"),
        ("= hand 1 2", "hand 1 2"),
        ("12.43", None),
        ("=", ""),
    ],
)
def test_a_line_that_begins_with_an_equals_sign_is_a_reading(line, words):
    assert reading_of(line) == words
