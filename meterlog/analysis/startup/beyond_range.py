"""BeyondRange: stretches in which the current was more than the meter could show."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from meterlog.analysis.absence import OVERLOAD
from meterlog.analysis.judged import Judged
from meterlog.analysis.past_range import is_past
from meterlog.model import Finding, FindingKind, Role, StartUp, channel_of

_HIGH = (FindingKind.OVER, FindingKind.LOCKED)


def overloads(findings: Iterable[Finding]) -> list[Finding]:
    """Give the stretches in which the current was beyond the meter's range while asked for."""
    return [
        one
        for one in findings
        if one.kind is FindingKind.NO_DATA and one.speed != 0 and OVERLOAD in one.statement
    ]


def of_start(over: Finding, t_ns: int, edge_ns: int, within_ns: int) -> bool:
    """Tell whether an overload is the peak of a start.

    Parameters
    ----------
    over : Finding
    t_ns, edge_ns : int, nanoseconds
        First reading of the start and how well its onset is known: an overload from the onset on
        lies before that reading.
    within_ns : int, nanoseconds
        For how long start-up current flows; what lasts longer, or comes later, is none.
    """
    first_ns = t_ns - edge_ns
    inside = first_ns <= over.start_ns + over.edge_ns and over.end_ns <= t_ns + within_ns
    return inside and over.end_ns - over.start_ns <= within_ns


def lasting(
    findings: Iterable[Finding], startups: Sequence[StartUp], within_s: float
) -> list[Finding]:
    """Give the overloads that are no peak of a start of which it is known how it went on."""
    within_ns = round(within_s * 1e9)
    known = [one for one in startups if one.steady_a]
    return [
        over
        for over in overloads(findings)
        if not any(of_start(over, one.t_ns, one.edge_ns, within_ns) for one in known)
    ]


def beyond_words(over: Sequence[Finding]) -> str:
    """Say for how long the current was beyond the range, as a clause."""
    length_s = sum(one.end_ns - one.start_ns for one in over) / 1e9
    return f"the current was beyond the meter's range (overload) for {length_s:.2g} s"


def ran_past(judged: Judged) -> bool:
    """Tell whether the motor ran, or was held, at more than meter or clamp are stated for.

    The peak of a start is not looked at: it has a mark of its own.
    """
    current = channel_of(judged.instruments, Role.MOTOR_CURRENT)
    held = [one.value for one in judged.findings if one.kind in _HIGH and one.unit == "A"]
    ran = [one.steady_mean_a for one in judged.steps]
    return any(is_past(current, amps) for amps in (*held, *ran) if amps is not None)
