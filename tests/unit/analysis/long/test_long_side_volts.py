"""Channels of a long recording give the same figures whether they were laid aside or not."""

from itertools import pairwise
from unittest import mock

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis import long_table
from meterlog.analysis.labels import Stretch
from meterlog.analysis.levels import BIN_NS
from meterlog.analysis.rows import Rows
from meterlog.analysis.side_volts import SideVolts
from meterlog.model import Block, Channel, Instrument, Limits, Quantity, Role, Step

SMALL = {"BLOCK": 8, "MOST_HELD": 32, "_FIRST_ROOM": 4}
METER = Instrument(
    "meter", "test", "-", (Channel("battery", Quantity.VOLTAGE, Role.BATTERY, interval_s=0.05),)
)


class Plain:
    """All readings of one channel in bins side by side, added up by numpy itself."""

    def __init__(self, t_ns, values):
        bins = t_ns // BIN_NS
        starts = np.concatenate(([0], np.flatnonzero(np.diff(bins)) + 1))
        self.bins, self.first = bins[starts], t_ns[starts]
        self.last = t_ns[np.append(starts[1:], len(t_ns)) - 1]
        ends = np.append(starts[1:], len(t_ns))
        sums = np.zeros((3, len(starts)))
        columns = (values, values * values, np.ones(len(t_ns)))
        for value_sums, column in zip(sums, columns, strict=True):
            for at, (a, b) in enumerate(zip(starts, ends, strict=True)):
                for one in column[a:b]:
                    value_sums[at] += one
        self.sums = sums

    def total(self, start_ns, end_ns):
        inside = (self.first >= start_ns) & (self.last <= end_ns)
        part = self.sums[:, np.flatnonzero(inside)]
        return np.ascontiguousarray(part).sum(axis=1)


def rows_of(t_ns):
    n = len(t_ns)
    return Rows(t_ns, np.zeros(n), None, None, np.ones(n, np.bool_), np.zeros(n, np.bool_))


def level_of(total):
    mean = total[0] / total[2]
    spread = max(total[1] - total[2] * mean * mean, 0.0)
    return mean, (spread / (total[2] - 1.0)) ** 0.5 if total[2] > 1 else 0.0, int(total[2])


@settings(max_examples=120, deadline=None)
@given(data=st.data(), n=st.integers(1, 500), interval_s=st.sampled_from([0.03, 0.1, 0.17]))
def test_means_of_readings_one_by_one_are_numpys_own(plain, data, n, interval_s):
    """One by one, as slow meters send them: then the order of all sums is known."""
    rng = np.random.default_rng(n)
    t_ns = np.round((np.arange(n) + rng.uniform(0, 0.3, n)) * interval_s * 1e9).astype(np.int64)
    values = rng.normal(12.0, 0.5, n)
    known = Plain(t_ns, values)
    with mock.patch.multiple(long_table, **SMALL):
        side = SideVolts([METER], Limits(), plain.MemoryAttic())
        for at in range(n):
            part = slice(at, at + 1)
            none = np.zeros((1, 1), np.uint8)
            side.take(Block("meter", t_ns[part], values[part, np.newaxis], none))
        for _ in range(6):
            start, end = sorted(
                data.draw(st.integers(-BIN_NS, int(t_ns[-1]) + BIN_NS)) for _ in "ab"
            )
            total, level = known.total(start, end), side.mean(Role.BATTERY, start, end)
            if not total[2]:
                assert level is None
                assert side.series(Role.BATTERY, start, end) is None
                continue
            assert tuple(level) == level_of(total)
            series = side.series(Role.BATTERY, start, end)
            inside = (known.first >= start) & (known.last <= end)
            assert np.array_equal(series.bins, known.bins[inside])
            assert np.array_equal(series.mean, (known.sums[0] / known.sums[2])[inside])
            middle = known.first + (known.last - known.first) // 2
            assert np.array_equal(series.t_ns, middle[inside])


@pytest.mark.parametrize("laid", [True, False])
def test_steady_figures_of_steps_do_not_depend_on_how_often_they_were_asked_for(plain, laid):
    n = 24_000
    rng = np.random.default_rng(2)
    t_ns = np.arange(n, dtype=np.int64) * 50_000_000
    values = rng.normal(12.0, 0.3, n)
    # Steady for 90 s, then a dropout of 5 s, and so on; steps of 250 s.
    period = (t_ns // 1_000_000_000) % 95
    steady = period < 90

    def fed(asked, attic):
        side = SideVolts([METER], Limits(), attic)
        answers = []
        for a, b in pairwise(range(0, n + 1, 200)):
            none = np.zeros((b - a, 1), np.uint8)
            side.take(Block("meter", t_ns[a:b], values[a:b, np.newaxis], none))
            cuts = [0, *(np.flatnonzero(np.diff(steady[a:b])) + 1).tolist(), b - a]
            parts = [
                Stretch(x, y, 4, steady=bool(steady[a + x])) for x, y in pairwise(cuts) if y > x
            ]
            side.take_rows(rows_of(t_ns[a:b]), parts)
            if asked:
                answers.append(side.with_side_volts(steps(int(t_ns[b - 1]))))
        return answers, side

    def steps(end_ns):
        edges = [*range(0, end_ns, 250_000_000_000), end_ns]
        return [Step(4, a, b) for a, b in pairwise(edges)]

    answers, side = fed(asked=True, attic=plain.MemoryAttic() if laid else None)
    _, never = fed(asked=False, attic=None)
    whole = steps(int(t_ns[-1]))
    assert side.with_side_volts(whole) == never.with_side_volts(whole) == answers[-1]
    assert all(step.steady_battery_v for step in answers[-1])
