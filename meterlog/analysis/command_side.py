"""CommandSide: whether the command went first, or stayed, when the current went.

A command is a voltage or a duty, and which way it goes for off differs from maker to maker. So it
is held against itself only: what it was before, what it is now, what it was when off was
commanded, and which way it goes for a higher speed.

Source: the last row of the pattern table (current gone and command gone at one instant) is common
practice, no source. The instant is where the mean of a bin puts it, as in ``edges.py``.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto

import numpy as np

from meterlog.analysis.judged import Judged
from meterlog.analysis.levels import BIN_NS
from meterlog.analysis.side_volts import SideLevel, SideSeries, SideVolts
from meterlog.analysis.time_notes import TimeNotes
from meterlog.model import Role, Span, SpanKind

LEAST_SHARE = 0.25
"""A command that moved by less than this part of its larger level has stayed. Our own."""
LEAST_V = 0.1
"""And less than this is the meter's. A transistor's base goes from 0.1 V to 1.4 V."""
SURE = 4.0
"""It moved by at least this many standard deviations of its own levels."""
BEFORE_NS, LEAD_NS = 2_500_000_000, 1_200_000_000
"""What it was before is read from 2.5 s to 1.2 s ahead of the loss: a controller may answer late,
so that the command went up to a second ahead of the current."""
LOOK_NS = 2_000_000_000
SOON_NS = 100_000_000
"""A head that pushes harder because the motor has stopped takes longer than this. Our own."""
NEAR_OFF = 0.5
"""At off: nearer to what it was when off was commanded than this part of the way."""


class Went(Enum):
    """What the command did."""

    UNREAD = auto()
    STAYED = auto()
    LOST = auto()
    AFTER = auto()
    UNSURE = auto()
    """It moved, but that does not explain the loss, or which came first can't be told."""


@dataclass(frozen=True, slots=True)
class CommandTold:
    """What the command did, with the words for it (the rest of a sentence)."""

    went: Went
    words: str = ""


@dataclass(frozen=True, slots=True)
class _Level:
    mean: float
    scatter: float


@dataclass(frozen=True, slots=True)
class _Move:
    """From one level to another, at an instant known to ± ``edge_ns``."""

    before: float
    now: float
    at_ns: int
    edge_ns: int


def _moved(one: _Level, other: _Level) -> bool:
    apart = abs(one.mean - other.mean)
    share = LEAST_SHARE * max(abs(one.mean), abs(other.mean))
    return apart >= max(share, LEAST_V, SURE * math.hypot(one.scatter, other.scatter))


