"""Good ones: by which table of baselines the window says what is usual, and how it says it."""

from meterlog.window.good_ones.beside_words import (
    beside_lines,
    caution_lines,
    from_words,
    usual_told,
)
from meterlog.window.good_ones.finding import FoundTables, find_tables
from meterlog.window.good_ones.kept_choice import KeptChoice

__all__ = [
    "FoundTables",
    "KeptChoice",
    "beside_lines",
    "caution_lines",
    "find_tables",
    "from_words",
    "usual_told",
]
