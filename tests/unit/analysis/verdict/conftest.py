"""Recordings as the verdict of a run sees them: findings, doubts and parts put together by hand."""

import dataclasses
from types import SimpleNamespace

import pytest

from meterlog.analysis.judged import Judged
from meterlog.analysis.verdict import Case, causes_of, run_verdict
from meterlog.model import (
    Channel,
    Conditions,
    Doubt,
    DoubtKind,
    Finding,
    FindingKind,
    Instrument,
    Limits,
    Quantity,
    Review,
    Role,
    Span,
    SpanKind,
    SpeedLimits,
    Step,
    Tap,
    TapCheck,
    TapEvidence,
    Verdict,
)

ALL_ROLES = (Role.BATTERY, Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.COMMAND, Role.MOTOR_CURRENT)


def meter(roles=ALL_ROLES, simulated=False):
    channels = tuple(Channel(role.value, role.quantity or Quantity.VOLTAGE, role) for role in roles)
    return Instrument("meter", "test", "-", channels, simulated=simulated)


def finding(kind, verdict=Verdict.FAIL, start=10.0, length=2.0, **more):
    kind, verdict = FindingKind(kind), Verdict(verdict)
    fields = {
        "value": 0.0,
        "unit": "A",
        "expanded_uncertainty": 0.05,
        "limit": 0.3,
        "speed": 4,
        "statement": f"{kind.value} at {start:g} s.",
    }
    first = round(start * 1e9)
    return Finding(kind, verdict, first, first + round(length * 1e9), 10_000_000, **(fields | more))


def passed(speed, mean=10.0):
    words = f"Speed {speed} draws {mean:g} A."
    return finding(
        "step-current", "pass", speed * 10.0, 10.0, value=mean, limit=18.0, speed=speed,
        statement=words,
    )  # fmt: skip


def step(speed, mean=10.0, volts=12.0):
    first = round(speed * 10e9)
    return Step(
        speed, first, first + 10_000_000_000, n=100, steady_n=90, steady_mean_a=mean,
        steady_expanded_a=0.1, steady_coverage=2.0, steady_mean_v=volts,
    )  # fmt: skip


def doubt(kind, start=0.0, end=0.0, **more):
    kind = DoubtKind(kind)
    return Doubt(kind, f"Doubt: {kind.value}.", round(start * 1e9), round(end * 1e9), **more)


def taps(tried=3, answered=3, chance=0.0004, **more):
    made = tuple(
        Tap(round((10 + i) * 1e9), 4, 0.0, 13.0, "dead", "running", 0.1, 0.05, True, False, i + 1)
        for i in range(tried)
    )
    checks = more.pop("checks", (TapCheck("repeats", Verdict.PASS, "3 of 3."),))
    words = f"On {answered} of {tried} taps made while the current was gone, it returned."
    fields = {"accepted": Verdict.PASS, "summary": words, "attempts": tried}
    return TapEvidence(made, tried, answered, chance, 9999, checks, **(fields | more))


def judged(roles=ALL_ROLES, simulated=False, conditions=None, **limits):
    speeds = limits.pop("speeds", {n: SpeedLimits(2.0, 18.0) for n in (1, 2, 3, 4)})
    return Judged(
        (meter(roles, simulated),), Limits(speeds=speeds, **limits), conditions or Conditions()
    )


def review(*findings, **parts):
    running = Span(SpanKind.RUNNING, 0, 60_000_000_000, speed=4)
    fields = {"spans": (running,), "steps": (step(4),), "shortest_visible_dropout_s": 0.04}
    return Review(findings=tuple(findings), **(fields | parts))


@pytest.fixture
def kit():
    return SimpleNamespace(
        finding=finding,
        passed=passed,
        step=step,
        doubt=doubt,
        taps=taps,
        judged=judged,
        review=review,
        replace=dataclasses.replace,
        Case=Case,
        causes_of=causes_of,
        run_verdict=run_verdict,
    )


@pytest.fixture
def verdict_of(kit):
    def of(*findings, roles=ALL_ROLES, conditions=None, limits=None, simulated=False, **parts):
        case = kit.judged(roles, simulated, conditions, **(limits or {}))
        return run_verdict(case, kit.review(*findings, **parts))

    return of
