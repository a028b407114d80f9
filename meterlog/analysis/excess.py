"""Excess: where current flows, is it above, below or within the limits of the speed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.pieces import FLOWING_KINDS
from meterlog.analysis.schmitt import hold, runs, zones
from meterlog.model import Limits, SpanKind

_EVER = -(2**62)
"""Before any reading."""


def highest_a(limits: Limits, speed: int | None) -> float:
    """Give the most current allowed at ``speed``, amperes; infinite where nothing is said.

    A fan that is commanded off draws next to nothing.
    """
    allowed = limits.at(speed).max_a
    if allowed is None and speed == 0:
        return limits.open_current_a
    return float("inf") if allowed is None else allowed


@dataclass(frozen=True, slots=True)
class Thresholds:
    """The limits at one speed, for entering a condition and for leaving it, in amperes."""

    over: float
    over_left: float
    under: float
    under_left: float
    locked: float
    locked_left: float

    @classmethod
    def at(cls, limits: Limits, speed: int | None) -> Thresholds:
        """Make the thresholds for ``speed``; open sides are infinite."""
        step = limits.at(speed)
        over = highest_a(limits, speed)
        under = -np.inf if step.min_a is None else step.min_a
        margin = limits.hysteresis
        return cls(
            over,
            over * (1.0 - margin),
            under,
            under * (1.0 + margin),
            limits.locked_current_a,
            limits.locked_current_a * (1.0 - margin),
        )

    @property
    def levels(self) -> tuple[float, ...]:
        """All thresholds such that a reading at one of them belongs to the zone above."""
        return (
            self.under,
            float(np.nextafter(self.under_left, np.inf)),
            self.over_left,
            float(np.nextafter(self.over, np.inf)),
            self.locked_left,
            self.locked,
        )


class ExcessJudge:
    """Labels readings as running, over, under or locked, with hysteresis.

    Parameters
    ----------
    limits : Limits

    Attributes
    ----------
    within_ns : int, nanoseconds
        When the current that was passed over was last no more than allowed; long ago where never.
    """

    def __init__(self, limits: Limits) -> None:
        self._limits = limits
        self.within_ns = _EVER
        self._known: dict[int | None, Thresholds] = {}
        self._at = Thresholds.at(limits, None)
        self._over = self._under = self._locked = False

    def forget(self) -> None:
        """Begin anew: a start, or a change of speed."""
        self.within_ns = _EVER
        self._over = self._under = self._locked = False

    def at(self, speed: int | None) -> None:
        """Use the limits of ``speed`` from now on."""
        if speed not in self._known:
            self._known[speed] = Thresholds.at(self._limits, speed)
        self._at = self._known[speed]

    def pass_over(self, t_ns: NDArray[np.int64], sizes: NDArray[np.float64]) -> None:
        """Take readings that are not judged, as after a start.

        Parameters
        ----------
        t_ns : ndarray, int64, shape (n,), nanoseconds
        sizes : ndarray, float64, shape (n,), amperes
        """
        within = sizes <= self._at.over
        if within.any():
            self.within_ns = int(t_ns[len(within) - 1 - int(within[::-1].argmax())])

    def edge_level(self, before: SpanKind, after: SpanKind) -> float:
        """Give the threshold that was passed between two kinds, in amperes."""
        at = self._at
        for kind, enter, leave in (
            (SpanKind.LOCKED, at.locked, at.locked_left),
            (SpanKind.OVER, at.over, at.over_left),
            (SpanKind.UNDER, at.under, at.under_left),
        ):
            if after is kind:
                return enter
            if before is kind:
                return leave
        return float("inf")

    def runs(
        self, sizes: NDArray[np.float64], first: int, last: int
    ) -> Iterator[tuple[int, int, SpanKind]]:
        """Give (first row, row after the last, kind) for rows ``first`` to ``last``.

        Parameters
        ----------
        sizes : ndarray, float64, shape (n,), amperes
            Size of the current, finite in these rows.
        first, last : int
        """
        part = sizes[first:last]
        if self._plainly_within(float(part.min()), float(part.max())):
            yield first, last, SpanKind.RUNNING
            return
        begins = runs(zones(part, self._at.levels))
        kinds = self._kinds(part[begins])
        begins = begins[np.concatenate(([True], kinds[1:] != kinds[:-1]))]
        kinds = kinds[np.concatenate(([True], kinds[1:] != kinds[:-1]))]
        ends = np.append(begins[1:], len(part))
        for begin, end, kind in zip(begins.tolist(), ends.tolist(), kinds.tolist(), strict=True):
            yield first + begin, first + end, FLOWING_KINDS[kind]

    def _plainly_within(self, low: float, high: float) -> bool:
        """Tell at the cost of a minimum and a maximum what is nearly always so."""
        if self._over or self._under or self._locked:
            return False
        return self._at.under <= low and high <= self._at.over and high < self._at.locked

    def _kinds(self, values: NDArray[np.float64]) -> NDArray[np.uint8]:
        """Give for the first reading of each zone run its index in FLOWING_KINDS."""
        at = self._at
        over = hold(_inputs(values > at.over, values < at.over_left), initial=self._over)
        under = hold(_inputs(values < at.under, values > at.under_left), initial=self._under)
        locked = hold(_inputs(values >= at.locked, values < at.locked_left), initial=self._locked)
        self._over, self._under = bool(over[-1]), bool(under[-1])
        self._locked = bool(locked[-1])
        kinds = np.where(over, np.uint8(1), np.where(under, np.uint8(2), np.uint8(0)))
        return np.where(locked, np.uint8(3), kinds)


def _inputs(on: NDArray[np.bool_], off: NDArray[np.bool_]) -> NDArray[np.int8]:
    return on.astype(np.int8) - off.astype(np.int8)
