"""Review: all that was made out of one recording."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model.doubt import Doubt
from meterlog.model.finding import Finding
from meterlog.model.inferred import Inferred, PulsedFeed, Rhythm
from meterlog.model.motor_fit import ControllerHeat, MotorFit
from meterlog.model.ripple import RippleView
from meterlog.model.run_verdict import RunVerdict
from meterlog.model.span import Span
from meterlog.model.startup import FuseCheck, StartUp
from meterlog.model.step import Step
from meterlog.model.tap_evidence import TapEvidence


@dataclass(frozen=True, slots=True)
class CatchChance:
    """How likely this set-up is to show a dropout of a given length.

    Attributes
    ----------
    duration_s : float, seconds
    chance : float, 0 to 1
        Estimated probability that one at a random instant is told; below 1, as it may be missed.
    """

    duration_s: float
    chance: float


@dataclass(frozen=True, slots=True)
class Review:
    """The judgement of one recording.

    Attributes
    ----------
    spans : tuple of Span
        In time order, touching.
    steps : tuple of Step
    findings : tuple of Finding
        Faults first in time order, then the verdicts per step.
    shortest_visible_dropout_s : float or None, seconds
        A dropout at least this long can't have been missed; None without a reading of a current.
    catch_chances : tuple of CatchChance
        For dropouts shorter than that.
    notes : tuple of str
        What the reader must know: accuracy not stated, no commanded speed, ... The doubts' words
        are among them.
    doubts : tuple of Doubt
        Why a meter's readings may not be what they seem.
    decision_rule : str
        By which rule verdicts were made, in words.
    startups : tuple of StartUp
    fuse : FuseCheck or None
        None where the limits name no fuse.
    motor : MotorFit or None
    heat : tuple of ControllerHeat
    inferred : tuple of Inferred
    pulsed : tuple of PulsedFeed
    rhythm : Rhythm or None
        None below three dropouts.
    ripple : tuple of RippleView
    taps : TapEvidence or None
        None where nobody tapped.
    brief : int
        Dropouts of the current that are no spans, as they were shorter than the limits count.
    brief_s : float, seconds
        How long they were together.
    verdict : RunVerdict or None
        None while the recording still runs, as all from ``startups`` on.
    part : str
        That the recording is one part of a whole, and where the rest is; empty where it is whole.
    """

    spans: tuple[Span, ...] = ()
    steps: tuple[Step, ...] = ()
    findings: tuple[Finding, ...] = ()
    shortest_visible_dropout_s: float | None = None
    catch_chances: tuple[CatchChance, ...] = ()
    notes: tuple[str, ...] = ()
    doubts: tuple[Doubt, ...] = ()
    decision_rule: str = ""
    startups: tuple[StartUp, ...] = ()
    fuse: FuseCheck | None = None
    motor: MotorFit | None = None
    heat: tuple[ControllerHeat, ...] = ()
    inferred: tuple[Inferred, ...] = ()
    pulsed: tuple[PulsedFeed, ...] = ()
    rhythm: Rhythm | None = None
    ripple: tuple[RippleView, ...] = ()
    taps: TapEvidence | None = None
    brief: int = 0
    brief_s: float = 0.0
    verdict: RunVerdict | None = None
    part: str = ""

    @property
    def part_lines(self) -> tuple[str, ...]:
        """Say, as it is said everywhere, that it is one part; empty where it is whole."""
        return (f"ONE PART: {self.part}",) if self.part else ()
