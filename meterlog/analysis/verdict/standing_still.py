"""StandingStill: a current that does not move by a digit, as at the end of a range."""

from __future__ import annotations

from meterlog.analysis.verdict.case import Case
from meterlog.model import Role

_LEAST_N, _COUNTS = 100, 1000
"""So many readings of so many counts do not stand still to the last one: the commutator's ripple
and the battery move them (common practice, no source)."""
_DIGIT_UNKNOWN_A = 0.01
"""Taken for the last digit where nobody has stated it."""


def standing_still(case: Case) -> list[str]:
    """Say at which speed more current may have flowed than was read; empty at none."""
    for step in case.review.steps:
        amps = abs(step.steady_mean_a or 0.0)
        if (
            step.speed
            and step.steady_sd_a == 0.0
            and step.steady_n >= _LEAST_N
            and amps >= _COUNTS * _last_digit_a(case, amps)
        ):
            return [
                f"Can't tell whether more current flowed at speed {step.speed}: {step.steady_n:,}"
                f" readings stand at exactly {amps:.6g} A, as at the end of the range of the meter"
                f" or the clamp."
            ]
    return []


def _last_digit_a(case: Case, amps: float) -> float:
    for instrument in case.judged.instruments:
        column = instrument.column(Role.MOTOR_CURRENT)
        if column is not None:
            stated = instrument.channels[column].accuracy_at(amps)
            return (stated.resolution if stated else 0.0) or _DIGIT_UNKNOWN_A
    return _DIGIT_UNKNOWN_A
