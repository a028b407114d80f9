"""LostStretches: from when to when rows of a recording that went on elsewhere are in no part."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path

from meterlog.recording import Recording
from meterlog.recording.continuation import kept_continuation

Stretch = tuple[int, int]
"""Times of the last row before and of the first row after it, nanoseconds."""


def lost_stretches(parts: Sequence[Path], key: str) -> tuple[Stretch, ...]:
    """Give the gaps in one instrument's rows, between the parts and within them.

    Parameters
    ----------
    parts : sequence of Path
        Oldest first, as :func:`meterlog.recording.join_parts` names them.
    key : str
        Of the instrument.

    Returns
    -------
    tuple of (int, int), nanoseconds since the recording's zero
        A gap at the beginning goes from 0. What is lost at the very end has no row behind it, and
        is not among them.

    Raises
    ------
    RecordingUnreadable
        If a part can't be read.
    """
    begun = [kept_continuation(part) for part in parts]
    starts = [0 if one is None else one.rows.get(key, 0) for one in begun]
    found: list[Stretch] = []
    expected = last_ns = 0
    for part, (start, end) in zip(parts, pairwise([*starts, None]), strict=True):
        for first, block in Recording.open(part).numbered(key):
            number = (start or 0) + first
            if end is not None and number >= end:
                break
            if number > expected:
                found.append((last_ns, int(block.t_ns[0])))
            count = len(block) if end is None else min(len(block), end - number)
            expected, last_ns = number + count, int(block.t_ns[count - 1])
    return tuple(found)


def lost_words(stretches: Sequence[Stretch]) -> str:
    """Say from when to when, and how long each was; empty without one."""
    said = [
        f"from {start / 1e9:.3f} s to {end / 1e9:.3f} s ({(end - start) / 1e9:.3f} s)"
        for start, end in stretches
    ]
    most = 10
    more = f" and {len(said) - most} more" if len(said) > most else ""
    return ", ".join(said[:most]) + more
