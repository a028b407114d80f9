"""Element kinds: terminals and figures of each kind of element of a circuit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from meterlog.model.circuit import ElementKind as Kind
from meterlog.model.circuit import FaultMode as Mode


@dataclass(frozen=True, slots=True)
class KindFacts:
    """What one kind of element needs.

    Attributes
    ----------
    terminals : tuple of str
        Names of its terminals, in the order of ``Element.nodes``; the last ``optional`` of them
        may be left out.
    figures : tuple of str
        Figures a profile must state.
    usual : mapping of str to float
        Figures with a usual value.
    modes : tuple of FaultMode
        In which it can fail.
    optional : int
    """

    terminals: tuple[str, ...]
    figures: tuple[str, ...]
    usual: Mapping[str, float]
    modes: tuple[Mode, ...]
    optional: int = 0


OPEN_OHM = 1e9
"""An open, and what insulates: 1 GΩ. From memory: dry insulation is better, damp worse."""

_TWO = ("a", "b")
_PASSIVE = KindFacts(_TWO, ("ohm",), {}, (Mode.OPEN, Mode.RESISTIVE))

KINDS: Mapping[Kind, KindFacts] = MappingProxyType(
    {
        Kind.BATTERY: KindFacts(
            ("plus", "minus"), ("emf_v", "charging_v", "ohm"), {}, (Mode.FLAT, Mode.RESISTIVE)
        ),
        Kind.FUSE: KindFacts(_TWO, ("ohm", "rating_a"), {}, (Mode.OPEN, Mode.RESISTIVE)),
        Kind.WIRE: _PASSIVE,
        Kind.CONNECTION: _PASSIVE,
        Kind.GROUND: _PASSIVE,
        Kind.RESISTOR: _PASSIVE,
        Kind.COIL: _PASSIVE,
        Kind.CONTACT: KindFacts(
            _TWO, ("ohm", "pull_in_v"), {"held": 0.0}, (Mode.OPEN, Mode.RESISTIVE, Mode.SHORTED)
        ),
        Kind.SWITCH: KindFacts(_TWO, ("ohm",), {}, (Mode.OPEN, Mode.RESISTIVE)),
        Kind.MOTOR: KindFacts(
            _TWO,
            ("ohm", "no_load_a", "fan_a_per_v2"),
            {},
            (Mode.OPEN, Mode.RESISTIVE, Mode.SEIZED, Mode.DRAGGING),
        ),
        Kind.TRANSISTOR: KindFacts(
            ("drain", "source", "gate"),
            ("gain_a_per_v2", "threshold_v"),
            {"bypass_ohm": OPEN_OHM},
            (Mode.OPEN, Mode.SHORTED),
        ),
        Kind.REGULATOR: KindFacts(
            ("supply", "out", "ground", "command"),
            ("ohm", "volts_per_volt"),
            {"loop_gain": 20.0, "bypass_ohm": OPEN_OHM},
            (Mode.OPEN, Mode.SHORTED),
        ),
        Kind.CHOPPER: KindFacts(
            ("supply", "out", "ground", "command"),
            ("ohm", "start_v", "full_v"),
            {"bypass_ohm": OPEN_OHM},
            (Mode.OPEN, Mode.SHORTED),
        ),
        Kind.HEAD: KindFacts(
            ("out", "ground", "sense"),
            ("ohm",),
            {"loop_gain": 20.0, "least_v": 0.0, "most_v": 10.0},
            (Mode.NO_DRIVE, Mode.STUCK_DRIVE),
            optional=1,
        ),
    }
)
