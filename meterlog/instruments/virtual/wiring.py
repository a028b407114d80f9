"""Wiring: the supply and the resistances around the motor."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Wiring:
    """Battery, feed and ground of a fan circuit.

    Attributes
    ----------
    supply_v : float, volts
        Battery with nothing connected.
    source_ohm : float, ohms
        Of the battery: what makes its terminals sag.
    feed_ohm : float, ohms
        Fuse, relay, connectors and wire from the battery to the motor.
    ground_ohm : float, ohms
        From the controller's ground pin to the battery's negative post.
    """

    supply_v: float = 12.47
    source_ohm: float = 0.005
    feed_ohm: float = 0.030
    ground_ohm: float = 0.010

    @property
    def loop_ohm(self) -> float:
        """All of it in series, ohms."""
        return self.source_ohm + self.feed_ohm + self.ground_ohm
