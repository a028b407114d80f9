"""The detection score: is its motor a motor, does its scorer see, and a small score."""

import importlib
import sys
from collections import Counter
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from meterlog.model import Finding, FindingKind, SpanKind, SpeedLimits, Verdict

FOLDER = Path(__file__).resolve().parents[2] / "benchmarks" / "detection"
NAMES = (
    *("fan", "circuit", "pulses", "scene", "score", "figures", "story", "true_trace"),
    "verdict_check",
)
# Fast meters, two meters and loose probes, each once told wrongly, beside runs as they come.
HARD = (100_003, 100_006, 100_024, 100_115, 100_158, 700_005)
MIXED = (*range(200_000, 200_010), *HARD)
SOUND, CLOSE = (*range(500_200_000, 500_200_004), 500_100_182, 500_100_197), range(7, 17)


@pytest.fixture(scope="module")
def kit():
    sys.path.insert(0, str(FOLDER))
    try:
        found = {name: importlib.import_module(name) for name in NAMES}
    finally:
        sys.path.remove(str(FOLDER))
    return type("Kit", (), found)


@pytest.fixture(scope="module")
def fan(kit):
    return kit.fan.Fan(0.026, 0.16, 1.2, 0.03, 3e-6, 8e-4, 2e-4)


@pytest.fixture(scope="module")
def faulty(kit):
    """A run with visible dropouts that the program tells rightly, and its review."""
    for seed in range(50):
        scene = kit.scene.make(seed)
        review = kit.score.reviewed(scene)
        counts = kit.score.Scorer(scene, review).score().counts
        if counts["visible"] >= 2 and counts["told"] >= 2 and counts["edges"] >= 4:
            return scene, review, counts
    raise AssertionError("no run with two dropouts told rightly")


# -- the motor that the runs are made of --


@pytest.mark.parametrize("w0", [0.0, 120.0, 330.0])
def test_the_driven_fan_turns_as_numerical_integration_says(fan, w0):
    volts, ohms = 11.0, 0.21

    def slope(_, w):
        torque = fan.emf * (volts - fan.emf * w) / ohms
        return (torque - fan.friction - fan.air * w**2) / fan.inertia

    t = np.linspace(0.0, 3.0, 31)
    expected = solve_ivp(slope, (0.0, 3.0), [w0], t_eval=t, rtol=1e-9, atol=1e-9).y[0]
    assert fan.driven(w0, volts, ohms, t) == pytest.approx(expected, rel=1e-6, abs=1e-6)


def test_the_coasting_fan_slows_as_numerical_integration_says_and_never_turns_back(fan):
    t = np.linspace(0.0, 2.0, 21)

    def slope(_, w):
        return -(fan.friction + fan.air * w**2) / fan.inertia

    expected = solve_ivp(slope, (0.0, 2.0), [330.0], t_eval=t, rtol=1e-9, atol=1e-9).y[0]
    assert fan.coasting(330.0, t) == pytest.approx(expected, rel=1e-6)
    assert fan.coasting(330.0, np.array(600.0)) == 0.0
    there = fan.coast_s(330.0, 150.0)
    assert fan.coasting(330.0, np.array(there)) == pytest.approx(150.0)


@pytest.mark.parametrize("duty", [0.3, 0.8])
def test_pulsed_current_repeats_as_stepping_through_the_pulses_does(kit, fan, duty):
    circuit = kit.circuit.Circuit(
        kit.circuit.Form.LOW_PULSED, fan, 0.02, 0.02, 0.01, (0.5, 0.6, 0.8, 1.0), 250.0
    )
    line, own = kit.circuit.Line(11.5, 0.21, duty), 4.0
    step = 1.0 / circuit.hertz / 4000
    amps, last = 0.0, []
    for turn in range(20):
        for k in range(4000):
            on = k < duty * 4000
            pull = line.volts - own if on else -(own + fan.brush + kit.circuit.DIODE_V)
            amps = max(amps + step * (pull - line.ohms * amps) / fan.henry, 0.0)
            if turn == 19:
                last.append(amps)
    phase = np.arange(1, 4001) / 4000
    seen = kit.pulses.within_period(circuit, line, np.full(4000, own), phase % 1.0)[0]
    assert seen[:-1] == pytest.approx(np.array(last)[:-1], abs=0.02)


