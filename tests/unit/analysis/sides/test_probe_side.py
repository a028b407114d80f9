"""A probe that moved is never the vehicle's fault, whichever it is and whenever it moves."""

import numpy as np
import pytest

from meterlog.model import DoubtKind, FindingKind, SpanKind

CHANNELS = ("feed", "return", "current")
NOTHING_WRONG = {SpanKind.OFF, SpanKind.RUNNING}


def told(panel, middle, channels=CHANNELS, after=None, taps=(), on=None):
    on = on or panel.HIGH
    legs = [(2.0, panel.OFF), (10.0, on), (14.0, on | middle), (20.0, after or on)]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    events += [panel.trace.tap(at) for at in taps]
    return panel.told(channels, legs, events)


@pytest.mark.parametrize("taps", [(), (9.9,)])
@pytest.mark.parametrize(
    ("role", "reads"),
    [
        ("feed", 0.0),
        ("feed", 5.0),
        ("feed", 8.0),
        ("return", 3.0),
        ("return", 7.5),
        ("return", 12.0),
        ("return", lambda t: 4.0 + 0.2 * np.sin(9.0 * t)),
    ],
    ids=["feed 0", "feed 5", "feed 8", "return 3", "return 7.5", "return 12", "return wanders"],
)
def test_a_probe_that_slips_under_a_steady_current_is_the_probes(panel, role, reads, taps):
    spans, findings, drops, review = told(panel, {role: reads}, taps=taps)
    assert {s.kind for s in spans} == NOTHING_WRONG
    assert {f.kind for f in (*findings, *drops)} == {FindingKind.STEP_CURRENT}
    (doubt,) = [d for d in review.doubts if d.kind is DoubtKind.PROBE]
    assert doubt.role is panel.ROLES[role]
    assert doubt.start_ns / 1e9 == pytest.approx(10.0, abs=0.21)
    assert doubt.end_ns / 1e9 == pytest.approx(14.0, abs=0.21)


def test_a_probe_put_back_on_during_the_recording_was_off_before(panel):
    legs = [(6.0, panel.HIGH | {"feed": 4.0}), (20.0, panel.HIGH)]
    _, _, _, review = panel.told(CHANNELS, legs, [panel.trace.speed(0.0, 4)])
    (doubt,) = [d for d in review.doubts if d.kind is DoubtKind.PROBE]
    assert (doubt.start_ns, round(doubt.end_ns / 1e9)) == (0, 6)


@pytest.mark.parametrize(
    "middle",
    [
        {"current": 10.7, "feed": 10.5},
        {"current": 10.7, "return": 1.74},
        {"current": 16.4, "feed": 13.5, "return": 0.2},
        {"current": 50.0, "feed": 10.7, "return": 0.67},
        {"current": 11.3, "feed": 11.9, "return": 1.9},
    ],
    ids=["resistive feed", "resistive ground", "engine on", "held", "asked for less"],
)
def test_a_circuit_that_changed_is_not_put_down_to_a_probe(panel, middle):
    _, _, _, review = told(panel, middle)
    assert not [d for d in review.doubts if d.kind is DoubtKind.PROBE]


def test_a_regulated_fan_holds_its_current_while_the_supply_sags_and_no_probe_is_doubted(panel):
    for channels in (CHANNELS, ("feed", "current"), ("return", "current")):
        sag = {"feed": panel.LOW["feed"] - 1.5, "return": panel.LOW["return"] - 1.5}
        _, _, _, review = told(panel, sag, channels, on=panel.LOW)
        assert not [d for d in review.doubts if d.kind is DoubtKind.PROBE]


def test_a_feed_probe_that_falls_off_upon_the_tap_that_opens_the_motor_blames_no_feed(panel):
    # The motor opens and the probe falls off at once; the current comes back, the probe does not.
    gone = {"current": 0.0, "feed": 0.0, "return": 0.02}
    spans, findings, _, _ = told(panel, gone, after=panel.HIGH | {"feed": 0.0}, taps=(9.95,))
    (lost,) = [s for s in spans if s.kind not in NOTHING_WRONG]
    assert lost.kind is SpanKind.NO_CURRENT
    (finding,) = [f for f in findings if f.kind is FindingKind.NO_CURRENT]
    assert "probe" in finding.statement
    assert "feed went away" not in finding.statement


