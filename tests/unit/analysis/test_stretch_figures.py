"""The figures of a stretch: what the whole array says, however it comes in."""

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.stretch_figures import StretchFigures
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Event,
    EventKind,
    Flag,
    Instrument,
    Quantity,
    Role,
    Sensor,
    SensorKind,
    Zero,
)
from meterlog.model.zero_text import zero_text

STATED = Accuracy(0.5, 3, 0.001, 0.02, "invented, for a test")
METER = Instrument(
    "dmm",
    "invented",
    "socket://localhost:1",
    (
        Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, accuracy=STATED),
        Channel(
            "clamp",
            Quantity.CURRENT,
            Role.MOTOR_CURRENT,
            sensor=Sensor(kind=SensorKind.CLAMP),
        ),
    ),
)


def readings(n=200, seed=3):
    rng = np.random.default_rng(seed)
    values = np.column_stack([12.4 + rng.normal(0, 0.05, n), 8.0 + rng.normal(0, 0.2, n)])
    flags = np.zeros(values.shape, np.uint8)
    values[::17, 1] = np.nan
    flags[::17, 1] = Flag.OVERLOAD
    return Block("dmm", np.arange(n) * 100_000_000, values, flags)


def figures_of(blocks):
    made = StretchFigures((METER,))
    for block in blocks:
        made.take(block)
    return made.figures()


@given(st.lists(st.integers(1, 199), max_size=6))
def test_the_figures_are_the_same_however_the_readings_are_cut(cuts):
    whole = readings()
    edges = [0, *sorted(set(cuts)), len(whole)]
    pieces = [whole.rows(a, b) for a, b in itertools.pairwise(edges)]
    assert figures_of(pieces) == figures_of([whole])


def test_mean_median_spread_and_what_is_left_out_are_those_of_numpy():
    block = readings()
    feed, clamp = figures_of([block])
    amps = block.values[:, 1]
    amps = amps[np.isfinite(amps)]
    assert (clamp.n, clamp.left_out) == (len(amps), 12)
    assert clamp.mean.value == pytest.approx(amps.mean(), rel=1e-12)
    assert clamp.median == np.median(amps)
    assert clamp.sd == pytest.approx(amps.std(ddof=1), rel=1e-9)
    assert (clamp.low, clamp.high) == (amps.min(), amps.max())
    assert feed.left_out == 0


def test_u_holds_the_meters_statement_and_says_what_it_does_not_hold():
    feed, clamp = figures_of([readings()])
    half = STATED.half_width(feed.mean.value)
    assert 0.95 * half < feed.mean.expanded < 1.15 * half
    assert feed.mean.lacking == ""
    assert "accuracy for motor-current is not stated" in clamp.mean.lacking
    assert "no zero" in clamp.mean.lacking


def test_a_zero_taken_before_the_stretch_is_known_in_it():
    made = StretchFigures((METER,))
    zero = zero_text("clamp", "A", Zero(-0.12, 0.01, 25))
    made.take_event(Event(0, EventKind.ZERO, zero, "dmm"))
    made.take(readings())
    assert "no zero" not in made.figures()[1].mean.lacking


def test_a_stretch_without_readings_says_nothing_but_that():
    block = readings()
    block.values[:, 0] = np.nan
    feed, clamp = figures_of([block])
    assert (feed.n, feed.left_out, feed.mean, feed.median) == (0, 200, None, None)
    assert clamp.n
    assert [one.n for one in figures_of([])] == [0, 0]
