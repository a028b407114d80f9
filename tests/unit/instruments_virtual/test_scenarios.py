"""The shape of every scenario: what each speed shows, and what is true when.

Volts and amperes are those of common practice for a medium 12 V fan on 12.4 V (computed, no
source), ±0.3 V and ±20 %.
"""

import functools

import numpy as np
import pytest

from meterlog.instruments.virtual import INVENTED, SCENARIOS, find_scenario, simulate
from meterlog.model import EventKind, SpanKind
from meterlog.model.errors import UsageError

HEALTHY = ("healthy-old", "healthy-new")
NORMAL = {
    "1": (12.3, 6.7, 3.6),
    "2": (12.2, 5.0, 5.7),
    "3": (12.1, 2.9, 8.9),
    "4": (12.0, 0.16, 13.6),
}
BAD_FEED = {"1": (11.8, 6.1, 3.5), "4": (10.5, 0.13, 10.7)}
SEIZED = {"4": (10.7, 0.67, 55.0)}


@functools.cache
def run(name, seed=1):
    return simulate(name, seed)


def truth(sim, kind):
    return [span for span in sim.truth if span.kind is kind]


def settled(sim, speed):
    """Mean of feed, return and current over the last second of a speed."""
    commands = [event for event in sim.events if event.kind is EventKind.SPEED]
    at = next(i for i, event in enumerate(commands) if event.value == speed)
    end_ns = commands[at + 1].t_ns
    inside = (sim.block.t_ns > end_ns - 1_000_000_000) & (sim.block.t_ns < end_ns - 50_000_000)
    return sim.block.values[inside].mean(axis=0)


@pytest.mark.parametrize(
    ("name", "speed", "expected"),
    [
        *[(name, speed, row) for name in HEALTHY for speed, row in NORMAL.items()],
        *[("bad-feed-connector", speed, row) for speed, row in BAD_FEED.items()],
        *[("seized", speed, row) for speed, row in SEIZED.items()],
        ("dead-spot", "4", NORMAL["4"]),
        ("feed-lost", "2", NORMAL["2"]),
        ("ground-lost", "2", NORMAL["2"]),
    ],
)
def test_each_speed_shows_the_volts_and_amperes_of_the_trade(name, speed, expected):
    feed, back, current = settled(run(name), speed)
    assert feed == pytest.approx(expected[0], abs=0.3)
    assert back == pytest.approx(expected[1], abs=0.3)
    assert current == pytest.approx(expected[2], rel=0.2)


@pytest.mark.parametrize("name", SCENARIOS)
def test_truth_is_whole_touching_and_follows_the_commands(name):
    sim = run(name)
    assert sim.truth[0].start_s == 0.0
    assert sim.truth[-1].end_s == pytest.approx(sim.scenario.seconds)
    for before, after in zip(sim.truth, sim.truth[1:], strict=False):
        assert before.end_s == after.start_s
        assert before.kind is not after.kind
    first_on = next(e for e in sim.events if e.kind is EventKind.SPEED and e.value != "0")
    last_off = [e for e in sim.events if e.kind is EventKind.SPEED][-1]
    assert sim.truth[0].kind is sim.truth[-1].kind is SpanKind.OFF
    assert sim.truth[0].end_s == pytest.approx(first_on.t_ns * 1e-9, abs=3e-4)
    assert sim.truth[-1].start_s == pytest.approx(last_off.t_ns * 1e-9, abs=3e-4)


@pytest.mark.parametrize("name", SCENARIOS)
def test_names_are_invented_and_say_so(name):
    scenario = find_scenario(name)
    assert "(invented)" in scenario.vehicle
    assert "(invented)" in scenario.part
    assert "invented" in INVENTED
    assert scenario.script[0].elapsed_s == 0.0
    assert [h.elapsed_s for h in scenario.script] == sorted(h.elapsed_s for h in scenario.script)
    assert scenario.script[-1].elapsed_s < scenario.seconds


def test_healthy_fans_never_lose_current_while_they_are_on():
    for name in HEALTHY:
        for seed in range(1, 4):
            sim = simulate(name, seed, interval_s=0.01, integration_s=0.01)
            assert [span.kind for span in sim.truth] == ["off", "running", "off"]
            on = (sim.block.t_ns > 2_020_000_000) & (sim.block.t_ns < 21_990_000_000)
            assert sim.block.values[on, 2].min() > 2.0


