"""Findings: from spans and steps to statements with value, uncertainty, limit and verdict."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.pieces import Piece
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.uncertainty import expanded, within
from meterlog.model import (
    Accuracy,
    Finding,
    FindingKind,
    Limits,
    Role,
    SpanKind,
    Step,
    Verdict,
)

TAP_REACH_NS = 2_000_000_000
"""Current that returns within this time of a tap is told together with it (common practice, no
source)."""

_SIDE_WORDS = {
    SpanKind.FEED_LOST: "the feed went away (fuse, relay, connector or wire ahead of the motor)",
    SpanKind.GROUND_LOST: "the ground side opened (controller, its command, ground or connector)",
}
_ROLE_WORDS = {
    Role.MOTOR_FEED: "motor feed voltage",
    Role.MOTOR_RETURN: "motor return voltage",
    Role.COMMAND: "the commanded speed",
}


def _seconds(t_ns: int) -> str:
    return f"{t_ns / 1e9:.3f} s"


def _stretch(piece: Piece) -> str:
    at = "" if piece.speed is None else f" at speed {piece.speed}"
    return (
        f"{at} from {_seconds(piece.start_ns)} to {_seconds(piece.end_ns)}"
        f" ({_seconds(piece.length_ns)})"
    )


def _tap_words(piece: Piece, taps_ns: Sequence[int]) -> str:
    reach = [t for t in taps_ns if piece.start_ns <= t <= piece.end_ns + piece.end_edge_ns]
    if not reach:
        return ""
    delay_ns = piece.end_ns - reach[-1]
    if delay_ns > TAP_REACH_NS:
        return f"; {len(reach)} tap(s) without effect for {_seconds(TAP_REACH_NS)}"
    return f"; current came back {_seconds(max(delay_ns, 0))} after a tap"


def _leaves(finding: Finding, step: Step) -> bool:
    """Tell whether ``finding`` says that ``step`` left its limits for a while."""
    beyond = finding.kind in (FindingKind.OVER, FindingKind.UNDER, FindingKind.LOCKED)
    inside = step.start_ns <= finding.start_ns < step.end_ns
    return beyond and inside and finding.verdict is Verdict.FAIL


class FindingMaker:
    """Makes Findings.

    Parameters
    ----------
    limits : Limits
    accuracy : Accuracy or None
        Of the motor current channel.
    """

    def __init__(self, limits: Limits, accuracy: Accuracy | None) -> None:
        self._limits = limits
        self._accuracy = accuracy

    def of_piece(self, piece: Piece, taps_ns: Sequence[int]) -> Finding | None:
        """Give the finding of one stretch; None for one that is in order."""
        if piece.kind is None or piece.kind in (SpanKind.OFF, SpanKind.RUNNING):
            return None
        if piece.kind is SpanKind.NO_DATA:
            return self._no_data(piece)
        figures = piece.figures
        u = None
        if figures.n:
            u = expanded(figures.mean_a, figures.n, figures.sd_a, None, self._accuracy)
        verdict, limit, words = self._judge(piece, u, taps_ns)
        return Finding(
            kind=FindingKind(piece.kind.value),
            verdict=verdict,
            start_ns=piece.start_ns,
            end_ns=piece.end_ns,
            edge_ns=max(piece.start_edge_ns, piece.end_edge_ns),
            value=figures.mean_a if figures.n else None,
            unit="A",
            expanded_uncertainty=u,
            limit=limit,
            speed=piece.speed,
            statement=words,
        )

    def _judge(
        self, piece: Piece, u: float | None, taps_ns: Sequence[int]
    ) -> tuple[Verdict, float | None, str]:
        step, mean = self._limits.at(piece.speed), abs(piece.figures.mean_a)
        now, stretch = with_uncertainty(piece.figures.mean_a, u, "A"), _stretch(piece)
        if piece.kind is SpanKind.OVER:
            verdict, _ = within(mean, u, None, step.max_a)
            return verdict, step.max_a, f"Too much current{stretch}: {now}, limit {step.max_a:g} A."
        if piece.kind is SpanKind.UNDER:
            verdict, _ = within(mean, u, step.min_a, None)
            words = f"Too little current{stretch}: {now}, limit {step.min_a:g} A."
            return verdict, step.min_a, words
        if piece.kind is SpanKind.LOCKED:
            limit = self._limits.locked_current_a
            verdict, _ = within(mean, u, None, limit)
            words = f"Rotor held{stretch}: {now}, held from {limit:g} A on."
            return verdict, limit, words
        limit = self._limits.open_current_a
        gone, _ = within(mean, u, limit, None)
        if piece.kind is SpanKind.NO_CURRENT and piece.speed is None:
            gone = Verdict.CANT_TELL  # perhaps nobody asked it to run
        words = f"{self._gone_words(piece, now, stretch)}{_tap_words(piece, taps_ns)}."
        return gone, limit, words

    def _gone_words(self, piece: Piece, now: str, stretch: str) -> str:
        volts = piece.figures.mean_v
        if piece.kind is SpanKind.DEAD:
            return (
                f"Dead segment{stretch}: {now} through the motor while {volts:.1f} V stood"
                f" across it: the motor is open inside"
            )
        if piece.kind in _SIDE_WORDS:
            return f"No current{stretch}: {now}; {_SIDE_WORDS[piece.kind]}"
        missing = " and ".join(_ROLE_WORDS[role] for role in piece.settled_by)
        settle = f"; {missing} would settle it" if missing else ""
        return f"No current{stretch}: {now}; these channels can't say which side{settle}"

    @staticmethod
    def _no_data(piece: Piece) -> Finding:
        return Finding(
            kind=FindingKind.NO_DATA,
            verdict=Verdict.CANT_TELL,
            start_ns=piece.start_ns,
            end_ns=piece.end_ns,
            edge_ns=max(piece.start_edge_ns, piece.end_edge_ns),
            value=None,
            unit="",
            expanded_uncertainty=None,
            limit=None,
            speed=piece.speed,
            statement=(
                f"No data{_stretch(piece)}: silence, overload or a lost instrument. What the"
                f" motor did then is not known."
            ),
        )

    def of_step(self, step: Step, outside: Sequence[Finding]) -> Finding | None:
        """Give the verdict on what the motor draws at one speed; None where nothing is known.

        Parameters
        ----------
        step : Step
        outside : sequence of Finding
            Of the whole recording; those in which this step left its limits for a while fail it
            whatever its mean.
        """
        if not step.speed or step.steady_mean_a is None:
            return None
        allowed = self._limits.at(step.speed)
        if allowed.min_a is None and allowed.max_a is None:
            return None
        mean, u = abs(step.steady_mean_a), step.steady_expanded_a
        verdict, limit = within(mean, u, allowed.min_a, allowed.max_a)
        left = [f for f in outside if _leaves(f, step)]
        words = f"{verdict}"
        if left and verdict is not Verdict.FAIL:
            verdict, limit = Verdict.FAIL, left[0].limit
            apart = sum(f.end_ns - f.start_ns for f in left)
            words = f"fail, outside for {_seconds(apart)}"
        low = "" if allowed.min_a is None else f"{allowed.min_a:g}"
        high = "" if allowed.max_a is None else f"{allowed.max_a:g}"
        return Finding(
            kind=FindingKind.STEP_CURRENT,
            verdict=verdict,
            start_ns=step.start_ns,
            end_ns=step.end_ns,
            edge_ns=0,
            value=step.steady_mean_a,
            unit="A",
            expanded_uncertainty=u,
            limit=limit,
            speed=step.speed,
            statement=(
                f"Speed {step.speed} draws {with_uncertainty(mean, u, 'A')} when running;"
                f" allowed {low} to {high} A: {words}."
            ),
        )
