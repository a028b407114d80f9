"""The whole review, all that only the whole recording tells included, is the same however cut."""

import json
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.evidence import review_to_dict
from meterlog.model import (
    Block,
    Channel,
    Controller,
    Event,
    EventKind,
    Fuse,
    Instrument,
    Quantity,
    Role,
)

LEVELS = {
    "off": (12.4, 12.4, 0.0),
    "one": (12.3, 6.7, 3.6),
    "four": (12.0, 0.16, 13.6),
    "over": (11.9, 0.2, 20.0),
    "locked": (10.7, 0.6, 55.0),
    "dead": (12.4, 0.02, 0.0),
    "feed": (5.0, 0.0, 0.0),
    "ground": (12.4, 9.0, 0.0),
    "nothing": (None, None, None),
}
MARKS = (
    (EventKind.TAP, "", ""),
    (EventKind.WIGGLE, "leads", ""),
    (EventKind.RANGE, "60 A", "meter"),
    (EventKind.ZERO, "current 0.02 A scatter 0.01 n 10", "meter"),
    (EventKind.LINK, "silent", "meter"),
)
scripts = st.lists(
    st.tuples(st.sampled_from(sorted(LEVELS)), st.floats(0.05, 1.5)), min_size=2, max_size=9
)
marks = st.lists(st.tuples(st.floats(0.0, 1.0), st.sampled_from(MARKS)), max_size=6)
speeds = st.lists(st.tuples(st.floats(0.0, 1.0), st.sampled_from([0, 1, 4])), max_size=4)


def asked(trace):
    """Limits that ask for everything there is to be judged."""
    return replace(
        trace.limits(),
        at_reference=True,
        fuse=Fuse(20.0),
        controller=Controller("linear", 10.0),
        max_feed_drop_v=0.5,
        max_ground_drop_v=0.3,
    )


def told(trace, instruments, items, live=False):
    reviewer = trace.Reviewer(instruments, asked(trace))
    for item in items:
        reviewer.feed(item)
        if live:
            reviewer.live()  # looking must not disturb
    review = review_to_dict(reviewer.finish())
    json.dumps(review, allow_nan=False)
    return review


def assert_same(one, other, at="review"):
    """Equal throughout; numbers but for the rounding of sums added up in another order."""
    if isinstance(one, dict) and isinstance(other, dict):
        assert one.keys() == other.keys(), at
        for key in one:
            assert_same(one[key], other[key], f"{at}.{key}")
    elif isinstance(one, list) and isinstance(other, list):
        assert len(one) == len(other), at
        for place, pair in enumerate(zip(one, other, strict=True)):
            assert_same(*pair, f"{at}[{place}]")
    elif isinstance(one, float):
        assert one == pytest.approx(other, rel=1e-9, abs=1e-12), at
    else:
        assert one == other, at


def played(trace, plan, stretch):
    end, legs = 0.0, []
    for name, length in plan:
        end += length * stretch
        legs.append(trace.Leg(end, *LEVELS[name]))
    return legs


def all_events(trace, speed_plan, mark_plan, end_s):
    events = [trace.speed(at * end_s, step) for at, step in speed_plan]
    events += [Event(round(at * end_s * 1e9), *what) for at, what in mark_plan]
    return sorted(events, key=lambda event: event.t_ns)


def cut_up(rng, blocks):
    """Cut each block anywhere and interleave the parts, each block's own order kept."""
    queues = []
    for block in blocks:
        places = sorted({0, len(block), *rng.integers(0, len(block) + 1, 20).tolist()})
        queues.append([block.rows(a, b) for a, b in pairwise(places)])
    mixed = []
    while any(queues):
        ready = [queue for queue in queues if queue]
        mixed.append(ready[rng.integers(len(ready))].pop(0))
    return mixed


def in_time(parts, events):
    """Put each event before the first part that reaches its time."""
    items, waiting = [], list(events)
    for part in parts:
        while waiting and len(part) and waiting[0].t_ns <= int(part.t_ns[-1]):
            items.append(waiting.pop(0))
        items.append(part)
    return [*items, *waiting]


