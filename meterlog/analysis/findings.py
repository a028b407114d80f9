"""Findings: from spans and steps to statements with value, uncertainty, limit and verdict."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.analysis.budgets import BudgetMaker, Conformity, Scatter, budget
from meterlog.analysis.budgets.usual_error import cautious, usual_words
from meterlog.analysis.excess import highest_a
from meterlog.analysis.held_rotor import held_scale_ohm
from meterlog.analysis.past_range import floor_words
from meterlog.analysis.pieces import Piece
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.sides import SETTLING_WORDS
from meterlog.model import (
    Budget,
    Finding,
    FindingKind,
    Limits,
    Role,
    SpanKind,
    Verdict,
)

TAP_REACH_NS = 2_000_000_000
"""Current that returns within this time of a tap is told together with it (common practice, no
source)."""

_TWO = 2

_SIDE_WORDS = {
    SpanKind.FEED_LOST: "the feed went away (fuse, relay, connector or wire ahead of the motor)",
    SpanKind.GROUND_LOST: "the ground side opened (controller, its command, ground or connector)",
    SpanKind.COMMAND_LOST: "its command was lost (control head, its wire, or what cuts it out)",
}


def gone_words(kind: SpanKind, settled_by: Sequence[Role]) -> str:
    """Say of a missing current which side it is, as the rest of a sentence.

    Parameters
    ----------
    kind : SpanKind
        Lost at one side, or no-current.
    settled_by : sequence of Role
        What would have told the side.
    """
    if kind in _SIDE_WORDS:
        return _SIDE_WORDS[kind]
    missing = " and ".join(SETTLING_WORDS[role] for role in settled_by)
    settle = f"; {missing} would settle it" if missing else ""
    return f"these channels can't say which side{settle}"


def _seconds(t_ns: int) -> str:
    return f"{t_ns / 1e9:.3f} s"


def _at_speeds(speeds: Sequence[int]) -> str:
    """Name the speeds that were commanded within a stretch, each once."""
    told = tuple(dict.fromkeys(speeds))
    if len(told) < _TWO:
        return "".join(f" at speed {speed}" for speed in told)
    if len(told) == _TWO:
        return f" at speeds {told[0]} and {told[1]}"
    return f" at speeds {'/'.join(map(str, told))}"


def _stretch(piece: Piece, around: Around) -> str:
    speeds = () if piece.speed is None else (piece.speed, *around.further_speeds)
    return (
        f"{_at_speeds(speeds)} from {_seconds(piece.start_ns)} to {_seconds(piece.end_ns)}"
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
    further_speeds : tuple of int
        Speeds other than its own that were commanded within it, in order.
    """

    taps_ns: Sequence[int] = ()
    returned: bool = False
    from_start: bool = False
    to_end: bool = False
    denied: str = ""
    cause: str = ""
    doubted: str = ""
    further_speeds: tuple[int, ...] = ()


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


def _late(piece: Piece) -> bool:
    """Tell whether a late command may be all there is to a missing current."""
    return piece.kind is SpanKind.NO_CURRENT and piece.late_ns >= piece.length_ns > 0


def _held_too(piece: Piece) -> str:
    """Say that a held rotor would look the same, where no voltage tells it from drag."""
    if not piece.settled_by:
        return ""
    missing = " and ".join(SETTLING_WORDS[role] for role in piece.settled_by)
    return f"; a held rotor would look the same on this speed, {missing} would settle it"


def _low_words(piece: Piece) -> str:
    return (
        f" at only {piece.figures.mean_v:.1f} V across the motor ({piece.held_ohm:.2f} ohm behind"
        f" its brushes, as of one that stands)"
    )


BY_SIZE = (FindingKind.STEP_CURRENT, FindingKind.OVER, FindingKind.UNDER, FindingKind.LOCKED)
"""What is judged by the size of its value, and told by it."""


