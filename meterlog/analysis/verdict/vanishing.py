"""Vanishing: causes for which the current goes although it is asked for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.verdict import next_tests
from meterlog.analysis.verdict.alike import unlike_proof
from meterlog.analysis.verdict.case import HINT_KINDS, Case
from meterlog.analysis.verdict.cause import (
    Cause,
    Gravity,
    by_kind,
    doubts_against,
    probability_of,
    sureness_of,
)
from meterlog.model import (
    Finding,
    FindingKind,
    Ranked,
    RhythmKind,
    Role,
    Sureness,
    TapEvidence,
    Verdict,
)

_ONE_SIDED = {
    FindingKind.FEED_LOST: (
        "feed",
        "The feed of the motor goes away: fuse, relay, connector or wire ahead of the motor.",
        next_tests.FEED,
    ),
    FindingKind.GROUND_LOST: (
        "ground side",
        "The ground side of the motor opens: controller, its request, its ground or a connector.",
        next_tests.GROUND,
    ),
    FindingKind.COMMAND_LOST: (
        "command",
        "The command goes, and the current with it: control head, its wiring, a sensor, or it was"
        " switched off on purpose.",
        next_tests.COMMAND,
    ),
}


def vanishing_causes(case: Case) -> list[Cause]:
    """Give the causes for a missing current; the findings they account for wait no longer."""
    dead = case.take(FindingKind.DEAD)
    unknown = case.take(FindingKind.NO_CURRENT)
    told = []
    if case.cuts_out:
        cut = [*dead, *unknown, *case.take(FindingKind.GROUND_LOST)]
        inside_only = len(cut) == len(dead)
        told += _inside_in_a_rhythm(case, dead) if dead and inside_only else []
        told += _cutting_out(case, cut, dead) if not inside_only else []
    else:
        told += _motor_open(case, dead, unknown) if dead else []
        told += _side_unknown(case, unknown) if unknown and not dead else []
    lost = {kind: case.take(kind) for kind in _ONE_SIDED}
    alone = not told and sum(bool(found) for found in lost.values()) == 1
    told += [_one_side(case, kind, found, alone=alone) for kind, found in lost.items() if found]
    return [unlike_proof(case, cause) for cause in told]


def _one_side(case: Case, kind: FindingKind, lost: Sequence[Finding], *, alone: bool) -> Cause:
    """Give a side that opens; where nothing else makes the current go, dips are its doing too."""
    hints = case.take(FindingKind.DIP, FindingKind.MISSED_DROPOUT) if alone else []
    rests_on = [*_stops_upon_taps(case, kind), *_breaker(case, kind)]
    cause = _cause(case, [*lost, *hints], _ONE_SIDED[kind], rests_on)
    return _with(cause, sureness_of(lost, case))


def _cause(
    case: Case,
    findings: Sequence[Finding],
    words: tuple[str, str, str],
    rests_on: Sequence[str] = (),
    against: Sequence[str] = (),
) -> Cause:
    part, what, following = words
    # A current that the voltages deny speaks for no fault: its doubt is told against it.
    sound = [one for one in findings if one.verdict is Verdict.FAIL or case.doubt_of(one) is None]
    ranked = Ranked(
        what=what,
        part=part,
        sureness=sureness_of(findings, case),
        probability=probability_of(findings),
        rests_on=(*by_kind(sound or findings, case), *rests_on),
        against=(*doubts_against(findings, case), *against),
        next_measurement=following,
    )
    return Cause(Gravity.STOPS, ranked, tuple(findings))


def _cutting_out(case: Case, cut: Sequence[Finding], dead: Sequence[Finding]) -> list[Cause]:
    """Give the controller that cuts out; beside it, for dead spans, what in the motor would."""
    rhythm = case.review.rhythm
    statement = () if rhythm is None else (rhythm.statement.rstrip("."),)
    what = (
        "The current goes and comes back by itself in a rhythm: consistent with a controller that"
        " cuts out and tries again, for heat or for a motor that drags; a brush has no rhythm."
    )
    against = []
    if dead:
        against.append(
            "Full voltage was read across the motor meanwhile, which a controller that cuts out"
            " takes away: check where the return lead sat"
        )
    against += _tap_clauses(case)
    first = _cause(case, cut, ("controller", what, next_tests.CUT_OUT), statement, against)
    told = [_attributed(first, Sureness.LIKELY)]
    if dead:
        inside = (
            "motor",
            "The motor is open inside in a rhythm: a thermal cut-out of its own would do that.",
            next_tests.MOTOR_OPEN,
        )
        told.append(_attributed(_cause(case, dead, inside, (), statement), Sureness.POSSIBLE))
    return told


def _inside_in_a_rhythm(case: Case, dead: Sequence[Finding]) -> list[Cause]:
    """Give the motor that opens in a rhythm; its voltage stands, which no controller leaves it."""
    rhythm = case.review.rhythm
    statement = () if rhythm is None else (rhythm.statement.rstrip("."),)
    what = (
        "The motor opens inside, in a rhythm: full voltage stands across it, and next to no current"
        " flows; consistent with a thermal switch of its own, for heat or drag, or with a brush."
    )
    open_inside = _cause(case, dead, ("motor", what, next_tests.MOTOR_OPEN), statement)
    outside = (
        "controller",
        "A controller that cuts out would look the same if the return lead sat on the ground and"
        " not on the motor's own return.",
        next_tests.CUT_OUT,
    )
    against = ("Full voltage was read across the motor meanwhile, as the leads were said to sit",)
    elsewhere = _cause(case, dead, outside, statement, against)
    return [open_inside, _attributed(elsewhere, Sureness.POSSIBLE)]


def _with(cause: Cause, sureness: Sureness) -> Cause:
    return replace(cause, ranked=replace(cause.ranked, sureness=sureness))


def _attributed(cause: Cause, most: Sureness) -> Cause:
    """Give a cause whose findings prove that the current went, but not that this did it.

    It is no surer than ``most``, and the findings' probability is not its own.
    """
    sureness = max(cause.ranked.sureness, most, key=list(Sureness).index)
    return replace(cause, ranked=replace(cause.ranked, sureness=sureness, probability=None))


def _motor_open(case: Case, dead: Sequence[Finding], unknown: Sequence[Finding]) -> list[Cause]:
    """Give the motor that is open inside, with all that tells of it."""
    hints = case.take(*HINT_KINDS)
    what = (
        "The motor opens inside, at a brush or the commutator: full voltage stands across it, and"
        " next to no current flows."
    )
    cause = _cause(
        case,
        [*dead, *unknown, *hints],
        ("motor", what, f"{_tap_first(case.review.taps)}{next_tests.MOTOR_OPEN}"),
        [*_tap_clauses(case), *_inferred(case), *_tap_rhythm(case)],
        [*_lacking(case.review.taps), *_by_chance(case)],
    )
    return [_with(cause, sureness_of(dead, case))]


def _side_unknown(case: Case, unknown: Sequence[Finding]) -> list[Cause]:
    """Give a missing current of which the channels can't say where it goes."""
    hints = case.take(FindingKind.DIP, FindingKind.MISSED_DROPOUT)
    feed, back = case.has(Role.MOTOR_FEED), case.has(Role.MOTOR_RETURN)
    if feed and not back:
        part, following = "motor or ground side", next_tests.MOTOR_OR_GROUND
        where = "whether inside the motor or on its ground side can't be told without its return"
    else:
        part, following = "motor or circuit", next_tests.MOTOR_OR_CIRCUIT
        where = "whether in the motor, its feed or its ground side can't be told"
    following = f"{following} {_tap_first(case.review.taps)}".rstrip()
    what = f"The current goes while the fan is asked to run; {where}."
    against = [*_lacking(case.review.taps), *_by_chance(case)]
    rests_on = [*_tap_clauses(case), *_inferred(case), *_tap_rhythm(case)]
    findings = [*unknown, *hints]
    told = [_cause(case, findings, (part, what, following), rests_on, against)]
    if not case.taps_answer:
        return told
    motor = (
        "motor",
        "The current comes back upon taps on the motor: consistent with a brush or bar that opens.",
        following,
    )
    shaken = "A plug or ground shaken by the tap would look the same while no voltage tells"
    open_inside = _cause(case, findings, motor, rests_on, [shaken, *against])
    outside = (part, f"The current is lost outside the motor after all; {where}.", following)
    upon_taps = "It came back upon taps on the motor, beyond chance"
    return [
        _attributed(open_inside, Sureness.LIKELY),
        _attributed(_cause(case, unknown, outside, (), [upon_taps]), Sureness.POSSIBLE),
    ]


