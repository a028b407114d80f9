"""BriefReturn: a current that came back within what counts as one time without it."""

from __future__ import annotations

from meterlog.analysis.levels import BIN_NS
from meterlog.analysis.taps.seen import Seen

FLOWS = 0.5
"""From this part of the base line on a tenth of a second was one with current."""


def broken(seen: Seen) -> list[bool]:
    """Tell of each tried attempt whether the current it met was gone without a break.

    What is shorter than the limits' ``min_dwell_s`` is bridged when spans are made: with a long one
    a current that came back, and upon which the hand was on the key, leaves no span of its own.

    Returns
    -------
    list of bool
        True where current flowed in between. Tenths of a second at either end are left out: they
        hold readings from before and after.
    """
    told = []
    for attempt in seen.tried:
        gone = attempt.gone
        base_a = seen.base_a(attempt.times_ns[0], attempt.taps[0].speed)
        if gone is None or base_a is None:
            told.append(False)
            continue
        first_ns = gone.start_ns + 2 * BIN_NS
        last_ns = gone.end_ns - gone.edge_ns - 2 * BIN_NS
        part = seen.levels.within(first_ns, last_ns) if last_ns > first_ns else None
        told.append(part is not None and bool((abs(part.amps) >= FLOWS * base_a).any()))
    return told


def broken_words(seen: Seen) -> str:
    """Say how many times without current were none throughout; empty where all were."""
    count = sum(broken(seen))
    if not count:
        return ""
    return (
        f"; in {count} of these times without current it came back in between, for less than the"
        f" {seen.judged.limits.min_dwell_s:g} s that count (min_dwell_s): can't tell whether it was"
        f" gone at the tap"
    )
