"""Budgets: what the uncertainty of a value is made of, and what it means beside a limit."""

from meterlog.analysis.budgets.combining import budget, combine
from meterlog.analysis.budgets.conformity import Conformity, conformity

__all__ = ["Conformity", "budget", "combine", "conformity"]
