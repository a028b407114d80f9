"""ChangingSpeed: what current a motor may draw while it comes from one speed to another.

Source: V = I R + Ke w (textbook, permanent-magnet motor): until it has gathered the new speed it
draws more than it will, until it has slowed down to it less. A fan at a lower speed draws less (its
torque goes with the square of its speed: fan laws), so that a speed without stated limits lies
between its neighbours.
"""

from __future__ import annotations

from meterlog.analysis.held_rotor import FEW, falls
from meterlog.analysis.pieces import Piece
from meterlog.model import Limits, SpanKind

FELL_NOISES, FELL_PART = 2.0, 0.02
"""The last reading of a peak lies below its mean by more than so many deviations, and by more than
this part of it. Our own."""


class ChangingSpeed:
    """Tells whether a piece's current fits a motor on its way to another speed.

    Parameters
    ----------
    limits : Limits
    """

    def __init__(self, limits: Limits) -> None:
        self._limits = limits

    def draws(self, piece: Piece, speed: int) -> bool:
        """Tell whether a piece's current is within what ``speed`` may draw."""
        allowed = self._range_a(speed)
        if allowed is None or not piece.figures.n:
            return False
        return allowed[0] <= abs(piece.figures.mean_a) <= allowed[1]

    def slows(self, piece: Piece, speed: int) -> bool:
        """Tell whether too little current may be a motor that slows down to a lower ``speed``."""
        down = 0 < speed < (piece.speed or 0)
        if piece.kind is not SpanKind.UNDER or not down or not piece.figures.n:
            return False
        allowed = self._range_a(speed)
        # Where neither has a stated maximum: less than the higher speed draws it is anyway.
        return allowed is None or abs(piece.figures.mean_a) <= allowed[1]

    def gathers(self, piece: Piece, speed: int, *, fell: bool = False) -> bool:
        """Tell whether too much current may be the peak of a motor that gathers a higher speed.

        It falls, or ``fell`` right after, and is no less than what that speed draws when steady.
        """
        figures = piece.figures
        if piece.kind not in (SpanKind.OVER, SpanKind.LOCKED) or not figures.n:
            return False
        if piece.speed is None or speed <= piece.speed or not (fell or falls_off(piece)):
            return False
        allowed = self._range_a(speed)
        return allowed is None or abs(figures.mean_a) >= allowed[0]

    def _range_a(self, speed: int) -> tuple[float, float] | None:
        """Give the least and most current of a speed, amperes; None where nothing is said."""
        allowed, stated = self._limits.at(speed), self._limits.speeds
        if allowed.max_a is not None:
            return allowed.min_a or 0.0, allowed.max_a
        above = [one.max_a for at, one in stated.items() if at > speed and one.max_a is not None]
        if speed <= 0 or not above:
            return None
        below = [one.min_a or 0.0 for at, one in stated.items() if at <= speed]
        return max(below, default=0.0), min(above)


def falls_off(piece: Piece) -> bool:
    """Tell whether a current falls: its last reading is below its mean, by more than noise."""
    figures = piece.figures
    if figures.n < FEW:
        return falls(piece)
    mean_a = abs(figures.mean_a)
    least_a = max(FELL_NOISES * (figures.noise_a or 0.0), FELL_PART * mean_a)
    return mean_a - abs(figures.last_a or 0.0) > least_a
