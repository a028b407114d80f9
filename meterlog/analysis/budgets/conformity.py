"""Conformity: a value with its uncertainty beside a limit."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.analysis.uncertainty import within
from meterlog.model import Budget, Limits, Verdict


@dataclass(frozen=True, slots=True)
class Conformity:
    """What a value is beside its limits.

    Attributes
    ----------
    verdict : Verdict
    probability : float or None
        That the true value is within the limits.
    limit : float or None
        The one that decided.
    """

    verdict: Verdict
    probability: float | None
    limit: float | None


def conformity(value: Budget, low: float | None, high: float | None, limits: Limits) -> Conformity:
    """Judge a value by the decision rule of ``limits``.

    Parameters
    ----------
    value : Budget
    low, high : float or None, in the value's unit
        None leaves that side open.
    limits : Limits
        For its decision rule and guard band.
    """
    verdict, limit = within(value.value, value.expanded, low, high)
    return Conformity(verdict, None, limit)
