"""CardContradictions: where a job card and the conditions of a run say different things: told."""

from __future__ import annotations

import re
from collections.abc import Iterator

from meterlog.model.condition_fields import CONDITION_FIELDS
from meterlog.model.conditions import Conditions
from meterlog.model.job_card import JobCard

_FILTERS = next(field.choices for field in CONDITION_FIELDS if field.name == "filter")
_NEGATED = frozenset({"not", "no", "never", "isn't"})
_VOLTS = re.compile(r"(?<![\w.,])(\d+[.,]\d+)\s*(?:v|volts?)\b", re.IGNORECASE)
"""With a decimal: a whole number is what a battery is called, not what was read on it."""
_NEAR_V = 0.1
"""Two readings rounded to 0.1 V may part by so much."""
_ROUNDING = 1e-6


def contradictions(card: JobCard, conditions: Conditions, run: str) -> tuple[str, ...]:
    """Say where the card and a run contradict each other: filter, battery.

    Nothing is said where one of them says nothing, or nothing that can be held against the other.

    Parameters
    ----------
    card : JobCard
    conditions : Conditions
        Of the run.
    run : str
        Which one, such as ``before the repair``.

    Returns
    -------
    tuple of str
        A sentence each, with both values as they stand.
    """
    return (*_filter(card.filter, conditions.filter, run),
            *_battery(card.battery, conditions.battery_v, run))  # fmt: skip


def _filter(said: str, stated: str, run: str) -> Iterator[str]:
    words = set(re.findall(r"[\w']+", said.casefold()))
    named = words.intersection(_FILTERS)
    if len(named) != 1 or words & _NEGATED or stated not in _FILTERS or stated in named:
        return
    yield (
        f"The job card gives {said!r} for the filter; the run {run} was recorded with the cabin"
        f" filter {stated!r}."
    )


def _battery(said: str, stated_v: float | None, run: str) -> Iterator[str]:
    found = _VOLTS.findall(said)
    if len(found) != 1 or stated_v is None:
        return
    if abs(float(found[0].replace(",", ".")) - stated_v) > _NEAR_V + _ROUNDING:
        yield (
            f"The job card gives {said!r} for the battery; the run {run} was recorded with"
            f" {stated_v:g} V at it, fan off."
        )
