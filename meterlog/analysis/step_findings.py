"""StepFindings: the verdict on what the motor draws at one speed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.budgets import BudgetMaker, Conformity, budget
from meterlog.analysis.budgets.usual_error import cautious, usual_words
from meterlog.analysis.motor import judged_current
from meterlog.analysis.motor.points import several_levels
from meterlog.analysis.past_range import floor_words
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.step_edges import step_edge_ns
from meterlog.model import (
    Budget,
    Finding,
    FindingKind,
    Limits,
    MotorFit,
    SpeedLimits,
    Step,
    Verdict,
)

_UNTOLD = Conformity(Verdict.CANT_TELL, None, None)


@dataclass(frozen=True, slots=True)
class _Figures:
    """What a finding about a step gives as its value."""

    value: float | None = None
    expanded: float | None = None
    coverage: float | None = None


def _leaves(finding: Finding, step: Step) -> bool:
    """Tell whether ``finding`` says that ``step`` left its limits for a while."""
    beyond = finding.kind in (FindingKind.OVER, FindingKind.UNDER, FindingKind.LOCKED)
    inside = step.start_ns <= finding.start_ns < step.end_ns
    return beyond and inside and finding.verdict is Verdict.FAIL


def _passed(worst: Finding, allowed: SpeedLimits) -> float | None:
    """Give the limit of the speed that was passed.

    A held rotor begins at a current of its own, which is not what the speed is allowed.
    """
    if worst.kind is not FindingKind.LOCKED or allowed.max_a is None:
        return worst.limit
    return allowed.max_a if abs(worst.value or 0.0) > allowed.max_a else worst.limit


def _is_surely_beyond(figures: _Figures, limit: float | None, other: float) -> bool:
    """Tell whether a value passed a limit as another did, and by more than its uncertainty.

    A mean of several levels passes none: it is no current that flowed.
    """
    value = abs(figures.value or 0.0)
    if limit is None or (value > limit) != (other > limit):
        return False
    return abs(value - limit) > (figures.expanded or 0.0)


def _bounds(allowed: SpeedLimits) -> str:
    if allowed.min_a is None:
        return f"allowed up to {allowed.max_a:g} A"
    if allowed.max_a is None:
        return f"allowed {allowed.min_a:g} A or more"
    return f"allowed {allowed.min_a:g} to {allowed.max_a:g} A"


class StepFindingMaker:
    """Makes the findings of steps.

    Parameters
    ----------
    limits : Limits
    budgets : BudgetMaker
        May learn more meanwhile.
    """

    def __init__(self, limits: Limits, budgets: BudgetMaker) -> None:
        self._limits = limits
        self._budgets = budgets

    def of_step(
        self,
        step: Step,
        outside: Sequence[Finding],
        doubted: str = "",
        fit: MotorFit | None = None,
    ) -> Finding | None:
        """Give the verdict on what the motor draws at one speed; None where nothing is allowed for.

        Parameters
        ----------
        step : Step
            With its budgets.
        outside : sequence of Finding
            Of the whole recording; those in which this step left its limits for a while fail it
            whatever its mean.
        doubted : str
            Why what the meters say proves nothing here; empty where it does.
        fit : MotorFit or None
            Of the same recording: by it the current is brought to the reference voltage, where the
            limits hold there. None: by the usual exponent.
        """
        allowed = self._limits.at(step.speed)
        if not step.speed or not step.n or (allowed.min_a is None and allowed.max_a is None):
            return None
        bounds = _bounds(allowed)
        if step.mean_a is None:
            words = f"Speed {step.speed}: the current was not read ({bounds})."
            return self._finding(step, _UNTOLD, _Figures(), words)
        if step.steady_mean_a is None or step.steady_n < 2:
            words = (
                f"Speed {step.speed}: nothing to judge; start-up, missing current and the change"
                f" to the next speed leave no steady running ({bounds})."
            )
            return self._finding(step, _UNTOLD, _Figures(), words)
        own = _Figures(step.steady_mean_a, step.steady_expanded_a, step.steady_coverage)
        size = with_uncertainty(abs(step.steady_mean_a), own.expanded, "A") + self._budgets.lacking
        size += "" if doubted else floor_words(step.current)
        draws = f"Speed {step.speed} draws {size} when running; {bounds}"
        if doubted:
            return self._finding(step, _UNTOLD, own, f"{draws}: can't tell, as {doubted}.")
        left = [f for f in outside if _leaves(f, step)]
        if left:
            return self._by_stretches(step, left, own, draws)
        return self._by_mean(step, own, draws, fit)

    def _by_stretches(
        self, step: Step, left: Sequence[Finding], own: _Figures, draws: str
    ) -> Finding:
        """Fail a step for the stretches in which it left its limits.

        Its value is the steady mean that the statement gives, where that with its uncertainty is
        outside as well; else the value of the longest stretch, which the statement then gives too.
        """
        worst = max(left, key=lambda f: f.end_ns - f.start_ns)
        apart_s = sum(f.end_ns - f.start_ns for f in left) / 1e9
        allowed = self._limits.at(step.speed)
        judged = Conformity(Verdict.FAIL, worst.probability, _passed(worst, allowed))
        words = f"{draws}: fail, outside for {apart_s:.3f} s"
        if _is_surely_beyond(own, judged.limit, abs(worst.value or 0.0)):
            return self._finding(step, judged, own, f"{words}.")
        theirs = _Figures(worst.value, worst.expanded_uncertainty, worst.coverage_factor)
        size = with_uncertainty(abs(worst.value or 0.0), worst.expanded_uncertainty, "A")
        if several_levels(step):  # a mean of them is no current that flowed
            words = (
                f"Speed {step.speed} draws no steady current when running; {_bounds(allowed)}:"
                f" fail, outside for {apart_s:.3f} s"
            )
        return self._finding(step, judged, theirs, f"{words}, with {size}.")

    def _by_mean(self, step: Step, own: _Figures, draws: str, fit: MotorFit | None) -> Finding:
        """Give the verdict on the steady current, at the reference voltage if that is asked for."""
        value, brought = judged_current(step, fit, self._limits)
        if value is None:
            value = budget("motor current", abs(own.value or 0.0), "A", ())
        judged, turned = self._judge(step, value)
        if not brought:
            return self._finding(step, judged, own, f"{draws}: {judged.verdict}{turned}.")
        theirs = _Figures(value.value, value.expanded, value.coverage) if value.sources else own
        at = with_uncertainty(value.value, theirs.expanded, "A")
        words = f"{draws}; {at} {brought}: {judged.verdict}{turned}."
        return self._finding(step, judged, theirs, words)

    def _judge(self, step: Step, value: Budget) -> tuple[Conformity, str]:
        allowed = self._limits.at(step.speed)
        usual = self._budgets.usual_more(value.value, at_rest=False)
        judged, turned = cautious(value, (allowed.min_a, allowed.max_a), self._limits, usual)
        return judged, usual_words(self._budgets.current, usual) if turned else ""

    def _finding(self, step: Step, judged: Conformity, figures: _Figures, words: str) -> Finding:
        return Finding(
            kind=FindingKind.STEP_CURRENT,
            verdict=judged.verdict,
            start_ns=step.start_ns,
            end_ns=step.end_ns,
            edge_ns=step_edge_ns(step, self._limits),
            value=figures.value,
            unit="A",
            expanded_uncertainty=figures.expanded,
            limit=judged.limit,
            speed=step.speed,
            statement=words,
            coverage_factor=figures.coverage,
            probability=judged.probability,
        )
