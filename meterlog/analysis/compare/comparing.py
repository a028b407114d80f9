"""Comparing: one motor against another, or against several known to be good."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean

from meterlog.analysis.compare.against_baseline import against_baseline
from meterlog.analysis.compare.ask import Ask
from meterlog.analysis.compare.at_one_voltage import at_one_voltage
from meterlog.analysis.compare.condition_checks import FORBIDS, Weighed, weigh
from meterlog.analysis.compare.other_figures import other_figures
from meterlog.analysis.compare.pair import pair
from meterlog.analysis.compare.refusals import no_common_speed, refusal
from meterlog.analysis.compare.remarks import by_chance, doubts_told, remarks
from meterlog.analysis.compare.side import Side, comparable_steps
from meterlog.analysis.compare.summary import summary
from meterlog.analysis.compare.tolerance import outlier
from meterlog.model import Comparison, ConditionCheck, Shape, Source, Step, StepDifference


@dataclass(frozen=True, slots=True)
class Paired:
    """A comparison, and the steps behind it for those who draw them.

    Attributes
    ----------
    comparison : Comparison
        Without overlays.
    steps : mapping of int to tuple of Step
        Of each common speed: the steps of the old ones, then of the new one.
    """

    comparison: Comparison
    steps: dict[int, tuple[Step, ...]]


def compare(old: Sequence[Side], new: Side, ask: Ask) -> Paired:
    """Compare reviewed recordings.

    Parameters
    ----------
    old : sequence of Side
        One; or the good motors of a baseline.
    new : Side
    ask : Ask

    Returns
    -------
    Paired
        With a refusal, and no steps, where they can't be compared.
    """
    sides = (*old, new)
    voltage_known = not any(side.no_voltage for side in sides)
    weighed = [
        weigh(
            side.about.job.measured_under,
            new.about.job.measured_under,
            voltage_known=voltage_known,
        )
        for side in old
    ]
    conditions = _heaviest(weighed)
    checks = tuple(one.check for one in conditions)
    why = refusal(old, new, [one for each in weighed for one in each])
    found = [comparable_steps(side, by_current=ask.by_current) for side in sides]
    common = sorted(set.intersection(*(set(one) for one in found)))
    uneven = ask.by_current and len({len(one) for one in found}) > 1
    if not why and (not common or uneven):
        why = no_common_speed(old, new, by_current=ask.by_current)
    if why:
        return Paired(_refused(old, new, checks, why), {})
    paired = {speed: tuple(one[speed] for one in found) for speed in common}
    steps = tuple(
        _at_speed(sides, speed, chosen, conditions, ask) for speed, chosen in paired.items()
    )
    notes = [*remarks(old, new, found, ask), *by_chance(steps, ask)]
    notes += _odd_ones(old, steps, paired, ask)
    comparison = Comparison(
        old=tuple(side.run for side in old),
        new=new.run,
        refusal="",
        conditions=checks,
        steps=steps,
        overlays=(),
        notes=tuple(notes),
        summary=summary(old, new, steps, checks, ask),
        figures=() if ask.baseline else other_figures(old[0], new),
        max_difference_percent=None if ask.baseline else ask.max_difference_percent,
    )
    return Paired(comparison, paired)


def _refused(
    old: Sequence[Side], new: Side, checks: tuple[ConditionCheck, ...], why: str
) -> Comparison:
    return Comparison(
        old=tuple(side.run for side in old),
        new=new.run,
        refusal=why,
        conditions=checks,
        steps=(),
        overlays=(),
        notes=tuple(doubts_told((*old, new))),
        summary=f"These recordings can't be compared. {why}",
    )


def _heaviest(weighed: Sequence[Sequence[Weighed]]) -> tuple[Weighed, ...]:
    """Give of each condition the check that weighs most, over all old ones."""
    order = ("same", "not stated", "differs", FORBIDS)
    return tuple(
        max(each, key=lambda one: (order.index(one.check.weight), one.effect))
        for each in zip(*weighed, strict=True)
    )


def _at_speed(
    sides: Sequence[Side],
    speed: int,
    steps: Sequence[Step],
    conditions: Sequence[Weighed],
    ask: Ask,
) -> StepDifference:
    at = at_one_voltage(sides, steps, ask.limits)
    size = fmean(one.value for one in at.amps)
    lines = [
        Source(
            f"{one.check.name} differs",
            one.effect * size / math.sqrt(3.0),
            "A",
            shape=Shape.RECTANGULAR,
            basis=f"± {100.0 * one.effect:.0f} % of the current: {one.check.words}",
        )
        for one in conditions
        if one.effect
    ]
    return (against_baseline if ask.baseline else pair)(speed, at, lines, ask)


def _odd_ones(
    old: Sequence[Side],
    steps: Sequence[StepDifference],
    paired: dict[int, tuple[Step, ...]],
    ask: Ask,
) -> list[str]:
    """Name motors of the baseline that do not belong to the others."""
    if not ask.baseline:
        return []
    told: dict[str, list[str]] = {}
    for step in steps:
        at = at_one_voltage(old, paired[step.speed][:-1], ask.limits)
        odd = None if at.too_far else outlier([one.value for one in at.amps])
        if odd is not None:
            amps = f"speed {step.speed} ({at.amps[odd].value:.3g} A)"
            told.setdefault(old[odd].run.name, []).append(amps)
    return [
        f"{name} stands out from the other good motors at {', '.join(where)} beyond chance (Grubbs'"
        f" test, 5 %): look whether it is good before it stands for its kind."
        for name, where in told.items()
    ]
