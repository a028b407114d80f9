"""A fan driven by hand without anybody recording it: speeds, start-up peaks, noise. Invented."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import pytest

from meterlog.analysis import SpanDetector
from meterlog.analysis.budgets import BudgetMaker
from meterlog.analysis.found_steps import FoundCuts, StepFinder
from meterlog.analysis.judged import Judged
from meterlog.analysis.steps import StepCollector
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Instrument, Review, Span, SpanKind

ROLES = ("feed", "return", "current")


class Pass:
    """One pass over a recording: spans by the detector, steps between commands or found changes."""

    def __init__(self, instruments, limits, found=()):
        self.finder = StepFinder()
        self.cuts = FoundCuts(found, limits) if found else None
        timeline = SpeedTimeline()
        self._detector = SpanDetector(instruments, limits, timeline, self._take_rows)
        by = timeline if self.cuts is None else self.cuts.timeline
        self._steps = StepCollector(by, round(limits.command_lag_s * 1e9))
        self._budgets = BudgetMaker(instruments)

    def feed(self, item):
        self._detector.feed(item)

    def _take_rows(self, rows, stretches):
        self.finder.take_rows(rows, stretches)
        cut = stretches if self.cuts is None else self.cuts.recut(rows, stretches)
        self._steps.take(rows, cut)

    def finish(self):
        self._detector.finish()
        spans = tuple(
            Span(
                piece.kind or SpanKind.NO_CURRENT,
                piece.start_ns,
                piece.end_ns,
                piece.start_edge_ns,
                piece.end_edge_ns,
                piece.speed,
            )
            for piece in self._detector.pieces()
        )
        return Review(spans=spans, steps=self._budgets.with_budgets(self._steps.steps()))


@dataclass
class Drive:
    """Readings of a fan whose speed was changed at known times.

    ``plan`` holds (until seconds, speed or (feed, return, amps)); a rise of the current brings a
    start-up peak that decays within ``tau_s``.
    """

    trace: object
    plan: list
    interval_s: float = 0.1
    averages: bool = False
    noise_a: float = 0.05
    tau_s: float = 0.12
    drift: float = 0.0
    seed: int = 1
    roles: tuple = ROLES
    events: tuple = ()
    limits: object = None

    def __post_init__(self):
        self.limits = self.limits or self.trace.limits()
        rng = np.random.default_rng(self.seed)
        fine_s = min(self.interval_s, 0.002)
        t = np.arange(round(self.plan[-1][0] / fine_s)) * fine_s
        true = np.zeros((len(t), 3))
        start, before = 0.0, 0.0
        for end, what in self.plan:
            feed, back, amps = self.trace.NORMAL[what] if isinstance(what, int) else what
            part = (t >= start) & (t < end)
            over = max(amps - before, 0.0) * 1.5 * np.exp(-(t[part] - start) / self.tau_s)
            true[part] = np.stack(
                [np.full_like(over, feed), np.full_like(over, back), amps + over], 1
            )
            start, before = end, amps
        true[:, 2] *= 1.0 + self.drift * t / t[-1]
        step = round(self.interval_s / fine_s)
        count = len(t) // step
        blocks = true[: count * step].reshape(count, step, 3)
        values = blocks.mean(axis=1) if self.averages else blocks[:, 0]
        values = values + rng.normal(0.0, 1.0, values.shape) * (0.02, 0.02, self.noise_a)
        self.values = np.round(values / 0.01) * 0.01
        at = (np.arange(count) + (0.5 if self.averages else 0.0)) * self.interval_s
        self.t_ns = np.round(at * 1e9).astype(np.int64)

    def block(self):
        columns = [ROLES.index(role) for role in self.roles]
        return self.trace.block_of(self.t_ns, self.values, columns=columns)

    def review(self, found=(), cuts=()):
        instrument = Instrument(
            "meter", "test", "-", self.trace.channels(self.interval_s, self.roles)
        )
        reviewer = Pass([instrument], self.limits, found)
        for event in self.events:
            reviewer.feed(event)
        block = self.block()
        places = sorted({0, *cuts, len(block)})
        for start, stop in pairwise(places):
            reviewer.feed(block.rows(start, stop))
        return reviewer, reviewer.finish()

    def found(self, cuts=()):
        reviewer, review = self.review(cuts=cuts)
        judged = Judged((), self.limits, spans=review.spans, events=tuple(self.events))
        return reviewer.finder.changes(judged)


@pytest.fixture
def drive(trace):
    return lambda plan, interval_s=0.1, **how: Drive(trace, plan, interval_s, **how)
