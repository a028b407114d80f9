"""Conditions: what a fan's current depends on besides the fan."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Conditions:
    """Under what conditions a recording was made. Empty or None: nobody said.

    Attributes
    ----------
    engine : str
        ``off``, ``running``.
    filter : str
        ``new``, ``used``, ``clogged``, ``none``.
    air : str
        Which way the flaps let the air: ``face``, ``floor``, ``defrost``, ``mixed``.
    intake : str
        ``fresh``, ``recirculated``.
    housing : str
        ``closed``, ``open``.
    place : str
        Where the motor is: ``vehicle``, ``bench``, ``bench, no wheel``.
    windows : str
        ``open``, ``closed``.
    control : str
        ``manual``, ``automatic``.
    ambient_c : float or None, °C
    running_min : float or None, minutes
        How long the fan had been running before.
    battery_v : float or None, volts
        At the battery, fan off, as read by the technician.
    """

    engine: str = ""
    filter: str = ""
    air: str = ""
    intake: str = ""
    housing: str = ""
    place: str = ""
    windows: str = ""
    control: str = ""
    ambient_c: float | None = None
    running_min: float | None = None
    battery_v: float | None = None