def test_a_worn_motor_stalls_on_low_and_draws_too_much_on_all_other_speeds():
    for seed in range(1, 4):
        sim = run("worn", seed)
        (stalled,) = truth(sim, SpanKind.LOCKED)
        assert (round(stalled.start_s, 2), round(stalled.end_s, 2)) == (2.0, 7.0)
        for speed, most in (("2", 8.0), ("3", 12.5), ("4", 18.0)):
            assert settled(sim, speed)[2] > most


def test_dead_spots_last_and_end_with_a_tap_whatever_the_seed():
    for seed in range(1, 9):
        sim = run("dead-spot", seed)
        dead = truth(sim, SpanKind.DEAD)
        assert len(dead) == 4
        taps = [event.t_ns * 1e-9 for event in sim.events if event.kind is EventKind.TAP]
        for span, tap_s in zip(dead, taps, strict=True):
            assert span.end_s - span.start_s >= 0.4
            assert -3e-4 <= span.end_s - tap_s < 0.01


def test_dead_spots_begin_at_other_times_with_other_seeds():
    starts = {
        round(truth(run("dead-spot", seed), SpanKind.DEAD)[1].start_s, 2) for seed in range(1, 9)
    }
    assert len(starts) > 5


def test_in_a_dead_spot_the_supply_stands_across_the_motor_and_no_current_flows():
    sim = run("dead-spot")
    for span in truth(sim, SpanKind.DEAD):
        inside = (sim.block.t_ns > (span.start_s + 0.08) * 1e9) & (
            sim.block.t_ns < (span.end_s - 0.03) * 1e9
        )
        feed, back, current = sim.block.values[inside].T
        assert inside.sum() > 5
        assert (feed - back).min() > 12.2
        assert np.abs(current).max() < 0.15


def test_a_seized_motor_is_locked_at_every_speed_and_draws_50_amperes_on_full():
    sim = run("seized")
    assert [span.kind for span in sim.truth] == ["off", "locked", "off"]
    assert 50.0 < settled(sim, "4")[2] < 56.0


def test_a_lost_feed_decays_through_the_coasting_motor():
    for seed in range(1, 4):
        sim = run("feed-lost", seed)
        lost = truth(sim, SpanKind.FEED_LOST)
        assert len(lost) >= 1
        first = lost[0]
        at = np.searchsorted(sim.block.t_ns, (first.start_s + 0.06) * 1e9)
        late = np.searchsorted(sim.block.t_ns, (first.start_s + 1.2) * 1e9)
        assert 6.0 < sim.block.values[at, 0] < 9.3
        assert 1.0 < sim.block.values[late, 0] < 4.0
        assert np.abs(sim.block.values[at:late, 2]).max() < 0.15


def test_a_lost_ground_lifts_the_return_to_the_feed():
    for seed in range(1, 4):
        sim = run("ground-lost", seed)
        first = truth(sim, SpanKind.GROUND_LOST)[0]
        at = np.searchsorted(sim.block.t_ns, (first.start_s + 0.06) * 1e9)
        late = np.searchsorted(sim.block.t_ns, (first.end_s - 0.1) * 1e9)
        assert 3.0 < sim.block.values[at, 1] < 7.0
        assert sim.block.values[late, 1] > 10.0
        assert sim.block.values[at:late, 0].min() > 12.3
        assert np.abs(sim.block.values[at:late, 2]).max() < 0.15


def test_a_bad_feed_connector_opens_when_shaken():
    sim = run("bad-feed-connector")
    taps = [event.t_ns * 1e-9 for event in sim.events if event.kind is EventKind.TAP]
    lost = truth(sim, SpanKind.FEED_LOST)
    for tap_s in taps:
        assert any(span.start_s - 1e-3 <= tap_s < span.end_s for span in lost)


def test_an_unknown_scenario_gets_the_nearest_name():
    with pytest.raises(UsageError, match="Did you mean 'dead-spot'"):
        find_scenario("deadspot")
