"""The scenarios there are. All vehicles and parts are invented."""

from __future__ import annotations

import dataclasses
import difflib
import math

from meterlog.instruments.virtual.commutator import CommutatorFigures
from meterlog.instruments.virtual.controller import ControllerFigures, ControllerStep
from meterlog.instruments.virtual.fan_circuit import CircuitFigures
from meterlog.instruments.virtual.loose_contact import LooseContactFigures, TapEffect
from meterlog.instruments.virtual.motor import MotorFigures
from meterlog.instruments.virtual.scenario import Scenario
from meterlog.instruments.virtual.script import note, speed, tap, wiggle
from meterlog.instruments.virtual.wiring import Wiring
from meterlog.model.errors import UsageError

# A medium cabin fan of a 12 V vehicle, key on, engine off. Common practice, no source.
_NEW = MotorFigures(
    resistance_ohm=0.16,
    inductance_h=2.0e-4,
    constant=0.0260,
    inertia_kg_m2=8.0e-4,
    brush_drop_v=1.2,
    friction_n_m=0.030,
    breakaway=1.1,
    air_n_m_s2=3.05e-6,
    ripple=0.02,
)
_OLD = dataclasses.replace(_NEW, resistance_ohm=0.166, friction_n_m=0.038, ripple=0.03)
_WORN = dataclasses.replace(
    _OLD, resistance_ohm=0.155, constant=0.0250, friction_n_m=0.21, breakaway=1.05
)
_SEIZED = dataclasses.replace(_OLD, friction_n_m=40.0)

_LINEAR = ControllerFigures(
    steps=(
        ControllerStep(volts=5.6, ceiling_a=6.0),
        ControllerStep(volts=7.2, ceiling_a=9.5),
        ControllerStep(volts=9.3, ceiling_a=15.0),
        ControllerStep(),
    )
)
_WIRING = Wiring()
_BAD_FEED = dataclasses.replace(_WIRING, feed_ohm=_WIRING.feed_ohm + 0.15)

_VAN = "Brindlemoor 240 panel van, fleet no. 17 (invented)"
_BUS = "Quillhaven M9 minibus, fleet no. 4 (invented)"
_OLD_PART = "Fan motor OX-1180, serial 004417 (invented)"
_NEW_PART = "Fan motor OX-1180, serial 019302 (invented)"

_HEALTHY_SCRIPT = (
    speed(0.0, 0),
    speed(2.0, 1),
    speed(7.0, 2),
    speed(12.0, 3),
    speed(17.0, 4),
    speed(22.0, 0),
)
_LOST_SCRIPT = (
    speed(0.0, 0),
    speed(2.0, 2),
    speed(6.0, 4),
    speed(18.0, 3),
    speed(23.0, 0),
)


def _healthy(name: str, title: str, part: str, motor: MotorFigures) -> Scenario:
    return Scenario(
        name=name,
        title=title,
        description="Nothing is wrong: each speed settles at its current, and taps change nothing.",
        vehicle=_VAN,
        part=part,
        circuit=CircuitFigures(_WIRING, motor, _LINEAR),
        script=(*_HEALTHY_SCRIPT[:5], tap(19.5), tap(20.2), _HEALTHY_SCRIPT[5]),
        seconds=25.0,
    )


