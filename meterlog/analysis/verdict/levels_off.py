"""LevelsOff: causes for which a current or voltage is outside its limit while the fan runs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from meterlog.analysis.verdict import next_tests
from meterlog.analysis.verdict.alike import no_surer
from meterlog.analysis.verdict.case import Case
from meterlog.analysis.verdict.cause import (
    Cause,
    Gravity,
    by_kind,
    doubts_against,
    probability_of,
    sureness_of,
)
from meterlog.analysis.verdict.marks_off import as_other_speeds, mark_alone
from meterlog.model import DoubtKind, Finding, FindingKind, Ranked, Role, SpanKind, Sureness

_OFF_REFERENCE = 0.05
_HOT = " The controller turns too much into heat by it; a motor that draws too much kills it."
_ZEROS = (
    DoubtKind.ZERO_MISSING,
    DoubtKind.ZERO_OLD,
    DoubtKind.ZERO_RANGE,
    DoubtKind.ZERO_DRIFT,
    DoubtKind.ZERO_SEEN,
)


_UNMARKED = (
    "The fan had been off, and came on while off was still marked: one that was switched on without"
    " a mark, or before it, looks the same"
)
_FUSE = (FindingKind.FUSE_LOAD, FindingKind.FUSE_OPENING)


def level_causes(case: Case) -> list[Cause]:
    """Give the causes; the findings they account for wait no longer."""
    makers: tuple[Callable[[Case], Cause | None], ...] = (
        _stays_on,
        _held,
        _resistive_feed,
        _resistive_ground,
        _too_much,
        _too_little,
        _heat,
        _fuse,
    )
    return [cause for maker in makers if (cause := maker(case)) is not None]


def _cause(
    case: Case,
    findings: Sequence[Finding],
    gravity: Gravity,
    words: tuple[str, str, str],
    against: Sequence[str] = (),
) -> Cause | None:
    if not findings:
        return None
    part, what, following = words
    ranked = Ranked(
        what=what,
        part=part,
        sureness=sureness_of(findings, case),
        probability=probability_of(findings),
        rests_on=tuple(by_kind(findings, case)),
        against=(*doubts_against(findings, case), *against),
        next_measurement=following,
    )
    return Cause(gravity, ranked, tuple(findings))


def _side_of_limit(finding: Finding) -> int:
    """Give 1 above its limit, -1 below, 0 where that is not known."""
    if finding.value is None or finding.limit is None:
        return 0
    return 1 if abs(finding.value) > finding.limit else -1


def _stays_on(case: Case) -> Cause | None:
    found = case.take_those(
        one for one in case.waiting if one.kind is FindingKind.OVER and one.speed == 0
    )
    what = (
        "Current flows although the fan is commanded off: a relay that sticks, a shorted"
        " controller, or a clamp that was not zeroed."
    )
    cause = _cause(case, found, Gravity.HARMS, ("controller", what, next_tests.STAYS_ON))
    if cause is None:
        return None
    if all(_came_on(case, one) for one in found) and not case.has(Role.COMMAND):
        return no_surer(cause, Sureness.POSSIBLE, _UNMARKED)
    if not any(one.kind in _ZEROS for one in case.light_doubts):
        return cause
    return replace(cause, ranked=replace(cause.ranked, sureness=Sureness.POSSIBLE))


def _came_on(case: Case, finding: Finding) -> bool:
    """Tell whether the fan had been off before, with off commanded: it did not just stay on."""
    return any(
        span.kind is SpanKind.OFF and step.start_ns < span.end_ns <= finding.start_ns <= step.end_ns
        for span in case.review.spans
        for step in case.review.steps
        if step.speed == 0
    )


def _held(case: Case) -> Cause | None:
    held = case.take(FindingKind.LOCKED)
    if not held:
        return None
    also = case.take_those(
        one
        for one in case.waiting
        if one.kind in (FindingKind.STEP_CURRENT, FindingKind.OVER)
        and _side_of_limit(one) >= 0
        and any(one.start_ns < lock.end_ns and lock.start_ns < one.end_ns for lock in held)
    )
    also += case.take(FindingKind.FUSE_OPENING, FindingKind.FUSE_LOAD)
    what = (
        "The rotor is held: the motor draws the current of a standing motor; seized, jammed by"
        " something in the housing, or its winding is shorted."
    )
    if _stalls_on_low(case, held):
        also += _excess(case)
        what = (
            "The motor drags: it stalls on low, where it draws the current of a held rotor, and"
            " draws too much on the higher speeds on which it turns (bearings, a rubbing wheel,"
            " water, worn)."
        )
    heat = _heat_by(case, [*held, *also])
    words = ("motor", f"{what}{_HOT if heat else ''}", next_tests.HELD)
    return _cause(case, [*held, *also, *heat], Gravity.STOPS, words)


def _excess(case: Case) -> list[Finding]:
    """Take what says that the current is too large."""
    return case.take_those(
        one
        for one in case.waiting
        if one.kind in (FindingKind.OVER, FindingKind.DRAG)
        or (one.kind is FindingKind.STEP_CURRENT and _side_of_limit(one) > 0)
    )


def _heat_by(case: Case, currents: Sequence[Finding]) -> list[Finding]:
    """Take the heat of the speeds at which the current was too large.

    That of a speed whose current is as it should be has another cause: the controller, its air, or
    the limit. What has no speed of its own (drag over several) explains all it overlaps.
    """
    speeds = {one.speed for one in currents if one.speed}
    wide = [one for one in currents if one.speed is None]
    return case.take_those(
        heat
        for heat in case.waiting
        if heat.kind is FindingKind.CONTROLLER_HEAT
        and (
            heat.speed in speeds
            or any(one.start_ns < heat.end_ns and heat.start_ns < one.end_ns for one in wide)
        )
    )


def _stalls_on_low(case: Case, held: Sequence[Finding]) -> bool:
    """Tell whether it turns, drawing too much, on speeds above those on which it is held."""
    stalled = [one.speed for one in held if one.speed]
    # A gap in the readings may leave a rest of the held step that is told as too much current.
    turning = [
        one.speed
        for one in case.waiting
        if one.kind is FindingKind.OVER and one.speed and one.speed not in stalled
    ]
    return bool(stalled and turning) and max(stalled) < min(turning)


def _short(case: Case) -> list[Finding]:
    """Take what says that the current is too small."""
    return case.take_those(
        one
        for one in case.waiting
        if one.kind is FindingKind.UNDER
        or (one.kind is FindingKind.STEP_CURRENT and _side_of_limit(one) < 0)
    )


def _resistive_feed(case: Case) -> Cause | None:
    found = case.take(FindingKind.RESISTIVE_FEED)
    if not found:
        return None
    what = "The feed loses too much voltage under load: fuse holder, relay contacts, plug or wire."
    words = ("feed", what, next_tests.RESISTIVE_FEED)
    cause = _cause(case, [*found, *_short(case)], Gravity.HARMS, words)
    return _unless_marks_off(case, cause)


def _resistive_ground(case: Case) -> Cause | None:
    found = case.take(FindingKind.RESISTIVE_GROUND)
    if not found:
        return None
    what = "The ground side loses too much voltage under load: ground wire, stud or plug."
    words = ("ground side", what, next_tests.RESISTIVE_GROUND)
    cause = _cause(case, [*found, *_short(case)], Gravity.HARMS, words)
    return _unless_marks_off(case, cause)


def _too_much(case: Case) -> Cause | None:
    over = _excess(case)
    if not over:
        return None
    found = [*over, *case.take(FindingKind.FUSE_LOAD, FindingKind.FUSE_OPENING)]
    what = (
        "The motor draws too much current: consistent with a motor that drags (bearings, a rubbing"
        " wheel, water) or is worn."
    )
    heat = _heat_by(case, over)
    found += heat
    words = ("motor", f"{what}{_HOT if heat else ''}", next_tests.DRAG)
    return _unless_marks_off(case, _cause(case, found, Gravity.HARMS, words, _more_air(case)))


def _too_little(case: Case) -> Cause | None:
    found = _short(case)
    what = (
        "The motor draws too little current: too little voltage reaches it, too little air moves"
        " (filter, flaps, wheel), or its brushes are worn."
    )
    against = []
    if case.judged.conditions.filter == "clogged":
        against.append("The filter was stated as clogged, which by itself lowers the current")
    words = ("motor or its supply", what, next_tests.SHORTAGE)
    return _unless_marks_off(case, _cause(case, found, Gravity.HARMS, words, against))


def _unless_marks_off(case: Case, cause: Cause | None) -> Cause | None:
    """Prove nothing by a current that is another speed's; what loads the fuse has no speed."""
    if cause is None or any(one.kind in _FUSE for one in cause.findings):
        return cause
    against = as_other_speeds(case)
    if against:
        return no_surer(cause, Sureness.POSSIBLE, against)
    against = mark_alone(case, cause.findings)
    return no_surer(cause, Sureness.LIKELY, against) if against else cause


