"""A reading on its way between levels is no condition of the motor."""

import pytest

from meterlog.model import FindingKind, SpanKind, Verdict


def kinds(result):
    return [span.kind for span in result.spans]


def test_a_half_way_reading_before_missing_data_is_not_too_little_current(trace):
    # An averaging meter of ten readings a second, then a change of its range, then the lower speed.
    leg, low = trace.Leg, (12.2, 3.0, 6.0)
    legs = [
        leg(4.0, *trace.NORMAL[4]),
        leg(4.1, *low),
        leg(5.5, None, None, None),
        leg(9.0, *trace.NORMAL[1]),
    ]
    events = [trace.speed(0.0, 4), trace.speed(4.4, 1)]
    result = trace.review(legs, events, 0.1)
    assert SpanKind.UNDER not in kinds(result)
    assert not [f for f in result.findings if f.verdict is Verdict.FAIL]


def test_a_current_that_stays_too_low_before_missing_data_is_still_told(trace):
    leg = trace.Leg
    legs = [
        leg(4.0, *trace.NORMAL[4]),
        leg(7.0, 12.2, 3.0, 6.0),
        leg(8.5, None, None, None),
        leg(12.0, *trace.NORMAL[4]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.1)
    (under,) = [span for span in result.spans if span.kind is SpanKind.UNDER]
    assert under.start_ns / 1e9 == pytest.approx(4.0, abs=0.11)
    assert under.end_ns / 1e9 == pytest.approx(7.0, abs=0.11)


@pytest.mark.parametrize("gone_s", [0.0196, 0.0396])
def test_a_brief_dropout_behind_a_half_way_reading_is_brief_and_not_too_little(trace, gone_s):
    leg = trace.Leg
    legs = [
        leg(4.0, *trace.NORMAL[4]),
        leg(4.02, 12.2, 0.1, 7.0),
        leg(4.02 + gone_s, *trace.DEAD),
        leg(8.0, *trace.NORMAL[4]),
    ]
    lim = trace.limits(min_dwell_s=0.05)
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.02, lim=lim)
    assert kinds(result) == [SpanKind.RUNNING]
    assert any("1 dropout(s) of the current shorter than" in note for note in result.notes)
    (step,) = [f for f in result.findings if f.kind is FindingKind.STEP_CURRENT]
    assert step.verdict is Verdict.PASS


def test_brief_dropouts_do_not_hide_a_current_that_is_too_low(trace):
    leg, low = trace.Leg, (12.2, 3.0, 6.0)
    legs = [leg(2.0, *trace.NORMAL[4])]
    for k in range(6):
        legs += [leg(2.98 + k, *low), leg(3.0 + k, *trace.DEAD)]
    lim = trace.limits(min_dwell_s=0.05)
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.01, lim=lim)
    low_s = sum(s.duration_ns for s in result.spans if s.kind is SpanKind.UNDER) / 1e9
    assert low_s > 3.0
