"""A fan read by any set of channels, scripted channel by channel; all figures invented."""

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.analysis.budgets import BudgetMaker
from meterlog.analysis.drag import drag_finding
from meterlog.analysis.drops import drop_findings
from meterlog.analysis.judged import Judged
from meterlog.analysis.side_volts import SideVolts
from meterlog.analysis.told_sides import told_by_sides
from meterlog.model import Accuracy, Channel, Event, Instrument, Role

ROLES = {
    "current": Role.MOTOR_CURRENT,
    "feed": Role.MOTOR_FEED,
    "return": Role.MOTOR_RETURN,
    "battery": Role.BATTERY,
    "relay": Role.RELAY_OUT,
    "ground": Role.CONTROLLER_GROUND,
    "command": Role.COMMAND,
    "drop": Role.DROP,
}
ALL = ("feed", "return", "battery", "ground", "command", "current")
# What each channel reads with the fan off, on low and on high.
OFF = {
    "current": 0.0,
    "feed": 12.4,
    "return": 12.4,
    "battery": 12.4,
    "relay": 12.4,
    "ground": 0.0,
    "command": 0.2,
    "drop": 0.0,
}
LOW = OFF | {"current": 3.6, "feed": 12.3, "return": 6.7, "ground": 0.04, "command": 3.0}
HIGH = OFF | {
    "current": 13.6,
    "feed": 12.0,
    "return": 0.16,
    "relay": 12.1,
    "ground": 0.1,
    "command": 8.0,
    "drop": 0.1,
}


class Panel:
    """Scripts, and what is made of them."""

    ROLES, ALL, OFF, LOW, HIGH = ROLES, ALL, OFF, LOW, HIGH

    def __init__(self, trace):
        self.trace = trace
        self.noise = 0.01

    def instrument(self, channels, interval_s=0.05, key="meter", percent=0.5, **more):
        stated = Accuracy(percent, 2, 0.01, basis="invented")
        made = tuple(
            Channel(name, role.quantity, role, interval_s=interval_s, accuracy=stated)
            for name, role in ((name, ROLES[name.partition(":")[0]]) for name in channels)
        )
        return Instrument(key, "test", "-", made, **more)

    def readings(self, channels, legs, interval_s=0.05, phase_s=0.0, seed=3):
        """Sample legs of (end in seconds, values): numbers, or functions of the leg's own time."""
        t_s = np.arange(phase_s, legs[-1][0], interval_s)
        values = np.empty((len(t_s), len(channels)))
        start = 0.0
        for end, told in legs:
            inside = (t_s >= start) & (t_s < end)
            for column, name in enumerate(channels):
                value = told[name.partition(":")[0]]
                values[inside, column] = value(t_s[inside] - start) if callable(value) else value
            start = end
        values += np.random.default_rng(seed).normal(0.0, self.noise, values.shape)
        return np.round(t_s * 1e9).astype(np.int64), np.round(values, 2)

    def block(self, channels, legs, interval_s=0.05, key="meter", **how):
        t_ns, values = self.readings(channels, legs, interval_s, **how)
        return self.trace.block_of(t_ns, values, key, range(len(channels)))

    def judge(self, instruments, items, lim=None):
        """Review it, then let the other channels speak: (spans, findings, drops, review)."""
        lim = lim or self.trace.limits()
        reviewer, side = Reviewer(instruments, lim), SideVolts(instruments, lim)
        maker = BudgetMaker(instruments)
        own = reviewer._detector._on_rows

        def take_rows(rows, stretches):
            own(rows, stretches)
            side.take_rows(rows, stretches)

        reviewer._detector._on_rows = take_rows
        for item in items:
            reviewer.feed(item)
            side.take(item)
        # Before what the whole adds: that is made here, to look at each part by itself.
        reviewer._detector.finish()
        review = reviewer._review(reviewer._detector.pieces(), ended=True)
        judged = Judged(
            tuple(instruments),
            lim,
            spans=review.spans,
            steps=side.with_side_volts(maker.with_budgets(review.steps)),
            findings=review.findings,
            doubts=review.doubts,
            events=tuple(item for item in items if isinstance(item, Event)),
        )
        spans, findings = told_by_sides(judged, side)
        drag = drag_finding(judged)
        drops = (*drop_findings(judged, side), *(() if drag is None else (drag,)))
        return spans, findings, drops, review

    def told(self, channels, legs, events, lim=None, **how):
        """Judge a fan read by one meter."""
        meter = self.instrument(channels, how.get("interval_s", 0.05))
        return self.judge([meter], [*events, self.block(channels, legs, **how)], lim)


def coasting(t):
    """What a turning motor generates: 9.3 V, then 5.6 after half a second, 3.4 after one."""
    return 9.3 * np.exp(-t)


@pytest.fixture
def panel(trace):
    made = Panel(trace)
    made.coasting = coasting
    return made
