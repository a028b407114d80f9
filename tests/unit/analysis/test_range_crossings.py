"""A gap over which the current went to another range of the meter is told as such."""

import numpy as np
import pytest

from meterlog.analysis.absence import Absence
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Event,
    EventKind,
    Flag,
    Instrument,
    Quantity,
    Range,
    Role,
)

S = 1_000_000_000
RANGES = tuple(Range(top, Accuracy(1.0, 3.0, top / 6000.0)) for top in (6.0, 60.0))
METER = Instrument(
    "meter",
    "test",
    "",
    (Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.4, ranges=RANGES),),
)


def block(t_s, amps, flags=None):
    values = np.array([amps], float).T
    marks = np.array([flags or [0] * len(amps)], np.uint8).T
    values[marks != 0] = np.nan
    return Block("meter", np.round(np.array(t_s) * S).astype(np.int64), values, marks)


def cause(*items, start_s=2.0, end_s=3.2):
    absence = Absence((METER,))
    for item in items:
        absence.take(item)
    return absence.cause(round(start_s * S), round(end_s * S))


WORDS = (
    "meter: it seems to have changed its measuring range (from up to 6 A to up to 60 A, by the"
    " readings around it)"
)


@pytest.mark.parametrize("cut", [1, 2, 3, 4])
def test_a_gap_between_two_ranges_is_told_however_the_blocks_are_cut(cut):
    t, amps = np.array([1.2, 1.6, 2.0, 3.2, 3.6]), np.array([3.6, 3.6, 3.6, 13.6, 13.6])
    assert cause(block(t[:cut], amps[:cut]), block(t[cut:], amps[cut:])) == WORDS
    lower = 17.2 - amps
    down = cause(block(t[:cut], lower[:cut]), block(t[cut:], lower[cut:]))
    assert "from up to 60 A to up to 6 A" in down


def test_a_gap_within_one_range_or_longer_than_a_change_of_range_is_not():
    t = [1.2, 1.6, 2.0, 3.2, 3.6]
    assert cause(block(t, [13.6, 13.6, 13.6, 13.4, 13.6])) == ""
    late = [1.2, 1.6, 2.0, 5.2, 5.6]
    assert cause(block(late, [3.6, 3.6, 3.6, 13.6, 13.6]), end_s=5.2) == ""
    assert cause(block([1.6, 2.0, 2.4], [3.6, 3.6, 13.6]), end_s=2.4) == ""


def test_an_overload_shown_while_ranging_is_not_told_as_too_much_current():
    over = int(Flag.OVERLOAD)
    data = block([1.6, 2.0, 2.4, 2.8, 3.2], [3.6, 3.6, 0, 0, 13.6], [0, 0, over, over, 0])
    said = Event(round(3.1 * S), EventKind.RANGE, "range 60 A", "meter")
    words = "meter: it changed its measuring range (range 60 A), showing overload meanwhile"
    assert cause(said, data) == words
    assert "showing overload meanwhile" in cause(data)
    assert "beyond its range" in cause(said, data, start_s=2.0, end_s=6.0)
