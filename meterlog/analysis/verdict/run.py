"""RunVerdict: what the whole recording says."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.judged import Judged
from meterlog.analysis.verdict.case import Case
from meterlog.analysis.verdict.cause import Cause, Gravity
from meterlog.analysis.verdict.levels_off import level_causes
from meterlog.analysis.verdict.paragraph import paragraphs_of
from meterlog.analysis.verdict.signs import (
    connector_cause,
    measuring_cause,
    rest_cause,
    sign_causes,
)
from meterlog.analysis.verdict.standing_still import standing_still
from meterlog.analysis.verdict.unseen import SIMULATED, is_simulated, unseen_of
from meterlog.analysis.verdict.vanishing import vanishing_causes
from meterlog.model import (
    FindingKind,
    Outcome,
    Review,
    RunVerdict,
    Sureness,
    Verdict,
)


def causes_of(case: Case) -> list[Cause]:
    """Give all causes, the gravest and surest first; every failed finding is in one of them.

    What is only possible comes behind what is likely or proven, whatever its weight; what is
    wrong with the measuring comes first where it takes faults away.
    """
    measuring = measuring_cause(case)
    found = [*vanishing_causes(case), *level_causes(case), *sign_causes(case)]
    more = (measuring, connector_cause(case), rest_cause(case))
    found += [cause for cause in more if cause is not None]
    return sorted(found, key=lambda cause: cause.order)


def run_verdict(judged: Judged, review: Review) -> RunVerdict:
    """Give the judgement of a whole run.

    Parameters
    ----------
    judged : Judged
        For instruments, limits, conditions and events.
    review : Review
        Complete but for its ``verdict``: all findings, doubts, and what the other parts gave.

    Returns
    -------
    RunVerdict
        ``in order`` only where nothing failed and at least one speed passed.

    Source
    ------
    The order of thought is that of the trade's fault tables: common practice, no single source.
    A statement is no surer than its verdict under the decision rule: JCGM 106:2012, 8.
    """
    case = Case(judged, review)
    causes = causes_of(case)
    outcome = _outcome(case, causes)
    ranked = tuple(cause.ranked for cause in causes)
    unseen = unseen_of(case)
    paragraph, *shorter = paragraphs_of(outcome, ranked, unseen, case)
    if is_simulated(case):
        paragraph = f"{paragraph} {SIMULATED}"
        shorter = [f"{one} {SIMULATED}" for one in shorter]
    return RunVerdict(outcome, paragraph, ranked, tuple(unseen), tuple(shorter))


def _outcome(case: Case, causes: Sequence[Cause]) -> Outcome:
    failed = any(one.verdict is Verdict.FAIL for one in case.review.findings)
    of_vehicle = [cause for cause in causes if cause.ranked.part != "measuring"]
    sure = [
        cause
        for cause in of_vehicle
        if cause.ranked.sureness is not Sureness.POSSIBLE and cause.gravity is not Gravity.HINT
    ]
    if sure:
        return Outcome.FAULT
    measuring = any(cause.gravity is Gravity.MEASURING for cause in causes)
    if failed or (of_vehicle and not measuring):
        return Outcome.SUSPICION
    return Outcome.IN_ORDER if _proven_sound(case) and not measuring else Outcome.CANT_TELL


def _proven_sound(case: Case) -> bool:
    """Tell whether some speed passed, none was left untold, off was off, and all was in range."""
    if case.off_read_a or case.overloads or standing_still(case):
        return False
    steps = [one for one in case.review.findings if one.kind is FindingKind.STEP_CURRENT]
    verdicts = {one.verdict for one in steps}
    return verdicts == {Verdict.PASS}
