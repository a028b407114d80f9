"""SideVolts: means over any stretch, however the readings came."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.analysis.side_volts import SideVolts
from meterlog.model import Block, Flag, Role, Step


def rows_of(t_ns):
    n = len(t_ns)
    return Rows(t_ns, np.zeros(n), None, None, np.ones(n, np.bool_), np.zeros(n, np.bool_))


@pytest.fixture
def side(panel):
    return SideVolts([panel.instrument(("battery", "command"))], panel.trace.limits())


def block(t_s, battery, command=None, flags=None):
    t_ns = np.round(np.asarray(t_s) * 1e9).astype(np.int64)
    command = np.zeros(len(t_ns)) if command is None else command
    values = np.column_stack((battery, command)).astype(float)
    none = np.zeros(values.shape, np.uint8)
    return Block("meter", t_ns, values, none if flags is None else flags)


def test_mean_sd_and_count_are_those_of_the_readings(side):
    t_s = np.arange(0.0, 10.0, 0.01)
    values = 12.4 + np.random.default_rng(1).normal(0.0, 0.05, len(t_s))
    side.take(block(t_s, values))
    level = side.mean(Role.BATTERY, 2_000_000_000, 3_999_999_999)
    inside = values[200:400]
    assert level.n == 200
    assert level.mean == pytest.approx(inside.mean(), rel=1e-12)
    assert level.sd == pytest.approx(inside.std(ddof=1), rel=1e-6)


def test_where_nothing_was_read_there_is_no_mean(side):
    assert side.mean(Role.BATTERY, 0, 10**10) is None
    assert side.mean(Role.RELAY_OUT, 0, 10**10) is None
    nothing = np.full((3, 2), int(Flag.OVERLOAD), np.uint8)
    side.take(block([0.0, 0.1, 0.2], [12.0, 12.0, 12.0], flags=nothing))
    assert side.mean(Role.BATTERY, 0, 10**10) is None
    side.take(block([0.3, 0.4], [12.0, np.nan]))
    assert side.mean(Role.BATTERY, 0, 10**10).n == 1


def test_a_slow_meters_reading_has_its_own_time(side):
    side.take(block([0.07, 0.37, 0.67], [12.0, 12.1, 12.2]))
    series = side.series(Role.BATTERY, 0, 10**9)
    assert series.t_ns.tolist() == [70_000_000, 370_000_000, 670_000_000]


def test_bins_that_lie_half_outside_do_not_count(side):
    t_s = np.arange(0.0, 1.0, 0.01)
    side.take(block(t_s, np.where(t_s < 0.55, 12.0, 2.0)))
    assert side.mean(Role.BATTERY, 0, 550_000_000).mean == 12.0


def test_the_steady_mean_leaves_out_start_up_dropouts_and_the_last_moments(side, panel):
    t_s = np.arange(0.0, 10.0, 0.05)
    t_ns = np.round(t_s * 1e9).astype(np.int64)
    battery = np.where(t_s < 2.0, 10.0, 12.0)
    battery[t_s >= 9.75] = 14.0
    side.take(block(t_s, battery, 0.5 * battery))
    side.take_rows(
        rows_of(t_ns), [Stretch(0, 40, 4, steady=False), Stretch(40, 200, 4, steady=True)]
    )

    (step,) = side.with_side_volts([Step(4, 0, 10_000_000_000)])
    assert step.steady_battery_v == pytest.approx(12.0)
    assert step.steady_command_v == pytest.approx(6.0)


@settings(max_examples=60)
@given(
    data=st.data(),
    n=st.integers(1, 400),
    interval_s=st.sampled_from([0.0005, 0.03, 0.1, 0.41]),
)
def test_means_and_steady_runs_are_the_same_however_the_data_is_cut(panel, data, n, interval_s):
    t_s = np.arange(n) * interval_s
    battery = 12.0 + np.random.default_rng(n).normal(0.0, 0.3, n)
    whole_block = block(t_s, battery)
    steady_from = data.draw(st.integers(0, n))
    meter = panel.instrument(("battery", "command"))

    def feed(places):
        side = SideVolts([meter], panel.trace.limits())
        for a, b in pairwise(places):
            part = whole_block.rows(a, b)
            side.take(part)
            if not len(part):
                continue
            at = min(max(steady_from - a, 0), b - a)
            both = [Stretch(0, at, 4, steady=False), Stretch(at, b - a, 4, steady=True)]
            side.take_rows(rows_of(part.t_ns), [one for one in both if one.stop > one.start])
        return side

    cuts = data.draw(st.lists(st.integers(0, n), max_size=20))
    whole, cut = feed([0, n]), feed(sorted({0, n, *cuts}))
    end = int(whole_block.t_ns[-1]) + 1
    for start_ns, end_ns in ((0, end), (end // 3, end), (0, end // 2)):
        one, other = (s.mean(Role.BATTERY, start_ns, end_ns) for s in (whole, cut))
        assert (one is None) == (other is None)
        if one is not None:
            assert one.n == other.n
            assert one.mean == pytest.approx(other.mean, rel=1e-12)
            assert one.sd == pytest.approx(other.sd, rel=1e-6, abs=1e-6)
    assert list(whole.steady_parts(0, end)) == list(cut.steady_parts(0, end))