def _heat(case: Case) -> Cause | None:
    found = case.take(FindingKind.CONTROLLER_HEAT)
    what = "The controller has to turn more into heat than it may."
    return _cause(case, found, Gravity.HARMS, ("controller", what, next_tests.HEAT))


def _fuse(case: Case) -> Cause | None:
    found = case.take(FindingKind.FUSE_LOAD, FindingKind.FUSE_OPENING)
    what = "The fan loads its fuse too much: drag, or the wrong fuse."
    return _cause(case, found, Gravity.HARMS, ("fuse", what, next_tests.FUSE))


def _more_air(case: Case) -> list[str]:
    """Give the conditions under which a sound motor draws more."""
    stated = case.judged.conditions
    told = []
    if stated.filter == "none":
        told.append("No filter was fitted: more air moves, and more current flows")
    if stated.housing == "open" or stated.place.startswith("bench"):
        told.append("The motor blew into free air, where a sound one draws 15 to 25 % more")
    limits = case.judged.limits
    volts = [step.steady_mean_v for step in case.review.steps if step.steady_mean_v is not None]
    if (
        volts
        and not limits.at_reference
        and max(volts) > (1 + _OFF_REFERENCE) * (limits.compared_at_v)
    ):
        told.append(
            f"It had up to {max(volts):.1f} V across it, and draws more than at"
            f" {limits.compared_at_v:.1f} V"
        )
    return told
