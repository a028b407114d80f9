"""Reviewed recordings of invented motors, ready to be compared."""

from __future__ import annotations

import math
from datetime import UTC, datetime

import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.compare import side_of
from meterlog.analysis.motor.curve import Curve
from meterlog.model import (
    About,
    Accuracy,
    Channel,
    Conditions,
    Identity,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Review,
    Role,
    Sensor,
    Shape,
    Source,
    Step,
)

ROOT_3 = math.sqrt(3.0)
STATED = Accuracy(1.0, 1.0, 0.01)
ROLES = (Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT)
SHARES = {1: 0.4, 2: 0.55, 3: 0.75, 4: 0.97}


def _gain(unit, value, gain):
    return Source(
        "gain", gain / ROOT_3, "1", value, Shape.RECTANGULAR, key=f"m:gain {unit} {gain:g}"
    )


def make_step(speed, volts, amps, *, gain_v=0.003, gain_a=0.01, own_v=0.005, own_a=0.02, **more):
    voltage = budget(
        "motor voltage", volts, "V",
        (_gain("V", volts, gain_v), Source("digits", own_v, "V", key=f"m.feed:digits {speed}")),
    )  # fmt: skip
    current = budget(
        "motor current", amps, "A",
        (_gain("A", amps, gain_a), Source("digits", own_a, "A", key=f"m.amps:digits {speed}")),
    )  # fmt: skip
    start = 10_000_000_000 * speed
    return Step(**{
        "speed": speed, "start_ns": start, "end_ns": start + 10_000_000_000, "n": 100,
        "steady_n": 80, "steady_mean_v": volts, "steady_mean_a": amps,
        "current": current, "voltage": voltage, **more,
    })  # fmt: skip


@pytest.fixture
def step_of():
    return make_step


@pytest.fixture
def healthy():
    return Curve(0.16, 1.5, 0.165, 1.2)


@pytest.fixture
def worn():
    """The same motor, dragging."""
    return Curve(0.16, 3.5, 0.165, 1.2)


@pytest.fixture
def about_of():
    def make(
        name,
        *,
        serial="A1",
        conditions=None,
        origin=Origin.MEASURED,
        limits=None,
        roles=ROLES,
        part="",
        sensor=None,
        accuracy=STATED,
    ):
        meter = Instrument(
            "m", "invented", "u",
            tuple(
                Channel(
                    role.value,
                    Quantity.CURRENT if role is Role.MOTOR_CURRENT else Quantity.VOLTAGE,
                    role,
                    accuracy=accuracy,
                    sensor=(sensor if role is Role.MOTOR_CURRENT else None) or Sensor(),
                )
                for role in roles
            ),
            identity=Identity(serial=serial),
        )  # fmt: skip
        return About(
            f"id-{name}",
            datetime(2030, 1, 1, tzinfo=UTC),
            0,
            0,
            "test",
            origin,
            (meter,),
            limits or Limits(brush_v=1.2),
            Job(part=part, measured_under=conditions or Conditions()),
        )

    return make


@pytest.fixture
def side(about_of):
    """Make a side: a motor run at four speeds from a supply of so many volts."""

    def make(name, curve, supply_v=13.0, *, steps=None, review=None, errors=None, **about):
        if steps is None:
            steps = [
                make_step(k, s * supply_v, curve.amps_at(s * supply_v), **(errors or {}))
                for k, s in SHARES.items()
            ]
        made = review or {}
        return side_of(name, about_of(name, **about), Review(steps=tuple(steps), **made))

    return make
