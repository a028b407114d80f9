"""Weighed: all cases of a circuit beside what was found, with their probabilities."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.circuit.cases import Cases
from meterlog.circuit.figures import Floats
from meterlog.circuit.joint import Joint
from meterlog.circuit.seen import Seen
from meterlog.circuit.slipped import SlipSums
from meterlog.circuit.taken import Expected, PredictionSource, Taken


@dataclass(frozen=True)
class Weighed:
    """What :class:`~meterlog.circuit.belief.Belief` worked out.

    Attributes
    ----------
    source : PredictionSource
    taken : Taken
        The readings that tell something, in the order of their ids.
    seen : Seen
    cases : Cases
    expected : Expected
        Of the readings, in each case.
    joint : Joint
        Of the readings, in each case.
    sums : SlipSums
        Over the readings that may have slipped.
    log_signs : float64[cases, signs]
    log_evidence : float
        Natural logarithm of the density of all that was found.
    case_weights : float64[cases]
        Probability of each case; sum 1.
    """

    source: PredictionSource
    taken: Taken
    seen: Seen
    cases: Cases
    expected: Expected
    joint: Joint
    sums: SlipSums
    log_signs: Floats
    log_evidence: float
    case_weights: Floats
