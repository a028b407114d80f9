"""Start-ups: the current of each start, and what the fuse makes of it."""

from meterlog.analysis.startup.fuse_check import fuse_check
from meterlog.analysis.startup.peak_words import peak_words, why_low
from meterlog.analysis.startup.start_watch import StartWatch
from meterlog.analysis.startup.time_above import Exceedance, Exceedances, TimeAbove

__all__ = [
    "Exceedance",
    "Exceedances",
    "StartWatch",
    "TimeAbove",
    "fuse_check",
    "peak_words",
    "why_low",
]
