"""Finding: a statement with a value, its uncertainty, a limit and a verdict."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Verdict(StrEnum):
    """The outcome of comparing a value with a limit."""

    PASS = "pass"  # noqa: S105 - a verdict, not a password
    FAIL = "fail"
    CANT_TELL = "can't tell"


class FindingKind(StrEnum):
    """What the finding is about. Span kinds keep their names."""

    DEAD = "dead"
    OVER = "over"
    UNDER = "under"
    LOCKED = "locked"
    FEED_LOST = "feed-lost"
    GROUND_LOST = "ground-lost"
    NO_CURRENT = "no-current"
    NO_DATA = "no-data"
    COMMAND_LOST = "command-lost"
    STEP_CURRENT = "step-current"
    RESISTIVE_FEED = "resistive-feed"
    RESISTIVE_GROUND = "resistive-ground"
    DRAG = "drag"
    DIP = "dip"
    MISSED_DROPOUT = "missed-dropout"
    FUSE_LOAD = "fuse-load"
    FUSE_OPENING = "fuse-opening"
    CONTROLLER_HEAT = "controller-heat"
    BARS = "bars"


@dataclass(frozen=True, slots=True)
class Finding:
    """One statement about a stretch of a recording.

    Attributes
    ----------
    kind : FindingKind
    verdict : Verdict
    start_ns, end_ns : int, nanoseconds since the recording's zero
    edge_ns : int, nanoseconds
        The larger of the two edges' uncertainties.
    value : float or None, in ``unit``
    unit : str
    expanded_uncertainty : float or None, in ``unit``
        For about 95 %; None when it can't be stated.
    limit : float or None, in ``unit``
        The limit that decided.
    speed : int or None
    statement : str
        The finding in one plain sentence.
    coverage_factor : float or None
        By which the expanded uncertainty was made: 2, and more where readings are few.
    probability : float or None
        That the true value is within the limit (probability of conformity, JCGM 106:2012, 7);
        None where no uncertainty is known.
    """

    kind: FindingKind
    verdict: Verdict
    start_ns: int
    end_ns: int
    edge_ns: int
    value: float | None
    unit: str
    expanded_uncertainty: float | None
    limit: float | None
    speed: int | None
    statement: str
    coverage_factor: float | None = None
    probability: float | None = None
