"""Probes, polarity and repeats are judged the same as with all of a recording side by side."""

from itertools import pairwise
from unittest import mock

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis import long_table
from meterlog.analysis.levels import BIN_NS, Levels
from meterlog.analysis.moved_probe import MovedProbes
from meterlog.analysis.polarity import LEAST_NS as LONG_NS
from meterlog.analysis.polarity import LEAST_V, Polarity
from meterlog.analysis.rows import Rows
from meterlog.analysis.run_levels import RunLevels
from meterlog.analysis.slipped_probe import SlippedProbes
from meterlog.analysis.timeline import SpeedChange
from meterlog.analysis.zero_watch import ZeroWatch
from meterlog.model import (
    Channel,
    DoubtKind,
    Event,
    EventKind,
    Instrument,
    Limits,
    Quantity,
    Role,
    Zero,
)
from meterlog.model.zero_text import zero_text

AMPS = (0.0, 0.02, 2.0, 5.7, 5.7, 13.6)
FEEDS = (12.2, 12.2, 12.0, 9.0, 6.0, 0.3, 0.0, -12.2, np.nan)
BACKS = (0.16, 5.0, 5.0, 6.7, 11.9, np.nan)


@st.composite
def recordings(draw):
    """Draw legs of current, feed and return, with noise, rounding and silences."""
    legs = draw(
        st.lists(
            st.tuples(
                st.integers(1, 60),
                st.sampled_from(AMPS),
                st.sampled_from(FEEDS),
                st.sampled_from(BACKS),
                st.sampled_from((0, 0, 0, 0, 1, 5, 400)),
            ),
            min_size=1,
            max_size=25,
        )
    )
    seed, noise = draw(st.integers(0, 99)), draw(st.sampled_from((0.0, 0.01, 0.05)))
    every = draw(st.sampled_from((1, 1, 2, 3)))
    digits = draw(st.sampled_from((1, 3, 9)))
    have = draw(st.sampled_from(("both", "both", "feed", "back", "none")))
    counts = [one[0] for one in legs]
    columns = [np.repeat([one[place] for one in legs], counts) for place in (1, 2, 3)]
    rng = np.random.default_rng(seed)
    amps, feed, back = (np.round(one + rng.normal(0.0, noise, len(one)), digits) for one in columns)
    pauses = np.repeat([one[4] for one in legs], counts)
    first = np.cumsum([0, *counts[:-1]])
    gaps = np.full(len(amps), every)
    gaps[first] += pauses[first]
    t_ns = np.cumsum(gaps) * BIN_NS + 13_000_000
    if have in {"back", "none"}:
        feed = None
    if have in {"feed", "none"}:
        back = None
    return rows_of(t_ns, amps, feed, back)


def rows_of(t_ns, amps, feed, back):
    ones = np.ones(len(t_ns), np.bool_)
    return Rows(t_ns, amps, feed, back, ones, ~ones)


def cut(rows, places):
    return [rows.part(a, b) for a, b in pairwise(sorted({0, len(rows), *places}))]


SMALL = {"BLOCK": 8, "MOST_HELD": 32, "_FIRST_ROOM": 4}


@settings(max_examples=250, deadline=None)
@given(rows=recordings(), data=st.data(), laid=st.booleans())
def test_probes_and_polarity_live_and_at_the_end(plain, rows, data, laid):
    limits = Limits()
    spots = st.integers(0, len(rows))
    places = data.draw(st.lists(spots, max_size=12))
    marks = sorted(data.draw(st.lists(spots, max_size=4)))
    changes = [
        SpeedChange(int(rows.t_ns[min(mark, len(rows) - 1)]), 1 + number % 4)
        for number, mark in enumerate(marks)
    ]
    with mock.patch.multiple(long_table, **SMALL):
        levels = Levels(plain.MemoryAttic() if laid else None)
        slips, polarity = SlippedProbes(levels, limits), Polarity(levels, limits)
        moved = MovedProbes(levels, 1.0)
        for part in cut(rows, places):
            levels.take(part)
            whole = levels.part(0, len(levels))
            known = [one for one in changes if one.t_ns <= part.t_ns[-1]]
            assert moved.slips(known) == plain.moved_probes(whole, 1.0, known)
            assert slips.doubts(known) == plain.slipped_probe_doubts(whole, limits, known)
            below = plain.negative(whole, LEAST_V, LONG_NS)
            ends = [(below[0][0], below[-1][1])] if below else []
            told = [one for one in polarity.doubts(()) if one.kind is DoubtKind.SIGN]
            assert [(one.start_ns, one.end_ns) for one in told] == ends


