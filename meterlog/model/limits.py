"""Limits: the thresholds by which a trace is judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType


class DecisionRule(StrEnum):
    """How a value with its uncertainty is held against a limit (JCGM 106:2012, 8)."""

    GUARDED = "guarded"
    """Pass and fail both keep a guard band from the limit; between them: can't tell."""
    SIMPLE = "simple"
    """The value alone decides (simple acceptance); the probability says how surely."""


@dataclass(frozen=True, slots=True)
class Fuse:
    """The fuse that feeds the fan.

    Attributes
    ----------
    rating_a : float, amperes
    kind : str
        Key of a table of opening times: ``blade-medium``, ``blade-miniature``, ``blade-large``.
    max_load_percent : float, percent of the rating
        Steady load allowed on the highest speed.
    """

    rating_a: float
    kind: str = "blade-medium"
    max_load_percent: float = 80.0


@dataclass(frozen=True, slots=True)
class Controller:
    """The speed controller.

    Attributes
    ----------
    kind : str
        ``linear``, ``resistors``, ``pulsed``; empty: not said.
    max_heat_w : float or None, watts
        Heat allowed in a linear controller.
    """

    kind: str = ""
    max_heat_w: float | None = None


@dataclass(frozen=True, slots=True)
class SpeedLimits:
    """Allowed motor current at one commanded speed, amperes. None leaves that side open."""

    min_a: float | None = None
    max_a: float | None = None


@dataclass(frozen=True, slots=True)
class Limits:
    """Thresholds of one kind of fan circuit.

    Attributes
    ----------
    name : str
    nominal_v : float, volts
        12 or 24.
    supply_present_v : float, volts
        At or above this the feed counts as there.
    driven_v : float, volts
        At or above this across the motor the controller counts as driving it.
    open_current_a : float, amperes
        Below this there is next to no current.
    locked_current_a : float, amperes
        At or above this, outside the inrush window, the rotor is held.
    inrush_window_s : float, seconds
        After a start or a change of speed, over- and under-current are not judged for this long.
    min_dwell_s : float, seconds
        A condition shorter than this is not a span of its own.
    command_lag_s : float, seconds
        A loss of current that begins or ends this close to an off/on command is the command at
        work, not a fault.
    coast_s : float, seconds
        After a step down the turning motor may draw nothing for this long.
    hysteresis : float, ratio
        A threshold is left only when passed back by this part of itself.
    decision : DecisionRule
    guard_factor : float
        Width of the guard band as a part of the expanded uncertainty, w = r U.
    reference_v : float or None, volts
        Motor voltage to which currents are brought before they are compared; None: 13/12 of the
        nominal voltage.
    at_reference : bool
        The current limits hold at the reference voltage: a step's current is brought there first.
    brush_v : float, volts
        Voltage over the brushes of a running motor, for what the motor's resistance is told by.
    fuse : Fuse or None
    controller : Controller
    max_feed_drop_v, max_ground_drop_v : float or None, volts
        Allowed between battery and motor feed, and between motor return (at full speed) or
        controller ground and battery negative, at the highest speed.
    speeds : mapping of int to SpeedLimits
    basis : str
        Where the figures come from.
    text : str
        The TOML text as read; kept with every recording that uses it.
    """

    name: str = "default"
    nominal_v: float = 12.0
    supply_present_v: float = 9.0
    driven_v: float = 2.0
    open_current_a: float = 0.3
    locked_current_a: float = 40.0
    inrush_window_s: float = 1.5
    min_dwell_s: float = 0.05
    command_lag_s: float = 1.0
    coast_s: float = 2.0
    hysteresis: float = 0.05
    decision: DecisionRule = DecisionRule.GUARDED
    guard_factor: float = 1.0
    reference_v: float | None = None
    at_reference: bool = False
    brush_v: float = 1.2
    fuse: Fuse | None = None
    controller: Controller = field(default_factory=Controller)
    max_feed_drop_v: float | None = None
    max_ground_drop_v: float | None = None
    speeds: Mapping[int, SpeedLimits] = field(default_factory=lambda: MappingProxyType({}))
    basis: str = ""
    text: str = ""

    def at(self, speed: int | None) -> SpeedLimits:
        """Give the current limits of ``speed``; open limits where there are none."""
        if speed is None:
            return SpeedLimits()
        return self.speeds.get(speed, SpeedLimits())

    @property
    def compared_at_v(self) -> float:
        """Motor voltage to which currents are brought before they are compared, volts."""
        return self.nominal_v * 13.0 / 12.0 if self.reference_v is None else self.reference_v