def test_an_open_circuit_carries_nothing_and_each_kind_shows_its_own_voltages(kit):
    kinds = kit.circuit.State
    seen = Counter()
    for seed in range(8):
        scene = kit.scene.make(seed)
        for one in scene.dropouts:
            if one.length < 0.02:
                continue
            middle = np.array([(one.start + one.end) / 2.0])
            amps, feed, back = (float(x[0]) for x in scene.trace.at(middle, instant=True))
            before = float(scene.trace.at(np.array([one.start - 0.01]), instant=False)[0][0])
            assert amps == pytest.approx(0.0, abs=1e-6)
            assert before > 0.5
            if one.state is kinds.FEED_OPEN:
                assert back < 0.1
            elif one.state is kinds.GROUND_OPEN and scene.circuit.low_side:
                assert feed > 11.0
                assert back > 0.05 * feed
            elif one.state is kinds.MOTOR_OPEN:
                assert feed - back > 0.95 * feed
            seen[one.state] += 1
    assert len(seen) == 3


def test_a_seed_gives_the_same_run_each_time_and_another_seed_another(kit):
    def readings(seed):
        return [
            block.values.tobytes() for block in (read.block for read in kit.scene.make(seed).reads)
        ]

    assert readings(3) == readings(3)
    assert readings(3) != readings(4)


def test_blocks_hold_every_reading_once_and_come_in_order(kit):
    scene = kit.scene.make(11)
    for read in scene.reads:
        key = read.block.source
        parts = [
            x.t_ns for x in scene.items() if getattr(x, "source", "") == key and hasattr(x, "flags")
        ]
        assert np.array_equal(np.concatenate(parts), read.block.t_ns)


# -- does the scorer see what is wrong? --


def rescored(kit, faulty, change):
    scene, review, _ = faulty
    return kit.score.Scorer(scene, change(review)).score().counts


def test_a_dropout_that_is_not_told_is_missed(kit, faulty):
    def silent(review):
        kept = tuple(
            replace(s, kind=SpanKind.RUNNING) if s.kind in kit.score.GONE else s
            for s in review.spans
        )
        return replace(review, spans=kept)

    counts = rescored(kit, faulty, silent)
    assert counts["visible"] == faulty[2]["visible"]
    assert counts["found"] == 0


def test_another_side_is_a_wrong_blame(kit, faulty):
    other = {
        SpanKind.DEAD: SpanKind.FEED_LOST,
        SpanKind.FEED_LOST: SpanKind.GROUND_LOST,
        SpanKind.GROUND_LOST: SpanKind.DEAD,
    }

    def wrong(review):
        return replace(
            review, spans=tuple(replace(s, kind=other.get(s.kind, s.kind)) for s in review.spans)
        )

    counts = rescored(kit, faulty, wrong)
    assert counts["told"] == 0
    assert counts["blamed wrongly"] >= 2


@pytest.mark.parametrize("sign", [-1, 1])
def test_edges_two_intervals_off_are_not_close(kit, faulty, sign):
    scorer = kit.score.Scorer(*faulty[:2])
    off_ns = sign * round(2.2 * scorer.reach * 1e9)

    def moved(review):
        return replace(
            review,
            spans=tuple(
                replace(s, start_ns=s.start_ns + off_ns, end_ns=s.end_ns + off_ns)
                if s.kind in kit.score.GONE
                else s
                for s in review.spans
            ),
        )

    counts = rescored(kit, faulty, moved)
    assert faulty[2]["edges close"] == faulty[2]["edges"]
    assert counts["edges close"] == 0


def test_a_fault_told_where_the_fan_ran_is_a_false_alarm(kit, faulty):
    scene = faulty[0]
    grid = np.arange(1.0, scene.story.length - 1.0, 0.25)
    free = next(
        at
        for at in grid
        if scene.story.speed_at(at) > 0
        and all(at < one.start - 1.0 or at > one.end + 1.0 for one in scene.dropouts)
    )

    def alarmed(review):
        added = replace(
            review.spans[0],
            kind=SpanKind.DEAD,
            start_ns=round(free * 1e9),
            end_ns=round((free + 0.1) * 1e9),
        )
        return replace(review, spans=(*review.spans, added))

    counts = rescored(kit, faulty, alarmed)
    assert counts["false alarms"] == faulty[2]["false alarms"] + 1


@pytest.fixture(scope="module")
def two_speeds(kit):
    """A run with limits laid near the truth in which two speeds were measured, and its review."""
    for seed in range(700_000_007, 700_000_100):
        scene = kit.scene.make(seed, kit.scene.Sort.CLOSE)
        if len({one.speed for one in scene.story.commands if one.speed}) < 2:
            continue
        review = kit.score.reviewed(scene)
        if len({step.speed for step in review.steps if step.speed and step.steady_n > 9}) > 1:
            return scene, review
    raise AssertionError("no run with two speeds")


