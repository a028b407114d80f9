"""ZeroAge: how old the zero of the motor current is, in two or three words."""

from __future__ import annotations

from datetime import timedelta

from meterlog.analysis.zero_watch import OLD_NS
from meterlog.model import About, Channel, Event, EventKind, Role, SensorKind
from meterlog.model.zero_text import parse_zero
from meterlog.window.sentences import sentence
from meterlog.window.words import say
from meterlog.work.zeros import age_words

OLD = timedelta(microseconds=OLD_NS // 1000)
"""As the review has it."""


def zero_age(about: About, events: tuple[Event, ...], now_ns: int) -> str:
    """Say how old the zero of the motor current is.

    Parameters
    ----------
    about : About
    events : tuple of Event
        In time order.
    now_ns : int, nanoseconds since the recording's zero

    Returns
    -------
    str
        ``zero 3 min old``, with a sign where it is too old; ``no zero: press Z`` for a clamp that
        has none; empty where none is needed.
    """
    found = _current(about)
    if found is None:
        return ""
    key, channel = found
    age: timedelta | None = None
    if channel.zero is not None and channel.zero.taken_utc is not None:
        age = about.started_utc - channel.zero.taken_utc + timedelta(microseconds=now_ns // 1000)
    for event in events:
        if event.kind is EventKind.ZERO and event.source == key:
            parsed = parse_zero(event.value)
            if parsed is not None and parsed[0] == channel.name:
                age = timedelta(microseconds=(now_ns - event.t_ns) // 1000)
    if age is not None:
        return say(
            "{sign}zero {age} old", sign="⚠ " if age > OLD else "", age=sentence(age_words(age))
        )
    if channel.zero is not None or channel.offset != 0.0:
        return say("zero typed")
    clamp = channel.sensor.kind is SensorKind.CLAMP or channel.sensor.turns > 1
    return say("⚠ no zero: press Z") if clamp else ""


def _current(about: About) -> tuple[str, Channel] | None:
    for instrument in about.instruments:
        column = instrument.column(Role.MOTOR_CURRENT)
        if column is not None:
            return instrument.key, instrument.channels[column]
    return None
