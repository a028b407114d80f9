"""Pulsed feeds: frequency and duty where the rate shows them, and never dropouts."""

import numpy as np
import pytest

from meterlog.analysis.inferred import Unseen, without_pulses
from meterlog.model import Controller, Finding, FindingKind, PulsedFeed, Span, SpanKind, Verdict

S = 1_000_000_000


def pulses(rate_hz, frequency_hz, duty, seconds=6.0, low_side=True, seed=1):
    """Give times and (current, feed, return) of a pulsed motor."""
    rng = np.random.default_rng(seed)
    t = np.arange(0.0, seconds, 1.0 / rate_hz)
    on = (t * frequency_hz + 0.123) % 1.0 < duty
    feed = 12.1 - 0.1 * on if low_side else np.where(on, 12.0, 0.0)
    back = np.where(on, 0.2, 12.1) if low_side else np.zeros(len(t))
    columns = [np.where(on, 10.0, 0.0), feed, back]
    return t, [one + rng.normal(0.0, 0.02, len(t)) for one in columns]


def found(bench, t, columns, roles=("current", "feed", "return"), lim=None, window_s=0.0):
    interval_s = float(np.median(np.diff(t)))
    instruments = [bench.instrument(interval_s, window_s, roles, digit=0.001)]
    items = [bench.speed(0.0, 2), bench.block(t, columns)]
    lim = lim or bench.limits()
    follower = bench.follow(Unseen(instruments, lim), instruments, items, lim)
    judged = bench.judged(instruments, items, lim)
    return judged, follower.found(judged)


@pytest.mark.parametrize(
    ("frequency_hz", "rate_hz"), [(100.0, 5003.0), (12.5, 407.0), (390.0, 9997.0)]
)
@pytest.mark.parametrize(("duty", "low_side"), [(0.15, True), (0.5, False), (0.85, True)])
def test_frequency_and_duty_are_told(bench, frequency_hz, rate_hz, duty, low_side):
    seconds = 4.0 if frequency_hz < 50.0 else 1.6
    t, columns = pulses(rate_hz, frequency_hz, duty, seconds, low_side)
    _, told = found(bench, t, columns)
    (one,) = told.pulsed
    assert one.frequency_hz == pytest.approx(frequency_hz, abs=one.frequency_u_hz + 1e-9)
    assert one.frequency_u_hz < 0.01 * frequency_hz
    assert one.duty == pytest.approx(duty, abs=frequency_hz / rate_hz)
    assert one.average_v == pytest.approx(duty * one.on_v + 0.0, abs=0.25)
    assert one.average_a == pytest.approx(10.0 * duty, abs=0.25)
    assert one.start_ns == pytest.approx(0, abs=0.1 * S)
    assert one.end_ns == pytest.approx(seconds * S, abs=0.1 * S)


def test_a_return_alone_shows_the_pulses_too(bench):
    t, columns = pulses(2003.0, 100.0, 0.3)
    _, told = found(bench, t, [columns[0], columns[2]], ("current", "return"))
    (one,) = told.pulsed
    assert one.duty == pytest.approx(0.3, abs=0.02)
    assert one.average_v == pytest.approx(0.3 * 11.9, abs=0.3)


def test_readings_too_slow_for_the_pulses_tell_no_frequency(bench):
    t, columns = pulses(50.0, 113.0, 0.4, 12.0)
    _, told = found(bench, t, columns)
    assert told.pulsed
    assert all(one.frequency_hz is None and one.duty is None for one in told.pulsed)
    assert "can't be told" in told.pulsed[0].statement


def test_pulses_slow_enough_to_be_spans_are_no_dropouts(bench):
    t, columns = pulses(500.0, 10.4, 0.3, 10.0)
    lim = bench.limits(min_dwell_s=0.01)
    judged, told = found(bench, t, columns, lim=lim)
    assert sum(span.kind.is_fault for span in judged.spans) > 50
    assert sum(span.kind.is_fault for span in told.spans) <= 4  # at the ends of the stretch
    assert len(told.findings) < len(judged.findings) - 50
    assert any("pulses of a pulsed feed" in note for note in told.notes)
    ends = [span.end_ns for span in told.spans[:-1]]
    assert ends == [span.start_ns for span in told.spans[1:]]


