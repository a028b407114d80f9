"""Cause: one thing that is wrong, with every finding that tells of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum

from meterlog.analysis.taps.silent_between import silent_between
from meterlog.analysis.verdict.case import GONE_KINDS, LEVEL_KINDS, Case
from meterlog.model import DoubtKind, Finding, FindingKind, Ranked, Role, Sureness, Verdict

LONG_NS = 1_000_000_000
"""A condition that was seen once is as good as seen twice when it lasted this long."""
_EACH = 3
_MOST = 6
_BY_SPEED = (FindingKind.STEP_CURRENT, FindingKind.CONTROLLER_HEAT)
"""One a speed: each is told, as another speed is another figure."""


class Gravity(IntEnum):
    """What a cause does; the lower, the graver."""

    MEASURING = 0
    """Nothing else can be believed before it is put right."""
    STOPS = 1
    """The fan stands."""
    HARMS = 2
    """It runs, and a figure is outside its limit."""
    HINT = 3
    """A sign, no fault by itself."""


@dataclass(frozen=True, slots=True)
class Cause:
    """One cause.

    Attributes
    ----------
    gravity : Gravity
    ranked : Ranked
        As it will be told.
    findings : tuple of Finding
        That it accounts for.
    """

    gravity: Gravity
    ranked: Ranked
    findings: tuple[Finding, ...] = ()

    @property
    def order(self) -> tuple[int, int, int, str, str]:
        """Sorts the gravest and surest first; what is only possible comes behind what is likely."""
        sure = list(Sureness).index(self.ranked.sureness)
        behind = 2 if self.ranked.sureness is Sureness.POSSIBLE else 0
        if self.gravity is Gravity.MEASURING:
            behind = 0
        first = min((one.start_ns for one in self.findings), default=0)
        return self.gravity + behind, sure, first, self.ranked.part, self.ranked.what


def sureness_of(findings: Sequence[Finding], case: Case) -> Sureness:
    """Give how sure it is that something is wrong, of findings that all tell of it.

    Proven: failed beyond the stated uncertainty, no doubt against it, more than once or long; never
    by a clamp that reads a current while none can flow, or none while one must, nor beside volts
    that such a circuit can't have: what else is not as it was stated, nobody knows.
    """
    sound = [
        one
        for one in findings
        if one.verdict is Verdict.FAIL and case.doubt_of(one) is None and case.holds_with_zero(one)
    ]
    if not sound:
        return Sureness.POSSIBLE
    bare = [one for one in sound if one.kind in LEVEL_KINDS and one.expanded_uncertainty is None]
    if len(bare) == len(sound):
        return Sureness.LIKELY
    if (
        case.zero_seen
        or case.beyond
        or (case.clamp_quiet and any(one.kind in GONE_KINDS for one in sound))
    ):
        return Sureness.LIKELY
    long_ns = max(one.end_ns - one.start_ns for one in sound)
    return Sureness.PROVEN if len(sound) > 1 or long_ns >= LONG_NS else Sureness.LIKELY


def probability_of(findings: Sequence[Finding]) -> float | None:
    """Give the probability that the surest of some failed findings is so."""
    known = [
        one.probability
        for one in findings
        if one.probability is not None and one.verdict is Verdict.FAIL
    ]
    return 1.0 - min(known) if known else None


def times_of(findings: Sequence[Finding], case: Case) -> int:
    """Count stretches of one kind: two with but a short silence between them are one."""
    ended = {one.end_ns: one for one in findings}
    began = {one.start_ns: one for one in findings}
    silences = [one for one in case.review.findings if one.kind is FindingKind.NO_DATA]
    return len(findings) - sum(
        silent_between(
            _length_ns(ended[one.start_ns]), _length_ns(one), _length_ns(began[one.end_ns])
        )
        for one in silences
        if one.start_ns in ended and one.end_ns in began
    )


def _length_ns(finding: Finding) -> int:
    return finding.end_ns - finding.start_ns


def clauses_of(findings: Sequence[Finding], case: Case) -> list[str]:
    """Give what findings of one kind say: each of a few, else how many and the longest."""
    said = [one.statement.rstrip(".") for one in findings]
    if len(said) <= _EACH or (len(said) <= _MOST and findings[0].kind in _BY_SPEED):
        return said
    sure = [one for one in findings if one.verdict is Verdict.FAIL]
    part = f", {len(sure)} of them beyond the uncertainty" if 0 < len(sure) < len(said) else ""
    longest = max(sure or findings, key=lambda one: one.end_ns - one.start_ns)
    together = sum(one.end_ns - one.start_ns for one in findings) / 1e9
    first = min(one.start_ns for one in findings) / 1e9
    last = max(one.end_ns for one in findings) / 1e9
    name = longest.kind.value.replace("-", " ")
    return [
        f"{times_of(findings, case)} times {name} between {first:.1f} s and {last:.1f} s,"
        f" {together:.2f} s together{part}; the longest: {longest.statement.rstrip('.')}"
    ]


def by_kind(findings: Sequence[Finding], case: Case) -> list[str]:
    """Give the clauses of findings of several kinds, kind by kind in order of time."""
    kinds = dict.fromkeys(one.kind for one in findings)
    return [
        clause
        for kind in kinds
        for clause in clauses_of([f for f in findings if f.kind is kind], case)
    ]


def doubts_against(findings: Sequence[Finding], case: Case) -> list[str]:
    """Give the doubts that reach what findings rest on: the grave ones, and for levels all."""
    grave = [case.doubt_of(one) for one in findings]
    texts = [one.text for one in grave if one is not None]
    if any(one.kind in LEVEL_KINDS for one in findings):
        # Beyond a clamp's range a verdict stands only where that can't turn it over.
        texts += [
            one.text
            for one in case.light_doubts
            if one.kind is not DoubtKind.PAST_RANGE or one.role is not Role.MOTOR_CURRENT
        ]
    return list(dict.fromkeys(texts))
