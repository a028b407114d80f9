"""Scoring: the expected information of each candidate, given what was found so far."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.circuit.candidates import Candidate
from meterlog.circuit.figures import Floats
from meterlog.circuit.information import mutual_bits, reading_bits, sign_joint
from meterlog.circuit.meter_error import usual_standard_u
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.unit_sets import Ints
from meterlog.model import Circuit, CircuitState, PointKind

LEAST_WEIGHT = 1e-5
"""Cells less probable than this play no part in a proposal."""
BURDEN_MIN = 4.0
"""Added to what each test costs as tests are compared, not as it is shown: a rate by the bare
minutes spends many glances on what one reading tells. Found by trying, on three shipped circuits
with each single fault, no noise: with 0, 2, 4 and 8 min added 6.4, 4.6, 4.4 and 4.3 tests on
average by the odds of the faults, and 15.4, 15.5, 15.5 and 15.6 min."""
_SCREENED = 0.997
"""Which part of the probability the first look takes; the best are looked at again with all."""
_COARSE, _FINE = 14, 64
"""Edges of bins, at the first look and at the second."""
_AGAIN = 6
"""How many are looked at again."""
_NEAR = 0.7
"""Part of what a test tells that few bins show at least."""
_CHARGED = 1.25
_SLIP_LOW_V, _SLIP_HIGH_A = -1.0, 60.0


@dataclass(frozen=True, slots=True)
class Scored:
    """A candidate with what it is expected to tell."""

    candidate: Candidate
    bits: float

    @property
    def rate(self) -> float:
        """Expected bits a minute, :data:`BURDEN_MIN` added to each test."""
        return self.bits / (self.candidate.minutes + BURDEN_MIN)


@dataclass(frozen=True, slots=True)
class Mixture:
    """What one test would show: a normal for each of some cells.

    Attributes
    ----------
    mean, sd : float64[some], volts or amperes
    weights : float64[some]
        Sum 1.
    parts : int[some]
    """

    mean: Floats
    sd: Floats
    weights: Floats
    parts: Ints


class Scoring:
    """Scores candidates by one posterior.

    Parameters
    ----------
    circuit : Circuit
    posterior : Posterior
    parts : int[cells]
        What is asked: the set of units of each cell, or any other part of all that may be.

    Attributes
    ----------
    numbers : int[some]
        Those of ``parts`` that are still probable, in the order of the rows that are given out.
    """

    def __init__(self, circuit: Circuit, posterior: Posterior, parts: Ints) -> None:
        self._circuit, self._posterior = circuit, posterior
        self._column = {point.name: at for at, point in enumerate(circuit.points)}
        kept = np.flatnonzero(posterior.weights >= LEAST_WEIGHT)
        self._kept = kept
        self._weights: Floats = posterior.weights[kept] / posterior.weights[kept].sum()
        numbers, own = np.unique(parts[kept], return_inverse=True)
        self.numbers: Ints = numbers.astype(np.intp)
        self._parts: Ints = own.astype(np.intp)
        wanders = [cell.comes_and_goes for cell in posterior.weighed.source.cells.hypotheses]
        self._wanders: npt.NDArray[np.bool_] = np.array(wanders, dtype=np.bool_)[
            posterior.weighed.source.cells.hypothesis[kept]
        ]
        self._tables: dict[CircuitState, tuple[Floats, Floats, Floats, Ints]] = {}

    def best(
        self, candidates: Sequence[Candidate], *, by_minute: bool, least_bits: float = 0.0
    ) -> Scored | None:
        """Give the best of the candidates that tell at least so much; None where none does."""

        def worth(one: Scored) -> float:
            return one.rate if by_minute else one.bits

        # Few bins show too little, never too much: what is near the least may reach it.
        first = [one for one in self.coarse(candidates) if one.bits >= _NEAR * least_bits]
        first.sort(key=worth, reverse=True)
        again = [one for one in map(self.fine, first[:_AGAIN]) if one.bits >= least_bits]
        return max(again, key=worth, default=None)

    def coarse(self, candidates: Iterable[Candidate]) -> list[Scored]:
        """Score candidates by few bins and without the least probable cells."""
        found: list[Scored] = []
        by_state: dict[CircuitState, list[Candidate]] = {}
        for one in candidates:
            if one.sign is not None:
                found.append(Scored(one, self._sign_bits(one)))
            else:
                by_state.setdefault(one.state, []).append(one)
        for state, group in by_state.items():
            mean, sd, weights, parts = self._table(state)
            order = np.argsort(-weights, kind="stable")
            count = int(np.searchsorted(np.cumsum(weights[order]), _SCREENED)) + 1
            some = np.sort(order[:count])
            share = weights[some] / weights[some].sum()
            own = np.unique(parts[some], return_inverse=True)[1].astype(np.intp)
            for kind in (PointKind.CURRENT, None):
                same = [
                    one for one in group if (self._kind(one) is PointKind.CURRENT) is bool(kind)
                ]
                if not same:
                    continue
                columns = np.array([self._column[one.point] for one in same], dtype=np.intp)
                at = np.ix_(columns, some)
                slips = self.slip_range(same[0])
                bits = reading_bits(mean[at], sd[at], share, own, slips, _COARSE)
                found += [Scored(one, float(b)) for one, b in zip(same, bits, strict=True)]
        return found

    def fine(self, scored: Scored) -> Scored:
        """Score one candidate by many bins and all cells."""
        one = scored.candidate
        if one.sign is not None:
            return scored
        mixture = self.mixture(one)
        bits = reading_bits(
            mixture.mean[None],
            mixture.sd[None],
            mixture.weights,
            mixture.parts,
            self.slip_range(one),
            _FINE,
        )
        return Scored(one, float(bits[0]))

    def mixture(self, candidate: Candidate) -> Mixture:
        """Give what a reading would show."""
        mean, sd, weights, parts = self._table(candidate.state)
        at = self._column[candidate.point]
        return Mixture(mean[at], sd[at], weights, parts)

    def sign_table(self, candidate: Candidate) -> Floats | None:
        """Give the joint probability of part and value of a sign, float64[parts, values]."""
        if candidate.sign is None:
            return None
        chances = self._posterior.predictive_sign(candidate.state, candidate.sign, cells=self._kept)
        return None if chances is None else sign_joint(chances, self._weights, self._parts)

    def slip_range(self, candidate: Candidate) -> tuple[float, float]:
        """Give from where to where a slipped reading may lie."""
        if self._kind(candidate) is PointKind.CURRENT:
            return 0.0, _SLIP_HIGH_A
        return _SLIP_LOW_V, _CHARGED * self._circuit.nominal_v

    def _sign_bits(self, candidate: Candidate) -> float:
        joint = self.sign_table(candidate)
        return 0.0 if joint is None else float(mutual_bits(joint))

    def _kind(self, candidate: Candidate) -> PointKind:
        return self._circuit.points[self._column[candidate.point]].kind

    def _table(self, state: CircuitState) -> tuple[Floats, Floats, Floats, Ints]:
        """Give mean and sd, float64[points, cases], weights and parts of all cases in a state.

        A fault that comes and goes is two cases: it is there, and it is not.
        """
        if state not in self._tables:
            mean, variance = self._posterior.predictive(state, cells=self._kept)
            weights, parts = self._weights, self._parts
            away = np.flatnonzero(self._wanders)
            if len(away):
                here = self._posterior.presence(state)[self._kept]
                more = self._posterior.predictive(state, cells=self._kept[away], there=False)
                mean = np.concatenate([mean, more[0]])
                variance = np.concatenate([variance, more[1]])
                weights = np.concatenate([weights * here, (weights * (1.0 - here))[away]])
                parts = np.concatenate([parts, parts[away]])
                # Some part may be left without a case: its number must stay in use.
                some = (weights >= LEAST_WEIGHT) | ~np.isin(parts, parts[weights >= LEAST_WEIGHT])
                mean, variance = mean[some], variance[some]
                weights, parts = weights[some] / weights[some].sum(), parts[some]
            sd = np.sqrt(variance + usual_standard_u(self._circuit, mean) ** 2)
            # Contiguous by point: the first look takes many points at once.
            self._tables[state] = (
                np.ascontiguousarray(mean.T),
                np.ascontiguousarray(sd.T),
                weights,
                parts,
            )
        return self._tables[state]
