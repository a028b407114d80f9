import dataclasses

import numpy as np
import pytest

from meterlog.instruments.virtual.meter import MeterModel, decimals
from meterlog.instruments.virtual.simulate import plain_meter
from meterlog.instruments.virtual.voice import window_means
from meterlog.model import Accuracy, Channel, Quantity, Range

POINTS = np.array([[12.4, 12.0, 2.5, 9.0, 0.1]])


def model(**changes):
    plain = plain_meter(0.05, 0.05)
    channels = tuple(dataclasses.replace(channel, **changes) for channel in plain.channels)
    return MeterModel(dataclasses.replace(plain, channels=channels), "test", 1)


def test_readings_stay_within_the_stated_accuracy():
    accuracy = Accuracy(0.5, 5.0, 0.001)
    for seed in range(20):
        profile = plain_meter(0.05, 0.05)
        channels = tuple(dataclasses.replace(c, accuracy=accuracy) for c in profile.channels)
        meter = MeterModel(dataclasses.replace(profile, channels=channels), "test", seed)
        shown = meter.show(np.repeat(POINTS, 200, axis=0))
        values = meter.channel_values(shown)
        for column, true in enumerate((12.0, 2.5, 9.0)):
            assert np.abs(values[:, column] - true).max() <= accuracy.half_width(true)


def test_no_two_specimens_show_quite_the_same():
    plain = plain_meter(0.05, 0.05)
    shown = {MeterModel(plain, "test", seed).show(POINTS).raw[0, 0] for seed in range(10)}
    assert len(shown) > 5


def test_readings_are_whole_counts_of_the_last_digit():
    raw = model(accuracy=Accuracy(0.1, 1.0, 0.05)).show(np.repeat(POINTS, 50, axis=0)).raw
    counts = raw / 0.05
    assert counts == pytest.approx(np.round(counts), abs=1e-6)
    assert len(np.unique(raw[:, 0])) > 1


def test_a_scale_and_an_offset_are_those_that_a_reader_undoes():
    scaled = model(scale=100.0, offset=0.25, accuracy=Accuracy(0.0, 0.0, 0.001))
    shown = scaled.show(POINTS)
    assert shown.raw[0, 2] == pytest.approx((9.0 + 0.25) / 100.0, abs=1e-4)
    assert scaled.channel_values(shown)[0, 2] == pytest.approx(9.0, abs=0.01)


def test_beyond_the_range_there_is_no_number():
    meter = model()
    meter.set_range(Quantity.VOLTAGE, 5.0)
    shown = meter.show(np.array([[12.4, 5.9, 6.1, 9.0, 0.0]]))
    assert shown.overload.tolist() == [[False, True, False]]
    assert np.isnan(shown.raw[0, 1])
    assert not shown.negative[0, 1]
    assert meter.show(np.array([[0.0, -7.0, 0.0, 0.0, 0.0]])).negative[0, 0]


def test_noise_does_not_depend_on_how_the_rows_are_cut():
    rows = np.repeat(POINTS, 30, axis=0)
    whole = model().show(rows).raw
    pieces = model()
    parts = [pieces.show(rows[a:b]).raw for a, b in ((0, 1), (1, 11), (11, 30))]
    assert np.array_equal(np.concatenate(parts), whole)


def test_the_decimals_written_hold_the_last_digit():
    def channel(resolution, scale=1.0):
        accuracy = Accuracy(0.0, 0.0, resolution)
        return Channel("x", Quantity.VOLTAGE, scale=scale, accuracy=accuracy)

    assert decimals(channel(0.001)) == 3
    assert decimals(channel(0.005)) == 3
    assert decimals(channel(1.0)) == 0
    assert decimals(channel(0.01, scale=100.0)) == 4


def test_a_reading_is_the_mean_over_its_window():
    trace = np.arange(20.0).reshape(10, 2)
    means = window_means(trace, np.array([2, 10]), 4)
    assert means[0] == pytest.approx(trace[0:2].mean(axis=0))
    assert means[1] == pytest.approx(trace[6:10].mean(axis=0))


RANGES = tuple(Range(top, Accuracy(0.5, 2.0, top / 6000)) for top in (0.6, 6.0, 60.0, 600.0))


def test_a_meter_with_ranges_stands_on_the_one_that_suits_a_fan_circuit():
    meter = model(ranges=RANGES, accuracy=RANGES[-1].accuracy)
    raw = meter.show(np.repeat(POINTS, 50, axis=0)).raw[:, 0]
    assert raw / 0.01 == pytest.approx(np.round(raw / 0.01), abs=1e-6)
    assert np.ptp(raw) > 0.0


def test_a_range_that_is_asked_for_is_the_narrowest_that_has_it():
    meter = model(ranges=RANGES, accuracy=RANGES[-1].accuracy)
    meter.set_range(Quantity.VOLTAGE, 5.0)
    shown = meter.show(np.array([[12.4, 5.9, 6.1, 9.0, 0.0]]))
    assert shown.overload[0].tolist() == [False, True, False]
    assert shown.raw[0, 0] == pytest.approx(5.9, abs=0.05)
    meter.set_range(Quantity.VOLTAGE, 1e4)
    coarse = meter.show(np.array([[12.4, 5.9, 6.1, 9.0, 0.0]])).raw[0, 0]
    assert coarse / 0.1 == pytest.approx(round(coarse / 0.1), abs=1e-6)
    meter.restore()
    assert not meter.show(np.array([[12.4, 12.0, 12.0, 9.0, 0.0]])).overload.any()


def test_a_second_specimen_on_a_bench_has_errors_of_its_own():
    plain = plain_meter(0.05, 0.05)
    shown = [MeterModel(plain, "test", 1, key=key).show(POINTS).raw for key in ("", "virtual-2")]
    assert not np.array_equal(*shown)
    assert np.array_equal(shown[0], MeterModel(plain, "test", 1, key="virtual").show(POINTS).raw)
