"""Opening: what a fuse's table says of the currents that were seen."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from meterlog.analysis.startup.time_above import Exceedances
from meterlog.model import OpeningMargin
from meterlog.model.opening_times import OpeningTable


def earliest_s(table: OpeningTable, percent: float) -> float:
    """Give the earliest a sound fuse may open at a constant current.

    Parameters
    ----------
    table : OpeningTable
    percent : float, percent of the rating

    Returns
    -------
    float, seconds
        Infinite below the table's lowest row, where it carries the current for ever.

    Source
    ------
    Between rows linear in the logarithms of both, as fuse makers draw their curves (common
    practice, no source): never linear in the times, which a curve that falls by a factor of a
    thousand would make far too long. Beyond the last row the time falls with the square of the
    current, as all heat stays in the element (constant I2t; from memory).
    """
    known = [(row.percent, row.after_s) for row in table.rows if row.after_s is not None]
    if percent < known[0][0]:
        return math.inf
    for (low, above_s), (high, below_s) in pairwise(known):
        if percent <= high:
            part = math.log(percent / low) / math.log(high / low)
            return math.exp((1.0 - part) * math.log(above_s) + part * math.log(below_s))
    last, last_s = known[-1]
    return last_s * (last / percent) ** 2


def margins(table: OpeningTable, seen: Exceedances) -> tuple[OpeningMargin, ...]:
    """Give each row of the table with the longest time at or above it."""
    told = []
    for row, one in zip(table.rows, seen.rows, strict=True):
        known = row.after_s is not None and one.longest_s > 0.0
        told.append(
            OpeningMargin(
                percent=row.percent,
                amps=one.amps,
                longest_s=one.longest_s,
                opens_after_s=row.after_s,
                opens_by_s=row.by_s,
                margin=row.after_s / one.longest_s if known and row.after_s is not None else None,
                least_s=one.least_s,
                most_s=one.most_s,
                basis=f"{row.mark}: {row.basis}",
            )
        )
    return tuple(told)


def must_have_opened(rows: Sequence[OpeningMargin]) -> OpeningMargin | None:
    """Give the row at which a sound fuse must have opened, whatever the meter's error; or None."""
    late = [row for row in rows if row.opens_by_s is not None and row.least_s > row.opens_by_s]
    return max(late, key=lambda row: row.least_s / (row.opens_by_s or 1.0), default=None)


def used_up(table: OpeningTable, seen: Exceedances, rating_a: float) -> float:
    """Give the part of a fuse's least endurance that the worst of what was seen takes.

    Parameters
    ----------
    table : OpeningTable
    seen : Exceedances
    rating_a : float, amperes

    Returns
    -------
    float
        Below 1 a sound fuse can't have opened by any unbroken stretch that was seen.

    Source
    ------
    Between one row and the next the fuse is given no longer than at the upper end of that, or at
    the highest current seen; the parts so taken are added (linear accumulation of damage, as after
    Miner; common practice, no source). Both err towards opening.
    """
    highest = 100.0 * seen.highest_a / rating_a
    used = 0.0
    for row, above in zip(seen.rows, [*seen.rows[1:], None], strict=True):
        if row.most_s > 0.0:
            worst = highest if above is None else min(above.percent, highest)
            used += row.most_s / earliest_s(table, max(worst, row.percent))
    return used
