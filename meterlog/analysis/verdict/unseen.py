"""Unseen: what this set-up could not have seen, so that silence is not taken for proof."""

from __future__ import annotations

from meterlog.analysis.unread_speeds import unread_speeds
from meterlog.analysis.verdict.case import Case
from meterlog.analysis.verdict.standing_still import standing_still
from meterlog.model import FindingKind, Origin, Role, Verdict

_FIGURES = (
    FindingKind.RESISTIVE_FEED,
    FindingKind.RESISTIVE_GROUND,
    FindingKind.DRAG,
    FindingKind.FUSE_LOAD,
    FindingKind.FUSE_OPENING,
    FindingKind.CONTROLLER_HEAT,
    FindingKind.OVER,
    FindingKind.UNDER,
)
BLIND = "Nothing was read"
_CHANNELS = {
    Role.MOTOR_FEED: "Motor feed not recorded: a feed that goes can't be told from the rest.",
    Role.MOTOR_RETURN: (
        "Motor return not recorded: an open motor can't be told from an open ground side."
    ),
    Role.BATTERY: "Battery voltage not recorded: drops on the way to the motor were not measured.",
    Role.COMMAND: "The controller's request not recorded: a lost command looks like a lost ground.",
}


def unseen_of(case: Case) -> list[str]:
    """Give one sentence for each thing that could not be seen."""
    if not case.has(Role.MOTOR_CURRENT):
        return ["Motor current not recorded: nothing can be said about the motor."]
    return [
        *_short_dropouts(case),
        *(words for role, words in _CHANNELS.items() if not case.has(role)),
        *_speeds(case),
        *_starts(case),
        *standing_still(case),
        *_off(case),
        *_untold(case),
        *_ripple(case),
        *_figures(case),
        *_gaps(case),
    ]


def _short_dropouts(case: Case) -> list[str]:
    shortest = case.review.shortest_visible_dropout_s
    if shortest is None:
        return []
    chances = [one for one in case.review.catch_chances if 0.0 < one.chance < 1.0]
    some = ""
    if chances:
        one = chances[0]
        percent = min(max(100.0 * one.chance, 1.0), 99.0)  # neither never nor surely
        some = f"; one of {one.duration_s:g} s would show with a chance of {percent:.0f} %"
    told = [f"Dropouts shorter than {shortest:.3g} s may have been missed{some}."]
    if case.chopped:
        told.append(
            "The current is pulsed: dropouts that the limits do not count for being short can't be"
            " told from its pauses."
        )
    return told


def _speeds(case: Case) -> list[str]:
    tried = sorted({step.speed for step in case.review.steps if step.speed})
    unread = unread_speeds(case.judged.events, case.review.steps)
    if not tried and not unread:
        found = sum(step.found for step in case.review.steps)
        if found > 1:
            return [
                f"No commanded speed was recorded: nothing is judged speed by speed. {found} levels"
                f" of current were found; accepted as steps (review --accept-steps, or C in the"
                f" window) they are judged."
            ]
        return ["No commanded speed was recorded: nothing is judged speed by speed."]
    allowed = case.judged.limits.speeds
    told = []
    if unread:
        told.append(f"Commanded and not read: speed {_listed(unread)}.")
    missing = sorted(set(allowed) - set(tried) - set(unread) - {0})
    if missing:
        # The part that is missing may have tried it.
        part = case.review.part
        told.append(
            f"Not tried in this part: speed {_listed(missing)}."
            if part
            else f"Not tried: speed {_listed(missing)}."
        )
    bare = [speed for speed in tried if speed not in {*allowed, *unread}]
    if bare:
        told.append(f"No limits stated for speed {_listed(bare)}: its current is not judged.")
    return told


def _off(case: Case) -> list[str]:
    """Say that a current was read with the fan off, where no other doubt says it."""
    read_a = 0.0 if case.zero_seen else case.off_read_a
    if not read_a:
        return []
    return [
        f"Can't tell how far off all currents are: with the fan off {read_a:.2f} A were read; the"
        f" clamp's zero is off, the circuit stays on, or the fan was switched on before its mark."
    ]


