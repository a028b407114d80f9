"""The ribbon: what has no room for its word is told under the pointer."""

import pytest

from meterlog.evidence.span_ribbon import TimeScale
from meterlog.model import Event, EventKind, Span, SpanKind
from meterlog.window.ribbon_view import RibbonView

S = 1_000_000_000


@pytest.fixture
def ribbon(qtbot):
    """Ten seconds on 100 pixels: a tap with a note and moved leads at its side."""
    ribbon = RibbonView()
    qtbot.addWidget(ribbon)
    ribbon.resize(100, 60)
    events = (
        Event(5 * S, EventKind.TAP),
        Event(round(5.2 * S), EventKind.NOTE, "by the housing"),
        Event(8 * S, EventKind.SPEED, "0"),
    )
    spans = (Span(SpanKind.DEAD, 4 * S, 5 * S), Span(SpanKind.RUNNING, 5 * S, 10 * S))
    ribbon.show_stretch(TimeScale(0, 10 * S, 0.0, 100.0), spans, events)
    return ribbon


def test_marks_without_room_for_words_are_told_under_the_pointer(ribbon):
    assert ribbon.words_at(51.0) == "5.000 s  tap\n5.200 s  note by the housing\nrunning"
    assert ribbon.words_at(42.0) == "dead"
    assert ribbon.words_at(80.0).startswith("8.000 s  speed 0 (off)")
    assert ribbon.words_at(20.0) == ""
