"""From raw units to volts and amperes."""

import math

import numpy as np
import pytest

from meterlog.acquire import MeterChoice
from meterlog.acquire.scaling import Scaling
from meterlog.acquire.talk.conversations import CONVERSATIONS
from meterlog.instruments import Readings
from meterlog.model import Channel, Flag, Quantity, Zero
from meterlog.profile import DIALECTS, load_meter

CLAMP = Channel("current", Quantity.CURRENT, scale=100.0, offset=0.4)
PROBE = Channel("feed", Quantity.VOLTAGE)


def readings(values: list[list[float]], flags: list[list[int]]) -> Readings:
    return Readings(np.array(values, order="F"), np.array(flags, np.uint8, order="F"))


def test_the_scale_comes_first_and_then_the_zero_is_subtracted_and_said():
    block = Scaling("m", (CLAMP, PROBE)).block(
        readings([[0.05, 12.0], [0.1, 12.5]], [[0, 0], [0, 4]]), np.array([1, 2])
    )
    np.testing.assert_allclose(block.values, [[4.6, 12.0], [9.6, 12.5]], rtol=1e-15)
    assert block.flags.tolist() == [[8, 0], [8, 4]]
    assert (block.source, block.t_ns.tolist()) == ("m", [1, 2])
    assert block.values.flags.f_contiguous
    assert block.flags.dtype == np.uint8


def test_what_is_unusable_stays_nan():
    block = Scaling("m", (CLAMP, PROBE)).block(
        readings([[1e30, math.nan]], [[int(Flag.OVERLOAD), int(Flag.NO_DATA)]]), np.array([1])
    )
    assert np.isnan(block.values).all()


def test_nothing_is_nan_flagged_in_every_channel():
    block = Scaling("m", (CLAMP, PROBE)).nothing(np.array([7]))
    assert np.isnan(block.values).all()
    assert block.flags.tolist() == [[2, 2]]


def test_raw_readings_are_left_as_they_were():
    raw = readings([[1.0, 2.0]], [[1, 0]])
    Scaling("m", (CLAMP, PROBE)).block(raw, np.array([1]))
    assert raw.values.tolist() == [[1.0, 2.0]]
    assert raw.flags.tolist() == [[1, 0]]


def test_every_dialect_has_its_conversation():
    assert set(CONVERSATIONS) == set(DIALECTS)


def test_a_choice_refuses_channels_that_are_not_the_profiles():
    profile = load_meter("line-logger")
    with pytest.raises(ValueError, match="not those of line-logger"):
        MeterChoice(profile, "loop://", "m", profile.channels[::-1])


def test_a_zero_taken_is_subtracted_from_the_next_block_on_in_its_own_column():
    scaling = Scaling("m", (CLAMP, PROBE))
    raw = readings([[0.05, 12.0]], [[0, 0]])
    before = scaling.block(raw, np.array([1]))
    scaling.set_zero(0, 0.9)
    after = scaling.block(raw, np.array([2]))
    assert before.values[0].tolist() == [4.6, 12.0]
    np.testing.assert_allclose(after.values[0], [4.1, 12.0], rtol=1e-15)
    assert scaling.offset(0) == 0.9


def test_a_zero_of_exactly_nothing_is_a_zero_too():
    scaling = Scaling("m", (PROBE,))
    assert scaling.block(readings([[1.0]], [[0]]), np.array([1])).flags.tolist() == [[0]]
    scaling.set_zero(0, 0.0)
    assert scaling.block(readings([[1.0]], [[0]]), np.array([1])).flags.tolist() == [[8]]
    kept = Channel("feed", Quantity.VOLTAGE, zero=Zero(0.0))
    block = Scaling("m", (kept,)).block(readings([[1.0]], [[0]]), np.array([1]))
    assert block.flags.tolist() == [[8]]
