"""Shared errors: what two recordings have in common because one meter made both.

A line of a budget is one and the same error in two recordings only where it is a gain error of a
channel of the same instrument, known by its serial number, through the same sensor. Digits, zeros
and scatter are each recording's own.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.model import About, Budget, Channel, Instrument, Role

_MODEL = "motor:"


def across_recordings(value: Budget, about: About) -> Budget:
    """Give a budget whose keys mean the same error in whatever recording they stand.

    Parameters
    ----------
    value : Budget
    about : About
        Of the recording it was made from.
    """
    lines = tuple(replace(one, key=_key(one.key, about)) for one in value.sources)
    return replace(value, sources=lines)


def _key(key: str, about: About) -> str:
    if not key or key.startswith(_MODEL):
        return key
    for instrument in about.instruments:
        identity = _identity(instrument)
        if not identity:
            continue
        if key.startswith(f"{instrument.key}:gain "):
            return f"{identity}{key.removeprefix(instrument.key)}"
        for channel in instrument.channels:
            if key.startswith(f"{instrument.key}.{channel.name}:gain of "):
                return f"{identity}{key.removeprefix(instrument.key)} {_sensor(channel)}"
    return f"{about.recording_id} {key}"


def _identity(instrument: Instrument) -> str:
    """Name the one instrument this is; empty where nobody knows."""
    serial = instrument.identity.serial or instrument.usb_serial
    return f"{instrument.profile} no. {serial}" if serial and not instrument.typed else ""


def _sensor(channel: Channel) -> str:
    sensor = channel.sensor
    return f"{sensor.kind.value} {sensor.factor!r} {sensor.own_percent!r} {sensor.own_floor!r}"


def shared_meters(old: About, new: About, roles: Sequence[Role]) -> tuple[str, ...]:
    """Give the instruments that read one of ``roles`` in both recordings, by serial number."""
    seen = [
        {_identity(one) for one in about.instruments for role in roles if _reads(one, role)}
        for about in (old, new)
    ]
    return tuple(sorted(one for one in seen[0] & seen[1] if one))


def _reads(instrument: Instrument, role: Role) -> bool:
    return instrument.column(role) is not None