@pytest.mark.parametrize("part", [0.9, 1.1])
def test_drag_told_of_two_speeds_is_an_alarm_unless_both_truly_drew_more_than_they_may(
    kit, two_speeds, part
):
    scene, review = two_speeds
    drew = {
        step.speed: truth
        for step in review.steps
        if step.speed and (truth := kit.verdict_check.true_mean(scene, step)) is not None
    }
    speeds = {speed: SpeedLimits(None, part * truth) for speed, truth in drew.items()}
    assert len(speeds) > 1
    told = Finding(
        FindingKind.DRAG, Verdict.FAIL, 0, 10**9, 0, None, "A", None, None, min(speeds), "Too much."
    )
    scene = replace(scene, limits=replace(scene.limits, speeds=speeds))
    one = replace(review, findings=(told,), spans=())
    before = kit.score.Scorer(scene, replace(one, findings=())).score().counts["false alarms"]
    alarms = kit.score.Scorer(scene, one).score().counts["false alarms"]
    assert alarms == before + (part > 1.0)


def test_a_dropout_too_short_to_be_seen_is_not_held_against_the_program(kit, faulty):
    counts = rescored(kit, faulty, lambda review: replace(review, shortest_visible_dropout_s=100.0))
    assert counts["dropouts"] == faulty[2]["dropouts"]
    assert counts["visible"] == counts["found"] == 0


def test_the_gap_is_nothing_where_the_stated_comes_true_and_all_where_never(kit):
    true = [(0.25, k < 25) for k in range(100)] + [(0.8, k < 80) for k in range(100)]
    assert kit.figures.mean_gap(true) == pytest.approx(0.0)
    assert kit.figures.mean_gap([(0.9, False)] * 10) == pytest.approx(0.9)
    assert [count for *_, count in kit.figures.bins([(0.0, False), (1.0, True), (1.0, True)])] == [
        1,
        2,
    ]


# -- a small score --


@pytest.fixture(scope="module")
def totals(kit):
    result = {}
    for sort, seeds in (
        (kit.scene.Sort.MIXED, MIXED),
        (kit.scene.Sort.SOUND, SOUND),
        (kit.scene.Sort.CLOSE, CLOSE),
    ):
        result[sort] = kit.score.Outcome()
        for seed in seeds:
            result[sort].add(kit.score.score(kit.scene.make(seed, sort)))
    return result


def test_every_visible_dropout_of_the_small_score_is_found_with_its_edges(kit, totals):
    counts = totals[kit.scene.Sort.MIXED].counts
    assert counts["visible"] >= 10
    assert counts["found"] == counts["visible"]
    assert counts["edges"] >= 24
    assert counts["edges close"] >= 0.99 * counts["edges"]


def test_the_side_is_told_right_and_no_other_blamed_in_the_small_score(kit, totals):
    counts = totals[kit.scene.Sort.MIXED].counts
    assert counts["tellable"] >= 12
    assert counts["told"] == counts["tellable"]
    assert counts["blamed"] >= counts["tellable"]
    assert counts["blamed wrongly"] == 0


def test_nothing_is_told_of_sound_running_in_the_small_score(kit, totals):
    mixed, sound = (totals[sort] for sort in (kit.scene.Sort.MIXED, kit.scene.Sort.SOUND))
    assert mixed.counts["healthy runs"] + sound.counts["healthy runs"] >= 8
    assert mixed.hours + sound.hours > 0.3
    for counts in (mixed.counts, sound.counts):
        assert counts["false alarms"] == 0
        assert counts["healthy condemned"] == 0
        assert counts["dropouts told as excess"] == 0


def test_stated_uncertainty_and_probability_of_the_small_score_hold(kit, totals):
    stated = totals[kit.scene.Sort.CLOSE].stated
    inside = [one.inside for one in stated if one.inside is not None]
    assert len(inside) >= 25
    assert np.mean(inside) >= 0.85
    passed = [one.conforms for one in stated if one.verdict.value == "pass"]
    assert np.mean(passed) >= 0.9
    probabilities = [(one.probability, one.conforms) for one in stated]
    assert kit.figures.mean_gap(probabilities) <= 0.2


def test_the_report_names_every_figure_with_its_target(kit, totals):
    text = "\n".join(kit.figures.report(totals))
    for word in ("visible dropouts found", "false alarms in 10 h", "sound motors condemned"):
        assert word in text
    assert "probability of conformity, step currents" in text
