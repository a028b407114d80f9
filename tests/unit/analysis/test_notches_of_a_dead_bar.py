"""A dead bar under a brush takes the current away for a millisecond, some ten times a second each.

Read fast enough, that is neither one long dropout nor hundreds of them: it is a running motor, and
what is short is counted. A dropout that lasts begins and ends where it does, notches or not.
"""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.model import FindingKind, Outcome, SpanKind, Verdict

INTERVAL_S = 0.0005
GONE = (3.0, 4.0)


def notched(trace, every_s=0.010, notch_s=0.0015, end_s=6.0):
    """Off, on at 1 s, gone from 3 s to 4 s; whenever it runs, a notch every ``every_s``."""
    t_ns, values = trace.sample(
        [trace.Leg(1.0, *trace.NORMAL[0]), trace.Leg(end_s, *trace.NORMAL[4])], INTERVAL_S
    )
    t_s = t_ns / 1e9
    gone = (t_s >= GONE[0]) & (t_s < GONE[1])
    notch = (t_s >= 1.0) & ((t_s % every_s) < notch_s)
    values[gone | notch] = trace.DEAD
    return t_ns, values


def reviewed(trace, t_ns, values, cuts=()):
    meter = trace.Instrument("meter", "test", "-", trace.channels(INTERVAL_S))
    reviewer = trace.Reviewer([meter], trace.limits())
    for event in (trace.speed(0.0, 0), trace.speed(1.0, 4)):
        reviewer.feed(event)
    edges = sorted({0, len(t_ns), *(c for c in cuts if c < len(t_ns))})
    for start, stop in pairwise(edges):
        reviewer.feed(trace.block_of(t_ns[start:stop], values[start:stop]))
    return reviewer.finish()


@pytest.mark.parametrize("notch_s", [0.001, 0.002, 0.004])
def test_a_dropout_ends_when_the_motor_runs_again_though_notches_go_on(trace, notch_s):
    result = reviewed(trace, *notched(trace, notch_s=notch_s))
    (dead,) = [span for span in result.spans if span.kind is SpanKind.DEAD]
    assert dead.start_ns / 1e9 == pytest.approx(GONE[0], abs=0.011)
    assert dead.end_ns / 1e9 == pytest.approx(GONE[1], abs=0.011)
    assert result.spans[-1].kind is SpanKind.RUNNING


def test_notches_while_it_runs_are_no_spans_but_counted(trace):
    result = reviewed(trace, *notched(trace))
    kinds = [span.kind for span in result.spans]
    assert kinds == [SpanKind.OFF, SpanKind.RUNNING, SpanKind.DEAD, SpanKind.RUNNING]
    assert any("shorter than 0.04 s" in note for note in result.notes)


def test_what_a_step_draws_holds_its_notches_as_an_averaging_meter_would_read_it(trace):
    t_ns, values = notched(trace, notch_s=0.002)
    running = [s for s in reviewed(trace, t_ns, values).steps if s.speed == 4]
    assert running[0].steady_mean_a == pytest.approx(13.6 * 0.8, abs=0.15)
    plain = reviewed(trace, *notched(trace, notch_s=0.0)).steps[-1]
    assert plain.steady_mean_a == pytest.approx(13.6, abs=0.01)


def test_single_flashes_of_current_do_not_end_a_dropout(trace):
    t_ns, values = trace.sample(
        [
            trace.Leg(1.0, *trace.NORMAL[0]),
            trace.Leg(2.0, *trace.NORMAL[4]),
            trace.Leg(6.0, *trace.DEAD),
        ],
        INTERVAL_S,
    )
    flash = ((t_ns / 1e9) > 2.0) & (((t_ns / 1e9) % 0.010) < 0.002)
    values[flash] = trace.NORMAL[4]
    result = reviewed(trace, t_ns, values)
    (dead,) = [span for span in result.spans if span.kind is SpanKind.DEAD]
    assert dead.end_ns / 1e9 == pytest.approx(6.0, abs=0.011)


def _told(review):
    return review.spans, review.steps


@settings(max_examples=5, deadline=None)
@given(cuts=st.lists(st.integers(1, 11_999), max_size=8))
def test_notches_cut_anywhere_give_the_same_spans(trace, cuts):
    t_ns, values = notched(trace)
    assert _told(reviewed(trace, t_ns, values, cuts)) == _told(reviewed(trace, t_ns, values))


def test_what_was_read_for_less_than_the_dwell_between_gaps_proves_nothing(trace):
    t_ns, values = trace.sample([trace.Leg(4.0, *trace.DEAD)], INTERVAL_S)
    read = (t_ns / 1e9 % 0.1) < 0.005  # bursts of 5 ms, ten times a second
    result = reviewed(trace, t_ns[read], values[read])
    dead = [one for one in result.findings if one.kind is FindingKind.DEAD]
    assert dead
    assert {one.verdict for one in dead} == {Verdict.CANT_TELL}
    assert "readings are missing before and after" in dead[0].statement
    assert result.verdict.outcome is not Outcome.FAULT
