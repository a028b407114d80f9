"""What a person types for a reading, and how it is said back."""

from __future__ import annotations

import re
from collections.abc import Sequence

from meterlog.model import Channel, Instrument, Quantity
from meterlog.model.errors import UsageError
from meterlog.model.nominal_volts import most_volts

_NUMBER = re.compile(r"[+\-\N{MINUS SIGN}]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)")


def parse_reading(
    words: str, instruments: Sequence[Instrument]
) -> tuple[Instrument, tuple[float, ...]]:
    """Give which meter a typed line is about, and the numbers.

    Parameters
    ----------
    words : str
        ``12.43`` where one meter is typed by hand, ``KEY 12.43 0.8`` for any: one number a
        channel, as the meter shows them, blanks between them. A decimal comma is understood.
    instruments : sequence of Instrument
        Those of the recording.

    Raises
    ------
    UsageError
        If no meter is typed by hand, it is not said which, or a word is no number.
    """
    typed = [instrument for instrument in instruments if instrument.typed]
    if not typed:
        raise UsageError(
            "no meter of this recording is typed by hand.",
            remedy="Start again with --meter typed-volts@typed: beside the others.",
        )
    parts = words.split()
    named = [instrument for instrument in typed if parts and instrument.key == parts[0]]
    if named:
        parts = parts[1:]
    elif len(typed) > 1:
        keys = ", ".join(instrument.key for instrument in typed)
        raise UsageError(
            "more than one meter is typed by hand.",
            subject=words,
            remedy=f"Put in front which: {keys}.",
        )
    instrument = (named or typed)[0]
    if not parts:
        raise UsageError("no number was typed.", subject=words, remedy=_expected(instrument))
    return instrument, tuple(_number(part, instrument) for part in parts)


def _number(word: str, instrument: Instrument) -> float:
    if not _NUMBER.fullmatch(word):
        raise UsageError("is no number.", subject=word, remedy=_expected(instrument))
    return float(word.replace(",", ".").replace("\N{MINUS SIGN}", "-"))


def _expected(instrument: Instrument) -> str:
    names = " ".join(channel.name.upper() for channel in instrument.channels)
    return f"Expected {names} as {instrument.key} shows them, such as 12.43; no unit."


def reading_words(instrument: Instrument, values: Sequence[float]) -> str:
    """Say what was taken for a reading, such as ``typed-volts: volts 12.43 V``."""
    channels = zip(instrument.channels, values, strict=False)
    return f"{instrument.key}: {', '.join(_said(channel, value) for channel, value in channels)}"


def _said(channel: Channel, value: float) -> str:
    if channel.scale == 1.0 and channel.offset == 0.0:
        return f"{channel.name} {value:.10g} {channel.unit}"
    return f"{channel.name} {value:.10g} shown, {_real(channel, value):.6g} {channel.unit}"


def _real(channel: Channel, value: float) -> float:
    return value * channel.scale - channel.offset


def beyond_words(instrument: Instrument, values: Sequence[float], nominal_v: float) -> str:
    """Ask about typed voltages that can't be on the circuit; empty where all can.

    Parameters
    ----------
    instrument : Instrument
    values : sequence of float
        One a channel, as the meter shows them.
    nominal_v : float
        Of the circuit.
    """
    real = (
        _real(channel, value)
        for channel, value in zip(instrument.channels, values, strict=False)
        if channel.quantity is Quantity.VOLTAGE
    )
    most_v = most_volts(nominal_v)
    beyond = [volts for volts in real if abs(volts) > most_v]
    if not beyond:
        return ""
    return (
        f"{max(beyond, key=abs):g} V? A {nominal_v:g} V circuit has at most"
        f" {most_v:g} V: is the decimal point right, and the range?"
    )
