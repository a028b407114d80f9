"""Paragraph: the run in plain words, for somebody who reads nothing else."""

from __future__ import annotations

import re
from collections.abc import Sequence

from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.verdict.case import Case
from meterlog.analysis.verdict.unseen import BLIND
from meterlog.model import FindingKind, Outcome, Ranked, SpanKind, Step, Sureness, Verdict

_SURE = {
    Sureness.PROVEN: "This is proven by the trace",
    Sureness.LIKELY: "This is likely",
    Sureness.POSSIBLE: "This is possible, not more",
}
_LONG, _LONGER = 260, 420
"""Letters of what speaks against a verdict, and of what it rests on: a tap test's marks that came
late stand at its end."""
_UNTRIED = ("Commanded and not read", "Not tried", "No limits")
_ARRANGED = re.compile(r"\s\(permutation\b[^)]*\)")


def paragraphs_of(
    outcome: Outcome, ranked: Sequence[Ranked], unseen: Sequence[str], case: Case
) -> tuple[str, ...]:
    """Give the paragraph, and then the same ever shorter, for where there is no room for it.

    What to measure next goes first, then what it rests on, then the other faults; what speaks
    against it stays: whoever reads nothing else must not be told less doubt than there is.

    Parameters
    ----------
    outcome : Outcome
    ranked : sequence of Ranked
    unseen : sequence of str
    case : Case

    Returns
    -------
    tuple of str
        The whole one first; none twice.
    """
    if not ranked or outcome is Outcome.IN_ORDER:
        measuring = [one.what for one in ranked if one.part == "measuring"]
        return (" ".join([_without_fault(outcome, unseen, case), *measuring]),)
    first = ranked[0]
    head = [_opening(outcome), first.what]
    # What is wrong with the readings speaks against all of it, and is told in full.
    measuring = [one.what for one in ranked[1:] if one.part == "measuring"]
    told = [one for one in first.against if not any(one.rstrip(".") in what for what in measuring)]
    against = [f"Against it: {_lowered(_short(told[0]))}."] if told else []
    against += measuring
    causes = [one for one in ranked[1:] if one.part != "measuring"]
    surer = [one.what for one in causes if one.sureness is not Sureness.POSSIBLE]
    besides = ["Besides: " + " ".join(surer[:2])] if surer else []
    alternatives = [one.what for one in causes if one.sureness is Sureness.POSSIBLE]
    other = [f"Not ruled out: {_lowered(alternatives[0])}"] if alternatives else []
    following = [f"Next: {_first_sentence(first.next_measurement)}"]
    grounds = (_rests(first), _rests(first, most=1), f"{_SURE[first.sureness]}.")
    # Of what is wrong with the measuring nothing more is said than what it is.
    whole, one, none = ([words] if first.part != "measuring" else [] for words in grounds)
    lots = (
        [*head, *whole, *against, *besides, *other, *following],
        [*head, *whole, *against, *besides, *other],
        [*head, *one, *against, *besides, *other],
        [*head, *none, *against, *besides, *other],
        [*head, *none, *against, *besides],
        [*head, *none, *against],
    )
    return tuple(dict.fromkeys(" ".join(lot) for lot in lots))


def _opening(outcome: Outcome) -> str:
    return {
        Outcome.FAULT: "A fault was found.",
        Outcome.SUSPICION: "There is a suspicion, and no proof.",
        Outcome.CANT_TELL: "From this recording it can't be told.",
        Outcome.IN_ORDER: "Nothing was found wrong.",
    }[outcome]


def _rests(first: Ranked, most: int | None = None) -> str:
    if not first.rests_on:
        return f"{_SURE[first.sureness]}."
    tests = [one for one in first.rests_on if "made while the current was gone" in one]
    said = [first.rests_on[0], *[one for one in tests if one != first.rests_on[0]]][:most]
    return f"{_SURE[first.sureness]}: {_lowered('. '.join(_clause(one) for one in said))}."


def _clause(text: str) -> str:
    """Leave out what is told in full elsewhere."""
    return _short(_ARRANGED.sub("", text.partition("; the longest:")[0]), _LONGER)


def _short(text: str, most: int = _LONG) -> str:
    """Give the beginning, to the end of a clause; the ranked list has all of it."""
    plain = text.rstrip(".")
    if len(plain) <= most:
        return plain
    head, stop, _ = plain[:most].rpartition("; ")
    return head if stop else plain[:most].rsplit(" ", 1)[0].rstrip(",;:") + " …"


def _lowered(text: str) -> str:
    """Give what follows a colon: no capital, but for one by itself or an abbreviation."""
    return text[:1].lower() + text[1:] if text[1:2].islower() else text


def _first_sentence(text: str) -> str:
    head, stop, _ = text.partition(". ")
    return f"{head}." if stop else text


def _without_fault(outcome: Outcome, unseen: Sequence[str], case: Case) -> str:
    said = [_opening(outcome), *_ran(case)]
    if case.review.taps is not None:
        said.append(case.review.taps.summary)
    lacking = [one for one in unseen if one.startswith(BLIND)]
    lacking += [one for one in unseen if one.startswith(_UNTRIED)]
    lacking += [one for one in unseen if "can't tell" in one.lower()]
    lacking += [one for one in unseen if one.startswith(("Dropouts shorter", "Motor current"))]
    lacking += [one for one in unseen if one.startswith("No commanded")]
    return " ".join([*said, *lacking[:5]])


def _ran(case: Case) -> list[str]:
    passed = {
        (one.speed, one.start_ns)
        for one in case.review.findings
        if one.kind is FindingKind.STEP_CURRENT and one.verdict is Verdict.PASS
    }
    # A speed that was run twice may have passed but once.
    steps = [step for step in case.review.steps if (step.speed, step.start_ns) in passed]
    figures = ", ".join(_draws(step) for step in _one_each(steps))
    told = []
    if figures:
        told.append(f"The motor drew what it should, and no dropout was seen: {figures}.")
        if case.meter_unsaid:
            told.append(
                "How good the meter of the current is was not stated: no ± holds the meter's own"
                " error."
            )
    elif any(span.kind is SpanKind.RUNNING for span in case.review.spans):
        running_s = sum(
            span.duration_ns for span in case.review.spans if span.kind is SpanKind.RUNNING
        )
        told.append(
            f"It ran for {running_s / 1e9:.0f} s and no dropout was seen; whether its current is"
            f" right was not judged."
        )
    else:
        told.append("The motor was not seen running.")
    return told


def _one_each(steps: Sequence[Step]) -> list[Step]:
    longest: dict[int, Step] = {}
    for step in steps:
        speed = step.speed or 0
        if speed not in longest or step.steady_n > longest[speed].steady_n:
            longest[speed] = step
    return [longest[speed] for speed in sorted(longest)]


def _draws(step: Step) -> str:
    size = abs(step.steady_mean_a or 0.0)
    return f"{with_uncertainty(size, step.steady_expanded_a, 'A')} at speed {step.speed}"
