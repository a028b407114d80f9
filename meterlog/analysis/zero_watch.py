"""ZeroWatch: tells whether the zero of a clamp is to be trusted.

A clamp's zero drifts by 0.1 to 0.5 A within ten minutes (trade figures, from memory), with its
temperature, its battery and the way it hangs. What matters is that a zero was taken, how old it
was, whether the meter is still on the range on which it was taken, and whether one taken
afterwards says the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import datetime

import numpy as np

from meterlog.analysis.levels import LevelPart, Levels
from meterlog.model import (
    Channel,
    Doubt,
    DoubtKind,
    Event,
    EventKind,
    Instrument,
    Quantity,
    Role,
    SensorKind,
    Zero,
)
from meterlog.model.zero_text import parse_zero

OLD_NS = 600_000_000_000
"""Ten minutes."""
MOST_DRIFT_A = 0.2
"""Zeros before and after may differ by less than this (a proposal of the trade, from memory)."""


class _Beyond:
    """Looks for the first current above a range's top, once through the recording."""

    def __init__(self, since_ns: int, top: float) -> None:
        self.asked = since_ns, top
        self._at: int | None = None
        self._found_ns: int | None = None

    def first_ns(self, levels: Levels) -> int | None:
        """Give when the current first was above; None where it never was."""
        since_ns, top = self.asked
        if self._found_ns is not None:
            return self._found_ns
        first = levels.from_ns(since_ns + 1) if self._at is None else self._at
        if first >= len(levels):
            return None  # bins from before the zero may still come
        self._at = max(first, levels.settled)
        self._found_ns = _first_above(levels.lots(first, self._at), top)
        if self._found_ns is not None:
            return self._found_ns
        return _first_above(levels.lots(self._at, len(levels)), top)


def _first_above(lots: Iterable[LevelPart], top: float) -> int | None:
    for part in lots:
        with np.errstate(invalid="ignore"):
            above = np.flatnonzero(np.abs(part.amps) > top)
        if len(above):
            return int(part.t_ns[above[0]])
    return None


@dataclass(slots=True)
class _Watched:
    """One channel with its zeros: when taken (None: nobody knows), and what."""

    key: str
    channel: Channel
    zeros: list[tuple[int | None, Zero]] = field(default_factory=list)
    beyond: _Beyond | None = None

    @property
    def name(self) -> str:
        return self.channel.role.value

    @property
    def needs_one(self) -> bool:
        sensor = self.channel.sensor
        return sensor.kind is SensorKind.CLAMP or sensor.turns > 1


class ZeroWatch:
    """Follows the zeros of a recording.

    Parameters
    ----------
    instruments : sequence of Instrument
    started_utc : datetime or None
        Wall time of the recording's zero; None when not known, and then no age is.
    """

    def __init__(self, instruments: Sequence[Instrument], started_utc: datetime | None) -> None:
        self._watched = [
            _Watched(instrument.key, channel, _first(channel, started_utc))
            for instrument in instruments
            for channel in instrument.channels
            if channel.role is not Role.OTHER
        ]
        self._ranges: list[Event] = []

    def take(self, event: Event) -> None:
        """Take the next event."""
        if event.changes_range:
            self._ranges.append(event)
        parsed = parse_zero(event.value) if event.kind is EventKind.ZERO else None
        if parsed is None:
            return
        for watched in self._watched:
            if watched.key == event.source and watched.channel.name == parsed[0]:
                watched.zeros.append((event.t_ns, parsed[1]))

    def doubts(self, levels: Levels, last_ns: int) -> list[Doubt]:
        """Give what is to be said against the zeros.

        Parameters
        ----------
        levels : Levels
        last_ns : int, nanoseconds since the recording's zero
            Of the newest reading.
        """
        told: list[Doubt] = []
        for watched in self._watched:
            if watched.zeros:
                told += _age(watched, last_ns)
                told += self._range(watched, levels)
                told += _drift(watched)
            elif watched.needs_one and watched.channel.offset == 0.0:
                told.append(_missing(watched))
            told += _accuracy(watched.channel)
        return told

    def notes(self) -> list[str]:
        """Give what speaks for the zeros: one taken before and one after that agree."""
        told = []
        for watched in self._watched:
            apart = _apart(watched)
            if apart is not None and abs(apart) < MOST_DRIFT_A:
                told.append(
                    f"The first and the last zero of {watched.name} agree within"
                    f" {max(abs(apart), 0.01):.2f} A (less than {MOST_DRIFT_A:g} A is wanted)."
                )
        return told

    def _range(self, watched: _Watched, levels: Levels) -> list[Doubt]:
        since_ns, zero = watched.zeros[-1]
        if since_ns is None:
            return []
        moved = [e.t_ns for e in self._ranges if e.source == watched.key and e.t_ns > since_ns]
        if watched.channel.role is Role.MOTOR_CURRENT and zero.range_top is not None:
            if watched.beyond is None or watched.beyond.asked != (since_ns, zero.range_top):
                watched.beyond = _Beyond(since_ns, zero.range_top)
            first_ns = watched.beyond.first_ns(levels)
            moved += [] if first_ns is None else [first_ns]
        if not moved:
            return []
        at_ns = max(min(moved), 0)
        text = (
            f"The zero of {watched.name} was taken on another range than the meter is on since"
            f" {at_ns / 1e9:.1f} s, where it may be another, which the uncertainties do not hold."
            f" Fix the range on the meter and take the zero there."
        )
        return [Doubt(DoubtKind.ZERO_RANGE, text, at_ns, at_ns, watched.key)]


