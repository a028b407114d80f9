"""LimitsSection: by which limits it was judged, and where they come from."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from meterlog.evidence.claim_content import ClaimSide
from meterlog.evidence.claim_pdf.page_look import FAINT, STRONG
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.side_section import lay_columns
from meterlog.model import Limits

_MOST = 90
"""Lines; a file of limits has some forty."""
_NO_BASIS = "where they come from is not stated"


def limits_basis(limits: Limits) -> str:
    """Say in a sentence by which limits, and on what they rest."""
    return f"Limits {limits.name}: {_basis(limits)}"


def limits_bases(all_limits: Iterable[Limits]) -> list[str]:
    """Say it of several, in one sentence of those that rest on the same."""
    names: dict[str, list[str]] = {}
    for limits in all_limits:
        names.setdefault(_basis(limits), []).append(limits.name)
    return [f"Limits {'; '.join(dict.fromkeys(named))}: {basis}" for basis, named in names.items()]


def _basis(limits: Limits) -> str:
    return limits.basis.strip() or _NO_BASIS


def add_limits(sheets: Sheets, sides: Sequence[ClaimSide]) -> None:
    """Put the limits of each side with every figure, once where they are the same."""
    used: dict[tuple[str, str], list[str]] = {}
    by_key: dict[tuple[str, str], Limits] = {}
    for side in sides:
        limits = side.recording.about.limits
        key = (limits.name, limits.text)
        used.setdefault(key, []).append(side.name)
        by_key[key] = limits
    for key, names in used.items():
        limits = by_key[key]
        sheets.heading(f"Limits, {' and '.join(names)}", keep=50.0)
        sheets.words(limits_basis(limits), STRONG)
        lines = [line.rstrip() for line in limits.text.splitlines() if line.strip()]
        lay_columns(sheets, lines[:_MOST])
        if len(lines) > _MOST:
            more = len(lines) - _MOST
            sheets.words(f"and {more} lines more: README.txt has all of them.", FAINT)
