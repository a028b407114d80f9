"""Columns of a trace that were read at rates of their own. All values invented."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis import Reviewer
from meterlog.model import Accuracy, Flag, Limits, SpeedLimits, join
from meterlog.recording import ImportRequest, Recording, import_trace, trace_lots
from meterlog.recording.trace_rates import Together, TraceRates
from meterlog.recording.trace_rows import Rows

ROLES = (("motor-feed", "feed"), ("motor-return", "back"), ("motor-current", "amps"))
WHOLE = (Together((0, 1, 2)),)
STEP_S = 0.02
COUNT = 1000


def fan(count=COUNT):
    """Give times in seconds and what a fan at one speed reads: feed, return, current."""
    rng = np.random.default_rng(1)
    t = np.arange(count) * STEP_S
    return t, np.array([12.3, 6.7, 3.6]) + rng.normal(0.0, 0.02, (count, 3))


def every(n, of=COUNT, first=0):
    """Tell the rows of a column that is read in every n-th."""
    read = np.zeros(of, np.bool_)
    read[first::n] = True
    return read


def by_chance(part, seed=2):
    return np.random.default_rng(seed).random(COUNT) >= part


def rates_of(t, *read, cuts=()):
    """Give what the rows say whose columns were read there."""
    read = np.column_stack(read)
    flags = np.where(read, 0, int(Flag.NO_DATA)).astype(np.uint8)
    t_ns = np.round(np.asarray(t) * 1e9).astype(np.int64)
    rates = TraceRates(read.shape[1])
    for a, b in pairwise(sorted({0, *cuts, len(t_ns)})):
        rates.take(Rows(t_ns[a:b], np.zeros(read[a:b].shape), flags[a:b]))
    return rates.together()


ALL = every(1)


@pytest.mark.parametrize("n", [2, 3, 5, 50])
def test_a_column_read_in_every_nth_row_has_a_rate_of_its_own(n):
    t, _ = fan()
    assert rates_of(t, ALL, ALL, every(n)) == (Together((0, 1)), Together((2,), own=True))
    assert rates_of(t, every(n), every(n), ALL) == (Together((2,)), Together((0, 1), own=True))


def test_columns_read_by_turns_have_each_their_own():
    t, _ = fan()
    volts, amps = every(2), every(2, first=1)
    assert rates_of(t, volts, volts, amps) == (
        Together((0, 1), own=True),
        Together((2,), own=True),
    )


@pytest.mark.parametrize("slow_s", [0.025, 0.13, 1.0])
def test_two_meters_in_one_file_by_the_order_of_their_times(slow_s):
    fast, slow = np.arange(0.0, 60.0, STEP_S), np.arange(0.0071, 60.0, slow_s)
    t, where = np.unique(np.concatenate((fast, slow)), return_index=True)
    volts, amps = where < len(fast), where >= len(fast)
    told = rates_of(t, volts, volts, amps)
    assert [one.columns for one in told] == [(0, 1), (2,)]
    rows = Rows(
        np.round(t * 1e9).astype(np.int64),
        np.zeros((len(t), 3)),
        np.where(np.column_stack((volts, volts, amps)), 0, int(Flag.NO_DATA)).astype(np.uint8),
    )
    for one, count in zip(told, (len(fast), len(slow)), strict=True):
        assert len(one.rows_of(rows).t_ns) == count
        assert not one.rows_of(rows).flags.any()


def test_a_reading_missing_now_and_then_leaves_a_rate_a_rate():
    t, _ = fan()
    amps = every(5) & by_chance(0.05)
    assert rates_of(t, ALL, ALL, amps)[1] == Together((2,), own=True)
    nearly = every(5) | every(100, first=1)
    assert rates_of(t, ALL, ALL, nearly)[1] == Together((2,), own=True)


@pytest.mark.parametrize("part", [0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.97])
@pytest.mark.parametrize("seed", range(5))
def test_cells_left_out_by_chance_are_gaps(part, seed):
    t, _ = fan()
    assert rates_of(t, ALL, ALL, by_chance(part, seed)) == WHOLE


@pytest.mark.parametrize("stop", [100, 900])
def test_a_column_that_is_empty_for_a_long_stretch_has_a_gap(stop):
    t, _ = fan()
    amps = ALL.copy()
    amps[20:stop] = False
    assert rates_of(t, ALL, ALL, amps) == WHOLE


def test_a_few_readings_are_no_rate():
    t, _ = fan()
    amps = every(5)
    amps[50:] = False
    assert rates_of(t, ALL, ALL, amps) == WHOLE


@given(st.integers(1, 6), st.integers(0, 5), st.lists(st.integers(1, COUNT - 1), max_size=6))
@settings(deadline=None)
def test_however_the_rows_are_cut_it_is_the_same(n, first, cuts):
    t, _ = fan()
    amps = every(n, first=first) & by_chance(0.1)
    feed = by_chance(0.02, seed=3)
    feed[:500] = True
    assert rates_of(t, feed, ALL, amps) == rates_of(t, feed, ALL, amps, cuts=cuts)


# -- imported ------------------------------------------------------------------------------------


def csv(t, values, read):
    """Write a trace; what was not read is an empty cell."""
    lines = ["t,feed,back,amps"]
    for at, row, there in zip(t, values, read, strict=True):
        cells = (f"{v:.4f}" if known else "" for v, known in zip(row, there, strict=True))
        lines.append(",".join([f"{at:.4f}", *cells]))
    return "\n".join(lines) + "\n"


def imported(folder, t, values, read, events=""):
    (folder / "trace.csv").write_text(csv(t, values, read))
    marks = None
    if events:
        marks = folder / "events.csv"
        marks.write_text("elapsed_s,kind,value\n" + events)
    limits = Limits(
        supply_present_v=9.5,
        open_current_a=0.3,
        inrush_window_s=0.5,
        min_dwell_s=0.04,
        command_lag_s=0.3,
        speeds={1: SpeedLimits(2.0, 5.0)},
    )
    stated = tuple((role, Accuracy(1.0, 0.0, 0.0, 0.05, basis="invented")) for role, _ in ROLES)
    request = ImportRequest(
        folder / "trace.csv", "t", ROLES, folder / "out", marks, limits=limits, accuracy=stated
    )
    return Recording.open(import_trace(request))


def reviewed(recording):
    reviewer = Reviewer(recording.about.instruments, recording.about.limits)
    for item in recording.items():
        reviewer.feed(item)
    return reviewer.finish()


def test_each_rate_is_an_instrument_with_its_own_rows_and_interval(tmp_path):
    t, values = fan()
    recording = imported(tmp_path, t, values, np.column_stack((ALL, ALL, every(5))))
    volts, amps = recording.about.instruments
    assert (volts.key, amps.key) == ("imported", "imported-2")
    assert [one.name for one in volts.channels] == ["motor-feed", "motor-return"]
    assert [one.interval_s for one in volts.channels] == pytest.approx([0.02, 0.02])
    assert [one.interval_s for one in amps.channels] == pytest.approx([0.1])
    assert volts.url == amps.url == "trace.csv"
    block = join(list(recording.blocks("imported-2")))
    np.testing.assert_allclose(block.values[:, 0], values[::5, 2], atol=1e-4)
    np.testing.assert_array_equal(block.t_ns, np.round(t[::5] * 1e9).astype(np.int64))
    assert not block.flags.any()
    assert len(join(list(recording.blocks("imported")))) == COUNT
    assert recording.check() == ()
    assert (recording.folder / "data" / "original" / "trace.csv").is_file()


def test_a_long_trace_is_parted_the_same_lot_by_lot(tmp_path, monkeypatch):
    monkeypatch.setattr(trace_lots, "_LOT_BYTES", 1000)
    told = []
    t, values = fan()
    (tmp_path / "trace.csv").write_text(csv(t, values, np.column_stack((ALL, ALL, every(5)))))
    request = ImportRequest(tmp_path / "trace.csv", "t", ROLES, tmp_path / "out")
    recording = Recording.open(import_trace(request, told.append))
    assert [recording.rows(one.key) for one in recording.about.instruments] == [1000, 200]
    assert told == sorted(told)
    assert told[-1] == 1.0


def test_a_single_empty_cell_is_a_reading_without_data(tmp_path):
    t, values = fan()
    amps = ALL.copy()
    amps[500] = False
    recording = imported(tmp_path, t, values, np.column_stack((ALL, ALL, amps)))
    (one,) = recording.about.instruments
    flags = join(list(recording.blocks(one.key))).flags
    assert np.flatnonzero(flags[:, 2]).tolist() == [500]


@pytest.mark.parametrize("n", [2, 5])
def test_a_slower_rate_is_no_gap_and_a_gap_in_it_is_one(tmp_path, n):
    t, values = fan()
    whole = np.column_stack((ALL, ALL, every(n)))
    (tmp_path / "whole").mkdir()
    review = reviewed(imported(tmp_path / "whole", t, values, whole, "0,speed,1\n"))
    assert [one.kind for one in review.findings] == ["step-current"]
    assert review.findings[0].verdict == "pass"
    assert review.steps[0].steady_n > 0.8 * COUNT / n
    (note,) = [one for one in review.notes if "columns of one trace" in one]
    assert f"motor-current (a reading every {n * STEP_S:.3g} s)" in note
    whole[400:500, 2] = False
    review = reviewed(imported(tmp_path, t, values, whole, "0,speed,1\n"))
    (gap,) = [one for one in review.findings if one.kind == "no-data"]
    assert gap.start_ns / 1e9 == pytest.approx(8.0, abs=n * STEP_S + 1e-6)
    assert gap.end_ns / 1e9 == pytest.approx(10.0, abs=n * STEP_S + 1e-6)


@pytest.mark.parametrize("turns", [False, True])
def test_a_ground_that_opens_is_found_though_the_current_is_read_less_often(tmp_path, turns):
    t, values = fan()
    gone = (t >= 8.0) & (t < 10.0)
    values[gone] = (12.4, 12.4, 0.0)
    volts, amps = (every(2), every(2, first=1)) if turns else (ALL, every(5))
    read = np.column_stack((volts, volts, amps))
    review = reviewed(imported(tmp_path, t, values, read, "0,speed,1\n"))
    (lost,) = [one for one in review.findings if one.kind == "ground-lost"]
    assert lost.verdict == "fail"
    assert lost.start_ns / 1e9 == pytest.approx(8.0, abs=0.11)
    assert lost.end_ns / 1e9 == pytest.approx(10.0, abs=0.11)
