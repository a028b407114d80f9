"""Steps on the curve of an invented motor, with budgets as a meter and a clamp would give them."""

from __future__ import annotations

import math

import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor.curve import Curve
from meterlog.model import (
    Channel,
    Instrument,
    Limits,
    Quantity,
    Role,
    Shape,
    Source,
    Step,
)

ROOT_3 = math.sqrt(3.0)


def _voltage(name, role):
    return Channel(name, Quantity.VOLTAGE, role)


@pytest.fixture
def healthy():
    return Curve(0.16, 1.5, 0.165, 1.2)


@pytest.fixture
def meter():
    """One meter on feed, return and current."""
    return Instrument(
        "m",
        "invented",
        "nowhere",
        (
            _voltage("feed", Role.MOTOR_FEED),
            _voltage("return", Role.MOTOR_RETURN),
            Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT),
        ),
    )


@pytest.fixture
def step_at():
    """Make a step: ``gain_v``, ``gain_a`` are common to all steps, the rest is each one's own."""

    def make(speed, volts, amps, *, gain_v=0.003, gain_a=0.01, own_v=0.01, own_a=0.03, **more):
        voltage = budget(
            f"motor voltage at speed {speed}",
            volts,
            "V",
            (
                Source(
                    "gain", gain_v / ROOT_3, "1", volts, Shape.RECTANGULAR, key="m:gain voltage"
                ),
                Source("digits", own_v, "V"),
            ),
        )
        current = budget(
            f"motor current at speed {speed}",
            amps,
            "A",
            (
                Source("gain", gain_a / ROOT_3, "1", amps, Shape.RECTANGULAR, key="m:gain current"),
                Source("digits", own_a, "A"),
            ),
        )
        start = 10_000_000_000 * speed
        return Step(
            **{
                "speed": speed,
                "start_ns": start,
                "end_ns": start + 10_000_000_000,
                "n": 100,
                "steady_n": 80,
                "steady_mean_v": volts,
                "steady_mean_a": amps,
                "current": current,
                "voltage": voltage,
                **more,
            }
        )

    return make


@pytest.fixture
def judged_of(meter):
    def make(steps, limits=None, **more):
        return Judged(**{
            "instruments": (meter,), "limits": limits or Limits(), "steps": tuple(steps), **more
        })  # fmt: skip

    return make


@pytest.fixture
def run_of(step_at, judged_of):
    """Judge a run of a motor at some motor voltages, read without error."""

    def make(curve, volts, limits=None, **errors):
        steps = [
            step_at(speed, one, curve.amps_at(one), **errors)
            for speed, one in enumerate(volts, start=1)
        ]
        return judged_of(steps, limits or Limits(brush_v=curve.brush_v))

    return make
