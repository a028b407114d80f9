"""VisibilityText: how short a loss of current these readings would have shown, in words."""

from __future__ import annotations

from meterlog.model import Review

_LEAST = 0.01


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
        chances = (f"{one.duration_s:g} s {_percent(one.chance)}" for one in review.catch_chances)
        shorter = "shorter one" if shortest is not None else "one"
        told.append(f"The estimated chance to catch a {shorter}, by length: {', '.join(chances)}.")
    return told


def _percent(chance: float) -> str:
    """Write a chance: only what is certain is 100 %, only what can't be is 0 %."""
    if 0.0 < chance < _LEAST:
        return f"less than {_LEAST:.0%}"
    return f"more than {1.0 - _LEAST:.0%}" if 1.0 - _LEAST < chance < 1.0 else f"{chance:.0%}"
