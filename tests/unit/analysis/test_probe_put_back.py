"""A probe that was put back is trusted again, also where no current flowed just then."""

from meterlog.model import DoubtKind, SpanKind


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
