"""A fan that is tapped: a trace as a list of stretches, judged, and what the taps show."""

import itertools
from dataclasses import replace
from types import SimpleNamespace

import pytest

from meterlog.analysis.detector import SpanDetector
from meterlog.analysis.judged import Judged
from meterlog.analysis.taps import TapWatch
from meterlog.model import Conditions, Event, EventKind, Instrument

HIGH = (12.0, 0.16, 13.6)


def marks(kind, *times, value=""):
    return [Event(round(t * 1e9), kind, value) for t in times]


@pytest.fixture
def tapped(trace):
    """Give a function that judges a trace and gives its tap evidence."""
    roles = ("feed", "return", "current")

    def of(
        legs,
        taps=(),
        *,
        leads=(),
        events=(),
        interval_s=0.05,
        roles=roles,
        chunks=(),
        doubts=(),
        zero=None,
        window_s=0.0,
        **changed,
    ):
        events = [
            *events,
            *marks(EventKind.TAP, *taps),
            *marks(EventKind.WIGGLE, *leads, value="leads"),
        ]
        events.sort(key=lambda event: event.t_ns)
        channels = trace.channels(interval_s, roles)
        meter = Instrument("meter", "test", "-", channels)
        limits = replace(trace.limits(), **changed)
        t_ns, values = trace.sample(legs, interval_s, window_s=window_s)
        order = {"feed": 0, "return": 1, "current": 2}
        block = trace.block_of(t_ns, values, columns=[order[name] for name in roles])
        cuts = sorted({0, len(block), *(min(c, len(block)) for c in chunks)})
        reviewer = trace.Reviewer([meter], limits)
        watch = TapWatch(limits)
        detector = SpanDetector([meter], limits, None, watch.take_rows)
        for event in events:
            reviewer.feed(event)
            detector.feed(event)
            watch.take(event)
        for first, last in itertools.pairwise(cuts):
            part = block.rows(first, last)
            reviewer.feed(part)
            detector.feed(part)
            watch.take(part)
        detector.finish()
        review = reviewer.finish()
        judged = Judged(
            (meter,),
            limits,
            Conditions(),
            review.spans,
            review.steps,
            review.findings,
            (*review.doubts, *doubts),
            tuple(events),
        )
        return SimpleNamespace(evidence=watch.evidence(judged), judged=judged, review=review)

    return of


@pytest.fixture
def script(trace):
    """Give a function that makes legs: dropouts of a running fan that end at given times."""

    def of(dropouts, end=40.0, start=2.0, dead=trace.DEAD, high=HIGH):
        legs = [trace.Leg(start, *trace.NORMAL[0])]
        for begin, stop in dropouts:
            if begin > legs[-1].end:
                legs.append(trace.Leg(begin, *high))
            legs.append(trace.Leg(stop, *dead))
        legs.append(trace.Leg(end, *high))
        return legs, [trace.speed(0.0, 0), trace.speed(start, 4)]

    return of


@pytest.fixture
def check_of():
    def of(evidence, name):
        return next(check for check in evidence.checks if check.name == name)

    return of
