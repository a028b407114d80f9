"""VerdictWords: the verdict of a run and what to measure next, as the window says it."""

from __future__ import annotations

from meterlog.model import Outcome, Ranked, RunVerdict
from meterlog.window.remedies_here import remedy_here

_SIGNS = {
    Outcome.IN_ORDER: "✓",
    Outcome.FAULT: "✕",
    Outcome.SUSPICION: "⚠",
    Outcome.CANT_TELL: "?",
}


def outcome_words(verdict: RunVerdict) -> str:
    """Write what the run comes to, with its sign: ``✕ Fault found``."""
    words = verdict.outcome.value
    return f"{_SIGNS[verdict.outcome]} {words[0].upper()}{words[1:]}"


def verdict_words(verdict: RunVerdict) -> list[str]:
    """Write the verdict, then for each thing found what to measure next, the gravest first."""
    told = [f"{outcome_words(verdict).upper()}\n{remedy_here(verdict.paragraph)}"]
    told += [_next(place, one) for place, one in enumerate(verdict.ranked)]
    return told


def unseen_words(verdict: RunVerdict) -> list[str]:
    """Write what this set-up could not have seen."""
    return [f"Not seen: {remedy_here(text)}" for text in verdict.unseen]


def _next(place: int, one: Ranked) -> str:
    """Write what to measure; of the first the paragraph has said what it is already."""
    head = f"→ {'NEXT' if place == 0 else 'THEN'}: {one.part} ({one.sureness.value})"
    what = f"{one.what} " if place else ""
    return f"{head}\n{what}{remedy_here(one.next_measurement)}"
