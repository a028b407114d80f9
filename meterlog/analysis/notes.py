"""Notes: what the reader of a review must know besides its findings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.late_current import LATE_NS
from meterlog.analysis.sides import SETTLING_WORDS
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Channel, Finding, FindingKind, Limits, Role, Step

FAR_NS = 10_000_000_000
"""Commands this far from all readings are likely on another clock."""


@dataclass(frozen=True, slots=True)
class Passed:
    """What the judgement saw and passed over.

    Attributes
    ----------
    brief : int
    brief_s : float, seconds
        Dropouts shorter than the dwell: how many, and how long together.
    forgiven : int
        Losses beside an off command that were taken for the command.
    late : int
    late_s : float, seconds
        At how many starts the current was read later than the voltage, and by how much at most.
    events_off : bool
        Commands lie far from the readings.
    """

    brief: int
    brief_s: float
    forgiven: int
    late: int
    late_s: float
    events_off: bool


def events_off(timeline: SpeedTimeline, first_ns: int, last_ns: int) -> bool:
    """Tell whether all commands lie far before the readings, or any far behind them."""
    times = [change.t_ns for change in timeline.changes]
    if not times:
        return False
    return times[-1] < first_ns - FAR_NS or times[-1] > last_ns + FAR_NS


def notes(
    limits: Limits,
    current: Channel | None,
    missing: Sequence[Role],
    steps: Sequence[Step],
    findings: Sequence[Finding],
    passed: Passed,
) -> list[str]:
    """Give the notes, one plain sentence or two each.

    Parameters
    ----------
    limits : Limits
    current : Channel or None
        The motor current's.
    missing : sequence of Role
        Not recorded, though they would help.
    steps : sequence of Step
    findings : sequence of Finding
    passed : Passed
    """
    told = _about_channels(current, missing) + _about_wiring(limits, steps)
    if any(finding.kind is FindingKind.NO_DATA for finding in findings):
        told.append("There are stretches without data: what happened then is not known.")
    if passed.brief:
        told.append(
            f"{passed.brief} dropout(s) of the current shorter than {limits.min_dwell_s:g} s"
            f" (min_dwell_s), {passed.brief_s:.3f} s together, are not spans of their own: lower"
            f" min_dwell_s to see them."
        )
    if passed.forgiven:
        told.append(
            f"{passed.forgiven} loss(es) of current beside an off or on command, shorter than"
            f" {limits.command_lag_s:g} s (command_lag_s), are taken for the command."
        )
    if passed.late:
        told.append(
            f"At {passed.late} start(s) no current was read yet while the voltage stood, for"
            f" {passed.late_s:.3f} s at most: as where a clamp is slow or the channels are read one"
            f" after the other. A motor that is open inside is told there from"
            f" {LATE_NS / 1e9:g} s on, or from the second reading where they are further apart."
        )
    if passed.events_off:
        told.append(
            "The commands lie far from the readings in time: is their zero the same? The verdicts"
            " rest on them."
        )
    return told


def _about_channels(current: Channel | None, missing: Sequence[Role]) -> list[str]:
    told = []
    if current is None:
        told.append("No motor-current channel: nothing can be said about the motor.")
    elif current.accuracy is None:
        told.append(
            "The accuracy of the current channel is not stated: uncertainties hold the scatter of"
            " the readings alone."
        )
    if missing:
        named = ", ".join(SETTLING_WORDS[role] for role in missing)
        told.append(f"Not recorded: {named}. Some causes can't be told apart without.")
    return told


def _about_wiring(limits: Limits, steps: Sequence[Step]) -> list[str]:
    told = []
    resting = [abs(step.median_a) for step in steps if step.speed == 0 and step.median_a]
    if resting and max(resting) >= limits.open_current_a:
        told.append(
            f"With the fan commanded off the current reads {max(resting):.2f} A: zero the clamp,"
            f" or find what keeps the circuit on, before trusting small currents."
        )
    return told
