"""However the data is cut and interleaved, the answer is the same."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

LEVELS = {
    "off": (12.4, 12.4, 0.0),
    "one": (12.3, 6.7, 3.6),
    "four": (12.0, 0.16, 13.6),
    "over": (11.9, 0.2, 20.0),
    "near": (11.9, 0.2, 17.6),
    "locked": (10.7, 0.6, 55.0),
    "dead": (12.4, 0.02, 0.0),
    "feed": (5.0, 0.0, 0.0),
    "ground": (12.4, 9.0, 0.0),
    "nothing": (None, None, None),
    "trickle": (12.3, 0.1, 0.31),
}
scripts = st.lists(
    st.tuples(st.sampled_from(sorted(LEVELS)), st.floats(0.01, 1.5)), min_size=1, max_size=14
)
speeds = st.lists(st.tuples(st.floats(0.0, 8.0), st.sampled_from([0, 1, 2, 4])), max_size=5)


def legs_of(trace, plan):
    end, legs = 0.0, []
    for name, length in plan:
        end += length
        legs.append(trace.Leg(end, *LEVELS[name]))
    return legs


def whole(trace, instruments, blocks, events):
    reviewer = trace.Reviewer(instruments, trace.limits())
    for item in [*events, *blocks]:
        reviewer.feed(item)
    return reviewer.finish()


def cut_up(draw, blocks):
    """Cut each block at drawn places and interleave the parts, each block's own order kept."""
    queues = []
    for block in blocks:
        places = sorted({0, len(block), *draw(st.lists(st.integers(0, len(block)), max_size=30))})
        queues.append([block.rows(a, b) for a, b in pairwise(places)])
    mixed = []
    while any(queues):
        ready = [q for q in queues if q]
        mixed.append(ready[draw(st.integers(0, len(ready) - 1))].pop(0))
    return mixed


def with_events(mixed, events):
    """Put each event before the first part that reaches its time."""
    items, waiting = [], sorted(events, key=lambda e: e.t_ns)
    for part in mixed:
        while waiting and len(part) and waiting[0].t_ns <= int(part.t_ns[-1]):
            items.append(waiting.pop(0))
        items.append(part)
    return [*items, *waiting]


def assert_same(one, other):
    assert one.spans == other.spans
    assert len(one.findings) == len(other.findings)
    for a, b in zip(one.findings, other.findings, strict=True):
        assert (a.kind, a.verdict, a.start_ns, a.end_ns) == (
            b.kind,
            b.verdict,
            b.start_ns,
            b.end_ns,
        )
        assert (a.value is None) == (b.value is None)
        if a.value is not None:
            assert a.value == pytest.approx(b.value, rel=1e-9, abs=1e-12)
    assert one.steps == other.steps


@settings(max_examples=75)
@given(
    data=st.data(), plan=scripts, speed_plan=speeds, interval=st.sampled_from([0.004, 0.05, 0.33])
)
def test_one_instrument_cut_anywhere(trace, data, plan, speed_plan, interval):
    legs = legs_of(trace, plan)
    t_ns, values = trace.sample(legs, interval)
    if not len(t_ns):
        return
    rng = np.random.default_rng(7)
    values = values + rng.normal(0, 0.01, values.shape)
    instrument = trace.Instrument("meter", "test", "-", trace.channels(interval))
    events = [trace.speed(at, step) for at, step in speed_plan]
    block = trace.block_of(t_ns, values)
    parts = cut_up(data.draw, [block])
    expected = whole(trace, [instrument], [block], events)
    reviewer = trace.Reviewer([instrument], trace.limits())
    for item in with_events(parts, events):
        reviewer.feed(item)
        reviewer.live()  # looking must not disturb
    assert_same(reviewer.finish(), expected)


@settings(max_examples=50)
@given(data=st.data(), plan=scripts, speed_plan=speeds, slow=st.sampled_from([0.03, 0.11, 0.5]))
def test_two_instruments_of_different_rates_cut_and_interleaved_anywhere(
    trace, data, plan, speed_plan, slow
):
    legs = legs_of(trace, plan)
    fast_t, fast_values = trace.sample(legs, 0.02)
    slow_t, slow_values = trace.sample(legs, slow, phase_s=0.003)
    if not len(fast_t) or not len(slow_t):
        return
    amps = trace.Instrument("clamp", "test", "-", trace.channels(0.02, ("current",)))
    volts = trace.Instrument("volts", "test", "-", trace.channels(slow, ("feed", "return")))
    blocks = [
        trace.block_of(fast_t, fast_values, "clamp", (2,)),
        trace.block_of(slow_t, slow_values, "volts", (0, 1)),
    ]
    events = [trace.speed(at, step) for at, step in speed_plan]
    expected = whole(trace, [amps, volts], blocks, events)
    reviewer = trace.Reviewer([amps, volts], trace.limits())
    for item in [*events, *cut_up(data.draw, blocks)]:
        reviewer.feed(item)
    assert_same(reviewer.finish(), expected)


@settings(max_examples=60)
@given(plan=scripts, speed_plan=speeds)
def test_spans_always_touch_and_never_run_backwards(trace, plan, speed_plan):
    events = [trace.speed(at, step) for at, step in speed_plan]
    result = trace.review(legs_of(trace, plan), events, 0.02)
    for span in result.spans:
        assert span.end_ns >= span.start_ns
    for before, after in zip(result.spans, result.spans[1:], strict=False):
        assert before.end_ns == after.start_ns
        assert before.kind is not after.kind
