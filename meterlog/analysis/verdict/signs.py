"""Signs: what is no fault by itself, what is left over, and what is wrong with the measuring."""

from __future__ import annotations

from meterlog.analysis.taps import moves_that_stopped
from meterlog.analysis.verdict import next_tests
from meterlog.analysis.verdict.case import GONE_KINDS, Case
from meterlog.analysis.verdict.cause import (
    Cause,
    Gravity,
    by_kind,
    doubts_against,
    probability_of,
    sureness_of,
)
from meterlog.model import FindingKind, Ranked, Sureness, Verdict

_CONNECTORS = "connectors moved"


def measuring_cause(case: Case) -> Cause | None:
    """Give what is wrong with the measuring; None where no grave doubt stands.

    It goes first where it takes a fault away, or nothing else was proven; else behind.
    """
    doubts = [*case.grave_doubts, *case.zero_seen]
    if not doubts:
        return None
    faults = [one for one in case.waiting if one.verdict is Verdict.FAIL]
    told = faults or [one for one in case.review.findings if one.verdict is Verdict.PASS]
    # What passed, did so with a zero or volts that are off; what failed may have done so by far.
    off = bool(case.zero_seen) or case.beyond
    sound = [one for one in told if case.doubt_of(one) is None and (faults or not off)]
    what = f"The readings can't be taken as they stand. {doubts[0].text}"
    if sound:
        what = f"Not all readings can be taken as they stand. {doubts[0].text}"
    ranked = Ranked(
        what=what,
        part="measuring",
        sureness=Sureness.LIKELY,
        probability=None,
        rests_on=tuple(dict.fromkeys(one.text.rstrip(".") for one in doubts)),
        against=(),
        next_measurement=next_tests.MEASURING_SOME if sound else next_tests.MEASURING,
    )
    return Cause(Gravity.HINT if sound else Gravity.MEASURING, ranked)


def connector_cause(case: Case) -> Cause | None:
    """Give the connector that moved the trace when it was moved by hand."""
    taps = case.review.taps
    checks = () if taps is None else taps.checks
    said = [
        one.words.rstrip(".")
        for one in checks
        if one.name == _CONNECTORS and one.verdict is Verdict.FAIL
    ]
    said += [
        f"The current went when this was moved at {event.t_ns / 1e9:.1f} s: {event.value}"
        for event in moves_that_stopped(case.judged.events, case.review.spans)
    ]
    if not said:
        return None
    ranked = Ranked(
        what="A connector moved by hand disturbs the circuit.",
        part="connector",
        sureness=Sureness.LIKELY,
        probability=None,
        rests_on=tuple(said),
        against=("Moving it may have shaken a probe or the motor as well",),
        next_measurement=next_tests.FEED,
    )
    return Cause(Gravity.STOPS, ranked)


def sign_causes(case: Case) -> list[Cause]:
    """Give the signs that no fault above accounts for; the findings wait no longer."""
    told = [_brief(case), _missed(case), _bars(case)]
    return [one for one in told if one is not None]


def _brief(case: Case) -> Cause | None:
    """Give dropouts that were seen and are shorter than the limits count, where no others were.

    Where the current itself is pulsed, they are its pauses, which a sound fan has.
    """
    review, least_s = case.review, case.judged.limits.min_dwell_s
    if not review.brief or case.chopped or any(one.kind in GONE_KINDS for one in review.findings):
        return None
    what = (
        f"The current was gone {review.brief} times for less than {least_s:g} s each,"
        f" {review.brief_s:.3g} s together, which the limits do not count."
    )
    if review.brief == 1:
        what = (
            f"The current was gone once, for {review.brief_s:.3g} s, which the limits do not count."
        )
    ranked = Ranked(
        what=what,
        part="motor or circuit",
        sureness=Sureness.POSSIBLE,
        probability=None,
        rests_on=("Readings that showed no current while the fan was asked to run",),
        against=(f"The limits count a dropout from {least_s:g} s on (min_dwell_s)",),
        next_measurement=next_tests.BRIEF,
    )
    return Cause(Gravity.HINT, ranked)


def _missed(case: Case) -> Cause | None:
    found = case.take(FindingKind.DIP, FindingKind.MISSED_DROPOUT)
    inferred = case.review.inferred
    gone = any(one.kind.value in ("dead", "no-current") for one in case.review.findings)
    if not found and (not inferred or gone):
        return None
    said = [one.statement.rstrip(".") for one in inferred[:3]]
    if len(inferred) > len(said):
        said.append(f"{len(inferred) - len(said)} more like these")
    ranked = Ranked(
        what=(
            "The current is consistent with dropouts that this meter is too slow to show; none was"
            " measured."
        ),
        part="motor or circuit",
        sureness=Sureness.POSSIBLE,
        probability=probability_of(found),
        rests_on=tuple(dict.fromkeys([*by_kind(found, case), *said])),
        against=("No reading showed a dropout itself", *doubts_against(found, case)),
        next_measurement=next_tests.MISSED,
    )
    return Cause(Gravity.HINT, ranked, tuple(found))


def _bars(case: Case) -> Cause | None:
    found = case.take(FindingKind.BARS)
    views = [one for one in case.review.ripple if any(flaw.dead for flaw in one.flaws)]
    if not found and not views:
        return None
    said = [one.statement.rstrip(".") for one in views]
    ranked = Ranked(
        what="The ripple is consistent with a commutator bar that carries too little current.",
        part="motor",
        sureness=Sureness.POSSIBLE,
        probability=probability_of(found),
        rests_on=tuple(dict.fromkeys([*by_kind(found, case), *said])),
        against=("A pattern alone proves nothing: many such motors run for years",),
        next_measurement=next_tests.BARS,
    )
    return Cause(Gravity.HINT, ranked, tuple(found))


def rest_cause(case: Case) -> Cause | None:
    """Give what is left: findings that point to a fault and fit no cause above."""
    found = case.take(*FindingKind)
    if not found:
        return None
    ranked = Ranked(
        what="There is a finding that no single cause accounts for.",
        part="not known",
        sureness=sureness_of(found, case),
        probability=probability_of(found),
        rests_on=tuple(by_kind(found, case)),
        against=tuple(doubts_against(found, case)),
        next_measurement=next_tests.OTHER,
    )
    return Cause(Gravity.HARMS, ranked, tuple(found))
