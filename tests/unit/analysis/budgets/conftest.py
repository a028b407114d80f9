"""Meters, clamps and steps of invented figures for budgets."""

from __future__ import annotations

from dataclasses import replace

import pytest

from meterlog.analysis.budgets import BudgetMaker
from meterlog.model import (
    Accuracy,
    Channel,
    Conditions,
    Instrument,
    Quantity,
    Role,
    Sensor,
    SensorKind,
    Step,
    Zero,
)

VOLTS = Accuracy(0.5, 2, 0.01, basis="invented")
AMPS = Accuracy(1.0, 3, 0.01, basis="invented")
CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A", own_percent=2.0, own_floor=0.1)
STEP = Step(
    speed=2,
    start_ns=0,
    end_ns=20_000_000_000,
    n=200,
    mean_a=8.0,
    steady_n=180,
    steady_mean_v=9.0,
    steady_mean_a=8.0,
    steady_sd_a=0.09,
    steady_lag1_a=0.0,
    steady_volts_n=180,
    steady_sd_v=0.04,
    steady_lag1_v=0.0,
    steady_feed_v=12.0,
    steady_back_v=3.0,
)


class Bench:
    """One meter for the volts and one for the amperes, or one for all."""

    step = STEP
    clamp = CLAMP
    volts, amps = VOLTS, AMPS

    @staticmethod
    def channels(amps=AMPS, volts=VOLTS, **changes):
        volt = Quantity.VOLTAGE
        return (
            Channel("feed", volt, Role.MOTOR_FEED, interval_s=0.1, accuracy=volts),
            Channel("return", volt, Role.MOTOR_RETURN, interval_s=0.1, accuracy=volts),
            replace(
                Channel(
                    "amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1, accuracy=amps
                ),
                **changes,
            ),
        )

    @classmethod
    def one_meter(cls, ambient_c=None, **changes):
        whole = Instrument("meter", "test", "-", cls.channels(**changes))
        return BudgetMaker([whole], Conditions(ambient_c=ambient_c))

    @classmethod
    def two_meters(cls, time_u_s=0.05, **changes):
        feed, back, amps = cls.channels(**changes)
        first = Instrument("volts", "test", "-", (feed, back), time_u_s=time_u_s)
        second = Instrument("amps", "test", "-", (amps,), time_u_s=time_u_s)
        return BudgetMaker([first, second])

    @classmethod
    def three_meters(cls, time_u_s=0.05):
        names = ("feed", "return", "amps")
        pairs = zip(names, cls.channels(), strict=True)
        return BudgetMaker(
            [Instrument(name, "test", "-", (one,), time_u_s=time_u_s) for name, one in pairs]
        )

    @staticmethod
    def behind_clamp(own=True, zero=True, **changes):
        """Give what turns the direct current channel into one behind a clamp."""
        own_percent, own_floor = (2.0, 0.1) if own else (None, None)
        stated = replace(AMPS, percent_of_reading=3.0, floor=0.1) if own else AMPS
        return {
            "sensor": replace(CLAMP, own_percent=own_percent, own_floor=own_floor),
            "amps": stated,
            "zero": Zero(0.0, 0.0, 9) if zero else None,
            **changes,
        }


@pytest.fixture
def bench():
    return Bench
