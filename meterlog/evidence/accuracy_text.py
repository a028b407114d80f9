"""AccuracyText: what is stated of how well a channel reads, range by range."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from meterlog.model import Accuracy, Channel

_WIDTH = 92


def accuracy_of(channel: Channel) -> Iterator[str]:
    """Give the lines for ``README.txt``: what a is made of in the formula of U.

    Parameters
    ----------
    channel : Channel
        Behind its sensor.

    Yields
    ------
    str
        Indented, wrapped.
    """
    stated = channel.accuracy
    if stated is None:
        yield from _wrapped("accuracy not stated")
        return
    if not channel.ranges:
        yield from _wrapped(f"accuracy {_form(stated, channel.unit)}; {_basis(stated)}")
        yield from _temperature([stated])
        return
    yield from _wrapped(
        "accuracy of the range it was on: what the meter said (range in events.csv), and where it"
        " said nothing the narrowest that shows the value, as a meter does that chooses its range"
        " itself. If the range was fixed by hand, that one holds:"
    )
    for one in channel.ranges:
        form = _form(one.accuracy, channel.unit)
        yield from _wrapped(f"  up to {one.top:g} {channel.unit}: {form}", "        ")
    bases = dict.fromkeys(_basis(one.accuracy) for one in channel.ranges)
    yield from _wrapped("; ".join(bases))
    yield from _temperature([one.accuracy for one in channel.ranges])


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
