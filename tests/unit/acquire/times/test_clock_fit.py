"""The line between an instrument's clock and this computer's."""

import numpy as np
import pytest

from meterlog.acquire.times.clock_fit import ClockFit
from meterlog.acquire.times.stamping import Sending, Stamper
from meterlog.instruments import Readings

S = 1_000_000_000


def rows(own: np.ndarray) -> Readings:
    return Readings(np.zeros((len(own), 1)), np.zeros((len(own), 1), np.uint8), own)


def stamped(stamper: Stamper, own: np.ndarray, arrived: np.ndarray, lump: int = 1) -> np.ndarray:
    """Give the stamps of readings that arrive ``lump`` at a time, with the last one's arrival."""
    out = []
    for start in range(0, len(own), lump):
        part = own[start : start + lump]
        out += stamper.take(rows(part), int(arrived[min(start + lump, len(own)) - 1]))
    out += stamper.gone()
    return np.concatenate([one.t_ns for one in out if one.readings is not None])


def delays(count: int, seed: int) -> np.ndarray:
    rng = np.random.default_rng(seed)
    late = rng.exponential(0.003, count)
    late[rng.random(count) < 0.01] += 0.3
    return late


@pytest.mark.parametrize("ppm", [200.0, -200.0, 0.0])
def test_over_an_hour_stamps_stay_within_the_jitter_and_the_ppm_is_found(ppm):
    count = 7200
    true = 0.5 + np.arange(count) * 0.5
    own = 17.0 + true * (1.0 + ppm * 1e-6)
    arrived = np.maximum.accumulate(np.rint((true + delays(count, 3)) * 1e9).astype(np.int64))
    stamper = Stamper(Sending(0.5))
    error = stamped(stamper, own, arrived) / 1e9 - true
    assert np.abs(error).max() < 0.012  # four times the mean delay
    assert np.abs(error[300:]).max() < 0.003
    line = stamper.lines[1]
    assert line.ppm == pytest.approx(ppm, abs=3.0 * line.ppm_u)
    assert line.ppm_u < 2.0
    assert line.points > 120
    assert stamper.counts.jumps == 0
    assert stamper.lost == 0


def test_the_line_never_jumps_when_a_less_late_arrival_shows_it_was_too_late():
    true = np.arange(1, 400) * 0.1
    late = np.full(len(true), 0.030)
    late[100:] = 0.0
    arrived = np.rint((true + late) * 1e9).astype(np.int64)
    stamps = stamped(Stamper(Sending(0.1)), true, arrived)
    steps = np.diff(stamps[:100]) / 1e9
    assert np.all(np.abs(steps - 0.1) < 0.0021)
    # No stamp is after its arrival, so here one step must be short; after that all are even.
    assert np.all(np.abs(np.diff(stamps[101:]) / 1e9 - 0.1) < 0.0021)


def test_nor_does_it_jump_within_a_lump():
    true = np.arange(1, 401) * 0.1
    late = np.full(len(true), 0.030)
    late[100:] = 0.0
    arrived = np.rint((true + late) * 1e9).astype(np.int64)
    error = stamped(Stamper(Sending(0.1)), true, arrived, lump=5) / 1e9 - true
    # The first of each lump is far from its arrival: half a second brings in 10 ms at most.
    assert np.abs(np.diff(error[0::5])).max() < 0.0101
    assert abs(error[-5]) < 0.003


def test_one_late_arrival_moves_nothing():
    true = np.arange(1, 300) * 0.1
    late = np.full(len(true), 0.001)
    late[150] = 0.09
    arrived = np.rint((true + late) * 1e9).astype(np.int64)
    error = stamped(Stamper(Sending(0.1)), true, arrived) / 1e9 - true
    assert np.abs(error - 0.001).max() < 1e-6


def test_a_window_that_was_late_as_a_whole_moves_nothing():
    fit = ClockFit(1.0, 50)
    rng = np.random.default_rng(1)
    for number in range(500):
        x = number * 0.1
        late = 0.5 if 200 <= number < 215 else rng.exponential(0.0005)
        fit.add(x, round((x + late) * S))
    assert abs(fit.at(49.0) / S - 49.0) < 0.001
    assert abs(fit.line.ppm) < 20.0
    assert fit.line.scatter_s < 0.001


