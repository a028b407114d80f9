"""DemoText: what came of the demo in words: short for the terminal, in full for a file."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from meterlog.evidence import findings_table
from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.model import Comparison, Review, Verdict

_WIDTH = 100
_HEAD = "SIMULATED on the virtual bench. Vehicle, parts and people are invented."


def summary_text(
    parts: Sequence[tuple[str, Review]],
    comparison: Comparison | None,
    check: JudgedCheck | None = None,
) -> str:
    """Give the verdict of each recording and how they compare.

    Parameters
    ----------
    parts : sequence of (str, Review)
        Each with its title.
    comparison : Comparison or None
        None where there is only one recording.
    check : JudgedCheck or None
        Of the circuit.

    Returns
    -------
    str
        No line is wider than 100 characters.
    """
    return _text(parts, comparison, check, tables=False)


def findings_text(
    parts: Sequence[tuple[str, Review]],
    comparison: Comparison | None,
    check: JudgedCheck | None = None,
) -> str:
    """Give the same with the table of all findings of each recording, and the check in full."""
    return _text(parts, comparison, check, tables=True)


def _text(
    parts: Sequence[tuple[str, Review]],
    comparison: Comparison | None,
    check: JudgedCheck | None,
    *,
    tables: bool,
) -> str:
    blocks = [_HEAD]
    for title, review in parts:
        blocks.append(
            "\n".join([*_wrapped(f"{title.upper()}: {_count(review)}"), *_verdict(review)])
        )
        if tables:
            blocks.append(findings_table(review, _WIDTH).rstrip())
    if check is not None:
        blocks.append("\n".join(["CIRCUIT CHECK", *_check(check, whole=tables)]))
    if comparison is not None:
        words = _wrapped(comparison.refusal or comparison.summary)
        blocks.append("\n".join(["NEW AGAINST OLD", *words]))
    return "\n\n".join(blocks)


def _check(check: JudgedCheck, *, whole: bool) -> list[str]:
    if whole:
        return check.text(_WIDTH).rstrip().splitlines()
    entered = len(check.check.readings) + len(check.check.signs)
    head = f"{check.circuit.title}, {entered} readings and signs."
    return _wrapped(f"{head} {check.verdict.settled_words}")


def _verdict(review: Review) -> list[str]:
    if review.verdict is None:
        return []
    return _wrapped(f"Verdict: {review.verdict.outcome.value}. {review.verdict.paragraph}")


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH)


def _count(review: Review) -> str:
    verdicts = [finding.verdict for finding in review.findings]
    counts = [f"{verdicts.count(verdict)} {verdict.value}" for verdict in Verdict]
    return ", ".join(text for text in counts if not text.startswith("0 ")) or "nothing found"
