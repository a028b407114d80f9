"""Held: what one run draws held against the baselines of its part number, speed by speed.

The verdict is told here and nowhere else: a face shows it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from meterlog.analysis.budgets import budget
from meterlog.analysis.compare import Ask
from meterlog.analysis.compare.against_baseline import GoodOnes, good_ones, held
from meterlog.analysis.compare.at_one_voltage import AtOneVoltage
from meterlog.analysis.compare.condition_checks import DIFFERS
from meterlog.analysis.compare.summary import baseline_words
from meterlog.model import (
    Budget,
    ComparedRun,
    Comparison,
    ConditionCheck,
    Source,
    StepDifference,
    Verdict,
)
from meterlog.work.drawn import Drawn
from meterlog.work.library.hit import Usual
from meterlog.work.screening.baselines import Baseline
from meterlog.work.screening.good_runs import RULE
from meterlog.work.speed_figures import SpeedFigures, brought

_SHARED = "good motors:measuring"
_NOTES = (
    "The good ones were measured under conditions of their own: what those do to the current is in"
    " their spread. Nothing they were measured with is taken as shared with the new one.",
    RULE,
)
_VOLTS_APART = 0.05
"""From so far on, as a part of it, another motor voltage is told; the exponent's own uncertainty
then makes about 1 % of current (0.2 of an exponent, by its usual half-width)."""
_NAMED = 5


@dataclass(frozen=True, slots=True)
class BesideGood:
    """One speed beside the good ones.

    Attributes
    ----------
    step : StepDifference
        With its verdict.
    good : Baseline
        Without the run itself.
    usual : Usual
        What the verdict comes to.
    off_percent : float or None, percent
        How far the current lies from the good ones' median, both at the reference voltage; None
        where it can't be brought there.
    unstated_a : float, amperes
        Half-width of what a clamp of the usual kind adds that nobody has stated; it may keep a
        verdict from being told.
    """

    step: StepDifference
    good: Baseline
    usual: Usual
    off_percent: float | None
    unstated_a: float = 0.0


@dataclass(frozen=True, slots=True)
class Held:
    """A run held against baselines.

    Attributes
    ----------
    number : str
        Part number of the good ones.
    comparison : Comparison
    speeds : tuple of BesideGood
        Lowest first; empty of what can't be compared.
    usual : Usual
        The gravest of them.
    mark : str
        Where the run's readings come from, where no meter sent them from a vehicle; else empty.
    """

    number: str
    comparison: Comparison
    speeds: tuple[BesideGood, ...]
    usual: Usual
    mark: str


def held_against(drawn: Drawn, found: Sequence[Baseline], number: str) -> Held:
    """Hold a run against the baselines of its part number.

    Nothing that the good ones were measured with is taken as shared with the new one.

    Parameters
    ----------
    drawn : Drawn
    found : sequence of Baseline
        Of the part number, for the run's origin and nominal voltage.
    number : str
    """
    good = [one for each in found if (one := each.without(drawn.run.recording_id)) is not None]
    refusal, speeds = _speeds(drawn, good, number)
    if found and not good and not drawn.refusal:
        refusal = (
            f"{drawn.run.name} itself is the only good one of {number} in this table: others are"
            " needed to hold it against."
        )
    common = [one.good for one in speeds]
    steps = tuple(one.step for one in speeds)
    comparison = Comparison(
        old=_runs(common or good),
        new=drawn.run,
        refusal=refusal,
        conditions=() if refusal else _conditions(drawn, speeds),
        steps=steps,
        overlays=(),
        notes=(*_origin_told(drawn), *_NOTES),
        summary=_summary(drawn, number, steps, refusal),
    )
    return Held(number, comparison, speeds, _usual(refusal, speeds), drawn.mark)


def usual_of(drawn: Drawn, found: Sequence[Baseline], number: str) -> Usual:
    """Give only what it comes to, of thousands of runs."""
    good = [one for each in found if (one := each.without(drawn.run.recording_id)) is not None]
    return _usual(*_speeds(drawn, good, number)) if good else Usual.NO_BASELINE


def with_few_named(comparison: Comparison) -> Comparison:
    """Leave out all but some of many good ones: the table of a screening may hold thousands."""
    more = len(comparison.old) - _NAMED
    if more <= 1 or RULE not in comparison.notes:
        return comparison
    note = f"{more} more good ones are not named here; the table of baselines names all."
    return replace(comparison, old=comparison.old[:_NAMED], notes=(note, *comparison.notes))


def _speeds(
    drawn: Drawn, good: Sequence[Baseline], number: str
) -> tuple[str, tuple[BesideGood, ...]]:
    """Give why it can't be compared, as whole sentences, and all speeds in common."""
    figures = {one.speed: place for place, one in enumerate(drawn.figures)}
    common = [one for one in good if one.speed in figures]
    if drawn.refusal:
        return f"{drawn.run.name}: {drawn.refusal}", ()
    if not common:
        return (
            f"{drawn.run.name} and the good ones of {number} have no commanded speed with steady,"
            f" undoubted current in common."
        ), ()
    return "", tuple(_speed(one, figures[one.speed], drawn) for one in common)


def _usual(refusal: str, speeds: Sequence[BesideGood]) -> Usual:
    """Give the gravest: what fails, then what can't be told."""
    if refusal:
        return Usual.NOT_COMPARABLE
    told = {one.usual for one in speeds}
    if {Usual.HIGHER, Usual.LOWER} <= told:
        return Usual.BOTH
    order = (Usual.HIGHER, Usual.LOWER, Usual.CANT_TELL, Usual.TOO_FEW, Usual.AS_USUAL)
    return next(one for one in order if one in told)


