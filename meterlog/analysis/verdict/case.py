"""Case: all that was made of a recording, and the findings that still wait for a cause."""

from __future__ import annotations

from collections.abc import Iterable

from meterlog.analysis.budgets import BudgetMaker
from meterlog.analysis.judged import Judged
from meterlog.analysis.startup.beyond_range import overloads
from meterlog.model import (
    Doubt,
    DoubtKind,
    Finding,
    FindingKind,
    Review,
    RhythmKind,
    Role,
    SpanKind,
    Step,
    Verdict,
)

GONE_KINDS = (
    FindingKind.DEAD,
    FindingKind.FEED_LOST,
    FindingKind.GROUND_LOST,
    FindingKind.COMMAND_LOST,
    FindingKind.NO_CURRENT,
)
LEVEL_KINDS = (FindingKind.OVER, FindingKind.UNDER, FindingKind.LOCKED, FindingKind.STEP_CURRENT)
HINT_KINDS = (FindingKind.DIP, FindingKind.MISSED_DROPOUT, FindingKind.BARS)
_GRAVE = (
    DoubtKind.STUCK,
    DoubtKind.DECADE,
    DoubtKind.BEYOND,
    DoubtKind.NOMINAL,
    DoubtKind.CLAMP_QUIET,
    DoubtKind.PROBE,
    DoubtKind.BATTERY,
    DoubtKind.UNIT,
)
"""What takes the readings themselves away; the others widen what is not known of them."""
_VOLTS = (DoubtKind.PROBE, DoubtKind.SIGN, DoubtKind.BEYOND)
_BY_VOLTAGE = (
    FindingKind.DEAD,
    FindingKind.FEED_LOST,
    FindingKind.GROUND_LOST,
    FindingKind.COMMAND_LOST,
    FindingKind.RESISTIVE_FEED,
    FindingKind.RESISTIVE_GROUND,
    FindingKind.CONTROLLER_HEAT,
)
_OFF_NS = 1_000_000_000
"""In a shorter off a slow clamp may show what flowed before."""
HAND_BY_CHANCE = 0.5
"""Below this probability a rhythm may be that of the hand that tapped (common practice)."""
TAPS_BY_CHANCE = 0.05
"""Taps count as the cause of a return below this probability (common practice)."""


def _is_grave(doubt: Doubt) -> bool:
    """Tell whether readings are taken away; of a current that is negative the size is judged."""
    turned = doubt.kind is DoubtKind.SIGN and doubt.role is Role.MOTOR_FEED
    return doubt.kind in _GRAVE or turned


def is_suspect(finding: Finding) -> bool:
    """Tell whether a finding points to a fault: it failed, or a fault can't be ruled out by it.

    A figure beside its limit that can't be told is no suspicion; nor is a missing current of
    which nobody knows whether it was asked for.
    """
    if finding.verdict is Verdict.FAIL:
        return True
    if finding.verdict is Verdict.PASS:
        return False
    if finding.kind is FindingKind.NO_CURRENT:
        return finding.speed is not None
    return finding.kind in (*GONE_KINDS, FindingKind.LOCKED, *HINT_KINDS)


