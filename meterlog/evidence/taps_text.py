"""TapsText: the tap evidence as lines for the terminal."""

from __future__ import annotations

import textwrap

from meterlog.model import Tap, TapEvidence

_WIDE = 100
FORM_SOURCE = (
    "The accepted form is this program's own: what workshops and claims departments are used to"
    " asking for, put into figures from memory of the trade. No standard or published source gives"
    " them, nor does a maker."
)
"""Where the thresholds come from: :mod:`meterlog.analysis.taps.form`."""


def taps_lines(evidence: TapEvidence | None) -> list[str]:
    """Give the lines, none wider than 100 columns; none where nobody tapped."""
    if evidence is None:
        return []
    lines = textwrap.wrap(evidence.summary, _WIDE)
    lines += [_tap(tap) for tap in evidence.taps]
    lines.append(f"accepted form of a tap test: {evidence.accepted.value}")
    for check in evidence.checks:
        head = f"  {check.verdict.value:<10} {check.name}: "
        lines += textwrap.wrap(head + check.words, _WIDE, subsequent_indent=" " * 13)
    return [*lines, *textwrap.wrap(FORM_SOURCE, _WIDE)]


def _tap(tap: Tap) -> str:
    at = f"  tap at {tap.t_ns / 1e9:8.2f} s: {_amps(tap.before_a)} -> {_amps(tap.after_a)}"
    return f"{at}  {tap.before} -> {tap.after}{_did(tap)}"


def _did(tap: Tap) -> str:
    if tap.answered and tap.late:
        return f"; back up to {tap.returned_edge_s or 0.0:.2f} s before the mark"
    if tap.answered:
        return f"; back after {tap.returned_s or 0.0:.2f} s (± {tap.returned_edge_s or 0.0:.2g} s)"
    return "; the current went" if tap.stopped else ""


def _amps(value: float | None) -> str:
    return "     - A" if value is None else f"{abs(value):6.2f} A"
