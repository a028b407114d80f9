"""OffBy: by how much a current may be off, as a clause that says why nothing is told from it."""

from __future__ import annotations

_TEN = "the current may be off by a factor of ten"
_HUNDRED = "the current may be off by a factor of a hundred"
_THOUSAND = "the current may be off by a factor of a thousand"


def off_words(factor: float) -> str:
    """Give the clause.

    Parameters
    ----------
    factor : float
        By which the readings may have to be multiplied: a tenth, ten, a hundredth or a thousandth;
        anything else is told as ten.
    """
    return {100: _HUNDRED, 1000: _THOUSAND}.get(round(max(factor, 1.0 / factor)), _TEN)