@settings(max_examples=12, deadline=None)
@given(
    plan=scripts,
    speed_plan=speeds,
    mark_plan=marks,
    interval=st.sampled_from([0.0002, 0.004, 0.05, 0.33]),
    live=st.booleans(),
    seed=st.integers(0, 2**32 - 1),
)
def test_one_meter_slow_or_fast_gives_one_review(
    trace, plan, speed_plan, mark_plan, interval, live, seed
):
    rng = np.random.default_rng(seed)
    legs = played(trace, plan, 0.2 if interval < 0.001 else 3.0)
    t_ns, values = trace.sample(legs, interval)
    values = values + rng.normal(0.0, 0.01, values.shape)
    values[:, 2] *= 1.0 + 0.05 * np.sin(2.0 * np.pi * 0.1 / interval * t_ns / 1e9)
    meter = Instrument("meter", "test", "-", trace.channels(interval))
    block = trace.block_of(t_ns, values)
    events = all_events(trace, speed_plan, mark_plan, legs[-1].end)
    expected = told(trace, [meter], [*events, block])
    items = in_time(cut_up(rng, [block]), events)
    assert_same(told(trace, [meter], items, live), expected)


@settings(max_examples=12, deadline=None)
@given(
    plan=scripts,
    speed_plan=speeds,
    mark_plan=marks,
    slow=st.sampled_from([0.03, 0.11, 0.5]),
    seed=st.integers(0, 2**32 - 1),
)
def test_two_meters_cut_and_interleaved_anywhere_give_one_review(
    trace, plan, speed_plan, mark_plan, slow, seed
):
    rng = np.random.default_rng(seed)
    legs = played(trace, plan, 3.0)
    fast_t, fast = trace.sample(legs, 0.02)
    slow_t, volts = trace.sample(legs, slow, phase_s=0.003)
    battery = np.full((len(slow_t), 1), 12.5)
    beside = Channel("battery", Quantity.VOLTAGE, Role.BATTERY, interval_s=slow)
    meters = [
        Instrument("meter", "test", "-", trace.channels(0.02, ("current",))),
        Instrument(
            "volts",
            "test",
            "-",
            (*trace.channels(slow, ("feed", "return")), beside),
            time_u_s=0.005,
        ),
    ]
    three: Block = trace.block_of(slow_t, np.hstack([volts, battery]), "volts", (0, 1, 3))
    blocks = [trace.block_of(fast_t, fast, "meter", (2,)), three]
    events = all_events(trace, speed_plan, mark_plan, legs[-1].end)
    expected = told(trace, meters, [*events, *blocks])
    assert_same(told(trace, meters, [*events, *cut_up(rng, blocks)]), expected)


def test_a_review_that_differs_is_seen_to_differ(trace):
    """Holds the comparison itself to account: a second dropout must not pass for the first."""
    plan = [("four", 1.0), ("dead", 0.5), ("four", 1.0)]
    meter = Instrument("meter", "test", "-", trace.channels(0.05))
    reviews = []
    for longer in (plan, [*plan, *plan]):
        t_ns, values = trace.sample(played(trace, longer, 3.0), 0.05)
        reviews.append(told(trace, [meter], [trace.speed(0.0, 4), trace.block_of(t_ns, values)]))
    with pytest.raises(AssertionError):
        assert_same(*reviews)


def test_a_tap_that_is_told_late_is_told_live_as_afterwards(trace):
    """Catches a finding that is kept although a tap belongs to it that came after it was made."""
    plan = [("four", 1.0), ("dead", 0.5), ("four", 2.0)]
    t_ns, values = trace.sample(played(trace, plan, 3.0), 0.05)
    meter = Instrument("meter", "test", "-", trace.channels(0.05))
    reviewer = trace.Reviewer([meter], asked(trace))
    reviewer.feed(trace.speed(0.0, 4))
    reviewer.feed(trace.block_of(t_ns, values))
    before = [finding.statement for finding in reviewer.live().findings]
    reviewer.feed(trace.tap(4.4))
    live = [finding.statement for finding in reviewer.live().findings]
    assert live != before
    assert any("after a tap" in one for one in live)


def test_a_live_review_makes_again_only_what_has_changed(trace, monkeypatch):
    """Catches a live review that grows dearer with every finding: it holds the bus meanwhile."""
    plan = [("four", 1.0), ("dead", 0.2)] * 20
    t_ns, values = trace.sample(played(trace, plan, 3.0), 0.05)
    block = trace.block_of(t_ns, values)
    meter = Instrument("meter", "test", "-", trace.channels(0.05))
    reviewer = trace.Reviewer([meter], asked(trace))
    reviewer.feed(trace.speed(0.0, 4))
    reviewer.feed(block.rows(0, len(block) - 5))
    first = reviewer.live()
    made = []
    monkeypatch.setattr(
        type(reviewer._maker), "of_piece", lambda self, piece, around: made.append(piece)
    )
    reviewer.feed(block.rows(len(block) - 5, len(block)))
    again = reviewer.live()
    assert len(first.findings) > 15
    assert len(again.findings) >= len(first.findings) - 2
    assert len(made) <= 3
