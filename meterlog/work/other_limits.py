"""OtherLimits: that a recording is judged by other limits than it was made with, and which."""

from __future__ import annotations

from meterlog.model import Limits
from meterlog.model.edit_notes import limits_note
from meterlog.work.amended_limits import limit_values

_MOST = 8
"""So many are named; whoever changed more has given a table of his own."""


def other_limits(own: Limits, used: Limits) -> str:
    """Say by which limits a recording was judged, where these are not its own.

    Parameters
    ----------
    own : Limits
        Those it was recorded with.
    used : Limits
        Those given for this judgement.

    Returns
    -------
    str
        A sentence or two; empty where every limit is the same, whatever they are called.
    """
    speeds = {*own.speeds, *used.speeds}
    before, now = limit_values(own, speeds), limit_values(used, speeds)
    changed = [key for key in now if now[key] != before[key]]
    if not changed:
        return ""
    named = "; ".join(
        f"{key} {before[key] or 'none'} -> {now[key] or 'none'}" for key in changed[:_MOST]
    )
    more = f"; and {len(changed) - _MOST} more" if len(changed) > _MOST else ""
    return limits_note(used.name, own.name, f"{named}{more}")
