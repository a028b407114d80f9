"""Ask: what a comparison shall tell."""

from __future__ import annotations

from dataclasses import dataclass, field

from meterlog.model import Limits


@dataclass(frozen=True, slots=True)
class Ask:
    """What was asked for.

    Attributes
    ----------
    limits : Limits
        For the decision rule and the reference voltage.
    baseline : bool
        The old ones are good motors that stand for their kind.
    by_current : bool
        Speeds are paired by order of current instead of by command.
    max_difference_percent : float or None
        The largest difference allowed of the new one; None: only whether they differ is told.
    """

    limits: Limits = field(default_factory=Limits)
    baseline: bool = False
    by_current: bool = False
    max_difference_percent: float | None = None
