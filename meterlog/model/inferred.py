"""Inferred, PulsedFeed, Rhythm: what readings tell although no single one shows it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class InferredKind(StrEnum):
    """From what it was inferred."""

    DIP = "dip"
    """An averaging meter's reading fell and came back: consistent with a short open."""
    RESTART_PEAK = "restart-peak"
    """Current above the base line with no dropout before it: a likely missed dropout."""


@dataclass(frozen=True, slots=True)
class Inferred:
    """A dropout that was not seen, but left a trace. Never a measured zero.

    Attributes
    ----------
    kind : InferredKind
    start_ns, end_ns : int, nanoseconds
        Within which it happened.
    open_s : tuple of float, seconds
        (least, most) length of an open that is consistent with it.
    base_a, seen_a : float, amperes
        The level around, and the lowest (highest) reading.
    sigmas : float
        So many deviations of the base's noise it stands out.
    speed : int or None
    after_tap_s : float or None, seconds
        Since the last tap, where within reach.
    statement : str
    """

    kind: InferredKind
    start_ns: int
    end_ns: int
    open_s: tuple[float, float]
    base_a: float
    seen_a: float
    sigmas: float
    speed: int | None
    after_tap_s: float | None
    statement: str


@dataclass(frozen=True, slots=True)
class PulsedFeed:
    """A stretch in which the motor's voltage is switched on and off fast (pulse-width modulation).

    Attributes
    ----------
    start_ns, end_ns : int, nanoseconds
    speed : int or None
    frequency_hz, frequency_u_hz : float or None, hertz
        None where the rate can't show it.
    duty : float or None
        Part of the time on, 0 to 1.
    on_v, average_v, average_a : float or None
    statement : str
        Says what a slower meter shows of it.
    within_s : float, seconds
        A loss inside that lasts no longer is the pulses themselves; 0 where no pulses were seen.
    chopped : bool
        The current itself was read to come and go all along: never as long as ``within_s`` did it
        only flow, or was it only gone.
    """

    start_ns: int
    end_ns: int
    speed: int | None
    frequency_hz: float | None
    frequency_u_hz: float | None
    duty: float | None
    on_v: float | None
    average_v: float | None
    average_a: float | None
    statement: str
    within_s: float = 0.0
    chopped: bool = False


class RhythmKind(StrEnum):
    """What the times of the dropouts look like."""

    RETRY = "controller-retry"
    """Regular: a controller that tries again every few seconds."""
    CUT_OUT = "thermal-cut-out"
    """Long runs, then pauses of ten seconds to minutes, unrelated to taps."""
    TAPS = "taps"
    """The current returns upon taps more often than chance."""
    RANDOM = "no-rhythm"


@dataclass(frozen=True, slots=True)
class Rhythm:
    """How the dropouts of a recording follow each other.

    Attributes
    ----------
    kind : RhythmKind
    count : int
        Dropouts it rests on.
    period_s, period_sd_s : float or None, seconds
    on_s, off_s : float or None, seconds
        Median run and median pause.
    chance : float or None
        Probability that a chance process would look as regular (or as tap-bound) as this.
    statement : str
    """

    kind: RhythmKind
    count: int
    period_s: float | None
    period_sd_s: float | None
    on_s: float | None
    off_s: float | None
    chance: float | None
    statement: str