def _listed(numbers: list[int]) -> str:
    return ", ".join(str(number) for number in numbers)


def _starts(case: Case) -> list[str]:
    starts = [one for one in case.review.startups if one.cause != "after a dropout"]
    if not starts:
        return ["No start from rest was recorded: nothing is said of the start-up current."]
    if any(one.peak_cut for one in starts):
        return [
            "The start-up current may be higher than read: the readings stand at its peak, as at"
            " the end of the range of the meter or the clamp."
        ]
    if any(one.peak_over for one in starts):
        return [
            "The start-up current was beyond the range of the meter or the clamp: the true peak was"
            " higher than what was read."
        ]
    if any(one.peak_past for one in starts):
        return [
            "The start-up current may be higher than read: its peak is more than the meter or the"
            " clamp is stated for."
        ]
    if all(one.peak_floor for one in starts):
        return ["The readings are too slow for the start-up peak: the true one was higher."]
    return []


def _untold(case: Case) -> list[str]:
    open_ones = [
        one
        for one in case.review.findings
        if one.verdict is Verdict.CANT_TELL and one.kind in (*_FIGURES, FindingKind.STEP_CURRENT)
    ]
    told = []
    for kind in dict.fromkeys(one.kind for one in open_ones):
        first = next(one for one in open_ones if one.kind is kind)
        count = sum(one.kind is kind for one in open_ones)
        more = f" ({count - 1} more like it)" if count > 1 else ""
        said = first.statement.rstrip(".")
        lead = "" if "can't tell" in said.lower() else "Can't tell: "
        told.append(f"{lead}{said}{more}.")
    return told


def _ripple(case: Case) -> list[str]:
    seen = [one for one in case.review.ripple if not one.refusal]
    if seen:
        return []
    needed = [one.needed_rate_hz for one in case.review.ripple if one.needed_rate_hz is not None]
    if needed:
        return [
            f"Too slow for the commutator's bars: about {max(needed):,.0f} readings/s are needed."
        ]
    refused = [one.refusal for one in case.review.ripple if one.refusal]
    if refused:
        return [f"The commutator's bars could not be seen: {refused[0].rstrip('.')}."]
    return ["The commutator's bars were not looked at: that needs 7,000 readings/s or more."]


def _figures(case: Case) -> list[str]:
    told = [one.statement for one in case.review.pulsed[:1] if one.frequency_hz is None]
    motor = case.review.motor
    if motor is not None and motor.refusal:
        told.append(f"The motor's own figures were not determined: {motor.refusal.rstrip('.')}.")
    return told


def _gaps(case: Case) -> list[str]:
    told = []
    over = case.overloads
    if over:
        length_s = sum(one.end_ns - one.start_ns for one in over) / 1e9
        told.append(
            f"Can't tell how large the current was for {length_s:.2g} s: it was beyond the meter's"
            f" range (overload). Choose a wider range."
        )
    gaps = [
        one for one in case.review.findings if one.kind is FindingKind.NO_DATA and one not in over
    ]
    if gaps:
        length_s = sum(one.end_ns - one.start_ns for one in gaps) / 1e9
        longest_s = max(one.end_ns - one.start_ns for one in gaps) / 1e9
        many = "1 gap" if len(gaps) == 1 else f"{len(gaps)} gaps, the longest {longest_s:.2g} s"
        told.append(
            f"{BLIND} for {length_s:.2g} s together ({many}): what the motor did then is not known."
        )
    idle = [
        one
        for one in case.review.findings
        if one.kind is FindingKind.NO_CURRENT
        and one.speed is None
        and one.verdict is Verdict.CANT_TELL
    ]
    if idle:
        length_s = sum(one.end_ns - one.start_ns for one in idle) / 1e9
        told.append(
            f"No current for {length_s:.1f} s with no command recorded: whether the fan was asked"
            f" to run then is not known."
        )
    return told


def is_simulated(case: Case) -> bool:
    """Tell whether some readings came from the virtual bench."""
    return any(one.simulated for one in case.judged.instruments)


SIMULATED = f"These are {Origin.SIMULATED.value} readings: they prove nothing of a vehicle."
