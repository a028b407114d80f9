"""Times that stand still or run back, as damage makes them, end no review."""

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.analysis.inferred.standing_out import _line, _Sides
from meterlog.analysis.visibility import PaceSeen
from meterlog.model import Block, Channel, Instrument, Limits, Quantity, Role

CURRENT = Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1)


def block(*times_s):
    t_ns = np.array([round(1e9 * one) for one in times_s], np.int64)
    return Block("m", t_ns, np.full((len(t_ns), 1), 8.0), np.zeros((len(t_ns), 1), np.uint8))


@pytest.mark.parametrize(
    "times_s", [(1.0, 0.5, 1.1, 1.2, 0.1), (1.0, 1.0, 1.0), (0.2, 0.1)], ids=str
)
def test_the_pace_of_what_ran_forward_is_told(times_s):
    watch = PaceSeen("m", 0, CURRENT)
    watch.take(block(*times_s))
    pace = watch.pace
    assert pace is None or all(gap_s >= 0.0 for gap_s in pace.gaps_s)


def test_a_review_of_them_comes_to_an_end():
    reviewer = Reviewer([Instrument("m", "m", "invented", (CURRENT,))], Limits(name="invented"))
    rng = np.random.default_rng(4)
    reviewer.feed(block(*rng.uniform(0.0, 20.0, 2_000)))
    assert reviewer.finish() is not None


def test_a_line_through_instants_that_are_one_has_no_slope():
    t_ns, values = np.zeros(40, np.int64), np.arange(40.0)
    sides = _Sides(np.arange(20), np.arange(20, 40))
    assert _line(t_ns, values, sides).slope == 0.0
