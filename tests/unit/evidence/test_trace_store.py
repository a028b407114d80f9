import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence.pixel_columns import pixel_columns, thin
from meterlog.evidence.trace_store import TraceLine, TraceStore
from meterlog.model import Block, Channel, Instrument, Quantity, Role

MS = 1_000_000


def _line(**sizes):
    channel = Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.001)
    return TraceLine("current", channel, **sizes)


def _wave(count, seed=1):
    noise = np.random.default_rng(seed)
    return np.arange(count, dtype=np.int64) * MS, noise.normal(0.0, 1.0, count)


@given(
    count=st.integers(1, 1500),
    columns=st.integers(1, 60),
    cut=st.tuples(st.integers(0, 3000), st.integers(1, 3000)),
    missing=st.floats(0, 0.5),
)
def test_every_column_of_pixels_shows_the_extremes_of_its_readings(count, columns, cut, missing):
    t_ns, values = _wave(count)
    values[np.random.default_rng(2).random(count) < missing] = np.nan
    start_ns, end_ns = cut[0] * MS, (cut[0] + cut[1]) * MS
    points_t, points = pixel_columns(t_ns, values, start_ns, end_ns, columns)
    assert points_t.shape == points.shape
    assert points.shape[0] <= 2 * columns + 4
    assert np.all(np.diff(points_t) >= 0)
    inside = values[(t_ns >= start_ns) & (t_ns <= end_ns)]
    inside = inside[np.isfinite(inside)]
    if inside.size:
        assert np.nanmin(points) <= inside.min()
        assert np.nanmax(points) >= inside.max()
    edges = np.linspace(start_ns, end_ns, columns + 1)
    if np.count_nonzero((t_ns >= start_ns) & (t_ns <= end_ns)) > 2 * columns + 4:
        for place, low, high in zip(points_t[0::2], points[0::2], points[1::2], strict=True):
            column = int(np.searchsorted(edges, place, side="right")) - 1
            if 0 < column < columns - 1 and np.isfinite(low) and low != high:
                part = values[(t_ns >= int(edges[column])) & (t_ns < int(edges[column + 1]))]
                assert low == np.nanmin(part)
                assert high == np.nanmax(part)


def test_a_single_peak_among_a_million_is_still_there():
    t_ns, values = np.arange(1_000_000, dtype=np.int64) * MS, np.zeros(1_000_000)
    values[654_321] = 60.0
    points_t, points = pixel_columns(t_ns, values, 0, int(t_ns[-1]), 800)
    place = int(points.argmax())
    assert points[place] == 60.0
    assert abs(points_t[place] - 654_321 * MS) <= t_ns[-1] / 800


def test_a_gap_wider_than_a_pixel_stays_a_gap():
    t_ns, values = _wave(10_000)
    values[4000:4500] = np.nan
    points_t, points = pixel_columns(t_ns, values, 0, int(t_ns[-1]), 100)
    holes = points_t[np.isnan(points)]
    assert holes.size >= 8
    assert 3999 * MS <= holes.min() <= holes.max() <= 4500 * MS