def _usual_at(step: StepDifference) -> Usual:
    if step.verdict is None:
        return Usual.TOO_FEW
    if step.verdict is Verdict.FAIL:
        apart = step.difference_a
        return Usual.HIGHER if apart is not None and apart.value > 0.0 else Usual.LOWER
    return Usual.AS_USUAL if step.verdict is Verdict.PASS else Usual.CANT_TELL


def _speed(good: Baseline, place: int, drawn: Drawn) -> BesideGood:
    figures = drawn.figures[place]
    new = brought(figures, good.reference_v)
    volts = (*good.motor_v, figures.motor_v)
    if new is None:
        told = "unknown" if figures.motor_v is None else f"{figures.motor_v:.1f} V"
        words = (
            f"its motor voltage is {told}, the good ones' currents stand at"
            f" {good.reference_v:.3g} V, and no current can be brought from there to here"
        )
        at = AtOneVoltage(volts, None, (_as_read(figures),), (), words, too_far=True)
    else:
        words = f"at {good.reference_v:.3g} V, by the exponent of each"
        # What a clamp adds to the current as read, it adds to it at another voltage likewise.
        unstated = drawn.unstated_a[place] * new.value / figures.current_a
        unknown = figures.current_u_a <= 0.0
        at = AtOneVoltage(
            volts, good.reference_v, (new,), (), words, unstated_a=unstated, unknown=unknown
        )
    step = held(good.speed, at, _good_ones(good), (), Ask(limits=drawn.rule, baseline=True))
    off = None if new is None else 100.0 * (new.value / good.median_a - 1.0)
    return BesideGood(step, good, _usual_at(step), off, at.unstated_a)


@lru_cache(maxsize=512)
def _good_ones(good: Baseline) -> GoodOnes:
    """Give the good ones' currents; what they were measured with is one error of all.

    So it does not become small in a mean of many, as it would were each meter's its own.
    """
    name = f"motor current at speed {good.speed}"
    amps = tuple(
        budget(name, amps, "A", (Source("measuring the good ones", u, "A", key=_SHARED),))
        for amps, u in zip(good.currents_a, good.currents_u_a, strict=True)
    )
    return good_ones(good.speed, amps)


def _as_read(figures: SpeedFigures) -> Budget:
    name = f"motor current at speed {figures.speed}"
    known = figures.current_u_a > 0.0
    sources = (Source("current as read", figures.current_u_a, "A"),) if known else ()
    return budget(name, figures.current_a, "A", sources)


def _conditions(drawn: Drawn, speeds: Sequence[BesideGood]) -> tuple[ConditionCheck, ...]:
    """Give what was otherwise with the good ones, as far as a table of baselines says it."""
    told = []
    far = max(speeds, key=_volts_off)
    if _volts_off(far) > _VOLTS_APART:
        volts = _known_volts(far.good)
        words = "all currents are brought to one voltage; the farther, the wider the uncertainty"
        low, high = f"{min(volts):.1f} V", f"{max(volts):.1f} V"
        good = low if low == high else f"{low} to {high}"
        told.append(_differs("motor voltage", good, f"{far.step.new_v or 0.0:.1f} V", words))
    by = dict.fromkeys(name for one in speeds for name in one.good.limits)
    if list(by) != [drawn.limits]:
        words = "by those limits the good ones were found in order; other limits find others so"
        told.append(_differs("limits", ", ".join(sorted(by)), drawn.limits, words))
    return tuple(told)


def _differs(name: str, good: str, new: str, words: str) -> ConditionCheck:
    return ConditionCheck(name, good, new, DIFFERS, words)


def _volts_off(one: BesideGood) -> float:
    """Give how far its motor voltage lies outside of the good ones', as a part of theirs."""
    volts, new = _known_volts(one.good), one.step.new_v
    if new is None or not volts:
        return 0.0
    return max(min(volts) - new, new - max(volts)) / one.good.reference_v


def _known_volts(good: Baseline) -> list[float]:
    return [one for one in good.motor_v if not math.isnan(one)]


def _origin_told(drawn: Drawn) -> tuple[str, ...]:
    if not drawn.mark or drawn.run.origin == "simulated":
        return ()
    return (f"{drawn.run.name} is {drawn.mark.lower()}; the good ones were read by meters.",)


def _runs(good: Sequence[Baseline]) -> tuple[ComparedRun, ...]:
    """Give the recordings of good motors, each once."""
    found: dict[str, ComparedRun] = {}
    for one in good:
        each = zip(one.recording_ids, one.folders, one.motors, one.started_utc, strict=True)
        for recording_id, folder, motor, started in each:
            part = f"{one.part_number}, {motor}"
            found[recording_id] = ComparedRun(folder, recording_id, part, started, one.origin)
    return tuple(found.values())


def _summary(drawn: Drawn, number: str, steps: Sequence[StepDifference], refusal: str) -> str:
    if refusal:
        return f"This recording can't be compared. {refusal}"
    many = max(step.count for step in steps)
    motors = "1 motor" if many == 1 else f"up to {many} motors"
    simulated = " All are simulated." if drawn.run.origin == "simulated" else ""
    lead = f"{drawn.label} against {motors} of {number} taken as good.{simulated}"
    return f"{lead} {baseline_words(steps)}"
