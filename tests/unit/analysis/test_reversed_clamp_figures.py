"""A clamp the other way round: a current set against its limit is told by its size."""

from meterlog.model import FindingKind


def test_too_much_current_is_not_told_as_less_than_none(trace):
    low = trace.NORMAL[4]
    legs = [
        trace.Leg(2.0, *trace.NORMAL[0]),
        trace.Leg(8.0, low[0], low[1], -low[2]),
        trace.Leg(10.0, low[0], low[1], -20.0),
        trace.Leg(16.0, low[0], low[1], -low[2]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(2.0, 4)])
    (over,) = [one for one in result.findings if one.kind is FindingKind.OVER]
    assert over.value is not None
    assert over.value < -19.9  # as it was read
    assert ": 20.00 ± " in over.statement
    assert "limit 18 A" in over.statement
