"""Bound: how few tests could have done, by the information that one test can give.

A test tells I(units; result) bits of which set of units is bad (Shannon, Bell Syst. Tech. J. 27
(1948) 379; MacKay, Information Theory, Inference, and Learning Algorithms (2003), chapters 2, 4 and
8). By the chain rule what all tests tell together is, on average, the sum of what each tells given
those before it, and equals what the entropy falls by. So

- **largest**: if no test at any belief that is met tells more than C bits, no strategy whatever
  needs fewer than (H0 - H1) / C tests on average: H0 the entropy of the sets of units after the
  complaint, H1 that at the end. C is the largest expected information of any test that could be
  made at any belief met in the runs.
- **greedy**: the same with the mean over beliefs met of what the best test at each tells. It is
  tighter, and no strict bound: a strategy may give up something now to find better tests later, and
  beliefs met depend on the strategy. It tells how much is lost to weighing minutes and to
  confirming.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from meterlog.circuit.belief import Belief
from meterlog.circuit.candidates import (
    Candidate,
    between_candidates,
    disturbing_candidates,
    plain_candidates,
)
from meterlog.circuit.predictions import Predictions
from meterlog.circuit.scoring import Scoring
from meterlog.circuit.unit_sets import unit_sets
from meterlog.model import Circuit, CircuitCheck, Sign
from meterlog.model.circuit_check import CircuitVerdict


@dataclass
class Beliefs:
    """What was met at the beliefs of some runs of one circuit, in bits.

    ``best`` is what the best test tells at each belief at which another test was made, ``chosen``
    what the proposed one does.
    """

    best: list[float] = field(default_factory=list)
    chosen: list[float] = field(default_factory=list)


class BestTest:
    """Looks for the test that tells most, minutes and plugs left out of account.

    ``predictions`` may be those of something else, which keeps them; ``disturbing`` is whether
    plugs may be taken off and fuses out.
    """

    def __init__(
        self, circuit: Circuit, predictions: Predictions | None = None, *, disturbing: bool = True
    ) -> None:
        self._circuit, self._disturbing = circuit, disturbing
        predictions = predictions or Predictions(circuit)
        self._belief = Belief(predictions)
        self._sets = unit_sets(predictions.cells)

    def bits(self, check: CircuitCheck, verdict: CircuitVerdict) -> tuple[float, float]:
        """Give the bits of the best test of all, and those of the proposed one."""
        posterior = self._belief.posterior(check.readings, check.signs)
        scoring = Scoring(self._circuit, posterior, self._sets.of_cell)
        stands = frozenset(s.state for s in check.signs if (s.sign, s.value) == (Sign.FAN, "dead"))
        candidates = [
            *plain_candidates(self._circuit, check, stands=stands),
            *between_candidates(self._circuit, check),
            *(disturbing_candidates(self._circuit, check) if self._disturbing else ()),
        ]
        best = scoring.best(candidates, by_minute=False)
        test = verdict.next_test
        assert test is not None
        proposed = Candidate(test.state, test.point, test.sign, test.minutes, test.repeat_of)
        chosen = scoring.fine(scoring.coarse([proposed])[0]).bits
        return max(chosen, 0.0 if best is None else best.bits), chosen


def bounds(beliefs: Beliefs, before: float, after: float) -> tuple[float, float]:
    """Give the bound by the largest information, and that by the mean of the best."""
    told = max(before - after, 0.0)
    if not beliefs.best:
        return 0.0, 0.0
    return told / max(beliefs.best), told * len(beliefs.best) / sum(beliefs.best)
