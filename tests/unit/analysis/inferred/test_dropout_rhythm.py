"""Rhythm: a controller, a thermal switch, taps, or nothing."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis.inferred import rhythm
from meterlog.analysis.judged import Judged
from meterlog.model import Event, EventKind, Limits, RhythmKind, Span, SpanKind

S = 1_000_000_000


def ns(seconds):
    return round(seconds * S)


def judged(starts, lengths, kind=SpanKind.GROUND_LOST, taps=(), end_s=None):
    """Dropouts between running spans, from 0 on."""
    spans, at = [], 0.0
    for start, length in zip(starts, lengths, strict=True):
        spans.append(Span(SpanKind.RUNNING, ns(at), ns(start), speed=4))
        spans.append(Span(kind, ns(start), ns(start + length), speed=4))
        at = start + length
    spans.append(Span(SpanKind.RUNNING, ns(at), ns(end_s or at + 20.0), speed=4))
    events = tuple(Event(ns(t), EventKind.TAP) for t in taps)
    return Judged((), Limits(), spans=tuple(spans), events=events)


def regular(period_s, count=8, jitter=0.02, seed=1):
    rng = np.random.default_rng(seed)
    return 5.0 + period_s * np.arange(count) + rng.normal(0.0, jitter * period_s, count)


def test_below_three_dropouts_there_is_no_rhythm():
    assert rhythm(judged([5.0, 8.0], [1.0, 1.0])) is None


def test_a_controller_that_tries_again_is_told_by_its_period():
    told = rhythm(judged(regular(4.0), [1.5] * 8))
    assert told.kind is RhythmKind.RETRY
    assert told.count == 8
    assert told.period_s == pytest.approx(4.0, rel=0.03)
    assert told.period_sd_s == pytest.approx(0.02 * 4.0 * 2**0.5, rel=0.6)
    assert told.off_s == pytest.approx(1.5)
    assert told.on_s == pytest.approx(2.5, abs=0.2)
    assert told.chance < 0.001
    assert "controller" in told.statement
    assert "before the motor is blamed" in told.statement


def test_regular_dropouts_with_the_voltage_across_the_motor_are_no_controllers():
    told = rhythm(judged(regular(4.0), [1.5] * 8, SpanKind.DEAD))
    assert told.kind is RhythmKind.RANDOM
    assert "voltage stood across the motor" in told.statement


def test_dropouts_at_random_have_no_rhythm():
    rng = np.random.default_rng(5)
    kinds = []
    for _ in range(100):
        starts = np.cumsum(rng.exponential(20.0, 8) + 0.5)
        kinds.append(rhythm(judged(starts, rng.uniform(0.1, 0.4, 8))).kind)
    assert kinds.count(RhythmKind.RANDOM) >= 98
    assert RhythmKind.TAPS not in kinds


def test_long_runs_and_long_pauses_are_a_thermal_cut_out_not_a_motor_fault():
    runs, pauses = [240.0, 150.0, 140.0, 145.0], [40.0, 45.0, 42.0, 44.0]
    starts, at = [], 0.0
    for run, pause in zip(runs, pauses, strict=True):
        starts.append(at + run)
        at += run + pause
    told = rhythm(judged(starts, pauses))
    assert told.kind is RhythmKind.CUT_OUT
    assert told.on_s == pytest.approx(147.5)
    assert told.off_s == pytest.approx(43.0)
    assert told.chance <= 0.05
    assert "before the motor is blamed" in told.statement
    dead = rhythm(judged(starts, pauses, SpanKind.DEAD))
    assert dead.kind is RhythmKind.RANDOM
    assert "inside the motor" in dead.statement


def test_short_pauses_are_no_cut_out():
    told = rhythm(judged([240.0, 400.0, 555.0, 720.0], [2.0] * 4))
    assert told.kind is RhythmKind.RANDOM


def test_dropouts_that_end_upon_taps_are_bound_to_them():
    starts = [10.0, 45.0, 90.0, 120.0]
    taps = [start + 14.9 for start in starts]
    told = rhythm(judged(starts, [15.0] * 4, SpanKind.DEAD, taps))
    assert told.kind is RhythmKind.TAPS
    # Each tap reaches 2 s, of which 1.9 s lie after the dropout, and 0.5 s back, as a hand is late:
    # 2.5 of 16.9 s.
    assert told.chance == pytest.approx((2.5 / 16.9) ** 4, rel=1e-6)
    assert "4 of 4 dropouts" in told.statement


def test_somebody_who_taps_all_the_time_proves_nothing():
    starts = [10.0, 45.0, 90.0]
    taps = np.concatenate([start + np.arange(0.5, 15.0, 1.0) for start in starts])
    told = rhythm(judged(starts, [15.0] * 3, SpanKind.DEAD, taps.tolist()))
    assert told.kind is RhythmKind.RANDOM


def test_taps_that_bring_nothing_back_are_no_rhythm():
    starts = [10.0, 47.0, 90.0, 120.0]
    taps = [start + 4.0 for start in starts]
    told = rhythm(judged(starts, [15.0] * 4, SpanKind.DEAD, taps))
    assert told.kind is not RhythmKind.TAPS


def test_neighbouring_kinds_of_loss_are_one_dropout():
    whole = judged(regular(4.0, 4), [1.5] * 4)
    cut = []
    for one in whole.spans:
        if one.kind is SpanKind.GROUND_LOST:
            middle = one.start_ns + one.duration_ns // 2
            cut.append(replace(one, end_ns=middle, kind=SpanKind.NO_CURRENT))
            cut.append(replace(one, start_ns=middle))
        else:
            cut.append(one)
    assert rhythm(replace(whole, spans=tuple(cut))).count == 4