def _first(channel: Channel, started_utc: datetime | None) -> list[tuple[int | None, Zero]]:
    zero = channel.zero
    if zero is None:
        return []
    if zero.taken_utc is None or started_utc is None:
        return [(None, zero)]
    return [(round((zero.taken_utc - started_utc).total_seconds() * 1e9), zero)]


def _missing(watched: _Watched) -> Doubt:
    text = (
        f"No zero was taken of {watched.name}, which is read by a clamp: it may be off by some"
        f" tenths of an ampere, which the uncertainties do not hold. With the clamp empty and"
        f" shut, take one (z, or --take-zero {watched.name})."
    )
    return Doubt(DoubtKind.ZERO_MISSING, text, source=watched.key)


def _age(watched: _Watched, last_ns: int) -> list[Doubt]:
    taken_ns, zero = watched.zeros[-1]
    cure = "With the clamp empty and shut, take it again."
    if taken_ns is None:
        text = (
            f"The zero of {watched.name} ({zero.offset:g} {watched.channel.unit}) was typed, so"
            f" nobody knows how old it is. {cure}"
        )
        return [Doubt(DoubtKind.ZERO_OLD, text, source=watched.key)]
    old_ns = taken_ns + OLD_NS
    if last_ns <= old_ns:
        return []
    begin_ns = max(old_ns, 0)
    before = f" It was taken {-taken_ns / 60e9:.0f} min before the start." if taken_ns < 0 else ""
    text = (
        f"The zero of {watched.name} was older than {OLD_NS / 60e9:.0f} min from"
        f" {begin_ns / 1e9:.0f} s on.{before} A clamp drifts by 0.1 to 0.5 A in that time. {cure}"
    )
    return [Doubt(DoubtKind.ZERO_OLD, text, begin_ns, last_ns, watched.key)]


def _apart(watched: _Watched) -> float | None:
    """Give by how much the last zero taken differs from the first; None without two."""
    taken = [zero for at_ns, zero in watched.zeros if at_ns is not None]
    if len(taken) < 2 or watched.channel.quantity is not Quantity.CURRENT:
        return None
    return taken[-1].offset - taken[0].offset


def _drift(watched: _Watched) -> list[Doubt]:
    apart = _apart(watched)
    if apart is None or abs(apart) < MOST_DRIFT_A:
        return []
    at_ns = watched.zeros[-1][0] or 0
    text = (
        f"The zero of {watched.name} drifted by {apart:+.2f} A up to {at_ns / 1e9:.1f} s (less than"
        f" {MOST_DRIFT_A:g} A is wanted): currents in between may be off by as much. Let the clamp"
        f" warm up, and measure again."
    )
    return [Doubt(DoubtKind.ZERO_DRIFT, text, 0, at_ns, watched.key)]


def _accuracy(channel: Channel) -> list[Doubt]:
    sensor = channel.sensor
    behind = sensor.kind in (SensorKind.CLAMP, SensorKind.SHUNT)
    if not behind or sensor.own_percent is not None or channel.accuracy is None:
        return []
    text = (
        f"The accuracy of the {sensor.kind.value} at {channel.role.value} is not stated:"
        f" uncertainties hold the meter's alone. State it from its data sheet (--sensor-accuracy"
        f" {channel.role.value}=PERCENT+AMPERES)."
    )
    return [Doubt(DoubtKind.ACCURACY, text)]
