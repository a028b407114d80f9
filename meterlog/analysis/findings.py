"""Findings: from spans and steps to statements with value, uncertainty, limit and verdict."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.analysis.excess import highest_a
from meterlog.analysis.pieces import Piece
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.sides import SETTLING_WORDS
from meterlog.analysis.stated_current import StatedCurrent
from meterlog.analysis.uncertainty import Uncertainty, uncertainty_of_mean, within
from meterlog.model import (
    Finding,
    FindingKind,
    Limits,
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


def _seconds(t_ns: int) -> str:
    return f"{t_ns / 1e9:.3f} s"


def _stretch(piece: Piece) -> str:
    at = "" if piece.speed is None else f" at speed {piece.speed}"
    return (
        f"{at} from {_seconds(piece.start_ns)} to {_seconds(piece.end_ns)}"
        f" ({_seconds(piece.length_ns)})"
    )


@dataclass(frozen=True, slots=True)
class Around:
    """What a finding needs to know besides its own stretch.

    Attributes
    ----------
    taps_ns : sequence of int
        When the motor was tapped, in order.
    returned : bool
        Current flows right after the stretch.
    from_start, to_end : bool
        It was so already at the first reading, or still at the last.
    denied : str
        Why the voltages deny that the current went; empty where they do not.
    cause : str
        What a meter said that explains missing data; empty for nothing.
    doubted : str
        Why what the meters say proves nothing here; empty where it does.
    """

    taps_ns: Sequence[int] = ()
    returned: bool = False
    from_start: bool = False
    to_end: bool = False
    denied: str = ""
    cause: str = ""
    doubted: str = ""


def _tap_words(piece: Piece, around: Around) -> str:
    reach = [t for t in around.taps_ns if piece.start_ns <= t <= piece.end_ns + piece.end_edge_ns]
    if not reach:
        return ""
    delay_ns = max(piece.end_ns - reach[-1], 0)
    if around.returned and delay_ns <= TAP_REACH_NS:
        edge_s = piece.end_edge_ns / 1e9
        return f"; current came back {delay_ns / 1e9:.2f} s (± {edge_s:.2g} s) after a tap"
    return f"; {len(reach)} tap(s) without the current coming back"


def _reach_words(around: Around) -> str:
    if around.from_start and around.to_end:
        return " (already so at the first reading, still so at the last)"
    if around.from_start:
        return " (already so at the first reading)"
    return " (still so at the last reading)" if around.to_end else ""


def _unproven(doubted: str) -> str:
    return f"; but {doubted}, so that nothing is proven of the motor" if doubted else ""


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
    current : StatedCurrent
        May learn more meanwhile.
    """

    def __init__(self, limits: Limits, current: StatedCurrent) -> None:
        self._limits = limits
        self._current = current

    def of_piece(self, piece: Piece, around: Around) -> Finding | None:
        """Give the finding of one stretch; None for one that is in order."""
        if piece.kind is None or piece.kind in (SpanKind.OFF, SpanKind.RUNNING):
            return None
        if piece.kind is SpanKind.NO_DATA:
            return self._no_data(piece, around.cause)
        figures = piece.figures
        u = None
        if figures.n:
            stated = self._current.at(figures.mean_a, piece.start_ns, piece.end_ns)
            u = uncertainty_of_mean(figures.mean_a, figures.n, figures.sd_a, None, stated)
        verdict, limit = self._judge(piece, u)
        if around.denied or around.doubted:
            verdict = Verdict.CANT_TELL
        return Finding(
            kind=FindingKind(piece.kind.value),
            verdict=verdict,
            start_ns=piece.start_ns,
            end_ns=piece.end_ns,
            edge_ns=max(piece.start_edge_ns, piece.end_edge_ns),
            value=figures.mean_a if figures.n else None,
            unit="A",
            expanded_uncertainty=None if u is None else u.expanded,
            limit=limit,
            speed=piece.speed,
            statement=self._words(piece, u, verdict, limit, around),
            coverage_factor=None if u is None else u.coverage,
        )

    def _judge(self, piece: Piece, u: Uncertainty | None) -> tuple[Verdict, float]:
        """Give the verdict and the limit that decided."""
        step, mean = self._limits.at(piece.speed), abs(piece.figures.mean_a)
        wide = None if u is None else u.expanded
        if piece.kind is SpanKind.OVER:
            limit = highest_a(self._limits, piece.speed)
            return within(mean, wide, None, limit)[0], limit
        if piece.kind is SpanKind.UNDER:
            limit = step.min_a or 0.0
            return within(mean, wide, limit, None)[0], limit
        if piece.kind is SpanKind.LOCKED:
            limit = self._limits.locked_current_a
            # Here the limit is where a held rotor begins, so reaching it is what fails.
            return within(mean, wide, None, limit)[0], limit
        limit = self._limits.open_current_a
        if piece.kind is SpanKind.NO_CURRENT and piece.speed is None:
            return Verdict.CANT_TELL, limit  # perhaps nobody asked it to run
        return within(mean, wide, limit, None)[0], limit

    def _words(
        self,
        piece: Piece,
        u: Uncertainty | None,
        verdict: Verdict,
        limit: float,
        around: Around,
    ) -> str:
        now = with_uncertainty(piece.figures.mean_a, None if u is None else u.expanded, "A")
        now += "" if u is None else self._current.lacking
        stretch = f"{_stretch(piece)}{_reach_words(around)}"
        unproven = _unproven(around.doubted)
        if piece.kind is SpanKind.OVER and piece.speed == 0:
            return (
                f"Current although off is commanded{stretch}: {now}; the circuit stays on, or the"
                f" clamp was not zeroed."
            )
        if piece.kind is SpanKind.OVER:
            return f"Too much current{stretch}: {now}, limit {limit:g} A{unproven}."
        if piece.kind is SpanKind.UNDER:
            return f"Too little current{stretch}: {now}, limit {limit:g} A{unproven}."
        if piece.kind is SpanKind.LOCKED:
            return f"Rotor held{stretch}: {now}, held from {limit:g} A on{unproven}."
        if around.denied:
            return (
                f"The current channel reads nothing{stretch}: {now}; but {around.denied}. The"
                f" clamp or its meter is to be doubted before the motor."
            )
        doubt = unproven
        if not doubt and verdict is Verdict.CANT_TELL and piece.speed is not None:
            doubt = "; with this uncertainty a small current can't be told from none"
        return f"{self._gone_words(piece, now, stretch, doubt)}{_tap_words(piece, around)}."

    def _gone_words(self, piece: Piece, now: str, stretch: str, doubt: str) -> str:
        volts = piece.figures.mean_v
        if piece.kind is SpanKind.DEAD:
            cause = doubt or ": the motor is open inside"
            return (
                f"Dead segment{stretch}: {now} through the motor while {volts:.1f} V stood"
                f" across it{cause}"
            )
        if piece.kind in _SIDE_WORDS:
            return f"No current{stretch}: {now}; {_SIDE_WORDS[piece.kind]}{doubt}"
        missing = " and ".join(SETTLING_WORDS[role] for role in piece.settled_by)
        settle = f"; {missing} would settle it" if missing else ""
        return f"No current{stretch}: {now}; these channels can't say which side{settle}{doubt}"

    @staticmethod
    def _no_data(piece: Piece, cause: str) -> Finding:
        why = cause or "silence, overload or a lost instrument"
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
                f"No data{_stretch(piece)}: {why}{'' if why.endswith('?') else '.'} What the motor"
                f" did then is not known."
            ),
        )

    def of_step(self, step: Step, outside: Sequence[Finding], doubted: str = "") -> Finding | None:
        """Give the verdict on what the motor draws at one speed; None where nothing is allowed for.

        Parameters
        ----------
        step : Step
        outside : sequence of Finding
            Of the whole recording; those in which this step left its limits for a while fail it
            whatever its mean.
        doubted : str
            Why what the meters say proves nothing here; empty where it does.
        """
        allowed = self._limits.at(step.speed)
        if not step.speed or not step.n or (allowed.min_a is None and allowed.max_a is None):
            return None
        low = "" if allowed.min_a is None else f"{allowed.min_a:g}"
        high = "" if allowed.max_a is None else f"{allowed.max_a:g}"
        bounds = f"allowed {low} to {high} A"
        if step.mean_a is None:
            words = f"Speed {step.speed}: the current was not read ({bounds})."
            return self._step_finding(step, Verdict.CANT_TELL, None, None, words)
        if step.steady_mean_a is None or step.steady_n < 2:
            words = (
                f"Speed {step.speed}: nothing to judge; start-up, missing current and the change"
                f" to the next speed leave no steady running ({bounds})."
            )
            bare = replace(step, steady_mean_a=None, steady_expanded_a=None, steady_coverage=None)
            return self._step_finding(bare, Verdict.CANT_TELL, None, None, words)
        mean, u = abs(step.steady_mean_a), step.steady_expanded_a
        size = with_uncertainty(mean, u, "A") + self._current.lacking
        draws = f"Speed {step.speed} draws {size} when running"
        if doubted:
            words = f"{draws}; {bounds}: can't tell, as {doubted}."
            return self._step_finding(step, Verdict.CANT_TELL, None, None, words)
        left = [f for f in outside if _leaves(f, step)]
        if left:
            worst = max(left, key=lambda f: f.end_ns - f.start_ns)
            apart = _seconds(sum(f.end_ns - f.start_ns for f in left))
            words = f"{draws}; {bounds}: fail, outside for {apart}."
            return self._step_finding(step, Verdict.FAIL, worst, worst.limit, words)
        verdict, limit = within(mean, u, allowed.min_a, allowed.max_a)
        return self._step_finding(step, verdict, None, limit, f"{draws}; {bounds}: {verdict}.")

    def _step_finding(
        self, step: Step, verdict: Verdict, worst: Finding | None, limit: float | None, words: str
    ) -> Finding:
        """Give a finding with the step's own figures, or with those of its worst stretch."""
        return Finding(
            kind=FindingKind.STEP_CURRENT,
            verdict=verdict,
            start_ns=step.start_ns,
            end_ns=step.end_ns,
            # A step begins and ends when a hand pressed a key.
            edge_ns=round(self._limits.command_lag_s * 1e9),
            value=step.steady_mean_a if worst is None else worst.value,
            unit="A",
            expanded_uncertainty=(
                step.steady_expanded_a if worst is None else worst.expanded_uncertainty
            ),
            limit=limit,
            speed=step.speed,
            statement=words,
            coverage_factor=step.steady_coverage if worst is None else worst.coverage_factor,
        )
