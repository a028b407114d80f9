"""The virtual bench's own circuit, stepped finely: its dead bar must be seen as one."""

import dataclasses

import numpy as np
import pytest

from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.ripple import RippleWatch
from meterlog.analysis.rows import Rows
from meterlog.instruments.virtual.commutator import CommutatorFigures
from meterlog.instruments.virtual.fan_circuit import FanCircuit
from meterlog.instruments.virtual.scenario import dice
from meterlog.instruments.virtual.scenarios import SCENARIOS
from meterlog.model import Channel, Instrument, Limits, Quantity, Role, Step

STEP_S = 2.5e-5


def look(dead_bars):
    figures = dataclasses.replace(
        SCENARIOS["healthy-new"].circuit, commutator=CommutatorFigures(dead_bars=dead_bars)
    )
    circuit = FanCircuit(figures, dice("bars", 1, 1), STEP_S)
    circuit.command(4)
    fine = np.array([circuit.step()[3] for _ in range(140_000)])
    amps = fine.reshape(-1, 4).mean(axis=1)[15_000:]  # 10 kS/s, started
    amps += np.random.default_rng(1).normal(0.0, 0.02, len(amps))
    t_ns = np.arange(len(amps), dtype=np.int64) * 100_000
    every = np.ones(len(amps), np.bool_)
    channel = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=1e-4)
    meter = Instrument("daq", "test", "-", (channel,))
    watch = RippleWatch([meter], Limits())
    watch.take_rows(
        Rows(t_ns, amps, None, None, every, ~every), [Stretch(0, len(amps), 4, steady=True)]
    )
    step = Step(4, 0, 10**10, steady_n=len(amps), steady_mean_a=13.0)
    (view,), findings = watch.views(Judged((meter,), Limits(), steps=(step,)))
    return view, findings, circuit.motor.speed_rad_s * 60.0 / (2.0 * np.pi)


def test_a_dead_bar_of_the_bench_is_one_dead_bar_of_twelve():
    view, findings, rpm = look((3,))
    assert (view.bars, view.ripples_per_turn) == (12, 12)
    assert [(flaw.bar, flaw.dead) for flaw in view.flaws] == [(1, True)]
    assert view.turns_rpm == pytest.approx(rpm, rel=0.01)
    assert len(findings) == 1


def test_the_benchs_sound_motor_has_no_mark_and_is_not_condemned():
    view, findings, rpm = look(())
    assert view.commutation_hz == pytest.approx(rpm / 60.0 * 12.0, rel=0.002)
    assert (view.bars, view.flaws, findings) == (None, (), ())