class Case:
    """A recording before its causes are told.

    Parameters
    ----------
    judged : Judged
        For instruments, limits, conditions and events.
    review : Review
        For all else; its ``verdict`` is not looked at.
    """

    def __init__(self, judged: Judged, review: Review) -> None:
        self.judged = judged
        self.review = review
        self._off_a = max((one.offset_a for one in review.doubts), default=0.0)
        self._waiting = [one for one in review.findings if is_suspect(one)]

    @property
    def waiting(self) -> list[Finding]:
        """Findings that point to a fault and have no cause yet."""
        return list(self._waiting)

    def take(self, *kinds: FindingKind) -> list[Finding]:
        """Take the waiting findings of some kinds, in order of time; they wait no longer."""
        return self.take_those(one for one in self._waiting if one.kind in kinds)

    def take_those(self, wanted: Iterable[Finding]) -> list[Finding]:
        """Take waiting findings."""
        taken = list(wanted)
        marks = {id(one) for one in taken}
        self._waiting = [one for one in self._waiting if id(one) not in marks]
        return sorted(taken, key=lambda one: (one.start_ns, one.end_ns, one.statement))

    def doubt_of(self, finding: Finding) -> Doubt | None:
        """Give the grave doubt that reaches what a finding rests on; None where none does."""
        for doubt in self.grave_doubts:
            always = doubt.start_ns == doubt.end_ns == 0
            reaches = doubt.start_ns <= finding.end_ns and doubt.end_ns >= finding.start_ns
            volts_only = doubt.kind in _VOLTS or (
                doubt.kind is DoubtKind.STUCK and doubt.role not in (None, Role.MOTOR_CURRENT)
            )
            # A current that goes, goes by the limits of any vehicle.
            other = doubt.kind is DoubtKind.NOMINAL and finding.kind is FindingKind.NO_CURRENT
            if other:
                continue
            if (always or reaches) and (not volts_only or finding.kind in _BY_VOLTAGE):
                return doubt
        return None

    @property
    def grave_doubts(self) -> list[Doubt]:
        """Doubts that take readings away."""
        return [one for one in self.review.doubts if _is_grave(one)]

    @property
    def light_doubts(self) -> list[Doubt]:
        """Doubts that make figures less sure than they look."""
        return [one for one in self.review.doubts if not _is_grave(one)]

    @property
    def overloads(self) -> list[Finding]:
        """Stretches in which the current was beyond the meter's range while it was asked for."""
        return overloads(self.review.findings)

    @property
    def off_read_a(self) -> float:
        """The largest current read with off commanded, in amperes; 0 where none worth telling."""
        read = [
            abs(step.median_a)
            for step in self.review.steps
            if step.speed == 0 and step.median_a and step.end_ns - step.start_ns >= _OFF_NS
            if not self._went(step)
        ]
        most = max(read, default=0.0)
        return most if most >= self.judged.limits.open_current_a else 0.0

    def _went(self, step: Step) -> bool:
        """Tell whether a current fell to nothing in a step, as a slow clamp shows one that went.

        What stands scatters by less than its own size, and an off that reads nothing ends it.
        """
        if abs(step.median_a or 0.0) >= (step.sd_a or 0.0):
            return False
        return any(
            span.kind is SpanKind.OFF
            and span.duration_ns >= _OFF_NS
            and step.start_ns < span.start_ns < step.end_ns <= span.end_ns
            for span in self.review.spans
        )

    def holds_with_zero(self, finding: Finding) -> bool:
        """Tell whether a current is further beyond its limit than its zero is seen to be off."""
        if finding.unit != "A" or finding.value is None or finding.limit is None:
            return True
        return abs(abs(finding.value) - finding.limit) > self._off_a

    @property
    def clamp_quiet(self) -> bool:
        """The clamp read nothing somewhere, though the voltages say that current flowed."""
        return any(one.kind is DoubtKind.CLAMP_QUIET for one in self.review.doubts)

    @property
    def chopped(self) -> bool:
        """The current was read to come and go with the pulses of a pulsed feed."""
        return any(one.chopped for one in self.review.pulsed)

    @property
    def beyond(self) -> bool:
        """A voltage was read that the circuit of the limits can't have."""
        kinds = (DoubtKind.BEYOND, DoubtKind.NOMINAL)
        return any(one.kind in kinds for one in self.review.doubts)

    @property
    def zero_seen(self) -> list[Doubt]:
        """A current was read while none could flow."""
        return [one for one in self.review.doubts if one.kind is DoubtKind.ZERO_SEEN]

    def has(self, role: Role) -> bool:
        """Tell whether some instrument plays a role."""
        return any(one.column(role) is not None for one in self.judged.instruments)

    @property
    def meter_unsaid(self) -> bool:
        """Nobody has stated how good the meter of the motor current is."""
        current = BudgetMaker(self.judged.instruments).current
        return current is not None and current.meter_unsaid

    @property
    def taps_answer(self) -> bool:
        """Every tap made while the current was gone brought it back, beyond chance."""
        taps = self.review.taps
        if taps is None or taps.tried < 2 or taps.answered < taps.tried:
            return False
        return taps.chance is not None and taps.chance <= TAPS_BY_CHANCE

    @property
    def taps_by_chance(self) -> bool:
        """Taps made while the current was gone show no more than taps at random times would."""
        taps = self.review.taps
        if taps is None or not taps.tried or taps.chance is None:
            return False
        return taps.chance > TAPS_BY_CHANCE

    @property
    def cuts_out(self) -> bool:
        """The current goes and comes back in a rhythm of its own, not upon taps."""
        rhythm = self.review.rhythm
        own = rhythm is not None and rhythm.kind in (RhythmKind.RETRY, RhythmKind.CUT_OUT)
        return own and not self.taps_pace

    @property
    def taps_pace(self) -> bool:
        """Every tap brought the current back, and chance does not do that as a rule.

        What ends upon each tap has the pace of the hand: a rhythm in it is no controller's, though
        it takes fewer to say so than to blame the motor.
        """
        taps = self.review.taps
        if taps is None or taps.tried < 2 or taps.answered < taps.tried:
            return False
        return taps.chance is not None and taps.chance <= HAND_BY_CHANCE
