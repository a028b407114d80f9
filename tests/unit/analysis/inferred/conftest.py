"""A motor stepped through time and read by slow meters: written without the code under test."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import pytest

from meterlog.analysis.detector import SpanDetector
from meterlog.analysis.judged import Judged
from meterlog.analysis.reviewer import Reviewer
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
)

STEP_S = 0.001


@dataclass(frozen=True)
class Fan:
    """Armature and wiring, brushes, constant, inertia, friction and air: a medium cabin fan."""

    ohm: float = 0.202
    brush_v: float = 1.2
    constant: float = 0.026
    inertia: float = 8e-4
    friction: float = 0.03
    air: float = 3.05e-6
    supply_v: float = 13.9


def turning(fan: Fan, seconds: float, opens=(), supply=None, step_s: float = STEP_S):
    """Step a fan that runs already; give (amps, volts across), each one value a step."""
    speed = 356.0
    for _ in range(4000):
        amps = max((fan.supply_v - fan.brush_v - fan.constant * speed) / fan.ohm, 0.0)
        speed += (fan.constant * amps - fan.friction - fan.air * speed**2) / fan.inertia * 1e-3
    count = round(seconds / step_s)
    current, across = np.empty(count), np.empty(count)
    closed = np.ones(count, bool)
    for start, length in opens:
        closed[round(start / step_s) : round((start + length) / step_s)] = False
    volts = np.full(count, fan.supply_v) if supply is None else supply
    for i in range(count):
        amps = 0.0
        if closed[i]:
            amps = max((volts[i] - fan.brush_v - fan.constant * speed) / fan.ohm, 0.0)
        torque = fan.constant * amps - fan.friction - fan.air * speed**2
        speed = max(speed + torque / fan.inertia * step_s, 0.0)
        current[i] = amps
        across[i] = volts[i] - amps * 0.042
    return current, across


def averaged(fine, interval_s, window_s, phase_s=0.0, step_s: float = STEP_S):
    """Read a fine trace as an averaging meter does; give (middles of the windows, means)."""
    total = np.concatenate(([0.0], np.cumsum(fine)))
    wide = max(round(window_s / step_s), 1)
    starts = np.arange(phase_s, len(fine) * step_s - wide * step_s, interval_s)
    first = np.round(starts / step_s).astype(int)
    return (first + wide / 2) * step_s, (total[first + wide] - total[first]) / wide


def instrument(interval_s, window_s, roles=("current",), digit=0.01, **more):
    kinds = {
        "current": (Quantity.CURRENT, Role.MOTOR_CURRENT),
        "feed": (Quantity.VOLTAGE, Role.MOTOR_FEED),
        "return": (Quantity.VOLTAGE, Role.MOTOR_RETURN),
    }
    stated = Accuracy(1.0, 2.0, digit, basis="invented")
    channels = tuple(
        Channel(
            name,
            *kinds[name],
            interval_s=interval_s,
            integration_s=window_s,
            accuracy=stated,
            **more,
        )
        for name in roles
    )
    return Instrument("meter", "test", "-", channels)


def block(t_s, columns, source="meter"):
    values = np.asfortranarray(np.column_stack(columns).astype(float))
    flags = np.where(np.isnan(values), int(Flag.NO_DATA), 0).astype(np.uint8)
    return Block(source, np.round(np.asarray(t_s) * 1e9).astype(np.int64), values, flags)


def event(at_s, kind, value="", source=""):
    return Event(round(at_s * 1e9), kind, value, source)


def speed(at_s, step):
    return event(at_s, EventKind.SPEED, str(step))


def limits(**changes):
    base = {"supply_present_v": 9.5, "min_dwell_s": 0.04, "inrush_window_s": 0.5}
    return Limits(**(base | {"command_lag_s": 0.3} | changes))


def parts_of(whole, places):
    edges = sorted({0, len(whole), *(p for p in places if p < len(whole))})
    return [whole.rows(a, b) for a, b in pairwise(edges)]


def judged(instruments, items, lim=None):
    """Give what the reviewer makes of a recording."""
    lim = lim or limits()
    reviewer = Reviewer(instruments, lim)
    for item in items:
        reviewer.feed(item)
    # Before what the whole adds: that is made here, to look at each part by itself.
    reviewer._detector.finish()
    review = reviewer._review(reviewer._detector.pieces(), ended=True)
    return Judged(
        instruments=tuple(instruments),
        limits=lim,
        spans=review.spans,
        steps=review.steps,
        findings=review.findings,
        doubts=review.doubts,
        events=tuple(item for item in items if isinstance(item, Event)),
    )


def follow(follower, instruments, items, lim=None):
    """Let a follower see a recording, by way of the detector; give the follower."""
    detector = SpanDetector(instruments, lim or limits(), None, follower.take_rows)
    for item in items:
        follower.take(item)
        detector.feed(item)
    detector.finish()
    return follower


@pytest.fixture
def bench():
    """Everything above under one name, as test modules can't import each other."""

    class Kit:
        pass

    kit = Kit()
    for name, thing in globals().items():
        if not name.startswith("_") and name not in ("bench", "pytest"):
            setattr(kit, name, staticmethod(thing) if callable(thing) else thing)
    return kit
