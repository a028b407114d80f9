"""maker_of: a BudgetMaker that has seen all that a whole recording tells of its meters."""

from __future__ import annotations

from meterlog.analysis.budgets.maker import BudgetMaker
from meterlog.analysis.judged import Judged


def maker_of(judged: Judged) -> BudgetMaker:
    """Give a maker of budgets with the ranges, zeros and times of a recording.

    Parameters
    ----------
    judged : Judged
        For instruments, conditions and events.
    """
    maker = BudgetMaker(judged.instruments, judged.conditions)
    for event in judged.events:
        maker.take(event)
    return maker
