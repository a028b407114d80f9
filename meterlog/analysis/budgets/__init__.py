"""Budgets: what the uncertainty of a value is made of, and what it means beside a limit."""

from meterlog.analysis.budgets.combining import budget, combine
from meterlog.analysis.budgets.conformity import Conformity, conformity, rule_words
from meterlog.analysis.budgets.maker import BudgetMaker
from meterlog.analysis.budgets.scatter import Scatter
from meterlog.analysis.budgets.simultaneous import simultaneous

__all__ = [
    "BudgetMaker",
    "Conformity",
    "Scatter",
    "budget",
    "combine",
    "conformity",
    "rule_words",
    "simultaneous",
]
