"""BeyondRange: stretches in which the current was more than the meter could show."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from meterlog.analysis.absence import OVERLOAD
from meterlog.model import Finding, FindingKind, StartUp


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
