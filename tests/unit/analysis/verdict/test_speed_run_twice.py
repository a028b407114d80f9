"""A speed that was run twice: told is the run that passed."""

import re

import pytest

from meterlog.model import FindingKind, Verdict


def test_drew_what_it_should_is_said_of_the_run_that_passed(trace):
    """First 13.60 A, then, for longer, 17.95 A beside the limit of 18 A."""
    low = trace.NORMAL[4]
    legs = [
        trace.Leg(2.0, *trace.NORMAL[0]),
        trace.Leg(7.0, *low),
        trace.Leg(9.0, *trace.NORMAL[0]),
        trace.Leg(20.0, low[0], low[1], 17.95),
    ]
    events = [trace.speed(at_s, step) for at_s, step in ((0, 0), (2, 4), (7, 0), (9, 4))]
    result = trace.review(legs, events)
    steps = [one for one in result.findings if one.kind is FindingKind.STEP_CURRENT]
    assert [one.verdict for one in steps] == [Verdict.PASS, Verdict.CANT_TELL]
    drew = re.search(r"no dropout was seen: ([0-9.]+)", result.verdict.paragraph)
    assert drew is not None
    assert float(drew[1]) == pytest.approx(13.6)