def test_a_slip_across_many_blocks(plain):
    """A voltage that jumps under a steady current and jumps back is one slip."""
    on, off = np.full(300, 12.2), np.full(200, 6.0)
    feed = np.concatenate((on, off, on))
    amps = 5.7 + np.random.default_rng(1).normal(0.0, 0.01, len(feed))
    t_ns = np.arange(len(feed)) * BIN_NS
    rows = rows_of(t_ns, amps, feed, np.full(len(feed), 0.2))
    with mock.patch.multiple(long_table, **SMALL):
        levels = Levels(plain.MemoryAttic())
        for part in cut(rows, range(0, len(rows), 7)):
            levels.take(part)
        (slip,) = MovedProbes(levels, 1.0).slips(())
    assert (slip.start_ns, slip.end_ns, slip.ended) == (299 * BIN_NS, 499 * BIN_NS, True)


@pytest.mark.parametrize("stretch", [(0, 3_000), (700, 2_000)])
def test_a_probe_that_slipped_for_long_has_numpys_own_means(plain, stretch):
    rng = np.random.default_rng(3)
    feed = np.full(3_000, 12.2)
    feed[slice(*stretch)] = rng.normal(0.2, 0.05, stretch[1] - stretch[0])
    rows = rows_of(np.arange(3_000) * BIN_NS, rng.normal(5.7, 0.2, 3_000), feed, None)
    with mock.patch.multiple(long_table, **SMALL):
        levels = Levels(plain.MemoryAttic())
        slips = SlippedProbes(levels, Limits())
        for part in cut(rows, range(0, 3_000, 190)):
            levels.take(part)
            whole = levels.part(0, len(levels))
            assert slips.doubts() == plain.slipped_probe_doubts(whole, Limits())
        first, last = stretch
        means = slips._means(Role.MOTOR_FEED, first * BIN_NS, last * BIN_NS)
    assert means == (float(feed[first:last].mean()), float(np.abs(rows.amps[first:last]).mean()))


@settings(max_examples=100, deadline=None)
@given(rows=recordings(), data=st.data())
def test_what_moved_during_a_run(plain, rows, data):
    spots = st.integers(0, len(rows) - 1)
    with mock.patch.multiple(long_table, **SMALL):
        levels = Levels(plain.MemoryAttic())
        start_ns = int(rows.t_ns[data.draw(spots)]) - data.draw(st.integers(0, BIN_NS))
        beside, end_ns = RunLevels(levels), start_ns
        for part in cut(rows, data.draw(st.lists(spots, max_size=10))):
            levels.take(part)
            end_ns = max(end_ns, int(part.t_ns[-1]) - data.draw(st.integers(0, 3 * BIN_NS)))
            found, whole = beside.over(start_ns, end_ns), levels.within(start_ns, end_ns)
            for column, swing in (
                (whole.amps, found.swing_a),
                (whole.feed - whole.back, found.swing_v),
            ):
                there = column[np.isfinite(column)]
                assert swing == (float(np.ptp(there)) if len(there) else 0.0)
            amps = whole.amps[np.isfinite(whole.amps)]
            mean = found.mean_a(start_ns, end_ns)
            assert mean == (float(amps.mean()) if len(amps) else None)


@pytest.mark.parametrize("apart", [6, 8, 10, 12, 14, 20])
def test_jumps_close_together_asked_bin_by_bin(plain, apart):
    legs = [(40, 12.2), (apart, 6.0), (apart, 9.0), (apart, 12.2), (40, 7.5)]
    feed = np.concatenate([np.full(count, volts) for count, volts in legs])
    amps = 5.7 + np.random.default_rng(1).normal(0.0, 0.01, len(feed))
    rows = rows_of(np.arange(len(feed)) * BIN_NS, amps, feed, np.full(len(feed), 0.2))
    levels = Levels()
    moved = MovedProbes(levels, 1.0)
    for part in cut(rows, range(len(rows))):
        levels.take(part)
        assert moved.slips(()) == plain.moved_probes(levels.part(0, len(levels)), 1.0, ())
    assert moved.slips(())


@settings(max_examples=80, deadline=None)
@given(rows=recordings(), data=st.data(), top=st.sampled_from([1.0, 5.7, 6.0, 20.0]))
def test_the_first_current_above_a_range(plain, rows, data, top):
    channel = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT)
    spots = st.integers(0, len(rows) - 1)
    since_ns = int(rows.t_ns[data.draw(spots)]) - data.draw(st.integers(-BIN_NS, 10**11))
    watch = ZeroWatch([Instrument("meter", "test", "-", (channel,))], None)
    text = zero_text("amps", "A", Zero(0.1, 0.01, 30, range_top=top))
    watch.take(Event(since_ns, EventKind.ZERO, text, "meter"))
    with mock.patch.multiple(long_table, **SMALL):
        levels = Levels(plain.MemoryAttic())
        for part in cut(rows, data.draw(st.lists(spots, max_size=10))):
            levels.take(part)
            whole = levels.part(0, len(levels))
            beyond = whole.t_ns[(np.abs(whole.amps) > top) & (whole.t_ns > since_ns)]
            told = [d for d in watch.doubts(levels, 0) if d.kind is DoubtKind.ZERO_RANGE]
            assert [one.start_ns for one in told] == [max(at, 0) for at in beyond[:1].tolist()]
