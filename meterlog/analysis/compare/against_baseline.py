"""Against a baseline: one speed of a motor against several that are known to be good."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean

from meterlog.analysis.budgets import combine
from meterlog.analysis.budgets.usual_error import cautious
from meterlog.analysis.compare.ask import Ask
from meterlog.analysis.compare.at_one_voltage import AtOneVoltage
from meterlog.analysis.compare.tolerance import (
    CONFIDENCE,
    COVERAGE,
    LEAST,
    Interval,
    tolerance_interval,
)
from meterlog.analysis.rounding import with_uncertainty
from meterlog.model import Budget, Source, StepDifference, Verdict

_FEW = 6


@dataclass(frozen=True, slots=True)
class GoodOnes:
    """What several good motors draw at one speed, ready to hold many against.

    Attributes
    ----------
    count : int
    mean : Budget
    interval : Interval
    """

    count: int
    mean: Budget
    interval: Interval


def good_ones(speed: int, amps: Sequence[Budget]) -> GoodOnes:
    """Put the currents of good motors together, all at one voltage."""
    interval = tolerance_interval([one.value for one in amps])
    return GoodOnes(len(amps), _mean(amps, speed), interval)


def against_baseline(
    speed: int, at: AtOneVoltage, conditions: Sequence[Source], ask: Ask
) -> StepDifference:
    """Hold a motor against the tolerance interval of good ones at one speed.

    Parameters
    ----------
    speed : int
    at : AtOneVoltage
        The good motors, then the new one.
    conditions : sequence of Source, amperes
        What differing conditions may do.
    ask : Ask

    Returns
    -------
    StepDifference
        The verdict is that of the difference from the good ones' mean against the interval about
        it, with the uncertainty of that difference: what all were measured with cancels. None
        without an interval.

    Source
    ------
    As of :func:`held`.
    """
    *good, _ = at.amps
    return held(speed, at, good_ones(speed, good), conditions, ask)


def held(
    speed: int, at: AtOneVoltage, good: GoodOnes, conditions: Sequence[Source], ask: Ask
) -> StepDifference:
    """Hold a motor against good ones as :func:`against_baseline`.

    Parameters
    ----------
    speed : int
    at : AtOneVoltage
        Voltages of the good motors, then of the new one; of the currents the last is the new one's.
    good : GoodOnes
    conditions : sequence of Source, amperes
    ask : Ask

    Source
    ------
    Interval: ISO 16269-6, two-sided, normal, mean and standard deviation unknown. Verdict: JCGM
    106:2012, 8.
    """
    new, interval, count, mean = at.amps[-1], good.interval, good.count, good.mean
    if at.too_far:
        words = f"Speed {speed}: can't tell: {at.words}."
        return _told(speed, at, good, (None, None), (Verdict.CANT_TELL, None, words))
    apart = combine(
        f"difference from the good ones at speed {speed}",
        new.value - mean.value,
        "A",
        [(new, 1.0), (mean, -1.0)],
        (*at.loose, *conditions),
    )
    ratio = combine(
        f"ratio to the good ones at speed {speed}",
        new.value / mean.value,
        "",
        [(new, 1.0 / mean.value), (mean, -new.value / mean.value**2)],
    )
    size = with_uncertainty(new.value, new.expanded, "A")
    good_words = f"{count} good motors {mean.value:.3g} A, s {interval.sd:.2g} A ({at.words})"
    if interval.low is None or interval.high is None:
        words = (
            f"Speed {speed}: new {size}; {good_words}: at least {LEAST} are needed to say within"
            f" what good ones lie."
        )
        return _told(speed, at, good, (apart, ratio), (None, None, words))
    half = interval.high - interval.mean
    if at.unknown:
        words = f"Speed {speed}: can't tell: of one of the currents no uncertainty is known."
        return _told(speed, at, good, (apart, ratio), (Verdict.CANT_TELL, None, words))
    held, turned = cautious(apart, (-half, half), ask.limits, at.unstated_a)
    unstated = f" (what is not stated of the meters, usually up to {at.unstated_a:.2g} A, decides)"
    words = (
        f"Speed {speed}: new {size}; {good_words}; {100 * COVERAGE:.0f} % of good ones lie within"
        f" {interval.low:.3g} to {interval.high:.3g} A with {100 * CONFIDENCE:.0f} % confidence:"
        f" {held.verdict}{unstated * turned}.{_few(count, interval)}"
    )
    return _told(speed, at, good, (apart, ratio), (held.verdict, held.probability, words))


def _mean(good: Sequence[Budget], speed: int) -> Budget:
    share = 1.0 / len(good)
    return combine(
        f"mean of {len(good)} good motors at speed {speed}",
        fmean(one.value for one in good),
        "A",
        [(one, share) for one in good],
    )


def _few(count: int, interval: Interval) -> str:
    if count >= _FEW or interval.factor is None:
        return ""
    return (
        f" With only {count} good motors the interval is {interval.factor:.1f} deviations wide to"
        f" each side; more of them make it narrower."
    )


def _told(
    speed: int,
    at: AtOneVoltage,
    good: GoodOnes,
    made: tuple[Budget | None, Budget | None],
    judged: tuple[Verdict | None, float | None, str],
) -> StepDifference:
    new, interval = at.amps[-1], good.interval
    volts = [one for one in at.volts[:-1] if one is not None]
    bounds = None
    if interval.low is not None and interval.high is not None and not at.too_far:
        bounds = (interval.low, interval.high)
    return StepDifference(
        speed=speed,
        old_v=fmean(volts) if volts else None,
        new_v=at.volts[-1],
        reference_v=at.reference_v,
        old_a=good.mean,
        new_a=new,
        difference_a=made[0],
        ratio=made[1],
        baseline_mean_a=interval.mean,
        baseline_sd_a=interval.sd if good.count > 1 else None,
        tolerance_a=bounds,
        count=good.count,
        verdict=judged[0],
        probability=judged[1],
        words=judged[2],
    )
