"""Library: recordings, circuit checks and jobs found again by words, date and verdict."""

from meterlog.work.library.figures import SpeedSeries, series_of
from meterlog.work.library.hit import Hit, Kind, Usual, Verdicts
from meterlog.work.library.library import Library, Refreshed
from meterlog.work.library.wanted import Wanted, wanted_date, wanted_verdict
from meterlog.work.library.watched import WatchedFolders

__all__ = [
    "Hit",
    "Kind",
    "Library",
    "Refreshed",
    "SpeedSeries",
    "Usual",
    "Verdicts",
    "Wanted",
    "WatchedFolders",
    "series_of",
    "wanted_date",
    "wanted_verdict",
]