class FindingMaker:
    """Makes Findings.

    Parameters
    ----------
    limits : Limits
    budgets : BudgetMaker
        May learn more meanwhile.
    """

    def __init__(self, limits: Limits, budgets: BudgetMaker) -> None:
        self._limits = limits
        self._budgets = budgets

    def of_piece(self, piece: Piece, around: Around) -> Finding | None:
        """Give the finding of one stretch; None for one that is in order."""
        if piece.kind is None or piece.kind in (SpanKind.OFF, SpanKind.RUNNING):
            return None
        if piece.kind is SpanKind.NO_DATA:
            return self._no_data(piece, around)
        figures = piece.figures
        during = (piece.start_ns, piece.end_ns)
        current = None
        if figures.n:
            lot = Scatter(figures.n, figures.sd_a)
            current = self._budgets.of_current(figures.mean_a, lot, during)
        judged, turned = self._judge(piece, current)
        verdict = Verdict.CANT_TELL if around.denied or around.doubted else judged.verdict
        known = current is not None and bool(current.sources)
        told = replace(judged, verdict=verdict)
        return Finding(
            kind=FindingKind(piece.kind.value),
            verdict=verdict,
            start_ns=piece.start_ns,
            end_ns=piece.end_ns,
            edge_ns=max(piece.start_edge_ns, piece.end_edge_ns),
            value=figures.mean_a if figures.n else None,
            unit="A",
            expanded_uncertainty=current.expanded if current is not None and known else None,
            limit=judged.limit,
            speed=piece.speed,
            statement=self._words(piece, current, told, turned, around),
            coverage_factor=current.coverage if current is not None and known else None,
            probability=judged.probability,
        )

    def _judge(self, piece: Piece, current: Budget | None) -> tuple[Conformity, str]:
        """Judge by the limit of the kind; and say what is missing that could turn it over."""
        size = abs(piece.figures.mean_a)
        value = budget("motor current", size, "A", ()) if current is None else current
        low, high = self._bounds(piece)
        at_rest = low is not None and piece.kind is not SpanKind.UNDER
        usual = self._budgets.usual_more(size, at_rest=at_rest)
        judged, turned = cautious(value, (low, high), self._limits, usual)
        if piece.kind is SpanKind.NO_CURRENT and (piece.speed is None or _late(piece)):
            return replace(judged, verdict=Verdict.CANT_TELL), ""  # perhaps nobody asked it to run
        return judged, usual_words(self._budgets.current, usual) if turned else ""

    def most_a(self, piece: Piece) -> float | None:
        """Give the current above which a stretch of its kind fails, amperes.

        None for all kinds but an excess and a held rotor: they have no upper limit.
        """
        return self._bounds(piece)[1]

    def _bounds(self, piece: Piece) -> tuple[float | None, float | None]:
        """Give the lower and the upper limit that a stretch of this kind is beyond."""
        if piece.kind is SpanKind.OVER:
            return None, highest_a(self._limits, piece.speed)
        if piece.kind is SpanKind.UNDER:
            return self._limits.at(piece.speed).min_a or 0.0, None
        if piece.kind is SpanKind.LOCKED:
            # Here the limit is where a held rotor begins, so reaching it is what fails.
            return None, self._held_from_a(piece)
        return self._limits.open_current_a, None

    def _held_from_a(self, piece: Piece) -> float:
        """Give the current from which the rotor is held at the voltage that stood across it."""
        if piece.held_ohm is None:
            return self._limits.locked_current_a
        left_v = max(piece.figures.mean_v - self._limits.brush_v, 0.0)
        return left_v / held_scale_ohm(self._limits)

    def _words(
        self,
        piece: Piece,
        current: Budget | None,
        judged: Conformity,
        turned: str,
        around: Around,
    ) -> str:
        known = current is not None and bool(current.sources)
        expanded = current.expanded if current is not None and known else None
        # What is set against a limit by its size is told by its size: the clamp may be the other
        # way round, which is told by itself.
        by_size = piece.kind is not None and FindingKind(piece.kind.value) in BY_SIZE
        mean_a = abs(piece.figures.mean_a) if by_size else piece.figures.mean_a
        now = with_uncertainty(mean_a, expanded, "A")
        now += self._budgets.lacking if known else ""
        now += floor_words(current)
        stretch = f"{_stretch(piece, around)}{_reach_words(around)}"
        unproven, limit = _unproven(around.doubted) or turned, judged.limit or 0.0
        if piece.kind is SpanKind.OVER and piece.speed == 0:
            return (
                f"Current although off is commanded{stretch}: {now}; the circuit stays on, or the"
                f" clamp was not zeroed{unproven}."
            )
        if piece.kind is SpanKind.OVER:
            return (
                f"Too much current{stretch}: {now}, limit {limit:g} A{_held_too(piece)}{unproven}."
            )
        if piece.kind is SpanKind.UNDER:
            return f"Too little current{stretch}: {now}, limit {limit:g} A{unproven}."
        if piece.kind is SpanKind.LOCKED:
            low = "" if piece.held_ohm is None else _low_words(piece)
            return f"Rotor held{stretch}: {now}{low}, held from {limit:.3g} A on{unproven}."
        if around.denied:
            return (
                f"The current channel reads nothing{stretch}: {now}; but {around.denied}. The"
                f" clamp or its meter is to be doubted before the motor."
            )
        doubt = unproven
        if not doubt and judged.verdict is Verdict.CANT_TELL and piece.speed is not None:
            doubt = "; with this uncertainty a small current can't be told from none"
        return f"{self._gone_words(piece, now, stretch, doubt)}{_tap_words(piece, around)}."

    def _gone_words(self, piece: Piece, now: str, stretch: str, doubt: str) -> str:
        if piece.kind is SpanKind.DEAD:
            cause = doubt or ", as of a motor that is open inside"
            return (
                f"Dead segment{stretch}: {now} through the motor while {self._volts(piece)} stood"
                f" across it{cause}"
            )
        if _late(piece):
            return (
                f"No current{stretch}: {now}; beside a command for off: perhaps that was recorded"
                f" {_seconds(piece.late_ns)} late or early{doubt}"
            )
        kind = SpanKind.NO_CURRENT if piece.kind is None else piece.kind
        return f"No current{stretch}: {now}; {gone_words(kind, piece.settled_by)}{doubt}"

    def _volts(self, piece: Piece) -> str:
        """Write the voltage across the motor, with its uncertainty where that is known."""
        mean, during = piece.figures.mean_v, (piece.start_ns, piece.end_ns)
        across = self._budgets.of_motor_voltage(mean, None, (), during)
        if across is None or not across.sources:
            return f"{mean:.1f} V"
        return with_uncertainty(mean, across.expanded, "V")

    @staticmethod
    def _no_data(piece: Piece, around: Around) -> Finding:
        why = around.cause or "silence, overload or a lost instrument"
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
                f"No data{_stretch(piece, around)}: {why}{'' if why.endswith('?') else '.'} What"
                f" the motor did then is not known."
            ),
        )
