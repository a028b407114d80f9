"""ComparisonOpening: what must be known of compared recordings before anything that is found."""

from __future__ import annotations

from meterlog.model import Comparison

_MARKS = (": NOT WHOLE: ", ": ONE PART: ")


def not_whole(comparison: Comparison) -> tuple[str, ...]:
    """Give those of the notes that tell which recording is not whole, or is a part of a whole."""
    return tuple(note for note in comparison.notes if any(mark in note for mark in _MARKS))
