"""Summary: the tap test in one sentence, for the claim."""

from __future__ import annotations

from meterlog.analysis.taps.brief_return import broken_words
from meterlog.analysis.taps.seen import Seen
from meterlog.model import SpanKind, TapEvidence


def summary_of(evidence: TapEvidence, seen: Seen) -> str:
    """Give the sentence that belongs to ``evidence``."""
    if not evidence.tried:
        return _beside(evidence, seen)
    if not evidence.answered:
        return (
            f"{_count(evidence.tried, evidence)} made while the current was gone changed nothing:"
            f" the current did not come back within 2 s of any."
        )
    tried = _count(evidence.tried, evidence)
    came = (
        f"On {evidence.answered} of {tried} made while the current was gone, it"
        f" returned{_levels(evidence)} within {evidence.slowest_s or 0.0:.2f} s"
        f" (± {evidence.slowest_edge_s or 0.0:.2g} s){_volts(evidence)}"
    )
    return f"{came}{_chance(evidence)}{_late(evidence)}{broken_words(seen)}."


def _count(count: int, evidence: TapEvidence) -> str:
    """Say how many; attempts where some were made of several light taps."""
    noun = "tap" if len(evidence.taps) == evidence.attempts else "attempt"
    return f"{count} {noun}{'' if count == 1 else 's'}"


def _levels(evidence: TapEvidence) -> str:
    if evidence.gone_a is None or evidence.returned_a is None:
        return ""
    back = [abs(tap.after_a) for tap in evidence.taps if tap.answered and tap.after_a is not None]
    least, most = (f"{one:.1f}" for one in (min(back), max(back)))
    # At several speeds it came back to several currents: their mean is seen at none of them.
    levels = f"{most} A" if least == most else f"between {least} A and {most} A"
    return f" from {abs(evidence.gone_a):.2f} A to {levels}"


def _volts(evidence: TapEvidence) -> str:
    if evidence.across_v is None:
        return "; the voltage across the motor was not read"
    return f" while {evidence.across_v:.1f} V stood across the motor"


def _chance(evidence: TapEvidence) -> str:
    if evidence.chance is None:
        return ""
    return (
        f"; probability by chance {evidence.chance:.2g} (permutation of the tap times over the time"
        f" without current, {evidence.permutations} arrangements)"
    )


def _late(evidence: TapEvidence) -> str:
    late = [tap for tap in evidence.taps if tap.late and tap.answered]
    if not late:
        return ""
    most_s = max(tap.returned_edge_s or 0.0 for tap in late)
    return (
        f"; {len(late)} of the marks came up to {most_s:.2f} s after the return, as a hand on the"
        f" key is late (up to 0.5 s is allowed for)"
    )


def _beside(evidence: TapEvidence, seen: Seen) -> str:
    """Say what became of taps none of which was made while the motor was open."""
    gone = [one.gone for one in seen.attempts if one.gone is not None]
    back = [one for one in gone if one.returned]
    if gone:
        side = {
            SpanKind.FEED_LOST: "the feed was gone",
            SpanKind.GROUND_LOST: "the ground side was open",
            SpanKind.COMMAND_LOST: "the command was gone",
        }.get(gone[0].kind, "nothing shows that the fan was asked to run")
        came = f", and {len(back)} times it came back" if back else ""
        tried = _count(len(gone), evidence)
        return f"{tried} made while {side}{came}: that says nothing of the motor."
    stopped = [tap for tap in evidence.taps if tap.stopped]
    if stopped:
        sides = {tap.after for tap in stopped}
        ends = " and ".join(sorted(sides))
        count = len({tap.attempt for tap in stopped})
        return (
            f"On {count} of {_count(evidence.attempts, evidence)} made while the motor ran, its"
            f" current went within 0.5 s ({ends})."
        )
    many = len(evidence.taps)
    return f"{many} tap{'' if many == 1 else 's'} changed nothing: the current stayed as it was."
