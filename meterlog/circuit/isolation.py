"""Isolation: where a circuit check stands, from all that was entered in it."""

from __future__ import annotations

import math

import numpy as np

from meterlog.circuit.belief import Belief
from meterlog.circuit.contradictions import contradictions
from meterlog.circuit.drops import section_drops
from meterlog.circuit.entries import check_entries, check_state
from meterlog.circuit.expectations import beside_found, expected_in
from meterlog.circuit.next_test import NextTest, Question
from meterlog.circuit.notes import notes_of
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.predictions import Predictions
from meterlog.circuit.settling import (
    PROVING_BITS,
    TOLD_AT,
    carried_words,
    open_words,
    proving_words,
    seen_words,
    told_unit,
    told_words,
)
from meterlog.circuit.states import disturbed_states, plain_states, seen_states
from meterlog.circuit.suspects import suspects_of
from meterlog.circuit.unit_sets import entropy_bits, unit_sets
from meterlog.model import (
    Circuit,
    CircuitCheck,
    CircuitState,
    CircuitVerdict,
    Expectation,
    Suspect,
)
from meterlog.model.circuit_check import ProposedTest
from meterlog.model.errors import UsageError


class Isolation:
    """Tells which replaceable unit of a circuit is bad, and what to measure next.

    A unit is told once its probability exceeds ``told_at`` and no single reading or sign carries
    that: without any one of them at least :data:`~meterlog.circuit.settling.LEAST_WITHOUT` is left.
    The same entries give the same verdict, in whatever order they stand.

    Parameters
    ----------
    circuit : Circuit
    told_at : float
        Probability from which on a unit is told, 0.5 to 1.
    by_minute : bool
        Whether the next test is the one that tells most a minute; False: most at all.

    Raises
    ------
    UsageError
        ``told_at`` is out of range.
    """

    def __init__(
        self, circuit: Circuit, told_at: float = TOLD_AT, *, by_minute: bool = True
    ) -> None:
        if not (math.isfinite(told_at) and 0.5 <= told_at < 1.0):
            raise UsageError(
                f"a unit can't be told at a probability of {told_at:g}.",
                subject=circuit.name,
                remedy="Choose one from 0.5 to below 1, such as 0.95.",
            )
        self.circuit = circuit
        self.told_at = told_at
        self._predictions = Predictions(circuit)
        self._belief = Belief(self._predictions)
        self._sets = unit_sets(self._predictions.cells)
        self._next = NextTest(self._predictions, self._sets, by_minute=by_minute)

    def prepare(self) -> None:
        """Work out beforehand what every state gives that a proposal looks at: the slow part."""
        self._predictions.prepare((*plain_states(self.circuit), *seen_states(self.circuit)))
        self._predictions.prepare(disturbed_states(self.circuit))

    def expected(self, state: CircuitState) -> tuple[Expectation, ...]:
        """Give what a circuit in order shows at every test point in one state.

        Raises
        ------
        UsageError
            The circuit can't be in this state.
        """
        check_state(self.circuit, state, self.circuit.name)
        return expected_in(self._predictions, state)

    def propose(self, check: CircuitCheck) -> ProposedTest | None:
        """Give the next test; None once a unit is told, or if nothing within reach tells more.

        Raises
        ------
        UsageError
            As :func:`~meterlog.circuit.entries.check_entries`.
        """
        check_entries(self.circuit, check)
        posterior = self._belief.posterior(check.readings, check.signs)
        return self._step(check, posterior, suspects_of(self.circuit, posterior))[1]

    def verdict(self, check: CircuitCheck) -> CircuitVerdict:
        """Tell where a check stands.

        Parameters
        ----------
        check : CircuitCheck

        Returns
        -------
        CircuitVerdict

        Raises
        ------
        UsageError
            As :func:`~meterlog.circuit.entries.check_entries`.
        """
        check_entries(self.circuit, check)
        posterior = self._belief.posterior(check.readings, check.signs)
        suspects = suspects_of(self.circuit, posterior)
        settled, following, words = self._step(check, posterior, suspects)
        return CircuitVerdict(
            circuit=self.circuit.name,
            suspects=suspects,
            settled=settled,
            settled_words=words,
            next_test=following,
            doubted=contradictions(posterior),
            drops=section_drops(self.circuit, check),
            expectations=beside_found(self._predictions, check.readings),
            bits_left=entropy_bits(self._sets.shares(posterior.weights)),
            notes=notes_of(self.circuit, check, posterior),
        )

    def _step(
        self, check: CircuitCheck, posterior: Posterior, suspects: tuple[Suspect, ...]
    ) -> tuple[str, ProposedTest | None, str]:
        """Give the unit that is told, or the next test, and what is to be said."""
        told = told_unit(suspects, len(check.readings), len(check.signs), self.told_at)
        if told:
            following = self._proving(check, posterior, told)
            if following is not None:
                return "", following, proving_words(suspects)
            return told, None, told_words(self.circuit, posterior, suspects, self.told_at)
        first = suspects[0]
        resting = posterior.resting_on(first.unit)
        likely = first.probability > self.told_at
        if likely and not check.readings:
            parts = self._sets.has(first.unit).astype(np.intp)
            following = self._next.propose(check, Question(posterior, parts), measured=True)
            return "", following, seen_words(suspects, confirmed_by=following is not None)
        if likely and resting is not None:
            following = self._confirming(check, first.unit, resting)
            words = carried_words(suspects, resting, confirmed_by=following is not None)
            return "", following, words
        following = self._next.propose(check, Question(posterior, self._sets.of_cell))
        if following is not None:
            return "", following, ""
        return "", None, open_words(self.circuit, posterior, suspects)

    def _proving(self, check: CircuitCheck, posterior: Posterior, unit: str) -> ProposedTest | None:
        """Give a test that still tells much of this unit against all else, if there is one."""
        parts = self._sets.has(unit).astype(np.intp)
        following = self._next.propose(check, Question(posterior, parts))
        enough = following is not None and following.bits >= PROVING_BITS
        return following if enough else None

    def _confirming(self, check: CircuitCheck, unit: str, resting: int) -> ProposedTest | None:
        """Give the test that tells most of this unit against all else, one entry left out.

        That is the entry which carries it; the test may be the same again, or another.
        """
        readings = [one for one in check.readings if one.id != resting]
        signs = [one for one in check.signs if one.id != resting]
        left = self._belief.posterior(readings, signs)
        parts = self._sets.has(unit).astype(np.intp)
        return self._next.propose(check, Question(left, parts))


def circuit_verdict(
    circuit: Circuit, check: CircuitCheck, told_at: float = TOLD_AT
) -> CircuitVerdict:
    """Tell where a check stands, once; :class:`Isolation` keeps what it worked out.

    Raises
    ------
    UsageError
        As :class:`Isolation`.
    """
    return Isolation(circuit, told_at).verdict(check)
