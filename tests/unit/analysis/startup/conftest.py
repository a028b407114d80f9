"""Rows of a starting motor, spans told beside them. All values invented."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
import pytest

from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Accuracy,
    Channel,
    Instrument,
    Limits,
    Quantity,
    Role,
    Sensor,
    Span,
    SpanKind,
)


def start(t, at_s, steady=13.6, peak=60.0, tau_s=0.1):
    """Give the current of a motor switched on at ``at_s``: nothing, a peak, its decay."""
    since = np.maximum(t - at_s, 0.0)
    return np.where(t < at_s, 0.0, steady + (peak - steady) * np.exp(-since / tau_s))


@dataclass
class Read:
    """Readings of a current given as a function of time, and what was judged of them."""

    amps: object
    end_s: float = 10.0
    interval_s: float = 0.001
    integration_s: float = 0.0
    accuracy: Accuracy | None = field(
        default_factory=lambda: Accuracy(1.0, 2, 0.01, basis="invented")
    )
    sensor: Sensor = field(default_factory=Sensor)
    limits: Limits = field(default_factory=lambda: Limits(inrush_window_s=1.0))
    spans: tuple = ()
    steps: tuple = ()
    events: tuple = ()
    doubts: tuple = ()
    findings: tuple = ()
    missing: tuple = ()

    def __post_init__(self):
        count = round(self.end_s / self.interval_s)
        self.t_ns = np.round(np.arange(count) * self.interval_s * 1e9).astype(np.int64)
        self.values = np.asarray(self.amps(self.t_ns / 1e9), float).copy()
        for a, b in self.missing:
            self.values[(self.t_ns >= a * 1e9) & (self.t_ns < b * 1e9)] = np.nan

    @property
    def instrument(self):
        channel = Channel(
            "current",
            Quantity.CURRENT,
            Role.MOTOR_CURRENT,
            interval_s=self.interval_s,
            integration_s=self.integration_s,
            accuracy=self.accuracy,
            sensor=self.sensor,
        )
        return Instrument("meter", "test", "-", (channel,))

    def rows(self):
        usable = np.isfinite(self.values)
        return Rows(self.t_ns, self.values, None, None, usable, np.zeros(len(usable), np.bool_))

    def show(self, follower, cuts=()):
        for event in self.events:
            follower.take(event)
        rows = self.rows()
        for a, b in pairwise(sorted({0, *cuts, len(rows)})):
            # One row to look back at and one ahead come with each part, as they do in a review.
            low, high = max(a - 1, 0), min(b + 1, len(rows))
            stretch = Stretch(a - low, b - low, None, steady=True)
            follower.take_rows(rows.part(low, high), [stretch])
        return follower

    def judged(self):
        spans = tuple(
            Span(kind, round(a * 1e9), round(b * 1e9), start_edge_ns=round(self.interval_s * 1e9))
            for kind, a, b in self.spans
        )
        return Judged(
            (self.instrument,),
            self.limits,
            spans=spans,
            steps=self.steps,
            events=self.events,
            doubts=self.doubts,
            findings=self.findings,
        )


OFF_THEN_ON = ((SpanKind.OFF, 0.0, 2.0), (SpanKind.RUNNING, 2.0, 10.0))


@pytest.fixture
def read():
    return Read


@pytest.fixture
def motor():
    return start


@pytest.fixture
def off_then_on():
    return OFF_THEN_ON
