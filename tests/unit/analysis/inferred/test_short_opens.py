"""Opens too short for the meter: inferred from what they leave, never from anything else."""

import numpy as np
import pytest

from meterlog.analysis.inferred.short_opens import ShortOpens
from meterlog.model import (
    EventKind,
    FindingKind,
    InferredKind,
    PulsedFeed,
    StartUp,
    Verdict,
)


def noisy(values, digit, sigma, rng):
    return np.round((values + rng.normal(0.0, sigma, len(values))) / digit) * digit


def shown(
    bench, opens, interval_s=0.3, window_s=0.3, phase_s=0.0, seed=1, supply=None, feed_noise=0.01
):
    """Give (instruments, items) of a fan that runs 30 s at speed 4, with opens in it."""
    rng = np.random.default_rng(seed)
    current, across = bench.turning(bench.Fan(), 30.0, opens, supply)
    t, amps = bench.averaged(current, interval_s, window_s, phase_s)
    _, volts = bench.averaged(across, interval_s, window_s, phase_s)
    columns = [noisy(amps, 0.01, 0.05, rng), noisy(volts, 0.01, feed_noise, rng)]
    instruments = [bench.instrument(interval_s, window_s, ("current", "feed"))]
    return instruments, [bench.speed(0.0, 4), bench.block(t, columns)]


def inferred(bench, instruments, items, pulsed=(), startups=(), lim=None):
    follower = bench.follow(ShortOpens(instruments, lim or bench.limits()), instruments, items, lim)
    return follower.found(bench.judged(instruments, items, lim), pulsed, startups)


@pytest.mark.parametrize(
    ("interval_s", "window_s", "open_s"),
    [
        (0.3, 0.3, 0.05), (0.3, 0.3, 0.2), (0.1, 0.1, 0.02), (0.1, 0.1, 0.08),
        (0.02, 0.02, 0.005), (0.02, 0.02, 0.012), (0.4, 0.3, 0.1), (0.2, 0.1, 0.06),
    ],
)  # fmt: skip
@pytest.mark.parametrize("part", [0.05, 0.6])
def test_the_true_length_of_an_open_is_within_the_bounds(bench, interval_s, window_s, open_s, part):
    at = 20.0 + part * interval_s
    instruments, items = shown(bench, [(at, open_s)], interval_s, window_s)
    (one,) = inferred(bench, instruments, items).inferred
    assert one.open_s[0] <= open_s <= one.open_s[1]
    assert abs(one.start_ns / 1e9 - at) < 2.5 * interval_s + window_s
    assert one.speed == 4


def test_a_dip_is_told_as_consistent_with_an_open_and_never_as_a_zero(bench):
    instruments, items = shown(bench, [(20.05, 0.05)])
    found = inferred(bench, instruments, items)
    (one,), (finding,) = found.inferred, found.findings
    assert one.kind is InferredKind.DIP
    assert one.seen_a < 0.95 * one.base_a
    assert "consistent with an open of about" in one.statement
    assert "not a measured zero" in one.statement
    assert "the feed held" in one.statement
    assert finding.kind is FindingKind.DIP
    assert finding.verdict is Verdict.CANT_TELL
    assert finding.value == one.seen_a


def test_an_open_in_the_dead_time_of_a_meter_is_told_by_its_restart(bench):
    # A reading takes the first 0.1 s of every 0.2 s; the open is over when the next begins.
    instruments, items = shown(bench, [(20.13, 0.06)], 0.2, 0.1)
    found = inferred(bench, instruments, items)
    (one,) = found.inferred
    assert one.kind is InferredKind.RESTART_PEAK
    assert one.seen_a > one.base_a
    assert "likely" not in one.statement
    assert "missed dropout" in one.statement
    assert found.findings[0].kind is FindingKind.MISSED_DROPOUT
    assert one.open_s[0] <= 0.06 <= one.open_s[1]


