"""FindingsTable: the findings as lines of text for a terminal or a file."""

from __future__ import annotations

import textwrap

from meterlog.analysis import with_uncertainty
from meterlog.analysis.findings import BY_SIZE
from meterlog.model import Finding, Review

_HEAD = ("verdict", "finding", "from s", "to s", "± s", "speed", "value", "limit")
_RIGHT = frozenset({2, 3, 4, 5, 6, 7})
_GAP = "  "


def findings_table(review: Review, width: int = 100) -> str:
    """Give the findings as a table, each with its sentence beneath.

    Parameters
    ----------
    review : Review
    width : int
        Characters a line; at least 60.

    Returns
    -------
    str
        No colour and nothing that a plain terminal lacks but the ± sign. Lines end in line feeds.
    """
    if not review.findings:
        return "No findings.\n"
    rows = [_cells(finding) for finding in review.findings]
    sizes = [max(len(row[k]) for row in (_HEAD, *rows)) for k in range(len(_HEAD))]
    lines = [_line(_HEAD, sizes), _GAP.join("-" * size for size in sizes)]
    for finding, row in zip(review.findings, rows, strict=True):
        lines.append(_line(row, sizes))
        lines += textwrap.wrap(
            finding.statement,
            max(60, width),
            initial_indent="    ",
            subsequent_indent="    ",
        )
    return "\n".join(lines) + "\n"


def _cells(finding: Finding) -> tuple[str, ...]:
    return (
        finding.verdict.value,
        finding.kind.value,
        f"{finding.start_ns / 1e9:.3f}",
        f"{finding.end_ns / 1e9:.3f}",
        f"{finding.edge_ns / 1e9:.3f}",
        "" if finding.speed is None else str(finding.speed),
        _value(finding),
        "" if finding.limit is None else f"{finding.limit:.4g} {finding.unit}",
    )


def _value(finding: Finding) -> str:
    value = shown_value(finding)
    if value is None:
        return ""
    return with_uncertainty(value, finding.expanded_uncertainty, finding.unit)


def shown_value(finding: Finding) -> float | None:
    """Give the value beside its limit: by size where its size is judged, as its sentence says it.

    The tables for programs have it with the sign it was read with.
    """
    by_size = finding.kind in BY_SIZE and finding.value is not None
    return abs(finding.value or 0.0) if by_size else finding.value


def _line(cells: tuple[str, ...], sizes: list[int]) -> str:
    padded = [
        cell.rjust(size) if k in _RIGHT else cell.ljust(size)
        for k, (cell, size) in enumerate(zip(cells, sizes, strict=True))
    ]
    return _GAP.join(padded).rstrip()
