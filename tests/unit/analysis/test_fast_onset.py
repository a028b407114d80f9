"""Fast meters: the voltages switch before the current is gone, and are not taken for levels before.

A trace is written at 10 000 readings a second: the contact opens, the voltages jump, and only then
does the current decay, with a time constant of 0.3 ms.
"""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.model import SpanKind

RAN = (12.2, 6.0, 6.0)
OPENED = {
    # feed and return once opened; the turning motor generates 5.5 V and slows
    "feed": lambda t: (5.5 * np.exp(-t / 0.8), 0.0 * t),
    "ground": lambda t: (12.4 + 0.0 * t, 12.4 - 5.5 * np.exp(-t / 0.8)),
    "motor": lambda t: (12.4 + 0.0 * t, 0.02 + 0.0 * t),
}
KIND = {
    "feed": SpanKind.FEED_LOST,
    "ground": SpanKind.GROUND_LOST,
    "motor": SpanKind.DEAD,
}


def opened(what, rate=10_000.0, drops=((0.5, 0.55),), end=0.8):
    """Give times and readings of a run that opens at each of ``drops``."""
    t = np.arange(0.0, end, 1.0 / rate)
    values = np.tile(RAN, (len(t), 1))
    for start, stop in drops:
        inside = (t >= start) & (t < stop)
        since = t[inside] - start
        values[inside, 0], values[inside, 1] = OPENED[what](since)
        values[inside, 2] = 6.0 * np.exp(-since / 0.0003)
    return np.round(t * 1e9).astype(np.int64), values


def limits(trace):
    return trace.limits(min_dwell_s=0.005, speeds={}, coast_s=2.0)


def one_meter(trace, what, **how):
    rate = how.get("rate", 10_000.0)
    reviewer = trace.Reviewer(
        [trace.Instrument("meter", "t", "-", trace.channels(1.0 / rate))], limits(trace)
    )
    reviewer.feed(trace.speed(0.0, 2))
    reviewer.feed(trace.block_of(*opened(what, **how)))
    return [span.kind for span in reviewer.finish().spans]


@pytest.mark.parametrize("rate", [2_000.0, 10_000.0, 20_000.0])
@pytest.mark.parametrize("what", sorted(OPENED))
def test_a_fast_meter_tells_the_side_though_the_voltages_go_first(trace, what, rate):
    assert one_meter(trace, what, rate=rate) == [SpanKind.RUNNING, KIND[what], SpanKind.RUNNING]


@pytest.mark.parametrize("what", sorted(OPENED))
def test_a_contact_that_bounces_is_held_against_the_levels_before_the_first_loss(trace, what):
    drops = ((0.5, 0.55), (0.552, 0.6))
    told = one_meter(trace, what, drops=drops)
    assert set(told) == {SpanKind.RUNNING, KIND[what]}


def test_a_feed_hardly_above_the_least_that_stays_is_not_lost_with_the_ground(trace):
    # The controller lowers it a little when the load goes; the return tells.
    leg = trace.Leg
    legs = [leg(3.0, 9.55, 0.15, 10.0), leg(3.3, 9.45, 2.2, 0.0), leg(6.0, 9.55, 0.15, 10.0)]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert [s.kind for s in result.spans] == [
        SpanKind.RUNNING,
        SpanKind.GROUND_LOST,
        SpanKind.RUNNING,
    ]


def test_one_reading_on_the_way_back_does_not_outvote_the_loss_before_it(trace):
    # The dropout is just as long as the dwell; its last reading looks like a dead motor's.
    leg = trace.Leg
    legs = [
        leg(3.0, 7.2, 0.1, 6.4),
        leg(3.0018, 7.1, 1.7, 0.1),
        leg(3.0021, 7.2, 0.5, 0.2),
        leg(6.0, 7.2, 0.1, 6.4),
    ]
    lim = trace.limits(min_dwell_s=0.002, speeds={})
    result = trace.review(legs, [trace.speed(0.0, 2)], 0.0002, lim=lim)
    assert [s.kind for s in result.spans] == [
        SpanKind.RUNNING,
        SpanKind.GROUND_LOST,
        SpanKind.RUNNING,
    ]


@pytest.mark.parametrize("apart_s", [-0.004, 0.004])
@pytest.mark.parametrize("what", sorted(OPENED))
def test_two_fast_meters_whose_times_disagree_still_tell_the_side(trace, what, apart_s):
    t_ns, values = opened(what, drops=((0.5, 0.6),))
    amps = trace.Instrument("clamp", "t", "-", trace.channels(1e-4, ("current",)))
    volts = trace.Instrument("volts", "t", "-", trace.channels(1e-4, ("feed", "return")))
    amps, volts = replace(amps, time_u_s=0.0001), replace(volts, time_u_s=0.003)
    reviewer = trace.Reviewer([amps, volts], limits(trace))
    reviewer.feed(trace.speed(0.0, 2))
    shifted = t_ns + round(apart_s * 1e9)
    kept = shifted >= 0
    reviewer.feed(trace.block_of(t_ns, values, "clamp", (2,)))
    reviewer.feed(trace.block_of(shifted[kept], values[kept], "volts", (0, 1)))
    told = [span.kind for span in reviewer.finish().spans if span.kind is not SpanKind.NO_DATA]
    assert told == [SpanKind.RUNNING, KIND[what], SpanKind.RUNNING]


def test_two_meters_of_unknown_agreement_tell_no_side_in_a_moment(trace):
    # The voltages are 0.08 s late: what was read in the dropout was the running motor's.
    t_ns, values = opened("motor", drops=((0.5, 0.56),))
    amps = trace.Instrument("clamp", "t", "-", trace.channels(1e-4, ("current",)))
    volts = trace.Instrument("volts", "t", "-", trace.channels(1e-4, ("feed", "return")))
    reviewer = trace.Reviewer([amps, volts], limits(trace))
    reviewer.feed(trace.speed(0.0, 2))
    reviewer.feed(trace.block_of(t_ns, values, "clamp", (2,)))
    reviewer.feed(trace.block_of(t_ns + 80_000_000, values, "volts", (0, 1)))
    told = [span.kind for span in reviewer.finish().spans if span.kind is not SpanKind.NO_DATA]
    assert told == [SpanKind.RUNNING, SpanKind.NO_CURRENT, SpanKind.RUNNING]


@settings(max_examples=25)
@given(
    cuts=st.lists(st.integers(4_950, 6_050), max_size=12),
    what=st.sampled_from(sorted(OPENED)),
    bounce=st.floats(0.0005, 0.02),
)
def test_a_fast_meter_cut_anywhere_tells_the_same(trace, cuts, what, bounce):
    drops = ((0.5, 0.53), (0.53 + bounce, 0.6))
    t_ns, values = opened(what, drops=drops)
    block = trace.block_of(t_ns, values)
    instrument = trace.Instrument("meter", "t", "-", trace.channels(1e-4))

    def spans(parts):
        reviewer = trace.Reviewer([instrument], limits(trace))
        reviewer.feed(trace.speed(0.0, 2))
        for part in parts:
            reviewer.feed(part)
        return reviewer.finish().spans

    places = sorted({0, len(block), *cuts})
    assert spans([block.rows(a, b) for a, b in pairwise(places)]) == spans([block])
