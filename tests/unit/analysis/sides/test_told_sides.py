"""What is said of a loss besides its side: where, how the motor coasted, at which speeds."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.model import DoubtKind, FindingKind, SpanKind

CHANNELS = ("feed", "return", "battery", "relay", "current")


def told(panel, gone, channels=CHANNELS, events=(), **how):
    legs = [(2.0, panel.OFF), (10.0, panel.HIGH), (14.0, panel.HIGH | gone), (20.0, panel.HIGH)]
    commands = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    spans, findings, _, _ = panel.told(channels, legs, [*commands, *events], **how)
    lost = [s for s in spans if s.kind not in (SpanKind.OFF, SpanKind.RUNNING)]
    faults = [f for f in findings if f.kind is not FindingKind.STEP_CURRENT]
    return lost, faults


def feed_gone(panel, **more):
    return {"current": 0.0, "feed": panel.coasting, "return": 0.0} | more


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({}, "stood behind the relay: the wire or plug from there"),
        ({"relay": 0.0}, "fuse, relay or its coil"),
        ({"relay": 0.0, "battery": 0.0}, "the supply itself went"),
    ],
)
def test_how_far_the_voltage_still_reaches_is_told(panel, more, words):
    (lost,), (finding,) = told(panel, feed_gone(panel, **more))
    assert lost.kind is SpanKind.FEED_LOST
    assert words in finding.statement
    assert words in lost.detail


@pytest.mark.parametrize("interval_s", [0.002, 0.1, 0.33])
def test_the_decay_of_the_motors_own_voltage_is_told_from_volts_to_volts(panel, interval_s):
    (lost,), _ = told(panel, feed_gone(panel), interval_s=interval_s)
    words = lost.detail.partition("own voltage fell from ")[2].split()
    assert float(words[0]) == pytest.approx(9.0, abs=0.6 + 9.3 * interval_s)
    assert float(words[3]) < 1.0
    assert float(words[6]) == pytest.approx(2.3, abs=2 * interval_s + 0.15)


def test_a_voltage_that_does_not_decay_is_no_coasting_motor(panel):
    (lost,), _ = told(panel, {"current": 0.0, "feed": 6.0, "return": 0.0})
    assert "own voltage" not in lost.detail


def test_a_dead_segment_that_goes_on_over_a_change_of_speed_says_both(panel):
    dead = {"current": 0.0, "feed": 12.4, "return": 0.02}
    events = [panel.trace.speed(12.0, 1), panel.trace.speed(13.0, 4)]
    (lost,), (finding,) = told(panel, dead, events=events)
    assert (lost.kind, lost.speed) == (SpanKind.DEAD, 4)
    assert "it went on after the command for speed 1 at 12.000 s" in lost.detail
    assert "speed 1 at 12.000 s, then speed 4 at 13.000 s" in finding.statement


def test_spans_and_findings_keep_their_number_and_times(panel):
    legs = [
        (2.0, panel.OFF),
        (6.0, panel.HIGH),
        (9.0, panel.HIGH | feed_gone(panel)),
        (12.0, panel.HIGH),
        (15.0, panel.HIGH | {"current": 0.0, "feed": 12.4, "return": 0.02}),
        (20.0, panel.HIGH),
    ]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    spans, findings, _, review = panel.told(CHANNELS, legs, events)
    assert [(s.start_ns, s.end_ns) for s in spans] == [(s.start_ns, s.end_ns) for s in review.spans]
    assert [(f.start_ns, f.value) for f in findings] == [
        (f.start_ns, f.value) for f in review.findings
    ]


def test_a_recording_without_further_channels_is_told_as_it_was(panel):
    legs = [(2.0, panel.OFF), (10.0, panel.HIGH), (14.0, panel.HIGH | {"current": 0.0})]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    spans, findings, drops, review = panel.told(("current",), legs, events)
    assert (spans, findings, drops) == (review.spans, review.findings, ())


@settings(max_examples=15, deadline=None)
@given(
    cuts=st.lists(st.integers(0, 400), max_size=12),
    reads=st.sampled_from([0.0, 5.0, 9.0]),
    role=st.sampled_from(["feed", "return"]),
)
def test_a_moved_probe_is_the_same_however_the_data_is_cut(panel, cuts, reads, role):
    channels = ("feed", "return", "current")
    legs = [(2.0, panel.OFF), (10.0, panel.HIGH), (14.0, panel.HIGH | {role: reads})]
    legs.append((20.0, panel.HIGH))
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    meter, block = panel.instrument(channels), panel.block(channels, legs)
    parts = [block.rows(a, b) for a, b in pairwise(sorted({0, len(block), *cuts}))]
    whole, cut = (panel.judge([meter], [*events, *some])[3] for some in ([block], parts))
    assert [d for d in whole.doubts if d.kind is DoubtKind.PROBE] == [
        d for d in cut.doubts if d.kind is DoubtKind.PROBE
    ]
    assert whole.spans == cut.spans
