"""The current went while it was not read: what the motor did before the pause still counts."""

import numpy as np
import pytest

from meterlog.model import FindingKind, SpanKind


def kinds(result):
    return [span.kind for span in result.spans]


def faults(result):
    return [
        f.kind
        for f in result.findings
        if f.kind not in (FindingKind.STEP_CURRENT, FindingKind.NO_DATA)
    ]


@pytest.mark.parametrize("pause_s", [0.1, 0.4, 0.9])
def test_a_motor_that_coasts_down_to_a_lower_speed_behind_a_pause_is_not_blamed(trace, pause_s):
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        leg(5.0 + pause_s, None, None, None),
        leg(6.3, 12.4, 4.5, 0.0),
        leg(12.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(5.0, 1)]
    for roles in (("feed", "return", "current"), ("current",)):
        assert faults(trace.review(legs, events, roles=roles)) == []


def test_a_current_that_stays_away_behind_a_pause_is_still_found(trace):
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        leg(5.4, None, None, None),
        leg(9.0, *trace.DEAD),
        leg(12.0, *trace.NORMAL[1]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(5.0, 1)])
    assert faults(result) == [FindingKind.DEAD]


@pytest.mark.parametrize("interval_s", [0.02, 0.1])
def test_a_feed_that_went_while_the_current_was_not_read_is_lost_all_the_same(trace, interval_s):
    leg = trace.Leg
    decay = [leg(5.0 + 0.1 * k, 9.3 * 0.93**k, 0.0, None if k < 8 else 0.0) for k in range(1, 20)]
    legs = [leg(5.0, *trace.NORMAL[4]), *decay, leg(10.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4)], interval_s)
    assert kinds(result)[:3] == [SpanKind.RUNNING, SpanKind.NO_DATA, SpanKind.FEED_LOST]


def test_long_after_a_pause_nothing_is_known_of_the_levels_before(trace):
    leg = trace.Leg
    legs = [
        leg(5.0, *trace.NORMAL[4]),
        leg(9.0, None, None, None),
        leg(12.0, 5.6, 0.02, 0.0),
        leg(14.0, *trace.NORMAL[4]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert SpanKind.FEED_LOST not in kinds(result)


def test_a_pause_is_bridged_the_same_however_it_is_cut(trace):
    leg = trace.Leg
    decay = [leg(5.0 + 0.1 * k, 9.3 * 0.93**k, 0.0, None if k < 8 else 0.0) for k in range(1, 20)]
    legs = [leg(5.0, *trace.NORMAL[4]), *decay, leg(10.0, *trace.NORMAL[4])]
    t_ns, values = trace.sample(legs, 0.05)
    block = trace.block_of(t_ns, values + np.random.default_rng(2).normal(0, 0.01, values.shape))
    meter = trace.Instrument("meter", "test", "-", trace.channels(0.05))
    found = []
    for size in (1, 3, 7, len(block)):
        reviewer = trace.Reviewer([meter], trace.limits())
        reviewer.feed(trace.speed(0.0, 4))
        for start in range(0, len(block), size):
            reviewer.feed(block.rows(start, start + size))
        found.append(reviewer.finish().spans)
    assert all(spans == found[0] for spans in found)
