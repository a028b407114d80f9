"""ReadingLines: what the uncertainty of a mean reading is made of besides its scatter.

A maker states ±(percent of reading + digits) as one sum. Its percent part is the error of the
meter's reference and dividers: the same for all that one meter reads on one range, so that it goes
out of ratios and shrinks in differences. Its digits part is offset, linearity and rounding: another
one for each reading. How a given meter's errors really go together no data sheet says; so the line
of the digits holds all that is left of the whole sum, a^2 - a_percent^2, and a single reading has
just the uncertainty of the whole statement, a / sqrt(3), and its shape.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from meterlog.analysis.past_range import PAST_READING, is_past
from meterlog.analysis.stated_channel import Stated, StatedChannel
from meterlog.model import Accuracy, Shape, Source

_ROOT_3 = math.sqrt(3.0)


@dataclass(frozen=True, slots=True)
class Statement:
    """One ±(percent of reading + the rest), with how its lines are named and known again.

    Attributes
    ----------
    device : str
    place : str
        Which of its channels.
    unit : str
    gain_key, rest_key : str
    basis : str
    """

    device: str
    place: str
    unit: str
    gain_key: str
    rest_key: str
    basis: str

    def lines(self, value: float, percent: float, rest: float, rest_name: str) -> Iterator[Source]:
        """Give the lines of the percent and of the rest.

        Parameters
        ----------
        value : float, in ``unit``
        percent : float, percent of reading
        rest : float, in ``unit``
        rest_name : str
        """
        gain = abs(value) * percent / 100.0
        if gain > 0.0:
            yield Source(
                name=f"gain of {self.device} at {self.place}, {percent:g} %",
                standard_u=percent / _ROOT_3,
                unit="%",
                sensitivity=value / 100.0,
                shape=Shape.RECTANGULAR,
                key=self.gain_key,
                basis=self.basis,
                whole=self.rest_key,
            )
        if rest > 0.0:
            line = self.line(rest_name, math.sqrt((gain + rest) ** 2 - gain**2), self.rest_key)
            yield replace(line, whole=self.rest_key)

    def line(self, name: str, half_width: float, key: str) -> Source:
        """Give the line of a rectangle (JCGM 100:2008, 4.3.7)."""
        return Source(
            name=name,
            standard_u=half_width / _ROOT_3,
            unit=self.unit,
            shape=Shape.RECTANGULAR,
            key=key,
            basis=self.basis,
        )


def reading_lines(
    home: StatedChannel, stated: Stated, value: float, tag: str, ambient_c: float | None
) -> list[Source]:
    """Give the lines of a budget for the mean of some readings, their scatter left out.

    Parameters
    ----------
    home : StatedChannel
    stated : Stated
        What holds for these readings.
    value : float, unit of the channel
        Their mean, with its sign.
    tag : str
        Tells these readings from all others: the errors of two lots of readings are the same only
        where their keys do not hold it.
    ambient_c : float or None, °C

    Returns
    -------
    list of Source
        The meter's gain and digits, its temperature, its resolution where the statement has no
        digits, the sensor's own error, scatter and drift of the zero.

    Source
    ------
    JCGM 100:2008, 4.3.7 (rectangles), 4.2.3 (the mean that was subtracted as zero), F.2.2.1
    (resolution: a rectangle of half a digit either way), F.1.2.3 (one instrument, correlated).
    """
    return [
        *_meter_lines(home, stated, value, tag, ambient_c),
        *_sensor_lines(home, stated, value, tag),
        *_zero_lines(home, stated, tag),
    ]


def lacking_of(
    home: StatedChannel, stated: Stated, value: float, ambient_c: float | None
) -> list[str]:
    """Say what ought to be in the budget of a reading and is not known."""
    sensor, role = home.channel.sensor, home.channel.role.value
    told = [PAST_READING] if is_past(home.channel, value) else []
    if stated.meter is None:
        told.append(f"the meter's accuracy for {role} is not stated")
    elif ambient_c is None and stated.meter.per_kelvin:
        told.append(
            f"the temperature was not recorded ({home.key} is stated for"
            f" {stated.meter.low_c:g} to {stated.meter.high_c:g} °C)"
        )
    if home.own_unsaid:
        told.append(f"the {sensor.kind.value}'s own error for {role} is not stated")
    if home.zero_unsaid:
        told.append(f"no zero of {role} was taken")
    return told


def _meter_lines(
    home: StatedChannel, stated: Stated, value: float, tag: str, ambient_c: float | None
) -> Iterator[Source]:
    meter = stated.meter
    if meter is None:
        return
    unit = home.channel.unit
    rest = meter.digits * meter.resolution + meter.floor
    statement = Statement(
        device=home.key,
        place=home.channel.name,
        unit=unit,
        gain_key=_gain_key(home, stated, meter),
        rest_key=f"{_place(home)}:digits {tag}",
        basis=meter.basis,
    )
    yield from statement.lines(value, meter.percent_of_reading, rest, _digits_name(home, meter))
    here, there = meter.half_width(value), meter.half_width(value, ambient_c)
    if there > here:
        name = f"temperature of {home.key}, {ambient_c:g} °C"
        wider = math.sqrt(there**2 - here**2)
        yield statement.line(name, wider, f"{_place(home)}:temperature {tag}")
    if not meter.digits and meter.resolution > 0.0:
        name = f"last digit of {home.key}, {meter.resolution:g} {unit}"
        own = replace(statement, basis="JCGM 100:2008, F.2.2.1")
        yield own.line(name, meter.resolution / 2.0, f"{_place(home)}:rounding {tag}")


def _sensor_lines(home: StatedChannel, stated: Stated, value: float, tag: str) -> Iterator[Source]:
    """Give the sensor's own gain and floor.

    A zero that was taken has measured the floor at that moment. The floor stays in nevertheless,
    for what it has drifted since: too large rather than too small, and said in the line.
    """
    sensor = home.channel.sensor
    if sensor.own_percent is None:
        return
    kind = sensor.kind.value if sensor.words else "sensor"
    named = f"{kind} {sensor.words}".strip()
    statement = Statement(
        device=named,
        place=home.channel.name,
        unit=home.channel.unit,
        gain_key=f"{_place(home)}:gain of {named}",
        rest_key=f"{_place(home)}:floor of {named} {tag}",
        basis="stated for the sensor by itself",
    )
    floor = sensor.own_floor or 0.0
    kept = ", kept for drift since the zero" if stated.zero_u > 0.0 else ""
    name = f"floor of {named}, {floor:g} {home.channel.unit}{kept}"
    yield from statement.lines(value, sensor.own_percent, floor, name)


def _zero_lines(home: StatedChannel, stated: Stated, tag: str) -> Iterator[Source]:
    if stated.zero_u > 0.0:
        yield Source(
            name="scatter of the zero",
            standard_u=stated.zero_u,
            unit=home.channel.unit,
            sensitivity=-1.0,
            degrees=stated.zero_degrees,
            key=f"{_place(home)}:zero {stated.zero_offset!r} {stated.zero_u!r}",
            basis="readings of which the zero was made",
        )
    if stated.drift > 0.0:
        yield Source(
            name="drift to the next zero",
            standard_u=stated.drift / _ROOT_3,
            unit=home.channel.unit,
            sensitivity=-1.0,
            shape=Shape.RECTANGULAR,
            key=f"{_place(home)}:drift {tag}",
            basis="difference of the zeros",
        )


def _place(home: StatedChannel) -> str:
    return f"{home.key}.{home.channel.name}"


def _gain_key(home: StatedChannel, stated: Stated, meter: Accuracy) -> str:
    """One meter, one range, one statement: one gain error, whichever channel reads."""
    top = ""
    if stated.range_top is not None:
        top = f" {stated.range_top / abs(home.channel.sensor.factor):.6g}"
    return f"{home.key}:gain {home.meter_reads.value}{top} {meter.percent_of_reading:g} %"


def _digits_name(home: StatedChannel, meter: Accuracy) -> str:
    unit = home.channel.unit
    parts = []
    if meter.digits:
        parts.append(f"{meter.digits:g} x {meter.resolution:g} {unit}")
    if meter.floor:
        parts.append(f"{meter.floor:g} {unit}")
    return f"digits of {home.key} at {home.channel.name}, {' + '.join(parts)}"
