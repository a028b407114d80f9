"""A current that vanishes without its load is the clamp's fault; one that takes it along is not."""

import dataclasses

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.instruments.virtual import simulate
from meterlog.instruments.virtual.scenarios import SCENARIOS
from meterlog.model import Block, DoubtKind, FindingKind, Instrument, SpanKind, Verdict
from meterlog.profile import load_limits

LIMITS = load_limits("linear-12v")
GONE = (
    FindingKind.DEAD,
    FindingKind.NO_CURRENT,
    FindingKind.FEED_LOST,
    FindingKind.GROUND_LOST,
)


def judged(instruments, blocks, events):
    reviewer = Reviewer(instruments, LIMITS)
    for item in [*events, *blocks]:
        reviewer.feed(item)
    return reviewer.finish()


def run(done, block=None):
    return judged([done.instrument], [block or done.block], done.events)


def quiet(done, start_s, end_s, digit=0.001):
    """Let the clamp read a quiet zero for a while; the voltages stay as they were."""
    values = np.round(done.block.values / digit) * digit
    t_s = done.block.t_ns / 1e9
    values[(t_s >= start_s) & (t_s < end_s), 2] = 0.0
    return dataclasses.replace(done.block, values=values)


def blamed(review, start_s, end_s):
    return [
        (f.kind.value, round(f.start_ns / 1e9, 2))
        for f in review.findings
        if f.kind in GONE
        and f.verdict is Verdict.FAIL
        and f.start_ns / 1e9 > start_s - 0.5
        and f.end_ns / 1e9 < end_s + 0.5
    ]


@pytest.mark.parametrize("interval_s", [0.02, 0.1, 0.33])
@pytest.mark.parametrize("scenario", ["healthy-old", "worn", "seized"])
def test_a_dying_clamp_is_never_held_against_the_motor(scenario, interval_s):
    done = simulate(scenario, 2, interval_s=interval_s)
    for start_s, end_s in ((4.0, 27.0), (14.5, 27.0), (21.0, 27.0), (3.0, 6.0), (19.0, 20.5)):
        if start_s > done.events[-1].t_ns / 1e9 - 0.5:
            continue  # commanded off before
        review = run(done, quiet(done, start_s, end_s))
        assert blamed(review, start_s, end_s) == [], (start_s, end_s)
        assert DoubtKind.CLAMP_QUIET in [doubt.kind for doubt in review.doubts]


@pytest.mark.parametrize("interval_s", [0.02, 0.33])
def test_a_clamp_dead_from_the_start_is_found_by_the_feed_that_answers_to_commands(interval_s):
    done = simulate("healthy-old", 1, interval_s=interval_s)
    review = run(done, quiet(done, 0.0, 27.0))
    assert blamed(review, 0.0, 27.0) == []
    (finding,) = [f for f in review.findings if f.kind in GONE]
    assert finding.verdict is Verdict.CANT_TELL
    assert "the feed gave way by" in finding.statement


def test_the_finding_says_by_how_much_the_feed_should_have_moved():
    done = simulate("healthy-old", 1)
    review = run(done, quiet(done, 19.0, 30.0))
    (finding,) = [f for f in review.findings if f.kind in GONE]
    (span,) = [s for s in review.spans if s.kind is SpanKind.NO_CURRENT]
    # The bench has 5 + 30 milliohm ahead of the motor: 13.6 A are worth 0.48 V.
    assert "the 13.6 A that went must have raised the feed by about 0.4" in finding.statement
    assert "to be doubted" in finding.statement
    assert "to be doubted" in span.detail


def test_a_hand_held_meters_digits_are_enough():
    done = simulate("healthy-old", 1, interval_s=0.33)
    review = run(done, quiet(done, 19.0, 30.0, digit=0.01))
    assert blamed(review, 19.0, 30.0) == []


def test_two_meters_are_enough():
    done = simulate("healthy-old", 1, interval_s=0.05)
    slow = simulate("healthy-old", 1, interval_s=0.33)
    channels = done.instrument.channels
    volts = Instrument("volts", "v", "-", slow.instrument.channels[:2])
    amps = Instrument("amps", "a", "-", channels[2:])
    dead = quiet(done, 19.0, 30.0)
    blocks = [
        Block("volts", slow.block.t_ns, slow.block.values[:, :2], slow.block.flags[:, :2]),
        Block("amps", dead.t_ns, dead.values[:, 2:], dead.flags[:, 2:]),
    ]
    review = judged([volts, amps], blocks, done.events)
    assert blamed(review, 19.0, 30.0) == []


@pytest.mark.parametrize(("seed", "interval_s"), [(1, 0.02), (1, 0.33), (2, 0.05), (2, 0.1)])
@pytest.mark.parametrize("scenario", sorted(SCENARIOS))
def test_what_really_goes_on_the_bench_keeps_kind_and_verdict(
    scenario, seed, interval_s, monkeypatch
):
    """Each real loss of the bench is judged as if nobody doubted the clamp."""
    done = simulate(scenario, seed, interval_s=interval_s)
    review = run(done)
    assert review.doubts == ()
    monkeypatch.setattr("meterlog.analysis.load_drop.LoadDrop.denied", lambda *_: {})
    plain = run(done)
    assert [(f.kind, f.verdict) for f in review.findings] == [
        (f.kind, f.verdict) for f in plain.findings
    ]
    assert review.spans == plain.spans


