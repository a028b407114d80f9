"""A value that stands is taken; one that moves, flickers or is old is refused with words."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.settled_u import settled_u
from meterlog.analysis.settled_value import NewestReadings, Settled, Unsettled, settled_value
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import Accuracy, Channel, Flag, Instrument, Quantity

INTERVAL_S = 0.1


def readings(values, interval_s=INTERVAL_S, flags=0):
    newest = NewestReadings(interval_s)
    values = np.asarray(values, dtype=np.float64)
    t_ns = (np.arange(values.size) * interval_s * 1e9).astype(np.int64)
    newest.take(t_ns, values, np.full(values.size, flags, np.uint8))
    return newest


def settled(newest, late_s=0.0, resolution=0.01):
    now_ns = int(newest.t_ns[-1] + late_s * 1e9) if newest.t_ns.size else 0
    return settled_value(newest, now_ns, "V", resolution)


def test_a_value_that_stands_is_the_mean_of_the_newest_second():
    found = settled(readings([3.0] * 20 + [12.31, 12.33] * 6))
    assert isinstance(found, Settled)
    assert found.value == pytest.approx(12.32, abs=0.002)
    assert found.scatter.n == 11
    assert found.end_ns - found.start_ns == pytest.approx(1e9)


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ([], "no reading"),
        ([12.3] * 4, "too few"),
        (np.linspace(8.0, 12.0, 30), "still moving"),
        ([12.3] * 25 + [12.3, 6.0, 12.3, 6.0, 12.3], "flickers"),
        ([*[12.3] * 25, np.nan], "missing"),
        (np.linspace(12.0, 12.4, 30), "still moving"),
    ],
)
def test_what_does_not_stand_is_refused_with_words(values, words):
    found = settled(readings(values))
    assert isinstance(found, Unsettled)
    assert words in found.words


def test_noise_alone_is_no_drift():
    rng = np.random.default_rng(7)
    refused = 0
    for _ in range(200):
        values = 12.0 + rng.normal(0.0, 0.04, 20)
        refused += isinstance(settled(readings(values), resolution=0.001), Unsettled)
    assert refused <= 10


def test_an_old_reading_and_an_overload_are_refused():
    assert "2.0 s old" in settled(readings([12.3] * 30), late_s=2.0).words
    assert "overload" in settled(readings([12.3] * 30, flags=int(Flag.OVERLOAD))).words


def test_a_slow_meter_needs_three_readings_however_long_they_take():
    assert isinstance(settled(readings([12.3, 12.3], interval_s=2.0)), Unsettled)
    found = settled(readings([12.3, 12.31, 12.3], interval_s=2.0))
    assert isinstance(found, Settled)
    assert found.scatter.n == 3


@settings(max_examples=60, deadline=None)
@given(
    values=st.lists(st.floats(11.9, 12.1), min_size=1, max_size=80),
    cuts=st.lists(st.integers(0, 80), max_size=6),
)
def test_however_the_readings_are_cut_the_answer_is_the_same(values, cuts):
    whole = readings(values)
    t_ns = (np.arange(len(values)) * INTERVAL_S * 1e9).astype(np.int64)
    pieces = NewestReadings(INTERVAL_S)
    edges = sorted({0, len(values), *(cut for cut in cuts if cut < len(values))})
    for start, end in pairwise(edges):
        part = np.asarray(values[start:end], dtype=np.float64)
        pieces.take(t_ns[start:end], part, np.zeros(end - start, np.uint8))
    assert settled(pieces) == settled(whole)
    assert pieces.t_ns.size <= 52


def stated_channel(accuracy):
    channel = Channel("volts", Quantity.VOLTAGE, interval_s=0.1, accuracy=accuracy)
    return StatedChannel(Instrument("meter", "meter", "invented", (channel,)), 0)


def test_u_is_the_meters_statement_and_the_scatter():
    # JCGM 100:2008, 4.3.7: a rectangle of half-width 0.5 % of 12 V + 2 digits = 0.08 V.
    found = settled(readings([12.0] * 30))
    u = settled_u(stated_channel(Accuracy(0.5, 2.0, 0.01, basis="invented sheet")), found)
    assert u.standard_u == pytest.approx(0.08 / 3**0.5)
    assert u.shared_u == pytest.approx(0.06 / 3**0.5)
    assert "invented sheet" in u.basis
    spread = settled(readings([11.9, 12.1] * 15))
    assert settled_u(stated_channel(Accuracy(0.5, 2.0, 0.01)), spread).standard_u > u.standard_u


def test_without_a_statement_a_usual_meter_is_taken_and_said():
    u = settled_u(stated_channel(None), settled(readings([12.0] * 30)))
    assert u.standard_u == pytest.approx(0.08 / 3**0.5)
    assert "usual hand meter" in u.basis
