"""Pulsed feeds: frequency and duty where the rate shows them, and never dropouts."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from meterlog.analysis.inferred import Unseen, without_pulses
from meterlog.analysis.inferred.voltage_pages import VoltagePages
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
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
    interval_s = float(np.median(np.diff(np.unique(t))))
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


@pytest.mark.parametrize(("on_s", "mark_s"), [(2.0, 2.002), (2.0, 2.15), (1.9, 2.02)])
def test_pulses_that_begin_before_the_mark_are_those_of_the_speed_asked_for(bench, on_s, mark_s):
    t, columns = pulses(1000.0, 90.0, 0.4, 8.0)
    off = t < on_s
    for column, rest in zip(columns, (0.0, 12.4, 12.4), strict=True):
        column[off] = rest
    instruments = [bench.instrument(0.001, 0.0, ("current", "feed", "return"), digit=0.001)]
    items = [bench.speed(0.0, 0), bench.speed(mark_s, 1), bench.block(t, columns)]
    follower = bench.follow(Unseen(instruments, bench.limits()), instruments, items)
    (one,) = follower.found(bench.judged(instruments, items)).pulsed
    assert one.speed == 1
    assert one.start_ns == pytest.approx(on_s * S, abs=0.02 * S)


def test_pulses_with_off_commanded_are_those_of_off(bench):
    t, columns = pulses(1000.0, 90.0, 0.4, 6.0)
    instruments = [bench.instrument(0.001, 0.0, ("current", "feed", "return"), digit=0.001)]
    items = [bench.speed(0.0, 0), bench.block(t, columns)]
    follower = bench.follow(Unseen(instruments, bench.limits()), instruments, items)
    (one,) = follower.found(bench.judged(instruments, items)).pulsed
    assert one.speed == 0


def test_rows_that_are_there_twice_show_no_faster_pulses(bench):
    t, columns = pulses(500.0, 113.0, 0.4, 12.0)
    twice = np.repeat(t, 3), [np.repeat(one, 3) for one in columns]
    _, once = found(bench, t, columns)
    _, told = found(bench, twice[0], twice[1])
    assert once.pulsed
    assert told.pulsed
    assert all(one.frequency_hz is None for one in (*once.pulsed, *told.pulsed))


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
    assert list(left.findings[:2]) == findings[1:3]
    assert left.findings[2].verdict is Verdict.CANT_TELL
    assert left.count == 1
    unseen = PulsedFeed(0, 10 * S, 2, None, None, None, None, 6.0, 4.0, "")
    assert without_pulses(spans, findings, [unseen]).spans == tuple(spans)


def judged_step(more_spans, more_findings):
    spans = [span(SpanKind.RUNNING, 0.0, 1.0), span(SpanKind.OVER, 1.0, 1.05), *more_spans]
    excess = finding(FindingKind.OVER, 1.0, 1.05)
    step = finding(FindingKind.STEP_CURRENT, 0.0, 6.0)
    other = replace(step, start_ns=6 * S, end_ns=9 * S, verdict=Verdict.PASS, speed=3)
    pulsed = PulsedFeed(0, 10 * S, 2, 10.0, 0.1, 0.5, 12.0, 6.0, 4.0, "", within_s=0.3)
    findings = [excess, *more_findings, replace(step, value=19.0, limit=18.0), other]
    return without_pulses(spans, findings, [pulsed]).findings


def test_a_step_that_was_judged_by_single_pulses_is_not_failed_for_them():
    step, other = judged_step([span(SpanKind.RUNNING, 1.05, 9.0)], [])
    assert step.verdict is Verdict.CANT_TELL
    assert (step.value, step.limit, step.probability) == (None, None, None)
    assert "pulsed" in step.statement
    assert other.verdict is Verdict.PASS  # no pulse of it was withdrawn


def test_a_step_with_an_excess_longer_than_pulses_stays_failed():
    long = [
        span(SpanKind.RUNNING, 1.05, 2.0),
        span(SpanKind.OVER, 2.0, 4.0),
        span(SpanKind.RUNNING, 4.0, 9.0),
    ]
    excess, step, _ = judged_step(long, [finding(FindingKind.OVER, 2.0, 4.0)])
    assert excess.start_ns == 2 * S
    assert step.verdict is Verdict.FAIL


def test_a_beat_of_readings_with_pulses_that_nobody_stated_is_told_as_a_doubt(bench):
    t, columns = pulses(50.0, 100.7, 0.4, 12.0)  # a beat of 0.7 Hz
    _, told = found(bench, t, columns)
    assert sum(span.kind.is_fault for span in told.spans) >= 6
    (note,) = [note for note in told.notes if "come evenly" in note]
    assert "every 1.4 s" in note
    assert "20 ms" in note
    _, averaged = found(bench, t, columns, window_s=0.001)
    assert not any("come evenly" in note for note in averaged.notes)


def test_losses_at_random_are_no_beat(bench):
    rng = np.random.default_rng(8)
    t = np.arange(0.0, 40.0, 0.02)
    on = np.ones(len(t), bool)
    for start in np.cumsum(rng.exponential(2.0, 12) + 0.5):
        on[(t >= start) & (t < start + 0.3)] = False
    _, told = found(bench, t, [np.where(on, 10.0, 0.0), np.where(on, 12.0, 0.0), np.zeros(len(t))])
    assert sum(span.kind.is_fault for span in told.spans) >= 6
    assert not any("come evenly" in note for note in told.notes)


@pytest.mark.parametrize("roles", [("current", "feed", "return"), ("current", "return")])
def test_pages_without_a_swing_are_passed_over_and_those_with_one_kept_whole(bench, roles):
    rng = np.random.default_rng(3)
    on = np.arange(2000) % 20 < 10
    back = np.where(np.arange(2000) < 1000, 0.1, np.where(on, 0.1, 12.0))
    t_ns = np.arange(2000, dtype=np.int64) * 1_000_000
    feed = np.full(2000, 12.1) if "feed" in roles else None
    yes = np.ones(2000, bool)
    rows = Rows(t_ns, np.full(2000, 9.0), feed, back, yes, ~yes)
    cuts = np.unique(np.concatenate(([0, 2000], rng.integers(1, 2000, 9))))
    stretches = [Stretch(0, 1300, 1, steady=True), Stretch(1300, 2000, 2, steady=True)]

    def pages(edges):
        seen = VoltagePages(500)
        full = []
        for a, b in pairwise(edges):
            inside = [
                replace(one, start=max(one.start - a, 0), stop=min(one.stop, b) - a)
                for one in stretches
                if one.start < b and one.stop > a
            ]
            full += seen.take(rows.part(a, b), inside)
        assert seen.rest() is None
        return full

    whole, cut = pages([0, 2000]), pages(cuts.tolist())
    assert [int(page.t_ns[0]) for page in whole] == [1_000_000_000, 1_500_000_000]
    assert whole[0].speed[299] == 1.0
    assert whole[0].speed[300] == 2.0
    for one, other in zip(whole, cut, strict=True):
        assert np.array_equal(one.t_ns, other.t_ns)
        assert np.array_equal(one.across, other.across)
        assert np.array_equal(one.speed, other.speed)
