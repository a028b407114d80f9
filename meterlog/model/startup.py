"""StartUp and FuseCheck: the current of a start, and what the fuse makes of it."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model.budget import Budget
from meterlog.model.finding import Verdict


@dataclass(frozen=True, slots=True)
class StartUp:
    """One start of the motor.

    Attributes
    ----------
    t_ns : int, nanoseconds since the recording's zero
        When the current began.
    edge_ns : int, nanoseconds
        So well is that known.
    speed : int or None
        Commanded speed.
    cause : str
        ``command``, ``after a dropout`` or ``not commanded``.
    peak_a, peak_u_a : float, amperes
        Highest reading, and its expanded uncertainty (None: not known, or the clamp's own error or
        zero is not).
    peak_after_s : float, seconds
        From the start to the peak.
    peak_floor : bool
        True where readings are too slow, averaged, missing or at the end of a range: the true
        peak was higher.
    steady_a : float or None, amperes
        What it settled at.
    ratio : float or None
        Peak / steady.
    settle_s, settle_edge_s : float or None, seconds
        Until the current stayed within 10 % of steady, and how well that is known.
    i2t_a2s : float, ampere squared seconds
        Over ``i2t_s``, trapezoids between readings.
    i2t_s : float, seconds
    peak_cut : bool
        True where the readings stand at the peak's value, as at the end of a range: then it is a
        floor, too, and so is ``i2t_a2s``.
    peak_over : bool
        True where the meter showed an overload at the peak: both are floors then, too.
    peak_past : bool
        True where the peak is more than meter or clamp are stated for: floors as well.
    """

    t_ns: int
    edge_ns: int
    speed: int | None
    cause: str
    peak_a: float
    peak_u_a: float | None
    peak_after_s: float
    peak_floor: bool
    steady_a: float | None
    ratio: float | None
    settle_s: float | None
    settle_edge_s: float | None
    i2t_a2s: float
    i2t_s: float
    peak_cut: bool = False
    peak_over: bool = False
    peak_past: bool = False

    @property
    def at_end_of_range(self) -> bool:
        """Whether the peak may be higher, and more flowed, for a range that ended."""
        return self.peak_cut or self.peak_over or self.peak_past


@dataclass(frozen=True, slots=True)
class OpeningMargin:
    """How long the current stood above one multiple of the fuse's rating, against its table.

    Attributes
    ----------
    percent : float, percent of rating
    amps : float, amperes
    longest_s : float, seconds
        The longest unbroken time at or above it.
    opens_after_s : float or None, seconds
        Earliest time at which a fuse of that kind may open; None where the table says none.
    opens_by_s : float or None, seconds
        Latest time by which it must have opened.
    margin : float or None
        ``opens_after_s / longest_s``; None where it was never reached or the table says nothing.
        Of a current that stays at this row a fuse can't open where it is above 1.
    least_s, most_s : float, seconds
        ``longest_s`` with the meter's uncertainty and the time between readings taken off, and
        added.
    basis : str
        Where the row of the table comes from.
    """

    percent: float
    amps: float
    longest_s: float
    opens_after_s: float | None
    opens_by_s: float | None
    margin: float | None
    least_s: float = 0.0
    most_s: float = 0.0
    basis: str = ""


@dataclass(frozen=True, slots=True)
class FuseCheck:
    """Steady load and start-up against the fuse.

    Attributes
    ----------
    rating_a : float, amperes
    kind : str
        Key of the table of opening times.
    load : Budget or None
        Steady current on the highest speed in percent of the rating; None without one.
    speed : int or None
    max_load_percent : float, percent
    load_verdict : Verdict
    load_probability : float or None
        That the true load is within the limit.
    margins : tuple of OpeningMargin
    nuisance : Verdict
        ``pass``: a sound fuse can't open by what was seen; ``fail``: it must have; else can't
        tell.
    words : str
    """

    rating_a: float
    kind: str
    load: Budget | None
    speed: int | None
    max_load_percent: float
    load_verdict: Verdict
    load_probability: float | None
    margins: tuple[OpeningMargin, ...]
    nuisance: Verdict
    words: str