@pytest.mark.parametrize("interval_s", [0.02, 0.002])
def test_a_loose_contact_that_chatters_is_no_pulsed_feed(bench, interval_s):
    rng = np.random.default_rng(4)
    t = np.arange(0.0, 15.0, interval_s)
    on = np.cumsum(rng.random(len(t)) < 0.1) % 2 == 0
    judged, told = found(
        bench, t, [np.where(on, 10.0, 0.0), np.where(on, 12.0, 0.0), np.zeros(len(t))]
    )
    assert not told.pulsed
    assert sum(span.kind.is_fault for span in judged.spans) > 10
    assert told.spans == judged.spans


def test_a_motor_that_opens_at_every_turn_has_no_pulsed_feed(bench):
    # Current notched once a turn while the voltage stands: the commutator, not the feed.
    t = np.arange(0.0, 4.0, 0.0005)
    gone = (t * 40.0) % 1.0 < 0.1
    _, told = found(bench, t, [np.where(gone, 0.0, 10.0), 12.0 + 0.3 * gone, np.full(len(t), 0.1)])
    assert not told.pulsed


def test_a_controller_said_to_pulse_is_warned_of_on_a_slow_meter(bench):
    rng = np.random.default_rng(2)
    t = np.arange(0.0, 40.0, 0.4)
    columns = [4.0, 12.1, 6.7]
    columns = [level + rng.normal(0.0, 0.03, len(t)) for level in columns]
    lim = bench.limits(controller=Controller("pulsed"))
    _, told = found(bench, t, columns, lim=lim, window_s=0.3)
    (one,) = told.pulsed
    assert one.frequency_hz is None
    assert one.average_v == pytest.approx(5.4, abs=0.02)
    assert one.average_a == pytest.approx(4.0, abs=0.02)
    assert "average only" in one.statement
    assert one.within_s == 0.0
    _, plain = found(bench, t, columns, window_s=0.3)
    assert not plain.pulsed


def test_readings_at_random_moments_of_stated_pulses_are_no_dropouts(bench):
    t, columns = pulses(50.0, 100.7, 0.4, 8.0)  # a beat of 0.7 Hz
    lim = bench.limits(controller=Controller("pulsed"))
    judged, told = found(bench, t, columns, lim=lim)
    assert sum(span.kind.is_fault for span in judged.spans) >= 4
    assert not any(span.kind.is_fault for span in told.spans)
    assert told.pulsed[0].average_a == pytest.approx(4.0, abs=0.4)


def span(kind, start_s, end_s):
    return Span(kind, round(start_s * S), round(end_s * S), speed=2)


def finding(kind, start_s, end_s):
    return Finding(
        kind, Verdict.FAIL, round(start_s * S), round(end_s * S), 0, 0.0, "A", None, None, 2, ""
    )


def test_only_what_is_as_short_as_pulses_and_inside_is_withdrawn():
    spans = [
        span(SpanKind.RUNNING, 0.0, 1.0),
        span(SpanKind.GROUND_LOST, 1.0, 1.05),
        span(SpanKind.RUNNING, 1.05, 2.0),
        span(SpanKind.GROUND_LOST, 2.0, 4.0),
        span(SpanKind.RUNNING, 4.0, 11.0),
        span(SpanKind.GROUND_LOST, 11.0, 11.05),
        span(SpanKind.RUNNING, 11.05, 12.0),
    ]
    findings = [
        finding(FindingKind.GROUND_LOST, 1.0, 1.05),
        finding(FindingKind.GROUND_LOST, 2.0, 4.0),
        finding(FindingKind.GROUND_LOST, 11.0, 11.05),
        finding(FindingKind.STEP_CURRENT, 1.0, 1.05),
    ]
    pulsed = PulsedFeed(0, 10 * S, 2, 10.0, 0.1, 0.5, 12.0, 6.0, 4.0, "", within_s=0.3)
    left = without_pulses(spans, findings, [pulsed])
    kinds = [(s.kind.value, s.start_ns / S, s.end_ns / S) for s in left.spans]
    assert kinds == [
        ("running", 0.0, 2.0), ("ground-lost", 2.0, 4.0), ("running", 4.0, 11.0),
        ("ground-lost", 11.0, 11.05), ("running", 11.05, 12.0),
    ]  # fmt: skip
    assert list(left.findings) == findings[1:]
    assert left.count == 1
    unseen = PulsedFeed(0, 10 * S, 2, None, None, None, None, 6.0, 4.0, "")
    assert without_pulses(spans, findings, [unseen]).spans == tuple(spans)
