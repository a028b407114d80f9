"""ToldSteps: the verdicts per step, made again only where something has changed."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.budgets import BudgetMaker
from meterlog.analysis.step_findings import StepFindingMaker
from meterlog.analysis.taken_back import TakenBack
from meterlog.model import Finding, MotorFit, Step


@dataclass(frozen=True, slots=True)
class _Asked:
    """All that a verdict is made from."""

    step: Step
    within: tuple[Finding, ...]
    doubted: str
    fit: MotorFit | None
    version: int


class ToldSteps:
    """Makes the findings of steps; a live review asks for the same ones again and again.

    Parameters
    ----------
    maker : StepFindingMaker
    budgets : BudgetMaker
        The maker's: what it learns makes all verdicts out of date.
    """

    def __init__(self, maker: StepFindingMaker, budgets: BudgetMaker) -> None:
        self._maker = maker
        self._budgets = budgets
        self._told: dict[int, tuple[_Asked, Finding | None]] = {}

    def of_steps(
        self,
        steps: Sequence[Step],
        faults: Sequence[Finding],
        taken_back: TakenBack,
        fit: MotorFit | None,
    ) -> list[Finding | None]:
        """Give the verdict of each step; None where nothing is allowed for.

        Parameters
        ----------
        steps : sequence of Step
            With their budgets.
        faults : sequence of Finding
            Of the spans, by the time they begin.
        taken_back : TakenBack
        fit : MotorFit or None
        """
        begins = [fault.start_ns for fault in faults]
        version = self._budgets.version
        told = []
        for place, step in enumerate(steps):
            first, last = bisect_left(begins, step.start_ns), bisect_left(begins, step.end_ns)
            within = tuple(faults[first:last])
            asked = _Asked(step, within, taken_back.of_step(step), fit, version)
            known = self._told.get(place)
            if known is None or known[0] != asked:
                known = asked, self._maker.of_step(step, within, asked.doubted, fit)
                self._told[place] = known
            told.append(known[1])
        return told
