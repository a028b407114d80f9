"""VisibilityText: how short a loss of current these readings would have shown, in words."""

from __future__ import annotations

from meterlog.model import Review


def visibility_words(review: Review) -> list[str]:
    """Give a sentence each: from which length on none is missed, and the chance to catch others."""
    told = []
    shortest = review.shortest_visible_dropout_s
    if shortest is not None:
        told.append(
            f"A loss of current of {shortest:.4g} s or more can't have been missed while readings"
            " came."
        )
    if review.catch_chances:
        chances = (f"{one.duration_s:g} s {one.chance:.0%}" for one in review.catch_chances)
        told.append(f"The chance to catch one of a given length: {', '.join(chances)}.")
    return told
