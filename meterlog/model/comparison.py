"""Comparison: one motor against another, or against several known to be good."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model.budget import Budget
from meterlog.model.finding import Verdict


@dataclass(frozen=True, slots=True)
class ComparedRun:
    """Which recording stands on one side.

    Attributes
    ----------
    name : str
        Folder name.
    recording_id, part, origin : str
    started_utc : str
        RFC 3339; empty where no date is known.
    """

    name: str
    recording_id: str
    part: str
    started_utc: str
    origin: str


@dataclass(frozen=True, slots=True)
class ConditionCheck:
    """One condition on both sides.

    Attributes
    ----------
    name, old, new : str
        Empty: nobody said.
    weight : str
        ``same``, ``differs``, ``not stated`` or ``forbids``.
    words : str
        What the difference does to the current, and what to do.
    """

    name: str
    old: str
    new: str
    weight: str
    words: str


@dataclass(frozen=True, slots=True)
class StepDifference:
    """One speed on both sides.

    Attributes
    ----------
    speed : int
    old_v, new_v : float or None, volts
        Motor voltages as measured.
    reference_v : float or None, volts
        To which both currents were brought; None where they stand as measured.
    old_a, new_a : Budget or None
        Currents, at the reference voltage where there is one.
    difference_a : Budget or None
        New less old; what both share (meter, clamp) taken as such.
    ratio : Budget or None
        New / old.
    baseline_mean_a, baseline_sd_a : float or None, amperes
        Of the good motors, where the old side is a baseline.
    tolerance_a : tuple of float or None, amperes
        (low, high): at least ``coverage`` of good motors lie within, with 95 % confidence.
    count : int
        Good motors behind it; 0 where the old side is one recording.
    verdict : Verdict or None
        Of the new one: against the tolerance interval; or, old against new, whether they differ
        (``fail``: they differ beyond U). None where no limit is set.
    probability : float or None
    words : str
    """

    speed: int
    old_v: float | None
    new_v: float | None
    reference_v: float | None
    old_a: Budget | None
    new_a: Budget | None
    difference_a: Budget | None
    ratio: Budget | None
    baseline_mean_a: float | None
    baseline_sd_a: float | None
    tolerance_a: tuple[float, float] | None
    count: int
    verdict: Verdict | None
    probability: float | None
    words: str


@dataclass(frozen=True, slots=True)
class FigureDifference:
    """One figure besides the steady current, on both sides, as measured.

    Attributes
    ----------
    name : str
        ``start-up peak``, ``peak over steady`` or ``fuse load``.
    unit : str
    speed : int or None
    old, new : float, in ``unit``
    words : str
    """

    name: str
    unit: str
    speed: int | None
    old: float
    new: float
    words: str


@dataclass(frozen=True, slots=True)
class Overlay:
    """Both currents on one axis, ready to be drawn.

    Attributes
    ----------
    name : str
        ``time`` (the whole run from its first start on) or ``speed <n>``.
    speed : int or None
    t_s : tuple of float, seconds
        From the command, one grid for both; each place on it comes twice.
    old_a, new_a : tuple of float, amperes
        By size: the lowest reading about that place, then the highest; of a baseline, of all good
        motors together. NaN where nothing was read.
    old_falls, new_falls : tuple of bool
        Of each place: the highest reading came before the lowest. Empty for several good motors.
    """

    name: str
    speed: int | None
    t_s: tuple[float, ...]
    old_a: tuple[float, ...]
    new_a: tuple[float, ...]
    old_falls: tuple[bool, ...] = ()
    new_falls: tuple[bool, ...] = ()


@dataclass(frozen=True, slots=True)
class Comparison:
    """The result.

    Attributes
    ----------
    old : tuple of ComparedRun
        One, or the good motors of a baseline.
    new : ComparedRun
    refusal : str
        Why these can't be compared, and what to do; empty where they can.
    conditions : tuple of ConditionCheck
    steps : tuple of StepDifference
    overlays : tuple of Overlay
    notes : tuple of str
    summary : str
        One paragraph.
    figures : tuple of FigureDifference
        Start-up and fuse load, where both recordings hold them; none of a baseline.
    max_difference_percent : float or None, percent
        What the verdicts of a pair are held against; None: they say whether the two differ.
    """

    old: tuple[ComparedRun, ...]
    new: ComparedRun
    refusal: str
    conditions: tuple[ConditionCheck, ...]
    steps: tuple[StepDifference, ...]
    overlays: tuple[Overlay, ...]
    notes: tuple[str, ...]
    summary: str
    figures: tuple[FigureDifference, ...] = ()
    max_difference_percent: float | None = None
