"""TakenBack: verdicts that can't stand beside what is known against the meters.

A note that a clamp may be off by ten, under a table of failures that rest on it, still blames the
fan for the clamp; so does a motor passed on a reading that stood still, or by a zero that is off.
Where a doubt reaches what a verdict rests on, nothing is told from it: neither pass nor fail.
"""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.off_by import off_words
from meterlog.analysis.past_range import (
    PAST,
    current_parts,
    least_mean_a,
    one_within,
    reaches_past,
    step_is_past,
    volts_are_past,
)
from meterlog.analysis.pieces import Piece
from meterlog.model import Doubt, DoubtKind, Instrument, Limits, Role, SpanKind, Step, channel_of

_LEVEL = (SpanKind.OVER, SpanKind.UNDER, SpanKind.LOCKED)
_GONE = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)
_BY_VOLTAGE = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST)

_BROUGHT = 1.25
"""By so much a current is brought to another voltage at the most. Chosen: 9.6 to 15 V at 12 V."""
_STUCK = "the current meter repeated one reading meanwhile"
_STUCK_VOLTS = "the voltage that tells the side was one reading repeated"
_PAST_VOLTS = "the voltage to bring it to another by is more than its meter is stated for"
_NOMINAL = "the supply reads as that of a 24 V vehicle, which the limits are not for"
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
        where that is above the limit already, a step fails for sure. None: for no limit.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        doubts: Sequence[Doubt],
        limits: Limits | None = None,
    ) -> None:
        homes = [one.key for one in instruments if one.column(Role.MOTOR_CURRENT) is not None]
        self._instruments = tuple(instruments)
        self._current = channel_of(instruments, Role.MOTOR_CURRENT)
        self._limits = limits
        self._parts = current_parts(doubts)
        self._start_up_ns = 0 if limits is None else round(limits.inrush_window_s * 1e9)
        decades = [one for one in doubts if one.kind is DoubtKind.DECADE]
        stuck = [one for one in doubts if one.kind is DoubtKind.STUCK]
        # To the hundredth: a live judgement measures it anew four times a second.
        self._off_a = round(max((one.offset_a for one in doubts), default=0.0), 2)
        self._low = [
            one for one in doubts if one.kind is DoubtKind.BATTERY and one.source in homes[:1]
        ]
        self._ten = off_words(decades[0].factor) if decades else ""
        self._nominal = any(one.kind is DoubtKind.NOMINAL for one in doubts)
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
        # Parts are only added, and the last one grows: no need to compare thousands of them.
        parts = len(self._parts), self._parts[-1:]
        whole = self._ten, self._tenth, self._nominal, self._off_a
        return self._low, whole, self._stuck, self._stuck_volts, parts

    def of_piece(self, piece: Piece, most_a: float | None = None) -> str:
        """Give why the verdict on a stretch is taken back, as a clause; empty where it stands.

        Parameters
        ----------
        piece : Piece
        most_a : float or None, amperes
            What it is told for being above; None where it is not.
        """
        if piece.kind in _LEVEL:
            level = self._level(piece.start_ns, piece.end_ns)
            return level or self._past(piece, most_a) or self._zero_of_piece(piece, most_a)
        if piece.kind not in _GONE:
            return ""
        if self._tenth:
            return self._ten  # what reads nothing may be some amperes
        if _reaches(self._stuck, piece.start_ns, piece.end_ns):
            return _STUCK
        held = piece.kind in _BY_VOLTAGE and _reaches(
            self._stuck_volts, piece.start_ns, piece.end_ns
        )
        return _STUCK_VOLTS if held else ""

    def of_step(self, step: Step, most_a: float | None = None) -> str:
        """Give why the verdict on a step's current is taken back; empty where it stands.

        Parameters
        ----------
        step : Step
        most_a : float or None, amperes
            Above which the verdict is fail; None: the limit of its speed, where that holds for
            the current as it was read.
        """
        level = self._level(step.start_ns, step.end_ns)
        at_volts = self._limits is not None and self._limits.at_reference
        if not level and at_volts and volts_are_past(self._instruments, step):
            return _PAST_VOLTS
        start_up_ns = self._start_up_ns
        if level:
            return level
        if not step_is_past(self._instruments, step, self._parts, start_up_ns):
            return self._zero_of_step(step, most_a)
        if most_a is None and self._limits is not None and not self._limits.at_reference:
            most_a = self._limits.at(step.speed).max_a
        return self._unless_above(step.steady_mean_a or 0.0, step.steady_sd_a, most_a)

    def _past(self, piece: Piece, most_a: float | None) -> str:
        seen = piece.figures
        somewhere = one_within(self._parts, piece.start_ns, piece.end_ns)
        if not reaches_past(self._current, seen.mean_a, seen.sd_a, somewhere=somewhere):
            return ""
        return self._unless_above(seen.mean_a, seen.sd_a, most_a)

    def _unless_above(self, mean_a: float, sd_a: float | None, most_a: float | None) -> str:
        """Give the reason, unless what flowed is above a limit however far off the readings are."""
        surely = most_a is not None and most_a < least_mean_a(self._current, mean_a, sd_a)
        return "" if surely else PAST

    def _zero_of_piece(self, piece: Piece, most_a: float | None) -> str:
        least_a = None
        if piece.kind is SpanKind.UNDER and self._limits is not None:
            least_a = self._limits.at(piece.speed).min_a
        size = abs(piece.figures.mean_a)
        return self._zero(size, size, (least_a, most_a))

    def _zero_of_step(self, step: Step, most_a: float | None) -> str:
        size, wide = abs(step.steady_mean_a or 0.0), step.steady_expanded_a or 0.0
        if most_a is not None or self._limits is None:
            return self._zero(size - wide, size + wide, (None, most_a))
        allowed = self._limits.at(step.speed)
        brought = _BROUGHT if self._limits.at_reference else 1.0
        bounds = (allowed.min_a, allowed.max_a)
        return self._zero((size - wide) / brought, (size + wide) * brought, bounds)

    def _zero(self, low_a: float, high_a: float, bounds: tuple[float | None, float | None]) -> str:
        """Give the reason where a zero that is off by so much may turn a verdict over."""
        low_a, high_a = low_a - self._off_a, high_a + self._off_a
        if not self._off_a or not any(one is not None and low_a <= one <= high_a for one in bounds):
            return ""
        return f"the zero of the clamp is off by {self._off_a:.2f} A"

    def _level(self, start_ns: int, end_ns: int) -> str:
        if self._ten:
            return self._ten
        if self._nominal:
            return _NOMINAL
        if _reaches(self._stuck, start_ns, end_ns):
            return _STUCK
        return _BATTERY if any(one.start_ns < end_ns for one in self._low) else ""


def _reaches(doubts: Sequence[Doubt], start_ns: int, end_ns: int) -> bool:
    return any(one.start_ns < end_ns and one.end_ns > start_ns for one in doubts)
