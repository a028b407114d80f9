"""Pair: one speed of the old motor against the same speed of the new one."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.budgets import combine, conformity
from meterlog.analysis.budgets.usual_error import cautious
from meterlog.analysis.compare.ask import Ask
from meterlog.analysis.compare.at_one_voltage import AtOneVoltage, difference
from meterlog.analysis.compare.summary import percent_words
from meterlog.analysis.rounding import with_uncertainty
from meterlog.model import Budget, Source, StepDifference, Verdict


def pair(speed: int, at: AtOneVoltage, conditions: Sequence[Source], ask: Ask) -> StepDifference:
    """Tell whether two motors differ at one speed.

    Parameters
    ----------
    speed : int
    at : AtOneVoltage
        The old one, then the new one.
    conditions : sequence of Source, amperes
        What differing conditions may do to the difference.
    ask : Ask

    Returns
    -------
    StepDifference
        Without a largest difference allowed: ``fail`` where they differ by more than the expanded
        uncertainty of the difference, else can't tell - that two are equal is never proven - with
        the probability that the difference has the sign that was seen. With one: its verdict, and
        the probability that the true difference lies within.

    Source
    ------
    Difference beyond its expanded uncertainty: JCGM 100:2008, 6.2 and 6.3; verdict against the
    largest difference allowed: JCGM 106:2012, 8.
    """
    old, new = at.amps
    if at.too_far:
        return _told(speed, at, None, (Verdict.CANT_TELL, None, f"can't tell: {at.words}"))
    apart, ratio = difference(new, old, f"at speed {speed}", (*at.loose, *conditions))
    verdict, probability, outcome = _judged(at, apart, ratio, ask)
    more = "more" if apart.value >= 0.0 else "less"
    size = with_uncertainty(abs(apart.value), apart.expanded, "A")
    words = (
        f"old {_sized(old)}, new {_sized(new)} ({at.words}): the new one draws {size}"
        f" ({percent_words(ratio)}) {more}; {outcome}"
    )
    inside = ", ".join(one.name for one in conditions)
    lacking = f" (in this uncertainty: {inside})" if inside else ""
    lacking += f" (not in: {apart.lacking})" if apart.lacking else ""
    return _told(
        speed, at, (apart, ratio), (verdict, probability, f"Speed {speed}: {words}{lacking}.")
    )


def _sized(value: Budget) -> str:
    return with_uncertainty(value.value, value.expanded, "A")


def _told(
    speed: int,
    at: AtOneVoltage,
    made: tuple[Budget, Budget] | None,
    judged: tuple[Verdict, float | None, str],
) -> StepDifference:
    verdict, probability, words = judged
    return StepDifference(
        speed=speed,
        old_v=at.volts[0],
        new_v=at.volts[1],
        reference_v=at.reference_v,
        old_a=at.amps[0],
        new_a=at.amps[1],
        difference_a=None if made is None else made[0],
        ratio=None if made is None else made[1],
        baseline_mean_a=None,
        baseline_sd_a=None,
        tolerance_a=None,
        count=0,
        verdict=verdict,
        probability=probability,
        words=words if words.startswith("Speed") else f"Speed {speed}: {words}.",
    )


def _judged(
    at: AtOneVoltage, apart: Budget, ratio: Budget, ask: Ask
) -> tuple[Verdict, float | None, str]:
    if at.unknown:
        return Verdict.CANT_TELL, None, "can't tell: no uncertainty is known"
    if ask.max_difference_percent is None:
        return _differs(apart, at.unstated_a, ask)
    return _allowed(ratio, 100.0 * at.unstated_a / at.amps[0].value, ask)


def _differs(apart: Budget, unstated_a: float, ask: Ask) -> tuple[Verdict, float | None, str]:
    above = conformity(apart, 0.0, None, ask.limits).probability
    probability = above if above is None or apart.value >= 0.0 else 1.0 - above
    if abs(apart.value) <= apart.expanded:
        return Verdict.CANT_TELL, probability, "no difference beyond the uncertainty"
    if abs(apart.value) <= apart.expanded + unstated_a:
        return Verdict.CANT_TELL, probability, f"can't tell: {_unstated(unstated_a, 'A')}"
    return Verdict.FAIL, probability, "they differ beyond the uncertainty"


def _allowed(ratio: Budget, unstated: float, ask: Ask) -> tuple[Verdict, float | None, str]:
    most = ask.max_difference_percent or 0.0
    percent = combine("difference", 100.0 * (ratio.value - 1.0), "%", [(ratio, 100.0)])
    held, turned = cautious(percent, (-most, most), ask.limits, unstated)
    why = f", as {_unstated(unstated, '%')}" if turned else ""
    return held.verdict, held.probability, f"allowed {most:g} %: {held.verdict}{why}"


def _unstated(half_width: float, unit: str) -> str:
    return (
        f"what is not stated of the meters (usually up to {half_width:.2g} {unit}) could make the"
        f" difference"
    )
