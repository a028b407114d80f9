"""A probe that was put back is trusted again, also where no current flowed just then."""

import numpy as np
import pytest

from meterlog.analysis.levels import BIN_NS, Levels
from meterlog.analysis.moved_probe import MovedProbes
from meterlog.analysis.rows import Rows
from meterlog.model import DoubtKind, SpanKind, SpeedLimits, Verdict

LOSSES = ("dead", "no-current", "feed-lost", "ground-lost")


def slipped(trace, back_at, end=24.0):
    """Give a run whose feed probe is off from 6 s to ``back_at``, while it coasts to low at 10 s.

    At 20 s the motor is open for half a second.
    """
    leg = trace.Leg
    on = (12.0, 0.16, 13.6)
    legs = [leg(6.0, *on), leg(10.0, 1.9, 0.16, 13.6), leg(11.0, 1.9, 5.0, 0.0)]
    if back_at < 20.0:
        legs += [leg(back_at, 1.9, 6.0, 0.0), leg(20.0, *trace.NORMAL[1])]
        legs += [leg(20.5, *trace.DEAD), leg(end, *trace.NORMAL[1])]
    else:
        legs += [leg(20.0, 1.9, 6.7, 3.6), leg(20.5, 1.9, 0.02, 0.0), leg(end, 1.9, 6.7, 3.6)]
    events = [trace.speed(0.0, 4), trace.speed(10.0, 1)]
    return trace.review(legs, events, 0.1, lim=trace.limits(coast_s=3.0))


def test_a_dead_motor_is_told_long_after_the_probe_was_put_back(trace):
    result = slipped(trace, back_at=11.5)
    (slip,) = [one for one in result.doubts if one.kind is DoubtKind.PROBE]
    assert slip.start_ns / 1e9 < 6.3
    assert 11.0 < slip.end_ns / 1e9 < 12.5
    (lost,) = [
        span for span in result.spans if 19.0 < span.start_ns / 1e9 < 21.0 and span.kind.is_fault
    ]
    assert lost.kind is SpanKind.DEAD


def test_a_probe_that_stays_off_tells_no_side_until_the_end(trace):
    result = slipped(trace, back_at=99.0)
    (lost,) = [s for s in result.spans if s.start_ns / 1e9 > 19.0 and s.kind.is_fault]
    assert lost.kind is SpanKind.NO_CURRENT


def test_a_probe_that_was_off_for_less_than_it_is_looked_for_is_trusted_soon_after(trace):
    # 0.5 s: where it went and came back are one jump. At another speed the motor opens.
    leg = trace.Leg
    on, off = (12.1, 2.9, 9.0), (12.1, 0.3, 9.0)
    legs = [leg(5.0, *on), leg(5.5, *off), leg(12.0, *on), leg(18.0, *trace.NORMAL[1])]
    legs = [*legs, leg(18.5, *trace.DEAD), leg(22.0, *trace.NORMAL[1])]
    lim = trace.limits(speeds={3: SpeedLimits(7.0, 11.0), 1: SpeedLimits(2.0, 5.0)})
    result = trace.review(legs, [trace.speed(0.0, 3), trace.speed(12.0, 1)], 0.1, lim=lim)
    assert all(one.end_ns < 7e9 for one in result.doubts if one.kind is DoubtKind.PROBE)
    assert SpanKind.DEAD in [span.kind for span in result.spans]


def test_a_motor_that_gathers_speed_behind_resistors_moves_no_probe():
    # Its current falls as its own voltage rises: V = I R + Ke w (textbook), 12.1 V over 2.3 ohms.
    # The feed goes for 0.04 s, and a little later for 0.4 s: readings half-way make it scatter.
    whole = [4.0, 3.9, 3.7, 3.6, 3.5, 3.4, 3.3, 3.2, 3.1, 3.0, 2.9, 0.0, 0.0, 0.0, 3.1, 3.1]
    whole += [2.5 + 0.6 * 0.88**k for k in range(40)]
    part = np.ones(len(whole))
    part[[6, 10, 14]] = 0.65, 0.4, 0.9
    amps, feed = np.array(whole) * part, np.where(np.array(whole) > 0.0, 12.1, 2.7)
    feed = part * feed + (1.0 - part) * 2.7
    ones = np.ones(len(amps), np.bool_)
    levels = Levels()
    levels.take(Rows(np.arange(len(amps)) * BIN_NS, amps, feed, 2.3 * amps, ones, ~ones))
    assert MovedProbes(levels, 1.0).slips(()) == []


@pytest.mark.parametrize(("turned", "marked"), [(7.0, 7.2), (12.0, 12.2)])
def test_coasting_without_a_trusted_voltage_proves_no_loss(trace, turned, marked):
    # The return probe is off from 6 s on, until a second after the knob is turned down.
    leg = trace.Leg
    legs = [leg(6.0, 12.1, 2.9, 9.0), leg(turned, 12.1, 0.0, 9.0)]
    legs += [leg(turned + 0.4, 12.4, 0.0, 0.0), leg(turned + 1.0, 12.3, 0.0, 3.6)]
    lim = trace.limits(speeds={3: SpeedLimits(7.0, 11.0), 1: SpeedLimits(2.0, 5.0)}, coast_s=2.0)
    events = [trace.speed(0.0, 3), trace.speed(marked, 1)]
    whole = [*legs, leg(24.0, *trace.NORMAL[1])]
    result = trace.review(whole, events, 0.1, lim=lim)
    (slip,) = [one for one in result.doubts if one.kind is DoubtKind.PROBE]
    assert slip.start_ns / 1e9 == pytest.approx(6.0, abs=0.3)
    assert slip.end_ns / 1e9 == pytest.approx(turned + 1.0, abs=0.3)
    assert Verdict.FAIL not in [f.verdict for f in result.findings if f.kind.value in LOSSES]
    never = [*legs[:2], leg(turned + 0.4, 12.4, 0.0, 0.0), leg(24.0, 12.1, 0.0, 9.0)]
    lost = trace.review(never, events[:1], 0.1, lim=lim)
    assert Verdict.FAIL in [f.verdict for f in lost.findings if f.kind.value in LOSSES]
