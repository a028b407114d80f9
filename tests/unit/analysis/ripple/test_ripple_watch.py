"""RippleWatch from readings to views: what is kept, however it comes, and what is refused."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis import SpanDetector
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.ripple import RippleWatch
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Block,
    Channel,
    Controller,
    Event,
    EventKind,
    Finding,
    FindingKind,
    Instrument,
    Limits,
    Quantity,
    Role,
    Step,
    Verdict,
)

RATE = 8_000.0


def instrument(rate_hz=RATE, integration_s=0.0):
    channel = Channel(
        "amps",
        Quantity.CURRENT,
        Role.MOTOR_CURRENT,
        interval_s=1.0 / rate_hz,
        integration_s=integration_s,
    )
    return Instrument("daq", "test", "-", (channel,))


def rows_of(t_s, amps, feed=None):
    every = np.ones(len(t_s), np.bool_)
    return Rows(np.round(t_s * 1e9).astype(np.int64), amps, feed, None, every, ~every)


def views_of(
    rows, rate_hz=RATE, limits=None, findings=(), integration_s=0.0, parts=None, mean=14.0
):
    limits = limits or Limits()
    meter = instrument(rate_hz, integration_s)
    watch = RippleWatch([meter], limits)
    for start, stop in parts or [(0, len(rows))]:
        if stop > start:
            watch.take_rows(rows.part(start, stop), [Stretch(0, stop - start, 4, steady=True)])
    end_ns = int(rows.t_ns[-1]) + 2_000_000_000
    step = Step(4, 0, end_ns, steady_n=len(rows), steady_mean_a=mean)
    return watch.views(Judged((meter,), limits, steps=(step,), findings=findings))


@pytest.fixture(scope="module")
def dead_bar(bars):
    motor = bars.BarMotor(bars=12, rpm=3000.0, rate_hz=RATE, dead=(3,), depth=0.6, seconds=3.0)
    return rows_of(*bars.bar_wave(motor, 5))


def dead_segment():
    return Finding(FindingKind.DEAD, Verdict.FAIL, 0, 1, 0, 0.0, "A", None, 0.3, 4, "seen")


def test_a_dead_bar_is_one_bar_though_it_passes_two_brushes(dead_bar):
    (view,), (finding,) = views_of(dead_bar)
    assert (view.bars, view.ripples_per_turn) == (12, 12)
    assert [(flaw.bar, flaw.dead) for flaw in view.flaws] == [(1, True)]
    assert view.flaws[0].depth == pytest.approx(0.55, abs=0.1)
    assert view.flaws[0].confidence > 0.999
    low = np.argsort(view.profile)[:2]
    assert sorted(low.tolist()) == [0, 6]
    assert view.turns_rpm == pytest.approx(3000.0, rel=0.02)
    assert finding.kind is FindingKind.BARS


def test_a_pattern_alone_fails_nobody_and_dead_segments_beside_it_do(dead_bar):
    _, (alone,) = views_of(dead_bar)
    assert alone.verdict is Verdict.CANT_TELL
    assert "no ground to replace" in alone.statement
    assert "consistent with" in alone.statement
    _, (proven,) = views_of(dead_bar, findings=(dead_segment(),))
    assert proven.verdict is Verdict.FAIL
    assert proven.value == pytest.approx(alone.value)


@settings(max_examples=12)
@given(cuts=st.lists(st.integers(0, 24_000), max_size=25))
def test_cut_anywhere_the_views_are_the_same(dead_bar, cuts):
    places = sorted({0, len(dead_bar), *(c for c in cuts if c < len(dead_bar))})
    assert views_of(dead_bar, parts=list(pairwise(places))) == views_of(dead_bar)


@settings(max_examples=25)
@given(
    cuts=st.lists(st.integers(0, 4000), max_size=20),
    gone=st.lists(st.tuples(st.integers(0, 4000), st.integers(1, 900)), max_size=4),
    first=st.booleans(),
)
def test_cut_anywhere_the_windows_are_the_same_through_losses_and_notches(cuts, gone, first):
    amps = np.full(4000, 10.0) + np.arange(4000) * 1e-4
    lost = np.zeros(4000, np.bool_)
    for start, length in gone:
        lost[start : start + length] = True
    amps[lost] = 0.0
    rows = rows_of(np.arange(4000) / 2000.0, amps)
    limits = Limits(inrush_window_s=0.1, min_dwell_s=0.05)
    edges = {0, 4000, *(np.flatnonzero(np.diff(lost)) + 1).tolist()}

    def kept(places):
        watch = RippleWatch([instrument()], limits)
        for start, stop in pairwise(sorted(places)):
            stretch = Stretch(0, stop - start, 4, steady=first and start == 0)
            watch.take_rows(rows.part(start, stop), [stretch])
        watch.views(Judged((instrument(),), limits))
        return [
            (w.start_ns, w.end_ns, float(w.amps.sum()))
            for segment in watch._segments
            for w in segment.keeper.windows
        ]

    if first and min(edges - {0}) in edges:
        cuts = [c for c in cuts if c >= min(edges - {0})]
    assert kept(edges | set(cuts)) == kept(edges)


def test_a_notch_down_to_nothing_does_not_end_the_running_but_a_loss_does():
    amps = np.full(16_000, 10.0)
    amps[4000:4008] = 0.0
    rows = rows_of(np.arange(16_000) / RATE, amps)

    def segments(gone):
        watch = RippleWatch([instrument()], Limits(inrush_window_s=0.1))
        for start, stop in pairwise((0, 4000, 4000 + gone, 16_000)):
            part = rows.part(start, stop)
            if start == 4000:
                part = rows_of(part.t_ns / 1e9, np.zeros(gone))
            watch.take_rows(part, [Stretch(0, stop - start, 4, steady=start == 0)])
        watch.views(Judged((instrument(),), Limits()))
        return [(s.start_ns, s.end_ns) for s in watch._segments]

    assert len(segments(8)) == 1
    (_, end), (start, _) = segments(800)
    assert end < 500_000_000
    assert start >= 700_000_000  # the loss, then the inrush window


def test_memory_stays_bounded_however_long_it_runs():
    watch = RippleWatch([instrument()], Limits())
    amps = np.full(8_000, 10.0)
    for second in range(200):
        part = rows_of(second + np.arange(8_000) / RATE, amps)
        watch.take_rows(part, [Stretch(0, 8_000, 4, steady=True)])
    watch._break()
    windows = watch._segments[0].keeper.windows
    assert 8 <= len(windows) <= 16
    assert windows[-1].end_ns > 150e9  # and they are spread over all of it


def test_a_slow_meter_is_told_what_rate_it_takes():
    rows = rows_of(np.arange(40) / 10.0, np.full(40, 14.0))
    (view,), findings = views_of(rows, rate_hz=10.0)
    assert findings == ()
    assert view.refusal.startswith("Too slow")
    assert view.needed_rate_hz == pytest.approx(34_500.0)
    assert view.commutation_hz is None


def test_just_below_and_at_five_thousand_a_second(bars):
    for rate, refused in ((4_900.0, True), (5_000.0, False)):
        motor = bars.BarMotor(bars=8, rpm=2000.0, rate_hz=rate)
        (view,), _ = views_of(rows_of(*bars.bar_wave(motor, 1)), rate_hz=rate)
        assert bool(view.refusal) is refused


def test_a_meter_that_averages_longer_than_a_ripple_is_refused(dead_bar):
    (view,), findings = views_of(dead_bar, integration_s=0.002)  # a ripple lasts 1.67 ms
    assert "averages over 2 ms" in view.refusal
    assert findings == ()
    assert not views_of(dead_bar, integration_s=0.001)[0][0].refusal


def test_a_held_rotor_shows_no_ripple_and_is_told_as_not_turning():
    rng = np.random.default_rng(3)
    amps = 55.0 + rng.normal(0.0, 0.05, 24_000)
    (view,), findings = views_of(rows_of(np.arange(24_000) / RATE, amps), mean=55.0)
    assert "does not turn" in view.refusal
    assert view.commutation_hz is None
    assert findings == ()


def test_a_switched_motor_voltage_is_refused_and_a_plain_one_is_not(dead_bar):
    t_s = dead_bar.t_ns / 1e9
    switched = np.where((t_s * 400.0) % 1.0 < 0.6, 12.0, 0.1)
    (view,), findings = views_of(rows_of(t_s, dead_bar.amps, switched))
    assert "switched on and off" in view.refusal
    assert findings == ()
    plain = 12.0 - 0.02 * dead_bar.amps
    (view,), _ = views_of(rows_of(t_s, dead_bar.amps, plain))
    assert view.bars == 12


def test_a_controller_stated_as_pulsed_needs_the_voltage_beside_the_current(dead_bar):
    limits = Limits(controller=Controller("pulsed"))
    (view,), _ = views_of(dead_bar, limits=limits)
    assert "stated to be a pulsed one" in view.refusal
    rows = rows_of(dead_bar.t_ns / 1e9, dead_bar.amps, 12.0 - 0.02 * dead_bar.amps)
    assert not views_of(rows, limits=limits)[0][0].refusal


def test_a_clamp_put_on_backwards_changes_nothing(dead_bar):
    (view,), _ = views_of(dead_bar)
    (turned,), _ = views_of(rows_of(dead_bar.t_ns / 1e9, -dead_bar.amps), mean=-14.0)
    assert turned == view


def test_uneven_readings_are_not_looked_at(dead_bar):
    rng = np.random.default_rng(1)
    t_s = np.sort(dead_bar.t_ns / 1e9 + rng.uniform(0.0, 2e-4, len(dead_bar)))
    (view,), _ = views_of(rows_of(t_s, dead_bar.amps))
    assert "evenly read" in view.refusal


def test_notches_down_to_nothing_are_seen_through_the_detector_from_the_start_on(bars):
    # Every half turn the detector sees the current go and come back, so its stretches are never
    # steady: the notches must not hide themselves.
    motor = bars.BarMotor(dead=(3,), depth=2.5, armature_s=2e-5, rate_hz=RATE, seconds=3.5)
    t_s, amps = bars.bar_wave(motor, 2)
    assert (amps < 0.3).mean() > 0.01
    meter, limits = instrument(), Limits(inrush_window_s=0.5)
    watch = RippleWatch([meter], limits)
    detector = SpanDetector([meter], limits, on_rows=watch.take_rows)
    detector.feed(Event(0, EventKind.SPEED, "4"))
    values = amps[:, None]
    t_ns = np.round(t_s * 1e9).astype(np.int64)
    detector.feed(Block("daq", t_ns, values, np.zeros(values.shape, np.uint8)))
    detector.finish()
    step = Step(4, 0, int(t_ns[-1]) + 1, steady_n=9, steady_mean_a=13.0)
    (view,), (finding,) = watch.views(Judged((meter,), limits, steps=(step,)))
    assert view.bars == 12
    assert [(flaw.bar, flaw.dead) for flaw in view.flaws] == [(1, True)]
    assert finding.value > 60.0


def test_without_a_current_channel_there_is_nothing_to_say():
    volts = Channel("v", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=1e-4)
    meter = Instrument("daq", "test", "-", (volts,))
    judged = Judged((meter,), Limits(), steps=(Step(4, 0, 10, steady_mean_a=1.0),))
    assert RippleWatch([meter], Limits()).views(judged) == ((), ())
