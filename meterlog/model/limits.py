"""Limits: the thresholds by which a trace is judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType


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
    speeds: Mapping[int, SpeedLimits] = field(default_factory=lambda: MappingProxyType({}))
    basis: str = ""
    text: str = ""

    def at(self, speed: int | None) -> SpeedLimits:
        """Give the current limits of ``speed``; open limits where there are none."""
        if speed is None:
            return SpeedLimits()
        return self.speeds.get(speed, SpeedLimits())
