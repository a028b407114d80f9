"""Good runs: which recordings may stand for their part number in a baseline."""

from __future__ import annotations

from meterlog.model import Conditions, DoubtKind, Outcome, Review, Role
from meterlog.work.drawn import conditions_unlike

RULE = (
    "A baseline is made of sealed recordings that are as they were sealed, whole and without edits,"
    " read by meters (none imported or typed), judged in order with no doubt about a meter (speeds"
    " at which a clamp was beyond its range are left out), in the vehicle with housing closed and a"
    " filter in it as far as that was stated, at commanded speeds with the motor voltage and all"
    " uncertainties known. Each motor counts once, with its newest such run. Measured and simulated"
    " ones are never in one baseline."
)
"""The rule in words."""


def not_good(
    *, state: str, damaged: bool, mark: str, edits: int, review: Review, conditions: Conditions
) -> str:
    """Give why a run stands in no baseline; empty where it may.

    Parameters
    ----------
    state : str
        ``sealed`` is wanted.
    damaged : bool
        Something of it could not be read.
    mark : str
        Where the readings come from, where no meter sent them from a vehicle.
    edits : int
        On top of it.
    review : Review
    conditions : Conditions
        As stated.
    """
    reasons = (
        (state != "sealed", f"it is {state}"),
        (damaged, "it is not whole"),
        (mark not in {"", "SIMULATED"}, f"it is {mark.lower()}"),
        (edits > 0, "it has edits on top"),
        (
            review.verdict is None or review.verdict.outcome is not Outcome.IN_ORDER,
            "it was not judged in order",
        ),
        (
            # Speeds at which a clamp was full are left out by themselves.
            any(
                one.kind is not DoubtKind.PAST_RANGE or one.role is not Role.MOTOR_CURRENT
                for one in review.doubts
            ),
            "a meter is to be doubted",
        ),
    )
    unlike = conditions_unlike(conditions)
    return next((words for holds, words in reasons if holds), unlike)
