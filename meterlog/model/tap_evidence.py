"""TapEvidence: the tap test in the form in which it is accepted."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model.finding import Verdict


@dataclass(frozen=True, slots=True)
class Tap:
    """One tap, and what the current did.

    Attributes
    ----------
    t_ns : int, nanoseconds since the recording's zero
    speed : int or None
    before_a, after_a : float or None, amperes
        Mean level before the tap, and after it has had time to act.
    before, after : str
        Kind of the span before and after.
    returned_s, returned_edge_s : float or None, seconds
        From the tap until the current was back, and how well that is known; None where it did
        not come back within reach, or was there already.
    answered : bool
        The current was gone, the voltage there, and it came back within reach.
    stopped : bool
        The current was there and went within reach.
    attempt : int
        Counted from 1: taps within a second of each other are one attempt.
    late : bool
        The mark was made just after the current had changed: a hand on the key is late.
    """

    t_ns: int
    speed: int | None
    before_a: float | None
    after_a: float | None
    before: str
    after: str
    returned_s: float | None
    returned_edge_s: float | None
    answered: bool
    stopped: bool
    attempt: int = 0
    late: bool = False


@dataclass(frozen=True, slots=True)
class TapCheck:
    """One point of the accepted form.

    Attributes
    ----------
    name : str
        Such as ``base line``, ``leads moved first``, ``repeats``, ``clamp zero``.
    verdict : Verdict
    words : str
        What was found, what is asked for, and what to do where it lacks.
    """

    name: str
    verdict: Verdict
    words: str


@dataclass(frozen=True, slots=True)
class TapEvidence:
    """All taps together.

    Attributes
    ----------
    taps : tuple of Tap
    tried, answered : int
        Attempts made while the current was gone, and those of them upon which it came back.
    chance : float or None
        Probability that taps at random times do as well, by permutation; None without any.
    permutations : int
        So many arrangements were tried, or all of them.
    checks : tuple of TapCheck
    accepted : Verdict
        All points of the form pass; one fails; or it can't be told.
    summary : str
        One sentence for the claim.
    attempts : int
        All of them, made while the current flowed or not.
    gone_a : float or None, amperes
        Mean current while it was gone, before the answered attempts.
    returned_a : float or None, amperes
        Mean current after them, start-up over.
    across_v, supply_v : float or None, volts
        Across the motor meanwhile, and at the battery (at the feed, where that was not read).
    slowest_s, slowest_edge_s : float or None, seconds
        From an answered tap to the current's return, the longest of them.
    """

    taps: tuple[Tap, ...]
    tried: int
    answered: int
    chance: float | None
    permutations: int
    checks: tuple[TapCheck, ...]
    accepted: Verdict
    summary: str
    attempts: int = 0
    gone_a: float | None = None
    returned_a: float | None = None
    across_v: float | None = None
    supply_v: float | None = None
    slowest_s: float | None = None
    slowest_edge_s: float | None = None