class CommandSide:
    """Asks of a loss of current what the command did.

    Parameters
    ----------
    judged : Judged
    side_volts : SideVolts
        Of the same recording.
    """

    def __init__(self, judged: Judged, side_volts: SideVolts) -> None:
        self._side = side_volts
        self._lag_ns = round(judged.limits.command_lag_s * 1e9)
        self._apart_ns = _apart_ns(judged, side_volts)
        self._off = self._off_level(judged.spans)
        self._known = self._speed_levels(judged)

    def of(self, span: Span, before: Span | None) -> CommandTold:
        """Tell what the command did at the start of a loss of current.

        Parameters
        ----------
        span : Span
            Without current, a speed above 0 commanded or none known.
        before : Span or None
            The one before it.
        """
        now = self._level(span.start_ns + span.start_edge_ns, span.end_ns, first_ns=LOOK_NS)
        if now is None:
            return CommandTold(Went.UNREAD)
        if before is not None and before.kind is not SpanKind.OFF:
            return self._while_running(span, before, now)
        return self._from_off(span, now)

    def _while_running(self, span: Span, before: Span, now: _Level) -> CommandTold:
        was = self._level(
            max(before.start_ns, span.start_ns - BEFORE_NS), span.start_ns - LEAD_NS
        ) or self._known.get(span.speed)
        if was is None:
            return CommandTold(Went.UNSURE, "what the command was before is not known")
        if not _moved(was, now):
            return CommandTold(Went.STAYED, f"the command stayed at {now.mean:.2f} V")
        series = self._side.series(
            Role.COMMAND, span.start_ns - BEFORE_NS, min(span.end_ns, span.start_ns + LOOK_NS)
        )
        if series is None:
            return CommandTold(Went.UNREAD)
        return self._told(span, _move(series, was.mean, now.mean))

    def _told(self, span: Span, move: _Move) -> CommandTold:
        """Say what a command that moved has to do with the loss."""
        way = f"from {move.before:.2f} V to {move.now:.2f} V"
        slack_ns = move.edge_ns + span.start_edge_ns + self._apart_ns
        late_ns = move.at_ns - span.start_ns
        if late_ns > slack_ns:
            return CommandTold(
                Went.AFTER, f"the command went {way} only {late_ns / 1e9:.2f} s after the current"
            )
        when = (
            f"{-late_ns / 1e9:.2f} s before the current"
            if -late_ns > slack_ns
            else f"at the same instant (±{slack_ns / 1e9:.2g} s)"
        )
        words = f"the command went {way} {when}"
        to_off = self._to_off(move)
        if to_off is None:
            sure = -late_ns > slack_ns or slack_ns <= SOON_NS
            if sure:
                return CommandTold(Went.LOST, f"{words}, while speed {span.speed} was commanded")
            return CommandTold(
                Went.UNSURE,
                f"{words}; which came first, and whether that is off, is not known: the command"
                f" recorded with the fan off would settle it",
            )
        if to_off:
            return CommandTold(Went.LOST, f"{words}, while speed {span.speed} was commanded")
        return CommandTold(Went.UNSURE, f"{words}, which is not towards off")

    def _to_off(self, move: _Move) -> bool | None:
        """Tell whether the command went to what off is; None where nothing says which way."""
        if self._off is not None:
            way = abs(move.before - self._off.mean)
            return abs(move.now - self._off.mean) <= NEAR_OFF * way
        levels = [self._known[speed].mean for speed in sorted(s for s in self._known if s)]
        if len(levels) < 2 or abs(levels[-1] - levels[0]) < LEAST_V:
            return None
        more = levels[-1] > levels[0]
        return (move.now < min(levels)) if more else (move.now > max(levels))

    def _from_off(self, span: Span, now: _Level) -> CommandTold:
        """Tell whether the command followed when a speed was asked for."""
        if self._off is None or not self._known:
            return CommandTold(Went.UNSURE, f"the command reads {now.mean:.2f} V")
        if not any(_moved(self._off, one) for one in self._known.values()):
            return CommandTold(Went.UNSURE, "the command channel never answered to any speed")
        if not _moved(self._off, now):
            return CommandTold(
                Went.LOST,
                f"the command stayed at {now.mean:.2f} V, as when off, though speed {span.speed}"
                f" was commanded",
            )
        return CommandTold(Went.STAYED, f"the command came and is at {now.mean:.2f} V")

    # -- levels --------------------------------------------------------------------------------

    def _level(self, start_ns: int, end_ns: int, first_ns: int | None = None) -> _Level | None:
        """Give level and scatter of the bins between two times (of the first ``first_ns``)."""
        if first_ns is not None:
            end_ns = min(end_ns, start_ns + first_ns)
        return _level_of(self._side.series(Role.COMMAND, start_ns, end_ns))

    def _off_level(self, spans: Sequence[Span]) -> _Level | None:
        off = [
            self._level(span.start_ns + 2 * BIN_NS, span.end_ns - self._lag_ns)
            for span in spans
            if span.kind is SpanKind.OFF and span.speed == 0
        ]
        known = [one for one in off if one is not None]
        if not known:
            return None
        middle = float(np.median([one.mean for one in known]))
        return _Level(middle, max(one.scatter for one in known))

    def _speed_levels(self, judged: Judged) -> dict[int | None, _Level]:
        levels: dict[int | None, _Level] = {}
        for step in judged.steps:
            found: SideLevel | None = self._side.steady(Role.COMMAND, step) if step.speed else None
            if found is not None:
                levels[step.speed] = _Level(found.mean, 0.0)
        return levels


def _level_of(series: SideSeries | None) -> _Level | None:
    if series is None:
        return None
    middle = float(np.median(series.mean))
    around = np.abs(series.mean - middle)
    # 1.4826 x median deviation: the standard deviation of normal noise, blind to a bin or two on
    # their way.
    return _Level(middle, 1.4826 * float(np.median(around)))


def _move(series: SideSeries, before: float, now: float) -> _Move:
    """Find the instant at which a series went from one level to another.

    With one reading a bin it is half-way between two readings; with many, the mean of the bin in
    which it happened says how far into the bin.
    """
    part = (series.mean - before) / (now - before)
    near = np.flatnonzero(part < 0.5)
    last = int(near[-1]) if len(near) else -1
    first = last + 1
    if last < 0:
        return _Move(before, now, int(series.t_ns[0]), BIN_NS)
    if first >= len(part):
        return _Move(before, now, int(series.t_ns[-1]), BIN_NS)
    if series.n[last] < 2.0:
        a, b = int(series.t_ns[last]), int(series.t_ns[first])
        share = (0.5 - float(part[last])) / float(part[first] - part[last])
        return _Move(before, now, a + round(share * (b - a)), b - a)
    # The bin that is the less like either level is the one it happened in.
    inside = last if part[last] > 1.0 - part[first] else first
    share = min(max(1.0 - float(part[inside]), 0.0), 1.0)
    at_ns = int(series.bins[inside]) * BIN_NS + round(share * BIN_NS)
    return _Move(before, now, at_ns, round(BIN_NS / float(series.n[inside])))


def _apart_ns(judged: Judged, side_volts: SideVolts) -> int:
    """Give how far the command's times may be off against the current's."""
    current, command = side_volts.home(Role.MOTOR_CURRENT), side_volts.home(Role.COMMAND)
    if current is None or command is None or current[0].key == command[0].key:
        return 0
    times = TimeNotes(judged.instruments)
    for event in judged.events:
        times.take(event)
    agreement_s = times.agreement_s(current[0], command[0])
    # Where nothing is known of two meters' times, no order within a second is told.
    return round(1e9 * (1.0 if agreement_s is None else 2.0 * agreement_s))
