"""No probe has moved where a break, a start-up or a command lies between two levels."""

import numpy as np
import pytest

from meterlog.analysis.levels import BIN_NS, Levels
from meterlog.analysis.moved_probe import MovedProbes
from meterlog.analysis.rows import Rows
from meterlog.analysis.slipped_probe import SlippedProbes
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import DoubtKind, FindingKind, Limits, SpanKind, SpeedLimits, Sureness, Verdict

HIGH = (13.9, 11.96, 0.17)
DEAD = (0.0, 12.44, 0.0)
LOWER = (9.2, 12.12, 2.85)
# The controller holds the current down as the motor starts: amperes, feed and return.
START = [(12.1, 12.0, 6.3), (15.1, 11.9, 6.8), (15.1, 11.9, 5.8), (15.1, 11.9, 4.8)]
START += [(15.1, 11.9, 3.9), (15.1, 11.9, 3.1), (13.8, 11.97, 2.7), (11.5, 12.05, 2.8)]
START += [(10.3, 12.08, 2.8), (9.8, 12.1, 2.8), (9.5, 12.11, 2.8)]
HALF_DEAD = (10.4, 12.08, 0.13)


def levels_of(*legs):
    """Give levels of legs of (bins, three values); None for a silence."""
    rng = np.random.default_rng(2)
    times, values, at = [], [], 0
    for count, told in legs:
        if told is not None:
            times.append(at + np.arange(count))
            values.append(np.array(told) + rng.normal(0.0, 0.005, (count, 3)))
        at += count
    table = np.concatenate(values).T
    ones = np.ones(table.shape[1], np.bool_)
    levels = Levels()
    levels.take(Rows(np.concatenate(times) * BIN_NS, *table, ones, ~ones))
    return levels


def slips(legs, marks=()):
    return MovedProbes(levels_of(*legs), 1.0).slips([SpeedChange(*mark) for mark in marks])


@pytest.mark.parametrize("marked", [True, False], ids=["marked", "not marked"])
@pytest.mark.parametrize("gone", [DEAD, None], ids=["dead", "silent"])
@pytest.mark.parametrize("bins", [4, 20, 175])
def test_a_start_up_at_another_speed_after_a_break_moves_no_probe(marked, gone, bins):
    legs = [(60, HIGH), (1, HALF_DEAD), (bins, gone), *((1, one) for one in START), (60, LOWER)]
    marks = [((60 + bins // 2) * BIN_NS, 3)] if marked else []
    assert slips(legs, marks) == []


def test_a_motor_that_is_dead_while_the_speed_is_changed_stays_proven_dead(trace):
    leg = trace.Leg
    legs = [leg(10.0, 11.96, 0.17, 13.9), leg(27.5, 12.44, 0.0, 0.0)]
    for step, (amps, feed, back) in enumerate(START):
        legs.append(leg(27.5 + 0.1 * (step + 1), feed, back, amps))
    legs.append(leg(36.0, 12.12, 2.85, 9.2))
    speeds = {4: SpeedLimits(10.0, 18.0), 3: SpeedLimits(6.5, 12.5)}
    lim = trace.limits(speeds=speeds, inrush_window_s=2.0)
    events = [trace.speed(0.0, 4), trace.speed(17.6, 3), trace.tap(27.4)]
    result = trace.review(legs, events, lim=lim)
    assert [one for one in result.doubts if one.kind is DoubtKind.PROBE] == []
    (lost,) = [one for one in result.findings if one.kind.value in set(SpanKind)]
    assert (lost.kind, lost.verdict) == (FindingKind.DEAD, Verdict.FAIL)
    assert result.verdict.ranked[0].sureness is Sureness.PROVEN


@pytest.mark.parametrize("at", [57, 63, 75])
def test_levels_with_a_command_between_them_move_no_probe(at):
    # The voltage moved by a third while nothing flowed, and the current is the same again.
    legs = [(60, HIGH), (20, DEAD), (20, (13.9, 8.0, 0.17))]
    assert slips(legs, [(at * BIN_NS, 4)]) == []
    assert slips(legs)


def test_a_probe_that_moved_over_a_break_is_told_of_the_readings_behind_it_alone():
    legs = [(60, HIGH), (20, DEAD), (60, (13.9, 8.0, 0.17))]
    (slip,) = slips(legs)
    assert (slip.start_ns, slip.end_ns, slip.ended) == (80 * BIN_NS, 140 * BIN_NS, False)
    assert slip.broken
    (doubt,) = SlippedProbes(levels_of(*legs), Limits()).doubts()
    assert "the current came back to 13.9 A" in doubt.text
    assert slip.now_v == pytest.approx(8.0, abs=0.05)


def test_levels_a_break_apart_that_have_not_settled_tell_nothing():
    # Five bins after the break are not enough to know how much it draws.
    legs = [(60, HIGH), (20, DEAD), (7, (13.9, 8.0, 0.17)), (20, DEAD), (30, HIGH)]
    assert slips(legs) == []


def test_what_a_probe_is_said_to_read_is_what_was_read():
    # It falls beside a command, which proves nothing; it rises again under a steady current. From
    # the first reading to the command it read what it should.
    legs = [(200, HIGH), (100, (13.9, 8.0, 0.17)), (60, HIGH)]
    (slip,) = slips(legs, [(198 * BIN_NS, 4)])
    assert slip.now_v == pytest.approx(8.0, abs=0.05)
    levels = levels_of(*legs)
    part = levels.within(slip.start_ns, slip.end_ns)
    assert np.median(part.feed) == pytest.approx(slip.now_v, abs=0.1)
    assert (slip.start_ns, slip.end_ns) == (198 * BIN_NS, 300 * BIN_NS)


def test_a_meter_whose_pace_is_no_multiple_of_a_bin_still_shows_a_moved_probe():
    # 0.12 s apart: every fifth step leaves a bin out.
    t_ns = np.arange(300) * 120_000_000
    feed = np.where(t_ns < 18e9, 12.0, 8.0)
    amps = 13.9 + np.random.default_rng(4).normal(0.0, 0.02, 300)
    ones = np.ones(300, np.bool_)
    levels = Levels()
    levels.take(Rows(t_ns, amps, feed, np.full(300, 0.17), ones, ~ones))
    (slip,) = MovedProbes(levels, 1.0).slips(())
    assert slip.start_ns / 1e9 == pytest.approx(18.0, abs=0.2)
