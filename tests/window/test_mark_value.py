"""What a key put into a mark is said in the window's language; what was typed stays as it is."""

import pytest

from meterlog.model import LEADS, Event, EventKind
from meterlog.window import mark_value


@pytest.mark.parametrize(
    ("kind", "value", "words"),
    [
        (EventKind.WIGGLE, LEADS, "said: leads"),
        (EventKind.WIGGLE, "feed connector", "feed connector"),
        (EventKind.NOTE, LEADS, LEADS),
        (EventKind.NOTE, "a {brace}", "a {brace}"),
        (EventKind.SPEED, "3", "3"),
        (EventKind.TAP, "", ""),
    ],
)
def test_only_what_a_key_put_there_is_translated(monkeypatch, kind, value, words):
    monkeypatch.setattr(mark_value, "say", lambda text: f"said: {text}")
    assert mark_value.value_words(Event(0, kind, value)) == words
