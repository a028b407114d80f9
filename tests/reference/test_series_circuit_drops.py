"""Drops and standing resistance against worked examples of textbooks.

Sources
-------
OpenStax, University Physics Volume 2, example 10.1 (the same in College Physics, 21.2): a battery
of 12.00 V with 0.100 ohm inside; 0.500 ohm outside draws 20.0 A at 10.00 V; when the resistance
ahead grows to 0.500 ohm, 12.0 A flow at 6.00 V.

OpenStax, College Physics, 23.6 (back emf), and its exercise with a toy car's motor: 6.00 V, a back
emf of 4.50 V and 3.00 A give 0.500 ohm, and 12.0 A when it can't turn; a motor of 0.400 ohm draws
120 A of 48.0 V when it can't turn, 20.0 A at a back emf of 40.0 V.

A textbook drill: 5.5 V, 1.9 A running, 8.6 A held: 0.6395 ohm.
"""

import numpy as np
import pytest

from meterlog.analysis.drops import drop_findings
from meterlog.analysis.held_rotor import held_scale_ohm, standing_ohm
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.analysis.side_volts import SideVolts
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    FindingKind,
    Instrument,
    Limits,
    Quantity,
    Role,
    Step,
    Verdict,
)

EMF, LOAD = 12.00, 0.500


def instrument():
    stated = Accuracy(0.1, 1, 0.01, basis="invented")
    roles = (
        ("battery", Quantity.VOLTAGE, Role.BATTERY),
        ("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),
        ("return", Quantity.VOLTAGE, Role.MOTOR_RETURN),
        ("current", Quantity.CURRENT, Role.MOTOR_CURRENT),
    )
    made = tuple(Channel(n, q, r, interval_s=0.05, accuracy=stated) for n, q, r in roles)
    return Instrument("meter", "test", "-", made)


def circuit(ahead_ohm):
    """Current and voltage of the example's circuit, by Ohm's law."""
    amps = EMF / (ahead_ohm + LOAD)
    return np.array([EMF, amps * LOAD, 0.0, amps])


def drops_of(before_ohm, inside_ohm):
    """One step of 12 s, the resistance ahead of the load larger from 5 s to 8 s."""
    t_s = np.arange(0.0, 12.0, 0.05)
    grown = (t_s >= 5.0) & (t_s < 8.0)
    values = np.where(grown[:, None], circuit(inside_ohm), circuit(before_ohm))
    t_ns = np.round(t_s * 1e9).astype(np.int64)
    limits = Limits(max_feed_drop_v=1.0, command_lag_s=0.0)
    meter, n = instrument(), len(t_ns)
    side = SideVolts([meter], limits)
    side.take(Block("meter", t_ns, values, np.zeros(values.shape, np.uint8)))
    yes, no = np.ones(n, np.bool_), np.zeros(n, np.bool_)
    side.take_rows(
        Rows(t_ns, values[:, 3], values[:, 1], values[:, 2], yes, no),
        [Stretch(0, n, 4, steady=True)],
    )
    step = Step(4, 0, int(t_ns[-1]), n=n, steady_n=n)
    return drop_findings(Judged((meter,), limits, steps=(step,)), side)


def test_the_drop_ahead_of_the_load_is_the_examples():
    (found,) = drops_of(0.100, 0.100)
    assert found.kind is FindingKind.RESISTIVE_FEED
    assert found.value == pytest.approx(2.00, abs=1e-9)  # 12.00 V - 10.00 V
    assert found.verdict is Verdict.FAIL
    assert found.expanded_uncertainty < 0.05


def test_a_resistance_that_grows_ahead_of_the_load_is_told_by_the_examples_figures():
    found = [f for f in drops_of(0.100, 0.500) if f.limit is None]
    (shift,) = found
    assert (shift.kind, shift.verdict) == (FindingKind.RESISTIVE_FEED, Verdict.FAIL)
    assert shift.value == pytest.approx(4.00, abs=1e-9)  # 10.00 V to 6.00 V
    assert "from 20.0 A to 12.0 A (-40 %)" in shift.statement


@pytest.mark.parametrize(
    ("volts", "held_a", "ohm"),
    [(6.00, 12.0, 0.500), (48.0, 120.0, 0.400), (5.5, 8.6, 0.6395)],
)
def test_a_motor_that_cant_turn_has_the_resistance_of_the_textbooks(volts, held_a, ohm):
    limits = Limits(brush_v=0.0, nominal_v=volts, locked_current_a=held_a)
    assert standing_ohm(volts, held_a, limits) == pytest.approx(ohm, rel=1e-4)
    assert held_scale_ohm(limits) == pytest.approx(ohm, rel=1e-4)


@pytest.mark.parametrize(
    ("volts", "running_a", "back_v", "ohm"),
    [(6.00, 3.00, 4.50, 0.500), (48.0, 20.0, 40.0, 0.400), (5.5, 1.9, 4.285, 0.6395)],
)
def test_a_motor_that_turns_seems_to_have_its_back_emf_in_ohms_more(volts, running_a, back_v, ohm):
    limits = Limits(brush_v=0.0)
    seen = standing_ohm(volts, running_a, limits)
    assert seen - back_v / running_a == pytest.approx(ohm, rel=2e-3)
