"""Amendment: an edit on top of a recording, which itself is never touched."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from meterlog.model.told_seconds import told_seconds


class AmendmentKind(Enum):
    """What was edited."""

    STEP = "step"
    """A speed step was given another label: ``old`` and ``new`` are speeds."""
    MARKER = "marker"
    """A mark was moved: ``old`` and ``new`` are times in seconds since the recording's zero."""
    WITHDRAWN = "withdrawn"
    """A mark was taken back, so that it counts for nothing, or put back: ``old`` and ``new`` are
    its time in seconds since the recording's zero, empty where it counts for nothing."""
    LIMIT = "limit"
    """A limit was changed: ``old`` and ``new`` are its values."""


@dataclass(frozen=True, slots=True)
class Amendment:
    """One edit.

    Attributes
    ----------
    kind : AmendmentKind
    subject : str
        What was edited: of a marker, moved or withdrawn, its kind (``tap``, ``speed``, ...), of a
        limit its key as in a limits file, such as ``speed.2.max_a``, which ends in its unit;
        empty for a step.
    t_ns : int or None
        Time, in nanoseconds since the recording's zero, of the step's beginning or the mark as it
        was recorded, also where it was moved since; None for a limit.
    old, new : str
        As it was before this edit, as it is after it; empty: none.
    who, why : str
        Who did it, and for which reason.
    made_utc : str
        RFC 3339.
    """

    kind: AmendmentKind
    subject: str
    t_ns: int | None
    old: str
    new: str
    who: str
    why: str
    made_utc: str = ""


def _withdrawn(amendment: Amendment) -> str:
    if amendment.new:
        return f"at {told_seconds(amendment.new)} s was put back"
    return f"at {told_seconds(amendment.old)} s was withdrawn and counts for nothing"


def amendment_words(amendment: Amendment) -> str:
    """Say an edit in one sentence.

    Parameters
    ----------
    amendment : Amendment

    Returns
    -------
    str
        When, who, what, old and new, and why.
    """
    at = "" if amendment.t_ns is None else f" at {amendment.t_ns / 1e9:.3f} s"
    old, new = amendment.old or "nothing", amendment.new or "nothing"
    left, put = told_seconds(old, new), told_seconds(new, old)
    what = {
        AmendmentKind.WITHDRAWN: f"the mark {amendment.subject!r} {_withdrawn(amendment)}",
        AmendmentKind.STEP: f"the step{at} was relabelled from {old} to {new}",
        AmendmentKind.MARKER: f"the mark {amendment.subject!r} was moved from {left} s to {put} s",
        AmendmentKind.LIMIT: f"the limit {amendment.subject!r} was changed from {old} to {new}",
    }[amendment.kind]
    why = " ".join(amendment.why.split()).rstrip(".")
    return f"{amendment.made_utc}, {amendment.who}: {what}. Reason: {why}."