_SCENARIOS = (
    _healthy("healthy-old", "healthy motor with some years on it", _OLD_PART, _OLD),
    Scenario(
        name="worn",
        title="worn motor that drags",
        description=(
            "Bearings drag and turns are shorted: it stalls on low, and draws too much for its"
            " speed on all others."
        ),
        vehicle=_VAN,
        part=_OLD_PART,
        circuit=CircuitFigures(_WIRING, _WORN, _LINEAR),
        script=_HEALTHY_SCRIPT,
        seconds=25.0,
    ),
    Scenario(
        name="dead-spot",
        title="dead bar and a worn brush; a tap cures it for a while",
        description=(
            "The shaft rests with a brush on a dead bar, so the fan does not start until tapped."
            " Then the brush lifts every few seconds: full voltage, no current, back upon a tap."
        ),
        vehicle=_VAN,
        part=_OLD_PART,
        circuit=CircuitFigures(
            _WIRING,
            _OLD,
            _LINEAR,
            commutator=CommutatorFigures(dead_bars=(0,)),
            rest_angle_rad=0.0,
            brush=LooseContactFigures(holds_s=(3.0, 4.4), tap=TapEffect.CLOSES),
        ),
        script=(
            speed(0.0, 0),
            speed(2.0, 1),
            tap(3.6),
            speed(5.6, 2),
            tap(9.0),
            speed(10.5, 3),
            tap(14.4),
            speed(15.6, 4),
            tap(20.0),
            speed(22.5, 0),
        ),
        seconds=25.0,
    ),
    Scenario(
        name="tap-test",
        title="worn brush, tapped as a claims reviewer wants to see it",
        description=(
            "Ten seconds of base line, the leads moved, then a brush that lifts three times and"
            " falls back upon a tap each time, and ten seconds of base line. Take the zero of the"
            " clamp before the fan is switched on and after it is off."
        ),
        vehicle=_VAN,
        part=_OLD_PART,
        circuit=CircuitFigures(
            _WIRING,
            _OLD,
            _LINEAR,
            brush=LooseContactFigures(holds_s=(13.0, 13.6), tap=TapEffect.CLOSES),
        ),
        script=(
            speed(0.0, 0),
            speed(3.0, 4),
            wiggle(13.5),
            tap(19.5),
            tap(36.0),
            tap(52.5),
            speed(64.0, 0),
        ),
        seconds=67.0,
    ),
    _healthy("healthy-new", "new motor, just fitted", _NEW_PART, _NEW),
    Scenario(
        name="seized",
        title="seized motor",
        description="The shaft is held: current of a locked rotor at every speed, no motion.",
        vehicle=_BUS,
        part=_OLD_PART,
        circuit=CircuitFigures(_WIRING, _SEIZED, _LINEAR),
        script=(
            speed(0.0, 0),
            speed(2.0, 1),
            speed(5.0, 2),
            speed(8.0, 3),
            speed(11.0, 4),
            tap(13.0),
            speed(16.0, 0),
        ),
        seconds=20.0,
    ),
    Scenario(
        name="bad-feed-connector",
        title="burnt feed connector that opens when shaken",
        description=(
            "A feed connector has 0.15 ohm too much, which hides on low and shows on high, and"
            " opens for a moment when shaken or by itself."
        ),
        vehicle=_BUS,
        part=_OLD_PART,
        circuit=CircuitFigures(
            _BAD_FEED,
            _OLD,
            _LINEAR,
            feed=LooseContactFigures(holds_s=(6.5, 8.5), opens_s=(0.5, 1.2), tap=TapEffect.OPENS),
        ),
        script=(
            *_HEALTHY_SCRIPT[:5],
            note(18.4, "feed connector shaken"),
            tap(18.5),
            note(20.4, "feed connector shaken"),
            tap(20.5),
            speed(24.0, 0),
        ),
        seconds=27.0,
    ),
    Scenario(
        name="feed-lost",
        title="feed lost while running",
        description=(
            "The feed opens while the fan runs: the coasting motor goes on giving a voltage that"
            " decays, which a slow meter can take for supply."
        ),
        vehicle=_BUS,
        part=_NEW_PART,
        circuit=CircuitFigures(
            _WIRING,
            _NEW,
            _LINEAR,
            feed=LooseContactFigures(holds_s=(6.5, 8.0), opens_s=(2.0, 3.0)),
        ),
        script=_LOST_SCRIPT,
        seconds=26.0,
    ),
    Scenario(
        name="ground-lost",
        title="ground side lost while running",
        description=(
            "The ground of the controller opens while the fan runs: the motor's return rises to"
            " the feed as the motor coasts down."
        ),
        vehicle=_BUS,
        part=_NEW_PART,
        circuit=CircuitFigures(
            _WIRING,
            _NEW,
            _LINEAR,
            ground=LooseContactFigures(holds_s=(6.5, 8.0), opens_s=(2.0, 3.0)),
        ),
        script=_LOST_SCRIPT,
        seconds=26.0,
    ),
)

SCENARIOS = {scenario.name: scenario for scenario in _SCENARIOS}
"""All scenarios by name."""


def find_scenario(name: str) -> Scenario:
    """Give a scenario by name.

    Raises
    ------
    UsageError
        If there is none; suggests the nearest.
    """
    if name in SCENARIOS:
        return SCENARIOS[name]
    near = difflib.get_close_matches(name, SCENARIOS, 1)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    raise UsageError(
        "no scenario of this name.",
        subject=name,
        remedy=f"{hint}There are: {', '.join(SCENARIOS)}.",
    )


def locked_current_a(circuit: CircuitFigures) -> float:
    """Give the current on full speed with the shaft held, amperes: (V - brushes) / R."""
    wiring = circuit.wiring
    ohm = wiring.loop_ohm + circuit.controller.on_ohm + circuit.motor.resistance_ohm
    return (wiring.supply_v - circuit.motor.brush_drop_v) / ohm if ohm > 0.0 else math.inf
