"""Alike: what looks the same as a current that goes, and is no fault of the vehicle."""

from __future__ import annotations

from dataclasses import replace

from meterlog.analysis.pieces import FLOWING_KINDS
from meterlog.analysis.verdict.case import HINT_KINDS, Case
from meterlog.analysis.verdict.cause import Cause
from meterlog.model import FindingKind, Role, Sureness

_LOST = (FindingKind.FEED_LOST, FindingKind.GROUND_LOST)
_NEVER = (
    "No current was read at any time: a plug that is off, leads that are off or a clamp that is not"
    " on the wire look the same"
)
_OFF_AND_ON = (
    "It went once, and by itself: a fan that was switched off and on again without a mark looks the"
    " same"
)
_SWITCHED = (
    "It went once and did not come back before the recording ended: a fan that was switched off"
    " without a mark looks the same"
)


def unlike_proof(case: Case, cause: Cause) -> Cause:
    """Give a cause for a missing current, no surer than what looks the same allows.

    Where no current was ever read, nothing shows that it would be read. And nobody switches a fan
    off in the motor, but whoever does so takes the feed or the ground side away: unless the
    controller's request was read, it must go more than once to be told from that.

    Source
    ------
    Common practice, no source.
    """
    if not any(span.kind in FLOWING_KINDS for span in case.review.spans):
        return no_surer(cause, Sureness.LIKELY, _NEVER)
    gone = [one for one in cause.findings if one.kind not in HINT_KINDS]
    lost = [one for one in gone if one.kind in _LOST]
    if case.has(Role.COMMAND) or len(gone) != 1 or not lost:
        return cause
    if lost[0].end_ns >= case.review.spans[-1].end_ns:
        return no_surer(cause, Sureness.POSSIBLE, _SWITCHED)
    return no_surer(cause, Sureness.LIKELY, _OFF_AND_ON)


def no_surer(cause: Cause, most: Sureness, against: str) -> Cause:
    """Give a cause that is told as no surer than ``most``, and what speaks against it."""
    ranked = cause.ranked
    sureness = max(ranked.sureness, most, key=list(Sureness).index)
    return replace(
        cause, ranked=replace(ranked, sureness=sureness, against=(against, *ranked.against))
    )