def test_a_restart_seen_in_the_same_run_narrows_the_bounds(bench):
    # A reading takes the first 10 ms of every tenth of a second; the open is between two.
    case = shown(bench, [(20.025, 0.06)], 0.1, 0.01)
    (wide,) = inferred(bench, *case).inferred
    start = StartUp(0, 0, 4, "command", 62.0, 1.0, 0.005, False, 16.0, 3.85, 0.5, 0.01, 100.0, 1.0)
    (near,) = inferred(bench, *case, startups=[start]).inferred
    assert near.kind is InferredKind.RESTART_PEAK
    assert near.open_s[0] <= 0.06 <= near.open_s[1]
    assert wide.open_s[0] < near.open_s[0]
    assert near.open_s[1] <= wide.open_s[1]
    assert "start-up seen at 0.0 s" in near.statement
    assert "in general" in wide.statement
    other = StartUp(0, 0, 2, "command", 9.0, 1.0, 0.005, False, 6.0, 1.5, 0.5, 0.01, 100.0, 1.0)
    assert inferred(bench, *case, startups=[other]).inferred == (wide,)


def test_a_tap_shortly_before_is_told_with_it(bench):
    instruments, items = shown(bench, [(20.05, 0.05)])
    tap = bench.event(19.5, EventKind.TAP)
    (one,) = inferred(bench, instruments, [items[0], tap, items[1]]).inferred
    assert one.after_tap_s == pytest.approx(0.6, abs=0.31)
    assert "after a tap" in one.statement


def test_a_sag_of_the_supply_is_the_supplys(bench):
    supply = np.full(40_000, 13.9)
    supply[20_000:20_150] = 12.0
    instruments, items = shown(bench, [], supply=supply)
    found = inferred(bench, instruments, items)
    assert not found.inferred
    assert any("supply side" in note and "not the motor" in note for note in found.notes)


def test_a_rise_of_the_supply_is_no_restart(bench):
    supply = np.full(40_000, 13.9)
    supply[20_000:20_150] = 14.9
    instruments, items = shown(bench, [], interval_s=0.4, supply=supply)
    assert not inferred(bench, instruments, items).inferred


@pytest.mark.parametrize(("change_v", "seed"), [(0.4, 1), (0.4, 4)])
def test_a_small_step_of_the_supply_that_stays_is_the_supplys_too(bench, change_v, seed):
    # The motor draws more, or less, until it has gathered speed. One reading of this feed is too
    # noisy to tell; its new level is not.
    supply = np.full(40_000, 13.9)
    supply[20_010:] += change_v
    how = {"supply": supply, "seed": seed, "feed_noise": 0.1}
    instruments, items = shown(bench, [], 0.2, 0.03, **how)
    found = inferred(bench, instruments, items)
    assert not found.inferred
    assert any("supply side" in note for note in found.notes)
    blind = [bench.instrument(0.2, 0.03)]
    block = items[1]
    bare = bench.block(block.t_ns / 1e9, [block.values[:, 0]])
    assert inferred(bench, blind, [items[0], bare]).inferred


def test_a_missed_open_beside_a_step_of_the_supply_too_small_to_explain_it_is_told(bench):
    supply = np.full(40_000, 13.9)
    supply[20_010:] += 0.05
    instruments, items = shown(bench, [(20.02, 0.1)], supply=supply)
    assert inferred(bench, instruments, items).inferred


def test_a_slow_sag_is_no_dip_even_where_the_feed_is_not_read(bench):
    supply = 13.9 - 1.5 * np.exp(-(((np.arange(40_000) - 20_000) / 4000.0) ** 2))
    instruments, items = shown(bench, [], supply=supply)
    alone = [bench.instrument(0.3, 0.3)]
    block = items[1]
    bare = bench.block(block.t_ns / 1e9, [block.values[:, 0]])
    assert not inferred(bench, alone, [items[0], bare]).inferred
    assert not inferred(bench, instruments, items).inferred


def readings(bench, amps, interval_s=0.4, window_s=0.3, events=(), **more):
    instruments = [bench.instrument(interval_s, window_s, **more)]
    t = interval_s * (1.0 + np.arange(len(amps)))
    return instruments, [bench.speed(0.0, 4), *events, bench.block(t, [amps])]


def steady(count=120, level=10.0, seed=3):
    return noisy(np.full(count, level), 0.01, 0.03, np.random.default_rng(seed))


