"""MarksOff: currents outside their limits that are those of other speeds than were marked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise, permutations

from meterlog.analysis.motor.points import several_levels
from meterlog.analysis.verdict.case import Case
from meterlog.model import Finding, FindingKind, Limits, Role, Verdict

_LEAST = 2
"""One current that another speed should draw may be by chance, as the ranges cover much."""
_MOST = 6
"""Of more speeds every order is too much to try; a shift by one is tried of any number."""


def as_other_speeds(case: Case) -> str:
    """Say that the speeds may have been marked wrong; empty where that would not explain it.

    It does where each current outside its limits lies within those of another speed, and these
    are the marked ones shifted by one or exchanged among each other: a hand that is one off, or
    that marked a knob turned the other way. A motor or a supply that is bad by chance as much at
    each speed looks the same, and only the controller's own request tells them apart.

    Source
    ------
    Common practice, no source.
    """
    if case.has(Role.COMMAND):
        return ""
    drawn = _outside(case)
    if len(drawn) < _LEAST:
        return ""
    fits = {speed: _fitting(case.judged.limits, amps) for speed, amps in drawn.items()}
    taken_for = _shifted(fits, sorted(case.judged.limits.speeds)) or _exchanged(fits)
    if not taken_for:
        return ""
    marked = ", ".join(str(one) for one in sorted(taken_for))
    meant = ", ".join(str(taken_for[one]) for one in sorted(taken_for))
    return (
        f"What was drawn at the speeds marked {marked} is what the speeds {meant} should draw:"
        f" wrong marks look the same. If they are wrong, correct them and judge again"
    )


def mark_alone(case: Case, findings: Sequence[Finding]) -> str:
    """Say how one mark that is wrong, late or forgotten would look the same; empty where not.

    So it does where one marked speed alone is outside its limits, or the current changed in the
    middle of each step that is. A current that fits no other speed is no matter of a mark.

    Parameters
    ----------
    case : Case
    findings : sequence of Finding
        That a cause rests on.

    Source
    ------
    Common practice, no source.
    """
    if case.has(Role.COMMAND):
        return ""
    speeds = {one.speed for one in findings if one.speed and one.verdict is Verdict.FAIL}
    mixed = {step.speed for step in case.review.steps if several_levels(step)}
    if speeds and speeds <= mixed:
        at = ", ".join(str(one) for one in sorted(filter(None, speeds)))
        return (
            f"The current changed in the middle of what is marked as speed {at}: a mark that is"
            f" late or was forgotten looks the same"
        )
    drawn = _outside(case)
    if len(drawn) != 1:
        return ""
    ((marked, amps),) = drawn.items()
    fits = sorted(_fitting(case.judged.limits, amps) - {marked})
    if not fits or speeds - {marked}:
        return ""
    return (
        f"It was seen at one marked speed alone, and what was drawn at speed {marked} is what speed"
        f" {fits[0]} should draw: a wrong mark looks the same"
    )


def _outside(case: Case) -> dict[int, tuple[float, ...]]:
    """Give the currents that are surely outside their limits, by the marked speed."""
    drawn: dict[int, tuple[float, ...]] = {}
    for one in case.review.findings:
        failed = one.kind is FindingKind.STEP_CURRENT and one.verdict is Verdict.FAIL
        if failed and one.speed and one.value is not None:
            drawn[one.speed] = (*drawn.get(one.speed, ()), abs(one.value))
    return drawn


def _fitting(limits: Limits, amps: tuple[float, ...]) -> set[int]:
    """Give the speeds within whose limits all of some currents lie."""
    return {
        speed
        for speed, one in limits.speeds.items()
        if one.min_a is not None
        and one.max_a is not None
        and all(one.min_a <= a <= one.max_a for a in amps)
    }


def _shifted(fits: Mapping[int, set[int]], order: list[int]) -> dict[int, int]:
    pairs = list(pairwise(order))
    for next_to in (dict(pairs), {above: below for below, above in pairs}):
        if all(next_to.get(speed) in fitting for speed, fitting in fits.items()):
            return {speed: next_to[speed] for speed in fits}
    return {}


def _exchanged(fits: Mapping[int, set[int]]) -> dict[int, int]:
    if len(fits) > _MOST:
        return {}
    for others in permutations(fits):
        pairs = dict(zip(fits, others, strict=True))
        if all(other != one and other in fits[one] for one, other in pairs.items()):
            return pairs
    return {}
