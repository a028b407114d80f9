"""Coasting: the voltage of a motor that still turns after its circuit has opened.

It generates: some 9 V, then 5, then 3 within a second. Seen, it proves that the circuit opened
outside of the motor while it turned; that a feed falls at once under a turning motor does not fit.

Source: back electromotive force of a permanent-magnet motor, V = I R + Ke w with I = 0 (textbook);
that it is seen on the feed, common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import BIN_NS
from meterlog.analysis.side_volts import SideVolts
from meterlog.model import Role, Span, SpanKind

LOOK_NS = 5_000_000_000
LEAST_V = 1.0
"""A motor that generates less than this can't be told from a meter's noise and leakage."""
FALLS_BY = 0.7
"""It has decayed when it fell below this part of what it began with."""
GONE = 0.1
"""Decayed to this part, it is over."""
AT_ONCE_NS = 600_000_000
"""A fan takes longer than this to come to a stand."""
DRIVEN_V = 3.0
RAN_NS = 1_000_000_000


@dataclass(frozen=True, slots=True)
class Decay:
    """From so many volts to so many, within ``time_ns``."""

    from_v: float
    to_v: float
    time_ns: int

    def __str__(self) -> str:
        """Say it as the rest of a sentence."""
        return (
            f"the turning motor's own voltage fell from {self.from_v:.1f} V to {self.to_v:.1f} V"
            f" in {self.time_ns / 1e9:.1f} s"
        )


def across(
    side_volts: SideVolts, start_ns: int, end_ns: int
) -> tuple[NDArray[np.int64], NDArray[np.float64]] | None:
    """Give the voltage across the motor, tenth by tenth of a second.

    Returns
    -------
    tuple of ndarray, shape (n,) each; or None
        Times, and feed less return (the feed where there is no return). None without a feed.
    """
    feed = side_volts.series(Role.MOTOR_FEED, start_ns, end_ns)
    if feed is None:
        return None
    if not side_volts.has(Role.MOTOR_RETURN):
        return feed.t_ns, feed.mean
    back = side_volts.series(Role.MOTOR_RETURN, start_ns, end_ns)
    if back is None:
        return None
    _, mine, theirs = np.intersect1d(feed.bins, back.bins, return_indices=True)
    if not len(mine):
        return None
    return feed.t_ns[mine], feed.mean[mine] - back.mean[theirs]


def decay_in(side_volts: SideVolts, span: Span) -> Decay | None:
    """Give the decay of the motor's own voltage in a span without current; None without one."""
    start_ns = span.start_ns + span.start_edge_ns // 2
    found = across(side_volts, start_ns, min(span.end_ns, start_ns + LOOK_NS))
    if found is None or len(found[0]) < 2:
        return None
    t_ns, volts = found
    first = float(volts[0])
    over = np.flatnonzero(volts <= GONE * first)
    last = int(over[0]) if len(over) else int(np.argmin(volts))
    if first < LEAST_V or last < 1 or float(volts[last]) > FALLS_BY * first:
        return None
    if last == 1 and float(volts[1]) < GONE * first:
        return None  # a reading half-way, not a motor that slows
    return Decay(first, max(float(volts[last]), 0.0), int(t_ns[last] - t_ns[0]))


def fell_at_once(side_volts: SideVolts, span: Span, before: Span | None, gone_v: float) -> bool:
    """Tell whether the feed was gone at once although the motor must still have been turning.

    Parameters
    ----------
    side_volts : SideVolts
    span, before : Span
        The one without current, and the one before it.
    gone_v : float, volts
        At or below this the feed is gone.
    """
    ran = before is not None and before.kind in (SpanKind.RUNNING, SpanKind.OVER, SpanKind.UNDER)
    if before is None or not ran or before.duration_ns < RAN_NS:
        return False
    was = across(side_volts, span.start_ns - RAN_NS, span.start_ns - 2 * BIN_NS)
    if was is None or float(np.median(was[1])) < DRIVEN_V:
        return False
    start_ns = span.start_ns + span.start_edge_ns
    now = across(side_volts, start_ns, min(span.end_ns, start_ns + AT_ONCE_NS))
    return now is not None and float(now[1][0]) <= gone_v
