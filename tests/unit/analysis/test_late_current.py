"""At a start from rest the current may be read a moment later than the voltage."""

import re

import pytest

from meterlog.model import SpanKind, Verdict


def started(trace, late_s, interval_s=0.02, before=None, marked=5.0, more=()):
    """Give the review of a fan that is started at 5 s, its current read so much later."""
    leg = trace.Leg
    legs = [leg(5.0, *(before or trace.NORMAL[0]))]
    if late_s:
        legs.append(leg(5.0 + late_s, *trace.DEAD))
    legs.append(leg(15.0, *trace.NORMAL[4]))
    events = [trace.speed(0.0, 0), trace.speed(marked, 4)]
    return trace.review([*legs, *more], events, interval_s)


def told(result):
    gone = (SpanKind.DEAD, SpanKind.NO_CURRENT, SpanKind.FEED_LOST, SpanKind.GROUND_LOST)
    return [span.kind for span in result.spans if span.kind in gone]


def late_notes(result):
    return [note for note in result.notes if "no current was read yet while" in note]


@pytest.mark.parametrize(
    ("late_s", "interval_s"), [(0.2, 0.2), (0.1, 0.05), (0.08, 0.02), (0.26, 0.02), (1.0, 1.0)]
)
def test_a_current_that_comes_a_moment_after_the_voltage_is_no_open_motor(
    trace, late_s, interval_s
):
    result = started(trace, late_s, interval_s)
    assert told(result) == []
    assert not [one for one in result.findings if one.verdict is Verdict.FAIL]
    (note,) = late_notes(result)
    assert note.startswith("At 1 start(s)")


@pytest.mark.parametrize("marked", [4.96, 5.0, 5.04])
def test_nor_is_it_where_the_mark_is_not_quite_at_the_start(trace, marked):
    assert told(started(trace, 0.06, marked=marked)) == []


@pytest.mark.parametrize(("late_s", "interval_s"), [(0.4, 0.02), (0.8, 0.2), (4.0, 1.0)])
def test_one_that_stays_away_for_longer_is(trace, late_s, interval_s):
    result = started(trace, late_s, interval_s)
    assert told(result) == [SpanKind.DEAD]
    assert late_notes(result) == []


def test_a_start_at_once_is_not_spoken_of(trace):
    assert late_notes(started(trace, 0.0)) == []


def test_where_current_flowed_before_a_moment_without_is_a_dead_segment(trace):
    leg = trace.Leg
    legs = [leg(5.0, *trace.NORMAL[4]), leg(5.2, *trace.DEAD), leg(15.0, *trace.NORMAL[4])]
    assert told(trace.review(legs, [trace.speed(0.0, 4)], 0.02)) == [SpanKind.DEAD]


def test_behind_a_lost_feed_it_is_part_of_the_loss(trace):
    """The feed comes back, and the clamp shows it a row later: no motor that opens besides."""
    leg = trace.Leg
    coasting = [leg(5.0 + 0.1 * k, 9.3 * 0.9**k, 0.0, 0.0) for k in range(1, 20)]
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        *coasting,
        leg(7.0, 0.0, 0.0, 0.0),
        leg(7.1, *trace.DEAD),
        leg(15.0, *trace.NORMAL[4]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.02)
    assert told(result) == [SpanKind.FEED_LOST]
    (lost,) = (span for span in result.spans if span.kind is SpanKind.FEED_LOST)
    assert (lost.end_ns - lost.start_ns) / 1e9 == pytest.approx(2.1, abs=0.05)


def test_the_longest_of_several_starts_is_told(trace):
    leg = trace.Leg
    more = [leg(20.0, *trace.NORMAL[0]), leg(20.16, *trace.DEAD), leg(30.0, *trace.NORMAL[4])]
    events = [trace.speed(t, k) for t, k in ((0.0, 0), (5.0, 4), (15.0, 0), (20.0, 4))]
    legs = [leg(5.0, *trace.NORMAL[0]), leg(5.06, *trace.DEAD), leg(15.0, *trace.NORMAL[4])]
    (note,) = late_notes(trace.review([*legs, *more], events, 0.02))
    assert "At 2 start(s)" in note
    most_s = float(re.search(r"for ([\d.]+) s at most", note)[1])
    assert most_s == pytest.approx(0.16, abs=0.02)
