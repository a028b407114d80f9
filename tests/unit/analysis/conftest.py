"""Scripted traces: a motor circuit written as a list of stretches with known truth.

The circuit has the controller on the ground side: feed at battery voltage, return raised on low
speeds. All values are invented and of the size of a medium cabin fan.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Event,
    EventKind,
    Flag,
    Instrument,
    Limits,
    Quantity,
    Role,
    SpeedLimits,
)

# (feed V, return V, current A) of the normal conditions
NORMAL = {0: (12.4, 12.4, 0.0), 1: (12.3, 6.7, 3.6), 2: (12.2, 5.0, 5.7), 4: (12.0, 0.16, 13.6)}
DEAD = (12.4, 0.02, 0.0)


@dataclass(frozen=True)
class Leg:
    """One stretch of a script: until ``end`` seconds, these three values."""

    end: float
    feed: float | None
    back: float | None
    amps: float | None


def limits(**changes) -> Limits:
    base = {
        "name": "test",
        "supply_present_v": 9.5,
        "open_current_a": 0.3,
        "locked_current_a": 40.0,
        "inrush_window_s": 0.5,
        "min_dwell_s": 0.04,
        "command_lag_s": 0.3,
        "speeds": {
            1: SpeedLimits(2.0, 5.0),
            2: SpeedLimits(4.0, 8.0),
            4: SpeedLimits(10.0, 18.0),
        },
    }
    return Limits(**(base | changes))


def channels(interval_s: float, roles=("feed", "return", "current"), accuracy=True):
    kinds = {
        "feed": (Quantity.VOLTAGE, Role.MOTOR_FEED),
        "return": (Quantity.VOLTAGE, Role.MOTOR_RETURN),
        "current": (Quantity.CURRENT, Role.MOTOR_CURRENT),
    }
    stated = Accuracy(0.5, 2, 0.01, basis="invented") if accuracy else None
    return tuple(
        Channel(name, kinds[name][0], kinds[name][1], interval_s=interval_s, accuracy=stated)
        for name in roles
    )


def sample(legs, interval_s: float, phase_s: float = 0.0, window_s: float = 0.0):
    """Read a script as a meter does; ``window_s`` averages over that time around each stamp."""
    fine = 20 if window_s else 1
    end = legs[-1].end
    t = np.arange(phase_s, end, interval_s)
    ends = np.array([leg.end for leg in legs])
    table = np.array(
        [[np.nan if v is None else v for v in (leg.feed, leg.back, leg.amps)] for leg in legs]
    )
    offsets = (np.arange(fine) + 0.5) / fine * window_s - window_s / 2.0
    rows = [table[np.searchsorted(ends, np.clip(t + o, 0, end - 1e-9), "right")] for o in offsets]
    return np.round(t * 1e9).astype(np.int64), np.mean(rows, axis=0)


def block_of(t_ns, values, source="meter", columns=(0, 1, 2)):
    values = np.asfortranarray(values[:, list(columns)])
    flags = np.where(np.isnan(values), int(Flag.NO_DATA), 0).astype(np.uint8)
    return Block(source, t_ns, values, flags)


def speed(at_s: float, step: int) -> Event:
    return Event(round(at_s * 1e9), EventKind.SPEED, str(step))


def tap(at_s: float) -> Event:
    return Event(round(at_s * 1e9), EventKind.TAP)


def review(legs, events=(), interval_s=0.02, lim=None, roles=("feed", "return", "current"), **how):
    accuracy = how.pop("accuracy", True)
    instrument = Instrument("meter", "test", "-", channels(interval_s, roles, accuracy))
    reviewer = Reviewer([instrument], lim or limits())
    for event in events:
        reviewer.feed(event)
    t_ns, values = sample(legs, interval_s, **how)
    order = {"feed": 0, "return": 1, "current": 2}
    reviewer.feed(block_of(t_ns, values, columns=[order[name] for name in roles]))
    return reviewer.finish()


def told(result):
    """Kinds and rounded edges, for reading."""
    return [
        (s.kind.value, round(s.start_ns / 1e9, 2), round(s.end_ns / 1e9, 2)) for s in result.spans
    ]


class Fan:
    """A healthy fan, off then high then low, read ten times a second with a little noise."""

    def __init__(self, interval_s=0.1, seed=1, digit=0.01):
        self.digit = digit
        legs = [
            Leg(4.0, *NORMAL[0]),
            Leg(14.0, *NORMAL[4]),
            Leg(24.0, *NORMAL[1]),
        ]
        self.t_ns, self.values = sample(legs, interval_s)
        rng = np.random.default_rng(seed)
        self.values += rng.normal(0.0, 1.0, self.values.shape) * (0.01, 0.01, 0.08)
        self.values = np.round(self.values / digit) * digit
        self.events = [speed(0.0, 0), speed(4.0, 4), speed(14.0, 1)]
        self.channels = tuple(
            replace(one, accuracy=Accuracy(0.5, 2.0, digit, basis="invented"))
            for one in channels(interval_s)
        )
        self.limits = limits()

    @property
    def t_s(self):
        return self.t_ns / 1e9

    def hold(self, column, start_s, end_s):
        """Let a column repeat its last reading."""
        held = (self.t_s >= start_s) & (self.t_s < end_s)
        self.values[held, column] = self.values[np.flatnonzero(held)[0] - 1, column]
        return self

    def items(self):
        return [*self.events, block_of(self.t_ns, self.values)]

    def review(self, items=None, started=None):
        instrument = Instrument("meter", "test", "-", self.channels)
        reviewer = Reviewer([instrument], self.limits, started)
        for item in items or self.items():
            reviewer.feed(item)
        return reviewer.finish()


@pytest.fixture
def trace():
    """Everything above under one name, as test modules can't import each other."""

    class Kit:
        pass

    kit = Kit()
    for name, thing in globals().items():
        if not name.startswith("_") and name not in ("trace", "pytest"):
            setattr(kit, name, thing)
    return kit
