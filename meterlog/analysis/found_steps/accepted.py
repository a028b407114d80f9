"""Accepted: proposals taken as if somebody had recorded them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.found_steps.found_step import FoundStep
from meterlog.model import Event, EventKind, Limits


def accepted_events(found: Sequence[FoundStep]) -> tuple[Event, ...]:
    """Give the speed events to feed before a second review.

    Parameters
    ----------
    found : sequence of FoundStep
        In time order.

    Returns
    -------
    tuple of Event
        One at the recording's zero for the speed before the first change, then one for each
        change; none of nothing. :func:`accepted_note` must go with what is made of them.
    """
    if not found:
        return ()
    first = Event(0, EventKind.SPEED, str(found[0].speed_before))
    return (first, *(Event(one.t_ns, EventKind.SPEED, str(one.speed)) for one in found))


def accepted_limits(found: Sequence[FoundStep], limits: Limits) -> Limits:
    """Give the limits for a review by accepted proposals.

    Parameters
    ----------
    found : sequence of FoundStep
    limits : Limits

    Returns
    -------
    Limits
        Without those of single speeds where they know another number of speeds than levels were
        seen: a rank may then be another speed's, and a sound motor would be failed by its limits.
    """
    return limits if _levels(found) == _known(limits) else replace(limits, speeds={})


def accepted_note(found: Sequence[FoundStep], limits: Limits) -> str:
    """Give the sentences that say what was taken for a command; empty of nothing.

    Parameters
    ----------
    found : sequence of FoundStep
    limits : Limits
        Those of the recording, :func:`accepted_limits` not yet asked.
    """
    if not found:
        return ""
    told = (
        f"No commanded speed was recorded: {len(found)} speed change(s) were found in the current"
        " and accepted as commands, labelled by order of current (1 the weakest seen, 0 off)."
        " Whether the fan was really asked for these speeds nobody has recorded; a change of the"
        " supply, such as the engine's start, can look like one of speed."
    )
    seen, known = _levels(found), _known(limits)
    if known and seen != known:
        told += (
            f" {seen} level(s) were seen where the limits know {known} speeds: a label may be"
            " another speed's, so that the limits of single speeds were not applied."
        )
    return told


def _levels(found: Sequence[FoundStep]) -> int:
    """Count the running levels that were seen."""
    labels = {one.speed for one in found} | {one.speed_before for one in found}
    return len(labels - {0})


def _known(limits: Limits) -> int:
    return sum(speed > 0 for speed in limits.speeds)
