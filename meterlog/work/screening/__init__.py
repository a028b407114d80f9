"""Screening: many recordings reviewed into one table, and what good motors of a kind draw."""

from meterlog.work.baseline_tables import usual_screening
from meterlog.work.screening.against import AgainstRequest, compare_with_baselines, hold_folder
from meterlog.work.screening.baselines import Baseline, baselines_of
from meterlog.work.screening.good_runs import RULE
from meterlog.work.screening.held import BesideGood, Held, with_few_named
from meterlog.work.screening.offered import baselines_for
from meterlog.work.screening.screening import Screened, ScreenRequest, screen
from meterlog.work.screening.usuals import Usuals
from meterlog.work.screening.workers import Workers, packages_missing

__all__ = [
    "RULE",
    "AgainstRequest",
    "Baseline",
    "BesideGood",
    "Held",
    "ScreenRequest",
    "Screened",
    "Usuals",
    "Workers",
    "baselines_for",
    "baselines_of",
    "compare_with_baselines",
    "hold_folder",
    "packages_missing",
    "screen",
    "usual_screening",
    "with_few_named",
]
