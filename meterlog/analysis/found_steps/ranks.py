"""Ranks: labels for levels of current nobody named."""

from __future__ import annotations

from collections.abc import Sequence

SAME_LEVEL = 0.05
"""Levels that differ by less than this part of the larger are one speed: a fan's neighbouring
speeds lie further apart, and its current wanders as much as it warms up (common practice, no
source)."""


def propose(levels_a: Sequence[float], open_current_a: float = 0.3) -> tuple[int, ...]:
    """Give a label for each level: its rank by order of current.

    Parameters
    ----------
    levels_a : sequence of float, amperes
        Of the stretches of a recording, in any order.
    open_current_a : float, amperes
        Below this the fan is off.

    Returns
    -------
    tuple of int
        In the order given: 0 for off, then 1, 2, ... without holes. Equal levels share a label.
        A speed that was never run has none: label 2 is the second weakest that was seen.
    """
    labels = [0] * len(levels_a)
    rank, last = 0, 0.0
    for index in sorted(range(len(levels_a)), key=lambda i: levels_a[i]):
        level = levels_a[index]
        if level < open_current_a:
            continue
        if rank == 0 or level - last > SAME_LEVEL * level:
            rank += 1
        labels[index], last = rank, level
    return tuple(labels)
