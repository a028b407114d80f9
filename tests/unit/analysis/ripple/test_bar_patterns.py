"""What is told of motors whose build and flaws are known."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis.ripple.counts import Signs, count_bars


def test_healthy_motors_are_counted_and_never_condemned(bars):
    result = bars.score(range(10), dead=False)
    assert result.flawed == 0
    assert result.turn_wrong == 0
    assert result.turn_right >= 9


def test_one_dead_bar_is_found_and_numbered(bars):
    result = bars.score(range(10), dead=True)
    assert result.found >= 9, result.missed
    assert result.refused == 0


@pytest.mark.parametrize(("count", "per_turn"), [(8, 8), (10, 10), (16, 16), (13, 26), (21, 42)])
def test_even_counts_give_a_ripple_a_bar_and_odd_counts_two(bars, count, per_turn):
    motor = bars.BarMotor(bars=count, rpm=3000.0, rate_hz=20_000.0, noise=0.05)
    view, _ = bars.watched(motor, 2)
    assert (view.bars, view.ripples_per_turn) == (count, per_turn)
    assert view.turns_rpm == pytest.approx(3000.0, rel=0.02)
    assert view.commutation_hz == pytest.approx(per_turn * view.turns_rpm / 60.0)


def test_four_brushes_pass_a_dead_bar_four_times_and_it_is_one(bars):
    motor = bars.BarMotor(bars=12, brushes=4, dead=(2,), rate_hz=12_000.0)
    view, _ = bars.watched(motor, 1)
    assert (view.bars, view.ripples_per_turn) == (12, 12)
    assert [(flaw.bar, flaw.dead) for flaw in view.flaws] == [(1, True)]


def test_two_dead_bars_are_numbered_from_the_deeper(bars):
    motor = bars.BarMotor(bars=16, dead=(3, 6), rate_hz=12_000.0, bar_scatter=0.02)
    view, _ = bars.watched(motor, 1)
    # Bar 6 is three after bar 3; counted from the other one, bar 3 is five before half a turn.
    assert [flaw.bar for flaw in view.flaws] in ([1, 4], [1, 6])
    assert all(flaw.dead for flaw in view.flaws)


def test_a_motor_without_any_mark_gets_a_frequency_and_no_speed(bars):
    even = bars.BarMotor(bar_scatter=0.0, brush_apart=0.0, wobble=0.0)
    view, findings = bars.watched(even, 3)
    assert (view.bars, view.turns_rpm, view.track_rpm) == (None, None, ())
    assert view.commutation_hz == pytest.approx(600.0, rel=0.02)
    assert "neither bars nor speed" in view.statement
    assert findings == ()


def test_a_high_hump_is_told_as_a_shorted_bar_not_as_a_dead_one(bars):
    view, (finding,) = bars.watched(bars.BarMotor(high=(2,)), 1)
    assert [flaw.dead for flaw in view.flaws] == [False]
    assert view.flaws[0].depth < -0.05
    assert "shorted" in finding.statement


def test_a_rise_and_fall_once_a_turn_is_no_bar(bars):
    view, findings = bars.watched(bars.BarMotor(wobble=0.06), 1)
    assert view.flaws == ()
    assert findings == ()
    assert "tight bearing" in view.statement
    steady, _ = bars.watched(bars.BarMotor(wobble=0.002), 1)
    assert "tight bearing" not in steady.statement


def test_bouncing_brushes_are_noise_and_no_bar(bars):
    calm, _ = bars.watched(bars.BarMotor(), 1)
    wild, findings = bars.watched(bars.BarMotor(brush_noise=0.4), 1)
    assert wild.brush_noise > 3.0 * calm.brush_noise
    assert "brushes" in wild.statement
    assert "brushes" not in calm.statement
    assert wild.flaws == ()
    assert findings == ()


def test_the_track_follows_a_speed_that_drifts(bars):
    motor = bars.BarMotor(drift=0.04, jitter=0.0, seconds=6.0, rate_hz=12_000.0)
    view, _ = bars.watched(motor, 4)
    slow = np.random.default_rng(4)
    slow.normal(0.0, 0.0, 9)
    phase = slow.uniform()
    true = 3000.0 * (1.0 + 0.04 * np.cos(2.0 * np.pi * (0.13 * np.array(view.track_s) + phase)))
    assert len(view.track_s) > 10
    assert np.abs(np.array(view.track_rpm) - true).max() < 0.01 * 3000.0
    assert np.ptp(view.track_rpm) > 60.0


def test_too_few_turns_name_no_bar(bars):
    view, findings = bars.watched(bars.BarMotor(rpm=1100.0, seconds=0.8, dead=(1,)), 1)
    assert view.flaws == ()
    assert view.profile == ()
    assert findings == ()


def test_the_deeper_notch_is_the_deeper_flaw(bars):
    base = bars.BarMotor(dead=(5,), rate_hz=12_000.0)
    depths = [
        bars.watched(replace(base, depth=depth), 2)[0].flaws[0].depth for depth in (0.3, 0.6, 0.9)
    ]
    assert depths == sorted(depths)
    assert depths[2] > 2.0 * depths[0]


def test_an_odd_count_followed_by_every_other_ripple_still_has_the_right_speed(bars):
    # The armature smooths so much that two unlike brushes' line at half the ripple is the stronger.
    motor = bars.BarMotor(
        bars=17,
        rpm=4180.0,
        rate_hz=12_500.0,
        brush_apart=0.25,
        armature_s=4e-4,
        dead=(3,),
        depth=0.7,
        noise=0.05,
    )
    view, _ = bars.watched(motor, 1)
    assert view.ripples_per_turn == 34
    assert view.turns_rpm == pytest.approx(4180.0, rel=0.02)
    assert [flaw.bar for flaw in view.flaws] == [1]


@pytest.mark.parametrize(("count", "half"), [(18, 9), (22, 11)])
@pytest.mark.parametrize("dead", [(), (3,)])
def test_where_two_counts_make_as_many_ripples_both_are_named_and_neither_is_given(
    bars, count, half, dead
):
    motor = bars.BarMotor(bars=count, rpm=2000.0, rate_hz=15_000.0, noise=0.05, dead=dead)
    view, _ = bars.watched(motor, 5)
    assert (view.bars, view.bars_confidence) == (None, None)
    assert view.ripples_per_turn == count
    assert view.turns_rpm == pytest.approx(2000.0, rel=0.02)
    assert f"{half} or {count} bars make as many" in view.statement
    assert [flaw.bar for flaw in view.flaws] == ([1] if dead else [])


def test_an_alternating_turn_is_of_an_odd_count_and_many_speeds_say_no_more_than_one():
    plain = Signs(300.0, 18, 1.0)
    once, often = count_bars([plain]), count_bars([plain] * 4)
    assert once.all == often.all == (9, 18)
    assert often.confidence == pytest.approx(once.confidence, abs=0.01)
    assert once.confidence == pytest.approx(2.0 / 3.0, abs=0.02)
    assert once.turn_confidence > 0.99
    alternating = count_bars([plain, replace(plain, alternating=True)])
    assert alternating.count.bars == 9
    assert alternating.confidence > 0.85


def test_a_ripple_that_is_nearly_gone_under_deep_notches_counts_no_bars(bars):
    # No ripple at all between the notches, only the meter's last digit.
    view, findings = bars.watched(bars.BarMotor(dead=(2,), ripple=1e-5, bar_scatter=0.0), 4)
    assert view.refusal
    assert (view.ripples_per_turn, view.bars, view.flaws) == (None, None, ())
    assert findings == ()


def test_what_the_score_calls_honest_is_what_the_wave_shows(bars):
    clear = bars.BarMotor(ripple=0.1, armature_s=1e-5, noise=0.0, drift=0.0, wobble=0.0)
    _, amps = bars.bar_wave(replace(clear, jitter=0.0), 3)
    low, high = np.percentile(amps, (2.0, 98.0))
    assert bars.shown_ripple(clear, 3) == pytest.approx((high - low) / amps.mean(), rel=0.1)
    assert bars.shown_ripple(replace(clear, armature_s=2e-3), 3) < 0.3 * bars.shown_ripple(clear, 3)
