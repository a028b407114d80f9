"""Drag: a motor that draws too much at several speeds turns hard, or does not turn.

Never from one poor reading: it takes two speeds above what they may draw, or one above and another
close to it. A speed counts as above only where its own verdict is that it fails. On low, where drag
may stall the motor altogether, volts by amperes tell which.

Source: common practice, no source: drag gives some per cent on high and more on low, until the
motor stalls on low and still runs on high.
"""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.analysis.budgets.followed import maker_of
from meterlog.analysis.budgets.usual_error import cautious
from meterlog.analysis.held_rotor import held_scale_ohm, standing_ohm
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor.points import several_levels
from meterlog.analysis.past_range import PAST_READING
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.step_edges import step_edge_ns
from meterlog.analysis.taken_back import TakenBack
from meterlog.model import Budget, Doubt, DoubtKind, Finding, FindingKind, Limits, Step, Verdict

CLOSE = 0.9
"""From this part of its limit on a speed is close to it."""
FEWEST = 4
LEAST_NS = 1_000_000_000
MORE_V = 1.05
"""More voltage than this part of the reference explains more current by itself."""
TURNS = 2.0
"""A motor turns for certain from so many times the resistance of one that stands."""
_METER = (DoubtKind.DECADE, DoubtKind.STUCK, DoubtKind.CLAMP_QUIET)


@dataclass(frozen=True, slots=True)
class _At:
    """One speed: its current, beside what it may draw."""

    step: Step
    current: Budget
    max_a: float
    over: bool

    @property
    def words(self) -> str:
        value = with_uncertainty(self.current.value, self.current.expanded, "A")
        return f"speed {self.step.speed} draws {value} (at most {self.max_a:g} A)"


def drag_finding(judged: Judged) -> Finding | None:
    """Give the finding of drag over all steps; None where they do not show it.

    Parameters
    ----------
    judged : Judged
        Steps with their budgets.
    """
    if any(doubt.kind in _METER for doubt in judged.doubts):
        return None
    known = _worst_by_speed(judged)
    over = [one for one in known if one.over]
    close = [one for one in known if not one.over and one.current.value >= CLOSE * one.max_a]
    if not over or len(over) + len(close) < 2:
        return None
    if all(_stands(one, judged.limits) for one in over):
        return None  # a held rotor, told as such
    high = [one for one in over if _more_voltage(one.step, judged.limits)]
    words = (
        f"{'; '.join(one.words for one in (*over, *close))}: consistent with drag (bearing, wheel)"
    )
    words += _stalled(known, judged.limits)
    sure = len(over) > 1 and not high
    if high:
        words += "; but the voltage at the motor was high as well, which raises the current"
    elif not all(one.step.voltage for one in over):
        words += "; the voltage across the motor would tell it from a high supply"
        sure = False
    worst = max(over, key=lambda one: one.current.value / one.max_a)
    return Finding(
        kind=FindingKind.DRAG,
        verdict=Verdict.FAIL if sure else Verdict.CANT_TELL,
        start_ns=min(one.step.start_ns for one in over),
        end_ns=max(one.step.end_ns for one in over),
        edge_ns=max(step_edge_ns(one.step, judged.limits) for one in over),
        value=worst.current.value,
        unit="A",
        expanded_uncertainty=worst.current.expanded if worst.current.sources else None,
        limit=worst.max_a,
        speed=worst.step.speed,
        statement=f"Too much current at more than one speed: {words}.",
        coverage_factor=worst.current.coverage if worst.current.sources else None,
    )


def _worst_by_speed(judged: Judged) -> list[_At]:
    """Give for each speed the step that comes the closest to its limit, or passes it the most."""
    found: dict[int, _At] = {}
    maker = maker_of(judged)
    taken_back = TakenBack(judged.instruments, judged.doubts, judged.limits)
    own = {
        (one.start_ns, one.speed): one.verdict
        for one in judged.findings
        if one.kind is FindingKind.STEP_CURRENT
    }
    for step in judged.steps:
        max_a = judged.limits.at(step.speed).max_a
        if not step.speed or max_a is None or max_a <= 0.0 or step.current is None:
            continue
        if step.steady_n < FEWEST or step.end_ns - step.start_ns < LEAST_NS:
            continue
        if _doubted(step, judged.doubts) or taken_back.of_step(step) or several_levels(step):
            continue
        # What a step is not failed for, it is no sign of drag either.
        usual = maker.usual_more(step.current.value, at_rest=False)
        told, _ = cautious(step.current, (None, max_a), judged.limits, usual)
        fails = own.get((step.start_ns, step.speed), Verdict.FAIL) is Verdict.FAIL
        over = fails and told.verdict is Verdict.FAIL and told.limit == max_a
        one = _At(step, step.current, max_a, over)
        before = found.get(step.speed)
        if before is None or one.current.value > before.current.value:
            found[step.speed] = one
    return [found[speed] for speed in sorted(found)]


def _doubted(step: Step, doubts: tuple[Doubt, ...]) -> bool:
    """Tell whether the current's meter is to be doubted in a step."""
    return any(one.kind is DoubtKind.BATTERY and one.start_ns < step.end_ns for one in doubts)


def _more_voltage(step: Step, limits: Limits) -> bool:
    """Tell whether more voltage than usual was across the motor; only on high there is a usual."""
    highest = step.speed == max(limits.speeds, default=0)
    volts = step.voltage
    return highest and volts is not None and volts.value > MORE_V * limits.compared_at_v


def _ohm(one: _At, limits: Limits) -> float | None:
    volts = one.step.voltage
    return None if volts is None else standing_ohm(volts.value, one.current.value, limits)


def _stands(one: _At, limits: Limits) -> bool:
    ohm = _ohm(one, limits)
    return ohm is not None and ohm <= held_scale_ohm(limits)


def _stalled(known: list[_At], limits: Limits) -> str:
    """Say of a motor that stands on a low speed and turns on a higher one."""
    stands = [one for one in known if _stands(one, limits)]
    # Beyond a clamp's range more may flow than was read, and less voltage by it.
    surely = [one for one in known if PAST_READING not in one.current.lacking]
    turns = [one for one in surely if (_ohm(one, limits) or 0.0) > TURNS * held_scale_ohm(limits)]
    if not stands or not turns:
        return ""
    return (
        f"; at speed {stands[0].step.speed} the motor stands, at speed {turns[-1].step.speed} it"
        f" turns: drag that stalls it on low, not a rotor held for good"
    )