def test_a_clock_that_is_restarted_or_runs_over_is_tied_anew_and_told():
    stamper = Stamper(Sending(0.1))
    before = np.arange(100) * 0.1 + 1000.0
    stamped(stamper, before, np.rint((before - 999.0) * 1e9).astype(np.int64))
    after = np.arange(50) * 0.1
    stamps = stamped(stamper, after, np.rint((after + 20.0) * 1e9).astype(np.int64))
    assert np.abs(stamps / 1e9 - 20.0 - after).max() < 1e-6
    assert stamper.counts.jumps == 1


def test_a_clock_that_is_set_forward_is_tied_anew_and_no_stamp_is_in_the_future():
    stamper = Stamper(Sending(0.1))
    true = np.arange(1, 400) * 0.1
    own = true + np.where(true > 20.0, 3600.0, 0.0)
    stamps = stamped(stamper, own, np.rint(true * 1e9).astype(np.int64))
    assert np.all(stamps <= np.rint(true * 1e9))
    assert np.abs(stamps / 1e9 - true).max() < 0.001
    assert stamper.counts.jumps == 1


def test_a_clock_that_stood_still_is_tied_anew_after_a_while():
    stamper = Stamper(Sending(0.1))
    true = np.arange(1, 600) * 0.1
    own = true - np.where(true > 20.0, 0.4, 0.0)
    own = np.maximum.accumulate(own)
    stamps = stamped(stamper, own, np.rint(true * 1e9).astype(np.int64))
    assert np.abs(stamps[300:] / 1e9 - true[300:]).max() < 0.005
    assert stamper.counts.jumps == 1


SAMPLES = Sending(0.001, sample_s=0.001, unasked=False)


@pytest.mark.parametrize("missing", [37, 400, 5000])
def test_samples_the_device_lost_are_counted_and_are_no_drift(missing):
    """1 kS/s in blocks of a tenth of a second; the device's buffer overran once."""
    stamper = Stamper(SAMPLES)
    true = (np.arange(40_000) + 1) * 0.001
    true[20_000:] += missing * 0.001
    own = np.arange(40_000) * 0.001  # it counts the samples that it has
    rng = np.random.default_rng(2)
    out, now = [], 0
    for start in range(0, 40_000, 100):
        part = slice(start, start + 100)
        now = round((true[start + 99] + rng.exponential(0.0005)) * 1e9)
        out += stamper.check(now)
        out += stamper.take(rows(own[part]), now)
        out += stamper.check(now + 90_000_000)
    out += stamper.gone()
    stamps = np.concatenate([one.t_ns for one in out])
    assert len(stamps) == 40_000
    assert abs(stamper.lost - missing) <= 1
    error = stamps / 1e9 - true
    assert np.abs(error[1000:]).max() < 0.0025
    assert abs(stamper.lines[1].ppm) < 100.0


def test_a_block_that_was_only_late_is_no_loss():
    stamper = Stamper(SAMPLES)
    own = np.arange(20_000) * 0.001
    out = []
    for start in range(0, 20_000, 100):
        now_s = own[start + 99] + 0.001
        if start in (10_000, 10_100):  # the host was busy: these came together with the third
            now_s = own[10_299] + 0.001
        out += stamper.take(rows(own[start : start + 100]), round(now_s * 1e9))
    stamps = np.concatenate([one.t_ns for one in out])
    assert np.abs(stamps / 1e9 - own - 0.001).max() < 1e-6
    assert stamper.lost == 0
    assert stamper.counts.mended > 0


def test_lines_missing_between_own_times_are_counted():
    stamper = Stamper(Sending(0.1))
    true = np.arange(1, 200) * 0.1
    kept = np.delete(true, [50, 120, 121, 122])
    stamped(stamper, kept, np.rint(kept * 1e9).astype(np.int64))
    assert stamper.lost == 4
