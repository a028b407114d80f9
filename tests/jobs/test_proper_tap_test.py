"""A tap test done as it is accepted, on the virtual bench: and one on a healthy motor."""

from dataclasses import replace

import pytest

from meterlog.analysis import Reviewer, SpanDetector
from meterlog.analysis.judged import Judged
from meterlog.analysis.taps import TapWatch
from meterlog.analysis.verdict import run_verdict
from meterlog.instruments.virtual import simulate
from meterlog.model import Event, EventKind, Verdict
from meterlog.profile import load_limits, load_meter


def tap_evidence(scenario, seed, more=()):
    """Judge a scenario: the evidence of its taps, and the verdict of the run."""
    done = simulate(scenario, seed, meter=load_meter("line-logger"))
    limits = load_limits("linear-12v")
    events = sorted([*done.events, *more], key=lambda event: event.t_ns)
    reviewer = Reviewer([done.instrument], limits)
    watch = TapWatch(limits)
    detector = SpanDetector([done.instrument], limits, None, watch.take_rows)
    for item in (*events, done.block):
        reviewer.feed(item)
        detector.feed(item)
    detector.finish()
    review = reviewer.finish()
    judged = Judged(
        (done.instrument,), limits, spans=review.spans, steps=review.steps,
        findings=review.findings, doubts=review.doubts, events=tuple(events),
    )  # fmt: skip
    evidence = watch.evidence(judged)
    return evidence, run_verdict(judged, replace(review, taps=evidence))


def zero(done_key, at_s, offset):
    value = f"current {offset} A scatter 0.002 n 20"
    return Event(round(at_s * 1e9), EventKind.ZERO, value, done_key)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_the_proper_test_is_accepted_once_the_clamp_was_zeroed_on_both_sides(seed):
    key = simulate("healthy-new", 1, meter=load_meter("line-logger")).instrument.key
    zeros = (zero(key, 1.0, 0.01), zero(key, 66.0, 0.04))
    evidence, verdict = tap_evidence("tap-test", seed, zeros)
    assert (evidence.tried, evidence.answered) == (3, 3)
    assert {check.name: check.verdict for check in evidence.checks} == dict.fromkeys(
        [check.name for check in evidence.checks], Verdict.PASS
    )
    assert evidence.accepted is Verdict.PASS
    assert evidence.chance < 0.001
    assert verdict.outcome == "fault found"
    assert verdict.ranked[0].part == "motor"
    assert "On 3 of 3 taps" in verdict.paragraph


def test_without_zeros_it_is_said_what_lacks():
    evidence, _ = tap_evidence("tap-test", 1)
    lacking = [check.name for check in evidence.checks if check.verdict is not Verdict.PASS]
    assert lacking == ["clamp zero"]


def test_taps_on_a_healthy_motor_change_nothing_and_the_run_is_in_order():
    evidence, verdict = tap_evidence("healthy-old", 1)
    assert evidence.summary == "2 taps changed nothing: the current stayed as it was."
    assert verdict.outcome == "in order"
    assert verdict.ranked == ()


def test_a_feed_connector_shaken_by_the_tap_is_not_held_against_the_motor():
    evidence, verdict = tap_evidence("bad-feed-connector", 2)
    assert evidence.answered == 0
    assert any(tap.stopped and tap.after == "feed-lost" for tap in evidence.taps)
    assert verdict.ranked[0].part == "feed"
    assert any("made it go" in words for words in verdict.ranked[0].rests_on)


@pytest.mark.parametrize(
    ("scenario", "part"),
    [
        ("feed-lost", "feed"),
        ("ground-lost", "ground side"),
        ("seized", "motor"),
        ("worn", "motor"),
        ("dead-spot", "motor"),
    ],
)
def test_the_verdict_names_the_part_that_the_bench_broke(scenario, part):
    _, verdict = tap_evidence(scenario, 1)
    assert verdict.outcome == "fault found"
    assert verdict.ranked[0].part == part