def _tap_clauses(case: Case) -> list[str]:
    """Give what the taps show; nothing where it may be chance, as that supports no cause."""
    taps = case.review.taps
    told = taps is not None and taps.tried and not case.taps_by_chance
    return [taps.summary.rstrip(".")] if taps is not None and told else []


def _by_chance(case: Case) -> list[str]:
    """Say of taps that support nothing that they were made, and why they do not."""
    taps = case.review.taps
    if taps is None or taps.chance is None or not case.taps_by_chance:
        return []
    if not taps.answered:
        return [taps.summary.rstrip(".")]
    return [
        f"The taps prove nothing: by chance the current would return as soon after them with a"
        f" probability of {taps.chance:.2g}"
    ]


def _tap_first(taps: TapEvidence | None) -> str:
    """Ask for a tap test in full, unless there was one."""
    whole = taps is not None and taps.accepted is Verdict.PASS
    return "" if whole else f"{next_tests.TAP_TEST} "


def _lacking(taps: TapEvidence | None) -> list[str]:
    """Say where the tap test falls short of the accepted form."""
    if taps is None or not taps.tried:
        return []
    failed = [check for check in taps.checks if check.verdict is not Verdict.PASS]
    if not failed:
        return []
    named = ", ".join(check.name for check in failed)
    return [f"The tap test falls short of the accepted form in: {named}"]