def test_the_bench_shows_dead_segments_that_fail():
    kinds = [(f.kind, f.verdict) for f in run(simulate("dead-spot", 1)).findings]
    assert kinds.count((FindingKind.DEAD, Verdict.FAIL)) >= 4


def test_a_real_dead_spot_beside_a_dying_clamp_is_still_blamed():
    done = simulate("dead-spot", 1)
    real = [f for f in run(done).findings if f.kind is FindingKind.DEAD]
    last = real[-1]
    review = run(done, quiet(done, last.end_ns / 1e9 + 0.5, 22.4))
    still = [f for f in review.findings if f.kind is FindingKind.DEAD]
    assert [f.verdict for f in still] == [Verdict.FAIL] * len(real)


def test_without_any_change_of_current_a_feed_that_does_not_rise_at_all_leaves_it_open(trace):
    # Whose feed stays to the digit when 13.6 A go may have lost its clamp: no dead segment is
    # proven, as battery, fuse and wires commonly have 30 milliohm or more together.
    legs = [trace.Leg(5.0, 12.0, 0.16, 13.6), trace.Leg(8.0, 12.0, 0.16, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.NO_CURRENT]
    assert result.findings[0].verdict is Verdict.CANT_TELL
    assert "commonly have" in result.findings[0].statement
    assert "before the motor" in result.findings[0].statement


def test_without_any_change_of_current_a_feed_that_rises_as_it_commonly_does_proves_it(trace):
    legs = [trace.Leg(5.0, 12.0, 0.16, 13.6), trace.Leg(8.0, 12.4, 0.02, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.DEAD]
    assert result.findings[0].verdict is Verdict.FAIL


def test_a_feed_that_never_answers_to_the_current_tells_nothing_for_or_against_it(trace):
    # A supply that holds its voltage: the change of speed shows that the feed does not answer.
    legs = [
        trace.Leg(3.0, 12.0, 0.02, 0.0),
        trace.Leg(8.0, 12.0, 0.16, 13.6),
        trace.Leg(11.0, 12.0, 0.02, 0.0),
    ]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(3.0, 4)])
    assert [s.kind for s in result.spans][-1] is SpanKind.DEAD


def test_without_any_command_there_is_nothing_to_answer_to(trace):
    legs = [trace.Leg(5.0, *trace.NORMAL[4]), trace.Leg(8.0, *trace.DEAD)]
    result = trace.review(legs)
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.DEAD]


def legs_of(trace, feed_gone, back_gone=0.16):
    """Off, low, high, then no current while feed and return read these."""
    return [
        trace.Leg(3.0, *trace.NORMAL[0]),
        trace.Leg(7.0, *trace.NORMAL[1]),
        trace.Leg(12.0, *trace.NORMAL[4]),
        trace.Leg(15.0, feed_gone, back_gone, 0.0),
    ]


COMMANDS = ((0.0, 0), (3.0, 1), (7.0, 4))


@pytest.mark.parametrize(
    ("feed_gone", "kind"),
    [
        (12.00, SpanKind.NO_CURRENT),  # nothing moved
        (12.15, SpanKind.NO_CURRENT),  # not half of what 13.6 A cost
        (12.30, SpanKind.DEAD),  # most of it
        (12.40, SpanKind.DEAD),  # all of it
        (12.55, SpanKind.DEAD),  # and more: the alternator
    ],
)
def test_half_of_the_drop_is_where_it_turns(trace, feed_gone, kind):
    # off to high: 12.4 to 12.0 V at 13.6 A, 29 milliohm
    result = trace.review(
        legs_of(trace, feed_gone), [trace.speed(at, step) for at, step in COMMANDS]
    )
    assert result.spans[-1].kind is kind


def test_a_motor_that_opens_on_low_is_dead_whatever_the_feed_does(trace):
    legs = [
        trace.Leg(3.0, *trace.NORMAL[0]),
        trace.Leg(7.0, *trace.NORMAL[4]),
        trace.Leg(12.0, *trace.NORMAL[1]),
        trace.Leg(15.0, 12.3, 0.02, 0.0),  # the return fell to ground: the motor took all
    ]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(3.0, 4), trace.speed(7.0, 1)])
    assert result.spans[-1].kind is SpanKind.DEAD


def test_what_switches_on_with_the_fan_does_not_excuse_a_motor_that_never_ran(trace):
    # A relay coil and a clutch: 0.15 V less, but no evidence of more.
    legs = [trace.Leg(4.0, 12.4, 12.4, 0.0), trace.Leg(9.0, 12.25, 0.02, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(4.0, 4)])
    assert result.spans[-1].kind is SpanKind.DEAD


def test_neighbours_that_are_denied_become_one_span(trace):
    legs = [*legs_of(trace, 12.0), trace.Leg(18.0, 12.3, 6.7, 0.0)]
    commands = [trace.speed(at, step) for at, step in (*COMMANDS, (15.0, 1))]
    result = trace.review(legs, commands)
    kinds = [s.kind for s in result.spans]
    assert kinds == [SpanKind.OFF, SpanKind.RUNNING, SpanKind.NO_CURRENT]


def test_a_dead_clamp_is_found_by_what_several_commands_cost_together():
    # The recording ends while the fan runs on high: only the steps up tell.
    done = simulate("healthy-old", 1, seconds=21.5)
    review = run(done, quiet(done, 0.0, 27.0))
    assert blamed(review, 0.0, 27.0) == []