def test_a_change_of_level_is_no_dip_with_or_without_a_command(bench):
    amps = steady()
    amps[60:] -= 2.0
    assert not inferred(bench, *readings(bench, amps)).inferred
    command = [bench.speed(60 * 0.4 + 0.2, 3)]
    assert not inferred(bench, *readings(bench, amps, events=command)).inferred


def test_a_dip_right_after_a_command_is_the_commands(bench):
    amps = steady()
    amps[60] = 7.5
    assert len(inferred(bench, *readings(bench, amps)).inferred) == 1
    command = [bench.speed(60 * 0.4, 3)]
    assert not inferred(bench, *readings(bench, amps, events=command)).inferred


def test_a_longer_low_stretch_is_no_short_open(bench):
    amps = steady()
    amps[60:65] = 7.5
    assert not inferred(bench, *readings(bench, amps)).inferred


def test_readings_beside_a_change_of_range_are_not_looked_at(bench):
    amps = steady()
    amps[60] = 7.5
    change = [bench.event(61 * 0.4, EventKind.RANGE, "range 60 A", "meter")]
    assert not inferred(bench, *readings(bench, amps, events=change)).inferred
    other = [bench.event(61 * 0.4, EventKind.RANGE, "range 60 V", "volts")]
    assert len(inferred(bench, *readings(bench, amps, events=other)).inferred) == 1


def test_nothing_is_inferred_in_a_pulsed_stretch(bench):
    amps = steady()
    amps[60] = 7.5
    pulsed = PulsedFeed(0, 2**62, 4, None, None, None, None, None, None, "")
    assert not inferred(bench, *readings(bench, amps), pulsed=[pulsed]).inferred


def test_a_dropout_that_was_seen_is_not_inferred_again(bench):
    instruments, items = shown(bench, [(20.0, 1.5)])
    found = inferred(bench, instruments, items)
    assert any(span.kind.is_fault for span in bench.judged(instruments, items).spans)
    assert not found.inferred


def test_one_high_reading_of_a_quick_meter_is_a_glitch_and_two_that_fall_are_not(bench):
    amps = steady(2000)
    amps[1000] = 11.5
    assert not inferred(bench, *readings(bench, amps, 0.02, 0.0)).inferred
    amps[1000:1060] = 10.0 + 0.5 * np.exp(-np.arange(60) * 0.02 / 0.15)
    (one,) = inferred(bench, *readings(bench, amps, 0.02, 0.0)).inferred
    assert one.kind is InferredKind.RESTART_PEAK


def test_a_display_without_noise_needs_more_than_its_last_digit(bench):
    amps = np.full(120, 1.0)
    amps[60] = 0.9
    assert not inferred(bench, *readings(bench, amps, digit=0.1)).inferred
    amps[60] = 0.5
    (one,) = inferred(bench, *readings(bench, amps, digit=0.1)).inferred
    assert one.sigmas == pytest.approx(10.0, rel=0.05)  # half a digit each


def test_fast_slow_and_typed_meters_are_left_alone(bench):
    amps = steady()
    amps[60] = 7.5
    assert not inferred(bench, *readings(bench, amps, 0.002, 0.002)).inferred
    assert not inferred(bench, *readings(bench, amps, 5.0, 0.3)).inferred


def test_without_voltage_it_says_what_is_not_excluded(bench):
    amps = steady()
    amps[60] = 7.5
    (one,) = inferred(bench, *readings(bench, amps)).inferred
    assert "sag of the supply is not excluded" in one.statement


def test_a_return_that_rises_with_a_dip_points_to_the_ground_side(bench):
    amps, rng = steady(), np.random.default_rng(5)
    feed, back = (noisy(np.full(120, v), 0.01, 0.01, rng) for v in (12.3, 0.2))
    amps[60], back[60] = 7.5, 2.5
    instruments = [bench.instrument(0.4, 0.3, ("current", "feed", "return"))]
    block = bench.block(0.4 * (1.0 + np.arange(120)), [amps, feed, back])
    (one,) = inferred(bench, instruments, [bench.speed(0.0, 4), block]).inferred
    assert "the ground side, not the motor" in one.statement
