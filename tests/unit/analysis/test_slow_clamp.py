"""A slow meter at the clamp beside a fast one at the voltages.

Between two readings of the current the voltages go on: what they do after the current has come
back is a running motor's, and accuses nobody.
"""

import re
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.model import FindingKind, SpanKind, Verdict

R, D = SpanKind.RUNNING, SpanKind.DEAD


def meters(trace, slow_s, time_u_s=None):
    clamp = trace.Instrument(
        "clamp", "test", "-", trace.channels(slow_s, ("current",)), time_u_s=time_u_s
    )
    volts = trace.Instrument(
        "volts", "test", "-", trace.channels(0.02, ("feed", "return")), time_u_s=time_u_s
    )
    return [clamp, volts]


def blocks_of(trace, legs, slow_s, phase_s=0.013, late_s=0.0, window_s=0.0):
    slow_t, slow = trace.sample(legs, slow_s, phase_s=phase_s, window_s=window_s)
    fast_t, fast = trace.sample(legs, 0.02)
    return [
        trace.block_of(slow_t + round(late_s * 1e9), slow, "clamp", (2,)),
        trace.block_of(fast_t, fast, "volts", (0, 1)),
    ]


def review(trace, legs, step, slow_s=0.2, time_u_s=None, **how):
    reviewer = trace.Reviewer(meters(trace, slow_s, time_u_s), trace.limits())
    reviewer.feed(trace.speed(0.0, step))
    for block in blocks_of(trace, legs, slow_s, **how):
        reviewer.feed(block)
    return reviewer.finish()


def dead_and_back(trace, step, restart):
    """A dead segment from 3 s to 5 s, then a start-up that raises the return or lowers the feed."""
    leg = trace.Leg
    normal = trace.NORMAL[step]
    return [leg(3.0, *normal), leg(5.0, *trace.DEAD), leg(5.4, *restart), leg(9.0, *normal)]


RESTARTS = {2: (12.1, 7.4, 8.9), 4: (11.0, 0.5, 16.0)}


@pytest.mark.parametrize("slow_s", [0.1, 0.2, 0.4])
@pytest.mark.parametrize("step", [2, 4])
@pytest.mark.parametrize("phase_s", [0.013, 0.05, 0.09])
def test_the_restart_seen_by_the_voltages_first_does_not_turn_a_dead_segment_into_a_lost_side(
    trace, slow_s, step, phase_s
):
    legs = dead_and_back(trace, step, RESTARTS[step])
    result = review(trace, legs, step, slow_s, phase_s=phase_s)
    assert [s.kind for s in result.spans] == [R, D, R]
    dead = next(f for f in result.findings if f.kind is FindingKind.DEAD)
    assert dead.verdict is Verdict.FAIL
    assert re.search(r" 12\.3\d+ ± 0\.\d+ V stood across", dead.statement)


@pytest.mark.parametrize("phase_s", np.linspace(0.0, 0.19, 9))
def test_each_edge_is_known_to_the_spacing_of_the_currents_own_readings_and_holds(trace, phase_s):
    result = review(trace, dead_and_back(trace, 4, RESTARTS[4]), 4, phase_s=phase_s)
    dead = result.spans[1]
    for at_ns, edge_ns, truth_s in (
        (dead.start_ns, dead.start_edge_ns, 3.0),
        (dead.end_ns, dead.end_edge_ns, 5.0),
    ):
        assert edge_ns == pytest.approx(0.2e9, rel=1e-6)
        assert abs(at_ns / 1e9 - truth_s) <= edge_ns / 1e9


def test_an_averaging_clamp_does_not_pull_the_edge_to_its_ramp(trace):
    # The reading half-way down was taken while it happened: the edge is there, not after it.
    legs = dead_and_back(trace, 4, RESTARTS[4])
    result = review(trace, legs, 4, phase_s=0.0, window_s=0.18)
    assert abs(result.spans[1].start_ns / 1e9 - 3.0) < 0.06


