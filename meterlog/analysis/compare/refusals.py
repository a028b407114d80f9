"""Refusals: why two recordings can't be set side by side, and what to do."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.compare.condition_checks import FORBIDS, Weighed
from meterlog.analysis.compare.side import Side
from meterlog.analysis.off_by import off_words
from meterlog.model import Origin, Step

_OTHER_SYSTEM = 1.6


def refusal(old: Sequence[Side], new: Side, weighed: Sequence[Weighed]) -> str:
    """Give why these recordings can't be compared, as whole sentences; empty where they can.

    Parameters
    ----------
    old : sequence of Side
    new : Side
    weighed : sequence of Weighed
        Conditions of each of the old ones against the new one.
    """
    for side in (*old, new):
        why = _by_itself(side)
        if why:
            return why
    for side in old:
        why = _origins(side, new) or _nominal(side, new)
        if why:
            return why
    for one in weighed:
        if one.check.weight == FORBIDS:
            check = one.check
            return (
                f"The {check.name} was {check.old} for the old and {check.new} for the new:"
                f" {check.words}."
            )
    return ""


def _by_itself(side: Side) -> str:
    if side.current is None:
        return f"{side.run.name}: no channel read the motor current; there is nothing to compare."
    if not any(step.n for step in side.review.steps):
        return f"{side.run.name} holds no readings; there is nothing to compare."
    doubt = side.tenfold
    if doubt is not None:
        return (
            f"{side.run.name}: {off_words(doubt.factor)}. {doubt.text} Put that right and measure"
            f" again."
        )
    return ""


def _origins(old: Side, new: Side) -> str:
    origins = {old.about.origin, new.about.origin}
    if Origin.SIMULATED in origins and len(origins) > 1:
        false, true = (old, new) if old.about.origin is Origin.SIMULATED else (new, old)
        return (
            f"{false.run.name} is simulated and {true.run.name} is {true.about.origin.value}: a"
            f" simulated fan says nothing of a real one. Compare two of one kind."
        )
    return ""


def _nominal(old: Side, new: Side) -> str:
    one, other = old.about.limits.nominal_v, new.about.limits.nominal_v
    if one != other:
        return (
            f"{old.run.name} was recorded for {one:g} V and {new.run.name} for {other:g} V nominal:"
            f" these are different motors. Record both with limits of the same nominal voltage."
        )
    highs = [_highest_v(side) for side in (old, new)]
    if min(highs) > 0.0 and max(highs) > _OTHER_SYSTEM * min(highs) and _top(old) == _top(new):
        return (
            f"At the highest speed {highs[0]:.1f} V stood across the old motor and {highs[1]:.1f} V"
            f" across the new one: these are different supplies, or a reading is wrong. Check"
            f" where the probes were, and the nominal voltage."
        )
    return ""


def _running(side: Side) -> list[Step]:
    steps = side.review.steps
    return [s for s in steps if s.speed and s.steady_mean_v is not None and not side.no_voltage]


def _top(side: Side) -> int | None:
    return max((step.speed or 0 for step in _running(side)), default=None)


def _highest_v(side: Side) -> float:
    top = _top(side)
    volts = [abs(s.steady_mean_v or 0.0) for s in _running(side) if s.speed == top]
    return max(volts, default=0.0)


def no_common_speed(old: Sequence[Side], new: Side, *, by_current: bool) -> str:
    """Say that no speed was run on all sides."""
    names = ", ".join(side.run.name for side in old)
    if by_current:
        return (
            f"{names} and {new.run.name} do not hold the same number of steady running speeds:"
            f" their order by current does not tell which belongs to which. Record the same"
            f" speeds in both."
        )
    bare = [s for s in (*old, new) if all(step.speed is None for step in s.review.steps)]
    if bare:
        return (
            f"{bare[0].run.name} holds no commanded speeds, so that nothing tells which steps"
            f" belong together. Compare with --speed-by-current to pair them by order of current."
        )
    return (
        f"{names} and {new.run.name} have no commanded speed with steady, undoubted current in"
        f" common. Record the same speeds in both, each for at least some seconds."
    )
