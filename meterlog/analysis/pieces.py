"""Piece: a stretch of readings with one label, before spans are made of it."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from enum import Enum, auto

import numpy as np
from numpy.typing import NDArray

from meterlog.model import Role, SpanKind


class Group(Enum):
    """Whether current flows; a change between these outranks all finer labels."""

    FLOWING = auto()
    GONE = auto()
    UNKNOWN = auto()


FLOWING_KINDS = (SpanKind.RUNNING, SpanKind.OVER, SpanKind.UNDER, SpanKind.LOCKED)


@dataclass(frozen=True, slots=True)
class Figures:
    """Sums over the readings of a piece: count, mean and sum of squares of the current.

    ``mean_v`` is the mean voltage across the motor (the feed where there is no return), None
    without voltage channels.
    """

    n: int = 0
    mean_a: float = 0.0
    square_a: float = 0.0
    volts_n: int = 0
    mean_v: float = 0.0

    def plus(self, other: Figures) -> Figures:
        """Combine two stretches (Chan, Golub, LeVeque 1983, as in ``moments.py``)."""
        n, volts_n = self.n + other.n, self.volts_n + other.volts_n
        apart = other.mean_a - self.mean_a
        share = other.n / n if n else 0.0
        volts_share = other.volts_n / volts_n if volts_n else 0.0
        return Figures(
            n,
            self.mean_a + apart * share,
            self.square_a + other.square_a + apart * apart * self.n * share,
            volts_n,
            self.mean_v + (other.mean_v - self.mean_v) * volts_share,
        )

    @property
    def sd_a(self) -> float | None:
        """Standard deviation of the current, n - 1; None below two readings."""
        return math.sqrt(max(self.square_a, 0.0) / (self.n - 1)) if self.n > 1 else None


def figures_of(amps: NDArray[np.float64], volts: NDArray[np.float64] | None) -> Figures:
    """Make Figures of the readings of one stretch, each shape (n,), all finite."""
    if not len(amps):
        return Figures()
    mean = float(amps.mean())
    # Not a dot product: that would wake the threads of a linear algebra library.
    around = amps - mean
    count, mean_v = (0, 0.0) if volts is None or not len(volts) else (len(volts), volts.mean())
    return Figures(len(amps), mean, float(np.square(around).sum()), count, float(mean_v))


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch with one label.

    Attributes
    ----------
    kind : SpanKind or None
        None: no current, and no voltage was read since it went.
    start_ns, end_ns, start_edge_ns, end_edge_ns : int, nanoseconds
    speed : int or None
    figures : Figures
    settled_by : tuple of Role
        Channels that would have told the side.
    first_v, last_v : float or None, volts
        Voltage across the motor in the first and in the last reading.
    after_quiet : bool
        It began with the end of an inrush window, not with a change of the current.
    """

    kind: SpanKind | None
    start_ns: int
    end_ns: int
    start_edge_ns: int
    end_edge_ns: int
    speed: int | None
    figures: Figures = Figures()
    settled_by: tuple[Role, ...] = ()
    first_v: float | None = None
    last_v: float | None = None
    after_quiet: bool = False

    @property
    def length_ns(self) -> int:
        """Length in nanoseconds."""
        return self.end_ns - self.start_ns

    @property
    def group(self) -> Group:
        """Flowing, gone or unknown."""
        if self.kind is SpanKind.NO_DATA:
            return Group.UNKNOWN
        return Group.FLOWING if self.kind in FLOWING_KINDS else Group.GONE

    def until(self, later: Piece) -> Piece:
        """Give this piece stretched over ``later``, keeping its own label and figures."""
        return replace(
            self, end_ns=later.end_ns, end_edge_ns=later.end_edge_ns, last_v=later.last_v
        )

    def since(self, earlier: Piece) -> Piece:
        """Give this piece stretched back over ``earlier``, keeping its own label and figures."""
        return replace(
            self,
            start_ns=earlier.start_ns,
            start_edge_ns=earlier.start_edge_ns,
            speed=earlier.speed,
            first_v=earlier.first_v,
        )

    def joined(self, later: Piece) -> Piece:
        """Give this piece and ``later`` (same label) as one."""
        figures = self.figures.plus(later.figures)
        return replace(self.until(later), figures=figures)
