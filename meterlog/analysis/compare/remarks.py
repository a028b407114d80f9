"""Remarks: what the reader of a comparison must know."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.compare.ask import Ask
from meterlog.analysis.compare.shared_errors import shared_meters
from meterlog.analysis.compare.side import Side
from meterlog.model import Role, Step, StepDifference, Verdict

_READ = (Role.MOTOR_CURRENT, Role.MOTOR_FEED, Role.MOTOR_RETURN)


def remarks(
    old: Sequence[Side], new: Side, found: Sequence[dict[int, Step]], ask: Ask
) -> list[str]:
    """Give the notes, one or two sentences each.

    Parameters
    ----------
    old : sequence of Side
    new : Side
    found : sequence of dict of int to Step
        The steps of each side, the new one's last.
    ask : Ask
    """
    sides = (*old, new)
    told = [_meters(old, new), *_speeds(sides, found), *_fits(sides)]
    if ask.by_current:
        told.append(
            "Speeds are paired by order of current, not by command: a motor that draws the current"
            " of another speed would be paired with that."
        )
    told += doubts_told(sides)
    for side in sides:
        if side.run.origin not in {"measured", "simulated"}:
            told.append(f"{side.run.name} is {side.run.origin}, not measured by this program.")
    return [one for one in told if one]


def by_chance(steps: Sequence[StepDifference], ask: Ask) -> list[str]:
    """Say that one of several speeds may differ by chance; nothing where more than one does.

    Source
    ------
    Of m independent comparisons of what is equal, each with a coverage of 95 %, at least one shows
    a difference with a chance of 1 - 0.95^m (Bonferroni's and Sidak's bound, from memory). Errors
    in common make it less.
    """
    if ask.baseline or ask.max_difference_percent is not None:
        return []
    judged = [one for one in steps if one.difference_a is not None]
    differ = [one for one in judged if one.verdict is Verdict.FAIL]
    if len(differ) != 1 or len(judged) < 2:
        return []
    chance = 100.0 * (1.0 - 0.95 ** len(judged))
    return [
        f"Of {len(judged)} speeds only speed {differ[0].speed} differs. Each is held against its"
        f" own uncertainty at about 95 %, so that of two equal motors one speed in"
        f" {len(judged)} differs by chance in up to {chance:.0f} % of comparisons: record both"
        f" again before it counts."
    ]


def doubts_told(sides: Sequence[Side]) -> list[str]:
    """Give what is to be doubted of the meters of each side."""
    return [f"{side.run.name}: {one.text}" for side in sides for one in side.review.doubts]


def _meters(old: Sequence[Side], new: Side) -> str:
    for side in old:
        shared = shared_meters(side.about, new.about, _READ)
        if shared:
            return (
                f"Measured with the same {', '.join(shared)}: its gain error is taken as common,"
                f" so that it cancels in differences; digits, zero and scatter do not."
            )
    return (
        "No instrument is known to be the same on both sides (by its serial number): all its"
        " errors count in full in the difference."
    )


def _speeds(sides: Sequence[Side], found: Sequence[dict[int, Step]]) -> list[str]:
    common = set.intersection(*(set(one) for one in found))
    told = []
    for side, steps in zip(sides, found, strict=True):
        alone = sorted(set(steps) - common)
        if alone:
            speeds = ", ".join(str(one) for one in alone)
            told.append(f"{side.run.name}: left out for want of a counterpart: speed {speeds}.")
    return told


def _fits(sides: Sequence[Side]) -> list[str]:
    told = []
    for side in sides:
        if side.no_voltage:
            told.append(f"{side.run.name}: {side.no_voltage}.")
        elif side.fit.refusal:
            told.append(
                f"{side.run.name}: {side.fit.refusal} Currents are brought to one voltage by the"
                f" usual exponent instead."
            )
    return told
