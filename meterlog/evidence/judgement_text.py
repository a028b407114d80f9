"""JudgementText: everything that was made of a recording, as plain text in the order of its weight.

The terminal shows it, and the export keeps it as ``judgement.txt``.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from meterlog.evidence.budgets_text import budgets_lines
from meterlog.evidence.findings_table import findings_table
from meterlog.evidence.inferred_text import inferred_lines
from meterlog.evidence.motor_text import motor_lines
from meterlog.evidence.ripple_text import ripple_lines
from meterlog.evidence.startup_text import startup_lines
from meterlog.evidence.taps_text import taps_lines
from meterlog.evidence.verdict_text import verdict_lines
from meterlog.model import Review


def judgement_text(review: Review, width: int = 100, *, budgets: bool = False) -> str:
    """Give a review as text.

    Parameters
    ----------
    review : Review
    width : int
        Characters a line, at least 60; tables may need 100.
    budgets : bool
        With what each uncertainty is made of.

    Returns
    -------
    str
        Blocks with an empty line between them; lines end in line feeds.
    """
    blocks = [*_blocks(review, width), *([budgets_lines(review.steps)] if budgets else [])]
    return "\n\n".join("\n".join(block) for block in blocks if block) + "\n"


def _blocks(review: Review, width: int) -> Iterator[list[str]]:
    yield from (
        verdict_lines(review.verdict),
        findings_table(review, width).rstrip().splitlines(),
        taps_lines(review.taps),
        inferred_lines(review.inferred, review.pulsed, review.rhythm),
        startup_lines(review.startups, review.fuse),
        motor_lines(review.motor, review.heat),
        ripple_lines(review.ripple),
        _rule(review, width),
    )


def _rule(review: Review, width: int) -> list[str]:
    lines = []
    for note in (*([review.decision_rule] if review.decision_rule else ()), *review.notes):
        lines += textwrap.wrap(f"note: {note}", max(60, width), subsequent_indent="    ")
    return lines