@pytest.mark.parametrize(
    ("feed", "back", "words"),
    [
        (0.1, 0.02, "the feed read nothing at once, without the voltage of the motor"),
        (0.1, 3.0, "the feed read nothing at once, without the voltage of the motor"),
        (3.1, 3.0, "the feed fell to 3.1 V at once and left nothing across the motor, not even"),
    ],
)
def test_a_feed_that_reads_something_is_not_told_to_read_nothing(panel, feed, back, words):
    gone = {"current": 0.0, "feed": feed, "return": back}
    _, findings, _, _ = told(panel, gone)
    (finding,) = [f for f in findings if f.kind is FindingKind.NO_CURRENT]
    assert words in finding.statement
    assert "a feed probe that slipped looks the same" in finding.statement


def test_a_feed_gone_at_once_under_a_turning_motor_is_not_the_feed_for_certain(panel):
    gone = {"current": 0.0, "feed": 0.0, "return": 0.02}
    spans, findings, _, _ = told(panel, gone, taps=(9.9,))
    (lost,) = [s for s in spans if s.kind not in NOTHING_WRONG]
    assert lost.kind is SpanKind.NO_CURRENT
    (finding,) = [f for f in findings if f.kind is FindingKind.NO_CURRENT]
    assert "right at a tap" in finding.statement


def test_two_voltages_that_go_together_are_no_probe(panel):
    gone = {"current": 0.0, "feed": 0.0, "return": 0.02, "relay": 0.0}
    spans, _, _, _ = told(panel, gone, ("feed", "return", "relay", "current"))
    assert SpanKind.FEED_LOST in {s.kind for s in spans}


def test_a_return_that_floats_half_way_does_not_blame_the_ground(panel):
    legs = [
        (2.0, panel.OFF),
        (10.0, panel.HIGH),
        (18.0, panel.HIGH | {"current": 0.0, "feed": 12.4, "return": 4.0}),
        (24.0, panel.HIGH),
    ]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    spans, findings, _, _ = panel.told(CHANNELS, legs, events)
    (lost,) = [s for s in spans if s.kind not in NOTHING_WRONG]
    assert lost.kind is SpanKind.NO_CURRENT
    assert any("floats looks the same" in f.statement for f in findings)


def test_a_dead_segment_beside_a_slipped_probe_keeps_its_tap_and_loses_its_side(panel):
    # The return's probe slips first, then the current goes.
    slip = panel.HIGH | {"return": 4.0}
    gone = slip | {"current": 0.0, "feed": 12.4, "return": 0.0}
    legs = [(2.0, panel.OFF), (8.0, panel.HIGH), (10.0, slip), (14.0, gone), (20.0, panel.HIGH)]
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4), panel.trace.tap(13.9)]
    spans, findings, _, _ = panel.told(CHANNELS, legs, events)
    (lost,) = [s for s in spans if s.kind not in NOTHING_WRONG]
    assert lost.kind is SpanKind.NO_CURRENT
    (finding,) = [f for f in findings if f.kind is FindingKind.NO_CURRENT]
    assert "the return's probe is known to have slipped" in finding.statement
    assert "after a tap" in finding.statement
    assert "open inside" not in finding.statement


def test_a_probe_that_slips_many_times_is_told_in_few_words_and_believed_at_none(panel):
    legs, at = [(2.0, panel.OFF), (8.0, panel.HIGH)], 8.0
    for _ in range(6):
        legs += [(at + 2.0, panel.HIGH | {"feed": 5.0}), (at + 4.0, panel.HIGH)]
        at += 4.0
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    _, _, drops, review = panel.told(CHANNELS, legs, events)
    slips = [d for d in review.doubts if d.kind is DoubtKind.PROBE]
    assert len(slips) == 4
    assert "3 more times" in slips[-1].text
    assert slips[-1].end_ns / 1e9 == pytest.approx(at - 2.0, abs=0.2)
    assert drops == ()