def test_thinning_keeps_the_extremes_at_their_own_times():
    t_ns, values = _wave(4096)
    kept_t, kept = thin(t_ns, values, 8)
    assert kept.shape == (1024,)
    assert np.all(np.diff(kept_t) >= 0)
    groups = values.reshape(-1, 8)
    assert np.array_equal(kept.reshape(-1, 2).min(axis=1), groups.min(axis=1))
    assert np.array_equal(kept.reshape(-1, 2).max(axis=1), groups.max(axis=1))
    assert np.array_equal(values[kept_t // MS], kept)


def test_thinning_a_group_of_nothing_gives_nothing():
    t_ns, values = _wave(16)
    values[:8] = np.nan
    kept = thin(t_ns, values, 8)[1]
    assert np.isnan(kept[:2]).all()
    assert np.isfinite(kept[2:]).all()


@given(st.lists(st.integers(1, 700), min_size=1, max_size=12))
def test_a_line_is_the_same_however_its_readings_come(cuts):
    t_ns, values = _wave(4000)
    whole, pieces = _line(tail=512, cap=1024), _line(tail=512, cap=1024)
    whole.append(t_ns, values)
    at = 0
    for cut in [*cuts, 4000]:
        pieces.append(t_ns[at : at + cut], values[at : at + cut])
        at = min(at + cut, 4000)
    for a, b in zip(whole.shown(0, 4000 * MS, 100), pieces.shown(0, 4000 * MS, 100), strict=True):
        assert np.array_equal(a, b)


def test_memory_stays_bounded_and_no_peak_is_lost():
    line = _line(tail=1024, cap=4096)
    t_ns, values = _wave(400_000)
    values[1234] = 99.0
    values[301_234] = -99.0
    for at in range(0, 400_000, 1000):
        line.append(t_ns[at : at + 1000], values[at : at + 1000])
        assert line._old_t.shape[0] <= 4096 + 512
    points_t, points = line.shown(0, 400_000 * MS, 50)
    assert points.max() == 99.0
    assert points.min() == -99.0
    assert np.all(np.diff(points_t) >= 0)
    assert line.count == 400_000


def test_the_newest_readings_are_kept_as_they_are():
    line = _line(tail=1024, cap=4096)
    t_ns, values = _wave(100_000)
    line.append(t_ns, values)
    points_t, points = line.shown(99_700 * MS, 100_000 * MS, 4000)
    assert np.array_equal(points[1:], values[99_700:])
    assert np.array_equal(points_t[1:], t_ns[99_700:])


def test_a_silence_becomes_a_gap_but_a_late_reading_does_not():
    line = _line()
    line.append(np.array([0, MS, 4 * MS, 9 * MS]), np.array([1.0, 1.0, 1.0, 2.0]))
    values = line.shown(0, 10 * MS, 100)[1]
    assert np.array_equal(values, [1.0, 1.0, 1.0, np.nan, 2.0], equal_nan=True)


def _meter(*roles):
    channels = tuple(
        Channel(f"c{i}", r.quantity or Quantity.VOLTAGE, r) for i, r in enumerate(roles)
    )
    return Instrument("m", "m", "", channels)


def test_only_channels_with_a_role_are_drawn_unless_none_has_one():
    some = TraceStore([_meter(Role.OTHER, Role.MOTOR_FEED)])
    assert [line.role for line in some.lines] == [Role.MOTOR_FEED]
    assert len(TraceStore([_meter(Role.OTHER, Role.OTHER)]).lines) == 2


def test_a_store_puts_each_column_on_its_own_line_and_knows_its_flags():
    store = TraceStore([_meter(Role.OTHER, Role.MOTOR_FEED, Role.MOTOR_CURRENT)])
    flags = np.array([[0, 0, 0], [0, 0, 1]], np.uint8)
    values = np.array([[9.0, 12.0, 3.0], [9.0, 12.5, np.nan]])
    store.take(Block("m", np.array([0, 50 * MS]), values, flags))
    store.take(Block("stranger", np.array([60 * MS]), values[:1], flags[:1]))
    feed, current = store.line(Role.MOTOR_FEED), store.line(Role.MOTOR_CURRENT)
    assert feed.last == 12.5
    assert np.isnan(current.last)
    assert (feed.last_flags, current.last_flags) == (0, 1)
    assert (current.low, current.high) == (3.0, 3.0)
    assert store.end_ns == 50 * MS
    assert store.of(Quantity.CURRENT) == (current,)
    assert store.line(Role.BATTERY) is None


@pytest.mark.parametrize("columns", [0, 1])
def test_a_plot_without_room_is_no_error(columns):
    t_ns, values = _wave(100)
    assert pixel_columns(t_ns, values, 0, 100 * MS, columns)[1].size <= 6


def test_many_readings_around_a_silence_stay_in_their_columns_and_the_line_is_broken():
    line = TraceLine("feed", Channel("v", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.001))
    before = np.arange(0, 2_000) * 1_000_000
    after = np.arange(6_000, 8_000) * 1_000_000
    for t_ns, value in ((before, 5.0), (after, 7.0)):
        line.append(t_ns.astype(np.int64), np.full(len(t_ns), value))
    t_ns, values = line.shown(0, 8_000_000_000, 400)
    gap = np.flatnonzero(np.isnan(values))
    assert len(gap)
    assert (t_ns[gap] >= 2_000_000_000).all()
    assert (t_ns[gap] < 6_000_000_000).all()
    assert (values[: gap[0]] == 5.0).all()
    assert (values[gap[-1] + 1 :] == 7.0).all()
    assert t_ns[gap[0] - 1] < 2_000_000_000
    assert t_ns[gap[-1] + 1] >= 6_000_000_000


def test_a_reading_behind_the_stretch_is_in_no_column():
    line = TraceLine("feed", Channel("v", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.001))
    t_ns = np.arange(0, 3_000, dtype=np.int64) * 1_000_000
    values = np.ones(3_000)
    values[2_001] = 99.0
    line.append(t_ns, values)
    assert np.nanmax(line.shown(0, 2_000_000_000, 100)[1]) == 1.0
