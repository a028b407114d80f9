"""FactsBlock: names with what they are, in two columns beside each other."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.evidence.claim_pdf.page_look import BODY, FAINT
from meterlog.evidence.claim_pdf.sheets import Sheets

_NAME = 92.0
_BETWEEN = 18.0

Fact = tuple[str, str]
"""Name and value."""


def lay_facts(
    sheets: Sheets, facts: Sequence[Fact], columns: int = 2, most: int | None = None
) -> None:
    """Put facts on the page, those without a value left out.

    Parameters
    ----------
    sheets : Sheets
    facts : sequence of (str, str)
    columns : int
    most : int or None
        Lines of a value at most.
    """
    said = [(name, value) for name, value in facts if value.strip()]
    wide = (sheets.width - _BETWEEN * (columns - 1)) / columns
    high = sheets.line_height(BODY)
    for start in range(0, len(said), columns):
        row = [
            (
                sheets.lines_of(name, FAINT, _NAME - 6.0),
                sheets.lines_of(value, BODY, wide - _NAME, most),
            )
            for name, value in said[start : start + columns]
        ]
        count = max(max(len(name), len(value)) for name, value in row)
        for number in range(count):
            sheets.need(high)
            for at, (name, value) in enumerate(row):
                left = sheets.left + at * (wide + _BETWEEN)
                if number < len(name):
                    sheets.write_line(name[number], FAINT, left, sheets.y + 0.8)
                if number < len(value):
                    sheets.write_line(value[number], BODY, left + _NAME, sheets.y)
            sheets.y += high
        sheets.space(1.0)
