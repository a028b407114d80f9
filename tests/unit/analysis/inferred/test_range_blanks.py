"""Zeros and gaps at a change of range are no dropouts; real dropouts stay."""

import numpy as np
import pytest

from meterlog.analysis.inferred import Unseen
from meterlog.model import Accuracy, EventKind, FindingKind, Range, SpanKind, Verdict

RANGES = (
    Range(6.0, Accuracy(1.0, 3.0, 0.001, basis="invented")),
    Range(60.0, Accuracy(1.0, 3.0, 0.01, basis="invented")),
)


def shown(bench, before, zeros, after, said=True, ranges=RANGES, at_change=0.0):
    """Readings every 0.4 s: 30 at one level, some zeros, 30 at another; speed 1 then 4."""
    rng = np.random.default_rng(1)
    amps = np.concatenate([np.full(30, before), np.full(zeros, 0.0), np.full(30, after)])
    amps[amps > 0.0] += rng.normal(0.0, 0.02, 60)
    t = 0.4 * (1.0 + np.arange(len(amps)))
    feed = np.full(len(amps), 12.2)
    instruments = [bench.instrument(0.4, 0.3, ("current", "feed"), ranges=ranges)]
    change = t[30 + zeros] + at_change
    events = [bench.speed(0.0, 4)]
    if said:
        events.append(bench.event(change, EventKind.RANGE, "range 60 A", "meter"))
    return instruments, [*events, bench.block(t, [amps, feed])]


def found(bench, instruments, items):
    follower = bench.follow(Unseen(instruments, bench.limits()), instruments, items)
    judged = bench.judged(instruments, items)
    return judged, follower.found(judged)


def lost(spans):
    return [span for span in spans if span.kind.is_fault and span.kind is not SpanKind.OVER]


@pytest.mark.parametrize("zeros", [1, 2, 3])
def test_zeros_while_ranging_become_missing_data(bench, zeros):
    judged, told = found(bench, *shown(bench, 3.6, zeros, 13.6))
    assert lost(judged.spans)
    assert not lost(told.spans)
    (gap,) = [span for span in told.spans if span.kind is SpanKind.NO_DATA]
    assert "changed its measuring range and showed 0" in gap.detail
    kinds = [finding.kind for finding in told.findings]
    assert FindingKind.NO_DATA in kinds
    (finding,) = [one for one in told.findings if one.kind is FindingKind.NO_DATA]
    assert finding.verdict is Verdict.CANT_TELL
    assert "not known" in finding.statement
    assert any("change of the measuring range" in note for note in told.notes)
    ends = [span.end_ns for span in told.spans[:-1]]
    assert ends == [span.start_ns for span in told.spans[1:]]


def test_a_dropout_takes_the_meter_down_and_up_again_and_stays_one(bench):
    judged, told = found(bench, *shown(bench, 13.6, 2, 13.6))
    assert lost(told.spans) == lost(judged.spans) != []


def test_without_a_change_of_range_zeros_are_a_dropout(bench):
    judged, told = found(bench, *shown(bench, 3.6, 2, 13.6, said=False))
    assert lost(told.spans) == lost(judged.spans) != []
    judged, told = found(bench, *shown(bench, 3.6, 2, 13.6, at_change=3.0))
    assert lost(told.spans) == lost(judged.spans) != []


def test_zeros_that_last_longer_than_a_change_of_range_are_a_dropout(bench):
    judged, told = found(bench, *shown(bench, 3.6, 8, 13.6))
    assert lost(told.spans) == lost(judged.spans) != []


def test_where_no_ranges_are_stated_the_level_must_have_changed(bench):
    _, told = found(bench, *shown(bench, 3.6, 1, 13.6, ranges=()))
    assert not lost(told.spans)
    _, told = found(bench, *shown(bench, 13.6, 1, 13.4, ranges=()))
    assert lost(told.spans)
