"""Screening: many recordings reviewed into one table, and what good motors of a kind draw."""

from meterlog.work.screening.against import AgainstRequest, compare_with_baselines
from meterlog.work.screening.baselines import Baseline, baselines_of
from meterlog.work.screening.good_runs import RULE
from meterlog.work.screening.offered import baselines_for
from meterlog.work.screening.screening import (
    Screened,
    ScreenRequest,
    screen,
    usual_screening,
)
from meterlog.work.screening.workers import Workers, packages_missing

__all__ = [
    "RULE",
    "AgainstRequest",
    "Baseline",
    "ScreenRequest",
    "Screened",
    "Workers",
    "baselines_for",
    "baselines_of",
    "compare_with_baselines",
    "packages_missing",
    "screen",
    "usual_screening",
]
