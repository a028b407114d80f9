"""Conformity: a value with its uncertainty beside a limit."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.analysis.budgets.posterior import probability_below
from meterlog.model import Budget, DecisionRule, Limits, Verdict


@dataclass(frozen=True, slots=True)
class Conformity:
    """What a value is beside its limits.

    Attributes
    ----------
    verdict : Verdict
    probability : float or None
        That the true value is within the limits; None where no uncertainty is known.
    limit : float or None
        The one that decided: where the verdict is ``fail`` the one that is passed, else the nearer.
    """

    verdict: Verdict
    probability: float | None
    limit: float | None


def conformity(value: Budget, low: float | None, high: float | None, limits: Limits) -> Conformity:
    """Judge a value by the decision rule of ``limits``.

    Parameters
    ----------
    value : Budget
        Without sources nothing is known of its uncertainty, and the value alone decides.
    low, high : float or None, in the value's unit
        None leaves that side open.
    limits : Limits
        For its decision rule and guard band.

    Returns
    -------
    Conformity
        By guard bands: ``pass`` only when the value is within the limits by the width of the guard
        band w = r U, ``fail`` only when it is outside by as much, else ``can't tell``. By simple
        acceptance the value alone decides.

    Source
    ------
    Simple acceptance: JCGM 106:2012, 8.2; guarded acceptance and guarded rejection: 8.3.2 and
    8.3.3, both at once. Probability of conformity: 7.2 to 7.4.
    """
    band = 0.0 if limits.decision is DecisionRule.SIMPLE else limits.guard_factor * value.expanded
    at = value.value
    probability = _probability(value, low, high) if value.sources else None
    if high is not None and at - band > high:
        return Conformity(Verdict.FAIL, probability, high)
    if low is not None and at + band < low:
        return Conformity(Verdict.FAIL, probability, low)
    inside = (high is None or at + band <= high) and (low is None or at - band >= low)
    verdict = Verdict.PASS if inside else Verdict.CANT_TELL
    distances = [(abs(at - limit), limit) for limit in (low, high) if limit is not None]
    return Conformity(verdict, probability, min(distances)[1] if distances else None)


def _probability(value: Budget, low: float | None, high: float | None) -> float | None:
    if low is None and high is None:
        return None
    up_to = 1.0 if high is None else probability_below(value, high)
    # The limit itself is allowed, which counts where nothing is uncertain.
    on_low = low is not None and value.combined_u <= 0.0 and value.value == low
    below = 0.0 if low is None or on_low else probability_below(value, low)
    return max(up_to - below, 0.0)


def rule_words(limits: Limits) -> str:
    """Say by which rule verdicts are made, for people who read the review.

    Parameters
    ----------
    limits : Limits

    Returns
    -------
    str
        One or two plain sentences.
    """
    if limits.decision is DecisionRule.SIMPLE:
        return (
            "Decision rule: simple acceptance (JCGM 106:2012, 8.2). The value alone decides, its"
            " uncertainty does not count; close to a limit a verdict may be wrong one time in two:"
            " the probability beside it says how surely the true value is within the limits."
        )
    factor = "" if limits.guard_factor == 1.0 else f"{limits.guard_factor:g} times "
    return (
        f"Decision rule: guard bands on both sides (JCGM 106:2012, 8.3). Pass only where the value"
        f" is within its limits by at least {factor}its expanded uncertainty U (about 95 %), fail"
        f" only where it is outside by more than that; in between: can't tell."
    )
