"""Commutator: bars that may be dead, passed or rested on by the brushes."""

from __future__ import annotations

import math
from dataclasses import dataclass

from numpy.random import Generator


@dataclass(frozen=True, slots=True)
class CommutatorFigures:
    """A commutator under two brushes.

    Attributes
    ----------
    bars : int
    dead_bars : tuple of int
        Numbers of the bars without contact, from 0.
    open_part : float, ratio
        Part of a bar's width over which a brush touches nothing else: brushes are wider than the
        gap between bars.
    """

    bars: int = 12
    dead_bars: tuple[int, ...] = ()
    open_part: float = 0.35


class Commutator:
    """Tells at which angles the circuit through the armature is open.

    With an even number of bars both brushes meet the same picture half a turn apart.
    """

    def __init__(self, figures: CommutatorFigures, rng: Generator) -> None:
        self.figures = figures
        self._rng = rng
        pitch = 2.0 * math.pi / figures.bars
        half = 0.5 * figures.open_part * pitch
        self._pitch = pitch
        # Brushes are opposite: half a turn is the period.
        self._zones = tuple(
            ((bar * pitch) % math.pi - half, (bar * pitch) % math.pi + half)
            for bar in figures.dead_bars
        )

    def is_open(self, angle_rad: float) -> bool:
        """Tell whether a brush sits on nothing but a dead bar."""
        if not self._zones:
            return False
        place = angle_rad % math.pi
        for start, end in self._zones:
            if start <= place <= end or start <= place - math.pi <= end:
                return True
        return False

    def tap(self, angle_rad: float) -> float:
        """Give the angle of the shaft after a tap has moved it by about a bar."""
        for _ in range(self.figures.bars):
            angle_rad += self._pitch * self._rng.uniform(0.7, 1.2)
            if not self.is_open(angle_rad):
                break
        return angle_rad
