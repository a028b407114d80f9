"""What is found on the virtual bench against what the bench knows it did, over many seeds."""

import json
from datetime import datetime
from itertools import pairwise

import pytest

from meterlog.analysis import Reviewer
from meterlog.instruments.virtual import simulate
from meterlog.model import FindingKind, Outcome, SpanKind, Verdict
from meterlog.profile import load_limits, load_meter
from meterlog.recording import Recording
from meterlog.work.bench_process import BenchProcess

LOSSES = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)
SEEDS = range(1, 9)


def reviewed(scenario, seed, **meter):
    done = simulate(scenario, seed, **meter)
    reviewer = Reviewer([done.instrument], load_limits("linear-12v"))
    for event in done.events:
        reviewer.feed(event)
    reviewer.feed(done.block)
    return done, reviewer.finish()


def losses_of(done):
    return [span for span in done.truth if span.kind in LOSSES]


@pytest.mark.slow
@pytest.mark.parametrize("seed", SEEDS)
def test_each_dead_segment_is_found_within_one_interval_of_the_truth(seed):
    done, result = reviewed("dead-spot", seed, meter=load_meter("line-logger"))
    truth = losses_of(done)
    found = [span for span in result.spans if span.kind in LOSSES]
    interval_s = done.instrument.channels[0].interval_s
    assert len(truth) >= 2
    assert [span.kind for span in found] == [span.kind for span in truth]
    for seen, real in zip(found, truth, strict=True):
        assert seen.start_ns / 1e9 == pytest.approx(real.start_s, abs=interval_s)
        assert seen.end_ns / 1e9 == pytest.approx(real.end_s, abs=interval_s)
    dead = [finding for finding in result.findings if finding.kind is FindingKind.DEAD]
    assert all(finding.verdict is Verdict.FAIL for finding in dead)


@pytest.mark.slow
@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("scenario", ["healthy-old", "healthy-new"])
def test_a_healthy_fan_has_no_fault_and_passes_at_every_speed(scenario, seed):
    _, result = reviewed(scenario, seed, meter=load_meter("line-logger"))
    assert {span.kind for span in result.spans} == {SpanKind.OFF, SpanKind.RUNNING}
    assert {finding.verdict for finding in result.findings} == {Verdict.PASS}
    steps = [f.speed for f in result.findings if f.kind is FindingKind.STEP_CURRENT]
    assert steps == [1, 2, 3, 4]
    assert result.verdict.outcome is Outcome.IN_ORDER


@pytest.mark.parametrize("interval_s", [0.005, 0.1, 0.33])
@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("scenario", ["dead-spot", "feed-lost", "ground-lost"])
def test_the_side_is_right_and_the_edges_within_one_interval_at_every_rate(
    scenario, seed, interval_s
):
    done, result = reviewed(scenario, seed, interval_s=interval_s)
    truth = losses_of(done)
    found = [span for span in result.spans if span.kind in LOSSES]
    assert [span.kind for span in found] == [span.kind for span in truth]
    for seen, real in zip(found, truth, strict=True):
        assert seen.start_ns / 1e9 == pytest.approx(real.start_s, abs=interval_s)
        assert seen.end_ns / 1e9 == pytest.approx(real.end_s, abs=interval_s)


def test_a_seized_motor_is_locked_at_every_speed():
    _, result = reviewed("seized", 1, interval_s=0.02)
    kinds = {(span.kind, span.speed) for span in result.spans}
    assert {(SpanKind.LOCKED, speed) for speed in (1, 2, 3, 4)} <= kinds
    assert SpanKind.OVER not in {kind for kind, _ in kinds}


def test_a_worn_motor_draws_too_much_at_every_speed():
    _, result = reviewed("worn", 1, interval_s=0.02)
    verdicts = {f.speed: f.verdict for f in result.findings if f.kind is FindingKind.STEP_CURRENT}
    assert verdicts[1] is Verdict.FAIL
    assert verdicts[4] is Verdict.FAIL


def test_a_bad_feed_connector_blames_the_feed_and_never_the_motor():
    for seed in (1, 2, 3):
        _, result = reviewed("bad-feed-connector", seed, interval_s=0.02)
        kinds = [span.kind for span in result.spans]
        assert SpanKind.FEED_LOST in kinds
        assert SpanKind.DEAD not in kinds


@pytest.mark.pty
@pytest.mark.slow
def test_an_unplugged_meter_costs_its_own_readings_only_and_for_as_long_as_it_was_away(
    shell, tmp_path
):
    truth, link, folder = tmp_path / "truth.json", tmp_path / "logger", tmp_path / "recording"
    plan = ["--truth", str(truth), "--link", f"line-logger={link}"]
    plan += ["--probe", "volts=battery", "--at", "2.5", "unplug line-logger 0.8"]
    with BenchProcess(["line-logger", "panel-meter"], "healthy-new", 1, None, plan) as bench:
        addresses = bench.addresses()
        recorder = shell.begin(
            "record", "--out", folder, "--seconds", "5", "--limits", "linear-12v",
            "--meter", f"line-logger@{addresses['line-logger']}",
            "--meter", f"panel-meter@{addresses['panel-meter']}",
            "--assign", "motor-feed=line-logger.feed",
            "--assign", "motor-return=line-logger.return",
            "--assign", "motor-current=line-logger.current",
            "--assign", "battery=panel-meter.volts",
        )  # fmt: skip
        out, errors = recorder.communicate(timeout=240)
    assert recorder.returncode == 0, errors
    assert out.startswith("complete: ")
    kept = json.loads(truth.read_text())
    away = {one["kind"]: one["elapsed_s"] for one in kept["meter_happenings"]}
    assert away == {"unplug": 2.5, "plugged": pytest.approx(3.3, abs=0.05)}
    recording = Recording.open(folder)
    zero_utc = datetime.fromisoformat(kept["zero_utc"])
    later_s = (zero_utc - recording.about.started_utc).total_seconds()
    (gap,) = [s for s in shell.json("review", folder)["spans"] if s["kind"] == "no-data"]
    assert gap["start_s"] - later_s == pytest.approx(away["unplug"], abs=0.1)
    # Reading goes on within a second of the meter's return.
    assert 0.0 <= gap["end_s"] - later_s - away["plugged"] < 1.0
    times = [t_ns for block in recording.blocks("panel-meter") for t_ns in block.t_ns]
    assert max(b - a for a, b in pairwise(times)) < 0.5e9
