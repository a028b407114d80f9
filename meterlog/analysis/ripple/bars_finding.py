"""BarsFinding: the bars that stand out, as one finding about the motor."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.ripple.flaws import DEAD_DEPTH
from meterlog.analysis.ripple.words import CAUTION, flaw_words
from meterlog.model import Finding, FindingKind, RippleView, Verdict


def bars_findings(views: Sequence[RippleView], findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """Give the finding about bars that stand out; none where none does.

    Parameters
    ----------
    views : sequence of RippleView
    findings : sequence of Finding
        Of the recording so far. A dead segment among them, seen while the supply was there, says
        the same of the commutator by another way: only then does the finding fail the motor.
    """
    flawed = [view for view in views if view.flaws]
    if not flawed:
        return ()
    clearest = max(flawed, key=lambda view: max(_rank(one.depth) for one in view.flaws))
    worst = max(clearest.flaws, key=lambda one: _rank(one.depth))
    told = [view for view in views if view.profile]
    dead_seen = [f for f in findings if f.kind is FindingKind.DEAD and f.verdict is Verdict.FAIL]
    proven = bool(dead_seen) and worst.dead
    after = (
        f"{len(dead_seen)} dead segment{'s' if len(dead_seen) > 1 else ''} seen in this recording"
        f" say{'' if len(dead_seen) > 1 else 's'} the same."
        if proven
        else CAUTION
    )
    statement = (
        f"Ripple pattern{_speed(clearest)} consistent with {flaw_words(clearest.flaws)}"
        f" (confidence {_sure(worst.confidence)}); bars stand out at {len(flawed)} of"
        f" {len(told)} speeds where single bars can be told. {after}"
    )
    return (
        Finding(
            kind=FindingKind.BARS,
            verdict=Verdict.FAIL if proven else Verdict.CANT_TELL,
            start_ns=clearest.start_ns,
            end_ns=clearest.end_ns,
            edge_ns=0,  # the first and the last of the readings it was counted in
            value=100.0 * worst.depth,
            unit="%",
            expanded_uncertainty=None,
            limit=100.0 * DEAD_DEPTH if worst.dead else None,
            speed=clearest.speed,
            statement=statement,
        ),
    )


def _rank(depth: float) -> tuple[bool, float]:
    """Notches come before rises."""
    return depth > 0.0, abs(depth)


def _speed(view: RippleView) -> str:
    return "" if view.speed is None else f" at speed {view.speed}"


def _sure(confidence: float) -> str:
    return "above 99.9 %" if confidence > 0.999 else f"{100.0 * confidence:.1f} %"
