"""Isolation: where a circuit check stands, from all that was entered in it."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from meterlog.circuit.belief import Belief
from meterlog.circuit.contradictions import contradictions, doubted_ids, too_many_doubted
from meterlog.circuit.drops import section_drops
from meterlog.circuit.entries import check_entries, check_state
from meterlog.circuit.expectations import beside_found, expected_in
from meterlog.circuit.next_test import NextTest, Question
from meterlog.circuit.notes import notes_of
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.predictions import Predictions
from meterlog.circuit.settling import (
    LEAST_ENTRIES,
    LEAST_WITHOUT,
    PROVING_BITS,
    TOLD_AT,
    carried_words,
    nothing_fits_words,
    open_words,
    proving_words,
    seen_words,
    told_words,
)
from meterlog.circuit.states import disturbed_states, plain_states, seen_states
from meterlog.circuit.suspects import likeliest, suspects_of
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


@dataclass(frozen=True, slots=True)
class _Step:
    """Where a check goes on: the unit that is told or the next test, and how that is said."""

    settled: str
    test: ProposedTest | None
    say: Callable[[Sequence[Suspect]], str]


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
        return self._step(check, posterior).test

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
        step = self._step(check, posterior)
        suspects = suspects_of(self.circuit, posterior, told=bool(step.settled))
        return CircuitVerdict(
            circuit=self.circuit.name,
            suspects=suspects,
            settled=step.settled,
            settled_words=step.say(suspects),
            next_test=step.test,
            doubted=contradictions(posterior),
            drops=section_drops(self.circuit, check),
            expectations=beside_found(self._predictions, check.readings),
            bits_left=entropy_bits(self._sets.shares(posterior.weights)),
            notes=notes_of(self.circuit, check, posterior),
        )

    def _step(self, check: CircuitCheck, posterior: Posterior) -> _Step:
        """Give the unit that is told, or the next test.

        What each entry carries is asked for only where a unit is likely: that is the slow part.
        """
        probabilities = posterior.unit_probabilities()
        first = likeliest(probabilities)[0]
        if too_many_doubted(posterior):
            doubted, of = len(doubted_ids(posterior)), len(check.readings)
            following = self._next.propose(check, Question(posterior, self._sets.of_cell))
            return _Step("", following, lambda _: nothing_fits_words(doubted, of))
        if probabilities[first] > self.told_at:
            return self._likely(check, posterior, first)
        return self._open(check, posterior)

    def _likely(self, check: CircuitCheck, posterior: Posterior, unit: str) -> _Step:
        """Go on where one unit is likely: tell it, or confirm it by what tells it from all else."""
        if not check.readings:
            parts = self._sets.has(unit).astype(np.intp)
            following = self._next.propose(check, Question(posterior, parts), measured=True)
            confirmed = following is not None
            return _Step("", following, partial(seen_words, confirmed_by=confirmed))
        entries = len(check.readings) + len(check.signs)
        if entries >= LEAST_ENTRIES and posterior.least_without()[unit] >= LEAST_WITHOUT:
            following = self._proving(check, posterior, unit)
            if following is not None:
                return _Step("", following, proving_words)
            return _Step(
                unit, None, partial(told_words, self.circuit, posterior, told_at=self.told_at)
            )
        resting = posterior.resting_on(unit)
        if resting is None:  # nothing that was entered tells anything
            return self._open(check, posterior)
        following = self._confirming(check, posterior, unit, resting)
        confirmed = following is not None
        return _Step("", following, partial(carried_words, entry=resting, confirmed_by=confirmed))

    def _open(self, check: CircuitCheck, posterior: Posterior) -> _Step:
        following = self._next.propose(check, Question(posterior, self._sets.of_cell))
        if following is not None:
            return _Step("", following, lambda _: "")
        return _Step("", None, partial(open_words, self.circuit, posterior))

    def _proving(self, check: CircuitCheck, posterior: Posterior, unit: str) -> ProposedTest | None:
        """Give a test that still tells much of this unit against all else, if there is one."""
        parts = self._sets.has(unit).astype(np.intp)
        following = self._next.propose(check, Question(posterior, parts))
        enough = following is not None and following.bits >= PROVING_BITS
        return following if enough else None

    def _confirming(
        self, check: CircuitCheck, posterior: Posterior, unit: str, resting: int
    ) -> ProposedTest | None:
        """Give the test that tells most of this unit against all else, one entry left out.

        That is the entry which carries it; the test may be the same again, or another.
        """
        parts = self._sets.has(unit).astype(np.intp)
        return self._next.propose(check, Question(posterior.left(resting), parts))


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
