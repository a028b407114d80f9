"""Compare: one motor against another, or against several known to be good."""

from meterlog.analysis.compare.ask import Ask
from meterlog.analysis.compare.before_second import condition_warnings
from meterlog.analysis.compare.comparing import Paired, compare
from meterlog.analysis.compare.overlay_grid import OverlayGrid, bins_for, overlay
from meterlog.analysis.compare.side import Side, side_of
from meterlog.analysis.compare.summary import is_covered
from meterlog.analysis.compare.tolerance import howe_factor, tolerance_factor, tolerance_interval

__all__ = [
    "Ask",
    "OverlayGrid",
    "Paired",
    "Side",
    "bins_for",
    "compare",
    "condition_warnings",
    "howe_factor",
    "is_covered",
    "overlay",
    "side_of",
    "tolerance_factor",
    "tolerance_interval",
]
