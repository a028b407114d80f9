"""Next test: the one that tells most a minute, and in a sentence what each result would mean."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.circuit.candidates import (
    Candidate,
    between_candidates,
    disturbing_candidates,
    plain_candidates,
)
from meterlog.circuit.cautions import DEFER, caution_keys, caution_words
from meterlog.circuit.expectations import expected_in
from meterlog.circuit.figures import Floats
from meterlog.circuit.outcomes import Range, in_order_words, joined, ranges_of, ranges_words
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.predictions import Predictions
from meterlog.circuit.scoring import Mixture, Scored, Scoring
from meterlog.circuit.states import is_asked, motor_place, seen_states
from meterlog.circuit.unit_sets import NO_FAULT, Ints, UnitSets
from meterlog.circuit.wording import SIGN_WORDS, suspects_words, test_words
from meterlog.model import Circuit, CircuitCheck, CircuitState
from meterlog.model.circuit_check import SIGN_VALUES, PossibleResult, ProposedTest, Sign
from meterlog.model.circuit_words import unit_of

LEAST_BITS = 0.02
"""What tells less is not proposed. From memory: about the chance of misreading."""
BETWEEN_BITS = 0.25
"""The speeds between lowest and highest are looked at when the two ends tell no more than this:
then few hypotheses are left, and what is left may be one tap of a resistor pack."""
DISTURB_BITS = 0.08
"""Plugs stay on and fuses in while anything else tells this much."""
_LEAST_SEEN = 0.03
"""A sign less probable than this is hardly more than a mistake."""
_STANDS = 0.9
"""Probability from which on the fan counts as standing, so that a tap may be asked for."""


@dataclass(frozen=True, slots=True)
class Question:
    """What the next test is to answer.

    Attributes
    ----------
    posterior : Posterior
    parts : int[cells]
        What is to be told apart: sets of units, or one unit from all else.
    """

    posterior: Posterior
    parts: Ints


class NextTest:
    """Chooses and describes the next test of one circuit.

    Parameters
    ----------
    predictions : Predictions
    sets : UnitSets
    by_minute : bool
        Whether information is weighed against the minutes it takes; else only information counts.
    """

    def __init__(self, predictions: Predictions, sets: UnitSets, *, by_minute: bool = True) -> None:
        self._predictions, self._sets, self._by_minute = predictions, sets, by_minute
        self._circuit = predictions.circuit

    def propose(
        self, check: CircuitCheck, question: Question, *, measured: bool = False
    ) -> ProposedTest | None:
        """Give the test with the highest expected information a minute.

        Tests that need no plug touched go before all others as long as one of them tells at least
        :data:`DISTURB_BITS`.

        Parameters
        ----------
        check : CircuitCheck
            For what is within reach and open.
        question : Question
        measured : bool
            Readings only, nothing that is seen or heard.

        Returns
        -------
        ProposedTest or None
            None where nothing within reach tells :data:`LEAST_BITS`.
        """
        scoring = Scoring(self._circuit, question.posterior, question.parts)
        stands = self._stands(question.posterior)
        plain = plain_candidates(self._circuit, check, stands=stands)
        if measured:
            plain = tuple(one for one in plain if one.sign is None)
        best = self._better(None, scoring, plain)
        if best is None or best.bits < BETWEEN_BITS:
            best = self._better(best, scoring, between_candidates(self._circuit, check))
        if best is None or best.bits < DISTURB_BITS:
            disturbing = disturbing_candidates(self._circuit, check)
            more = self._better(None, scoring, disturbing)
            if more is not None and (best is None or more.bits > best.bits):
                best = more
        if best is None:
            return None
        return self._described(best, question.posterior)

    def _better(
        self, best: Scored | None, scoring: Scoring, candidates: Sequence[Candidate]
    ) -> Scored | None:
        """Give the best of these if it is better than the best so far."""
        found = scoring.best(candidates, by_minute=self._by_minute, least_bits=LEAST_BITS)
        if found is None or best is None:
            return found or best
        if self._by_minute:
            return found if found.rate > best.rate else best
        return found if found.bits > best.bits else best

    def _stands(self, posterior: Posterior) -> frozenset[CircuitState]:
        """Give the states in which the fan is asked for and surely stands."""
        found = set()
        dead = SIGN_VALUES[Sign.FAN].index("dead")
        for state in seen_states(self._circuit):
            if not is_asked(self._circuit, state):
                continue
            chances = posterior.predictive_sign(state, Sign.FAN)
            if chances is not None and float(posterior.weights @ chances[:, dead]) > _STANDS:
                found.add(state)
        return frozenset(found)

    def _described(self, best: Scored, posterior: Posterior) -> ProposedTest:
        one = best.candidate
        scoring = Scoring(self._circuit, posterior, self._sets.of_cell)
        healthy = None
        if not one.sign:
            bands = expected_in(self._predictions, one.state)
            healthy = next(band for band in bands if band.point == one.point)
        band = None if healthy is None else (healthy.healthy_low, healthy.healthy_high)
        outcomes = self._outcomes(scoring, one, band)
        return ProposedTest(
            point=one.point,
            sign=one.sign,
            state=one.state,
            bits=best.bits,
            minutes=one.minutes,
            healthy_low=None if band is None else band[0],
            healthy_high=None if band is None else band[1],
            outcomes=outcomes,
            cautions=self._cautions(one),
            words=test_words(self._circuit, one.state, one.point, one.sign, one.repeat_of),
            meaning="; ".join(outcome.words for outcome in outcomes) + ".",
            repeat_of=one.repeat_of,
        )

    def _outcomes(
        self, scoring: Scoring, one: Candidate, band: tuple[float, float] | None
    ) -> tuple[PossibleResult, ...]:
        if one.sign is not None:
            return self._sign_outcomes(scoring, one, one.sign)
        mixture = scoring.mixture(one)
        ranges = self._told_apart(mixture, ranges_of(mixture, scoring.slip_range(one)), scoring)
        unit = unit_of(self._circuit, one.point)
        found = []
        for part, called in zip(ranges, ranges_words(ranges, unit), strict=True):
            units = self._units(part.shares, scoring.numbers)
            lead = called
            if band is not None and band[0] <= part.middle <= band[1]:
                lead += in_order_words(called, band, unit)
            words = f"{lead} {suspects_words(self._circuit, units)}"
            found.append(PossibleResult(part.low, part.high, "", part.probability, units, words))
        return tuple(found)

    def _told_apart(
        self, mixture: Mixture, ranges: Sequence[Range], scoring: Scoring
    ) -> tuple[Range, ...]:
        """Join neighbours that would be said to mean the same."""

        def meaning(one: Range) -> str:
            return suspects_words(self._circuit, self._units(one.shares, scoring.numbers))

        groups = (tuple(group) for _, group in itertools.groupby(ranges, key=meaning))
        return tuple(joined(mixture, group) for group in groups)

    def _sign_outcomes(
        self, scoring: Scoring, one: Candidate, sign: Sign
    ) -> tuple[PossibleResult, ...]:
        joint = scoring.sign_table(one)
        if joint is None:  # a sign without predictions is never scored above 0
            return ()
        found = []
        whole = float(joint.sum())
        for at, value in enumerate(SIGN_VALUES[sign]):
            share = float(joint[:, at].sum()) / whole
            if share < _LEAST_SEEN:
                continue
            units = self._units(joint[:, at], scoring.numbers)
            said = SIGN_WORDS[sign, value]
            if sign is Sign.FAN and value == "dead" and not is_asked(self._circuit, one.state):
                said += ", as it should"
            words = f"{said}: {suspects_words(self._circuit, units)}"
            found.append(PossibleResult(None, None, value, share, units, words))
        return tuple(found)

    def _units(self, shares: Floats, numbers: Ints) -> tuple[tuple[str, float], ...]:
        """Give the units with their probabilities, likeliest first, from shares of sets."""
        whole = max(float(shares.sum()), np.finfo(float).tiny)
        found: dict[str, float] = {}
        for number, share in zip(numbers, shares, strict=True):
            for unit in sorted(self._sets.sets[number]) or (NO_FAULT,):
                found[unit] = found.get(unit, 0.0) + float(share) / whole
        ordered = sorted(found.items(), key=lambda item: (-item[1], item[0]))
        return tuple((unit, min(share, 1.0)) for unit, share in ordered if share > 1e-4)

    def _cautions(self, one: Candidate) -> tuple[str, ...]:
        keys = set(caution_keys(self._circuit, one.point, one.state))
        if one.sign is not None:
            keys |= _sign_cautions(self._circuit, one.sign)
        return (*caution_words(keys), DEFER)


def _sign_cautions(circuit: Circuit, sign: Sign) -> set[str]:
    if sign not in {Sign.TAP, Sign.WHEEL}:
        return {"moving-fan"} if sign is Sign.FAN else set()
    place = motor_place(circuit)
    cautions: Sequence[str] = circuit.place(place).cautions if place else ()
    return {"moving-fan", *cautions}
