"""Pulses: current and return voltage within one period of a chopped feed.

Exponentials of an inductance with resistance between on and off, in their periodic state; where
the current dies before the next pulse it stays at nothing until then. Textbook arithmetic of a
one-quadrant chopper with freewheeling diode.
"""

from __future__ import annotations

import numpy as np
from circuit import DIODE_V, Circuit, Line

PHASES = (np.arange(64) + 0.5) / 64.0


def within_period(
    circuit: Circuit, line: Line, own: np.ndarray, phase: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """Give motor current and volts across the motor at ``phase`` (0 to 1) of the period."""
    fan, period = circuit.fan, 1.0 / circuit.hertz
    tau = fan.henry / line.ohms
    on_s, off_s = line.duty * period, (1.0 - line.duty) * period
    rise = (line.volts - own) / line.ohms
    fall = -(own + fan.brush + DIODE_V) / line.ohms
    kept_on, kept_off = np.exp(-on_s / tau), np.exp(-off_s / tau)
    low = (rise * (1.0 - kept_on) * kept_off + fall * (1.0 - kept_off)) / (1.0 - kept_on * kept_off)
    low = np.maximum(low, 0.0)
    top = rise + (low - rise) * kept_on
    at = phase * period
    on = at < on_s
    amps = np.where(
        on,
        rise + (low - rise) * np.exp(-at / tau),
        fall + (top - fall) * np.exp(-np.maximum(at - on_s, 0.0) / tau),
    )
    amps = np.maximum(amps, 0.0)
    driven = line.volts + fan.brush - amps * circuit.wires
    volts = np.where(on, driven, np.where(amps > 0.0, -DIODE_V, own))
    return amps, volts


def averages(circuit: Circuit, line: Line, own: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Give mean current and mean volts across the motor at each own voltage."""
    amps, volts = within_period(circuit, line, own[:, None], PHASES[None, :])
    return amps.mean(axis=1), volts.mean(axis=1)


def mean_line(circuit: Circuit, line: Line) -> Line:
    """Give the line that the mean current follows: through rest and where the motor settles."""
    fan = circuit.fan
    own = np.linspace(0.0, line.volts, 60)
    amps = averages(circuit, line, own)[0]
    speed = own / fan.emf
    surplus = fan.emf * amps - fan.friction - fan.air * speed**2
    settled = int(np.argmax(surplus < 0.0)) if (surplus < 0.0).any() else len(own) - 1
    settled = max(settled, 1)
    ohms = own[settled] / max(amps[0] - amps[settled], 1e-6)
    return Line(amps[0] * ohms, ohms, line.duty)
