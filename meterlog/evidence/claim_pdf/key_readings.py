"""KeyReadings: what the motor drew at each speed, before and after, in one small table."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.evidence.claim_content import ClaimSide
from meterlog.evidence.claim_pdf.page_look import FAINT
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.steps_table import limits_words, not_in_words, value_words
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.model import Finding, FindingKind, Limits, Review, Verdict

_MOST = 8
"""Speeds; with more the table would be no summary."""
_SEVERAL = (
    "Of a speed that was run more than once: the run that failed, else the one with the most steady"
    " readings; the table of steps has all."
)


def add_key_readings(sheets: Sheets, sides: Sequence[ClaimSide]) -> None:
    """Put the table: a row a speed; what stands for one that was run twice is said.

    Parameters
    ----------
    sheets : Sheets
    sides : sequence of ClaimSide
    """
    judged, speeds, several = _judged(sides)
    if not speeds:
        return
    columns = [Column("speed", right=True), Column("limits A", right=True)]
    for side in sides:
        columns += [Column(f"{side.name}: current A", right=True), Column(f"{side.name}: verdict")]
    rows = [Row((str(speed), _limits(sides, speed), *_cells(judged, speed))) for speed in speeds]
    sheets.space(7.0)
    lay_table(sheets, columns, rows)
    said = "Steady current while the motor ran; what it lost is told above."
    said += _not_in(sides)
    sheets.words(f"{said} {_SEVERAL}" if several else said, FAINT)


def add_key_words(sheets: Sheets, sides: Sequence[ClaimSide], most: int) -> None:
    """Say the same in a sentence, where the table has no room.

    Parameters
    ----------
    sheets : Sheets
    sides : sequence of ClaimSide
    most : int
        Lines at most.
    """
    judged, speeds, several = _judged(sides)
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
        words = f"Steady current, A (limits): {'; '.join(said)}.{_not_in(sides)}"
        sheets.words(f"{words} {_SEVERAL}" if several else words, most=most)


def _not_in(sides: Sequence[ClaimSide]) -> str:
    """Say of each side what the ± of its currents do not hold."""
    told = ((side.name, not_in_words(side.review.steps, volts=False)) for side in sides)
    return "".join(f" {name.capitalize()}:{words}" for name, words in told if words)


def _judged(sides: Sequence[ClaimSide]) -> tuple[list[dict[int, Finding]], list[int], bool]:
    """Give what was judged, by side and speed, the speeds, and whether one was run twice.

    There are no speeds where there are too many.
    """
    each = [_by_speed(side) for side in sides]
    speeds = sorted({speed for found in each for speed in found})
    several = any(len(runs) > 1 for found in each for runs in found.values())
    judged = [
        {speed: _standing(side.review, runs) for speed, runs in found.items()}
        for side, found in zip(sides, each, strict=True)
    ]
    return judged, speeds if len(speeds) <= _MOST else [], several


def _by_speed(side: ClaimSide) -> dict[int, list[Finding]]:
    found: dict[int, list[Finding]] = {}
    for one in side.review.findings:
        if one.kind is FindingKind.STEP_CURRENT and one.speed is not None:
            found.setdefault(one.speed, []).append(one)
    return found


def _standing(review: Review, runs: Sequence[Finding]) -> Finding:
    """Give what stands for a speed: no failure is hidden, else as the comparison chooses.

    See :func:`meterlog.analysis.compare.side.comparable_steps`: the most steady readings.
    """
    steady = {(step.start_ns, step.end_ns): step.steady_n for step in review.steps}
    return min(
        runs,
        key=lambda one: (
            one.verdict is not Verdict.FAIL,
            -steady.get((one.start_ns, one.end_ns), 0),
        ),
    )


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
