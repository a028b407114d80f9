"""SensorsText: what stood between circuit and meter, and what was taken for nothing."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from datetime import datetime

from meterlog.model import Channel, EventKind, Instrument, Role, SensorKind, Zero
from meterlog.model.zero_text import parse_zero
from meterlog.recording import Recording

_WIDTH = 92


def sensor_words(channel: Channel) -> str:
    """Say what the sensor is and what a reading behind it means; empty where there is none.

    Such as ``clamp 10 mV/A, 2 turns (1 V read is 50 A)``.
    """
    sensor = channel.sensor
    if not str(sensor):
        return ""
    read = "V"
    if sensor.kind is SensorKind.DIRECT:
        read = channel.unit if sensor.ratio == 1.0 else "unit"
    return f"{sensor} (1 {read} read is {sensor.factor:.6g} {channel.unit})"


def zero_words(zero: Zero, unit: str, started_utc: datetime | None = None) -> str:
    """Say what is subtracted, how it was found and how old it was at the start.

    Parameters
    ----------
    zero : Zero
    unit : str
    started_utc : datetime or None
        Of the recording; None: don't say the age.
    """
    parts = [f"zero {zero.offset:.4g} {unit}"]
    if zero.count:
        parts.append(f"scatter {zero.scatter:.2g} {unit}, {zero.count} readings")
    if zero.range_top is not None:
        parts.append(f"range up to {zero.range_top:g} {unit}")
    if zero.taken_utc is None:
        if not zero.count:
            parts.append("typed")
    elif started_utc is not None:
        minutes = (started_utc - zero.taken_utc).total_seconds() / 60.0
        parts.append(f"taken {minutes:.0f} min before the start")
    return ", ".join(parts)


def zeros_taken(recording: Recording, instrument: Instrument) -> list[tuple[float, Channel, Zero]]:
    """Give (seconds since the beginning, channel, zero) of each zero taken while recording."""
    found = []
    by_name = {channel.name: channel for channel in instrument.channels}
    for event in recording.events:
        if event.kind is not EventKind.ZERO or event.source != instrument.key:
            continue
        parsed = parse_zero(event.value)
        if parsed is not None and parsed[0] in by_name:
            found.append((event.t_ns / 1e9, by_name[parsed[0]], parsed[1]))
    return found


def sensors_of(recording: Recording, instrument: Instrument) -> Iterator[str]:
    """Give the lines for ``README.txt``: a sensor or a zero each."""
    for channel in instrument.channels:
        name = channel.name if channel.role is Role.OTHER else channel.role.value
        said = sensor_words(channel)
        if said:
            yield from _wrapped(f"{name} sensor: {said}")
        if channel.zero is not None:
            words = zero_words(channel.zero, channel.unit, recording.about.started_utc)
            yield from _wrapped(f"{name} from the beginning: {words}")
    for at_s, channel, zero in zeros_taken(recording, instrument):
        name = channel.name if channel.role is Role.OTHER else channel.role.value
        yield from _wrapped(f"{name} from {at_s:.1f} s on: {zero_words(zero, channel.unit)}")


def sensors_to_list(recording: Recording) -> list[dict[str, object]]:
    """Give sensors and zeros of every channel that has any, ready for JSON."""
    found: list[dict[str, object]] = []
    for instrument in recording.about.instruments:
        taken = zeros_taken(recording, instrument)
        for channel in instrument.channels:
            zeros = [_zero(zero, at_s) for at_s, one, zero in taken if one is channel]
            if channel.zero is not None:
                zeros.insert(0, _zero(channel.zero, 0.0))
            if str(channel.sensor) or zeros:
                found.append(
                    {
                        "instrument": instrument.key,
                        "channel": channel.name,
                        "role": channel.role.value,
                        "sensor": str(channel.sensor),
                        "factor": channel.sensor.factor,
                        "own_percent": channel.sensor.own_percent,
                        "own_floor": channel.sensor.own_floor,
                        "own_top": channel.sensor.own_top,
                        "zeros": zeros,
                    }
                )
    return found


def _zero(zero: Zero, from_s: float) -> dict[str, object]:
    return {
        "from_s": from_s,
        "offset": zero.offset,
        "scatter": zero.scatter,
        "readings": zero.count,
        "taken_utc": None if zero.taken_utc is None else zero.taken_utc.isoformat(),
        "range_top": zero.range_top,
    }


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent="    ", subsequent_indent="    ")
