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
FALL_NS = 5_000_000
"""An arc and a winding's current are over within this. Our own."""
EXCESS = (SpanKind.OVER, SpanKind.UNDER)
BY_SPEED = EXCESS
"""Kinds that rest on the limits of one speed: at another speed it is another piece."""


@dataclass(frozen=True, slots=True)
class Figures:
    """Sums over the readings of a piece.

    Attributes
    ----------
    n : int
    mean_a, square_a : float
        Mean of the current, and sum of squares about it.
    volts_n : int
    mean_v : float
        Mean voltage across the motor (the feed where there is no return).
    pairs : int
    first_a, last_a : float or None, amperes
        The first and the last reading.
    jitter : float
        Sizes of the differences of neighbouring readings, added up.
    """

    n: int = 0
    mean_a: float = 0.0
    square_a: float = 0.0
    volts_n: int = 0
    mean_v: float = 0.0
    pairs: int = 0
    jitter: float = 0.0
    first_a: float | None = None
    last_a: float | None = None

    def then(self, later: Figures) -> Figures:
        """Combine with the readings that follow at once: the two where they meet are a pair."""
        both = self.beside(later)
        if self.last_a is None or later.first_a is None:
            return both
        apart = later.first_a - self.last_a
        return replace(both, pairs=both.pairs + 1, jitter=both.jitter + abs(apart))

    def beside(self, other: Figures) -> Figures:
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
            self.pairs + other.pairs,
            self.jitter + other.jitter,
            self.first_a if self.first_a is not None else other.first_a,
            other.last_a if other.last_a is not None else self.last_a,
        )

    @property
    def noise_a(self) -> float | None:
        """Standard deviation of the noise, amperes; None without a pair of readings.

        Source
        ------
        For independent normal noise the mean size of successive differences is 2 sd / sqrt(pi):
        A. Hald, "Statistical Theory with Engineering Applications", 1952 (from memory). A change
        of level adds one difference only, so it hardly counts.
        """
        return math.sqrt(math.pi) / 2.0 * self.jitter / self.pairs if self.pairs else None

    @property
    def sd_a(self) -> float | None:
        """Standard deviation of the current, n - 1; None below two readings."""
        return math.sqrt(max(self.square_a, 0.0) / (self.n - 1)) if self.n > 1 else None


def noise_of(amps: NDArray[np.float64]) -> Figures:
    """Make Figures that tell the noise alone: what a stretch that is in order needs."""
    if not len(amps):
        return Figures()
    apart = amps[1:] - amps[:-1]
    np.abs(apart, out=apart)
    return Figures(
        pairs=len(apart),
        jitter=float(apart.sum()),
        first_a=float(amps[0]),
        last_a=float(amps[-1]),
    )


def figures_of(amps: NDArray[np.float64], volts: NDArray[np.float64] | None) -> Figures:
    """Make Figures of the readings of one stretch, each shape (n,), all finite."""
    figures = Figures()
    if len(amps):
        mean = float(amps.mean())
        figures = replace(
            noise_of(amps),
            n=len(amps),
            mean_a=mean,
            square_a=float(np.square(amps - mean).sum()),
        )
    if volts is None or not len(volts):
        return figures
    return replace(figures, volts_n=len(volts), mean_v=float(volts.mean()))


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
    restarted_ns : int, nanoseconds
        Where that window was begun by the current coming back, when it did; long ago otherwise.
    within_ns : int, nanoseconds
        When in that window the current was last no more than allowed; long ago where never.
    hand_ns : int, nanoseconds
        A command of then explains what it begins with; long ago where none does.
    read_ns : int, nanoseconds
        When the current was last read in it, where another meter's readings make rows as well;
        long ago where it was not.
    late_ns : int, nanoseconds
        A command seems to have come so much late (or early) in it; 0 for none.
    held_ohm : float or None, ohms
        For a rotor held on a low speed: the voltage across the motor, less that of its brushes,
        by its current.
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
    restarted_ns: int = -(2**62)
    within_ns: int = -(2**62)
    hand_ns: int = -(2**62)
    read_ns: int = -(2**62)
    late_ns: int = 0
    held_ohm: float | None = None

    def alike(self, other: Piece) -> bool:
        """Tell whether two pieces say the same, so that touching ones are one."""
        same = self.speed == other.speed or self.kind not in BY_SPEED
        return self.kind is other.kind and same

    @property
    def length_ns(self) -> int:
        """Length in nanoseconds."""
        return self.end_ns - self.start_ns

    @property
    def is_ramp(self) -> bool:
        """Tell whether it is no longer than a change takes from level to level.

        That is a reading on each side of it, as the meter may average; or, where readings are
        closer, what the current itself needs.
        """
        return self.length_ns <= max(2 * max(self.start_edge_ns, self.end_edge_ns), FALL_NS)

    @property
    def group(self) -> Group:
        """Flowing, gone or unknown."""
        if self.kind is SpanKind.NO_DATA:
            return Group.UNKNOWN
        return Group.FLOWING if self.kind in FLOWING_KINDS else Group.GONE

    def until(self, later: Piece) -> Piece:
        """Give this piece stretched over ``later``, keeping its own label and figures."""
        return replace(
            self,
            end_ns=later.end_ns,
            end_edge_ns=later.end_edge_ns,
            last_v=later.last_v,
            read_ns=max(self.read_ns, later.read_ns),
        )

    def since(self, earlier: Piece) -> Piece:
        """Give this piece stretched back over ``earlier``, keeping its own label and figures."""
        return replace(
            self,
            start_ns=earlier.start_ns,
            start_edge_ns=earlier.start_edge_ns,
            speed=earlier.speed,
            first_v=earlier.first_v,
            read_ns=max(self.read_ns, earlier.read_ns),
        )

    def joined(self, later: Piece) -> Piece:
        """Give this piece and ``later`` (same label) as one."""
        figures = self.figures.beside(later.figures)
        late_ns = max(self.late_ns, later.late_ns)
        return replace(self.until(later), figures=figures, late_ns=late_ns)