def _inferred(case: Case) -> list[str]:
    found = case.review.inferred
    if not found:
        return []
    tapped = sum(one.after_tap_s is not None for one in found)
    upon = f", {tapped} of them within reach of a tap" if tapped else ""
    return [
        f"{len(found)} more short dropouts are inferred{upon}; the first:"
        f" {found[0].statement.rstrip('.')}"
    ]


def _tap_rhythm(case: Case) -> list[str]:
    rhythm = case.review.rhythm
    upon = rhythm is not None and rhythm.kind is RhythmKind.TAPS
    return [rhythm.statement.rstrip(".")] if rhythm is not None and upon else []


def _breaker(case: Case, kind: FindingKind) -> list[str]:
    """Say what a feed that goes in a rhythm is consistent with."""
    rhythm = case.review.rhythm
    if kind is not FindingKind.FEED_LOST or rhythm is None or not case.cuts_out:
        return []
    return [f"{rhythm.statement.rstrip('.')}: consistent with a circuit breaker that closes again"]


def _stops_upon_taps(case: Case, kind: FindingKind) -> list[str]:
    taps = case.review.taps
    if taps is None:
        return []
    hit = [tap for tap in taps.taps if tap.stopped and tap.after == kind.value]
    shaken = [tap for tap in taps.taps if tap.before == kind.value]
    told = []
    if hit:
        told.append(f"{len(hit)} tap(s) made it go, as a loose connector does when shaken")
    if shaken:
        told.append(f"{len(shaken)} tap(s) were made while it was gone")
    return told