@pytest.mark.parametrize("late_s", [-0.1, 0.0, 0.1])
def test_meters_whose_times_are_apart_by_what_is_stated_still_name_the_motor(trace, late_s):
    legs = dead_and_back(trace, 2, RESTARTS[2])
    result = review(trace, legs, 2, time_u_s=0.05, late_s=late_s, phase_s=0.1)
    assert [s.kind for s in result.spans] == [R, D, R]


@pytest.mark.parametrize("phase_s", np.linspace(0.0, 0.18, 7))
def test_a_ground_that_opens_is_still_told_by_a_slow_clamp(trace, phase_s):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(5.0, 12.4, 9.0, 0.0), leg(8.0, *trace.NORMAL[4])]
    result = review(trace, legs, 4, phase_s=phase_s)
    assert [s.kind for s in result.spans] == [R, SpanKind.GROUND_LOST, R]


@pytest.mark.parametrize("phase_s", np.linspace(0.0, 0.18, 7))
def test_a_feed_that_is_lost_is_still_told_by_a_slow_clamp(trace, phase_s):
    # The feed is down already when the clamp is next read: what it was is known from before.
    leg = trace.Leg
    legs = [
        leg(3.0, *trace.NORMAL[4]),
        leg(4.0, 6.0, 0.0, 0.0),
        leg(5.0, 0.0, 0.0, 0.0),
        leg(8.0, *trace.NORMAL[4]),
    ]
    result = review(trace, legs, 4, phase_s=phase_s)
    assert [s.kind for s in result.spans] == [R, SpanKind.FEED_LOST, R]


def test_a_single_reading_without_current_names_no_side_and_asks_for_no_meter_that_is_there(trace):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(3.25, *trace.DEAD), leg(8.0, *trace.NORMAL[4])]
    result = review(trace, legs, 4, phase_s=0.1, time_u_s=0.02)
    assert [s.kind for s in result.spans] == [R, SpanKind.NO_CURRENT, R]
    assert result.spans[1].settled_by == ()
    assert "would settle" not in result.findings[0].statement


LEVELS = {
    "four": (12.0, 0.16, 13.6),
    "restart": (11.0, 0.5, 23.0),
    "over": (11.9, 0.2, 20.0),
    "dead": (12.4, 0.02, 0.0),
    "feed": (5.0, 0.0, 0.0),
    "ground": (12.4, 9.0, 0.0),
    "nothing": (None, None, None),
}


@settings(max_examples=60, deadline=None)
@given(
    data=st.data(),
    plan=st.lists(
        st.tuples(st.sampled_from(sorted(LEVELS)), st.floats(0.01, 1.5)), min_size=1, max_size=12
    ),
    slow=st.sampled_from([0.05, 0.2, 0.41]),
)
def test_cut_and_interleaved_anywhere_and_looked_at_it_tells_the_same(trace, data, plan, slow):
    end, legs = 0.0, []
    for name, length in plan:
        end += length
        legs.append(trace.Leg(end, *LEVELS[name]))
    blocks = blocks_of(trace, legs, slow, phase_s=0.003)
    if not all(len(block) for block in blocks):
        return
    instruments = meters(trace, slow, 0.02)
    whole = trace.Reviewer(instruments, trace.limits())
    for item in [trace.speed(0.0, 4), *blocks]:
        whole.feed(item)
    expected = whole.finish()
    queues = []
    for block in blocks:
        cuts = data.draw(st.lists(st.integers(0, len(block)), max_size=20))
        places = sorted({0, len(block), *cuts})
        queues.append([block.rows(a, b) for a, b in pairwise(places)])
    reviewer = trace.Reviewer(instruments, trace.limits())
    reviewer.feed(trace.speed(0.0, 4))
    while any(queues):
        ready = [queue for queue in queues if queue]
        reviewer.feed(ready[data.draw(st.integers(0, len(ready) - 1))].pop(0))
        reviewer.live()
    found = reviewer.finish()
    assert found.spans == expected.spans
    assert found.doubts == expected.doubts
    assert found.notes == expected.notes
    assert found.shortest_visible_dropout_s == expected.shortest_visible_dropout_s
    assert [(f.kind, f.verdict, f.statement) for f in found.findings] == [
        (f.kind, f.verdict, f.statement) for f in expected.findings
    ]
