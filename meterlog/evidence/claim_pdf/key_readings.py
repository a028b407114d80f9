"""KeyReadings: what the motor drew at each speed, before and after, in one small table."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.evidence.claim_content import ClaimSide
from meterlog.evidence.claim_pdf.page_look import FAINT
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.steps_table import limits_words, value_words
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.model import Finding, FindingKind, Limits, Verdict

_MOST = 8
"""Speeds; with more the table would be no summary."""
_GRAVEST = (Verdict.FAIL, Verdict.CANT_TELL, Verdict.PASS)


def add_key_readings(sheets: Sheets, sides: Sequence[ClaimSide]) -> None:
    """Put the table: a row a speed, with the gravest verdict where a speed was run twice.

    Parameters
    ----------
    sheets : Sheets
    sides : sequence of ClaimSide
    """
    judged, speeds = _judged(sides)
    if not speeds:
        return
    columns = [Column("speed", right=True), Column("limits A", right=True)]
    for side in sides:
        columns += [Column(f"{side.name}: current A", right=True), Column(f"{side.name}: verdict")]
    rows = [Row((str(speed), _limits(sides, speed), *_cells(judged, speed))) for speed in speeds]
    sheets.space(7.0)
    lay_table(sheets, columns, rows)
    sheets.words("Steady current while the motor ran; what it lost is told above.", FAINT)


def add_key_words(sheets: Sheets, sides: Sequence[ClaimSide], most: int) -> None:
    """Say the same in a sentence, where the table has no room.

    Parameters
    ----------
    sheets : Sheets
    sides : sequence of ClaimSide
    most : int
        Lines at most.
    """
    judged, speeds = _judged(sides)
    said = []
    for speed in speeds:
        limits = _limits(sides, speed)
        cells = _cells(judged, speed)
        found = ", ".join(
            f"{side.name} {' '.join(filter(None, cells[2 * at : 2 * at + 2]))}"
            for at, side in enumerate(sides)
        )
        said.append(f"speed {speed}{f' ({limits})' if limits else ''}: {found}")
    if said:
        sheets.space(5.0)
        sheets.words(f"Steady current, A (limits): {'; '.join(said)}.", most=most)


def _judged(sides: Sequence[ClaimSide]) -> tuple[list[dict[int, Finding]], list[int]]:
    """Give what was judged, by side and speed, and the speeds; none where there are too many."""
    judged = [_by_speed(side) for side in sides]
    speeds = sorted({speed for found in judged for speed in found})
    return judged, speeds if len(speeds) <= _MOST else []


def _by_speed(side: ClaimSide) -> dict[int, Finding]:
    found: dict[int, Finding] = {}
    for one in side.review.findings:
        if one.kind is FindingKind.STEP_CURRENT and one.speed is not None:
            other = found.get(one.speed)
            if other is None or _rank(one) < _rank(other):
                found[one.speed] = one
    return found


def _rank(one: Finding) -> int:
    return _GRAVEST.index(one.verdict)


def _limits(sides: Sequence[ClaimSide], speed: int) -> str:
    """Give the limits at a speed; each side's, where they differ."""
    all_limits: list[Limits] = [side.recording.about.limits for side in sides]
    return "; ".join(dict.fromkeys(limits_words(one, speed) for one in all_limits))


def _cells(judged: Sequence[dict[int, Finding]], speed: int) -> list[str]:
    cells: list[str] = []
    for found in judged:
        one = found.get(speed)
        if one is None:
            cells += ["", "not judged"]
        else:
            figure = None if one.value is None else abs(one.value)
            cells += [value_words(figure, one.expanded_uncertainty), one.verdict.value]
    return cells
