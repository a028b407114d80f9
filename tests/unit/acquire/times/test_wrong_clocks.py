"""Instruments whose own clock says what can't be: it costs no reading and moves none."""

import numpy as np
import pytest

from meterlog.acquire.times.stamping import Sending, Stamper
from meterlog.instruments import Readings

MS = 1_000_000
S = 1_000_000_000


def rows(own) -> Readings:
    count = len(own)
    return Readings(np.zeros((count, 1)), np.zeros((count, 1), np.uint8), np.array(own))


@pytest.mark.parametrize("wrong_s", [8e37, -8e37, 5_000.0, 1.7e10])
@pytest.mark.parametrize("together", [1, 3])
def test_a_wrong_figure_in_an_instruments_own_time_costs_no_reading_and_invents_no_loss(
    wrong_s, together
):
    stamper = Stamper(Sending(0.02))
    taken, given = [], 0
    for turn in range(1, 200):
        own = np.arange((turn - 1) * together + 1, turn * together + 1) * 0.02
        if turn in {60, 130}:
            own[together // 2] = wrong_s
        readings = rows(own)
        given += together
        taken += [*stamper.take(readings, S + turn * together * 20 * MS)]
    stamps = np.concatenate([one.t_ns for one in taken])
    assert len(stamps) == given
    wanted = S + np.arange(1, given + 1) * 20 * MS
    assert np.abs(stamps - wanted).max() <= 20 * MS
    assert stamper.lost == 0
    assert stamper.counts.jumps > 0


@pytest.mark.parametrize("tick_s", [1.0, 1e9])
def test_readings_are_not_moved_to_the_ticks_of_a_clock_that_shows_seconds_or_stands_still(tick_s):
    stamper = Stamper(Sending(0.05))
    moved_ns = []
    for number in range(1, 400):
        own = [number * 0.05 // tick_s * tick_s]
        (one,) = stamper.take(rows(own), S + number * 50 * MS)
        moved_ns.append(abs(int(one.t_ns[0]) - S - number * 50 * MS))
    assert max(moved_ns) <= 150 * MS
    assert max(moved_ns[20:]) <= 5 * MS
    assert stamper.lost == 0


@pytest.mark.parametrize("tick_s", [0.001, 0.01, 0.1])
def test_a_clock_of_finer_ticks_still_tells_what_came_late(tick_s):
    stamper = Stamper(Sending(0.02))
    for number in range(1, 200):
        own = [round(number * 0.02 // tick_s * tick_s, 6)]
        late_ns = 300 * MS if number >= 190 else 0
        stamped = stamper.take(rows(own), S + number * 20 * MS + late_ns)
        assert abs(int(stamped[-1].t_ns[-1]) - S - number * 20 * MS) <= tick_s * S + 10 * MS
