"""LateCurrent: at a start from rest the current may be read later than the voltage.

Of a row the channels are read one after the other, and a clamp, or the meter behind it, takes a
while to show a current. Until then full voltage stands across a motor that seems to draw nothing,
as across one that is open inside. A rotor at rest on a dead bar does not get off it by itself in so
short a time, and one that has begun to turn has drawn current before.
"""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.pieces import Piece
from meterlog.model import Limits, SpanKind

LATE_NS = 300_000_000
"""So late what clamps and hand-held meters show may be (common practice, no source)."""
_LATE_ROWS = 2
"""Or so many readings: one for the order of the channels, one for where between two it began."""
_WITHOUT_VOLTS = (
    SpanKind.OFF,
    SpanKind.FEED_LOST,
    SpanKind.GROUND_LOST,
    SpanKind.COMMAND_LOST,
)


def without_late_current(pieces: Sequence[Piece], limits: Limits) -> list[Piece]:
    """Take a moment without current for what was before, where the voltage came with it.

    Parameters
    ----------
    pieces : sequence of Piece
        Touching, settled, all without current; what follows has current, or nothing does yet.
    limits : Limits

    Returns
    -------
    list of Piece
        Shorter by one where the last of them was such a moment.
    """
    if len(pieces) < 2:
        return list(pieces)
    before, last = pieces[-2], pieces[-1]
    stood = before.last_v is not None and before.last_v >= limits.supply_present_v
    edge_ns = max(last.start_edge_ns, last.end_edge_ns)
    late = last.length_ns <= max(LATE_NS, _LATE_ROWS * edge_ns)
    if last.kind is not SpanKind.DEAD or before.kind not in _WITHOUT_VOLTS or stood or not late:
        return list(pieces)
    return [*pieces[:-2], before.until(last)]
