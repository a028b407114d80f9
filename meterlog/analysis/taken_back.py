"""TakenBack: verdicts that can't stand beside what is known against the meters.

A note that a clamp may be off by ten, under a table of failures that rest on it, still blames the
fan for the clamp; so does a motor passed on a reading that stood still. Where a doubt reaches what
a verdict rests on, nothing is told from it: neither pass nor fail.
"""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.past_range import is_past
from meterlog.analysis.pieces import Piece
from meterlog.model import Doubt, DoubtKind, Instrument, Limits, Role, SpanKind, Step, channel_of

_LEVEL = (SpanKind.OVER, SpanKind.UNDER, SpanKind.LOCKED)
_GONE = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)
_BY_VOLTAGE = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST)

_TEN = "the current may be off by a factor of ten"
_STUCK = "the current meter repeated one reading meanwhile"
_STUCK_VOLTS = "the voltage that tells the side was one reading repeated"
_PAST = "the current is more than the meter or the clamp is stated for"
_BATTERY = "the current meter reports that its own battery is low"


class TakenBack:
    """Tells why a verdict is taken back.

    Parameters
    ----------
    instruments : sequence of Instrument
    doubts : sequence of Doubt
        Of the same recording.
    limits : Limits or None
        What lies beyond a clamp's range is not known well, but it is more than its range goes to:
        where that is above the limit already, the verdict stands. None: for no limit.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        doubts: Sequence[Doubt],
        limits: Limits | None = None,
    ) -> None:
        homes = [one.key for one in instruments if one.column(Role.MOTOR_CURRENT) is not None]
        self._current = channel_of(instruments, Role.MOTOR_CURRENT)
        self._limits = limits
        decades = [one for one in doubts if one.kind is DoubtKind.DECADE]
        stuck = [one for one in doubts if one.kind is DoubtKind.STUCK]
        self._low = [
            one for one in doubts if one.kind is DoubtKind.BATTERY and one.source in homes[:1]
        ]
        self._ten = bool(decades)
        self._tenth = any(one.factor > 1.0 for one in decades)
        self._stuck = [one for one in stuck if one.role is Role.MOTOR_CURRENT]
        self._stuck_volts = [one for one in stuck if one.role is not Role.MOTOR_CURRENT]

    def __eq__(self, other: object) -> bool:
        """Tell whether both take back the same verdicts."""
        return isinstance(other, TakenBack) and self._key() == other._key()

    def __hash__(self) -> int:
        """Go with equality."""
        return hash((self._ten, self._tenth))

    def _key(self) -> tuple[object, ...]:
        return self._low, self._ten, self._tenth, self._stuck, self._stuck_volts

    def of_piece(self, piece: Piece) -> str:
        """Give why the verdict on a stretch is taken back, as a clause; empty where it stands."""
        if piece.kind in _LEVEL:
            mean_a = piece.figures.mean_a
            return self._level(piece.start_ns, piece.end_ns) or self._past(piece.speed, mean_a)
        if piece.kind not in _GONE:
            return ""
        if self._tenth:
            return _TEN  # what reads nothing may be some amperes
        if _reaches(self._stuck, piece.start_ns, piece.end_ns):
            return _STUCK
        held = piece.kind in _BY_VOLTAGE and _reaches(
            self._stuck_volts, piece.start_ns, piece.end_ns
        )
        return _STUCK_VOLTS if held else ""

    def of_step(self, step: Step) -> str:
        """Give why the verdict on a step's current is taken back; empty where it stands."""
        mean_a = step.mean_a if step.steady_mean_a is None else step.steady_mean_a
        return self._level(step.start_ns, step.end_ns) or self._past(step.speed, mean_a)

    def _past(self, speed: int | None, mean_a: float | None) -> str:
        current = self._current
        if current is None or current.top is None or mean_a is None:
            return ""
        most_a = None if self._limits is None else self._limits.at(speed).max_a
        surely_over = most_a is not None and most_a < current.top
        return _PAST if is_past(current, mean_a) and not surely_over else ""

    def _level(self, start_ns: int, end_ns: int) -> str:
        if self._ten:
            return _TEN
        if _reaches(self._stuck, start_ns, end_ns):
            return _STUCK
        return _BATTERY if any(one.start_ns < end_ns for one in self._low) else ""


def _reaches(doubts: Sequence[Doubt], start_ns: int, end_ns: int) -> bool:
    return any(one.start_ns < end_ns and one.end_ns > start_ns for one in doubts)
