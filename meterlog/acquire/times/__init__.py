"""Times: when each reading was taken, how sure that is, and what the times show to be missing."""

from meterlog.acquire.times.stamping import Stamped, Stamper, sending
from meterlog.acquire.times.time_uncertainty import time_uncertainty_s
from meterlog.acquire.times.timing_report import TimingReport

__all__ = [
    "Stamped",
    "Stamper",
    "TimingReport",
    "sending",
    "time_uncertainty_s",
]
