"""The motor's figures for JSON and for a terminal."""

import json
from dataclasses import replace

import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor import controller_heat, motor_fit
from meterlog.analysis.motor.curve import Curve
from meterlog.evidence.motor_json import heat_to_list, motor_to_dict
from meterlog.evidence.motor_text import motor_lines
from meterlog.model import (
    Accuracy,
    Channel,
    Controller,
    Instrument,
    Limits,
    Quantity,
    Role,
    Source,
    Step,
)

CURVE = Curve(0.16, 1.5, 0.165, 1.2)
ROLES = (Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT)


def _step(speed, volts):
    amps = CURVE.amps_at(volts)
    return Step(
        speed, speed * 10**10, (speed + 1) * 10**10, n=100, steady_n=80,
        steady_mean_v=volts, steady_mean_a=amps, steady_back_v=13.2 - volts, steady_feed_v=13.2,
        voltage=budget("v", volts, "V", (Source("d", 0.01, "V"),)),
        current=budget("a", amps, "A", (Source("d", 0.02, "A"),)),
    )  # fmt: skip


def _judged(volts=(4.0, 7.0, 10.0, 13.0)):
    channels = tuple(
        Channel(
            role.value,
            Quantity.CURRENT if role is Role.MOTOR_CURRENT else Quantity.VOLTAGE,
            role,
            accuracy=Accuracy(0.5, 1.0, 0.01),
        )
        for role in ROLES
    )
    limits = Limits(controller=Controller("linear", 45.0))
    steps = tuple(_step(k, v) for k, v in enumerate(volts, 1))
    return Judged((Instrument("m", "p", "u", channels),), limits, steps=steps)


def test_the_keys_hold_the_units_and_the_values():
    told = motor_to_dict(motor_fit(_judged()))
    json.dumps(told, allow_nan=False)
    assert told["refusal"] == ""
    assert told["resistance_ohm"] == pytest.approx(0.16, rel=1e-4)
    assert 0.0 < told["resistance_expanded_ohm"] < 0.16
    assert told["fan_constant_a_per_v2"] == pytest.approx(0.165, rel=1e-4)
    assert told["at_reference_a"] == pytest.approx(CURVE.amps_at(13.0), rel=1e-4)
    assert told["stall_extrapolated_a"] == pytest.approx(11.8 / 0.16, rel=1e-3)
    assert [one["speed"] for one in told["points"]] == [1, 2, 3, 4]
    assert len(told["covariance"]) == 3
    u = told["covariance"][0][0] ** 0.5
    assert 1.5 * u < told["resistance_expanded_ohm"] < 3.0 * u


def test_a_refusal_leaves_the_figures_empty():
    told = motor_to_dict(motor_fit(_judged((5.0, 13.0))))
    json.dumps(told, allow_nan=False)
    assert "2 of at least 3" in told["refusal"]
    assert told["resistance_ohm"] is None
    assert told["at_reference_a"] is None
    assert told["covariance"] == []
    assert motor_to_dict(None) is None


def test_the_lines_say_what_is_measured_and_what_is_extrapolated():
    judged = _judged()
    heat, _, _ = controller_heat(judged)
    lines = motor_lines(motor_fit(judged), heat)
    text = "\n".join(lines)
    assert max(len(line) for line in lines) <= 100
    assert "winding resistance 0.160" in text
    assert "brushes taken as 1.2 V" in text
    assert "at 13 V across the motor" in text
    assert "extrapolated" in text
    assert "heat in the controller" in text
    assert "allowed 45 W" in " ".join(text.split())


def test_a_refusal_is_told_in_lines_that_fit():
    lines = motor_lines(motor_fit(_judged((5.0, 13.0))))
    assert max(len(line) for line in lines) <= 100
    assert any("No motor figures" in line for line in lines)
    assert motor_lines(None) == []


def test_heat_for_json_holds_its_verdict():
    heat, _, _ = controller_heat(_judged())
    told = heat_to_list(heat)
    json.dumps(told, allow_nan=False)
    assert [one["speed"] for one in told] == [1, 2, 3, 4]
    assert told[0]["heat_w"] == pytest.approx(9.2 * CURVE.amps_at(4.0))
    assert told[0]["verdict"] == "pass"
    assert told[0]["heat_expanded_w"] > 0.0
    bare = replace(heat[0], limit_w=None, verdict=None, probability=None)
    assert heat_to_list([bare])[0]["verdict"] is None
