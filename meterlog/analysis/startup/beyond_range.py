"""BeyondRange: stretches in which the current was more than the meter could show."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence

from meterlog.analysis.absence import OVERLOAD
from meterlog.analysis.judged import Judged
from meterlog.analysis.past_range import current_parts
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


def ran_past(judged: Judged, startups: Sequence[StartUp]) -> bool:
    """Tell whether more flowed than meter or clamp are stated for, other than as a start's peak.

    Parameters
    ----------
    judged : Judged
        Its doubts say when.
    startups : sequence of StartUp
        The peak of one of which it is known how it went on is looked at by itself.
    """
    return len(_peaks_past(judged, startups)) < len(current_parts(judged.doubts))


def longest_past_s(judged: Judged, startups: Sequence[StartUp]) -> float:
    """Give for how long the peak of a start was beyond what is stated, the longest; seconds."""
    lengths = [end_ns - start_ns for start_ns, end_ns in _peaks_past(judged, startups)]
    return max(lengths, default=0) / 1e9


def _peaks_past(judged: Judged, startups: Sequence[StartUp]) -> list[tuple[int, int]]:
    within_ns = round(judged.limits.inrush_window_s * 1e9)
    known = [one for one in startups if one.steady_a]
    begins = [one.t_ns - one.edge_ns for one in known]
    found = []
    for start_ns, end_ns in current_parts(judged.doubts):
        last = bisect_right(begins, start_ns) - 1
        if last >= 0 and end_ns <= known[last].t_ns + within_ns:
            found.append((start_ns, end_ns))
    return found
