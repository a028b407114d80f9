"""A clamp in the wire that is chopped: its pauses are no missing current, however short its pulses.

A dropout among them is one all the same, and rows too slow for the pulses can't tell.
"""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.model import Controller, Instrument, Outcome, Verdict

ON_S, END_S = 2.0, 6.0


@pytest.fixture
def chopped(trace):
    """Make a sound fan on speed 1 with a freewheeling diode, read in single moments."""

    def of(rate_hz, frequency_hz, duty, kind="pulsed", gone=(0.0, 0.0)):
        made = trace.Fan(1.0 / rate_hz)
        legs = [trace.Leg(ON_S, *trace.NORMAL[0]), trace.Leg(END_S, *trace.NORMAL[1])]
        made.t_ns, made.values = trace.sample(legs, 1.0 / rate_hz)
        t = made.t_s
        runs = t >= ON_S
        made.values[runs] = (12.6, 12.9, 0.0)
        made.values[runs & ((t * frequency_hz) % 1.0 < duty)] = (12.4, 0.1, 3.6 / duty)
        made.values[(t >= gone[0]) & (t < gone[1])] = (12.6, 12.6, 0.0)
        made.values += np.random.default_rng(1).normal(0.0, 0.02, made.values.shape)
        made.events = [trace.speed(0.0, 0), trace.speed(ON_S, 1)]
        made.limits = trace.limits(controller=Controller(kind), min_dwell_s=0.05)
        return made

    return of


def runs_all_along(review):
    assert [one.kind.value for one in review.spans] == ["off", "running"]
    assert review.spans[1].start_ns / 1e9 == pytest.approx(ON_S, abs=0.02)


def failed(review):
    return [one for one in review.findings if one.verdict is Verdict.FAIL]


@pytest.mark.parametrize("kind", ["pulsed", "linear", ""])
@pytest.mark.parametrize(("frequency_hz", "duty"), [(90.0, 0.35), (90.0, 0.6), (60.0, 0.45)])
def test_a_sound_fan_misses_no_current(chopped, frequency_hz, duty, kind):
    review = chopped(1000.0, frequency_hz, duty, kind).review()
    runs_all_along(review)
    assert failed(review) == []
    assert review.verdict.ranked == ()
    assert any("can't be told from its pauses" in one for one in review.verdict.unseen)


@pytest.mark.parametrize("duty", [0.2, 0.35])
@pytest.mark.parametrize("rate_hz", [200.0, 333.0])
def test_a_stated_controller_needs_no_frequency_told(chopped, rate_hz, duty):
    """Too few readings a period for frequency and duty, and pauses shorter than the dwell."""
    review = chopped(rate_hz, 90.0, duty).review()
    runs_all_along(review)
    assert failed(review) == []


@pytest.mark.parametrize("duty", [0.2, 0.35, 0.6])
@pytest.mark.parametrize("gone", [(3.5, 4.5), (3.5, 3.7)])
def test_a_dropout_among_the_pulses_is_told_with_its_length(chopped, duty, gone):
    review = chopped(1000.0, 90.0, duty, gone=gone).review()
    kinds = [one.kind.value for one in review.spans]
    assert kinds == ["off", "running", "ground-lost", "running"]
    lost = review.spans[2]
    assert lost.start_ns / 1e9 == pytest.approx(gone[0], abs=0.015)
    assert lost.end_ns / 1e9 == pytest.approx(gone[1], abs=0.015)
    assert "ground-lost" in {one.kind.value for one in failed(review)}
    assert review.verdict.outcome is Outcome.FAULT


def test_where_nobody_stated_pulses_a_long_loss_is_not_taken_for_them(chopped):
    review = chopped(1000.0, 90.0, 0.35, "", gone=(3.5, 4.5)).review()
    assert any(one.kind.is_fault for one in review.spans)
    assert failed(review)


def test_a_fan_that_is_dead_is_dead_beside_a_controller_that_pulses(chopped):
    review = chopped(1000.0, 90.0, 0.35, gone=(ON_S, END_S)).review()
    assert review.spans[-1].kind.is_fault
    assert review.spans[-1].duration_ns > 3.9e9


@pytest.mark.parametrize("frequency_hz", [400.3, 399.4, 150.6])
def test_rows_too_slow_for_stated_pulses_blame_nobody(chopped, frequency_hz):
    """The beat of the rows with the pulses is seconds long: no steady running is left."""
    made = chopped(50.0, frequency_hz, 0.35)
    made.limits = replace(made.limits, inrush_window_s=2.5)
    review = made.review()
    assert failed(review) == []
    assert review.verdict.outcome is Outcome.CANT_TELL
    assert any("catch on or off by chance" in one.statement for one in review.pulsed)


@pytest.mark.parametrize("gone", [(0.0, 0.0), (3.5, 4.5)])
@pytest.mark.parametrize("cut", [7, 64, 999])
def test_live_and_cut_anywhere_say_the_same(chopped, cut, gone):
    made = chopped(1000.0, 90.0, 0.35, gone=gone)
    whole = made.review()
    *events, block = made.items()
    reviewer = Reviewer([Instrument("meter", "test", "-", made.channels)], made.limits, None)
    for event in events:
        reviewer.feed(event)
    seen = set()
    for number, first in enumerate(range(0, len(block), cut)):
        reviewer.feed(block.rows(first, min(first + cut, len(block))))
        if number % 20 == 0:
            seen |= {one.kind.value for one in reviewer.live().spans}
    assert seen <= {one.kind.value for one in whole.spans}
    assert reviewer.finish().spans == whole.spans
