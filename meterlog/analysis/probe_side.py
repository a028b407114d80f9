"""ProbeSide: whether a probe may have moved where the voltages name a side.

A tap shakes the probe as well as the motor. A voltage that tells the side is not believed where
the probe is known to have slipped about then, nor where it did what no circuit does: a feed gone
at once under a motor that still turns, a return that neither stays down nor rises to the feed.

Source: a turning motor generates (textbook); the rest common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.coasting import AT_ONCE_NS, fell_at_once
from meterlog.analysis.judged import Judged
from meterlog.analysis.side_volts import SideVolts
from meterlog.analysis.wiring_words import went_with_it
from meterlog.model import Doubt, DoubtKind, Event, EventKind, Role, Span, SpanKind

NEAR_NS = 500_000_000
"""A probe that is known to be off so close to a loss may have been off in it."""
HAND_NS = 500_000_000
"""A tap or a wiggle so close to a loss may have moved the probe."""
GONE_V = 0.5
"""An open probe, or one that touches ground, reads no more."""
COASTED_NS = 2_500_000_000
RISEN = 0.7
"""By then the return of an open ground side has come to this part of the feed."""

_BY_VOLTAGE = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST)


class ProbeSide:
    """Asks of a loss of current whether its voltages may be a probe's doing.

    Parameters
    ----------
    judged : Judged
    side_volts : SideVolts
        Of the same recording.
    """

    def __init__(self, judged: Judged, side_volts: SideVolts) -> None:
        self._side = side_volts
        self._slips = [one for one in judged.doubts if one.kind is DoubtKind.PROBE]
        self._hands = [
            one for one in judged.events if one.kind in (EventKind.TAP, EventKind.WIGGLE)
        ]

    def of(self, span: Span, before: Span | None) -> str:
        """Give why the side is not believed, as the rest of a sentence; empty where it is."""
        if span.kind not in _BY_VOLTAGE:
            return ""
        slip = _near(self._slips, span)
        if slip is not None:
            name = "return" if slip.role is Role.MOTOR_RETURN else "feed"
            return (
                f"the {name}'s probe is known to have slipped about then, so that its voltage tells"
                f" no side"
            )
        if span.kind is SpanKind.FEED_LOST and not went_with_it(self._side, span):
            return self._at_once(span, before)
        return self._floating(span) if span.kind is SpanKind.GROUND_LOST else ""

    def _at_once(self, span: Span, before: Span | None) -> str:
        if not fell_at_once(self._side, span, before, GONE_V):
            return ""
        hand = _hand_words(self._hands, span)
        start_ns = span.start_ns + span.start_edge_ns
        end_ns = min(span.end_ns, start_ns + AT_ONCE_NS)
        feed = self._side.mean(Role.MOTOR_FEED, start_ns, end_ns)
        if feed is not None and feed.mean > GONE_V:
            # The return reads as much: what is gone is the difference.
            return (
                f"the feed fell to {feed.mean:.1f} V at once and left nothing across the motor, not"
                f" even the voltage of the motor that still turned{hand}: a feed probe that slipped"
                f" looks the same"
            )
        return (
            f"the feed read nothing at once, without the voltage of the motor that still turned"
            f"{hand}: a feed probe that slipped looks the same"
        )

    def _floating(self, span: Span) -> str:
        """Tell of a return that was let go and floats: risen, but never near the feed."""
        if span.duration_ns < 2 * COASTED_NS:
            return ""
        start_ns = span.start_ns + COASTED_NS
        back = self._side.mean(Role.MOTOR_RETURN, start_ns, span.end_ns)
        feed = self._side.mean(Role.MOTOR_FEED, start_ns, span.end_ns)
        if back is None or feed is None or back.mean >= RISEN * feed.mean:
            return ""
        return (
            f"the return rose to {back.mean:.1f} V only and stayed there, which no open ground side"
            f" does once the motor stands: a return probe that slipped and floats looks the same"
        )


def _near(slips: Sequence[Doubt], span: Span) -> Doubt | None:
    for one in slips:
        if one.start_ns <= span.end_ns + NEAR_NS and one.end_ns >= span.start_ns - NEAR_NS:
            return one
    return None


def _hand_words(hands: Sequence[Event], span: Span) -> str:
    near = [one for one in hands if abs(one.t_ns - span.start_ns) <= HAND_NS]
    if not near:
        return ""
    return ", right at a tap" if near[0].kind is EventKind.TAP else ", right at a wiggle"
