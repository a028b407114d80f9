"""Contradictions: readings that don't go with the others, and which of them to repeat."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meterlog.analysis.student import NORMAL
from meterlog.circuit.cases import comes_and_goes
from meterlog.circuit.figures import Floats
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.slipped import sum_over_slips
from meterlog.model.circuit import Circuit, PointKind
from meterlog.model.circuit_check import CircuitReading, CircuitSign, DoubtedReading

DOUBTED = 0.3
"""Probability of a slip from which on a reading is doubted."""
MOST_DOUBTED, MOST_PART = 2, 0.25
"""More than two readings, and more than this part of all: that many probes don't slip. Four of
twelve and more slip, at two in a hundred, once in fourteen thousand checks (binomial)."""
_FAR = 5.0
"""So many standard deviations away from what the likeliest case lets expect nothing explains it."""
_TAIL = 0.025
_FAINT = 1e-6
_HALF = 0.5
_WANDERING = 0.05


def contradictions(posterior: Posterior, floor: float = DOUBTED) -> tuple[DoubtedReading, ...]:
    """Name the readings that do not go with the others.

    Parameters
    ----------
    posterior : Posterior
    floor : float
        Probability of a slip from which on a reading is doubted. One that no hypothesis explains,
        slipped or not, is doubted too.

    Returns
    -------
    tuple of DoubtedReading
        The first is the one to repeat first.
    """
    doubted = doubted_ids(posterior, floor)
    found = []
    for number in doubted:
        low, high = expected_by_others(posterior, number)
        text = _Words(posterior, number, low, high).say(doubted[0])
        point = posterior.weighed.taken.readings[_place(posterior, number)].point
        found.append(DoubtedReading(number, point, posterior.slipped[number], low, high, text))
    return tuple(found)


def doubted_ids(posterior: Posterior, floor: float = DOUBTED) -> list[int]:
    """Give the ids of the readings that :func:`contradictions` names, in its order."""
    slipped = posterior.slipped
    far = _unexplained(posterior)
    doubted = [number for number in slipped if slipped[number] > floor or number in far]
    return sorted(doubted, key=lambda number: (-slipped[number], number))


def too_many_doubted(posterior: Posterior) -> bool:
    """Tell whether more readings are doubted than slips explain: then no unit is told."""
    return len(doubted_ids(posterior)) > max(MOST_DOUBTED, MOST_PART * len(posterior.slipped))


def expected_by_others(posterior: Posterior, number: int) -> tuple[float, float]:
    """Give the range, about 95 %, in which the other entries let expect a reading.

    Parameters
    ----------
    posterior : Posterior
    number : int
        Id of the reading; its meter's uncertainty is in the range.

    Returns
    -------
    low, high : float, volts or amperes
    """
    weighed = posterior.weighed
    at = _place(posterior, number)
    weights = posterior.weights_without(number)
    kept = np.flatnonzero(weights > _FAINT)
    joint = weighed.joint.of(kept)
    others = sum_over_slips(joint.without(at), np.delete(weighed.taken.log_slip, at)).likeliest
    # Places behind the one left out have moved up by one.
    held = joint.silenced(others + (others >= at))
    own = held.inverse[:, at, at]
    mean = weighed.taken.value[at] - held.pull[:, at] / own
    sd = np.sqrt(1.0 / own)
    return (
        _quantile(weights[kept], mean, sd, _TAIL),
        _quantile(weights[kept], mean, sd, 1.0 - _TAIL),
    )


def opponent(posterior: Posterior, number: int) -> tuple[int, float] | None:
    """Give the entry that a reading contradicts most.

    Parameters
    ----------
    posterior : Posterior
    number : int
        Id of the reading.

    Returns
    -------
    (int, float) or None
        Id of the reading or sign without which a slip is least probable, and that probability; if
        there is another at all.
    """
    weighed = posterior.weighed
    at = _place(posterior, number)
    left: dict[int, float] = {}
    if len(weighed.taken) > 1:
        # Leaving j out is the same as knowing that it slipped: then its value tells nothing.
        both = weighed.case_weights @ weighed.sums.both[:, at, :]
        alone = weighed.case_weights @ weighed.sums.slipped
        for place, other in enumerate(weighed.taken.ids):
            if place != at:
                left[other] = float(both[place] / alone[place]) if alone[place] > 0.0 else 1.0
    for other in weighed.seen.ids:
        left[other] = float(posterior.weights_without(other) @ weighed.sums.slipped[:, at])
    if not left:
        return None
    most = min(left, key=lambda other: (left[other], other))
    return most, left[most]


def _unexplained(posterior: Posterior) -> frozenset[int]:
    """Give the readings that lie far from what the likeliest case lets expect, and held."""
    weighed = posterior.weighed
    if not len(weighed.taken):
        return frozenset()
    best = np.array([weighed.case_weights.argmax()])
    held = weighed.joint.of(best).silenced(weighed.sums.likeliest[best])
    own = np.einsum("cii->ci", held.inverse)[0]
    sigmas = np.abs(held.pull[0]) / np.sqrt(np.maximum(own, np.finfo(float).tiny))
    return frozenset(
        number for number, one in zip(weighed.taken.ids, sigmas, strict=True) if one > _FAR
    )


def _place(posterior: Posterior, number: int) -> int:
    return posterior.weighed.taken.ids.index(number)


def _quantile(weights: Floats, mean: Floats, sd: Floats, part: float) -> float:
    """Give the quantile of a mixture of normal distributions, by halving."""
    reach = NORMAL.inv_cdf(1.0 - _FAINT)
    low, high = float((mean - reach * sd).min()), float((mean + reach * sd).max())
    share = weights / weights.sum()
    while high - low > 1e-4:
        middle = (low + high) / 2.0
        below = sum(
            one * NORMAL.cdf((middle - at) / wide)
            for one, at, wide in zip(share, mean, sd, strict=True)
        )
        low, high = (middle, high) if below < part else (low, middle)
    return (low + high) / 2.0


@dataclass(frozen=True, slots=True)
class _Words:
    """What is said of one doubted reading."""

    posterior: Posterior
    number: int
    low: float
    high: float

    def say(self, first: int) -> str:
        weighed = self.posterior.weighed
        circuit = weighed.source.circuit
        own = weighed.taken.readings[_place(self.posterior, self.number)]
        unit = _unit(circuit, own)
        there = f"{_figure(self.low, unit)} to {_figure(self.high, unit)} {unit}"
        parts = [
            f"{_named(circuit, own)} does not go with {self._others(circuit)}: without it "
            f"{there} would be expected there."
        ]
        if self.posterior.slipped[self.number] <= _HALF and self.number != first:
            parts.append(f"Repeat it too if reading {first} stands.")
        elif self.number == first:
            parts.append(
                f"Repeat reading {first} first: a probe that slipped, another point, another "
                "setting of key, speed or plugs?"
            )
            if self._may_wander():
                parts.append("If it holds, the fault may have come or gone in between.")
        else:
            parts.append("Repeat it as well.")
        return " ".join(parts)

    def _may_wander(self) -> bool:
        weighed = self.posterior.weighed
        wandering = comes_and_goes(weighed.source.cells)
        return float(self.posterior.weights[wandering].sum()) > _WANDERING

    def _others(self, circuit: Circuit) -> str:
        against = opponent(self.posterior, self.number)
        if against is None:
            return "what any known fault would give"
        number, left = against
        if left > _HALF * self.posterior.slipped[self.number]:
            return "the other readings" if len(self.posterior.slipped) > 1 else "what was seen"
        weighed = self.posterior.weighed
        if number in weighed.seen.ids:
            return _named(circuit, weighed.seen.signs[weighed.seen.ids.index(number)])
        other = weighed.taken.readings[_place(self.posterior, number)]
        return _named(circuit, other, start=False)


def _named(circuit: Circuit, one: CircuitReading | CircuitSign, *, start: bool = True) -> str:
    if isinstance(one, CircuitSign):
        return f"what was seen ({one.sign}: {one.value})"
    unit = _unit(circuit, one)
    word = "Reading" if start else "reading"
    label = circuit.point(one.point).label
    return f"{word} {one.id} ({label}, {_figure(one.value, unit)} {unit})"


def _unit(circuit: Circuit, one: CircuitReading) -> str:
    return "A" if circuit.point(one.point).kind is PointKind.CURRENT else "V"


def _figure(value: float, unit: str) -> str:
    return f"{value:.1f}" if unit == "A" else f"{value:.2f}"
