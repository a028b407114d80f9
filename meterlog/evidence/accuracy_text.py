"""AccuracyText: what is stated of how well a channel reads, range by range."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from meterlog.analysis.stated_channel import without_own
from meterlog.model import Accuracy, Channel

_WIDTH = 92


def accuracy_of(channel: Channel) -> Iterator[str]:
    """Give the lines for ``README.txt``: what a is made of in the formula of U.

    Of a sensor with an accuracy of its own they are two: the budgets take it and its meter for two
    devices, each with its own error, and no sum of both would give the U that is told.

    Parameters
    ----------
    channel : Channel
        Behind its sensor.

    Yields
    ------
    str
        Indented, wrapped.
    """
    if channel.accuracy is None:
        yield from _wrapped("accuracy not stated")
        return
    stated = without_own(channel.accuracy, channel.sensor)
    if not channel.ranges:
        yield from _wrapped(f"accuracy {_form(stated, channel.unit)}; {_basis(stated)}")
        yield from _temperature([stated])
        yield from _sensor(channel)
        return
    yield from _wrapped(
        "accuracy of the range it was on: what the meter said (range in events.csv), and where it"
        " said nothing the narrowest that shows the value, as a meter does that chooses its range"
        " itself. If the range was fixed by hand, that one holds:"
    )
    ranges = [(one.top, without_own(one.accuracy, channel.sensor)) for one in channel.ranges]
    for top, one in ranges:
        form = _form(one, channel.unit)
        yield from _wrapped(f"  up to {top:g} {channel.unit}: {form}", "        ")
    yield from _wrapped("; ".join(dict.fromkeys(_basis(one) for _, one in ranges)))
    yield from _temperature([one for _, one in ranges])
    yield from _sensor(channel)


def _sensor(channel: Channel) -> Iterator[str]:
    sensor = channel.sensor
    if sensor.own_percent is None:
        return
    top = ""
    if sensor.own_top is not None:
        through = " through it" if sensor.turns > 1 else ""
        top = f", up to {sensor.own_top:g} {channel.unit}{through}"
    yield from _wrapped(
        f"the sensor's own accuracy, an error besides the meter's: +-({sensor.own_percent:g} % of"
        f" reading + {sensor.own_floor or 0.0:g} {channel.unit}){top}; as stated for it"
    )


def _form(stated: Accuracy, unit: str) -> str:
    return (
        f"+-({stated.percent_of_reading:g} % of reading + {stated.digits:g} x"
        f" {stated.resolution:g} {unit} + {stated.floor:g} {unit})"
    )


def _basis(stated: Accuracy) -> str:
    return stated.basis or "no source stated"


def _temperature(stated: list[Accuracy]) -> Iterator[str]:
    worst = max(stated, key=lambda one: one.per_kelvin)
    if not worst.per_kelvin:
        return
    yield from _wrapped(
        f"stated for {worst.low_c:g} to {worst.high_c:g} degrees C; outside that it grows by"
        f" {worst.per_kelvin:g} of itself a degree, which the uncertainties hold where the ambient"
        " temperature was recorded"
    )


def _wrapped(text: str, subsequent: str = "    ") -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent="    ", subsequent_indent=subsequent)
